"""Lengths written back as a person would type them."""

from __future__ import annotations

import re

from elevation.units.format import format_mark
from elevation.units.length import Length
from elevation.units.parse import parse_length
from elevation.units.rounding import mark_of

_THREE_DECIMALS = re.compile(r"\.[0-9]{3}\Z")


def length_of(mm: float, unit: str, graduation_mm: float) -> Length:
    """A length at the nearest graduation, written as a person would type it.

    Parameters
    ----------
    mm : float
        A length in mm.
    unit : str
        ``"in"`` or ``"mm"``.
    graduation_mm : float
        The tape's smallest mark in mm; a tie goes to the even mark.

    Returns
    -------
    Length
        With text such as "50 3/8 in" or "1280 mm"; its ``mm`` is exactly what its text says.
    """
    figure = format_mark(mark_of(mm, graduation_mm), unit, graduation_mm, plain=True)
    if _THREE_DECIMALS.search(figure):
        # Three digits after the mark could be read as thousands.
        figure += "0"
    return parse_length(f"{figure} {unit}")
