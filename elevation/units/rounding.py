"""Lengths brought to the tape's marks.

Ties go to the even mark, as NIST Handbook 44, section 10.3 (rules for reading of indications), has it:
a value half way between two graduations is read as the one with the even number.
"""

from __future__ import annotations

from math import floor

from elevation.units.graduation import ratio_of
from elevation.units.tolerance import TOUCH_MM


def mark_of(mm: float, graduation_mm: float) -> int:
    """Number of the graduation nearest to a length in mm; a tie goes to the even one.

    A tie is a tie within 1e-6 mm, so that float noise never decides it.
    """
    numerator, denominator = ratio_of(graduation_mm)
    marks = mm * denominator / numerator
    low = floor(marks)
    beyond_middle_mm = (marks - low - 0.5) * numerator / denominator
    if abs(beyond_middle_mm) <= TOUCH_MM:
        return low + (low & 1)
    return low + (beyond_middle_mm > 0)


def mm_of_mark(mark: int, graduation_mm: float) -> float:
    """Length in mm of a whole number of graduations, correctly rounded from the exact ratio."""
    numerator, denominator = ratio_of(graduation_mm)
    return mark * numerator / denominator


def quantise(mm: float, graduation_mm: float) -> float:
    """The length in mm at the nearest graduation; a tie goes to the even mark.

    Parameters
    ----------
    mm : float
        A length in mm; may be negative.
    graduation_mm : float
        The tape's smallest mark in mm.
    """
    return mm_of_mark(mark_of(mm, graduation_mm), graduation_mm)
