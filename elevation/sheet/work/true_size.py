"""What sheets at true size share: their pens, and the bars that say whether the printer kept the size."""

from __future__ import annotations

from elevation.planning.drilling import DrillPlace
from elevation.sheet.records import Ink, Line, Pen, Record, Text
from elevation.sheet.work.parts import SMALL
from elevation.units.format import format_length
from elevation.words import Style, msg, say

LINE = Pen(Ink.OUTLINE, 0.25)
WIDE = Pen(Ink.OUTLINE, 0.5)
AXIS = Pen(Ink.THIN, 0.25, (6.0, 1.0, 1.0, 1.0))
PLATE = Pen(Ink.THIN, 0.25, (2.0, 1.2))
CROSS = 7.0
"""Half a cross at a screw, mm."""
BAR_BASE = 19.0
"""Where the bar along the sheet lies, over its lower edge."""
MOST_OFF_MM = 25.4 / 32
"""So much may two holes of one plate be off by the printer."""


def bar_lengths(unit: str) -> tuple[float, float]:
    """The check bars along and up the sheet, mm: round lengths on the reader's tape."""
    return (6 * 25.4, 7 * 25.4) if unit == "in" else (150.0, 180.0)


def allowed_off(place: DrillPlace, bar_mm: float) -> float:
    """How far a bar may be off so that the plate's outermost holes are off by no more than 1/32 in."""
    holes = place.kit.holes_mm
    across = max(holes) - min(holes) if len(holes) > 1 else 25.4
    return MOST_OFF_MM * bar_mm / max(across, 25.4)


def bar_along(place: DrillPlace, left: float, style: Style) -> tuple[Record, ...]:
    """A bar along the sheet that says whether the printer kept the size.

    Parameters
    ----------
    place : DrillPlace
        Its plate says how far the bar may be off.
    left : float
        Where it begins.
    style : Style
    """
    length, base = bar_lengths(style.unit)[0], BAR_BASE
    text = Text((left + length / 2, base + 1.8), _bar_words(place, length, style), SMALL, Ink.TEXT, "middle")
    return (*_bar((left, base), (left + length, base)), text)


def bar_up(place: DrillPlace, x: float, base: float, style: Style) -> tuple[Record, ...]:
    """The same up the sheet, at ``x`` from ``base`` on."""
    up = bar_lengths(style.unit)[1]
    text = Text((x - 1.8, base + up / 2), _bar_words(place, up, style), SMALL, Ink.TEXT, "middle", 90.0)
    return (*_bar((x, base), (x, base + up)), text)


def _bar_words(place: DrillPlace, length: float, style: Style) -> str:
    fine = 25.4 / 32 if style.unit == "in" else 0.5
    off = allowed_off(place, length)
    low, high = (
        format_length(value, style.unit, fine, decimal_mark=style.decimal_mark, with_unit=True, sign=False)
        for value in (length - off, length + off)
    )
    whole = format_length(length, style.unit, fine, decimal_mark=style.decimal_mark, with_unit=True)
    return say(msg("{whole}: use the print only if this measures {low} to {high}", whole=whole, low=low, high=high), style)


def _bar(a: tuple[float, float], b: tuple[float, float]) -> tuple[Record, ...]:
    dx, dy = (0.0, 3.0) if a[1] == b[1] else (3.0, 0.0)
    return (
        Line(a, b, WIDE),
        Line((a[0] - dx, a[1] - dy), (a[0] + dx, a[1] + dy), LINE),
        Line((b[0] - dx, b[1] - dy), (b[0] + dx, b[1] + dy), LINE),
    )
