"""Facts not measured yet, and what cannot be known without them."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.room.model import Ref, Wall
from elevation.setting_out.model import MissingFact, OpeningOut, TreatmentOut
from elevation.words import msg


def missing_of(wall: Wall, openings: Sequence[OpeningOut], treatments: Sequence[TreatmentOut]) -> tuple[MissingFact, ...]:
    """What the wall, its openings and its panels still want, in tape order."""
    found: list[MissingFact] = []
    ref: Ref = (wall.id,)
    if wall.width is None:
        found.append(MissingFact(ref, "width", msg("The wall's width is not measured: its right end is drawn dashed.")))
    if not wall.ceiling:
        found.append(
            MissingFact(ref, "ceiling", msg("The ceiling is not measured: whether the rod clears it cannot be told."))
        )
    elif wall.crown is None:
        found.append(MissingFact(ref, "crown", msg("The crown is not measured: it is taken as none.")))
    for opening in openings:
    is_drilled = any(layer.brackets for treatment in treatments for layer in treatment.layers)
    if wall.substrate == "not-known" and is_drilled:
        text = msg("What the wall is made of is not known: what its brackets can carry cannot be told.")
        found.append(MissingFact(ref, "substrate", text))
        if not opening.placed:
            text = msg(
                "Where opening {number} stands is not measured: it is drawn in the middle of what is free.",
                number=opening.number,
            )
            found.append(MissingFact(opening.ref, "left", text))
        if not opening.known_casing:
            text = msg("The casing of opening {number} is not measured: it is taken as none.", number=opening.number)
            found.append(MissingFact(opening.ref, "casing", text))
    for treatment in treatments:
        for layer in treatment.layers:
            for panel in layer.panels:
                if panel.finished_length_mm is None:
                    text = msg("The panel in hand is not measured: it is drawn clear of the floor.")
                    found.append(MissingFact(panel.ref, "measured_length", text))
    return tuple(found)
