"""The figures of dimensions: rounded to the tape, adding up along a chain."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.units.format import LESS, MORE, format_length, format_mark
from elevation.units.reconcile import reconcile
from elevation.units.rounding import mm_of_mark
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Style


def figure(mm: float, style: Style) -> str:
    """One length as a bare figure, with the sign of what was rounded away."""
    return format_length(mm, style.unit, style.graduation_mm, decimal_mark=style.decimal_mark)


def figures(parts_mm: Sequence[float], style: Style, fixed: Sequence[bool] = ()) -> tuple[str, ...]:
    """The figures of a chain: they add up to the rounded whole, and each that differs from its length says so.

    Parameters
    ----------
    parts_mm : sequence of float
        In order along the chain.
    style : Style
    fixed : sequence of bool
        True where a part was measured and keeps its own figure.
    """
    marks = reconcile(parts_mm, sum(parts_mm), style.graduation_mm, fixed)
    texts = []
    for part, mark in zip(parts_mm, marks, strict=True):
        rest = part - mm_of_mark(mark, style.graduation_mm)
        sign = MORE if rest > TOUCH_MM else LESS if rest < -TOUCH_MM else ""
        texts.append(format_mark(mark, style.unit, style.graduation_mm, decimal_mark=style.decimal_mark) + sign)
    return tuple(texts)
