"""pelmet-clear: rod, finials or folds reach through the pelmet's front or its ends.

Broken; mounts before the wall. What hangs behind a pelmet has to pass behind its front and between its returns.
Geometry, compared at the tape's tolerance.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import plain_ends
from elevation.findings.changing_dress import no_pelmet, pelmet_ends, pelmet_out
from elevation.findings.limits import by_geometry
from elevation.findings.looking import treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.shapes import front_of
from elevation.setting_out.model import PelmetOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _front(treatment: TreatmentOut) -> float:
    return max(front_of(layer) for layer in treatment.layers)


def _past(treatment: TreatmentOut, pelmet: PelmetOut) -> dict[str, float]:
    """By how much metal passes either end of the pelmet, in mm; negative where it ends within."""
    return {
        "left": max(pelmet.left_mm - layer.support.metal_left_mm for layer in treatment.layers),
        "right": max(layer.support.metal_right_mm - pelmet.right_mm for layer in treatment.layers),
    }


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    pelmet = treatment.pelmet
    if pelmet is None:
        return
    front = _front(treatment)
    at = ((pelmet.left_mm + pelmet.right_mm) / 2, pelmet.over_mm)
    if exceeds(front, pelmet.out_mm, scene.half_mm):
        text = msg(
            "{where}: {support} and folds reach {front} out from the wall, and the pelmet's front stands at {out}.",
            support=noun_of(treatment.layers[0]),
            where=where(treatment),
            front=Mm(front),
            out=Mm(pelmet.out_mm),
        )
        yield Finding("pelmet-clear", Weight.BROKEN, treatment.ref, text, by_geometry(), pelmet.out_mm - front, 0.0, at)
        return
    past = max(_past(treatment, pelmet).values())
    if exceeds(past, 0.0, scene.half_mm):
        text = msg(
            "{where}: the {support} with what ends it is {past} too long to end behind the pelmet.",
            support=noun_of(treatment.layers[0]),
            where=where(treatment),
            past=Mm(past),
        )
        yield Finding("pelmet-clear", Weight.BROKEN, treatment.ref, text, by_geometry(), -past, 0.0, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment = treatment_at(scene, finding.subject)
    pelmet = treatment.pelmet
    if pelmet is None:  # pragma: no cover - the finding was made of it
        return
    front = _front(treatment)
    if exceeds(front, pelmet.out_mm, scene.half_mm):
        yield from pelmet_out(scene, finding.subject, front)
    else:
        past = _past(treatment, pelmet)
        yield from pelmet_ends(scene, finding.subject, max(past.values()))
        for layer in treatment.layers:
            yield from plain_ends(scene, layer.ref)
    yield from no_pelmet(scene, finding.subject)


RULE = Rule("pelmet-clear", msg("room for rod and folds behind the pelmet"), _find, changes=_changes, mounts=BEFORE_WALL)
