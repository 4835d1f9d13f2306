"""rod-low: the rod's centre line stands too little above the casing (the head where there is none).

Broken, wall mounts, every arrangement. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.model import Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.rules import rod_above
from elevation.findings.rules.no_room import is_tight
from elevation.findings.shapes import top_name
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.tilt import over_tops
from elevation.units.tolerance import falls_short
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not treatment.openings or is_tight(scene, treatment):
        return
    limit = limit_mm(scene, "rod-low")
    for layer in treatment.layers:
        support = layer.support
        above = over_tops(support, treatment.openings, with_casing=True)
        if not falls_short(above, limit, scene.half_mm):
            continue
        params = {"where": where(treatment), "top": top_name(treatment.openings), "limit": said_limit(scene, "rod-low")}
        if above < 0:
            text = msg(
                "{where}: the {support}'s centre line is {below} below the top of {top}; it needs to be {limit} above it.",
                support=noun_of(layer),
                below=Mm(-above),
                **params,
            )
        else:
            text = msg(
                "{where}: the {support}'s centre line is {above} above {top}, {short} less than the {limit} it needs.",
                support=noun_of(layer),
                above=Mm(above),
                short=Mm(limit - above),
                **params,
            )
        yield Finding(
            "rod-low",
            Weight.BROKEN,
            layer.ref,
            text,
            authority_of(scene, "rod-low"),
            measured_mm=above,
            limit_mm=limit,
            at=((support.left_mm + support.right_mm) / 2, support.height_mm),
        )


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    if not treatment.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return
    limit = limit_mm(scene, "rod-low")
    reason = msg("{limit} above {top}, the least", limit=Mm(limit, about=True), top=top_name(treatment.openings))
    yield from rod_above.stickings(treatment, limit, reason)


RULE = Rule("rod-low", msg("the rod above the casing"), _find, changes=rod_above.changes, stickings=_stickings)
