"""One window more: as the last one where that fits, in round figures that nobody takes for the tape's."""

from __future__ import annotations

import pytest

from elevation.room.model import Opening, Room, Wall
from elevation.room.validate import check_room
from elevation.units import parse_length
from elevation.window.standing_edits import more_opening


@pytest.mark.parametrize(
    ("wall", "width", "found"),
    [
        # The gap beside the window is 180 - 30 - 36 - 3 1/2 = 110 1/2 in: 36 fits, in the middle at a whole inch.
        ("180", "36", ("36 in", "106 in")),
        # 33 1/2 in are left: 36 does not fit, a third is 11 1/6.
        ("103", "36", ("11 in", "80 in")),
    ],
)
def test_a_window_more_is_as_wide_as_the_last_or_a_round_third(wall: str, width: str, found: tuple[str, str]) -> None:
    casing = parse_length("3 1/2")
    window = Opening(
        "w1", parse_length(width), parse_length("50 1/2"), left=parse_length("30"), sill=parse_length("30"), casing=casing
    )
    room, ref = more_opening(Room(walls=(Wall("a", width=parse_length(wall), openings=(window,)),)), "a")
    check_room(room, "x")
    made = room.walls[0].openings[1]
    assert made.id == ref[1]
    assert made.left is not None
    assert (made.width.text, made.left.text, made.height.text) == (*found, "50 1/2 in")
