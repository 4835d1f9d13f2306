"""uplift: with some panels drawn and others open, the rod is lifted out of a bracket that it only lies in.

Broken; every mount; brackets that do not hold the rod down. Statics of a rod over three or more brackets: a heavy panel
over one span lifts the bracket beyond the next one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from elevation.findings.changing import bracket_name
from elevation.findings.changing_strength import bracket_evened, stiffer_rod
from elevation.findings.looking import bracket_at, noun_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.weights import weight
from elevation.room.edits import replace_at
from elevation.room.model import Ref, Room
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import less_ratio
from elevation.words import Message, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    least = scene.trade.limits["uplift"].value
    for layer in treatment.layers:
        for bracket in layer.brackets:
            lifts = bracket.uplift_n or 0.0
            if scene.trade.brackets[bracket.kit].holds_down or not less_ratio(least, lifts):
                continue
            text = msg(
                "{where}: with some panels drawn and others open, the {support} lifts out of {bracket} with {force}.",
                support=noun_of(layer),
                where=where(treatment),
                bracket=bracket_name(scene, bracket.ref),
                force=weight(scene, lifts),
            )
            at = (bracket.x_mm, bracket.height_mm)
            yield Finding("uplift", Weight.BROKEN, bracket.ref, text, _statics(), at=at)


def _statics() -> Message:
    return msg("statics of a rod over several brackets")


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    ref = finding.subject
    bracket = bracket_at(scene, ref)
    now = scene.trade.brackets[bracket.kit]
    for row in scene.trade.brackets.values():
        if row.mount == now.mount and row.holds_down and not row.id.startswith("track-"):
            label = msg(
                "Make {bracket} one that holds the {support} down: {kit}",
                support=noun_at(scene, ref),
                bracket=bracket_name(scene, ref),
                kit=Message(row.name),
            )
            yield Change(label, _kit(ref, row.id))
    yield from bracket_evened(scene, ref[:4], bracket.x_mm, bracket.x_mm)
    yield from stiffer_rod(scene, ref[:4])


def _kit(ref: Ref, kit: str) -> Callable[[Room], Room]:
    return lambda room: replace_at(room, ref, kit=kit, rings_pass=None)


RULE = Rule("uplift", msg("brackets that hold the rod down"), _find, changes=_changes, mounts=EVERY_MOUNT)
