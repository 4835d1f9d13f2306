"""The line of a panel's folds from above, as long as its cloth is wide flat.

Each half of a fold is one cubic. Its handles rise by four thirds of the height it reaches, and stand where they leave
the rod as steeply as the sine of the same length does (``trade.folds``): so drawn, the line is the cloth's own length to
a third of a percent up to a fullness of 5, and to one and a half in the tightest stack. Where the wall leaves a fold less
depth than that, it is drawn flatter and its sides lean over instead, as cloth does.
"""

from __future__ import annotations

from functools import lru_cache
from math import hypot, pi

from elevation.setting_out.model import Span
from elevation.sheet.paths import Step
from elevation.sheet.plan_frame import Frame
from elevation.trade.folds import fold_depth

_STEEP_AS_A_SINE = 4 / (3 * pi)
_MOST_LEANING = -1.6
"""In halves of a fold: leaning over further, a fold would touch the next."""

# Abscissae and weights of Gauss and Legendre on 0 to 1 (Abramowitz and Stegun 25.4.30, n = 8).
_NODES = (0.019855072, 0.101666761, 0.237233795, 0.408282679, 0.591717321, 0.762766205, 0.898333239, 0.980144928)
_WEIGHTS = (0.050614268, 0.111190517, 0.156853323, 0.181341892, 0.181341892, 0.156853323, 0.111190517, 0.050614268)


def fold_line(span: Span, flat_mm: float, count: int, out_mm: float, deep_mm: float, frame: Frame) -> tuple[Step, ...]:
    """The line of the folds, from the left edge of the cloth to its right edge.

    Parameters
    ----------
    span : (left, right)
        Of the cloth along the wall, mm.
    flat_mm : float
        Flat width of the cloth between them.
    count : int
        Folds.
    out_mm : float
        From the wall's face to the rod's centre line.
    deep_mm : float
        From front to back, as drawn (``drawn_depth``).
    frame : Frame
    """
    half = (span[1] - span[0]) / count / 2
    lean = half * leaning(flat_mm / (span[1] - span[0]), deep_mm / 2 / half)
    steps: list[Step] = [("M", *frame.at(span[0], out_mm))]
    for number in range(2 * count):
        a, b = span[0] + number * half, span[0] + (number + 1) * half
        top = out_mm + (-1.0 if number % 2 else 1.0) * deep_mm * 2 / 3
        steps.append(("C", *frame.at(a + lean, top), *frame.at(b - lean, top), *frame.at(b, out_mm)))
    return tuple(steps)


def drawn_depth(flat_mm: float, wide_mm: float, count: int, least_mm: float, most_mm: float) -> float:
    """How deep folds are drawn, front to back: as deep as there is cloth for, within what can be seen and what is free."""
    return max(min(fold_depth(flat_mm / count, wide_mm / count), most_mm), least_mm)


def leaning(fullness: float, height: float) -> float:
    """Where the handles of half a fold stand from its ends, in halves of a fold; negative where its sides lean over.

    Parameters
    ----------
    fullness : float
        Flat width over drawn width.
    height : float
        How far half a fold reaches from the rod, in halves of a fold.
    """
    return _leaning(round(fullness, 4), round(height, 4))


@lru_cache(maxsize=512)
def _leaning(fullness: float, height: float) -> float:
    if _length(height, _STEEP_AS_A_SINE) >= 0.995 * fullness:
        return _STEEP_AS_A_SINE
    low, high = _MOST_LEANING, _STEEP_AS_A_SINE
    for _ in range(14):
        middle = (low + high) / 2
        low, high = (middle, high) if _length(height, middle) > fullness else (low, middle)
    return (low + high) / 2


def _length(height: float, lean: float) -> float:
    """How long half a fold is, one wide and so high, with its handles so far from its ends."""
    total = 0.0
    for half in (0.0, 0.5):
        for node, weight in zip(_NODES, _WEIGHTS, strict=True):
            t = half + node / 2
            along = 3 * (1 - t) ** 2 * lean + 6 * (1 - t) * t * (1 - 2 * lean) + 3 * t * t * lean
            up = 4 * height * (1 - 2 * t)
            total += weight / 2 * hypot(along, up)
    return total
