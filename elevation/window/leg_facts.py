"""The row that lets a treatment go on from the wall to the left, round the corner."""

from __future__ import annotations

from functools import partial
from typing import Any

from elevation.room.corners import goes_round
from elevation.room.find import treatment_of
from elevation.room.going_round import choices, go_on
from elevation.room.model import Ref, Rod, Room
from elevation.room.validate import check_room
from elevation.session.session import Session
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


def bend_facts(session: Session, lead: Ref, first: Rod) -> tuple[Fact, ...]:
    """How what goes round a corner gets round it; none for what does not. Read and written where the treatment begins."""
    if not goes_round(treatment_of(session.room, lead[:3])):
        return ()
    facts = [Fact(lead, "rod.bend", msg("bent round corners to a radius of (none: joined on the mitre)"))]
    if first.kind == "track":
        facts.append(Fact(lead, "rod.packet.least_bend", msg("bent to a radius of at least, as its sheet says")))
    return tuple(facts)


def _put(ref: Ref, room: Room, key: Any) -> Room:
    made = go_on(room, ref, key or None)
    check_room(made, "")
    return made


def _read(ref: Ref, room: Room) -> str:
    return treatment_of(room, ref).continues or ""
