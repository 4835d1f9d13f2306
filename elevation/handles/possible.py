"""Keeps a handle within what can be: a room that its own file would refuse is never shown."""

from __future__ import annotations

from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.handles.model import Handle
from elevation.room.model import Room
from elevation.room.validate import check_room
from elevation.words import msg

_HALVINGS = 14
"""The limit is found to less than a 16,000th of the range: far below a graduation."""

_MEASURED = frozenset(
    {
        "opening-left", "opening-right", "opening-head", "opening-sill", "obstacle-x", "obstacle-y",
        "ceiling", "floor", "wall-end", "stud",
    }
)  # fmt: skip
"""Axes that change what was measured."""


def within_possible(handle: Handle, room: Room, alone: bool) -> Handle:
    """The handle with its range narrowed to where the room stays one that can be saved and read again.

    Parameters
    ----------
    handle : Handle
    room : Room
        The committed room.
    alone : bool
        How the handle is moved.
    """
    why = msg("what is measured beside it") if handle.axis in _MEASURED else msg("as far as it goes")
    low_mm, high_mm = _limit(handle, room, handle.low_mm, alone), _limit(handle, room, handle.high_mm, alone)
    return replace(
        handle,
        low_mm=low_mm,
        high_mm=high_mm,
        low_why=handle.low_why if low_mm == handle.low_mm else why,
        high_why=handle.high_why if high_mm == handle.high_mm else why,
    )


def _limit(handle: Handle, room: Room, end_mm: float, alone: bool) -> float:
    """The farthest possible place between where the handle is and ``end_mm``."""
    if _is_possible(handle, room, end_mm, alone):
        return end_mm
    inside_mm, outside_mm = handle.value_mm, end_mm
    for _ in range(_HALVINGS):
        middle_mm = (inside_mm + outside_mm) / 2
        if _is_possible(handle, room, middle_mm, alone):
            inside_mm = middle_mm
        else:
            outside_mm = middle_mm
    return inside_mm


def _is_possible(handle: Handle, room: Room, value_mm: float, alone: bool) -> bool:
    try:
        check_room(handle.move(room, value_mm, alone), "")
    except BadInput:
        return False
    return True
