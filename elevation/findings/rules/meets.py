"""meets: rod, finial, bracket or panel stands where something else does.

Stop, every mount, every arrangement. Wall ends, neighbour walls at any angle, obstacles, stools, other
layers and other treatments. Solid parts meet in depth too: a rod passes before a flat picture. Cloth gives way in its
folds, so it meets a thing that reaches the plane it hangs in. Heaters, registers and swinging doors have rules of
their own for cloth, boxes one for brackets. Geometry, compared within 1e-6 mm.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, ends_or_end, plain_ends, rod_height, rod_projection
from elevation.findings.changing_cloth import hem_above
from elevation.findings.changing_ends import narrow_side
from elevation.findings.limits import by_geometry
from elevation.findings.looking import ends_of, layer_at, panel_at, wall_of_scene
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import obstacle_name, opening_name, side_name, where
from elevation.findings.rules import meets_others
from elevation.findings.rules.over_box import BOXES
from elevation.findings.shapes import Rect, cloth, corner_room, meet, rod_rects, shared, way
from elevation.room.model import Ref
from elevation.setting_out.model import BracketOut, LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, msg

HOT = frozenset(
    {
        "hot-water-radiator", "electric-heater", "fan-heater", "portable-heater", "flame-heater",
        "floor-register", "wall-register",
    }
)  # fmt: skip
"""Obstacles for which ``heat`` speaks about cloth."""

Solid = tuple[Rect, float, Message]
"""Outline, how far it stands out from the wall, and its name."""


def _solids(scene: Scene, treatment: TreatmentOut, *, for_cloth: bool) -> list[Solid]:
    found: list[Solid] = []
    for obstacle in scene.set_out.obstacles:
        if obstacle.kind != "door-swing" and not (for_cloth and obstacle.kind in HOT):
            outline = (obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm)
            found.append((outline, obstacle.out_mm, obstacle_name(obstacle)))
    if not for_cloth:
        return found
    for opening in treatment.openings:
        if opening.stool is not None:
            thick, horn, out = opening.stool
            side = opening.casing_mm + horn
            outline = (opening.left_mm - side, opening.bottom_mm - thick, opening.right_mm + side, opening.bottom_mm)
            found.append((outline, out, msg("the stool of {opening}", opening=opening_name(opening))))
    return found


def _finding(subject: Ref, text: Message, by: float, at: tuple[float, float]) -> Finding:
    return Finding("meets", Weight.STOP, subject, text, by_geometry(), measured_mm=-by, limit_mm=0.0, at=at)


# --- the wall's ends ----------------------------------------------------------------------------------------


def past_ends(scene: Scene, layer: LayerOut) -> dict[str, float]:
    """By how much rod, finial or cloth passes each wall end, in mm; only sides where something does.

    In a corner of another angle than square the neighbour wall leans over this one, or away from it.
    """
    wall = wall_of_scene(scene)
    width = scene.set_out.width_mm
    parts = [(rect[0], rect[2], back, front) for _, rect, back, front in rod_rects(layer.support)]
    plane = layer.support.projection_mm
    parts += [(*way(panel), plane, plane) for panel in layer.panels]
    found: dict[str, float] = {}
    for left, right, back, front in parts:
        if scene.set_out.ends[0] == "corner":
            over = corner_room(wall.left.angle, back, front) - left
            if over > max(TOUCH_MM, found.get("left", 0.0)):
                found["left"] = over
        if scene.set_out.ends[1] == "corner" and scene.set_out.known_width:
            over = right - (width - corner_room(wall.right.angle, back, front))
            if over > max(TOUCH_MM, found.get("right", 0.0)):
                found["right"] = over
    return found


def _at_ends(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    support = layer.support
    found = past_ends(scene, layer)
    if found:
        # A rod that is too long for its wall is one thing wrong, also where it passes both ends.
        side = max(found, key=lambda key: found[key])
        text = msg(
            "{where}: the {side} end of the rod, with what ends it, reaches {by} into the neighbouring wall.",
            where=where(treatment),
            side=side_name(side),
            by=Mm(found[side]),
        )
        x = support.metal_left_mm if side == "left" else support.metal_right_mm
        yield _finding(layer.ref, text, found[side], (x, support.height_mm))
    for bracket in layer.brackets:
        over = -bracket.plate[0]
        side = "left"
        if scene.set_out.known_width and bracket.plate[2] - scene.set_out.width_mm > over:
            over, side = bracket.plate[2] - scene.set_out.width_mm, "right"
        if over > TOUCH_MM:
            text = msg(
                "{where}: the wall plate of {bracket} passes the {side} end of the wall by {by}.",
                where=where(treatment),
                bracket=bracket_name(scene, bracket.ref),
                side=side_name(side),
                by=Mm(over),
            )
            yield _finding(bracket.ref, text, over, (bracket.x_mm, bracket.height_mm))


# --- obstacles ----------------------------------------------------------------------------------------------


def _body(layer: LayerOut, bracket: BracketOut) -> Rect:
    """A bracket seen from the front: its plate and its arm."""
    radius = layer.support.diameter_mm / 2
    if bracket.on == "ceiling":
        half = bracket.half_width_mm
        return (
            bracket.x_mm - half,
            bracket.height_mm - radius,
            bracket.x_mm + half,
            max(bracket.plate[3], bracket.height_mm),
        )
    return (
        min(bracket.plate[0], bracket.x_mm - bracket.half_width_mm),
        min(bracket.plate[1], bracket.height_mm - radius),
        max(bracket.plate[2], bracket.x_mm + bracket.half_width_mm),
        max(bracket.plate[3], bracket.height_mm + radius),
    )


def rod_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> tuple[float, Solid] | None:
    """The obstacle that a layer's rod or finial meets deepest, and by how much, in mm."""
    worst: tuple[float, Solid] | None = None
    for solid in _solids(scene, treatment, for_cloth=False):
        for _, rect, back, front in rod_rects(layer.support):
            # What stands out from the wall begins at its face: a rod inside an opening may lie wholly behind it.
            if solid[1] > back + TOUCH_MM and front > TOUCH_MM and meet(solid[0], rect):
                by = shared(solid[0], rect)
                if worst is None or by > worst[0]:
                    worst = by, solid
    return worst


