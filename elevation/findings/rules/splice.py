"""splice: a rod is joined where no bracket carries the joint.

Stop; every mount; every arrangement. Common practice, no source: a joint carries no bending worth counting on.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_added, longer_stock
from elevation.findings.limits import authority_of, drilling
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, where
from elevation.setting_out.model import TreatmentOut
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        support = layer.support
        if not support.splice_free:
            continue
        at = support.splice_free[0]
        yield Finding(
            "splice",
            Weight.STOP,
            layer.ref,
            msg(
                "{where}: the {support} is joined {at} from its left end, where no bracket carries the joint.",
                support=noun_of(layer),
                where=where(treatment),
                at=Mm(at - support.left_mm),
            ),
            authority_of(scene, "splice"),
            at=(at, support.height_mm),
            caution=drilling(),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    support = layer_at(scene, finding.subject).support
    for at in support.splice_free:
        yield from bracket_added(scene, finding.subject, at)
    yield from longer_stock(scene, finding.subject)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    del scene
    for layer in treatment.layers:
        for bracket in layer.brackets:
            for at in layer.support.splices_mm:
                yield Sticking("bracket", bracket.ref, at, msg("under the joint of the rod"))


RULE = Rule("splice", msg("brackets under joints"), _find, changes=_changes, stickings=_stickings, mounts=EVERY_MOUNT)
