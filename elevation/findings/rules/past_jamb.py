"""past-jamb: a rod inside an opening runs into a jamb or into the head.

Stop; reveal and sash mounts; every arrangement. Geometry, compared within 1e-6 mm.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from elevation.findings.changing import ends_or_end, rod_height
from elevation.findings.limits import by_geometry
from elevation.findings.looking import layer_at, treatment_at
from elevation.findings.model import INSIDE, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, opening_name, side_name
from elevation.setting_out.model import LayerOut, OpeningOut, SupportOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, msg


def head_over(opening: OpeningOut, x_mm: float) -> float:
    """Height of the head over ``x_mm``, in mm over the datum; beyond the jambs that at the jamb."""
    x = min(max(x_mm, opening.left_mm), opening.right_mm)
    if opening.rise_mm > 0:
        half = (opening.right_mm - opening.left_mm) / 2
        radius = (half * half + opening.rise_mm**2) / (2 * opening.rise_mm)
        away = x - (opening.left_mm + opening.right_mm) / 2
        return opening.top_mm - radius + sqrt(max(radius * radius - away * away, 0.0))
    wide = opening.right_mm - opening.left_mm
    part = (x - opening.left_mm) / wide if wide > 0 else 0.0
    return opening.left_top_mm + (opening.right_top_mm - opening.left_top_mm) * part


def room_over(opening: OpeningOut, support: SupportOut) -> float:
    """From the top of the rod up to the head, in mm: the least at its two ends, since no head sags between them."""
    ends = (support.metal_left_mm, support.metal_right_mm)
    return min(head_over(opening, x) for x in ends) - support.height_mm - support.diameter_mm / 2


def past(opening: OpeningOut, support: SupportOut) -> dict[str, float]:
    """By how much metal passes each jamb, in mm; only sides where it does."""
    over = {"left": opening.left_mm - support.metal_left_mm, "right": support.metal_right_mm - opening.right_mm}
    return {side: by for side, by in over.items() if by > TOUCH_MM}


def _one(opening: OpeningOut, layer: LayerOut) -> Finding | None:
    support = layer.support
    over = past(opening, support)
    if over:
        side = max(over, key=lambda key: over[key])
        text = msg(
            "{opening}: the {side} end of the {support}, with what ends it, reaches {by} into the jamb.",
            support=noun_of(layer),
            opening=opening_name(opening),
            side=side_name(side),
            by=Mm(over[side]),
        )
        x = opening.left_mm if side == "left" else opening.right_mm
        return Finding("past-jamb", Weight.STOP, layer.ref, text, by_geometry(), -over[side], 0.0, (x, support.height_mm))
    room = room_over(opening, support)
    if room < -TOUCH_MM:
        text = msg(
            "{opening}: the {support} runs {by} into the head.",
            support=noun_of(layer),
            opening=opening_name(opening),
            by=Mm(-room),
        )
        at = ((support.left_mm + support.right_mm) / 2, support.height_mm)
        return Finding("past-jamb", Weight.STOP, layer.ref, text, by_geometry(), room, 0.0, at)
    return None


def _find(_scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        found = _one(treatment.openings[0], layer)
        if found is not None:
            yield found


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    layer = layer_at(scene, finding.subject)
    opening = treatment_at(scene, finding.subject).openings[0]
    for side, by in sorted(past(opening, layer.support).items(), key=lambda item: -item[1]):
        yield from ends_or_end(scene, layer.ref, side, -by)
    room = room_over(opening, layer.support)
    if room < 0:
        yield from rod_height(scene, layer.ref, layer.support.height_mm + room)


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    opening = treatment.openings[0]
    for layer in treatment.layers:
        support = layer.support
        jamb = msg("just between the jambs")
        yield Sticking("rod-left", layer.ref, opening.left_mm + support.left_mm - support.metal_left_mm, jamb, 0)
        yield Sticking("rod-right", layer.ref, opening.right_mm - support.metal_right_mm + support.right_mm, jamb, 0)
        top = support.height_mm + room_over(opening, support)
        yield Sticking("rod-height", layer.ref, top, msg("just under the head"), 0)


RULE = Rule("past-jamb", msg("the rod between the jambs"), _find, changes=_changes, stickings=_stickings, mounts=INSIDE)
