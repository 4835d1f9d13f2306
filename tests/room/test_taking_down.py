"""A wall taken out of a room: nothing names it any more, and what went on round its corners ends on its own wall."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput, NoSuch
from elevation.places import demo_rooms
from elevation.room.corners import AROUND
from elevation.room.edits import replace_at
from elevation.room.encode import encode_room
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.room.taking_down import without_wall
from elevation.room.validate import check_room


@pytest.fixture(scope="module")
def bay() -> Room:
    return load_room(demo_rooms() / "9-bay.room.json")


@pytest.mark.parametrize("gone", ["left", "middle", "right"])
def test_nothing_names_it_and_every_rod_ends_before_its_corner(bay: Room, gone: str) -> None:
    room = without_wall(bay, gone)
    assert [wall.id for wall in room.walls] == [wall.id for wall in bay.walls if wall.id != gone]
    check_room(room, "room")
    known = {wall.id for wall in room.walls}
    for wall in room.walls:
        assert {wall.left.neighbour, wall.right.neighbour} <= known | {None}
        for scheme in wall.schemes:
            for treatment in scheme.treatments:
                joins_left = treatment.continues is not None
                for layer in treatment.layers:
                    # Of three in a row the outer two are left alone, two side by side stay joined.
                    assert (layer.rod.left.hold == AROUND) == joins_left
                    goes_on = gone != "middle" and wall is room.walls[0]
                    assert (layer.rod.right.hold == AROUND) == goes_on
                assert joins_left == (gone != "middle" and wall is room.walls[1])


def test_the_neighbours_keep_their_angle(bay: Room) -> None:
    left, right = without_wall(bay, "middle").walls
    assert (left.right.angle, right.left.angle) == (135, 135)


def test_the_room_it_is_taken_from_stays_as_it_was(bay: Room) -> None:
    before = encode_room(bay)
    without_wall(bay, "middle")
    assert encode_room(bay) == before


def test_the_last_wall_is_kept_and_the_sentence_says_why(bay: Room) -> None:
    room = without_wall(without_wall(bay, "left"), "right")
    with pytest.raises(BadInput, match="Middle: is the only wall of the room; add another one before you delete it"):
        without_wall(room, "middle")
    with pytest.raises(NoSuch):
        without_wall(bay, "attic")


def test_a_rod_that_went_round_without_going_on_there_is_let_go_too(bay: Room) -> None:
    ref = ("middle", *(part.id for part in (bay.walls[1].schemes[0], bay.walls[1].schemes[0].treatments[0])))
    room = without_wall(replace_at(bay, ref, continues=None), "middle")
    assert room.walls[0].schemes[0].treatments[0].layers[0].rod.right.hold != AROUND
