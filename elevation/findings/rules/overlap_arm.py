"""overlap-arm: the leading edges are to overlap by more than the track's arm gives.

Stop where the track has no arm: its glides meet and cannot pass; else broken. Every mount; tracks whose sheet was read.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import length, mark_down, without_overlap
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.room.edits import replace_rod
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import TOUCH_MM, exceeds
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        support = layer.support
        if support.kind != "track" or support.arm_mm is None:
            continue
        if not exceeds(support.overlap_mm, support.arm_mm, scene.half_mm):
            continue
        params: dict[str, object] = {"where": where(treatment), "by": Mm(support.overlap_mm), "arm": Mm(support.arm_mm)}
        if support.arm_mm <= TOUCH_MM:
            weight = Weight.STOP
            text = msg("{where}: the leading edges are to overlap by {by}, and this track has no overlap arm.", **params)
        else:
            weight = Weight.BROKEN
            text = msg("{where}: the leading edges are to overlap by {by}, and the track's arm gives {arm}.", **params)
        at = ((support.left_mm + support.right_mm) / 2, support.height_mm)
        yield Finding(
            "overlap-arm", weight, layer.ref, text, msg("the track's own sheet"), support.overlap_mm, support.arm_mm, at
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    arm = layer.support.arm_mm or 0.0
    if arm > TOUCH_MM:
        at = length(scene, mark_down(arm, scene.room.graduation_mm))
        label = msg("Let the leading edges overlap by {at}", at=Mm(at.mm))
        yield Change(label, lambda room: replace_rod(room, layer.ref, overlap=at))
    yield from without_overlap(layer.ref)


RULE = Rule("overlap-arm", msg("leading edges that can pass each other"), _find, changes=_changes, mounts=EVERY_MOUNT)
