"""Bars that are longer than what fits the car: where the shop cuts them, so that nothing else changes."""

from __future__ import annotations

from elevation.planning.cutting.model import Bar, CutPlan, Piece
from elevation.units.tolerance import TOUCH_MM


def shop_cuts(bar: Bar, carry_mm: float | None) -> tuple[float, ...]:
    """Marks of a bought bar at which it is cut in the shop, in the order of the tape.

    Each is one of the bar's own marks, so no piece is cut twice and no cut is lost; what is left over is cut off where it
    would be too long itself. A piece that is longer than ``carry_mm`` stays whole: see ``too_long_to_carry``.

    Parameters
    ----------
    bar : Bar
    carry_mm : float or None
        None: any length is carried.
    """
    if carry_mm is None or bar.stock.count is not None or bar.stock.length_mm <= carry_mm + TOUCH_MM:
        return ()
    found: list[float] = []
    start = 0.0
    # Ends of what may be parted: after each piece, and the bar's far end.
    for mark, after in zip(bar.marks_mm, (*bar.marks_mm[1:], bar.stock.length_mm), strict=True):
        if after - start > carry_mm + TOUCH_MM and mark < bar.stock.length_mm - TOUCH_MM:
            found.append(mark)
            start = mark
    # What is left over is carried in lengths that fit.
    while bar.stock.length_mm - start > carry_mm + TOUCH_MM and start >= (bar.marks_mm[-1] if bar.marks_mm else 0.0):
        start += carry_mm
        found.append(start)
    return tuple(found)


def too_long_to_carry(plan: CutPlan, carry_mm: float | None) -> tuple[Piece, ...]:
    """Pieces of bought bars that are longer than what is carried home: they are delivered, or get a joint."""
    if carry_mm is None:
        return ()
    return tuple(
        piece
        for bar in plan.bars
        if bar.stock.count is None
        for piece in bar.pieces
        if piece.length_mm > carry_mm + TOUCH_MM
    )
