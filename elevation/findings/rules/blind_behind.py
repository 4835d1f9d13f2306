"""blind-behind: rod or folds do not pass before the box of the blind behind them; or a sash meets the box.

Stop where metal meets metal, where the box runs into ceiling or wall's end, or a sash swings into it; broken where cloth
would rub, or has no room for a chain before the box. Every mount. Geometry; the chain's room is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height, rod_projection
from elevation.findings.changing_dress import blind_elsewhere, no_blind
from elevation.findings.limits import by_geometry, common_practice, limit_mm
from elevation.findings.looking import treatment_at
from elevation.findings.model import EVERY_MOUNT, Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import noun_of, opening_name
from elevation.findings.shapes import Rect, back_of, cloth, extremes, hanging, meet, rod_rects, shared, way
from elevation.setting_out.model import BlindOut, LayerOut, OpeningOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM, falls_short
from elevation.words import Mm, msg


def box_of(blind: BlindOut) -> Rect:
    """The outline of a blind's box."""
    return blind.left_mm, blind.bottom_mm, blind.right_mm, blind.top_mm


def _opening(treatment: TreatmentOut, blind: BlindOut) -> OpeningOut:
    return next(opening for opening in treatment.openings if opening.ref == blind.opening)


def _needs(scene: Scene, blind: BlindOut) -> float:
    """How far from the wall the back of folds has to stay before a blind, in mm."""
    return blind.out_mm + (0.0 if blind.cord == "none" else limit_mm(scene, "blind-chain"))


def _before(layer: LayerOut, blind: BlindOut) -> bool:
    """Whether cloth of a layer hangs before the box, or the blind's own cloth, in some position."""
    whole = (blind.left_mm, blind.hem_mm, blind.right_mm, blind.top_mm)
    return any(meet(cloth(panel, way(panel), layer.support), whole) for panel in hanging(layer))


def _metal(layer: LayerOut, blind: BlindOut) -> float:
    """By how much a rod runs into the box, in mm."""
    worst = 0.0
    for _, rect, back, front in rod_rects(layer.support):
        depth = min(front, blind.out_mm) - max(back, blind.back_mm)
        if depth > TOUCH_MM and meet(rect, box_of(blind)):
            worst = max(worst, min(depth, shared(rect, box_of(blind))))
    return worst


def _around(scene: Scene, treatment: TreatmentOut, blind: BlindOut) -> Finding | None:
    """The box against ceiling, wall's ends and moving sashes."""
    box, name = box_of(blind), opening_name(_opening(treatment, blind))
    at = ((box[0] + box[2]) / 2, box[1])
    set_out = scene.set_out
    by = max(
        -box[0] if set_out.ends[0] == "corner" else 0.0,
        box[2] - set_out.width_mm if set_out.ends[1] == "corner" and set_out.known_width else 0.0,
    )
    if set_out.ceiling.known and not blind.in_reveal:
        by = max(by, box[3] - extremes(set_out.ceiling, box[0], box[2])[0] + set_out.crown_mm)
    if by > TOUCH_MM:
        text = msg("{opening}: there is {by} too little room for the blind's box.", opening=name, by=Mm(by))
        return Finding("blind-behind", Weight.STOP, treatment.ref, text, by_geometry(), -by, 0.0, at)
    for opening in set_out.openings:
        for left, bottom, right, top, out in opening.sweep:
            if out > blind.back_mm + TOUCH_MM and meet((left, bottom, right, top), box):
                text = msg("{opening}: its sash swings into the box of the blind behind.", opening=opening_name(opening))
                return Finding("blind-behind", Weight.STOP, treatment.ref, text, by_geometry(), at=at)
    return None


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for blind in treatment.blinds:
        found = _around(scene, treatment, blind)
        if found is not None:
            yield found
        name = opening_name(_opening(treatment, blind))
        for layer in treatment.layers:
            at = ((blind.left_mm + blind.right_mm) / 2, layer.support.height_mm)
            by = _metal(layer, blind)
            if by > TOUCH_MM:
                text = msg(
                    "{opening}: the {support} runs {by} into the blind's box.",
                    support=noun_of(layer),
                    opening=name,
                    by=Mm(by),
                )
                yield Finding("blind-behind", Weight.STOP, layer.ref, text, by_geometry(), -by, 0.0, at)
                continue
            back, needs = back_of(layer), _needs(scene, blind)
            if _before(layer, blind) and falls_short(back, needs, scene.half_mm):
                text = msg(
                    "{opening}: folds hang back to {back} from the wall, and the blind behind needs {needs}.",
                    opening=name,
                    back=Mm(back),
                    needs=Mm(needs),
                )
                authority = by_geometry() if blind.cord == "none" else common_practice()
                yield Finding("blind-behind", Weight.BROKEN, layer.ref, text, authority, back, needs, at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    treatment = treatment_at(scene, finding.subject)
    for layer in treatment.layers:
        if layer.ref != finding.subject:
            continue
        thick = max(layer.support.diameter_mm, layer.support.finial_diameter_mm)
        for blind in treatment.blinds:
            if _metal(layer, blind) > TOUCH_MM or _before(layer, blind):
                inset = layer.support.projection_mm - back_of(layer)
                yield from rod_projection(scene, layer.ref, _needs(scene, blind) + max(inset, thick / 2))
            if _metal(layer, blind) > TOUCH_MM:
                yield from rod_height(scene, layer.ref, blind.top_mm + thick / 2)
    yield from blind_elsewhere(scene, finding.subject)
    yield from no_blind(scene, finding.subject)


RULE = Rule("blind-behind", msg("room for the blind behind"), _find, changes=_changes, mounts=EVERY_MOUNT)
