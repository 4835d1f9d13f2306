"""Brackets: where each stands along the rod, how high it is, and its plate on the wall."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.room.model import Bracket, Ref
from elevation.setting_out.facts import Overhead
from elevation.setting_out.model import BracketOut, SupportOut
from elevation.setting_out.mounting import plate_of
from elevation.setting_out.tilt import axis_at
from elevation.trade.model import Trade
from elevation.trade.tables import row_of


def place_of(bracket: Bracket, left_mm: float, right_mm: float) -> float:
    """Centre of a bracket along the wall, from what it holds."""
    hold, at = bracket.place.hold, bracket.place.at.mm
    if hold == "from-left-end":
        return left_mm + at
    if hold == "from-right-end":
        return right_mm - at
    if hold == "from-centre":
        return (left_mm + right_mm) / 2 + at
    return at


def brackets_of(
    ref: Ref,
    brackets: Sequence[Bracket],
    support: SupportOut,
    facts: Overhead,
    trade: Trade,
    *,
    glides: bool = False,
) -> tuple[BracketOut, ...]:
    """All brackets of one rod, left to right.

    A height as built wins over the plan. ``glides`` run inside a track, past all that it is fixed by.
    """
    found = []
    for bracket in brackets:
        kit = row_of(trade.brackets, bracket.kit, "bracket kit")
        x = place_of(bracket, support.left_mm, support.right_mm)
        y = axis_at(support, x) if bracket.height is None else bracket.height.mm
        found.append(
            BracketOut(
                ref=(*ref, bracket.id),
                x_mm=x,
                height_mm=y,
                built=bracket.height is not None,
                rings_pass=glides or (kit.rings_pass if bracket.rings_pass is None else bracket.rings_pass),
                half_width_mm=kit.width_mm / 2,
                plate=plate_of(kit, x, y, facts),
                kit=bracket.kit,
                on=kit.mount,
                is_there=bracket.there,
                out_mm=kit.out_mm if kit.mount == "wall" else 0.0,
            )
        )
    found.sort(key=lambda bracket: (bracket.x_mm, bracket.ref))
    return tuple(found)
