"""A wall taken out of a room: what was joined to it round its corners ends on its own wall."""

from __future__ import annotations

from elevation.errors import BadInput, said
from elevation.room.corners import beside
from elevation.room.edits import remove
from elevation.room.find import wall_of
from elevation.room.going_round import end_here, go_on
from elevation.room.model import Room


def without_wall(room: Room, wall_id: str) -> Room:
    """A room without one of its walls, and without any reference to it.

    Rods that went on round its corners end beyond their openings again. Neighbours keep their angle and name no wall there.

    Raises
    ------
    NoSuch
        There is no such wall.
    BadInput
        It is the only one.
    """
    wall = wall_of(room, wall_id)
    if len(room.walls) == 1:
        raise BadInput(
            wall.name or wall.id,
            "",
            said("is the only wall of the room"),
            said("add another one before you delete it"),
        )
    for scheme in wall.schemes:
        for treatment in scheme.treatments:
            room = go_on(room, (wall_id, scheme.id, treatment.id), None)
    left, right = beside(room, wall, "left"), beside(room, wall, "right")
    if right is not None:
        for scheme in right.wall.schemes:
            for treatment in scheme.treatments:
                room = go_on(room, (right.wall.id, scheme.id, treatment.id), None)
    if left is not None:
        for scheme in wall_of(room, left.wall.id).schemes:
            for treatment in scheme.treatments:
                # Also what went round the corner without going on there.
                room = end_here(room, (left.wall.id, scheme.id, treatment.id), "right")
    return remove(room, (wall_id,))
