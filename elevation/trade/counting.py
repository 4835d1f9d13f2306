"""How many rings, eyelets, tabs or pleats, and how many pieces of stock."""

from __future__ import annotations

import math


def rings_of(flat_mm: float, pitch_mm: float, even: bool) -> int:
    """Rings, eyelets, tabs or hooks of one piece: one at each edge, the rest evenly about ``pitch_mm`` apart.

    Eyelets are set in even numbers so that both edges turn the same way.
    """
    gaps = max(1, round(flat_mm / pitch_mm))
    count = gaps + 1
    if even and count % 2:
        count += 1
    return count


def pieces_of(length_mm: float, stock_mm: float) -> int:
    """The fewest pieces of stock that make a length; a millionth of a mm too long is still one piece."""
    if stock_mm <= 0 or length_mm <= stock_mm:
        return 1
    return math.ceil((length_mm - 1e-6) / stock_mm)
