"""rings-tight: rings or eyelets are hardly wider than the rod they are to slide on.

Broken where they do not go over the rod at all, else consider; every mount; rods whose rings or eyelets were measured.
Rings 1/4 in wider than the rod (a rod and bracket maker's guide), eyelets 3/16 in (a sewing guide).
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import length, mark_up
from elevation.findings.changing_cloth import layer_changed
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.room.edits import replace_rod
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units.tolerance import exceeds, falls_short
from elevation.words import Mm, msg, term

MOST_RING_MM = 300.0
"""No ring is wider."""


def _limit_id(scene: Scene, layer: LayerOut) -> str:
    heading = scene.trade.headings.get(layer.heading)
    return "eyelets-tight" if heading is not None and heading.carries == "sleeve" else "rings-tight"


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        ring = layer.wish.ring_mm
        if ring is None or layer.support.kind == "track" or not layer.panels:
            continue
        limit_id = _limit_id(scene, layer)
        limit = limit_mm(scene, limit_id)
        room_mm = ring - layer.support.diameter_mm
        if not falls_short(room_mm, limit, scene.half_mm):
            continue
        params = {"where": where(treatment), "ring": Mm(ring), "rod": Mm(layer.support.diameter_mm)}
        if exceeds(0.0, room_mm, 0.0):
            text = msg("{where}: rings {ring} wide inside do not go over a rod {rod} thick.", **params)
        else:
            text = msg(
                "{where}: rings {ring} wide inside run tight on a rod {rod} thick; {limit} more than it lets them slide.",
                limit=said_limit(scene, limit_id),
                **params,
            )
        weight = Weight.BROKEN if room_mm < 0 else Weight.CONSIDER
        at = ((layer.support.left_mm + layer.support.right_mm) / 2, layer.support.height_mm)
        yield Finding("rings-tight", weight, layer.ref, text, authority_of(scene, limit_id), room_mm, limit, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    ring = layer.wish.ring_mm
    if ring is None:  # pragma: no cover - the finding was made of it
        return
    limit = limit_mm(scene, _limit_id(scene, layer))
    wanted = mark_up(layer.support.diameter_mm + limit, scene.room.graduation_mm)
    if wanted <= MOST_RING_MM:
        at = length(scene, wanted)
        yield layer_changed(msg("Take rings {at} wide inside", at=Mm(at.mm)), layer.ref, ring=at)
    fitting = [
        row
        for row in scene.trade.sections.values()
        if row.outer_mm + limit <= ring and row.material == layer.support.material and row.outer_mm > 0
    ]
    if fitting:
        row = max(fitting, key=lambda one: one.outer_mm)
        label = msg("Take a thinner rod: {section}", section=term(row.name))
        yield Change(label, lambda room: replace_rod(room, layer.ref[:4], section=row.id, diameter=None))


RULE = Rule("rings-tight", msg("rings that slide on their rod"), _find, changes=_changes, mounts=EVERY_MOUNT)
