"""over-box: a bracket's wall plate over an outlet, a switch or a shelf, or where a cable likely runs.

Broken over a box or shelf; consider in the band straight above and below a box, widened to each side by the limit
``cable-band``: cables usually run there, so detect first. Wall mounts, every arrangement. Common practice; the band's
width is from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, ends_or_end, rod_height
from elevation.findings.limits import authority_of, limit_mm
from elevation.findings.looking import bracket_at, ends_of, layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import obstacle_name, where
from elevation.findings.shapes import Rect, meet, shared
from elevation.setting_out.model import BracketOut, ObstacleOut, TreatmentOut
from elevation.words import Mm, msg

BOXES = frozenset({"outlet", "switch", "shelf"})
CABLED = frozenset({"outlet", "switch", "light"})
_FAR = 1e7  # mm: a band runs from floor to ceiling


def _outline(obstacle: ObstacleOut) -> Rect:
    return obstacle.left_mm, obstacle.bottom_mm, obstacle.right_mm, obstacle.top_mm


def _band(obstacle: ObstacleOut, wide_mm: float) -> Rect:
    return obstacle.left_mm - wide_mm, -_FAR, obstacle.right_mm + wide_mm, _FAR


def _hit(scene: Scene, bracket: BracketOut) -> tuple[ObstacleOut, bool] | None:
    """The box that a plate is over, or in whose band it is (then False)."""
    near: ObstacleOut | None = None
    wide = limit_mm(scene, "cable-band")
    for obstacle in scene.set_out.obstacles:
        if obstacle.kind in BOXES and meet(_outline(obstacle), bracket.plate):
            return obstacle, True
        if near is None and obstacle.kind in CABLED and meet(_band(obstacle, wide), bracket.plate):
            near = obstacle
    return None if near is None else (near, False)


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.set_out.obstacles:
        return
    for layer in treatment.layers:
        for bracket in layer.brackets:
            found = _hit(scene, bracket)
            if found is None:
                continue
            obstacle, is_over = found
            params = {
                "where": where(treatment),
                "bracket": bracket_name(scene, bracket.ref),
                "obstacle": obstacle_name(obstacle),
            }
            caution = msg("Switch the current off and find the cables with a detector before you drill.")
            at = (bracket.x_mm, bracket.height_mm)
            if is_over:
                by = shared(_outline(obstacle), bracket.plate)
                yield Finding(
                    "over-box",
                    Weight.BROKEN,
                    bracket.ref,
                    msg("{where}: the wall plate of {bracket} lies {by} over {obstacle}.", by=Mm(by), **params),
                    authority_of(scene, "over-box"),
                    measured_mm=-by,
                    limit_mm=0.0,
                    at=at,
                    caution=caution,
                )
            else:
                yield Finding(
                    "over-box",
                    Weight.CONSIDER,
                    bracket.ref,
                    msg("{where}: a cable of {obstacle} likely runs where {bracket} is to be drilled.", **params),
                    authority_of(scene, "cable-band"),
                    at=at,
                    caution=caution,
                )


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    bracket = bracket_at(scene, finding.subject)
    found = _hit(scene, bracket)
    if found is None:
        return
    wide = limit_mm(scene, "cable-band") if found[0].kind in CABLED else 0.0
    left, _, right, top = _band(found[0], wide)[0], 0.0, _band(found[0], wide)[2], found[0].top_mm
    to_left = bracket.x_mm - (bracket.plate[2] - left)
    to_right = bracket.x_mm + right - bracket.plate[0]
    for wanted in sorted((to_left, to_right), key=lambda x: (abs(x - bracket.x_mm), x)):
        yield from bracket_to(scene, finding.subject, wanted)
    ends = ends_of(layer_at(scene, finding.subject))
    if ends is not None and ends[0].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "left", bracket.x_mm - to_left)
        yield from ends_or_end(scene, finding.subject, "left", bracket.x_mm - to_right)
    if ends is not None and ends[1].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "right", to_right - bracket.x_mm)
        yield from ends_or_end(scene, finding.subject, "right", to_left - bracket.x_mm)
    if found[0].kind not in CABLED:
        yield from rod_height(scene, finding.subject, bracket.height_mm + top - bracket.plate[1])


RULE = Rule("over-box", msg("brackets clear of boxes and cables"), _find, changes=_changes)
