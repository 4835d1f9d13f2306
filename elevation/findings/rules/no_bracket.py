"""no-bracket: nothing, or a single bracket, carries the rod.

Stop; wall mounts; every arrangement. Statics: a rod on one support turns over.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import end_brackets
from elevation.findings.limits import limit_mm
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.setting_out.model import TreatmentOut
from elevation.words import msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    del scene
    for layer in treatment.layers:
        if len(layer.brackets) > 1:
            continue
        if layer.brackets:
            text = msg("{where}: a single bracket carries the rod; it needs one at each end.", where=where(treatment))
        else:
            text = msg("{where}: no bracket carries the rod; it needs one at each end.", where=where(treatment))
        at = ((layer.support.left_mm + layer.support.right_mm) / 2, layer.support.height_mm)
        yield Finding("no-bracket", Weight.STOP, layer.ref, text, msg("statics: a rod on one support turns over"), at=at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    yield from end_brackets(scene, finding.subject, limit_mm(scene, "bracket-inset"))


RULE = Rule("no-bracket", msg("brackets that carry the rod"), _find, changes=_changes)
