"""Places of brackets, hems and leading edges: cloth from 86 1/4 in down, floor at 0, stacks of 10.

Every figure is worked out by hand from the round numbers of ``rooms.py`` (inches); the rules' own limits are common
practice, no source. Rings with clips put the top of the cloth 1 3/4 in below the middle of
3/4 in conduit (sellers' pages, as in the headings table).
"""

from __future__ import annotations

from msgspec.structs import replace

from elevation.room.file import dump_room, load_bytes
from elevation.room.model import Bracket, Hem, Obstacle, TieBack
from tests.findings.rooms import LAYER as CORNER_LAYER
from tests.findings.test_corner import round_corner
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
B1_REF, B2_REF, P1_REF = (*LAYER, "b1"), (*LAYER, "b2"), (*LAYER, "p1")
B1, B2 = fact("place.at", *B1_REF), fact("place.at", *B2_REF)
HEM, WHOLE_HEM = fact("hem.at", *LAYER), fact("hem", *LAYER)
P1 = fact("drawn", *P1_REF)
LENGTH = with_layer(hem=Hem("length", inch(70)))
LONGER = with_rod(right=held("beyond-opening", 14))
RADIATOR = Obstacle(id="x1", kind="hot-water-radiator", left=inch(60), bottom=inch(0), width=inch(20), height=inch(20))
SINGLE = room(layer=with_layer(panels=LAYER_FRONT.panels[:1]))
MET = room(layer=with_layer(panels=(LAYER_FRONT.panels[0], replace(LAYER_FRONT.panels[1], drawn=inch(40)))))

THREE = room(
    layer=with_layer(
        brackets=(
            LAYER_FRONT.brackets[0],
            Bracket(id="b3", place=held("from-left-end", 30)),
            Bracket(id="b2", place=held("from-right-end", 18)),
        )
    )
)
# As a file says it: worked out lengths have a text of their own.
AT_CORNER = load_bytes(dump_room(round_corner()), "corner")
THIRD = fact("place.at", *LAYER, "b3")

