"""The part of ``meets`` about cloth that passes the corner of a bent track: what it runs into on the wall it comes on to.

It hangs in a layer of another wall, and is told of here, where it meets something; the subject is the track here.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from elevation.findings.changing import mark_down, rod_projection
from elevation.findings.changing_cloth import finished_length
from elevation.findings.model import Change, Finding, Scene
from elevation.findings.naming import beside_name, where
from elevation.findings.rules import meets_beside, meets_obstacles
from elevation.findings.rules.meets_told import stop
from elevation.findings.shapes import Rect, middle, way
from elevation.setting_out.model import LayerOut, PanelOut, TreatmentOut
from elevation.words import Message, Mm, msg


class Met(Struct, frozen=True, gc=False):
    """What a guest runs into: by how much, its outline on the wall, how far out it stands, and its name, in mm."""

    by_mm: float
    outline: Rect
    out_mm: float
    name: Message


def guest_hit(scene: Scene, treatment: TreatmentOut, layer: LayerOut, guest: PanelOut) -> Met | None:
    """What cloth from another wall meets deepest on its way here, of this wall's things and of those round its corners."""
    found: list[Met] = []
    own = meets_obstacles.panel_hit(scene, treatment, layer, guest)
    if own is not None:
        found.append(Met(own[0], own[1][0], own[1][1], own[1][2]))
    other = meets_beside.panel_hit(scene, treatment, layer, guest)
    if other is not None:
        found.append(Met(other[0], other[1], max(z for _, z in other[2].outline), beside_name(other[2])))
    return max(found, key=lambda met: met.by_mm, default=None)


def find(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    """A finding for each panel of another wall that runs into something before this one."""
    for guest in layer.guests:
        met = guest_hit(scene, treatment, layer, guest)
        if met is None:
            continue
        text = msg(
            "{where}: the cloth that comes round the corner hangs {plane} out from the wall and runs {by} into {thing}.",
            where=where(treatment),
            plane=Mm(layer.support.projection_mm),
            by=Mm(met.by_mm),
            thing=met.name,
        )
        yield stop(layer.ref, text, met.by_mm, (middle(met.outline, way(guest)), (met.outline[1] + met.outline[3]) / 2))


def changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Change]:
    """Ways past a thing for cloth that comes round the corner: the track farther out, or the cloth ended over it."""
    for guest in layer.guests:
        met = guest_hit(scene, treatment, layer, guest)
        if met is None:
            continue
        yield from rod_projection(scene, layer.ref, met.out_mm)
        long = mark_down(guest.top_mm - met.outline[3], scene.room.graduation_mm)
        if long > 0:
            yield from finished_length(scene, guest.ref, long)
