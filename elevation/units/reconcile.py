"""Chains of rounded lengths that add up to the rounded whole.

Each segment is rounded by itself first; the graduations that are then too many or too few go to the segments that they
falsify least, at most one graduation each, and never to a measured one.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.units.graduation import ratio_of
from elevation.units.rounding import mark_of


class Chain(Struct, frozen=True, gc=False):
    """A chain of segments in whole graduations.

    Attributes
    ----------
    marks : tuple of int
        Graduations of each segment, in order.
    total : int
        Graduations of the rounded whole.
    moved : tuple of int
        For each segment the graduations added to its own rounding: -1, 0 or 1. One that moved is shown with a sign.
    open_by : int
        Graduations that no segment may take, because too many of them are measured: total minus the sum of the marks.
        Zero when the chain closes.
    """

    marks: tuple[int, ...]
    total: int
    moved: tuple[int, ...]
    open_by: int

    @property
    def closes(self) -> bool:
        """Whether the marks add up to the total."""
        return self.open_by == 0


def reconcile_chain(parts_mm: Sequence[float], total_mm: float, graduation_mm: float, fixed: Sequence[bool] = ()) -> Chain:
    """Round the segments of a chain so that they add up to the rounded whole.

    Parameters
    ----------
    parts_mm : sequence of float
        Segments in mm, in order along the wall.
    total_mm : float
        The whole in mm.
    graduation_mm : float
        The tape's smallest mark in mm.
    fixed : sequence of bool
        True for each segment that was measured and keeps its own rounding; empty for none.

    Returns
    -------
    Chain
        Each segment differs from its own rounding by at most one graduation. Among the segments free to move, those
        whose rounding error shrinks most, or grows least, move; equals are told apart by size (the longer), then by
        place (the one nearer the middle).
    """
    if fixed and len(fixed) != len(parts_mm):
        raise ValueError(f"{len(fixed)} flags for {len(parts_mm)} segments")
    numerator, denominator = ratio_of(graduation_mm)
    own = [mark_of(part, graduation_mm) for part in parts_mm]
    total = mark_of(total_mm, graduation_mm)
    missing = total - sum(own)
    step = 1 if missing > 0 else -1

    def cost(index: int) -> tuple[float, float, float]:
        # How much of a graduation was lost in the direction of the move; six decimals keep float noise out of ties.
        lost = (parts_mm[index] * denominator / numerator - own[index]) * step
        return -round(lost, 6), -round(parts_mm[index], 6), abs(index - (len(own) - 1) / 2)

    free = sorted((index for index in range(len(own)) if not (fixed and fixed[index])), key=cost)
    takers = set(free[: abs(missing)])
    moved = tuple(step if index in takers else 0 for index in range(len(own)))
    marks = tuple(mark + change for mark, change in zip(own, moved, strict=True))
    return Chain(marks, total, moved, total - sum(marks))


def reconcile(parts_mm: Sequence[float], total_mm: float, graduation_mm: float, fixed: Sequence[bool] = ()) -> list[int]:
    """Graduations of each segment of a chain; see ``reconcile_chain`` for what moved and whether it closes."""
    return list(reconcile_chain(parts_mm, total_mm, graduation_mm, fixed).marks)
