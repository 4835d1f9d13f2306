"""Places of rods inside an opening and under the ceiling, and of a back rod on double brackets.

The window of ``rooms.py`` stands from 50 to 90 in across and from 24 to 80 in up, with glass from 26 to 78 in in two rows.
The rod is of 0.922 in tube (ANSI C80.3): half of it is 0.461 in.
"""

from __future__ import annotations

from msgspec.structs import replace

from elevation.room.edits import replace_at, replace_rod
from elevation.room.layering import with_back_layer
from elevation.room.model import Blind, Hem, Pelmet, Room
from elevation.room.mounting import mounted
from elevation.trade.tables import load_trade
from tests.handles.case import Case, fact
from tests.handles.rooms import LAYER, WINDOW, held, inch, room, with_layer, with_rod

TRADE = load_trade()
TREATMENT = LAYER[:3]
HEIGHT, LEFT = fact("rod.height.at", *LAYER), fact("rod.left.at", *LAYER)

BARRED = replace(WINDOW, rows=2, reveal=inch(4))
IN_REVEAL = mounted(room(openings=(BARRED,)), TREATMENT, "reveal", TRADE)
CAFE = mounted(room(openings=(replace(BARRED, rows=1, height=inch(54)),)), TREATMENT, "sash", TRADE)
ON_SASH = replace_rod(CAFE, LAYER, height=held("above-sill", 30))
OVERHEAD = mounted(room(), TREATMENT, "ceiling", TRADE)
LONG = mounted(room(openings=(BARRED,), layer=with_layer(hem=Hem("length", inch(40)))), TREATMENT, "reveal", TRADE)
DOUBLE, BACK_LAYER = with_back_layer(room(), TREATMENT, TRADE)
# On another wall the rod is 6 in above the same casing: 90 in.
OTHER = replace(room(layer=with_rod(height=held("above-casing", 6))).walls[0], id="b", name="north")
TWO_WALLS = replace(room(), walls=(*room().walls, OTHER))

MOUNTS = (
    Case("other-wall", TWO_WALLS, "rod-height", LAYER, 90, "level with the rod of Window 1, wall north", HEIGHT, "6 in"),
    # Its top under the head, its underside over the sill.
    Case("reveal-head", IN_REVEAL, "rod-height", LAYER, None, "the head", None, None),
    Case("reveal-sill", IN_REVEAL, "rod-height", LAYER, None, "the sill", None, None),
    # Two rows of lites from 26 to 78 in: the bar is at 52 in, which is 28 in below the head.
    Case("reveal-bar", IN_REVEAL, "rod-height", LAYER, 52, "level with a glazing bar|half of the opening", HEIGHT, "28 in"),
    # A socket is 7/16 in long.
    Case("reveal-jamb", IN_REVEAL, "rod-left", LAYER, None, "the jamb", LEFT, "7/16 in"),
    # Cloth 40 in long hangs from 1 3/4 in below the axis: 24 + 41 3/4 in.
    Case("reveal-cloth", LONG, "rod-height", LAYER, 65.75, "the cloth just clears the sill", HEIGHT, "14 1/4 in"),
    # Parts of 54 in over a sill at 24 in, from which it is held.
    Case("sash-half", ON_SASH, "rod-height", LAYER, 51, "half of the opening", HEIGHT, "27 in"),
    Case("sash-thirds", ON_SASH, "rod-height", LAYER, 60, "two thirds of the opening", HEIGHT, "36 in"),
    Case("sash-quarters", ON_SASH, "rod-height", LAYER, 64.5, "three quarters of the opening", HEIGHT, "40 1/2 in"),
    Case("ceiling-drop", OVERHEAD, "rod-height", LAYER, None, "as high as its brackets hold it", HEIGHT, "0 in"),
    # The double bracket stands 2 in in from the rod's end at 40 in.
    Case(
        "double-bracket",
        replace_at(DOUBLE, (*BACK_LAYER, "b1"), place=held("from-left-end", 5)),
        "bracket",
        (*BACK_LAYER, "b1"),
        42,
        "on a double bracket of the front layer",
        fact("place.at", *BACK_LAYER, "b1"),
        "2 in",
    ),
)

# The rod is 88 in high, from 40 to 100 in with flat caps; the curtain 85 1/2 in long, from 86 1/4 down to 3/4 in. The
# pelmet's top is 3 in over the rod, at 91 in: a sixth of 85 1/2 in is 14 1/4 in, a fifth 17 1/10 in.
_PELMET = Pelmet(depth=inch(10), above=inch(3), left=inch(4), right=inch(4), projection=inch(8))
_BLIND = Blind(height=inch(3), projection=inch(2), drop=inch(8))


def _dressed(clear: str = "3/4") -> Room:
    return replace_at(room(layer=with_layer(hem=Hem("clear", inch(clear)))), TREATMENT, pelmet=_PELMET, blind=_BLIND)


_DEEP, _ABOVE, _LEFT, _RIGHT, _DROP = (
    fact(path, *TREATMENT) for path in ("pelmet.depth", "pelmet.above", "pelmet.left", "pelmet.right", "blind.drop")
)

MOUNTS = (
    *MOUNTS,
    Case(
        "pelmet-sixth", _dressed(), "pelmet-depth", TREATMENT, 76.75, "a sixth of the curtain's length", _DEEP, "14 1/4 in"
    ),
    Case(
        "pelmet-fifth",
        _dressed("3 3/4"),
        "pelmet-depth",
        TREATMENT,
        74.5,
        "a fifth of the curtain's length",
        _DEEP,
        "16 1/2 in",
    ),
    Case("pelmet-cap", _dressed(), "pelmet-left", TREATMENT, 40 - 0.25, "just past what ends the rod", _LEFT, "1/4 in"),
    Case(
        "pelmet-cap-right", _dressed(), "pelmet-right", TREATMENT, 100.25, "just past what ends the rod", _RIGHT, "1/4 in"
    ),
    Case("pelmet-heading", _dressed(), "pelmet-depth", TREATMENT, 86.25, "just hides the heading", _DEEP, "4 3/4 in"),
    Case("pelmet-glass", _dressed(), "pelmet-depth", TREATMENT, 78, "just clears the glass", _DEEP, "13 in"),
    Case("pelmet-floor", _dressed(), "pelmet-depth", TREATMENT, None, "the floor", _DEEP, "91 in"),
    Case("pelmet-shallow", _dressed(), "pelmet-depth", TREATMENT, None, "as shallow as a pelmet is", _DEEP, "1 5/8 in"),
    Case("pelmet-ceiling", _dressed(), "pelmet-top", TREATMENT, None, "the ceiling", _ABOVE, "20 in"),
    Case("pelmet-rod", _dressed(), "pelmet-top", TREATMENT, None, "the rod", _ABOVE, "0 in"),
    Case("pelmet-wall", _dressed(), "pelmet-left", TREATMENT, None, "the wall's end", _LEFT, "40 in"),
    Case("pelmet-rod-end", _dressed(), "pelmet-right", TREATMENT, None, "the rod's end", _RIGHT, "0 in"),
    Case("blind-sill", _dressed(), "blind-drop", TREATMENT, None, "the sill", _DROP, "53 in"),
    Case("blind-glass", _dressed(), "blind-drop", TREATMENT, 26, "just covers the glass", _DROP, "51 in"),
    Case("blind-half", _dressed(), "blind-drop", TREATMENT, 52, "half the glass covered", _DROP, "25 in"),
    Case("blind-raised", _dressed(), "blind-drop", TREATMENT, None, "raised", None, None),
)
