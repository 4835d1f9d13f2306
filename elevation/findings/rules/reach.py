"""What ``reach-short`` and ``reach-long`` measure: the outermost bracket beyond the opening.

Only at an end of the rod to which a panel draws clear: stationary cloth needs no room beside the opening. Not at an end
that a socket or a tube bent back to the wall carries, nor where the rod goes on round a corner: the side wall says how far
it reaches.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.looking import draws_from, ends_of, outer
from elevation.findings.model import Sticking
from elevation.room.model import Ref
from elevation.setting_out.model import BracketOut, LayerOut, OpeningOut, PanelOut, TreatmentOut
from elevation.words import Message

SIDES = ("left", "right")


def reaches(treatment: TreatmentOut) -> Iterator[tuple[LayerOut, str, BracketOut, OpeningOut, PanelOut, float]]:
    """Layer, side, end bracket, opening, panel and reach in mm, for each end that a panel draws clear to."""
    if not treatment.openings:  # pragma: no cover - a treatment that covers nothing is not set out
        return
    for layer in treatment.layers:
        ends = ends_of(layer)
        carried = layer.support.carried
        if ends is None or (ends[0] is ends[1] and not any(carried)):
            continue  # a single bracket is no end: no-bracket speaks
        for side in SIDES:
            number = 0 if side == "left" else 1
            if carried[number] or treatment.joined[number] is not None:
                continue
            panel = draws_from(layer, side)
            if panel is None:
                continue
            opening = outer(treatment.openings, side)
            if side == "left":
                yield layer, side, ends[0], opening, panel, opening.left_mm - ends[0].x_mm
            else:
                yield layer, side, ends[1], opening, panel, ends[1].x_mm - opening.right_mm


def reach_at(treatment: TreatmentOut, ref: Ref) -> tuple[str, BracketOut, float] | None:
    """Side, end bracket and reach in mm of the end bracket at ``ref``; None where no panel draws clear to it."""
    # Asked for brackets that a finding was made of: one of them is it.
    for _layer, side, bracket, _opening, _panel, reach in reaches(treatment):  # pragma: no branch
        if bracket.ref == ref:
            return side, bracket, reach
    return None  # pragma: no cover - as above


def reach_places(treatment: TreatmentOut, limit_mm: float, reason: Message) -> Iterator[Sticking]:
    """Where each end bracket, and the rod's end with it, reaches ``limit_mm`` beyond the opening."""
    for layer, side, bracket, opening, _panel, _reach in reaches(treatment):
        if side == "left":
            place = opening.left_mm - limit_mm
            yield Sticking("rod-left", layer.ref, place + layer.support.left_mm - bracket.x_mm, reason)
        else:
            place = opening.right_mm + limit_mm
            yield Sticking("rod-right", layer.ref, place + layer.support.right_mm - bracket.x_mm, reason)
        yield Sticking("bracket", bracket.ref, place, reason)
