"""How numbers and words are said for one room."""

from __future__ import annotations

from elevation.room.model import Room
from elevation.words import Style, style_of


def style_for(room: Room) -> Style:
    """The number style and language in which this room's texts are said.

    Parameters
    ----------
    room : Room
        Its unit, graduation and language of sheets are used.
    """
    return style_of(room.unit, room.graduation_mm, room.language)
