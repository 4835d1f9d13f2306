"""What a scheme is called where a person reads it: its name, or its number on the wall; never its id."""

from __future__ import annotations

from elevation.room.find import wall_of
from elevation.room.model import Room, Scheme
from elevation.words import Message, Style, msg, say


def scheme_title(scheme: Scheme, number: int) -> Message:
    """The scheme's name; ``Scheme 2`` for one without, ``number`` counted from 1 along the wall's schemes."""
    return msg("{name}", name=scheme.name) if scheme.name else msg("Scheme {number}", number=number)


def scheme_called(room: Room, wall_id: str, scheme_id: str) -> Message:
    """``scheme_title`` of the scheme with that id on that wall.

    Raises
    ------
    NoSuch
        There is no such wall.
    """
    schemes = enumerate(wall_of(room, wall_id).schemes, 1)
    return next((scheme_title(one, number) for number, one in schemes if one.id == scheme_id), msg("Scheme"))


def scheme_line(room: Room, wall_id: str, scheme_id: str | None, style: Style) -> str:
    """``Scheme: Linen`` for a title block, ``Scheme 2`` for one without a name; empty for the bare wall."""
    if not scheme_id:
        return ""
    called = scheme_called(room, wall_id, scheme_id)
    return say(msg("Scheme: {name}", name=called) if "name" in called.params else called, style)
