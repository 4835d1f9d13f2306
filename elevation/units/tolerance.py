"""The one tolerance policy: what reads 3 in is never called less than 3 in.

Lengths against limits are compared with half a graduation of slack, so that no verdict contradicts the figure
beside it or flickers during a drag; geometry touches within 1e-6 mm; ratios and forces agree within 1e-9.
"""

from __future__ import annotations

TOUCH_MM = 1e-6
"""Closer than this, two edges or points in mm are the same place."""

RELATIVE = 1e-9
"""Forces and ratios that differ by less than this part of the larger are equal."""


def falls_short(measured_mm: float, limit_mm: float, half_graduation_mm: float) -> bool:
    """Whether ``measured_mm`` is less than ``limit_mm`` by more than half a graduation."""
    return measured_mm < limit_mm - half_graduation_mm - TOUCH_MM


def exceeds(measured_mm: float, limit_mm: float, half_graduation_mm: float) -> bool:
    """Whether ``measured_mm`` is more than ``limit_mm`` by more than half a graduation."""
    return measured_mm > limit_mm + half_graduation_mm + TOUCH_MM


def touches(a_mm: float, b_mm: float) -> bool:
    """Whether two coordinates in mm are the same place."""
    return abs(a_mm - b_mm) <= TOUCH_MM


def overlaps(low_a_mm: float, high_a_mm: float, low_b_mm: float, high_b_mm: float) -> bool:
    """Whether two ranges in mm share more than a touching edge."""
    return low_a_mm < high_b_mm - TOUCH_MM and low_b_mm < high_a_mm - TOUCH_MM


def same_ratio(a: float, b: float) -> bool:
    """Whether two forces or ratios are equal within 1e-9 of the larger."""
    return abs(a - b) <= RELATIVE * max(abs(a), abs(b))


def less_ratio(a: float, b: float) -> bool:
    """Whether force or ratio ``a`` is less than ``b`` beyond rounding noise."""
    return a < b and not same_ratio(a, b)
