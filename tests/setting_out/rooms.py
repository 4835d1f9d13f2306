"""Small rooms for the tests of this folder, made from the room's own structs."""

from __future__ import annotations

from elevation.room.model import (
    Bracket,
    Fabric,
    Head,
    Held,
    Hem,
    Layer,
    Opening,
    Panel,
    Rod,
    Room,
    Sash,
    Scheme,
    Station,
    Treatment,
    Wall,
)  # fmt: skip
from elevation.units import Length

INCH = 25.4


def inch(value: float) -> Length:
    return Length(value * INCH, f"{value} in")


def mm(value: float) -> Length:
    return Length(float(value), f"{value} mm")


def held(hold: str, value: float = 0.0, unit=inch) -> Held:
    return Held(hold, unit(value))  # type: ignore[arg-type]


def window(opening_id="w1", left=40.0, width=36.0, height=54.0, sill=30.0, casing=3.5, **more) -> Opening:
    return Opening(
        id=opening_id, left=None if left is None else inch(left), width=inch(width), height=inch(height), sill=inch(sill),
        casing=None if casing is None else inch(casing), frame=inch(2.0), **more,
    )  # fmt: skip


def pair(flat=54.0, **more) -> tuple[Panel, Panel]:
    return (
        Panel(id="p-left", flat_width=inch(flat), parks="left", **more),
        Panel(id="p-right", flat_width=inch(flat), parks="right", **more),
    )


def end_brackets(inset=2.0) -> tuple[Bracket, ...]:
    return (
        Bracket(id="b1", place=held("from-left-end", inset)),
        Bracket(id="b2", place=held("from-right-end", inset)),
    )


def treatment(
    treatment_id="t1",
    openings=("w1",),
    above=4.0,
    beyond=10.0,
    panels=None,
    brackets=None,
    hem=None,
    heading="clip-rings",
    rod=None,
) -> Treatment:
    if rod is None:
        rod = Rod(
            height=held("above-casing", above), left=held("beyond-opening", beyond), right=held("beyond-opening", beyond)
        )
    return Treatment(
        id=treatment_id,
        openings=tuple(openings),
        layers=(
            Layer(
                id="l1",
                rod=rod,
                brackets=end_brackets() if brackets is None else tuple(brackets),
                heading=heading,
                fabric=Fabric(),
                hem=hem or Hem(),
                panels=pair() if panels is None else tuple(panels),
            ),
        ),
    )


def room(openings=None, treatments=None, width=120.0, ceiling=96.0, floor=(), unit="in", **wall) -> Room:
    return Room(
        name="Test",
        unit=unit,
        walls=(
            Wall(
                id="a",
                width=None if width is None else inch(width),
                ceiling=() if ceiling is None else (Station(inch(0), inch(ceiling)),),
                floor=tuple(Station(inch(x), inch(y)) for x, y in floor),
                crown=wall.pop("crown", inch(0)),
                substrate=wall.pop("substrate", "timber"),
                openings=(window(),) if openings is None else tuple(openings),
                schemes=(Scheme(id="s", treatments=(treatment(),) if treatments is None else tuple(treatments)),),
                **wall,
            ),
        ),
    )


__all__ = ["INCH", "Head", "Sash", "end_brackets", "held", "inch", "mm", "pair", "room", "treatment", "window"]
