"""hem-varies: a level hem cannot keep one gap over a floor that is out of level.

Consider; every mount; panels that end near the floor and hang level: panels in hand and typed lengths, not cloth made to
follow the floor. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import mark_up
from elevation.findings.changing_cloth import hem_to
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import side_name, where
from elevation.findings.rules.hems import variation, worst
from elevation.room.find import layer_of
from elevation.setting_out.hems import length_in_hand
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "hem-varies")
    for layer in treatment.layers:
        found = worst(variation(layer))
        if found is None or not exceeds(found[1], limit, scene.half_mm):
            continue
        panel, varies = found
        yield Finding(
            "hem-varies",
            Weight.CONSIDER,
            layer.ref,
            msg(
                "{where}: the floor under the {side} panel varies by {varies} where its hem is level, "
                "{more} more than {limit}.",
                where=where(treatment),
                side=side_name(panel.side),
                varies=Mm(varies),
                more=Mm(varies - limit),
                limit=said_limit(scene, "hem-varies"),
            ),
            authority_of(scene, "hem-varies"),
            measured_mm=varies,
            limit_mm=limit,
            at=((panel.closed[0] + panel.closed[1]) / 2, panel.hem_low_mm),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    # Only cloth still to be hemmed can follow the floor; a panel in hand would have to be taken up unevenly.
    panels = layer_of(scene.room, finding.subject).panels
    if any(length_in_hand(panel) is not None for panel in panels):
        return
    found = worst(variation(layer_at(scene, finding.subject)))
    if found is not None and found[0].gap_low_mm is not None and found[0].gap_low_mm >= 0:
        gap = mark_up(found[0].gap_low_mm, scene.room.graduation_mm)
        yield from hem_to(scene, finding.subject, "clear", gap)


RULE = Rule("hem-varies", msg("the floor under a level hem"), _find, changes=_changes, mounts=EVERY_MOUNT)
