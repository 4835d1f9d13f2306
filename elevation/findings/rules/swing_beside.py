"""The part of ``swing`` about the corner: a sash or door of the neighbour wall that turns into rod or cloth of this one.

What a leaf sweeps is a quarter of a circle about its hinge, seen from above, turned by the inside angle. It moves whatever
the cloth of this wall does: all of a panel's way counts.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import ends_or_end, rod_height, rod_projection
from elevation.findings.model import Change, Finding, Scene
from elevation.findings.naming import beside_name
from elevation.findings.rules.meets_beside import MOVES, Hit, deepest, near, panel_parts, rod_parts
from elevation.findings.rules.swing_told import cloth_told, rod_told
from elevation.findings.shapes import middle, way
from elevation.room.model import Ref
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut


def rod_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Hit | None:
    """The sash or door of the neighbour wall that swings deepest into a layer's rod."""
    return deepest((thing for thing in near(scene, treatment) if thing.kind in MOVES), rod_parts(layer))


def panel_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut, panel: PanelOut) -> Hit | None:
    """The sash or door of the neighbour wall that swings deepest into a panel."""
    return deepest((thing for thing in near(scene, treatment) if thing.kind in MOVES), panel_parts(layer, panel))


def find(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    """A finding for the rod and each panel of a layer that something of the neighbour wall swings into."""
    if not scene.set_out.beside or layer.support.projection_mm < 0:
        return
    support = layer.support
    found = rod_hit(scene, treatment, layer)
    if found is not None:
        x = middle(found[1], (support.metal_left_mm, support.metal_right_mm))
        yield rod_told(treatment, layer, beside_name(found[2]), found[0], (x, support.height_mm))
    for panel in (*layer.panels, *layer.guests):
        found = panel_hit(scene, treatment, layer, panel)
        if found is not None:
            at = middle(found[1], way(panel)), (found[1][1] + found[1][3]) / 2
            yield cloth_told(treatment, layer, panel, beside_name(found[2]), found[0], at)


def changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut, subject: Ref) -> Iterator[Change]:
    """Ways out of a swing round the corner: that end drawn in, the rod over it, or nearer to its own wall."""
    panel = next((one for one in layer.panels if one.ref == subject), None)
    if panel is None:
        for guest in layer.guests:
            met = panel_hit(scene, treatment, layer, guest)
            if met is not None:
                yield from rod_projection(scene, layer.ref, max(z for _, z in met[2].outline))
    found = rod_hit(scene, treatment, layer) if panel is None else panel_hit(scene, treatment, layer, panel)
    if found is None:
        return
    outline, thing = found[1], found[2]
    if panel is None:
        rects = [rect for rect, _, _ in rod_parts(layer)]
        left, right = min(rect[0] for rect in rects), max(rect[2] for rect in rects)
        thick = max(layer.support.finial_diameter_mm, layer.support.diameter_mm) / 2
        yield from rod_height(scene, layer.ref, thing.top_mm + thick)
    else:
        left, right = way(panel)
    yield from ends_or_end(scene, subject, thing.side, left - outline[2] if thing.side == "left" else outline[0] - right)
    yield from rod_projection(scene, layer.ref, max(z for _, z in thing.outline))
