"""no-bracket: nothing, or a single bracket, carries the rod; or a bracket stands beside the rod and carries nothing.

Stop; every mount; rods and tracks: a tension rod has no brackets. A socket or a tube bent back to the wall carries its end.
Statics: a rod on one support turns over.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from elevation.findings.changing import bracket_name, bracket_to, end_brackets
from elevation.findings.limits import drilling, limit_mm
from elevation.findings.looking import bracket_at, layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.setting_out.model import BracketOut, LayerOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg


def beside(layer: LayerOut, bracket: BracketOut) -> float:
    """How far beyond the rod's ends a bracket's centre stands, in mm; 0 or less on the rod."""
    return max(layer.support.left_mm - bracket.x_mm, bracket.x_mm - layer.support.right_mm)


def _authority() -> Message:
    return msg("statics: a rod on one support turns over")


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        support = layer.support
        if support.kind == "tension-rod":
            continue
        carrying = sum(support.carried) + sum(beside(layer, bracket) <= TOUCH_MM for bracket in layer.brackets)
        if carrying < 2:
            if carrying:
                text = msg(
                    "{where}: a single bracket carries the {support}; it needs one at each end.",
                    support=noun_of(layer),
                    where=where(treatment),
                )
            else:
                text = msg(
                    "{where}: no bracket carries the {support}; it needs one at each end.",
                    support=noun_of(layer),
                    where=where(treatment),
                )
            at = ((support.left_mm + support.right_mm) / 2, support.height_mm)
            yield Finding("no-bracket", Weight.STOP, layer.ref, text, _authority(), at=at, caution=drilling())
        for bracket in layer.brackets:
            by = beside(layer, bracket)
            if by > TOUCH_MM:
                text = msg(
                    "{where}: {bracket} stands {by} beyond the end of the {support} and carries nothing.",
                    support=noun_of(layer),
                    where=where(treatment),
                    bracket=bracket_name(scene, bracket.ref),
                    by=Mm(by),
                )
                at = (bracket.x_mm, bracket.height_mm)
                yield Finding("no-bracket", Weight.STOP, bracket.ref, text, _authority(), -by, 0.0, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    inset = limit_mm(scene, "bracket-inset")
    layer = layer_at(scene, finding.subject)
    if len(finding.subject) == 4:
        yield from end_brackets(scene, finding.subject, inset)
        for bracket in layer.brackets:
            yield from _onto(scene, layer, bracket, inset)
        return
    yield from _onto(scene, layer, bracket_at(scene, finding.subject), inset)


def _onto(scene: Scene, layer: LayerOut, bracket: BracketOut, inset: float) -> Iterator[Change]:
    """The bracket on the rod, as far in from its end as end brackets usually stand."""
    support = layer.support
    if bracket.x_mm < support.left_mm:
        yield from bracket_to(scene, bracket.ref, support.left_mm + inset, most_mm=inf)
    elif bracket.x_mm > support.right_mm:
        yield from bracket_to(scene, bracket.ref, support.right_mm - inset, most_mm=inf)


RULE = Rule("no-bracket", msg("brackets that carry the rod"), _find, changes=_changes, mounts=EVERY_MOUNT)
