"""Whether an opening is square, from what a tape can tell."""

from __future__ import annotations


def lean_mm(rising_mm: float, falling_mm: float, width_mm: float) -> float:
    """How far the head of an opening stands aside of its sill, from its diagonals.

    A parallelogram of width ``w`` whose head is shifted by ``s`` has the diagonals ``(w + s)^2 + h^2`` and
    ``(w - s)^2 + h^2``; their difference is ``4 w s`` (plane geometry).

    Parameters
    ----------
    rising_mm : float
        From the lower left corner up to the right.
    falling_mm : float
        From the upper left corner down to the right.
    width_mm : float
        Above zero.

    Returns
    -------
    float
        In mm; positive: the head stands to the right.
    """
    return (rising_mm * rising_mm - falling_mm * falling_mm) / (4 * width_mm)
