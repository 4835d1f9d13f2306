"""Walls of any number of windows, each with its own rod and a pair of panels: the bench's workloads."""

from __future__ import annotations

from elevation.room.model import (
    Bracket,
    Fabric,
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
    Stool,
    Treatment,
    Wall,
)
from elevation.units import Length


def inches(value: float) -> Length:
    """A length in inches."""
    return Length(value * 25.4, f"{value:g} in")


def windows(count: int) -> Room:
    """A room of one wall with ``count`` dressed windows, 96 in apart."""
    openings, treatments = [], []
    for number in range(count):
        openings.append(
            Opening(
                id=f"o{number + 1}",
                left=inches(24 + 96 * number),
                width=inches(48),
                height=inches(54),
                sill=inches(31),
                casing=inches(3.5),
                stool=Stool(inches(1), inches(1), inches(2)),
                apron=inches(3),
                frame=inches(2),
                columns=3,
                rows=2,
                sash=Sash("double-hung"),
            )
        )
        rod = Rod(
            height=Held("above-casing", inches(4)),
            left=Held("beyond-opening", inches(12)),
            right=Held("beyond-opening", inches(12)),
        )
        layer = Layer(
            id="l1",
            rod=rod,
            brackets=(
                Bracket("b1", Held("from-left-end", inches(2))),
                Bracket("b2", Held("from-right-end", inches(2))),
            ),
            fabric=Fabric(colour="#b9704a"),
            hem=Hem("clear", inches(0.5)),
            panels=(
                Panel("p1", inches(54), count=1, parks="left"),
                Panel("p2", inches(54), count=1, parks="right"),
            ),
        )
        treatments.append(Treatment(f"t{number + 1}", (f"o{number + 1}",), (layer,), name=f"Window {number + 1}"))
    wall = Wall(
        id="w1",
        name="Long wall",
        width=inches(96 * count),
        ceiling=(Station(inches(0), inches(108)),),
        floor=(Station(inches(0), inches(0)), Station(inches(96 * count), inches(0.25))),
        crown=inches(4),
        baseboard=inches(5),
        openings=tuple(openings),
        schemes=(Scheme("s1", "as drawn", tuple(treatments)),),
    )
    return Room(name=f"{count} windows", walls=(wall,))
