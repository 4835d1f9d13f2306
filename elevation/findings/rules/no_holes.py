"""no-holes: something would have to be drilled or screwed in a room where no holes are allowed.

Stop; every mount. What was there before (marked so: a height as built alone may be read off a hole that
was drilled yesterday) needs no new hole, nor does a rod clamped between the jambs.
The room itself says that none are allowed.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_dress import no_pelmet
from elevation.findings.changing_tie import untied
from elevation.findings.looking import treatment_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.room.model import Room
from elevation.room.mounting import mounted
from elevation.room.supports import hung_on
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.trade.model import Trade
from elevation.words import msg, msg_plural

_SCREWED = frozenset({"socket", "return"})


def _screwed_ends(scene: Scene, layer: LayerOut) -> int:
    if layer.support.kind == "tension-rod":
        return 0
    ends = (layer.support.left_ends, layer.support.right_ends)
    rows = [scene.trade.ends.get(end) for end in ends]
    return sum(1 for row in rows if row is not None and row.shape in _SCREWED)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.room.no_holes:
        return
    pelmet = treatment.pelmet
    if pelmet is not None:
        text = msg("{where}: the pelmet is to be screwed on, and this room allows no holes.", where=where(treatment))
        at = ((pelmet.left_mm + pelmet.right_mm) / 2, pelmet.bottom_mm)
        yield Finding("no-holes", Weight.STOP, treatment.ref, text, msg("this room: no holes allowed"), at=at)
    for layer in treatment.layers:
        yield from _hooks(treatment, layer)
        drilled = [bracket for bracket in layer.brackets if not bracket.is_there]
        count = len(drilled) + _screwed_ends(scene, layer)
        if count == 0:
            continue
        text = msg_plural(
            "{where}: a bracket or end of its {support} is to be screwed on, and this room allows no holes.",
            "{where}: {count} brackets and ends of its {support} are to be screwed on, and this room allows no holes.",
            support=noun_of(layer),
            count=count,
            where=where(treatment),
        )
        at = (drilled[0].x_mm, drilled[0].height_mm) if drilled else (layer.support.left_mm, layer.support.height_mm)
        authority = msg("this room: no holes allowed")
        yield Finding("no-holes", Weight.STOP, layer.ref, text, authority, at=at)


def _hooks(treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    """New hooks of tie-backs, told once for a layer, about the first panel that has one."""
    tied = [panel for panel in layer.panels if panel.tie is not None and not panel.tie.is_there]
    if tied and tied[0].tie is not None:
        text = msg_plural(
            "{where}: the hook of a tie-back is to be screwed on, and this room allows no holes.",
            "{where}: {count} hooks of tie-backs are to be screwed on, and this room allows no holes.",
            count=len(tied),
            where=where(treatment),
        )
        authority = msg("this room: no holes allowed")
        yield Finding("no-holes", Weight.STOP, tied[0].ref, text, authority, at=tied[0].tie.hook)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    if len(finding.subject) == 3:
        yield from no_pelmet(scene, finding.subject)
        return
    if len(finding.subject) > 4:
        yield from untied(finding.subject)
        return
    treatment = treatment_at(scene, finding.subject)
    if len(treatment.openings) != 1:
        return
    if treatment.mount == "reveal":
        label = msg("Clamp a tension rod between the jambs instead of sockets")
    else:
        label = msg("Clamp a tension rod in the reveal: it needs no holes")
    yield Change(label, lambda room: _clamped(mounted(room, treatment.ref, "reveal", scene.trade), treatment, scene.trade))


def _clamped(room: Room, treatment: TreatmentOut, trade: Trade) -> Room:
    for layer in treatment.layers:
        room = hung_on(room, layer.ref, "tension-rod", layer.support.length_mm, trade)
    return room


RULE = Rule(
    "no-holes",
    msg("no holes where none are allowed"),
    _find,
    changes=_changes,
    mounts=frozenset({"wall", "ceiling", "reveal", "sash"}),
)