def bracket_hit(scene: Scene, layer: LayerOut, bracket: BracketOut) -> tuple[float, Solid] | None:
    """The obstacle that a bracket meets deepest, and by how much, in mm; boxes and shelves have a rule of their own."""
    if bracket.on != "ceiling" and layer.support.projection_mm + bracket.half_width_mm < -TOUCH_MM:
        return None  # inside an opening, wholly behind the wall's face
    body = _body(layer, bracket)
    worst: tuple[float, Solid] | None = None
    for obstacle in scene.set_out.obstacles:
        outline = (obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm)
        if obstacle.kind == "door-swing" or obstacle.kind in BOXES or not meet(outline, body):
            continue
        if bracket.on == "ceiling" and obstacle.out_mm <= layer.support.projection_mm - bracket.half_width_mm + TOUCH_MM:
            continue  # a bracket under the ceiling passes before what is flat on the wall
        by = shared(outline, body)
        if worst is None or by > worst[0]:
            worst = by, (outline, obstacle.out_mm, obstacle_name(obstacle))
    return worst


def panel_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> tuple[float, Solid] | None:
    """The thing that a panel meets deepest anywhere on its way, and by how much, in mm."""
    if layer.support.projection_mm < -TOUCH_MM:
        return None  # cloth behind the wall's face meets nothing that stands before it; the sill has a rule of its own
    rect = cloth(panel, way(panel))
    worst: tuple[float, Solid] | None = None
    for solid in _solids(scene, treatment, for_cloth=True):
        if solid[1] > layer.support.projection_mm + TOUCH_MM and meet(solid[0], rect):
            by = shared(solid[0], rect)
            if worst is None or by > worst[0]:
                worst = by, solid
    return worst


