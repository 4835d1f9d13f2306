"""Corners: both walls say the same of one, and what goes round it can."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.room.corners import angles_of, before_corner, beside
from elevation.room.edits import replace_at, replace_rod
from elevation.room.first import FirstFacts, first_room
from elevation.room.going_round import choices, go_on
from elevation.room.joining import put_angle, put_neighbour
from elevation.room.model import Held, Room, WallEnd
from elevation.room.validate import check_room
from elevation.units import parse_length

ONE = first_room(FirstFacts(*(parse_length(text) for text in ("144 in", "96 in", "36 in", "54 in", "26 in")))).walls[0]
LEFT, RIGHT = ("a", "s1", "t1", "l1"), ("b", "s1", "t1", "l1")
NOTHING = parse_length("0 in")


def room(angle: float = 90.0, other: float | None = None) -> Room:
    """Two walls with a window each that meet in a corner: ``a`` ends where ``b`` begins."""
    first = replace(ONE, id="a", left=WallEnd("open"), right=WallEnd("corner", "b", angle))
    second = replace(ONE, id="b", left=WallEnd("corner", "a", angle if other is None else other), right=WallEnd("open"))
    return Room(walls=(first, second))


def fault(made: Room) -> str:
    try:
        check_room(made, "x")
    except BadInput as error:
        return str(error)
    return ""


@pytest.mark.parametrize(("other", "right"), [(90.0, True), (90.04, True), (90.06, False), (89.9, False)])
def test_both_walls_of_a_corner_say_its_angle(other: float, right: bool) -> None:
    told = fault(room(90.0, other))
    assert (told == "") is right
    assert right or "walls[1].left.angle" in told


def test_a_rod_that_goes_on_is_one_both_walls_know() -> None:
    gone = go_on(room(), RIGHT[:3], "t1")
    assert fault(gone) == ""
    assert before_corner(gone, RIGHT[:3]) == LEFT[:3]
    held = [gone.walls[wall].schemes[0].treatments[0].layers[0].rod for wall in (0, 1)]
    assert (held[0].right.hold, held[1].left.hold) == ("around-corner", "around-corner")
    # The ends away from the corner stay as they were.
    assert held[0].left == ONE.schemes[0].treatments[0].layers[0].rod.left
    assert go_on(gone, RIGHT[:3], "t1") is gone


def test_a_rod_that_goes_on_no_more_ends_beyond_its_opening() -> None:
    back = go_on(go_on(room(), RIGHT[:3], "t1"), RIGHT[:3], None)
    rods = [back.walls[wall].schemes[0].treatments[0].layers[0].rod for wall in (0, 1)]
    assert [rods[0].right.hold, rods[1].left.hold] == ["beyond-opening", "beyond-opening"]
    # Common practice, no source: 6 in.
    assert rods[0].right.at.mm == pytest.approx(152.4)
    assert before_corner(back, RIGHT[:3]) is None
    assert fault(back) == ""


def test_what_could_go_on_hangs_before_the_neighbour_in_the_same_scheme() -> None:
    assert [one.id for one in choices(room(), RIGHT[:3])] == ["t1"]
    assert choices(room(), LEFT[:3]) == ()  # no corner at its left
    assert choices(replace_at(room(), LEFT[:3], mount="reveal"), RIGHT[:3]) == ()
    renamed = replace_at(room(), ("a", "s1"), id="other")
    assert choices(renamed, RIGHT[:3]) == ()
    assert before_corner(replace_at(renamed, RIGHT[:3], continues="t1"), RIGHT[:3]) is None


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({"continues": ""}, "continues: is no id"),
        ({"continues": "t" * 65}, "continues: is no id"),
        ({"continues": "t" * 64}, ""),
        ({"continues": "t1", "mount": "reveal"}, "only rods before the wall go round a corner"),
    ],
)
def test_a_treatment_that_goes_on(fields: dict[str, Any], told: str) -> None:
    found = fault(replace_at(room(), RIGHT[:3], **fields))
    assert told in found
    assert (found == "") is (told == "")


def test_a_rod_in_a_reveal_goes_round_no_corner() -> None:
    around = Held("around-corner", NOTHING)
    inside = replace_at(room(), LEFT[:3], mount="reveal")
    assert "rod.right" in fault(replace_rod(inside, LEFT, right=around))
    assert "a tension rod presses between two jambs" in fault(replace_rod(room(), LEFT, right=around, kind="tension-rod"))


def test_an_angle_is_put_at_both_walls() -> None:
    bent = put_angle(room(), "a", "right", 135.0)
    assert (bent.walls[0].right.angle, bent.walls[1].left.angle) == (135.0, 135.0)
    assert angles_of(bent, bent.walls[0]) == (90.0, 135.0)
    # The other wall names a third one: what it says of that corner stays its own.
    third = replace_at(room(), ("b",), left=WallEnd("corner", "c", 100.0))
    assert put_angle(third, "a", "right", 135.0).walls[1].left == WallEnd("corner", "c", 100.0)


def test_walls_are_joined_and_parted_from_both_sides() -> None:
    alone = replace_at(replace_at(room(), ("a",), right=WallEnd("corner")), ("b",), left=WallEnd("open"))
    joined = put_neighbour(alone, "a", "right", "b")
    assert (joined.walls[0].right.neighbour, joined.walls[1].left) == ("b", WallEnd("corner", "a", 90.0))
    found = beside(joined, joined.walls[1], "left")
    assert found is not None
    assert found.wall.id == "a"
    parted = put_neighbour(joined, "a", "right", None)
    assert (parted.walls[0].right.neighbour, parted.walls[1].left.neighbour) == (None, None)


def test_a_wall_that_is_joined_elsewhere_is_left_alone() -> None:
    third = replace(ONE, id="c", left=WallEnd("open"), right=WallEnd("open"))
    three = replace(room(), walls=(*room().walls, third))
    # c would end where b begins, but b begins at a: only c says it.
    made = put_neighbour(three, "c", "right", "b")
    assert made.walls[2].right.neighbour == "b"
    assert made.walls[1].left.neighbour == "a"
    # a goes on to c now: b no longer names it.
    moved = put_neighbour(three, "a", "right", "c")
    assert (moved.walls[0].right.neighbour, moved.walls[1].left.neighbour, moved.walls[2].left.neighbour) == (
        "c",
        None,
        "a",
    )
