"""Which drill of one's own makes the hole that a fixing asks for."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from elevation.trade.model import DrillRow


def drill_for(
    hole_mm: float, *, is_pilot: bool, market: Literal["in", "mm"], same_mm: float, drills: Iterable[DrillRow]
) -> DrillRow | None:
    """The drill of a set that comes nearest to a hole on the safe side.

    A screw holds by the wood beside its pilot hole, so there the largest drill that is no larger serves; what is pushed
    through a hole needs the smallest that is no smaller (common practice, no source).

    Parameters
    ----------
    hole_mm : float
        Diameter asked for.
    is_pilot : bool
        A thread is to bite in it.
    market : {"in", "mm"}
        Whose set is in hand.
    same_mm : float
        A drill that differs by no more counts as of the hole's size.
    drills : iterable of DrillRow
        Those of 0 are not there.

    Returns
    -------
    DrillRow or None
        None: no drill of that set will do.
    """
    there = [row for row in drills if row.market == market and row.diameter_mm > 0]
    if is_pilot:
        fitting = [row for row in there if row.diameter_mm <= hole_mm + same_mm]
        return max(fitting, key=lambda row: row.diameter_mm, default=None)
    fitting = [row for row in there if row.diameter_mm >= hole_mm - same_mm]
    return min(fitting, key=lambda row: row.diameter_mm, default=None)
