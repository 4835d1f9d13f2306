"""hem-low: a hem hangs lower than wished somewhere over the real floor, or lies on it unasked.

Broken, every mount, every arrangement; judged per layer by its worst panel. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import mark_down, mark_up, rod_height
from elevation.findings.changing_cloth import finished_length, hem_to
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import side_name, where
from elevation.findings.rules.hems import short_of_floor, wished_gap, worst
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg

MOST_BREAK_MM = 3 * 25.4
"""More cloth on the floor than this is no break but a puddle; common practice, no source."""
MOST_PUDDLE_MM = 18 * 25.4
"""More than this is no style of hanging but cloth that is too long; common practice, no source."""


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "hem-low")
    for layer in treatment.layers:
        found = worst(short_of_floor(layer))
        if found is None or not exceeds(found[1], limit, scene.half_mm):
            continue
        panel, low = found
        gap = panel.gap_low_mm or 0.0
        params = {
            "where": where(treatment),
            "side": side_name(panel.side),
            "low": Mm(low),
            "limit": said_limit(scene, "hem-low"),
        }
        if wished_gap(panel) is None:
            text = msg(
                "{where}: the {side} panel is {low} too long for the floor and lies on it; {limit} is the most.", **params
            )
        else:
            text = msg(
                "{where}: the hem of the {side} panel hangs {low} lower than wished over the real floor; "
                "{limit} is the most.",
                **params,
            )
        at = ((panel.closed[0] + panel.closed[1]) / 2, panel.hem_low_mm)
        yield Finding("hem-low", Weight.BROKEN, layer.ref, text, authority_of(scene, "hem-low"), gap, gap + low, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    found = worst(short_of_floor(layer))
    if found is None:  # pragma: no cover - the finding was made of it
        return
    panel, low = found
    # Just inside the tolerance would do; the wish itself is as near and reads better.
    yield from rod_height(scene, finding.subject, layer.support.height_mm + low)
    if panel.finished_length_mm is not None:  # pragma: no branch - a gap is told only of a length that is known
        long = mark_down(panel.finished_length_mm - low, scene.room.graduation_mm)
        yield from finished_length(scene, finding.subject, long)
    gap = panel.gap_low_mm or 0.0
    if gap >= 0:
        yield from hem_to(scene, finding.subject, "clear", mark_down(gap, scene.room.graduation_mm))
    elif -gap <= MOST_BREAK_MM:
        yield from hem_to(scene, finding.subject, "break", mark_up(-gap, scene.room.graduation_mm))
    elif -gap <= MOST_PUDDLE_MM:
        yield from hem_to(scene, finding.subject, "puddle", mark_up(-gap, scene.room.graduation_mm))


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    del scene
    for layer in treatment.layers:
        found = worst(short_of_floor(layer))
        if found is not None and found[0].finished_length_mm is not None:
            reason = msg("the panels in hand just hang as wished")
            yield Sticking("rod-height", layer.ref, layer.support.height_mm + found[1], reason)


RULE = Rule("hem-low", msg("the hem not too low"), _find, changes=_changes, stickings=_stickings, mounts=EVERY_MOUNT)
