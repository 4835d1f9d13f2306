"""What ``rod-low`` and ``rod-high`` have in common: a height of the rod over the casing, to go to and to stick at."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.limits import limit_mm
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import Change, Finding, Scene, Sticking
from elevation.findings.shapes import rod_over
from elevation.setting_out.model import TreatmentOut
from elevation.words import Message


def changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    """The rod at the limit of the finding's own rule above the highest casing."""
    treatment = treatment_at(scene, finding.subject)
    if treatment.openings:  # pragma: no branch - a treatment that covers nothing is not set out
        wanted = rod_over(treatment, layer_at(scene, finding.subject), limit_mm(scene, finding.rule))
        yield from rod_height(scene, finding.subject, wanted, scene.half_mm)


def stickings(treatment: TreatmentOut, limit: float, reason: Message) -> Iterator[Sticking]:
    """``limit`` mm above the highest casing, for the rod of every layer; none where nothing is covered."""
    if treatment.openings:  # pragma: no branch - a treatment that covers nothing is not set out
        for layer in treatment.layers:
            yield Sticking("rod-height", layer.ref, rod_over(treatment, layer, limit), reason)
