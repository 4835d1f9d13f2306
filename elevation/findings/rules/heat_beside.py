"""The part of ``heat`` about the corner: a heater or radiator of the neighbour wall near the cloth of this one.

Heaters ask for their distance in every direction, measured in plan and up the wall; a hot-water radiator only that the
cloth does not hang down over it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot

from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.model import Finding, Scene, Weight
from elevation.findings.naming import beside_name, side_name, where
from elevation.findings.rules.heat_told import too_near
from elevation.findings.rules.meets_beside import near
from elevation.findings.shapes import way
from elevation.setting_out.corners import box, stretch_of
from elevation.setting_out.model import BesideOut, LayerOut, PanelOut, Point, TreatmentOut
from elevation.units.tolerance import TOUCH_MM, falls_short
from elevation.words import Mm, msg

HEATERS = frozenset({"electric-heater", "fan-heater", "portable-heater", "flame-heater"})
RADIATOR = "hot-water-radiator"


def apart(one: Sequence[Point], other: Sequence[Point]) -> float:
    """Distance between two convex outlines seen from above that do not meet, in mm."""
    return min(
        min(_to_edge(point, two[i - 1], two[i]) for point in points for i in range(len(two)))
        for points, two in ((one, other), (other, one))
    )


def _to_edge(point: Point, a: Point, b: Point) -> float:
    dx, dz = b[0] - a[0], b[1] - a[1]
    long = dx * dx + dz * dz
    part = 0.0 if long == 0 else min(max(((point[0] - a[0]) * dx + (point[1] - a[1]) * dz) / long, 0.0), 1.0)
    return hypot(point[0] - a[0] - part * dx, point[1] - a[1] - part * dz)


def gap(layer: LayerOut, panel: PanelOut, thing: BesideOut) -> tuple[float, float]:
    """Free distance between a panel on its whole way and a thing round the corner: in plan, and up the wall, in mm."""
    left, right = way(panel)
    half = max(panel.fold_depth_mm, layer.support.diameter_mm) / 2
    back, front = layer.support.projection_mm - half, layer.support.projection_mm + half
    up = max(panel.hem_low_mm - thing.top_mm, thing.bottom_mm - panel.top_mm, 0.0)
    stretch = stretch_of(thing.outline, back, front)
    if stretch is not None and stretch[0] < right and stretch[1] > left:
        return 0.0, up
    return apart(box(left, right, back, front), thing.outline), up


def find(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> Iterator[Finding]:
    """What heat sources round the corner have against a panel."""
    for thing in near(scene, treatment):
        if thing.kind in HEATERS:
            yield from _heater(scene, treatment, layer, panel, thing)
        elif thing.kind == RADIATOR:
            yield from _radiator(scene, treatment, layer, panel, thing)


def _heater(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut, thing: BesideOut) -> Iterator[Finding]:
    flat, up = gap(layer, panel, thing)
    free, limit_id = hypot(flat, up), f"heat-{thing.kind}"
    asked = limit_mm(scene, limit_id) if thing.clearance_mm is None else thing.clearance_mm
    if not falls_short(free, asked, scene.half_mm):
        return
    own = thing.clearance_mm is not None
    limit = msg("{limit}", limit=Mm(asked)) if own else said_limit(scene, limit_id)
    weight, text = too_near(
        treatment, panel, beside_name(thing), limit, free, asked, touches=flat <= TOUCH_MM and up <= TOUCH_MM
    )
    authority = msg("the heater's own sheet") if own else authority_of(scene, limit_id)
    caution = msg("The heater's own sheet governs: read it before you hang cloth near it.")
    yield Finding("heat", weight, panel.ref, text, authority, free, asked, _at(panel, thing), caution)


def _radiator(
    scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut, thing: BesideOut
) -> Iterator[Finding]:
    flat, _ = gap(layer, panel, thing)
    over, limit_id = panel.hem_low_mm - thing.top_mm, f"heat-{thing.kind}"
    asked = limit_mm(scene, limit_id)
    if flat > TOUCH_MM or not falls_short(over, asked, scene.half_mm):
        return
    text = msg(
        "{where}: the {side} panel hangs down before {obstacle}, {limit} above its top lets the heat out.",
        where=where(treatment),
        side=side_name(panel.side),
        obstacle=beside_name(thing),
        limit=said_limit(scene, limit_id),
    )
    yield Finding("heat", Weight.CONSIDER, panel.ref, text, authority_of(scene, limit_id), over, asked, _at(panel, thing))


def _at(panel: PanelOut, thing: BesideOut) -> tuple[float, float]:
    left, right = way(panel)
    return (left if thing.side == "left" else right), (thing.bottom_mm + thing.top_mm) / 2
