"""Folds from arc length: how deep cloth folds when it is drawn up to less than its flat width.

A fold is taken as one wave of a sine: the flat cloth of one fold is the wave's arc length, its pitch along the rod is the
wave's length. The arc length of y = A sin(2 pi x / p) over one wave is p (2/pi) sqrt(1 + k2) E(k2 / (1 + k2)) with
k = 2 pi A / p and E the complete elliptic integral of the second kind; it is solved at the nodes of a grid that are
met, once each, and looked up between them.
"""

from __future__ import annotations

import math
from functools import cache, lru_cache
from itertools import accumulate

GREATEST_FULLNESS = 8.0
_STEP = math.sqrt(GREATEST_FULLNESS**2 - 1) / 256


def arc_ratio(steepness: float) -> float:
    """Arc length over wave length of a sine whose greatest slope is ``steepness``.

    The complete elliptic integral is taken by the arithmetic-geometric mean (Abramowitz and Stegun 17.6).
    """
    k2 = steepness * steepness
    a, b = 1.0, math.sqrt(1.0 / (1.0 + k2))
    c = math.sqrt(k2 / (1.0 + k2))
    total, power = c * c, 1.0
    while c > 1e-16:
        a, b, c = (a + b) / 2, math.sqrt(a * b), (a - b) / 2
        power *= 2
        total += power * c * c
    integral = math.pi / (2 * a) * (1 - total / 2)
    return 2 / math.pi * math.sqrt(1 + k2) * integral


def steepness_of(ratio: float, start: float = 1.0) -> float:
    """The greatest slope of the sine whose arc length is ``ratio`` times its wave length.

    Parameters
    ----------
    ratio : float
        At least 1.
    start : float
        A first guess; Newton's method from there, on a function that is convex and rises.
    """
    if ratio <= 1:
        return 0.0
    guess = max(start, 1e-3)
    for _ in range(40):  # pragma: no branch - Newton's method ends before that on a convex function
        step = 1e-6 * max(guess, 1e-3)
        here = arc_ratio(guess)
        slope = (arc_ratio(guess + step) - here) / step
        better = max(guess - (here - ratio) / slope, guess / 4)
        if abs(better - guess) < 1e-12 * better:
            return better
        guess = better
    return guess  # pragma: no cover - as above; as near as forty steps come


@cache
def _node(index: int) -> float:
    # Steepness over u = sqrt(ratio^2 - 1) is smooth, also where it starts from zero. One room meets few of the nodes.
    if index == 0:
        return 0.0
    u = index * _STEP
    return steepness_of(math.sqrt(1 + u * u), 1.5 * u)


def fold_depth(flat_mm: float, wide_mm: float) -> float:
    """Depth of one fold, front to back.

    Parameters
    ----------
    flat_mm : float
        Flat cloth in one fold.
    wide_mm : float
        What the fold takes along the rod.

    Returns
    -------
    float
        In mm; 0 where the cloth hangs flat. Above a fullness of 8 the depth grows as that of 8 does: half the flat cloth.
    """
    if wide_mm <= 0:
        return flat_mm / 2
    ratio = flat_mm / wide_mm
    # The depth leaves zero with an upright tangent: a rounding error in the widths must not make a fold.
    if ratio <= 1 + 1e-9:
        return 0.0
    if ratio >= GREATEST_FULLNESS:
        return flat_mm / 2
    place = math.sqrt(ratio * ratio - 1) / _STEP
    index = int(place)
    part = place - index
    steepness = _node(index) * (1 - part) + _node(index + 1) * part
    return steepness * wide_mm / math.pi


_WAVE_PARTS = 32


@lru_cache(maxsize=1024)
def wave_places(fullness: float) -> tuple[float, ...]:
    """Where equal lengths of flat cloth end across a fold that is seen from the front.

    Parameters
    ----------
    fullness : float
        Flat width over drawn width, at least 1.

    Returns
    -------
    tuple of float
        33 places, 0 at one valley to 1 at the next: a thirty-second of the fold's flat cloth lies between two of them. The
        arc length is added up by Simpson's rule over sixteen times as many parts.
    """
    steepness = steepness_of(fullness) if fullness > 1 + 1e-9 else 0.0
    fine = _WAVE_PARTS * 16

    def speed(place: float) -> float:
        return math.sqrt(1 + (steepness * math.sin(2 * math.pi * place)) ** 2)

    pieces = ((speed(i / fine) + 4 * speed((i + 0.5) / fine) + speed((i + 1) / fine)) / 6 for i in range(fine))
    lengths = [0.0, *accumulate(pieces)]
    places, index = [0.0], 0
    for part in range(1, _WAVE_PARTS):
        wanted = lengths[-1] * part / _WAVE_PARTS
        while lengths[index + 1] < wanted:
            index += 1
        places.append((index + (wanted - lengths[index]) / (lengths[index + 1] - lengths[index])) / fine)
    return (*places, 1.0)
