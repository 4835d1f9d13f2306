"""The part of ``meets`` that compares treatments: rods, brackets and cloth of neighbours in one place."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import ends_or_end
from elevation.findings.model import Change, Finding, Scene
from elevation.findings.naming import noun_of, where
from elevation.findings.rules.meets_told import stop
from elevation.findings.shapes import Rect, cloth, hanging, meet, rod_rects, shared, way
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, msg


def reach_of(treatment: TreatmentOut) -> tuple[float, float]:
    """Everything that a treatment takes along the wall."""
    lefts = [layer.support.metal_left_mm for layer in treatment.layers]
    rights = [layer.support.metal_right_mm for layer in treatment.layers]
    for layer in treatment.layers:
        lefts += [way(panel)[0] for panel in hanging(layer)] + [bracket.plate[0] for bracket in layer.brackets]
        rights += [way(panel)[1] for panel in hanging(layer)] + [bracket.plate[2] for bracket in layer.brackets]
    return min(lefts), max(rights)


def _parts(layer: LayerOut) -> Iterator[tuple[Rect, float, float]]:
    """Outlines of rod, ends, brackets and cloth with their depths (back, front) from the wall.

    Cloth gives way in its folds: it is as deep as the rod it hangs on.
    """
    support = layer.support
    radius = support.diameter_mm / 2
    back, front = support.projection_mm - radius, support.projection_mm + radius
    for _, rect, rect_back, rect_front in rod_rects(support):
        yield rect, rect_back, rect_front
    for panel in hanging(layer):
        yield cloth(panel, way(panel), layer.support), back, front
    for bracket in layer.brackets:
        half = (bracket.plate[2] - bracket.plate[0]) / 2
        behind = support.projection_mm - half if bracket.on == "ceiling" else 0.0
        yield bracket.plate, behind, support.projection_mm


def overlap(a: TreatmentOut, b: TreatmentOut) -> float:
    """By how much two treatments stand in each other, in mm along the wall or up it; 0 where they do not."""
    worst = 0.0
    for layer_a in a.layers:
        for layer_b in b.layers:
            for rect_a, back_a, front_a in _parts(layer_a):
                for rect_b, back_b, front_b in _parts(layer_b):
                    if min(front_a, front_b) - max(back_a, back_b) > TOUCH_MM and meet(rect_a, rect_b):
                        worst = max(worst, shared(rect_a, rect_b))
    return worst


def find(scene: Scene) -> Iterator[Finding]:
    """A finding for each two treatments that stand in each other."""
    placed = sorted(
        ((*reach_of(treatment), treatment) for treatment in scene.set_out.treatments if treatment.layers),
        key=lambda entry: (entry[0], entry[1], entry[2].ref),
    )
    for index, (left, right, treatment) in enumerate(placed):
        for other_left, _, other in placed[index + 1 :]:
            if other_left >= right - TOUCH_MM:
                break
            by = overlap(treatment, other)
            if by > TOUCH_MM:
                # Which of two is told about does not depend on the side one looks from: the later one.
                first, second = (treatment, other) if treatment.ref < other.ref else (other, treatment)
                layer = second.layers[0]
                text = msg(
                    "{where}: {support}, brackets or cloth run {by} into those of {other}.",
                    support=noun_of(layer),
                    where=where(second),
                    by=Mm(by),
                    other=where(first),
                )
                at = (max(left, other_left) + by / 2, layer.support.height_mm)
                yield stop(layer.ref, text, by, at)


def changes(scene: Scene, treatment: TreatmentOut) -> Iterator[Change]:
    """Ways apart for a treatment and those it stands in: its facing end, or theirs, drawn in."""
    left, right = reach_of(treatment)
    for other in scene.set_out.treatments:
        if other is treatment or overlap(treatment, other) <= TOUCH_MM:
            continue
        other_left, other_right = reach_of(other)
        # The side on which less has to go.
        if other_right - left <= right - other_left:
            mine, theirs, by = "left", "right", other_right - left
        else:
            mine, theirs, by = "right", "left", right - other_left
        for layer in treatment.layers:
            yield from ends_or_end(scene, layer.ref, mine, -by)
        for layer in other.layers:
            for change in ends_or_end(scene, layer.ref, theirs, -by):
                yield Change(
                    msg("{where}: {change}", where=where(other), change=change.label), change.edit, change.is_possible
                )
