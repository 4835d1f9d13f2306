"""The part of ``meets`` about obstacles and stools: rods, brackets and cloth that run into them."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, ends_or_end, plain_ends, rod_height, rod_projection
from elevation.findings.changing_cloth import hem_above
from elevation.findings.looking import ends_of
from elevation.findings.model import Change, Finding, Scene
from elevation.findings.naming import noun_of, obstacle_name, opening_name, side_name, where
from elevation.findings.rules.meets_told import stop
from elevation.findings.rules.over_box import BOXES
from elevation.findings.shapes import Rect, cloth, meet, rod_rects, shared, way
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


def body_of(layer: LayerOut, bracket: BracketOut) -> Rect:
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
    body = body_of(layer, bracket)
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
    rect = cloth(panel, way(panel), layer.support)
    worst: tuple[float, Solid] | None = None
    for solid in _solids(scene, treatment, for_cloth=True):
        if solid[1] > layer.support.projection_mm + TOUCH_MM and meet(solid[0], rect):
            by = shared(solid[0], rect)
            if worst is None or by > worst[0]:
                worst = by, solid
    return worst


def find(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    """A finding for each rod, bracket and panel of a layer that runs into a thing: the deepest of each."""
    support = layer.support
    found = rod_hit(scene, treatment, layer) if scene.set_out.obstacles else None
    if found is not None:
        text = msg(
            "{where}: the {support} runs {by} into {thing}.",
            support=noun_of(layer),
            where=where(treatment),
            by=Mm(found[0]),
            thing=found[1][2],
        )
        at = (_inside(found[1][0], support.metal_left_mm, support.metal_right_mm), support.height_mm)
        yield stop(layer.ref, text, found[0], at)
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
            yield stop(bracket.ref, text, found[0], (bracket.x_mm, bracket.height_mm))
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
            yield stop(panel.ref, text, found[0], at)


def _inside(rect: Rect, left: float, right: float) -> float:
    return (max(rect[0], left) + min(rect[2], right)) / 2


def rod_changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Change]:
    """Ways past a thing that the rod runs into: over it, under it, before it or beside it."""
    support = layer.support
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


def bracket_changes(scene: Scene, layer: LayerOut, bracket: BracketOut) -> Iterator[Change]:
    """Ways back onto the wall and off a thing for a bracket: along the wall, alone or with its rod end, or in height."""
    left, bottom, right, top = body_of(layer, bracket)
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


def panel_changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> Iterator[Change]:
    """Ways past a thing for a panel: the rod held farther out, its end inward of the thing, or a hem above it."""
    found = panel_hit(scene, treatment, layer, panel)
    if found is not None:
        yield from rod_projection(scene, panel.ref, found[1][1])
        yield from _around(scene, panel, found[1][0])


def _around(scene: Scene, panel: PanelOut, rect: Rect) -> Iterator[Change]:
    """Ways for cloth around a thing: the rod's end inward of it, or a hem above it."""
    left, right = way(panel)
    if panel.side == "left":
        yield from ends_or_end(scene, panel.ref, "left", left - rect[2])
    else:
        yield from ends_or_end(scene, panel.ref, "right", rect[0] - right)
    yield from hem_above(scene, panel.ref, rect[3])
