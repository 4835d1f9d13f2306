"""The part of ``meets`` about the corner: what of the neighbour wall stands where rod, bracket or cloth of this one goes.

The neighbour's things are looked at in plan, turned by the inside angle. The legs of one treatment meet on purpose.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, ends_or_end, plain_ends, rod_height, rod_projection
from elevation.findings.changing_cloth import hem_above
from elevation.findings.model import Change, Finding, Scene
from elevation.findings.naming import beside_name, noun_of, side_name, where
from elevation.findings.rules.meets_obstacles import HOT, body_of
from elevation.findings.rules.meets_told import stop
from elevation.findings.shapes import Rect, cloth, meet, rod_rects, shared, way
from elevation.room.model import Ref
from elevation.setting_out.corners import stretch_of
from elevation.setting_out.model import BesideOut, BracketOut, LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, msg

MOVES = frozenset({"sash", "door", "door-swing"})
"""What a wall's sashes and doors sweep: ``swing`` speaks about it."""

Hit = tuple[float, Rect, BesideOut]
"""By how much, the outline before this wall at the depth of what meets it, and the thing."""


def near(scene: Scene, treatment: TreatmentOut) -> Iterator[BesideOut]:
    """What of the neighbour walls a treatment may meet: all but its own other legs."""
    for thing in scene.set_out.beside:
        if thing.ref[:3] not in treatment.joined:
            yield thing


def hit(thing: BesideOut, rect: Rect, back: float, front: float) -> tuple[float, Rect] | None:
    """By how much a rectangle between two depths meets a thing of the neighbour wall, and the thing's outline there."""
    if thing.top_mm <= rect[1] + TOUCH_MM or thing.bottom_mm >= rect[3] - TOUCH_MM:
        return None
    stretch = stretch_of(thing.outline, back + TOUCH_MM, front - TOUCH_MM)
    if stretch is None:
        return None
    outline = (stretch[0], thing.bottom_mm, stretch[1], thing.top_mm)
    return (shared(outline, rect), outline) if meet(outline, rect) else None


def deepest(things: Iterator[BesideOut], parts: tuple[tuple[Rect, float, float], ...]) -> Hit | None:
    """What meets any of some parts (rectangle, back, front) deepest."""
    worst: Hit | None = None
    for thing in things:
        for rect, back, front in parts:
            found = hit(thing, rect, back, front)
            if found is not None and (worst is None or found[0] > worst[0]):
                worst = found[0], found[1], thing
    return worst


def rod_parts(layer: LayerOut) -> tuple[tuple[Rect, float, float], ...]:
    """Rod and ends with their depths."""
    return tuple((rect, back, front) for _, rect, back, front in rod_rects(layer.support))


def panel_parts(layer: LayerOut, panel: PanelOut) -> tuple[tuple[Rect, float, float], ...]:
    """The cloth on all its way, as deep as the rod that it hangs on: it gives way in its folds."""
    out, radius = layer.support.projection_mm, layer.support.diameter_mm / 2
    return ((cloth(panel, way(panel), layer.support), out - radius, out + radius),)


def _bracket_parts(layer: LayerOut, bracket: BracketOut) -> tuple[tuple[Rect, float, float], ...]:
    out, radius = layer.support.projection_mm, layer.support.diameter_mm / 2
    behind = out - bracket.half_width_mm if bracket.on == "ceiling" else 0.0
    return ((body_of(layer, bracket), behind, out + radius),)


def rod_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Hit | None:
    """What of the neighbour wall a layer's rod or finial meets deepest."""
    things = (thing for thing in near(scene, treatment) if thing.kind not in MOVES)
    return deepest(things, rod_parts(layer))


def bracket_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut, bracket: BracketOut) -> Hit | None:
    """What of the neighbour wall a bracket meets deepest."""
    things = (thing for thing in near(scene, treatment) if thing.kind not in MOVES)
    return deepest(things, _bracket_parts(layer, bracket))


def panel_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> Hit | None:
    """What of the neighbour wall a panel meets deepest anywhere on its way."""
    silent = MOVES | HOT
    things = (thing for thing in near(scene, treatment) if thing.kind not in silent)
    return deepest(things, panel_parts(layer, panel))


def find(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    """A finding for rod, each bracket and each panel of a layer that meets something round the corner."""
    if not scene.set_out.beside or layer.support.projection_mm < 0:
        return
    support = layer.support
    found = rod_hit(scene, treatment, layer)
    if found is not None:
        text = msg(
            "{where}: the {support} runs {by} into {thing}.",
            support=noun_of(layer),
            where=where(treatment),
            by=Mm(found[0]),
            thing=beside_name(found[2]),
        )
        yield stop(
            layer.ref, text, found[0], (_at(found, layer.support.metal_left_mm, support.metal_right_mm), support.height_mm)
        )
    for bracket in layer.brackets:
        found = bracket_hit(scene, treatment, layer, bracket)
        if found is not None:
            text = msg(
                "{where}: {bracket} stands {by} over {thing}.",
                where=where(treatment),
                bracket=bracket_name(scene, bracket.ref),
                by=Mm(found[0]),
                thing=beside_name(found[2]),
            )
            yield stop(bracket.ref, text, found[0], (bracket.x_mm, bracket.height_mm))
    for panel in layer.panels:
        found = panel_hit(scene, treatment, layer, panel)
        if found is not None:
            text = msg(
                "{where}: the {side} panel runs {by} into {thing}.",
                where=where(treatment),
                side=side_name(panel.side),
                by=Mm(found[0]),
                thing=beside_name(found[2]),
            )
            yield stop(panel.ref, text, found[0], (_at(found, *way(panel)), (found[1][1] + found[1][3]) / 2))


def _at(found: Hit, left: float, right: float) -> float:
    return (max(found[1][0], left) + min(found[1][2], right)) / 2


def changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut, subject: Ref) -> Iterator[Change]:
    """Ways out of a corner for a rod, bracket or panel: the end on that side drawn in, over it, or farther out."""
    bracket = next((one for one in layer.brackets if one.ref == subject), None)
    panel = next((one for one in layer.panels if one.ref == subject), None)
    if bracket is not None:
        found = bracket_hit(scene, treatment, layer, bracket)
    elif panel is not None:
        found = panel_hit(scene, treatment, layer, panel)
    else:
        found = rod_hit(scene, treatment, layer)
    if found is None:
        return
    outline, thing = found[1], found[2]
    if bracket is not None:
        body = body_of(layer, bracket)
        over = outline[2] - body[0] if thing.side == "left" else outline[0] - body[2]
        yield from bracket_to(scene, bracket.ref, bracket.x_mm + over)
    inner = min(rect[0] for rect, _, _ in rod_parts(layer)), max(rect[2] for rect, _, _ in rod_parts(layer))
    if panel is not None:
        inner = way(panel)
    by = outline[2] - inner[0] if thing.side == "left" else inner[1] - outline[0]
    yield from ends_or_end(scene, subject, thing.side, -by)
    thick = max(layer.support.finial_diameter_mm, layer.support.diameter_mm) / 2
    if panel is not None:
        yield from hem_above(scene, subject, thing.top_mm)
    else:
        yield from rod_height(scene, layer.ref, thing.top_mm + thick)
        yield from plain_ends(scene, layer.ref)
    yield from rod_projection(scene, layer.ref, max(z for _, z in thing.outline) + thick)
