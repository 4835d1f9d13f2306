"""crooked: a level rod close under a ceiling that is out of level, and so looks crooked.

Consider; wall and ceiling mounts. The eye compares the rod with the line nearest to it; which looks right, level, parallel
or split, only the person can say, so each is told with its figure. A ceiling that slopes for all to see is no trouble.
All three limits are from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.limits import authority_of, limit_mm
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.findings.shapes import extremes, height_at
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.trade.tables import limit_of
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _gaps(scene: Scene, layer: LayerOut) -> tuple[float, float] | None:
    """Ceiling or crown over the rod's centre line at both its ends; None where that runs not straight."""
    out, support = scene.set_out, layer.support
    if not out.ceiling.known or support.length_mm <= 0:
        return None
    base = support.height_mm + out.crown_mm
    left = height_at(out.ceiling, support.left_mm) - base
    right = height_at(out.ceiling, support.right_mm) - base
    for x, y in out.ceiling.points:
        if support.left_mm < x < support.right_mm:
            share = (x - support.left_mm) / support.length_mm
            # A gable over the rod is seen as one: no line to be parallel to.
            if abs(y - base - left - (right - left) * share) > abs(right - left) / 2 + scene.half_mm:
                return None
    return left, right


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers[:1]:
        gaps = _gaps(scene, layer)
        if gaps is None:
            continue
        left, right = gaps
        by = abs(left - right)
        is_near = 0 <= min(left, right) <= limit_mm(scene, "crooked-near") + scene.half_mm
        is_raked = by > limit_of(scene.trade, "crooked-steep") * layer.support.length_mm
        if not is_near or is_raked or not exceeds(by, limit_mm(scene, "crooked-seen"), scene.half_mm):
            continue
        yield Finding(
            "crooked",
            Weight.CONSIDER,
            layer.ref,
            msg(
                "{where}: the ceiling runs {by} out of level along the rod. Level, the rod stands {left} under it at the"
                " left and {right} at the right; parallel to it, it would be {by} out of level itself; split, {half}.",
                where=where(treatment),
                by=Mm(by),
                left=Mm(left),
                right=Mm(right),
                half=Mm(by / 2),
            ),
            authority_of(scene, "crooked-seen"),
            measured_mm=by,
            limit_mm=limit_mm(scene, "crooked-seen"),
            at=((layer.support.left_mm if left < right else layer.support.right_mm), layer.support.height_mm),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    support = layer_at(scene, finding.subject).support
    low, _ = extremes(scene.set_out.ceiling, support.left_mm, support.right_mm)
    graduation = scene.room.graduation_mm
    far = limit_mm(scene, "crooked-near") + graduation
    yield from rod_height(scene, finding.subject, low - scene.set_out.crown_mm - far)


RULE = Rule(
    "crooked",
    msg("the rod beside a ceiling out of level"),
    _find,
    changes=_changes,
    mounts=frozenset({"wall", "ceiling"}),
)
