"""Sheets of paper and the scales that drawings are made to.

Sheet sizes: A4 and A3 by ISO 216, letter and tabloid (sizes A and B) by ASME Y14.1; all landscape. Scales: ISO 5455 for
rooms in millimetres, foot-inch scales for rooms in inches. A scale is a plain number: 24.0 for 1:24.
"""

from __future__ import annotations

import re
from fractions import Fraction

from msgspec import Struct

from elevation.errors import BadInput, NoSuch, said
from elevation.sheet.records import Page
from elevation.units.format import set_fraction
from elevation.words import Message, msg

A4 = Page("a4", 297.0, 210.0)
A3 = Page("a3", 420.0, 297.0)
LETTER = Page("letter", 279.4, 215.9)
TABLOID = Page("tabloid", 431.8, 279.4)
A2 = Page("a2", 594.0, 420.0)
ANSI_C = Page("c", 558.8, 431.8)
"""Size C of ASME Y14.1. These two are no one's home printer: they are taken where nothing smaller can hold the wall."""
PAGES = {page.name: page for page in (A4, A3, LETTER, TABLOID)}
TO_POST = {
    page.name: page for page in (Page("4:5", 137.16, 171.45), Page("1:1", 137.16, 137.16), Page("16:9", 243.84, 137.16))
}
"""Shapes of pictures: 1080 by 1350, 1080 by 1080 and 1920 by 1080 pixels at 200 dots to the inch."""

SMALLEST_COMFORTABLE = 24.0
"""A larger sheet is proposed when the small one would force a scale smaller than this (1:24)."""

_FOOT_INCH = ("3", "1 1/2", "1", "3/4", "1/2", "3/8", "1/4", "3/16", "1/8", "3/32", "1/16")
ISO_5455 = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0)
_LEAST, _MOST = Fraction(1, 10), Fraction(2000)


def _inches(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


FOOT_INCH = tuple(float(Fraction(12) / _inches(text)) for text in _FOOT_INCH)
"""The same as plain numbers: 4.0 (3 in = 1 ft) to 192.0 (1/16 in = 1 ft)."""


class Margins(Struct, frozen=True, gc=False):
    """Distances of the frame from the sheet's edges, mm."""

    left: float
    other: float


FRAME = Margins(20.0, 10.0)
"""ISO 5457: a filing margin of 20 mm at the left, 10 mm elsewhere."""


def page_named(name: str) -> Page:
    """The sheet of that name (``a4``, ``a3``, ``letter``, ``tabloid``; capitals do not matter).

    Raises
    ------
    NoSuch
        There is none.
    """
    page = PAGES.get(name.strip().lower()) or TO_POST.get(name.strip())
    if page is None:
        raise NoSuch(said("paper"), name, said("is not a sheet"), said("use {choices}", choices=", ".join(PAGES)))
    return page


def pages_for(unit: str) -> tuple[Page, Page]:
    """The small and the large sheet where people measure in ``unit`` (``in`` or ``mm``)."""
    return (LETTER, TABLOID) if unit == "in" else (A4, A3)


def last_page_for(unit: str) -> Page:
    """The sheet for a wall that fits on neither of ``pages_for(unit)``: twelve windows with all that is to be said."""
    return ANSI_C if unit == "in" else A2


def scales_for(unit: str) -> tuple[float, ...]:
    """The standard scales for rooms measured in ``unit``, the largest drawing first."""
    return FOOT_INCH if unit == "in" else ISO_5455


def scale_of(text: str) -> float:
    """A scale as it is typed: ``1:20``, ``1/2 in = 1 ft``, ``1 1/2" = 1'-0"``.

    Returns
    -------
    float
        Wall mm for one paper mm: 20.0, 24.0, 8.0.

    Raises
    ------
    BadInput
        It is no scale, or one that no sheet could use.
    """
    ratio = _ratio(text.strip()) or _equation(text.strip())
    if ratio is None:
        raise BadInput(said("scale"), "", said("“{text}” is not a scale", text=text), said("write 1:20 or 1/2 in = 1 ft"))
    if not _LEAST <= ratio <= _MOST:
        raise BadInput(
            said("scale"),
            "",
            said("“{text}” is beyond what a sheet can show", text=text),
            said("write one between 10:1 and 1:2000"),
        )
    return float(ratio)


_NUMBER = r"(?:\d{1,6}[ -])?\d{1,6}/\d{1,6}|\d{1,6}(?:\.\d{1,6})?"
# Patterns as text: only sheets whose scale is typed need them made ready.
_RATIO = rf"({_NUMBER})\s*:\s*({_NUMBER})"
_EQUATION = (
    rf"({_NUMBER})\s*(?:in(?:ch(?:es)?)?\b\.?|\"|″|”)\s*=\s*"
    rf"({_NUMBER})\s*(?:(?:ft|foot|feet)\b\.?|'|′|’)(?:\s*-?\s*0\s*(?:in\b\.?|\"|″|”))?"
)


def _fraction(text: str) -> Fraction | None:
    try:
        return _inches(text.replace("-", " "))
    except ZeroDivisionError:
        return None


def _quotient(over: str, under: str) -> Fraction | None:
    top, bottom = _fraction(over), _fraction(under)
    return top / bottom if top and bottom else None


def _ratio(text: str) -> Fraction | None:
    found = re.fullmatch(_RATIO, text)
    return _quotient(found[2], found[1]) if found else None


def _equation(text: str) -> Fraction | None:
    found = re.fullmatch(_EQUATION, text, re.IGNORECASE)
    ratio = _quotient(found[2], found[1]) if found else None
    return ratio * 12 if ratio else None


def scale_name(scale: float, unit: str) -> Message:
    """How a drawing's scale is written: ``1:20``, or ``½ in = 1 ft (1:24)`` where it is a foot-inch scale.

    Parameters
    ----------
    scale : float
    unit : str
        The room's unit.
    """
    ratio = Fraction(scale).limit_denominator(10_000)
    plain = f"1:{_number(ratio)}" if ratio >= 1 else f"{_number(1 / ratio)}:1"
    if unit == "in" and scale in FOOT_INCH:
        inches = Fraction(12) / ratio
        whole, rest = divmod(inches, 1)
        figure = (str(whole) if whole else "") + (set_fraction(rest.numerator, rest.denominator) if rest else "")
        return msg("{inches} in = 1 ft ({ratio})", inches=figure, ratio=plain)
    return msg("{ratio}", ratio=plain)


def _number(value: Fraction) -> str:
    return str(value.numerator) if value.denominator == 1 else f"{float(value):g}"
