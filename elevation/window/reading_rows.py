"""Readings in several places, as rows of the tape's form: where they stand, and which of them counts."""

from __future__ import annotations

from elevation.room.model import Opening, Room, Wall
from elevation.room.readings import NOTHING, Side, hangs_inside, readings_of, used
from elevation.room.style import style_for
from elevation.sheet.tape_order import TapeField, fields, reading_fields
from elevation.window.texts import tr
from elevation.words import Mm, msg

LAST = {"taken.width_bottom": "width", "taken.height_right": "height"}
"""The last reading of each kind: what counts is said under it."""


def has_readings(wall: Wall) -> bool:
    """Whether any opening of the wall was read in several places."""
    return any(opening.taken != NOTHING for opening in wall.openings)


def side_of(field: str) -> str:
    """The figure that a reading may become: ``width`` or ``height``; other fields are their own."""
    if not field.startswith("taken."):
        return field
    return "width" if field.startswith("taken.width") else "height"


def with_readings(wall: Wall) -> tuple[TapeField, ...]:
    """The fields of a wall, the readings of each width and height right under it."""
    readings = reading_fields(wall)
    found: list[TapeField] = []
    for entry in fields(wall):
        found.append(entry)
        if entry.field in ("width", "height"):
            found.extend(one for one in readings if one.ref == entry.ref and side_of(one.field) == entry.field)
    return tuple(found)


def counts(room: Room, wall: Wall, opening: Opening, side: Side) -> str:
    """Which reading counts, and why; empty where none was taken."""
    is_inside = hangs_inside(wall, opening.id)
    length = used(opening.taken, side, is_inside)
    if length is None or len(readings_of(opening.taken, side)) < 2:
        return ""
    if is_inside:
        message = msg("{figure} counts, the smallest: something hangs inside this opening.", figure=Mm(length.mm))
    else:
        message = msg("{figure} counts, the largest: what hangs before the wall has to clear it.", figure=Mm(length.mm))
    return tr(message, style_for(room))