CLOTH = (
    Case("bracket-left-end", room(), "bracket", B1_REF, 40, "the rod's left end", B1, "0 in"),
    Case("bracket-right-end", room(), "bracket", B2_REF, 100, "the rod's right end", B2, "0 in"),
    Case("bracket-least", room(), "bracket", B1_REF, 44, "6 in beyond the opening, the least", B1, "4 in"),
    Case("bracket-like-right", room(), "bracket", B1_REF, 43, "as far in as the right end bracket", B1, "3 in"),
    Case("bracket-like-left", room(), "bracket", B2_REF, 98, "as far in as the left end bracket", B2, "2 in"),
    Case("bracket-middle", room(layer=LONGER), "bracket", B1_REF, 72, "the middle of the rod", B1, "32 in"),
    Case("bracket-over", room(layer=LONGER), "bracket", B1_REF, 70, "over the middle of Window 1", B1, "30 in"),
    Case(
        "bracket-other-rod",
        room(layers=(BACK,)),
        "bracket",
        B1_REF,
        45,
        "in line with a bracket of the other rod",
        B1,
        "5 in",
    ),
    Case(
        "bracket-joint",
        room(layer=with_rod(right=held("beyond-opening", 50)), width=inch(190)),
        "bracket",
        B1_REF,
        90,
        "under the joint of the rod",
        B1,
        "50 in",
    ),
    Case(
        "bracket-between",
        room(openings=(WINDOW, SECOND), covers=("w1", "w2"), layer=with_rod(right=held("beyond-opening", 12))),
        "bracket",
        B1_REF,
        100,
        "half way between Window 1 and Window 2",
        B1,
        "60 in",
    ),
    # Neighbours at 42 and 82 in.
    Case("bracket-midway", THREE, "bracket", (*LAYER, "b3"), 62, "midway between its neighbours", THIRD, "22 in"),
    # The axis ends 3 1/2 in before a square corner at 144 in; a bracket stands 6 in from there at most.
    Case(
        "bracket-corner",
        AT_CORNER,
        "bracket",
        (*CORNER_LAYER, "b2"),
        134.5,
        "as far from the corner as a bracket may stand",
        fact("place.at", *CORNER_LAYER, "b2"),
        "6 in",
    ),
    Case("hem-top", room(), "hem", LAYER, None, "the top of the cloth", HEM, "84 1/4 in"),
    Case("hem-kiss", room(), "hem", LAYER, 0, "kisses the floor", WHOLE_HEM, Hem("kiss")),
    Case(
        "hem-clear",
        room(layer=with_layer(hem=Hem("clear", inch(3)))),
        "hem",
        LAYER,
        2.25,
        "length of the ready-made 84 in panel",
        HEM,
        "2 1/4 in",
    ),
    Case(
        "hem-usual",
        room(layer=with_layer(hem=Hem("break", inch(1)))),
        "hem",
        LAYER,
        0.5,
        "just clear of the floor",
        WHOLE_HEM,
        Hem("clear", inch("1/2")),
    ),
    Case(
        "hem-just-clears",
        room(layer=with_rod(height=held("above-casing", "2 1/2"))),
        "hem",
        LAYER,
        0.75,
        "84 in panel just clears the floor",
        HEM,
        "3/4 in",
    ),
    Case("hem-sill", room(layer=LENGTH), "hem", LAYER, 24, "at the sill of Window 1", HEM, "62 1/4 in"),
    Case(
        "hem-apron",
        room(openings=(replace(WINDOW, apron=inch(3)),), layer=LENGTH),
        "hem",
        LAYER,
        21,
        "at the apron's lower edge, Window 1",
        HEM,
        "65 1/4 in",
    ),
    Case("hem-neighbour", room(**TWO), "hem", LAYER, 3, "level with the hem of Window 2", HEM, "3 in"),
    Case("hem-in-hand", room(layer=IN_HAND), "hem", LAYER, 0.5, "84 in panel in hand just clears", HEIGHT, "2 1/4 in"),
    Case(
        "lead-open",
        room(layer=with_layer(panels=(replace(LAYER_FRONT.panels[0], drawn=inch(20)),))),
        "lead",
        P1_REF,
        None,
        "fully open",
        P1,
        None,
    ),
    Case("lead-glass", room(), "lead", P1_REF, 52, "at the edge of the glass, Window 1", None, None),
    Case(
        "lead-middle",
        room(layer=with_layer(panels=LAYER_FRONT.panels[:1])),
        "lead",
        P1_REF,
        70,
        "the middle of Window 1",
        None,
        None,
    ),
    # The kit's plate is 1 1/2 in wide, the casing begins at 46.
    Case("bracket-casing", room(), "bracket", B1_REF, 45.25, "bracket plate beside the casing of Window 1", B1, "5 1/4 in"),
    Case(
        "bracket-most",
        room(layer=with_rod(left=held("beyond-opening", 16))),
        "bracket",
        B1_REF,
        38,
        "12 in beyond the opening, the most",
        B1,
        "4 in",
    ),
    # A panel in hand pulls its rod: 85 3/4 in below it is the hem.
    Case("hem-floor", room(layer=LENGTH), "hem", LAYER, None, "the floor", HEM, "86 1/4 in"),
    Case("hem-hand-kiss", room(layer=IN_HAND), "hem", LAYER, 0, "kisses the floor", HEIGHT, "1 3/4 in"),
    Case("hem-hand-low", room(layer=IN_HAND), "hem", LAYER, None, "no more cloth on the floor", HEIGHT, "-17 7/8 in"),
    Case("hem-hand-ceiling", room(layer=IN_HAND), "hem", LAYER, None, "the rod meets the ceiling", HEIGHT, "23 1/2 in"),
    Case(
        "hem-hand-thirds", room(layer=IN_HAND), "hem", LAYER, 14.25, "two thirds up from head to ceiling", HEIGHT, "16 in"
    ),
    Case("hem-hand-half", room(layer=IN_HAND), "hem", LAYER, 10.25, "half way from head to ceiling", HEIGHT, "12 in"),
    Case(
        "hem-radiator",
        room(layer=LENGTH, obstacles=(RADIATOR,)),
        "hem",
        LAYER,
        21,
        "1 in above the hot-water radiator",
        HEM,
        "65 1/4 in",
    ),
    Case(
        "hem-most-cloth",
        room(),
        "hem",
        LAYER,
        None,
        "no more cloth on the floor",
        WHOLE_HEM,
        Hem("puddle", inch("19 5/8")),
    ),
    Case("hem-on-sill", room(layer=with_layer(hem=Hem("sill", inch(2)))), "hem", LAYER, None, "the sill", HEM, "0 in"),
    Case(
        "hem-on-apron",
        room(layer=with_layer(hem=Hem("apron", inch(2)))),
        "hem",
        LAYER,
        None,
        "where the apron hem is measured from",
        HEM,
        "0 in",
    ),
    # Cloth begins half an inch outside the left bracket, at 41 1/2, and ends at 97 1/2.
    Case("lead-far", SINGLE, "lead", P1_REF, None, "as far as it draws", P1, "54 in"),
    Case("lead-closed", room(), "lead", P1_REF, 69.5, "fully closed", P1, "28 in"),
    Case("lead-half", room(), "lead", P1_REF, 60.5, "half drawn", P1, "19 in"),
    Case("lead-other", MET, "lead", P1_REF, None, "the other panel", P1, "16 in"),
)

# The left panel begins at 41 1/2 in, so its hook 2 in beyond stands at 39 1/2 in and a waist of its stack, 10 in, ends at
# 49 1/2 in. The hem is 3/4 in up, the top of the cloth 86 1/4 in: thirds of the drop of 85 1/2 in are 29 1/4 and 57 3/4 in.
DRAWN = tuple(replace(panel, drawn=inch(26)) for panel in LAYER_FRONT.panels)
TIED = room(layer=with_layer(tie=TieBack(waist=inch(6)), hem=Hem("clear", inch("3/4")), panels=DRAWN))
TIE_AT, WAIST = fact("tie.at", *LAYER), fact("tie.waist", *LAYER)

CLOTH = (
    *CLOTH,
    Case(
        "tie-third",
        room(layer=with_layer(tie=TieBack("above-floor", at=inch(40)), hem=Hem("clear", inch("3/4")))),
        "tie-height",
        P1_REF,
        29.25,
        "a third of the drop up",
        TIE_AT,
        "29 1/4 in",
    ),
    Case("tie-two-thirds", TIED, "tie-height", P1_REF, 57.75, "two thirds of the drop up", TIE_AT, "57 3/4 in"),
    Case("tie-sill", TIED, "tie-height", P1_REF, 24, "level with the sill", TIE_AT, "24 in"),
    Case("tie-hem", TIED, "tie-height", P1_REF, None, "the hem", TIE_AT, "5 15/16 in"),
    Case("tie-heading", TIED, "tie-height", P1_REF, None, "the heading", TIE_AT, "81 1/16 in"),
    Case("waist-stack", TIED, "tie-waist", P1_REF, 49.5, "as wide as its stack", WAIST, "10 in"),
    Case("waist-wide", TIED, "tie-waist", P1_REF, None, "the panel's own width", WAIST, "26 in"),
    Case("waist-tight", TIED, "tie-waist", P1_REF, None, "as tight as cloth is gathered", WAIST, "13/16 in"),
)
