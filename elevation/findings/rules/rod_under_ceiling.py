"""rod-under-ceiling: the rod's centre line runs too close under ceiling or crown, anywhere along it.

Broken, wall mounts, every arrangement. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.rules.no_room import is_tight
from elevation.findings.shapes import lowest_under_ceiling, under_ceiling
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import falls_short
from elevation.words import Message, Mm, msg


def _above(scene: Scene) -> Message:
    return msg("the crown") if scene.set_out.crown_mm > 0 else msg("the ceiling")


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.set_out.ceiling.known or is_tight(scene, treatment):
        return
    limit = limit_mm(scene, "rod-under-ceiling")
    for layer in treatment.layers:
        support = layer.support
        below = under_ceiling(scene.set_out, support)
        if below is None or not falls_short(below, limit, scene.half_mm):
            continue
        params = {"where": where(treatment), "ceiling": _above(scene), "limit": said_limit(scene, "rod-under-ceiling")}
        if below < 0:
            text = msg(
                "{where}: the {support}'s centre line runs {over} into {ceiling}; it needs to be {limit} below it.",
                support=noun_of(layer),
                over=Mm(-below),
                **params,
            )
        else:
            text = msg(
                "{where}: the {support}'s centre line is {below} below {ceiling} at its closest, "
                "{short} less than the {limit} it needs.",
                support=noun_of(layer),
                below=Mm(below),
                short=Mm(limit - below),
                **params,
            )
        yield Finding(
            "rod-under-ceiling",
            Weight.BROKEN,
            layer.ref,
            text,
            authority_of(scene, "rod-under-ceiling"),
            measured_mm=below,
            limit_mm=limit,
            at=(lowest_under_ceiling(scene.set_out, support), support.height_mm),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    support = layer_at(scene, finding.subject).support
    below = under_ceiling(scene.set_out, support)
    if below is not None:  # pragma: no branch - the finding was made of it
        wanted = support.height_mm + below - limit_mm(scene, "rod-under-ceiling")
        yield from rod_height(scene, finding.subject, wanted, scene.half_mm)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    limit = limit_mm(scene, "rod-under-ceiling")
    reason = msg("{limit} below {ceiling}, the least", limit=Mm(limit, about=True), ceiling=_above(scene))
    for layer in treatment.layers:
        below = under_ceiling(scene.set_out, layer.support)
        if below is not None:
            yield Sticking("rod-height", layer.ref, layer.support.height_mm + below - limit, reason)


RULE = Rule("rod-under-ceiling", msg("the rod below the ceiling"), _find, changes=_changes, stickings=_stickings)
