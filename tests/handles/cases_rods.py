"""Places of a rod and its ends: casing top 84, head 80, ceiling 108; opening 50 to 90, brackets 2 and 3 in from the ends.

Every figure is worked out by hand from the round numbers of ``rooms.py`` (inches); the rules' own limits are common
practice, no source. Rings with clips put the top of the cloth 1 3/4 in below the middle of
3/4 in conduit (sellers' pages, as in the headings table).
"""

from __future__ import annotations

from msgspec.structs import replace

from elevation.room.model import Bracket, Hem, Sash, Station, WallEnd
from tests.handles.case import Case, fact
from tests.handles.rooms import (
    BACK,
    IN_HAND,
    LAYER,
    LAYER_FRONT,
    SECOND,
    TWO,
    WINDOW,
    held,
    inch,
    room,
    with_layer,
    with_rod,
)

HEIGHT = fact("rod.height.at", *LAYER)
LEFT, RIGHT = fact("rod.left.at", *LAYER), fact("rod.right.at", *LAYER)
KISSING = room(
    layer=with_layer(hem=Hem("kiss"), panels=tuple(replace(panel, label_length=inch(86)) for panel in LAYER_FRONT.panels))
)
BEDROOM = replace(room(openings=(replace(WINDOW, frame=inch(0), escape=True, sash=Sash("casement-out")),)), sleeping=True)
INSWING = room(openings=(replace(WINDOW, frame=inch(0), sash=Sash("casement-in")),))
CARRIED = room(layer=with_rod(left=held("beyond-opening", 14), right=held("rod-length", 60)))
_STOCK = replace(LAYER_FRONT.rod, stock=inch(240))
LONG_STOCK = room(layer=with_layer(panels=(), rod=_STOCK), width=inch(220))
THREE = room(
    layer=with_layer(
        panels=(),
        rod=replace(_STOCK, left=held("from-corner", 5), right=held("from-corner", 5)),
        brackets=(*LAYER_FRONT.brackets, Bracket(id="b3", place=held("from-centre", 0))),
    ),
    width=inch(220),
)

