"""Edits of a corner: what one wall says of it, the other wall says too."""

from __future__ import annotations

from elevation.room.corners import Side, beside
from elevation.room.edits import changed, replace_at
from elevation.room.find import wall_of
from elevation.room.model import Room, Wall, WallEnd


def _other(side: Side) -> Side:
    return "left" if side == "right" else "right"


def _end(wall: Wall, side: Side) -> WallEnd:
    return wall.left if side == "left" else wall.right


def put_angle(room: Room, wall_id: str, side: Side, angle: float) -> Room:
    """A room in which the corner at one end of a wall has another inside angle, in degrees, said the same at both walls."""
    wall = wall_of(room, wall_id)
    there = beside(room, wall, side)
    room = replace_at(room, (wall_id,), **{side: changed(_end(wall, side), angle=angle)})
    if there is None:
        return room
    back = _other(side)
    other = wall_of(room, there.wall.id)
    if _end(other, back).neighbour not in (None, wall_id):
        return room
    return replace_at(room, (other.id,), **{back: changed(_end(other, back), angle=angle)})


def put_neighbour(room: Room, wall_id: str, side: Side, other_id: str | None) -> Room:
    """A room in which another wall, or none, stands round the corner at one end; both walls then name each other.

    The wall that stood there before no longer names this one.
    """
    back = _other(side)
    for one in room.walls:
        end = _end(one, back)
        if end.neighbour == wall_id and one.id != other_id:
            room = replace_at(room, (one.id,), **{back: changed(end, neighbour=None)})
    own = _end(wall_of(room, wall_id), side)
    room = replace_at(room, (wall_id,), **{side: changed(own, neighbour=other_id)})
    if other_id is None:
        return room
    there = _end(wall_of(room, other_id), back)
    if there.neighbour not in (None, wall_id):
        return room
    return replace_at(room, (other_id,), **{back: changed(there, kind="corner", neighbour=wall_id, angle=own.angle)})
