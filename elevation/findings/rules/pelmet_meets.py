"""pelmet-meets: a pelmet runs into ceiling, crown, a wall's end, what stands on the wall, or a sash that swings.

Stop; mounts before the wall. A pelmet is hollow: what is flat on the wall may stand behind its front, but nothing may
cross its outline where its top and returns go back to the wall. Another treatment's pelmet or rod counts too. Geometry,
compared within 1e-6 mm.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_dress import no_pelmet, pelmet_depth, pelmet_ends, pelmet_out, pelmet_top
from elevation.findings.limits import by_geometry
from elevation.findings.looking import treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import obstacle_name, opening_name, side_name, where
from elevation.findings.shapes import Rect, meet, pelmet_over, rod_rects, shared
from elevation.setting_out.model import PelmetOut, TreatmentOut
from elevation.setting_out.tilt import lowest
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg


def face(pelmet: PelmetOut, thing: Rect) -> Rect:
    """The pelmet's outline on the wall; of one that leans as high as it stands over or under a thing."""
    return pelmet_over(pelmet, thing[0], thing[2])


def _past_ceiling(scene: Scene, pelmet: PelmetOut) -> float:
    if not scene.set_out.ceiling.known:
        return 0.0
    low = lowest(scene.set_out.ceiling, (pelmet.left_mm, pelmet.right_mm), pelmet.tilt)
    return pelmet.top_mm - (low - scene.set_out.crown_mm)


def _past_ends(scene: Scene, pelmet: PelmetOut) -> tuple[float, str]:
    left = -pelmet.left_mm if scene.set_out.ends[0] == "corner" else 0.0
    right = 0.0
    if scene.set_out.ends[1] == "corner" and scene.set_out.known_width:
        right = pelmet.right_mm - scene.set_out.width_mm
    return (left, "left") if left >= right else (right, "right")


def _things(scene: Scene, pelmet: PelmetOut) -> Iterator[tuple[Rect, float, Message, bool]]:
    """What is in the pelmet's way: outline, how far out it reaches, its name, and whether it swings."""
    for opening in scene.set_out.openings:
        for left, bottom, right, top, out in opening.sweep:
            swept = left, bottom, right, top
            if out > pelmet.out_mm + TOUCH_MM and meet(swept, face(pelmet, swept)):
                yield swept, out, opening_name(opening), True
    for obstacle in scene.set_out.obstacles:
        outline = (obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm)
        rect = face(pelmet, outline)
        if not meet(outline, rect):
            continue
        is_behind = rect[0] <= outline[0] and outline[2] <= rect[2] and outline[3] <= rect[3]
        swings = obstacle.kind == "door-swing"
        if obstacle.out_mm > pelmet.out_mm + TOUCH_MM or (not swings and not is_behind):
            yield outline, obstacle.out_mm, obstacle_name(obstacle), swings


def _stop(treatment: TreatmentOut, text: Message, by: float, at: tuple[float, float]) -> Finding:
    return Finding("pelmet-meets", Weight.STOP, treatment.ref, text, by_geometry(), measured_mm=-by, limit_mm=0.0, at=at)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    pelmet = treatment.pelmet
    if pelmet is None:
        return
    middle = (pelmet.left_mm + pelmet.right_mm) / 2
    over = _past_ceiling(scene, pelmet)
    if over > TOUCH_MM:
        text = msg(
            "{where}: the pelmet's top is {by} too high for the ceiling or crown there.",
            where=where(treatment),
            by=Mm(over),
        )
        yield _stop(treatment, text, over, (middle, pelmet.top_mm))
    past, side = _past_ends(scene, pelmet)
    if past > TOUCH_MM:
        text = msg(
            "{where}: the {side} end of the pelmet reaches {by} into the neighbouring wall.",
            where=where(treatment),
            side=side_name(side),
            by=Mm(past),
        )
        yield _stop(treatment, text, past, (pelmet.left_mm if side == "left" else pelmet.right_mm, pelmet.bottom_mm))
    for rect, _, name, swings in _things(scene, pelmet):
        by = shared(rect, face(pelmet, rect))
        if swings:
            text = msg("{where}: {thing} swings {by} into the pelmet.", where=where(treatment), thing=name, by=Mm(by))
        else:
            text = msg("{where}: the pelmet runs {by} into {thing}.", where=where(treatment), by=Mm(by), thing=name)
        x = (max(rect[0], pelmet.left_mm) + min(rect[2], pelmet.right_mm)) / 2
        yield _stop(treatment, text, by, (x, pelmet.bottom_mm))


def _find_others(scene: Scene) -> Iterator[Finding]:
    for treatment in scene.set_out.treatments:
        pelmet = treatment.pelmet
        if pelmet is None or treatment.mount not in BEFORE_WALL:
            continue
        for other in scene.set_out.treatments:
            if other is treatment:
                continue
            rects = [
                rect for layer in other.layers for _, rect, back, _ in rod_rects(layer.support) if back < pelmet.out_mm
            ]
            if other.pelmet is not None:
                rects.append(pelmet_over(other.pelmet, pelmet.left_mm, pelmet.right_mm))
            met = [(rect, face(pelmet, rect)) for rect in rects]
            by = max((shared(rect, own) for rect, own in met if meet(rect, own)), default=0.0)
            if by > TOUCH_MM:
                text = msg("{where}: the pelmet runs {by} into what hangs beside it.", where=where(treatment), by=Mm(by))
                yield _stop(treatment, text, by, (pelmet.left_mm, pelmet.bottom_mm))
                break


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment = treatment_at(scene, finding.subject)
    pelmet, ref = treatment.pelmet, finding.subject
    if pelmet is None:  # pragma: no cover - the finding was made of it
        return
    depth, above = pelmet.top_mm - pelmet.bottom_mm, pelmet.top_mm - pelmet.over_mm
    over = _past_ceiling(scene, pelmet)
    if over > TOUCH_MM:
        yield from pelmet_top(scene, ref, above - over, is_higher=False)
    past, side = _past_ends(scene, pelmet)
    if past > TOUCH_MM:
        yield from pelmet_ends(scene, ref, -past)
        yield from pelmet_ends(scene, ref, -past, side=side)
    for (left, _, right, top), out, _, _ in _things(scene, pelmet):
        if pelmet.bottom_mm < top < pelmet.top_mm:
            yield from pelmet_depth(scene, ref, depth - (top - pelmet.bottom_mm), is_deeper=False)
            yield from pelmet_top(scene, ref, above + top - pelmet.bottom_mm, is_higher=True)
        yield from pelmet_out(scene, ref, out)
        if left < pelmet.left_mm:
            yield from pelmet_ends(scene, ref, pelmet.left_mm - right, side="left")
        if right > pelmet.right_mm:
            yield from pelmet_ends(scene, ref, left - pelmet.right_mm, side="right")
    yield from no_pelmet(scene, ref)


RULE = Rule(
    "pelmet-meets", msg("a pelmet clear of what is around it"), _find, _find_others, changes=_changes, mounts=BEFORE_WALL
)
