"""wash: how far the hem will rise after the first wash.

Consider; every mount; layers whose cloth is known to shrink (typed, or by its row) and is not washed before it is cut or
hung. What lies on the floor may rise unseen. Common practice, no source; the cloth's own label governs.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from elevation.findings.changing_cloth import layer_changed
from elevation.findings.limits import limit_mm
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.room.find import layer_of
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, Percent, msg


def rise_mm(layer: LayerOut) -> tuple[float, PanelOut] | None:
    """How far the hem of a layer rises in the first wash beyond what lies on the floor, the farthest, and that panel."""
    shrinks = layer.wish.shrinks
    if shrinks <= 0:
        return None
    rises = [
        (shrinks * panel.finished_length_mm + min(panel.gap_low_mm or 0.0, 0.0), panel)
        for panel in layer.panels
        if panel.finished_length_mm is not None
    ]
    return max(rises, key=lambda pair: pair[0], default=None)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "wash")
    for layer in treatment.layers:
        found = rise_mm(layer)
        if found is None or not exceeds(found[0], limit, scene.half_mm):
            continue
        rise, panel = found
        text = msg(
            "{where}: after the first wash the hem will hang about {rise} higher: the cloth may lose {part} of its length.",
            where=where(treatment),
            rise=Mm(rise, about=True),
            part=Percent(layer.wish.shrinks),
        )
        at = ((panel.closed[0] + panel.closed[1]) / 2, panel.hem_low_mm)
        authority = msg("common practice; the cloth's own label governs")
        yield Finding("wash", Weight.CONSIDER, layer.ref, text, authority, rise, limit, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    making = layer_of(scene.room, layer.ref).making
    label = msg("Wash the cloth before it is cut, or the panels before they are measured")
    yield layer_changed(label, layer.ref, making=replace(making, washed_first=True))


RULE = Rule("wash", msg("the hem after the first wash"), _find, changes=_changes, mounts=EVERY_MOUNT)
