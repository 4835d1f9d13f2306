"""corner-bracket: a rod that goes on round a corner meets nothing there, or no bracket stands near the corner.

Broken; wall and ceiling mounts; ends that go round a corner. A joint or a bend carries nothing: each leg wants a bracket
near it. Not where the other rod's own bracket stands by the joint on both sides already: it is asked of each wall apart.
The figure is from memory; the sheet of a bent track or of a corner joint governs.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_added, bracket_to, length
from elevation.findings.limits import authority_of, by_geometry, drilling, limit_mm, said_limit
from elevation.findings.looking import layer_at, noun_at, treatment_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, side_name, where
from elevation.room.corners import AROUND, SIDES, Side
from elevation.room.edits import replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Held, Ref, Rod, Room
from elevation.setting_out.model import BracketOut, LayerOut, TreatmentOut
from elevation.units.tolerance import exceeds
from elevation.words import Mm, msg

_LET_GO_MM = 152.4


def _goes_round(rod: Rod, side: Side) -> bool:
    return (rod.left if side == "left" else rod.right).hold == AROUND


def _end(layer: LayerOut, side: Side) -> float:
    return layer.support.left_mm if side == "left" else layer.support.right_mm


def nearest(layer: LayerOut, side: Side) -> BracketOut | None:
    """The bracket nearest to a corner; None where there is none at all."""
    return min(layer.brackets, key=lambda bracket: abs(bracket.x_mm - _end(layer, side)), default=None)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    limit = limit_mm(scene, "corner-bracket")
    for layer in treatment.layers:
        rod = layer_of(scene.room, layer.ref).rod
        for number, side in enumerate(SIDES):
            if not _goes_round(rod, side):
                continue
            at = (_end(layer, side), layer.support.height_mm)
            params = {"where": where(treatment), "side": side_name(side)}
            if treatment.joined[number] is None:
                text = msg(
                    "{where}: the {side} end of the {support} goes round the corner, but meets no {support} there.",
                    support=noun_of(layer),
                    **params,
                )
                yield Finding("corner-bracket", Weight.BROKEN, layer.ref, text, by_geometry(), at=at)
                continue
            bracket = nearest(layer, side)
            if bracket is None:
                continue  # no-bracket speaks
            away = abs(bracket.x_mm - _end(layer, side))
            if exceeds(away, limit, scene.half_mm):
                text = msg(
                    "{where}: the nearest bracket stands {away} from the {side} corner that the {support} goes round; "
                    "{limit} is the most.",
                    support=noun_of(layer),
                    away=Mm(away),
                    limit=said_limit(scene, "corner-bracket"),
                    **params,
                )
                authority = authority_of(scene, "corner-bracket")
                yield Finding(
                    "corner-bracket", Weight.BROKEN, bracket.ref, text, authority, away, limit, at, caution=drilling()
                )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment, layer = treatment_at(scene, finding.subject), layer_at(scene, finding.subject)
    limit = limit_mm(scene, "corner-bracket")
    rod = layer_of(scene.room, layer.ref).rod
    for number, side in enumerate(SIDES):
        if not _goes_round(rod, side):
            continue
        if treatment.joined[number] is None:
            if finding.subject == layer.ref:
                yield _let_go(scene, layer.ref, side)
            continue
        bracket, inward = nearest(layer, side), 1.0 if side == "left" else -1.0
        if (
            bracket is None
            or bracket.ref != finding.subject
            or not exceeds(abs(bracket.x_mm - _end(layer, side)), limit, scene.half_mm)
        ):
            continue
        yield from bracket_to(scene, bracket.ref, _end(layer, side) + inward * limit)
        yield from bracket_added(scene, layer.ref, _end(layer, side) + inward * limit / 2)


def _let_go(scene: Scene, ref: Ref, side: Side) -> Change:
    held = Held("beyond-opening", length(scene, _LET_GO_MM))

    def edit(room: Room) -> Room:
        return replace_rod(room, ref, **{side: held})

    support = noun_at(scene, ref)
    if side == "left":
        return Change(msg("End the {support} before the left corner", support=support), edit)
    return Change(msg("End the {support} before the right corner", support=support), edit)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    limit = limit_mm(scene, "corner-bracket")
    for layer in treatment.layers:
        for number, side in enumerate(SIDES):
            bracket = nearest(layer, side)
            if treatment.joined[number] is None or bracket is None:
                continue
            place = _end(layer, side) + (limit if side == "left" else -limit)
            yield Sticking("bracket", bracket.ref, place, msg("as far from the corner as a bracket may stand"))


RULE = Rule(
    "corner-bracket",
    msg("rods that go round a corner"),
    _find,
    changes=_changes,
    stickings=_stickings,
    mounts=BEFORE_WALL,
)
