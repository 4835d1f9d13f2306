"""meets: rod, finial, bracket or panel stands where something else does.

Stop, every mount, every arrangement. Wall ends, the ceiling, neighbour walls at any angle, obstacles, stools, other
layers and other treatments. Solid parts meet in depth too: a rod passes before a flat picture. Cloth gives way in its
folds, so it meets a thing that reaches the plane it hangs in; so does what comes round the corner of a bent track.
Heaters, registers and swinging doors have rules of their own for cloth, boxes one for brackets. Geometry, compared
within 1e-6 mm.

Each kind of thing has a module of its own (``meets_ends`` and so on); here they are one rule.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.looking import layer_at, panel_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene
from elevation.findings.rules import (
    meets_beside,
    meets_ceiling,
    meets_ends,
    meets_guests,
    meets_layers,
    meets_obstacles,
    meets_others,
)
from elevation.setting_out.model import TreatmentOut
from elevation.words import msg


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        yield from meets_ends.find(scene, treatment, layer)
        yield from meets_ceiling.find(scene, treatment, layer)
        yield from meets_obstacles.find(scene, treatment, layer)
        yield from meets_beside.find(scene, treatment, layer)
        yield from meets_guests.find(scene, treatment, layer)
    if len(treatment.layers) > 1:
        yield from meets_layers.find(treatment)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    treatment = next(one for one in scene.set_out.treatments if one.ref == finding.subject[:3])
    yield from meets_beside.changes(scene, treatment, layer, finding.subject)
    if len(finding.subject) == 4:
        yield from meets_ends.rod_changes(scene, layer)
        yield from meets_ceiling.rod_changes(scene, treatment, layer)
        yield from meets_obstacles.rod_changes(scene, treatment, layer)
        yield from meets_layers.changes(scene, treatment, layer)
        yield from meets_others.changes(scene, treatment)
        yield from meets_guests.changes(scene, treatment, layer)
        return
    bracket = next((one for one in layer.brackets if one.ref == finding.subject), None)
    if bracket is not None:
        yield from meets_obstacles.bracket_changes(scene, layer, bracket)
        return
    yield from meets_obstacles.panel_changes(scene, treatment, layer, panel_at(scene, finding.subject))


RULE = Rule(
    "meets",
    msg("things that would meet"),
    _find,
    meets_others.find,
    changes=_changes,
    stickings=meets_ends.stickings,
    mounts=EVERY_MOUNT,
)
