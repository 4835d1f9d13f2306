"""Places of rods inside an opening and under the ceiling, and of a back rod on double brackets.

The window of ``rooms.py`` stands from 50 to 90 in across and from 24 to 80 in up, with glass from 26 to 78 in in two rows.
The rod is of 0.922 in tube (ANSI C80.3): half of it is 0.461 in.
"""

from __future__ import annotations

from msgspec.structs import replace

from elevation.room.edits import replace_at, replace_rod
from elevation.room.layering import with_back_layer
from elevation.room.model import Hem
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
