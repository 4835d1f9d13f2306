"""Places of what was measured: openings, obstacles, ceiling, floor, the wall's end.

Every figure is worked out by hand from the round numbers of ``rooms.py`` (inches); the rules' own limits are common
practice, no source. Rings with clips put the top of the cloth 1 3/4 in below the middle of
3/4 in conduit (sellers' pages, as in the headings table).
"""

from __future__ import annotations

from elevation.room.model import Obstacle, Opening, Station
from tests.handles.case import Case, fact
from tests.handles.rooms import (
    SECOND,
    WINDOW,
    inch,
    room,
)

BOX = Obstacle(id="x1", kind="furniture", left=inch(5), bottom=inch(0), width=inch(30), height=inch(20))
SHELF = Obstacle(id="x2", kind="shelf", left=inch(8), bottom=inch(60), width=inch(10), height=inch(2))
OPENING, X1, X2 = ("a", "w1"), ("a", "x1"), ("a", "x2")
LEFT, WIDTH, HEIGHT, SILL = (fact(name, *OPENING) for name in ("left", "width", "height", "sill"))
X1_LEFT, X1_BOTTOM, X2_BOTTOM = fact("left", *X1), fact("bottom", *X1), fact("bottom", *X2)
PAIR = room(openings=(WINDOW, SECOND))
ONE_BOX, TWO_BOXES = room(obstacles=(BOX,)), room(obstacles=(BOX, SHELF))
SLOPED = room(floor=(Station(inch(0), inch(1)), Station(inch(150), inch(2))))
BENT = room(floor=(Station(inch(0), inch(1)), Station(inch(50), inch(0)), Station(inch(150), inch(4))))
DOORWAY = room(openings=(Opening(id="w1", kind="door", left=inch(50), width=inch(40), height=inch(80)),))
CEILING_0, FLOOR_1 = fact("ceiling.0.height", "a"), fact("floor.1.height", "a")

WALL = (
    Case("side-left-wall", room(), "opening-left", OPENING, 4, "the wall's end", LEFT, "4 in"),
    Case("side-left-centred", room(), "opening-left", OPENING, 60, "centred on the wall", LEFT, "60 in"),
    Case("side-left-as-wide", PAIR, "opening-left", OPENING, 70, "as wide as Window 2", WIDTH, "20 in"),
    Case("side-left-other", room(), "opening-left", OPENING, None, "the other side", WIDTH, "5 in"),
    Case("side-right-centred", room(), "opening-right", OPENING, 100, "centred on the wall", WIDTH, "50 in"),
    Case("side-right-as-wide", PAIR, "opening-right", OPENING, 70, "as wide as Window 2", WIDTH, "20 in"),
    Case("side-right-casing", PAIR, "opening-right", OPENING, 106, "the casing of Window 2", WIDTH, "56 in"),
    Case("side-right-wall", room(), "opening-right", OPENING, 146, "the wall's end", WIDTH, "96 in"),
    Case("head-ceiling", room(), "opening-head", OPENING, 104, "the ceiling", HEIGHT, "80 in"),
    Case("head-level", PAIR, "opening-head", OPENING, 76, "level with the head of Window 2", HEIGHT, "52 in"),
    Case("head-sill", room(), "opening-head", OPENING, None, "the sill", HEIGHT, "5 in"),
    Case("sill-floor", room(), "opening-sill", OPENING, 0, "the floor", HEIGHT, "80 in"),
    Case("sill-level", PAIR, "opening-sill", OPENING, 30, "level with the sill of Window 2", SILL, "30 in"),
    Case("sill-head", room(), "opening-sill", OPENING, None, "the head", HEIGHT, "5 in"),
    Case("obstacle-wall", ONE_BOX, "obstacle-x", X1, 0, "the wall's end", X1_LEFT, "0 in"),
    Case("obstacle-casing", ONE_BOX, "obstacle-x", X1, 16, "touches the casing of Window 1", X1_LEFT, "16 in"),
    Case("obstacle-middle", ONE_BOX, "obstacle-x", X1, 55, "under the middle of Window 1", X1_LEFT, "55 in"),
    Case("obstacle-line", TWO_BOXES, "obstacle-x", X1, 8, "in line with the shelf", X1_LEFT, "8 in"),
    Case("obstacle-floor", TWO_BOXES, "obstacle-y", X2, 0, "the floor", X2_BOTTOM, "0 in"),
    Case("obstacle-ceiling", TWO_BOXES, "obstacle-y", X2, 106, "the ceiling", X2_BOTTOM, "106 in"),
    Case("obstacle-level", TWO_BOXES, "obstacle-y", X1, 60, "level with the shelf", X1_BOTTOM, "60 in"),
    Case("obstacle-sill", ONE_BOX, "obstacle-y", X1, 4, "top level with the sill of Window 1", X1_BOTTOM, "4 in"),
    Case(
        "ceiling-level",
        room(ceiling=(Station(inch(0), inch(100)), Station(inch(150), inch(108)))),
        "ceiling",
        ("a", "1"),
        100,
        "level with point 1",
        fact("ceiling.1.height", "a"),
        "100 in",
    ),
    Case(
        "ceiling-straight",
        room(ceiling=(Station(inch(0), inch(100)), Station(inch(75), inch(120)), Station(inch(150), inch(108)))),
        "ceiling",
        ("a", "1"),
        104,
        "straight between its neighbours",
        fact("ceiling.1.height", "a"),
        "104 in",
    ),
    Case("ceiling-openings", room(), "ceiling", ("a", "0"), 84, "the openings", fact("ceiling.0.height", "a"), "84 in"),
    Case("floor-level", SLOPED, "floor", ("a", "1"), 1, "level with station 1", fact("floor.1.height", "a"), "1 in"),
    Case("floor-datum", SLOPED, "floor", ("a", "1"), 0, "level with the left end", fact("floor.1.height", "a"), "0 in"),
    Case(
        "wall-symmetric",
        room(),
        "wall-end",
        ("a",),
        140,
        "as much wall on the right as on the left",
        fact("width", "a"),
        "140 in",
    ),
    Case("wall-least", room(), "wall-end", ("a",), 94, "what stands on the wall", fact("width", "a"), "94 in"),
    Case("head-floor", DOORWAY, "opening-head", OPENING, None, "the floor", HEIGHT, "1 in"),
    # 12 m, 500 mm and 60 m, at the last sixteenth before them
    Case("ceiling-far", SLOPED, "ceiling", ("a", "0"), None, "as far as it goes", CEILING_0, "472 7/16 in"),
    Case("floor-far", SLOPED, "floor", ("a", "1"), None, "as far as it goes", FLOOR_1, "-19 5/8 in"),
    Case("floor-straight", BENT, "floor", ("a", "1"), 2, "straight between its neighbours", FLOOR_1, "2 in"),
    Case("wall-far", room(), "wall-end", ("a",), None, "as far as it goes", fact("width", "a"), "2362 3/16 in"),
)
