"""Places of what stands inside the wall: a found stud's own, and where brackets stick to framing.

Studs 16 in on centres: IRC R602.3(5). A stud is 1 1/2 in wide (PS 20); wood begins 1 1/4 in beside the opening (memory:
jamb and shims). The window of ``rooms.py`` stands from 50 to 90 in, so its kings are from 45 3/4 to 47 1/4 in and from
92 3/4 to 94 1/4 in. From studs found at 43 and 120 in others are likely at 59 and 75 in, over the window.
"""

from __future__ import annotations

from msgspec.structs import replace

from elevation.room.model import Board
from tests.handles.case import Case, fact
from tests.handles.rooms import LAYER, LAYER_FRONT, inch, room

FRAMED = room(substrate="board-timber-studs", studs=(inch(43), inch(120)))
B1 = (*LAYER, "b1")
PLACE = fact("place.at", *B1)
LEFT = fact("rod.left.at", *LAYER)
FIRST, SECOND_STUD = ("a", "0"), ("a", "1")

INSIDE = (
    Case("bracket-found-stud", FRAMED, "bracket", B1, 43, "the stud found at 43 in", PLACE, "3 in"),
    Case("bracket-likely-stud", FRAMED, "bracket", B1, 59, "a likely stud at 59 in: probe to confirm", PLACE, "19 in"),
    Case("bracket-king", FRAMED, "bracket", B1, 46.5, "likely wood beside the opening", PLACE, "6 1/2 in"),
    # The bracket stands 2 in in from the rod's end at 40 in: the end at 41 in brings it to the stud.
    Case("rod-end-stud", FRAMED, "rod-left", LAYER, 41, "its end bracket on the stud found at 43 in", LEFT, "9 in"),
    Case("stud-wall", FRAMED, "stud", FIRST, None, "the wall's end", fact("studs.0", "a"), "0 in"),
    # 30 mm is 1 3/16 in at the next sixteenth: studs do not stand in one place.
    Case("stud-stud", FRAMED, "stud", SECOND_STUD, None, "the stud beside it", fact("studs.1", "a"), "44 3/16 in"),
    Case("stud-after", FRAMED, "stud", SECOND_STUD, 59, "spacing from the stud before", fact("studs.1", "a"), "59 in"),
    Case("stud-before", FRAMED, "stud", FIRST, 104, "spacing from the stud after", fact("studs.0", "a"), "104 in"),
    Case("stud-king", FRAMED, "stud", FIRST, 46.5, "king stud of Window 1 likely", fact("studs.0", "a"), "46 1/2 in"),
)

# Brackets at 42 and 97 in; a stud found at 43 in is 42 1/4 to 43 3/4 in, likely ones at 27 and 104 in.
BOARDED = room(
    layer=replace(LAYER_FRONT, board=Board(inch(3), inch(3))), substrate="board-timber-studs", studs=(inch(27), inch(104))
)
BOARD_LEFT, BOARD_RIGHT = fact("board.left", *LAYER), fact("board.right", *LAYER)

INSIDE = (
    *INSIDE,
    # The stud found at 27 in begins at 26 1/4 in, 15 3/4 in beyond the bracket; that at 104 in ends at 104 3/4 in.
    Case("board-stud", BOARDED, "board-left", LAYER, 26.25, "just across the framing", BOARD_LEFT, "15 3/4 in"),
    Case("board-rod", BOARDED, "board-left", LAYER, 40, "as long as the rod", BOARD_LEFT, "2 in"),
    Case("board-wall", BOARDED, "board-left", LAYER, None, "the wall's end", BOARD_LEFT, "42 in"),
    Case("board-right-stud", BOARDED, "board-right", LAYER, 104.75, "just across the framing", BOARD_RIGHT, "7 3/4 in"),
    Case("board-bracket", BOARDED, "board-right", LAYER, None, "the end bracket", BOARD_RIGHT, "0 in"),
)