def _at_obstacles(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    support = layer.support
    found = rod_hit(scene, treatment, layer) if scene.set_out.obstacles else None
    if found is not None:
        text = msg("{where}: the rod runs {by} into {thing}.", where=where(treatment), by=Mm(found[0]), thing=found[1][2])
        at = (_inside(found[1][0], support.metal_left_mm, support.metal_right_mm), support.height_mm)
        yield _finding(layer.ref, text, found[0], at)
    for bracket in layer.brackets:
        found = bracket_hit(scene, layer, bracket)
        if found is not None:
            text = msg(
                "{where}: {bracket} stands {by} over {thing}.",
                where=where(treatment),
                bracket=bracket_name(scene, bracket.ref),
                by=Mm(found[0]),
                thing=found[1][2],
            )
            yield _finding(bracket.ref, text, found[0], (bracket.x_mm, bracket.height_mm))
    for panel in layer.panels:
        found = panel_hit(scene, treatment, layer, panel)
        if found is not None:
            text = msg(
                "{where}: the {side} panel hangs {plane} out from the wall and meets {thing}, which stands {out} out.",
                where=where(treatment),
                side=side_name(panel.side),
                plane=Mm(support.projection_mm),
                thing=found[1][2],
                out=Mm(found[1][1]),
            )
            rect = found[1][0]
            at = (_inside(rect, *way(panel)), (rect[1] + rect[3]) / 2)
            yield _finding(panel.ref, text, found[0], at)


def _inside(rect: Rect, left: float, right: float) -> float:
    return (max(rect[0], left) + min(rect[2], right)) / 2


def _layers(treatment: TreatmentOut) -> Iterator[Finding]:
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
        return _finding(front.ref, text, -gap, at)
    by = rods_meet(front, back)
    if by > TOUCH_MM:
        text = msg("{where}: the rods of two layers run {by} into each other.", where=name, by=Mm(by))
        return _finding(back.ref, text, by, at)
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
    return any(meet(cloth(panel, way(panel)), cloth(other, way(other))) for panel in front.panels for other in back.panels)


def needed_apart(front: LayerOut, back: LayerOut) -> float:
    """How far apart two rods have to stand, centre to centre, that closed cloth does not touch, in mm.

    Half the deepest fold of each; a fold is no shallower than the rod that it hangs on.
    """

    def half(layer: LayerOut) -> float:
        fold = max((panel.fold_depth_mm for panel in layer.panels), default=0.0)
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


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        yield from _at_ends(scene, treatment, layer)
        yield from _at_obstacles(scene, treatment, layer)
    if len(treatment.layers) > 1:
        yield from _layers(treatment)


# --- remedies and sticking places ---------------------------------------------------------------------------


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    treatment = next(one for one in scene.set_out.treatments if one.ref == finding.subject[:3])
    if len(finding.subject) == 4:
        yield from _rod_changes(scene, treatment, layer)
        yield from meets_others.changes(scene, treatment)
        return
    bracket = next((one for one in layer.brackets if one.ref == finding.subject), None)
    if bracket is not None:
        yield from _bracket_changes(scene, layer, bracket)
        return
    panel = panel_at(scene, finding.subject)
    found = panel_hit(scene, treatment, layer, panel)
    if found is not None:
        yield from rod_projection(scene, finding.subject, found[1][1])
        yield from _around(scene, panel, found[1][0])


def _rod_changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Change]:
    support = layer.support
    over = past_ends(scene, layer)
    for side, by in sorted(over.items(), key=lambda item: -item[1]):
        yield from ends_or_end(scene, layer.ref, side, -by)
    if over:
        yield from plain_ends(scene, layer.ref)
        for side in over:
            yield from narrow_side(scene, layer.ref, side)
    found = rod_hit(scene, treatment, layer)
    if found is not None:
        (left, bottom, right, top), out, _ = found[1]
        thick = max(support.finial_diameter_mm, support.diameter_mm) / 2
        yield from rod_height(scene, layer.ref, top + thick)
        yield from rod_height(scene, layer.ref, bottom - thick)
        yield from rod_projection(scene, layer.ref, out + thick)
        yield from ends_or_end(scene, layer.ref, "left", support.metal_left_mm - right)
        yield from ends_or_end(scene, layer.ref, "right", left - support.metal_right_mm)
        yield from plain_ends(scene, layer.ref)
    front = treatment.layers[0]
    for other in treatment.layers[1:]:
        if layer is front and hang_before_each_other(front, other):
            yield from rod_projection(scene, front.ref, other.support.projection_mm + needed_apart(front, other))
    for other in treatment.layers:
        if other is not layer and rods_meet(layer, other) > TOUCH_MM:
            apart = sum(max(each.support.finial_diameter_mm, each.support.diameter_mm) / 2 for each in (layer, other))
            yield from rod_projection(scene, layer.ref, other.support.projection_mm + apart)
            yield from rod_height(scene, layer.ref, other.support.height_mm + apart)


