"""bracket-out: a bracket in hand holds its rod nearer to the wall, or farther from it, than the rod is planned.

Broken; mount on the wall; brackets whose kit says how far out it holds a rod (one that is bought does, one that is made to
measure does not). What the cloth clears was judged at the planned place, so the plan has to follow the bracket.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from elevation.findings.changing import length
from elevation.findings.limits import authority_of, limit_mm
from elevation.findings.looking import layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import where
from elevation.room.edits import replace_rod
from elevation.room.model import Ref, Room
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.units import Length
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg


def planned(layer: LayerOut) -> float:
    """What brackets stand on to the rod's axis, in mm: from the board where there is one, else from the wall."""
    return layer.support.projection_mm - (layer.board.thick_mm if layer.board is not None else 0.0)


def told(layer: LayerOut) -> tuple[float, ...]:
    """How far out the layer's brackets hold a rod, each figure once, least first; those that say none are left out."""
    return tuple(sorted({bracket.out_mm for bracket in layer.brackets if bracket.out_mm > 0}))


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        found = told(layer)
        if not found:
            continue
        plan = planned(layer)
        worst = max(found, key=lambda out: abs(out - plan))
        off, limit = abs(worst - plan), limit_mm(scene, "bracket-out")
        if not exceeds(off, limit, scene.half_mm):
            continue
        bracket = next(one for one in layer.brackets if one.out_mm == worst)
        text = msg(
            "{where}: its bracket holds the rod's centre {out} from what it is screwed to; it is planned {plan} from it.",
            where=where(treatment),
            out=Mm(worst),
            plan=Mm(plan),
        )
        at = (bracket.x_mm, bracket.height_mm)
        yield Finding("bracket-out", Weight.BROKEN, layer.ref, text, authority_of(scene, "bracket-out"), off, limit, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    plan = planned(layer)
    for out in sorted(told(layer), key=lambda one: abs(one - plan)):
        to = length(scene, out)
        yield Change(msg("Plan the rod {out} out, as its bracket holds it", out=Mm(to.mm)), _put(layer.ref, to))


def _put(ref: Ref, to: Length) -> Callable[[Room], Room]:
    def edit(room: Room) -> Room:
        return replace_rod(room, ref, projection=to)

    return edit


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        base = layer.support.projection_mm - planned(layer)
        for out in told(layer):
            yield Sticking("projection", layer.ref, base + out, msg("where its bracket holds it"))


RULE = Rule("bracket-out", msg("rods as far out as their brackets"), _find, changes=_changes, stickings=_stickings)
