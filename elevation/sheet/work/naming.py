"""How sheets to work by name what they are about, and what must not be drilled for."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.errors import Missing, said
from elevation.planning.dressed import Dressed
from elevation.planning.stops import stopped
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.facts import title_of
from elevation.words import Style, msg, say


def names_of(rooms: Sequence[Dressed]) -> str:
    """The names of rooms, each once."""
    return ", ".join(dict.fromkeys(dressed.room.name for dressed in rooms if dressed.room.name))


def subject_of(room: Room, wall: SetOut, laid: TreatmentOut, style: Style) -> str:
    """What a sheet of one treatment is about: room, wall, treatment."""
    return " · ".join(text for text in (room.name, wall.wall_name or wall.wall, title_of(laid, style)) if text)


def band_of(style: Style) -> str:
    """What stands across the sheets of a treatment that has a *stop*."""
    return say(msg("STOP: do not build this as drawn; see the findings"), style)


def withheld_of(rooms: Sequence[Dressed]) -> tuple[str, ...]:
    """Treatments that must not be drilled for."""
    return tuple(
        subject_of(dressed.room, wall, laid, style_for(dressed.room))
        for dressed in rooms
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True)
        for laid in wall.treatments
        if laid.ref in stopped(findings)
    )


def nothing_to_drill(rooms: Sequence[Dressed]) -> Missing:
    """The error of rooms in which nothing is drilled for."""
    right = said("give a rod on brackets, or name another wall")
    return Missing(names_of(rooms), "", said("has no bracket to drill for"), right)
