"""Walls whose every place can be worked out by hand: round numbers, one thing of each kind."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from elevation.room.model import (
    Bracket,
    Held,
    Hem,
    Layer,
    Obstacle,
    Opening,
    Panel,
    Rod,
    Room,
    Scheme,
    Station,
    Treatment,
    Wall,
)
from elevation.units import Length, parse_length

INCH = 25.4
LAYER = ("a", "s", "t1", "front")


def inch(text: str | float) -> Length:
    return parse_length(f"{text} in")


def held(hold: str, at: str | float) -> Held:
    return Held(hold, inch(at))


WINDOW = Opening(
    # From 50 to 90 in across, 24 to 80 in up; casing 4 in, so its top is at 84 in; glass from 52 to 88 in.
    id="w1",
    left=inch(50),
    width=inch(40),
    height=inch(56),
    sill=inch(24),
    casing=inch(4),
    frame=inch(2),
)

ROD = Rod(
    # 88 in high, from 40 to 100 in, 60 in long.
    height=held("above-casing", 4),
    left=held("beyond-opening", 10),
    right=held("beyond-opening", 10),
    ends="cap",
    stock=inch(96),
)

LAYER_FRONT = Layer(
    # Rings with clips put the top of the cloth 1 3/4 in below the middle of this rod, at 86 1/4 in.
    id="front",
    rod=ROD,
    brackets=(
        Bracket(id="b1", place=held("from-left-end", 2)),
        Bracket(id="b2", place=held("from-right-end", 3)),
    ),
    hem=Hem("clear", inch("1/2")),
    panels=(
        Panel(id="p1", flat_width=inch(54), parks="left", stack=inch(10)),
        Panel(id="p2", flat_width=inch(54), parks="right", stack=inch(10)),
    ),
)


def room(
    *,
    layer: Layer = LAYER_FRONT,
    openings: tuple[Opening, ...] = (WINDOW,),
    covers: tuple[str, ...] = ("w1",),
    layers: tuple[Layer, ...] = (),
    more: tuple[Treatment, ...] = (),
    obstacles: tuple[Obstacle, ...] = (),
    **wall: object,
) -> Room:
    """A wall 150 in wide under a level ceiling at 108 in, with one dressed window off its middle."""
    fields: dict[str, object] = {
        "width": inch(150),
        "ceiling": (Station(inch(0), inch(108)),),
        "crown": inch(0),
        "obstacles": obstacles,
    } | wall
    treatment = Treatment(id="t1", openings=covers, layers=(layer, *layers))
    scheme = Scheme(id="s", treatments=(treatment, *more))
    return Room(walls=(Wall(id="a", openings=openings, schemes=(scheme,), **fields),))


def with_rod(**fields: object) -> Layer:
    return replace(LAYER_FRONT, rod=replace(ROD, **fields))


def with_layer(**fields: object) -> Layer:
    return replace(LAYER_FRONT, **fields)


SECOND = Opening(
    # From 110 to 130 in across, 30 to 76 in up, uncased.
    id="w2",
    left=inch(110),
    width=inch(20),
    height=inch(46),
    sill=inch(30),
    casing=inch(0),
)

SECOND_TREATMENT = Treatment(
    # Rod at 86 in, from 107 to 133 in.
    id="t2",
    openings=("w2",),
    layers=(
        Layer(
            id="front",
            rod=Rod(
                height=held("above-head", 10),
                left=held("beyond-opening", 3),
                right=held("beyond-opening", 3),
                ends="cap",
            ),
            brackets=(Bracket(id="b1", place=held("from-left-end", 1)), Bracket(id="b2", place=held("from-right-end", 1))),
            hem=Hem("clear", inch(3)),
            panels=(Panel(id="p1", flat_width=inch(54), parks="left"),),
        ),
    ),
)

BACK = Layer(
    # A second rod of the first treatment, from 44 to 97 in, with brackets at 45 and 95 in.
    id="back",
    rod=Rod(
        height=held("above-casing", 6),
        left=held("beyond-opening", 6),
        right=held("beyond-opening", 7),
        projection=inch(2),
        ends="cap",
    ),
    brackets=(Bracket(id="b1", place=held("from-left-end", 1)), Bracket(id="b2", place=held("from-right-end", 2))),
    hem=Hem("clear", inch(2)),
    panels=(Panel(id="p1", flat_width=inch(54), parks="left"),),
)

TWO: dict[str, Any] = {"openings": (WINDOW, SECOND), "more": (SECOND_TREATMENT,)}
IN_HAND = with_layer(panels=tuple(replace(panel, measured_length=inch(84)) for panel in LAYER_FRONT.panels))
