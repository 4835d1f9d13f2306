"""Parts of pages to work by: headings, paragraphs, numbered steps with cautions, tables. Paper mm, y up from 0 down."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

from elevation.sheet.paths import rectangle
from elevation.sheet.records import Fill, Ink, Line, Pen, Record, Text
from elevation.sheet.type_metrics import shorten, text_width, wrap
from elevation.sheet.work.page import Part, box

HEADING, BODY, SMALL = 5.0, 4.2, 3.4
_LEADING = 1.3
_TINT = "#eef1f2"
_CAUTION_BAR = 1.2


def heading(text: str, width: float) -> Part:
    """A heading over what follows."""
    return Part(
        HEADING * 1.9,
        (Text((0.0, -HEADING * 1.2), shorten(text, HEADING, width, "semibold"), HEADING, weight="semibold"),),
        True,
    )


def paragraph(text: str, width: float, size: float = BODY, ink: str = Ink.TEXT, *, sticks: bool = False) -> Part:
    """Plain lines; those that only make sense with what follows stick to it, as a heading does."""
    lines, height = _lines(text, 0.0, 0.0, width, size, ink)
    return Part(height + 1.8, lines, sticks)


def _lines(
    text: str,
    left: float,
    down: float,
    width: float,
    size: float,
    ink: str = Ink.TEXT,
    weight: Literal["regular", "semibold", "italic"] = "regular",
) -> tuple[tuple[Record, ...], float]:
    """Lines of text from ``down`` on, and where they end."""
    records = []
    for line in wrap(text, size, width, weight):
        records.append(Text((left, -down - size), line, size, ink, weight=weight))
        down += size * _LEADING
    return tuple(records), down


def step(number: str, text: str, width: float, *, cautions: Sequence[str] = (), details: Sequence[str] = ()) -> Part:
    """A numbered step with a box to tick; what to beware of stands in it, marked by a bar and a word, not by colour alone.

    Parameters
    ----------
    number : str
    text : str
    width : float
    cautions : sequence of str
    details : sequence of str
        Lines under the step, each its own.
    """
    indent = 13.0
    records: list[Record] = [box(0.0, -4.4), Text((6.0, -BODY), number, BODY, weight="semibold")]
    lines, down = _lines(text, indent, 0.0, width - indent, BODY)
    records.extend(lines)
    for detail in details:
        lines, down = _lines(detail, indent, down + 0.4, width - indent, SMALL)
        records.extend(lines)
    for caution in cautions:
        start = down + 0.9
        lines, down = _lines(caution, indent + 3.4, start, width - indent - 3.4, SMALL)
        records.append(Fill(rectangle(indent, -down, indent + _CAUTION_BAR, -start), Ink.ACCENT))
        records.extend(lines)
    return Part(max(down, 5.0) + 2.6, tuple(records))


class TableColumn(Struct, frozen=True):
    """A column: its head, its share of the width, and which way its cells lean."""

    head: str
    share: float
    align: Literal["left", "right"] = "left"


def table(
    columns: Sequence[TableColumn], rows: Sequence[Sequence[str]], width: float, size: float = BODY
) -> tuple[Part, ...]:
    """A table, a part each row, so that it may go on over the page; long cells break into lines.

    Parameters
    ----------
    columns : sequence of TableColumn
    rows : sequence of sequence of str
        As many cells as columns.
    width : float
    size : float
        Of the type.
    """
    whole = sum(column.share for column in columns)
    widths = [width * column.share / whole for column in columns]
    lefts = [sum(widths[:at]) for at in range(len(widths))]
    pad = 1.6
    head: list[Record] = []
    tall = 0.0
    for column, left, wide in zip(columns, lefts, widths, strict=True):
        lines, down = _cell(column.head, left, 1.0, wide, pad, SMALL, column.align, Ink.QUIET)
        head.extend(lines)
        tall = max(tall, down)
    height = tall + 1.6
    head.append(Line((0.0, -height), (width, -height), Pen(Ink.OUTLINE, 0.35)))
    parts = [Part(height, tuple(head), True)]
    for number, row in enumerate(rows):
        records: list[Record] = []
        low = 0.0
        for column, cell, left, wide in zip(columns, row, lefts, widths, strict=True):
            lines, down = _cell(cell, left, 1.2, wide, pad, size, column.align)
            records.extend(lines)
            low = max(low, down)
        high = low + 1.4
        shade = (Fill(rectangle(0.0, -high, width, 0.0), _TINT),) if number % 2 else ()
        parts.append(Part(high, (*shade, *records), head=parts[0]))
    return (*parts, Part(2.6, ()))


def _cell(
    text: str,
    left: float,
    down: float,
    width: float,
    pad: float,
    size: float,
    align: Literal["left", "right"],
    ink: str = Ink.TEXT,
) -> tuple[tuple[Record, ...], float]:
    lines, low = _lines(text, left + pad, down, width - 2 * pad, size, ink)
    if align == "left":
        return lines, low
    right = left + width - pad
    return tuple(
        Text((right - text_width(line.text, size), line.at[1]), line.text, size, ink)
        for line in lines
        if isinstance(line, Text)
    ), low


def gap(height: float) -> Part:
    """Empty space: it goes with what follows, and is left out where a page begins with it."""
    return Part(height, (), True)
