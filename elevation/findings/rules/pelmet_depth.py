"""pelmet-depth: a pelmet or valance out of proportion with the curtain under it.

Consider; mounts before the wall. A sixth to a fifth of the curtain's length: handbooks. The longest panel counts.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_dress import pelmet_depth
from elevation.findings.limits import authority_of
from elevation.findings.looking import treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import exceeds, falls_short
from elevation.words import Mm, msg


def usual_mm(scene: Scene, treatment: TreatmentOut) -> tuple[float, float] | None:
    """The least and greatest usual depth, in mm; None where no panel has a length."""
    long = [
        panel.finished_length_mm
        for layer in treatment.layers
        for panel in layer.panels
        if panel.finished_length_mm is not None
    ]
    if not long:
        return None
    limits = scene.trade.limits
    return limits["pelmet-least"].value * max(long), limits["pelmet-most"].value * max(long)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    pelmet, usual = treatment.pelmet, usual_mm(scene, treatment)
    if pelmet is None or usual is None:
        return
    depth, (low, high) = pelmet.top_mm - pelmet.bottom_mm, usual
    is_shallow, is_deep = falls_short(depth, low, scene.half_mm), exceeds(depth, high, scene.half_mm)
    if is_shallow or is_deep:
        text = msg(
            "{where}: the pelmet is {depth} deep; a sixth to a fifth of the curtain's length would be {low} to {high}.",
            where=where(treatment),
            depth=Mm(depth),
            low=Mm(low, about=True),
            high=Mm(high, about=True),
        )
        at = ((pelmet.left_mm + pelmet.right_mm) / 2, pelmet.bottom_mm)
        authority = authority_of(scene, "pelmet-least" if is_shallow else "pelmet-most")
        yield Finding(
            "pelmet-depth", Weight.CONSIDER, treatment.ref, text, authority, depth, low if is_shallow else high, at
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    usual = usual_mm(scene, treatment_at(scene, finding.subject))
    if usual is not None and finding.measured_mm is not None:  # pragma: no branch - the finding was made of both
        if finding.measured_mm < usual[0]:
            yield from pelmet_depth(scene, finding.subject, usual[0], is_deeper=True)
        else:
            yield from pelmet_depth(scene, finding.subject, usual[1], is_deeper=False)


RULE = Rule("pelmet-depth", msg("a pelmet in proportion"), _find, changes=_changes, mounts=BEFORE_WALL)
