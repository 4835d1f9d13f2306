"""The part of ``meets`` about the layers of one treatment: in the wrong order, in one place, or cloth against cloth."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height, rod_projection
from elevation.findings.limits import by_geometry
from elevation.findings.model import Change, Finding, Scene, Weight
from elevation.findings.naming import where
from elevation.findings.rules.meets_told import stop
from elevation.findings.shapes import cloth, hanging, meet, rod_rects, shared, way
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, msg


def find(treatment: TreatmentOut) -> Iterator[Finding]:
    """Two layers of one treatment in the wrong order, in one place, or so near that their cloth touches."""
    for index, front in enumerate(treatment.layers):
        for back in treatment.layers[index + 1 :]:
            found = _two(treatment, front, back)
            if found is not None:
                yield found


def _two(treatment: TreatmentOut, front: LayerOut, back: LayerOut) -> Finding | None:
    name = where(treatment)
    at = ((front.support.left_mm + front.support.right_mm) / 2, front.support.height_mm)
    gap = front.support.projection_mm - back.support.projection_mm
    together = hang_before_each_other(front, back)
    if together and gap < -TOUCH_MM:
        text = msg(
            "{where}: the front layer hangs {by} behind the back one; the front one has to stand out farther.",
            where=name,
            by=Mm(-gap),
        )
        return stop(front.ref, text, -gap, at)
    by = rods_meet(front, back)
    if by > TOUCH_MM:
        text = msg("{where}: the rods of two layers run {by} into each other.", where=name, by=Mm(by))
        return stop(back.ref, text, by, at)
    by = needed_apart(front, back) - gap if together else 0.0
    if by <= TOUCH_MM:
        return None
    text = msg(
        "{where}: the layers are {gap} apart, centre to centre, and folds need {needed}: they touch by {by}.",
        where=name,
        gap=Mm(gap),
        needed=Mm(gap + by),
        by=Mm(by),
    )
    return Finding("meets", Weight.BROKEN, front.ref, text, by_geometry(), measured_mm=-by, limit_mm=0.0, at=at)


def hang_before_each_other(front: LayerOut, back: LayerOut) -> bool:
    """Whether cloth of two layers hangs before one stretch of wall, at one height, in any position."""
    return any(
        meet(cloth(panel, way(panel), front.support), cloth(other, way(other), back.support))
        for panel in hanging(front)
        for other in hanging(back)
    )


def needed_apart(front: LayerOut, back: LayerOut) -> float:
    """How far apart two rods have to stand, centre to centre, that closed cloth does not touch, in mm.

    Half the deepest fold of each; a fold is no shallower than the rod that it hangs on.
    """

    def half(layer: LayerOut) -> float:
        fold = max((panel.fold_depth_mm for panel in hanging(layer)), default=0.0)
        return max(fold, layer.support.diameter_mm) / 2

    return half(front) + half(back)


def rods_meet(a: LayerOut, b: LayerOut) -> float:
    """By how much the rods or finials of two layers run into each other, in mm; 0 where they do not."""
    worst = 0.0
    for _, rect_a, back_a, front_a in rod_rects(a.support):
        for _, rect_b, back_b, front_b in rod_rects(b.support):
            depth = min(front_a, front_b) - max(back_a, back_b)
            if depth > TOUCH_MM and meet(rect_a, rect_b):
                worst = max(worst, min(depth, shared(rect_a, rect_b)))
    return worst


def changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Change]:
    """Ways apart for the layers of a treatment: the front one farther out, or one rod clear of the other."""
    front = treatment.layers[0]
    for other in treatment.layers[1:]:
        if layer is front and hang_before_each_other(front, other):
            yield from rod_projection(scene, front.ref, other.support.projection_mm + needed_apart(front, other))
    for other in treatment.layers:
        if other is not layer and rods_meet(layer, other) > TOUCH_MM:
            apart = sum(max(each.support.finial_diameter_mm, each.support.diameter_mm) / 2 for each in (layer, other))
            yield from rod_projection(scene, layer.ref, other.support.projection_mm + apart)
            yield from rod_height(scene, layer.ref, other.support.height_mm + apart)