RODS = (
    Case("height-floor", room(), "rod-height", LAYER, None, "the floor", HEIGHT, "-83 1/2 in"),
    Case("height-ceiling", room(), "rod-height", LAYER, None, "the ceiling", HEIGHT, "23 1/2 in"),
    Case("height-least", room(), "rod-height", LAYER, 87, "above the casing, the least", HEIGHT, "3 in"),
    Case("height-most", room(), "rod-height", LAYER, 96, "two thirds|half way|the most", HEIGHT, "12 in"),
    Case("height-under-ceiling", room(), "rod-height", LAYER, 105, "below the ceiling", HEIGHT, "21 in"),
    Case("height-two-thirds", room(), "rod-height", LAYER, 100, "two thirds up from head to ceiling", HEIGHT, "16 in"),
    Case(
        "height-half",
        room(ceiling=(Station(inch(0), inch(104)),)),
        "rod-height",
        LAYER,
        94,
        "half way from head to ceiling",
        HEIGHT,
        "10 in",
    ),
    Case("height-neighbour", room(**TWO), "rod-height", LAYER, 86, "level with the rod of Window 2", HEIGHT, "2 in"),
    Case("height-head", room(openings=(WINDOW, SECOND)), "rod-height", LAYER, 76, "head of Window 2", HEIGHT, "-8 in"),
    Case("height-in-hand", room(layer=IN_HAND), "rod-height", LAYER, 86.25, "84 in panel in hand", HEIGHT, "2 1/4 in"),
    Case("height-shop", room(), "rod-height", LAYER, 98.25, "96 in panel just clears the floor", HEIGHT, "14 1/4 in"),
    Case("left-wall", room(), "rod-left", LAYER, 0, "the corner", LEFT, "50 in", alone=True),
    Case("left-other-end", room(), "rod-left", LAYER, None, "the other end", LEFT, "-46 1/16 in", alone=True),
    Case("left-least", room(), "rod-left", LAYER, 42, "6 in beyond the opening, the least", LEFT, "8 in", alone=True),
    Case("left-least-both", room(), "rod-left", LAYER, 42, "6 in beyond the opening, the least", RIGHT, "8 in"),
    Case("left-most", room(), "rod-left", LAYER, 36, "12 in beyond the opening, the most", LEFT, "14 in", alone=True),
    Case(
        "left-equal",
        room(layer=with_rod(right=held("beyond-opening", 13))),
        "rod-left",
        LAYER,
        37,
        "equal reach on both sides",
        LEFT,
        "13 in",
        alone=True,
    ),
    Case("left-centred", room(), "rod-left", LAYER, 50, "centred on the wall", LEFT, "0 in", alone=True),
    Case(
        "left-stock",
        room(width=inch(190)),
        "rod-left",
        LAYER,
        4,
        "one whole piece of stock, 96 in",
        LEFT,
        "46 in",
        alone=True,
    ),
    Case("left-stock-both", room(width=inch(190)), "rod-left", LAYER, 22, "one whole piece of stock, 96 in", LEFT, "28 in"),
    Case(
        "left-stock-length",
        room(layer=with_rod(right=held("rod-length", 60)), width=inch(190)),
        "rod-right",
        LAYER,
        136,
        "one whole piece of stock",
        RIGHT,
        "96 in",
    ),
    Case("left-rods", room(layers=(BACK,)), "rod-left", LAYER, 44, "in line with the other rod", LEFT, "6 in", alone=True),
    Case("right-wall", room(), "rod-right", LAYER, 150, "the corner", RIGHT, "60 in", alone=True),
    Case("right-least", room(), "rod-right", LAYER, 99, "6 in beyond the opening, the least", RIGHT, "9 in", alone=True),
    Case(
        "right-half-way",
        room(openings=(WINDOW, SECOND), layer=with_rod(left=held("beyond-opening", 12), right=held("beyond-opening", 14))),
        "rod-right",
        LAYER,
        100,
        "half way to Window 2",
        RIGHT,
        "10 in",
        alone=True,
    ),
    Case(
        "right-equal",
        room(layer=with_rod(left=held("beyond-casing", 3))),
        "rod-right",
        LAYER,
        97,
        "equal reach on both sides",
        RIGHT,
        "7 in",
        alone=True,
    ),
    Case("right-centred", room(), "rod-right", LAYER, 110, "centred on the wall", RIGHT, "20 in", alone=True),
    Case(
        "right-corner",
        room(layer=with_rod(right=held("from-corner", 50))),
        "rod-right",
        LAYER,
        110,
        "centred on the wall",
        RIGHT,
        "40 in",
        alone=True,
    ),
    # A rod of 60 in, from 36: evenly over the opening it runs from 40, in the middle of the wall from 45.
    Case("carry-equal", CARRIED, "rod-left", LAYER, 40, "equal reach on both sides", LEFT, "10 in"),
    Case("carry-centred", CARRIED, "rod-left", LAYER, 45, "centred on the wall", LEFT, "5 in"),
    # 300 mm past the end: 61 13/16 in beyond an opening that begins at 50
    Case(
        "left-open-end",
        room(left=WallEnd("open")),
        "rod-left",
        LAYER,
        None,
        "far enough past the wall's open end",
        LEFT,
        "61 3/4 in",
        alone=True,
    ),
    # hem 2 in above the sill at 24: 26 + 63 + 1 3/4
    Case(
        "height-sill",
        room(layer=with_layer(hem=Hem("sill", inch(2)))),
        "rod-height",
        LAYER,
        90.75,
        "63 in panel ends where the hem is wished",
        HEIGHT,
        "6 3/4 in",
    ),
    # The kit's plate reaches 2 1/2 in below the rod; the tube is 0.922 in thick (ANSI C80.3).
    Case(
        "height-plates", room(), "rod-height", LAYER, 86.5, "plates just clear the casing of Window 1", HEIGHT, "2 1/2 in"
    ),
    Case("height-cloth", room(), "rod-height", LAYER, 85.75, "the cloth begins level with the top", HEIGHT, "1 3/4 in"),
    Case(
        "height-wished", KISSING, "rod-height", LAYER, 87.75, "the panels in hand just hang as wished", HEIGHT, "3 3/4 in"
    ),
    Case("height-way-out", BEDROOM, "rod-height", LAYER, 80.4375, "the rod just clears the way out", HEIGHT, "-3 9/16 in"),
    Case("height-swing", INSWING, "rod-height", LAYER, 80.4375, "the rod just clears", HEIGHT, "-3 9/16 in"),
    Case(
        "left-both",
        room(width=inch(120)),
        "rod-left",
        LAYER,
        None,
        "as far as the other end can go with it",
        LEFT,
        "30 in",
    ),
    Case(
        "left-neighbour-wall",
        room(),
        "rod-left",
        LAYER,
        0.25,
        "clears the neighbouring wall",
        LEFT,
        "49 3/4 in",
        alone=True,
    ),
    Case(
        "left-glass", room(), "rod-left", LAYER, 40.5, "the open cloth just clears the glass", LEFT, "9 1/2 in", alone=True
    ),
    # By the closed form of a beam with free ends (tests/handles/test_neat_span.py): 127 13/16 in between the brackets.
    Case("right-neat", LONG_STOCK, "rod-right", LAYER, 172.8125, "looks neat, 127", RIGHT, "82 13/16 in", alone=True),
    Case("bracket-neat", THREE, "bracket", (*LAYER, "b3"), 54.625, "looks neat, 157", None, None),
)
