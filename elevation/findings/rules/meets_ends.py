"""The part of ``meets`` about the wall's ends: neighbour walls at any angle, and plates that pass the wall."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, ends_or_end, plain_ends
from elevation.findings.changing_ends import narrow_side
from elevation.findings.looking import wall_of_scene
from elevation.findings.model import Change, Finding, Scene, Sticking
from elevation.findings.naming import noun_of, side_name, where
from elevation.findings.rules.meets_told import stop
from elevation.findings.shapes import corner_room, rod_rects, way
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, msg


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


def find(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    """A finding for a rod too long for its wall, and one for each plate that passes an end of it."""
    support = layer.support
    found = past_ends(scene, layer)
    if found:
        # A rod that is too long for its wall is one thing wrong, also where it passes both ends.
        side = max(found, key=lambda key: found[key])
        text = msg(
            "{where}: the {side} end of the {support}, with what ends it, reaches {by} into the neighbouring wall.",
            support=noun_of(layer),
            where=where(treatment),
            side=side_name(side),
            by=Mm(found[side]),
        )
        x = support.metal_left_mm if side == "left" else support.metal_right_mm
        yield stop(layer.ref, text, found[side], (x, support.height_mm))
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
            yield stop(bracket.ref, text, over, (bracket.x_mm, bracket.height_mm))


def rod_changes(scene: Scene, layer: LayerOut) -> Iterator[Change]:
    """Ways back from a neighbour wall: the end drawn in, plain ends, less cloth on that side."""
    over = past_ends(scene, layer)
    for side, by in sorted(over.items(), key=lambda item: -item[1]):
        yield from ends_or_end(scene, layer.ref, side, -by)
    if over:
        yield from plain_ends(scene, layer.ref)
        for side in over:
            yield from narrow_side(scene, layer.ref, side)


def stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    """Where an end of each rod, with what ends it, just clears the neighbour wall."""
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
