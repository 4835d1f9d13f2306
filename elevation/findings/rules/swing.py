"""swing: a sash, its handle or a door would meet rod or cloth as it moves.

Stop, wall, ceiling and reveal mounts (what hangs on a sash moves with it), every arrangement. Before a covered opening the
cloth is drawn open first, so its open place counts;
doors and sashes of other openings, and doors of other walls, move whatever the cloth does: all of its way counts. Cloth
is met where a thing reaches the plane it hangs in. Geometry, compared within 1e-6 mm.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from elevation.findings.changing import ends_or_end, rod_height, rod_projection
from elevation.findings.looking import layer_at, panel_at, treatment_at
from elevation.findings.model import FIXED, Change, Finding, Rule, Scene, Sticking
from elevation.findings.naming import noun_of, obstacle_name, opening_name
from elevation.findings.rules import swing_beside
from elevation.findings.rules.swing_told import cloth_told, rod_told
from elevation.findings.shapes import Rect, cloth, meet, middle, rod_rects, shared, way
from elevation.setting_out.leaves import TURNS_IN, carried, swept
from elevation.setting_out.model import LayerOut, ObstacleOut, OpeningOut, PanelOut, Span, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg


class Carrier(Struct, frozen=True, gc=False):
    """An opening whose leaves turn in with a curtain on them."""

    opening: OpeningOut


Sweep = tuple[Rect, float, OpeningOut | ObstacleOut | Carrier, bool]
"""Outline, how far out it reaches, what moves, and whether the cloth is drawn open first."""


def _name(sweep: Sweep) -> Message:
    mover = sweep[2]
    if isinstance(mover, Carrier):
        return msg("{opening}, with the curtain on its sash,", opening=opening_name(mover.opening))
    return opening_name(mover) if isinstance(mover, OpeningOut) else obstacle_name(mover)


def _sweeps(scene: Scene, treatment: TreatmentOut) -> Iterator[Sweep]:
    for opening in scene.set_out.openings:
        for left, bottom, right, top, out in opening.sweep:
            yield (left, bottom, right, top), out, opening, opening in treatment.openings
        if opening.sash in TURNS_IN:
            yield from _with_load(scene, opening, treatment)
    for obstacle in scene.set_out.obstacles:
        if obstacle.kind == "door-swing":
            outline = (obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm)
            yield outline, obstacle.out_mm, obstacle, False


def _with_load(scene: Scene, opening: OpeningOut, treatment: TreatmentOut) -> Iterator[Sweep]:
    """What a leaf sweeps with the curtain of another treatment on it: farther into the room, and beyond its hinge."""
    others = [one for one in scene.set_out.treatments if one is not treatment]
    for leaf, load in carried(opening, others):
        outline = swept(leaf, opening.reveal_mm or 0.0, load)
        xs = [x for x, _ in outline]
        rect = (min(xs), load.bottom_mm, max(xs), load.top_mm)
        yield rect, max(z for _, z in outline), Carrier(opening), opening in treatment.openings


Hit = tuple[float, Sweep]


def rod_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Hit | None:
    """What swings deepest into a layer's rod, and by how much, in mm."""
    worst: Hit | None = None
    for sweep in _sweeps(scene, treatment):
        for _, rect, back, _front in rod_rects(layer.support):
            if sweep[1] > back + TOUCH_MM and meet(sweep[0], rect):
                by = shared(sweep[0], rect)
                if worst is None or by > worst[0]:
                    worst = by, sweep
    return worst


def panel_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> Hit | None:
    """What swings deepest into a panel, and by how much, in mm."""
    worst: Hit | None = None
    for sweep in _sweeps(scene, treatment):
        span = _span(panel, sweep)
        if span[1] - span[0] <= TOUCH_MM:
            continue  # drawn open, nothing of it is before this wall
        rect = cloth(panel, span, layer.support)
        if sweep[1] > layer.support.projection_mm + TOUCH_MM and meet(sweep[0], rect):
            by = shared(sweep[0], rect)
            if worst is None or by > worst[0]:
                worst = by, sweep
    return worst


def _span(panel: PanelOut, sweep: Sweep) -> Span:
    return panel.open if sweep[3] else way(panel)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        yield from swing_beside.find(scene, treatment, layer)
    if next(_sweeps(scene, treatment), None) is None:
        return
    for layer in treatment.layers:
        found = rod_hit(scene, treatment, layer)
        if found is not None:
            by_mm, sweep = found
            support = layer.support
            x = middle(sweep[0], (support.left_mm, support.right_mm))
            yield rod_told(treatment, layer, _name(sweep), by_mm, (x, support.height_mm))
        for panel in (*layer.panels, *layer.guests):
            found = panel_hit(scene, treatment, layer, panel)
            if found is not None:
                by_mm, sweep = found
                rect = sweep[0]
                at = middle(rect, _span(panel, sweep)), (rect[1] + rect[3]) / 2
                yield cloth_told(treatment, layer, panel, _name(sweep), by_mm, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment, layer = treatment_at(scene, finding.subject), layer_at(scene, finding.subject)
    yield from swing_beside.changes(scene, treatment, layer, finding.subject)
    support = layer.support
    if len(finding.subject) == 4:
        found = rod_hit(scene, treatment, layer)
        if found is not None:
            (left, _bottom, right, top), out, _, _ = found[1]
            thick = max(support.finial_diameter_mm, support.diameter_mm) / 2
            yield from rod_height(scene, layer.ref, top + thick)
            yield from ends_or_end(scene, layer.ref, "left", support.metal_left_mm - right)
            yield from ends_or_end(scene, layer.ref, "right", left - support.metal_right_mm)
            yield from rod_projection(scene, layer.ref, out + thick)
        for guest in layer.guests:
            found = panel_hit(scene, treatment, layer, guest)
            if found is not None:
                yield from rod_projection(scene, layer.ref, found[1][1])
        return
    panel = panel_at(scene, finding.subject)
    found = panel_hit(scene, treatment, layer, panel)
    if found is None:
        return
    (left, _bottom, right, _top), out, _, is_open = found[1]
    span = _span(panel, found[1])
    # Cloth that is drawn open first goes outward; a door beside the window is left alone by going inward.
    if panel.side == "left":
        yield from ends_or_end(scene, finding.subject, "left", span[1] - left if is_open else span[0] - right)
    else:
        yield from ends_or_end(scene, finding.subject, "right", right - span[0] if is_open else left - span[1])
    yield from rod_projection(scene, finding.subject, out)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        for sweep in _sweeps(scene, treatment):
            support = layer.support
            if sweep[1] <= support.projection_mm or not sweep[3]:
                continue
            reason = msg("the {support} just clears {thing} when it opens", support=noun_of(layer), thing=_name(sweep))
            yield Sticking("rod-height", layer.ref, sweep[0][3] + support.diameter_mm / 2, reason, 0)


RULE = Rule("swing", msg("sashes and doors that move"), _find, changes=_changes, stickings=_stickings, mounts=FIXED)
