"""below-sill: cloth inside an opening is longer than the opening lets it hang: it would lie on the sill.

Broken; reveal and sash mounts; judged per layer by its lowest panel. Geometry, compared with half a graduation.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.changing_cloth import hem_above, layer_changed
from elevation.findings.limits import by_geometry
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import INSIDE, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import opening_name
from elevation.room.model import Hem
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut
from elevation.units.tolerance import falls_short
from elevation.words import Mm, msg


def lowest(layer: LayerOut) -> PanelOut | None:
    """The panel that hangs lowest; None where there are none."""
    return min(layer.panels, key=lambda panel: panel.hem_low_mm, default=None)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    opening = treatment.openings[0]
    for layer in treatment.layers:
        panel = lowest(layer)
        if panel is None or not falls_short(panel.hem_low_mm, opening.bottom_mm, scene.half_mm):
            continue
        by = opening.bottom_mm - panel.hem_low_mm
        text = msg(
            "{opening}: the cloth is {by} too long for the opening and lies on the sill.",
            opening=opening_name(opening),
            by=Mm(by),
        )
        at = ((panel.closed[0] + panel.closed[1]) / 2, opening.bottom_mm)
        yield Finding("below-sill", Weight.BROKEN, layer.ref, text, by_geometry(), -by, 0.0, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    opening = treatment_at(scene, finding.subject).openings[0]
    panel = lowest(layer)
    if panel is None:  # pragma: no cover - the finding was made of it
        return
    yield layer_changed(msg("End the cloth just above the sill"), layer.ref, hem=Hem("sill"))
    yield from hem_above(scene, panel.ref, opening.bottom_mm)
    yield from rod_height(scene, layer.ref, layer.support.height_mm + opening.bottom_mm - panel.hem_low_mm)


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    sill = treatment.openings[0].bottom_mm
    for layer in treatment.layers:
        panel = lowest(layer)
        if panel is not None and panel.finished_length_mm is not None:
            place = sill + panel.finished_length_mm + panel.heading_mm
            yield Sticking("rod-height", layer.ref, place, msg("the cloth just clears the sill"))


RULE = Rule(
    "below-sill", msg("cloth that ends above the sill"), _find, changes=_changes, stickings=_stickings, mounts=INSIDE
)
