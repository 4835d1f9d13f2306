"""on-casing: a bracket's wall plate would stand on a casing or over an opening.

Stop, wall mounts, every arrangement. Geometry: both cannot be in one place.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, ends_or_end, rod_height, smaller_plate
from elevation.findings.limits import by_geometry
from elevation.findings.looking import bracket_at, ends_of, layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import opening_name
from elevation.findings.shapes import meet, on_casing
from elevation.setting_out.model import BracketOut, OpeningOut, TreatmentOut
from elevation.words import Message, msg


def _hit(scene: Scene, bracket: BracketOut) -> OpeningOut | None:
    left, _, right, _ = bracket.plate
    for opening in scene.set_out.openings:
        # Most openings are far along the wall: a wall of forty asks this for each of its brackets.
        is_near = opening.left_mm - opening.casing_mm < right and opening.right_mm + opening.casing_mm > left
        if is_near and on_casing(opening, bracket.plate):
            return opening
    return None


def _caution() -> Message:
    # 16 CFR 1303 ended lead in house paint in the United States in 1978.
    return msg("Do not scrape, sand or drill trim whose paint may be older than 1978 before it is tested for lead.")


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        for bracket in layer.brackets:
            opening = None if bracket.on == "layer" else _hit(scene, bracket)
            if opening is None:
                continue
            clear = (opening.left_mm, opening.bottom_mm, opening.right_mm, opening.top_mm)
            params = {"opening": opening_name(opening), "bracket": bracket_name(scene, bracket.ref)}
            if opening.casing_mm > 0 and not meet(clear, bracket.plate):
                text = msg("{opening}: the wall plate of {bracket} meets the casing; it needs bare wall.", **params)
            else:
                text = msg("{opening}: the wall plate of {bracket} stands over the opening; it needs wall.", **params)
            at = (bracket.x_mm, bracket.height_mm)
            yield Finding("on-casing", Weight.STOP, bracket.ref, text, by_geometry(), at=at, caution=_caution())


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    bracket = bracket_at(scene, finding.subject)
    opening = _hit(scene, bracket)
    if opening is None:  # pragma: no cover - the finding was made of it
        return
    up = opening.casing_top_mm - bracket.plate[1]
    to_left = bracket.x_mm - (bracket.plate[2] - opening.left_mm + opening.casing_mm)
    to_right = bracket.x_mm + opening.right_mm + opening.casing_mm - bracket.plate[0]
    ends = ends_of(layer_at(scene, finding.subject))
    yield from rod_height(scene, finding.subject, bracket.height_mm + up)
    if ends is not None and ends[0].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "left", bracket.x_mm - to_left)
    if ends is not None and ends[1].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "right", to_right - bracket.x_mm)
    for wanted in sorted((to_left, to_right), key=lambda x: (abs(x - bracket.x_mm), x)):
        yield from bracket_to(scene, finding.subject, wanted)
    yield from smaller_plate(scene, finding.subject)


def _stickings(_scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    for layer in treatment.layers:
        lowest = min((bracket.plate[1] - bracket.height_mm for bracket in layer.brackets), default=0.0)
        for opening in treatment.openings:
            reason = msg("bracket plates just clear the casing of {opening}", opening=opening_name(opening))
            yield Sticking("rod-height", layer.ref, opening.casing_top_mm - lowest, reason, 0)
        for bracket in layer.brackets:
            left, right = bracket.x_mm - bracket.plate[0], bracket.plate[2] - bracket.x_mm
            for opening in treatment.openings:
                reason = msg("bracket plate beside the casing of {opening}", opening=opening_name(opening))
                yield Sticking("bracket", bracket.ref, opening.left_mm - opening.casing_mm - right, reason, 0)
                yield Sticking("bracket", bracket.ref, opening.right_mm + opening.casing_mm + left, reason, 0)


RULE = Rule("on-casing", msg("bracket plates on bare wall"), _find, changes=_changes, stickings=_stickings)
