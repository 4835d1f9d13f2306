"""A tape's smallest mark as an exact ratio."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import isfinite


@lru_cache(maxsize=256)
def ratio_of(graduation_mm: float) -> tuple[int, int]:
    """Numerator and denominator of a graduation in mm: 1/16 in = 1.5875 mm gives (127, 80).

    Floats cannot hold 25.4/16 exactly; the nearest ratio with a denominator up to 10000 is what
    was meant for every fraction of an inch down to 1/1024 and every decimal millimetre down to 0.0001.

    Raises
    ------
    ValueError
        The graduation is not a positive finite number.
    """
    if not (isfinite(graduation_mm) and graduation_mm > 0):
        raise ValueError(f"a graduation must be a positive length, not {graduation_mm!r}")
    exact = Fraction(graduation_mm).limit_denominator(10_000)
    if exact == 0:
        raise ValueError(f"a graduation of {graduation_mm!r} mm is too fine")
    return exact.numerator, exact.denominator
