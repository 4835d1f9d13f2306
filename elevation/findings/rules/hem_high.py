"""hem-high: a hem that is meant for the floor hangs higher than wished somewhere over it.

Consider, every mount, every arrangement; judged per layer by its worst panel. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import mark_up, rod_height
from elevation.findings.changing_cloth import finished_length, hem_to
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import side_name, where
from elevation.findings.rules.hems import over_wish, wished_gap, worst
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "hem-high")
    for layer in treatment.layers:
        found = worst(over_wish(layer))
        if found is None or not exceeds(found[1], limit, scene.half_mm):
            continue
        panel, high = found
        yield Finding(
            "hem-high",
            Weight.CONSIDER,
            layer.ref,
            msg(
                "{where}: the hem of the {side} panel hangs {high} higher than wished over the real floor; "
                "{limit} is the most.",
                where=where(treatment),
                side=side_name(panel.side),
                high=Mm(high),
                limit=said_limit(scene, "hem-high"),
            ),
            authority_of(scene, "hem-high"),
            measured_mm=panel.gap_high_mm,
            limit_mm=(wished_gap(panel) or 0.0) + limit,
            at=((panel.closed[0] + panel.closed[1]) / 2, panel.hem_low_mm),
        )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    found = worst(over_wish(layer))
    if found is None:  # pragma: no cover - the finding was made of it
        return
    panel, high = found
    grad = scene.room.graduation_mm
    yield from rod_height(scene, finding.subject, layer.support.height_mm - high)
    if panel.finished_length_mm is not None:  # pragma: no branch - a gap is told only of a length that is known
        yield from finished_length(scene, finding.subject, mark_up(panel.finished_length_mm + high, grad))
    if panel.gap_low_mm is not None and panel.gap_low_mm >= 0:
        yield from hem_to(scene, finding.subject, "clear", mark_up(panel.gap_low_mm, grad))


RULE = Rule("hem-high", msg("the hem not too high"), _find, changes=_changes, mounts=EVERY_MOUNT)
