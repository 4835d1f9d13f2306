"""Lines to write on, or with their figures, and the words before them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from elevation.room.find import children
from elevation.room.model import Ref, Wall
from elevation.sheet.blocks import HEADING
from elevation.sheet.records import Ink, Line, Pen, Record, Text
from elevation.sheet.type_metrics import shorten, text_width
from elevation.units import Length, format_length
from elevation.words import Style

Numbers = Mapping[tuple[Ref, str], str]
"""Number, with its letter, of each measurement by the thing and its field."""

Figures = Mapping[tuple[Ref, str], str]
"""What was measured, as it is written on its line."""

_BLANK = Pen(Ink.QUIET, 0.18)


def figures_of(wall: Wall, numbers: Numbers, style: Style) -> dict[tuple[Ref, str], str]:
    """The figures of all that was measured on a wall."""
    things: dict[Ref, object] = {(wall.id,): wall}
    things |= {(wall.id, child.id): child for child in children(wall)}
    found: dict[tuple[Ref, str], str] = {}
    for ref, field in numbers:
        value = _value(things[ref], field)
        if isinstance(value, Length):
            found[ref, field] = format_length(value.mm, style.unit, style.graduation_mm, decimal_mark=style.decimal_mark)
    return found


def _value(item: Any, field: str) -> Any:
    for part in field.split("."):
        if item is None:
            return None
        if not part.isdigit():
            item = getattr(item, part)
            continue
        item = item[int(part)] if int(part) < len(item) else None
    return item


def blank(number: str, left: float, right: float, y: float, size: float, figure: str = "") -> list[Record]:
    """A number and the line to write its figure on, or with it."""
    start = left + max(5.6, text_width(number, size, "semibold") + 1.0)
    return [Text((left, y), number, size, Ink.TEXT, "left", 0.0, "semibold"), *_line(start, right, y, size, figure)]


def small_blank(letter: str, left: float, right: float, y: float, size: float, figure: str = "") -> list[Record]:
    """The same for one of several readings side by side, by its letter alone."""
    start = left + text_width(letter, size) + 0.8
    return [Text((left, y), letter, size, Ink.QUIET), *_line(start, right, y, size, figure)]


def _line(left: float, right: float, y: float, size: float, figure: str) -> list[Record]:
    records: list[Record] = [Line((left, y - 1.0), (right, y - 1.0), _BLANK)]
    if figure:
        size = min(size, size * (right - left - 0.6) / max(text_width(figure, size), 1e-6))
        records.append(Text((left + 0.6, y), figure, size))
    return records


def words_record(text: str, left: float, y: float, size: float, width: float) -> Record:
    """What to measure, set smaller where a language needs more words."""
    size = max(2.4, min(size, size * width / max(text_width(text, size), 1e-6)))
    return Text((left, y), shorten(text, size, width), size)


def title_record(text: str, left: float, y: float) -> Record:
    """The heading of a part of the sheet."""
    return Text((left, y), text, HEADING, Ink.TEXT, "left", 0.0, "semibold")
