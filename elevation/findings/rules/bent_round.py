"""bent-round: a rod or track bent round a corner where it cannot be bent so.

Broken; wall and ceiling mounts; what goes round a corner in one piece. Its sheet says how tight it may be bent; a bracket
holds a straight, so none stands in the bend; and each straight must be long enough for the bends at its ends. Geometry.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from elevation.findings.changing import bracket_name, bracket_to, length, mark_up
from elevation.findings.limits import by_geometry
from elevation.findings.looking import layer_at
from elevation.findings.model import BEFORE_WALL, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, where
from elevation.room.corners import lead_ref
from elevation.room.edits import replace_rod
from elevation.room.model import Ref, Room
from elevation.setting_out.model import BracketOut, LayerOut, TreatmentOut
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM, falls_short
from elevation.words import Message, Mm, msg


def in_bend(layer: LayerOut, bracket: BracketOut) -> float | None:
    """Where the straight ends that a bracket stands beyond, in mm along the wall; None where it stands on the straight."""
    support = layer.support
    left, right = support.left_mm + support.tangents_mm[0], support.right_mm - support.tangents_mm[1]
    half = bracket.half_width_mm
    if support.tangents_mm[0] and bracket.x_mm - half < left - TOUCH_MM:
        return left + half
    if support.tangents_mm[1] and bracket.x_mm + half > right + TOUCH_MM:
        return right - half
    return None


def _sheet() -> Message:
    return msg("the track's own sheet")


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        support = layer.support
        if support.bend_mm is None:
            continue
        at = (support.left_mm if support.tangents_mm[0] else support.right_mm, support.height_mm)
        params: dict[str, object] = {"where": where(treatment), "support": noun_of(layer), "radius": Mm(support.bend_mm)}
        least = support.least_bend_mm
        if least is not None and falls_short(support.bend_mm, least, scene.half_mm):
            text = msg(
                "{where}: the {support} is bent to a radius of {radius}, and its sheet allows {least}.",
                least=Mm(least),
                **params,
            )
            yield Finding("bent-round", Weight.BROKEN, layer.ref, text, _sheet(), support.bend_mm, least, at)
        straight = support.length_mm - sum(support.tangents_mm)
        if straight < -TOUCH_MM:
            text = msg(
                "{where}: bent to a radius of {radius} the {support} has no straight left on this wall: it is {by} too"
                " short.",
                by=Mm(-straight),
                **params,
            )
            yield Finding("bent-round", Weight.BROKEN, layer.ref, text, by_geometry(), straight, 0.0, at)
            continue
        for bracket in layer.brackets:
            straight_end = in_bend(layer, bracket)
            if straight_end is None:
                continue
            text = msg(
                "{where}: {bracket} stands {by} into the bend of the {support}, where nothing holds it.",
                bracket=bracket_name(scene, bracket.ref),
                by=Mm(abs(straight_end - bracket.x_mm)),
                **params,
            )
            yield Finding(
                "bent-round",
                Weight.BROKEN,
                bracket.ref,
                text,
                by_geometry(),
                -abs(straight_end - bracket.x_mm),
                0.0,
                (bracket.x_mm, bracket.height_mm),
            )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    bracket = next((one for one in layer.brackets if one.ref == finding.subject), None)
    wanted = None if bracket is None else in_bend(layer, bracket)
    if wanted is not None:
        yield from bracket_to(scene, finding.subject, wanted)
    least = layer.support.least_bend_mm
    if least is not None and bracket is None:
        at = length(scene, mark_up(least, scene.room.graduation_mm))
        yield Change(msg("Bend it to a radius of {at}", at=Mm(at.mm)), partial(_with_bend, layer.ref, at))
    yield Change(msg("Join it on the mitre instead of bending it"), partial(_with_bend, layer.ref, None))


def _with_bend(ref: Ref, bend: Length | None, room: Room) -> Room:
    return replace_rod(room, lead_ref(room, ref), bend=bend)


RULE = Rule("bent-round", msg("a bend that can be made"), _find, changes=_changes, mounts=BEFORE_WALL)
