"""rod-high: the rod's centre line stands unusually far above the casing.

Consider, wall mounts, every arrangement. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.model import Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.rules import rod_above
from elevation.findings.shapes import top_name
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.tilt import over_tops
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not treatment.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return
    limit = limit_mm(scene, "rod-high")
    for layer in treatment.layers:
        support = layer.support
        above = over_tops(support, treatment.openings, with_casing=True)
        if exceeds(above, limit, scene.half_mm):
            yield Finding(
                "rod-high",
                Weight.CONSIDER,
                layer.ref,
                msg(
                    "{where}: the {support}'s centre line is {above} above {top}, {more} more than the {limit} that is "
                    "usual.",
                    support=noun_of(layer),
                    where=where(treatment),
                    above=Mm(above),
                    top=top_name(treatment.openings),
                    more=Mm(above - limit),
                    limit=said_limit(scene, "rod-high"),
                ),
                authority_of(scene, "rod-high"),
                measured_mm=above,
                limit_mm=limit,
                at=((support.left_mm + support.right_mm) / 2, support.height_mm),
            )


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    if not treatment.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return
    limit = limit_mm(scene, "rod-high")
    reason = msg(
        "{limit} above {top}, the most that is usual", limit=Mm(limit, about=True), top=top_name(treatment.openings)
    )
    yield from rod_above.stickings(treatment, limit, reason)


RULE = Rule("rod-high", msg("the rod's height above the casing"), _find, changes=rod_above.changes, stickings=_stickings)
