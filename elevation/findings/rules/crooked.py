"""crooked: a rod that looks crooked beside the head under it or the ceiling over it.

Consider; wall and ceiling mounts. The eye compares the rod with the lines near it; which looks right, level, parallel or
split, only the person can say, so each is told with its figure. A line that slopes for all to see is no trouble to a level
rod. What was decided on purpose is only doubted where another way looks straighter. All three limits are from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.changing_tilt import can_lean, tilt_to
from elevation.findings.limits import authority_of, limit_mm
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.looks_words import NAMES, choices, told
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.shapes import extremes, height_at
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.setting_out.tilt import Look, axis_at, look_of, over_tops
from elevation.trade.tables import limit_of
from elevation.units.tolerance import exceeds
from elevation.words import Message, Mm, msg


def look(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Look:
    """What the eye compares a rod with: lines that are too far away or slope for all to see are as the rod itself."""
    support = layer.support
    found = look_of(support, treatment.openings, scene.set_out.ceiling, scene.half_mm)
    steep = limit_of(scene.trade, "crooked-steep") * found.length_mm
    near = limit_mm(scene, "crooked-near") + scene.half_mm
    left, right = (_under(scene, layer, x) for x in (support.left_mm, support.right_mm))
    ceiling, head = found.ceiling, found.head
    if ceiling is None or not 0 <= min(left, right) <= near or abs(ceiling - found.rod) > steep:
        ceiling = None
    if (
        not treatment.openings
        or over_tops(support, treatment.openings, with_casing=True) > near
        or abs(head - found.rod) > steep
    ):
        head = found.rod
    return Look(found.length_mm, found.rod, head, ceiling)


def _under(scene: Scene, layer: LayerOut, x: float) -> float:
    return height_at(scene.set_out.ceiling, x) - scene.set_out.crown_mm - axis_at(layer.support, x)


def worst(seen: Look, rise: float) -> float:
    """How far a rod of that rise is off the line that it is most crooked to, in mm over its length."""
    return max(abs(rise - seen.head), 0.0 if seen.ceiling is None else abs(rise - seen.ceiling))


def _better(scene: Scene, seen: Look) -> list[str]:
    """Other ways to hang it that look straighter, the straightest first."""
    ways = [
        tilt
        for tilt in choices(seen, scene.half_mm)
        if worst(seen, seen.rise(tilt)) < worst(seen, seen.rod) - scene.half_mm
    ]
    return sorted(ways, key=lambda tilt: worst(seen, seen.rise(tilt)))


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers[:1]:
        support = layer.support
        seen = look(scene, treatment, layer)
        by = worst(seen, seen.rod)
        if support.length_mm <= 0 or not exceeds(by, limit_mm(scene, "crooked-seen"), scene.half_mm):
            continue
        if support.tilt and not _better(scene, seen):
            continue
        left, right = (_under(scene, layer, x) for x in (support.left_mm, support.right_mm))
        yield Finding(
            "crooked",
            Weight.CONSIDER,
            layer.ref,
            _text(scene, treatment, layer, seen, by),
            authority_of(scene, "crooked-seen"),
            measured_mm=by,
            limit_mm=limit_mm(scene, "crooked-seen"),
            at=((support.left_mm if left < right else support.right_mm), support.height_mm),
        )


def _text(scene: Scene, treatment: TreatmentOut, layer: LayerOut, seen: Look, by: float) -> Message:
    if not layer.support.tilt and seen.head == 0 and seen.ceiling is not None:
        left, right = (_under(scene, layer, x) for x in (layer.support.left_mm, layer.support.right_mm))
        return msg(
            "{where}: the ceiling runs {by} out of level along the {support}. Level, the {support} stands {left} "
            "under it at the"
            " left and {right} at the right; parallel to it, it would be {by} out of level itself; split, {half}.",
            support=noun_of(layer),
            where=where(treatment),
            by=Mm(by),
            left=Mm(left),
            right=Mm(right),
            half=Mm(by / 2),
        )
    ways = told(seen, scene.half_mm)
    if not layer.support.tilt and ways is not None:
        return msg(
            "{where}: the {support} looks crooked. {ways}", support=noun_of(layer), where=where(treatment), ways=ways
        )
    name = "level"
    for tilt in choices(seen, scene.half_mm):
        if abs(seen.rise(tilt) - seen.rod) <= scene.half_mm:
            name = tilt
    return msg(
        "{where}: {tilt}, the {support} looks {by} crooked over its {length}. {ways}",
        support=noun_of(layer),
        where=where(treatment),
        tilt=NAMES[name],
        by=Mm(by),
        length=Mm(seen.length_mm),
        ways=ways or msg("Another way looks straighter."),
    )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    support = layer.support
    seen = look(scene, treatment_at(scene, finding.subject), layer)
    if can_lean(scene.room, finding.subject):
        yield from tilt_to(scene, finding.subject, *_better(scene, seen))
    if seen.ceiling is None:
        return
    low, _ = extremes(scene.set_out.ceiling, support.left_mm, support.right_mm)
    graduation = scene.room.graduation_mm
    far = limit_mm(scene, "crooked-near") + graduation
    yield from rod_height(scene, finding.subject, low - scene.set_out.crown_mm - far)


RULE = Rule("crooked", msg("the rod beside lines out of level"), _find, changes=_changes, mounts=BEFORE_WALL)
