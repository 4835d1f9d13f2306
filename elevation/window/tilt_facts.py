"""The rows that say whether a rod hangs level or along a line beside it, and how crooked each way looks."""

from __future__ import annotations

from functools import partial
from typing import Any

from elevation.findings.changing_tilt import can_lean, with_tilt
from elevation.findings.looks_words import NAMES, told
from elevation.room.find import layer_of
from elevation.room.model import Ref, Room
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.tilt import look_of
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import msg


def tilt_facts(session: Session, ref: Ref) -> tuple[Fact, ...]:
    """The choice, and its figures where they differ; none for a rod that goes round a corner.

    Parameters
    ----------
    session : Session
    ref : Ref
        The layer's.
    """
    if not can_lean(session.room, ref):
        return ()
    ways = tuple((key, tr(name)) for key, name in NAMES.items())
    return (
        Fact(ref, "rod.tilt", msg("level or look"), "choice", ways, edit=partial(_put, ref)),
        Fact(ref, "rod.tilt looks", msg("how crooked each way looks"), "told", read=partial(_looks, session, ref)),
    )


def _put(ref: Ref, room: Room, key: Any) -> Room:
    return room if layer_of(room, ref).rod.tilt == key else with_tilt(room, ref, key)


def _looks(session: Session, ref: Ref, room: Room) -> str:
    set_out = session.set_out()
    for treatment in set_out.treatments:
        for layer in treatment.layers:
            if layer.ref == ref and treatment.openings:
                half_mm = room.graduation_mm / 2
                found = told(look_of(layer.support, treatment.openings, set_out.ceiling, half_mm), half_mm)
                if found is not None:
                    return tr(found, style_for(room))
    return tr(msg("Head and ceiling run level along it, as far as they are measured."))