def _bracket_changes(scene: Scene, layer: LayerOut, bracket: BracketOut) -> Iterator[Change]:
    left, bottom, right, top = _body(layer, bracket)
    places: list[float] = []
    if left < 0:
        places.append(bracket.x_mm - left)
    if right > scene.set_out.width_mm:
        places.append(bracket.x_mm - (right - scene.set_out.width_mm))
    found = bracket_hit(scene, layer, bracket)
    if found is not None:
        rect = found[1][0]
        places += sorted(
            (bracket.x_mm - (right - rect[0]), bracket.x_mm + rect[2] - left), key=lambda x: abs(x - bracket.x_mm)
        )
    ends = ends_of(layer)
    for x in places:
        yield from bracket_to(scene, bracket.ref, x)
        if ends is not None and ends[0].ref == bracket.ref:
            yield from ends_or_end(scene, bracket.ref, "left", bracket.x_mm - x)
        if ends is not None and ends[1].ref == bracket.ref:
            yield from ends_or_end(scene, bracket.ref, "right", x - bracket.x_mm)
    if found is not None:
        yield from rod_height(scene, bracket.ref, bracket.height_mm + found[1][0][3] - bottom)
        yield from rod_height(scene, bracket.ref, bracket.height_mm - (top - found[1][0][1]))


def _around(scene: Scene, panel: PanelOut, rect: Rect) -> Iterator[Change]:
    """Ways for cloth around a thing: the rod's end inward of it, or a hem above it."""
    left, right = way(panel)
    if panel.side == "left":
        yield from ends_or_end(scene, panel.ref, "left", left - rect[2])
    else:
        yield from ends_or_end(scene, panel.ref, "right", rect[0] - right)
    yield from hem_above(scene, panel.ref, rect[3])


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    wall = wall_of_scene(scene)
    reason = msg("just clears the neighbouring wall")
    for layer in treatment.layers:
        support = layer.support
        parts = rod_rects(support)
        if scene.set_out.ends[0] == "corner":
            place = max(corner_room(wall.left.angle, back, front) - rect[0] for _, rect, back, front in parts)
            yield Sticking("rod-left", layer.ref, support.left_mm + place, reason, 0)
        if scene.set_out.ends[1] == "corner" and scene.set_out.known_width:
            edge = scene.set_out.width_mm
            place = min(edge - corner_room(wall.right.angle, back, front) - rect[2] for _, rect, back, front in parts)
            yield Sticking("rod-right", layer.ref, support.right_mm + place, reason, 0)


RULE = Rule(
    "meets",
    msg("things that would meet"),
    _find,
    meets_others.find,
    changes=_changes,
    stickings=_stickings,
    mounts=EVERY_MOUNT,
)
