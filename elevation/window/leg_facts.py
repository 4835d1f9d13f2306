"""The row that lets a treatment go on from the wall to the left, round the corner."""

from __future__ import annotations

from functools import partial
from typing import Any

from elevation.room.find import treatment_of
from elevation.room.going_round import choices, go_on
from elevation.room.model import Ref, Room
from elevation.room.validate import check_room
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import msg


def leg_facts(room: Room, ref: Ref) -> tuple[Fact, ...]:
    """The row of a treatment; none where no treatment hangs on a wall to the left."""
    found = choices(room, ref)
    if not found and treatment_of(room, ref).continues is None:
        return ()
    named = tuple(
        (one.id, one.name or tr(msg("treatment of {openings}", openings=", ".join(one.openings)))) for one in found
    )
    options = (("", tr(msg("begins on this wall"))), *named)
    return (
        Fact(
            ref,
            "continues",
            msg("goes on from the left corner"),
            "choice",
            options,
            edit=partial(_put, ref),
            read=partial(_read, ref),
        ),
    )


def _put(ref: Ref, room: Room, key: Any) -> Room:
    made = go_on(room, ref, key or None)
    check_room(made, "")
    return made


def _read(ref: Ref, room: Room) -> str:
    return treatment_of(room, ref).continues or ""
