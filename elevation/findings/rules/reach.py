"""What ``reach-short`` and ``reach-long`` measure: the outermost bracket beyond the opening.

Only at an end of the rod to which a panel draws clear: stationary cloth needs no room beside the opening.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.looking import draws_from, ends_of, outer
from elevation.setting_out.model import BracketOut, LayerOut, OpeningOut, PanelOut, TreatmentOut

SIDES = ("left", "right")


def reaches(treatment: TreatmentOut) -> Iterator[tuple[LayerOut, str, BracketOut, OpeningOut, PanelOut, float]]:
    """Layer, side, end bracket, opening, panel and reach in mm, for each end that a panel draws clear to."""
    if not treatment.openings:
        return
    for layer in treatment.layers:
        ends = ends_of(layer)
        if ends is None:
            continue
        for side in SIDES:
            panel = draws_from(layer, side)
            if panel is None:
                continue
            opening = outer(treatment.openings, side)
            if side == "left":
                yield layer, side, ends[0], opening, panel, opening.left_mm - ends[0].x_mm
            else:
                yield layer, side, ends[1], opening, panel, ends[1].x_mm - opening.right_mm


def side_of(treatment: TreatmentOut, bracket: BracketOut) -> str:
    """Which end of its rod a bracket is."""
    middle = (treatment.openings[0].left_mm + treatment.openings[-1].right_mm) / 2
    return "left" if bracket.x_mm <= middle else "right"


def reach_of(treatment: TreatmentOut, bracket: BracketOut) -> float:
    """How far a bracket stands beyond the covered openings on its side, in mm."""
    if side_of(treatment, bracket) == "left":
        return treatment.openings[0].left_mm - bracket.x_mm
    return bracket.x_mm - treatment.openings[-1].right_mm
