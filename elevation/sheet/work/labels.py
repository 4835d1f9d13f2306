"""Labels laid out as a plain grid to cut: a large mark, what it is, its size, which way up, where it belongs."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.errors import Missing, said
from elevation.planning.dressed import Dressed
from elevation.planning.labels import HEADS, Label, label_cells, labels_of
from elevation.room.style import style_for
from elevation.sheet.paths import polygon
from elevation.sheet.records import Fill, Ink, Line, Page, Pen, Picture, Record, Text
from elevation.sheet.type_metrics import shorten, text_width, wrap
from elevation.sheet.work.naming import names_of
from elevation.sheet.work.page import Part, Sheet
from elevation.sheet.work.parts import SMALL, paragraph
from elevation.trade.model import Trade
from elevation.words import Style, msg, say

ACROSS = 3
HIGH = 35.0
"""Labels beside each other, and how high each is, mm: to be held and read, and pinned or taped on."""
_PAD = 2.6
_MARK, _NAME, _LINE = 7.6, 3.9, 3.2
_CUT = Pen(Ink.OUTLINE, 0.2, (2.0, 1.2))


def labels_sheet(labels: Sequence[tuple[Label, Style]], sheet: Sheet) -> tuple[Picture, ...]:
    """The pages of labels.

    Parameters
    ----------
    labels : sequence of (Label, Style)
        Each said as its own room is.
    sheet : Sheet
    """
    width = sheet.width
    words = msg("Cut along the lines; pin or tape each label on at once, before the next piece is cut.")
    parts = [paragraph(say(words, sheet.style), width, SMALL)]
    wide = width / ACROSS
    rows = [labels[at : at + ACROSS] for at in range(0, len(labels), ACROSS)]
    for row in rows:
        records: list[Record] = []
        for nth, (label, own) in enumerate(row):
            records.extend(_label(label, nth * wide, wide, own))
        # Neighbours share their lines: one cut parts two labels.
        right = len(row) * wide
        records.extend(Line((0.0, y), (right, y), _CUT) for y in (0.0, -HIGH))
        records.extend(Line((nth * wide, 0.0), (nth * wide, -HIGH), _CUT) for nth in range(len(row) + 1))
        parts.append(Part(HIGH, tuple(records)))
    return sheet.lay(msg("Labels"), parts)


def _label(label: Label, left: float, wide: float, style: Style) -> list[Record]:
    room = wide - 2 * _PAD
    x = left + _PAD
    aside = 6.0 if label.arrow else 0.0
    records: list[Record] = []
    mark = say(label.mark, style)
    size = _MARK
    while size > _NAME and text_width(mark, size, "semibold") > room - aside:
        size -= 0.4
    base = -_PAD - _MARK * 0.8
    records.append(Text((x, base), shorten(mark, size, room - aside, "semibold"), size, weight="semibold"))
    if label.arrow:
        records.append(_arrow(label.arrow, left + wide - _PAD - 2.4, base + 2.6))
    where = " · ".join(text for text in (label.room, say(label.place, style)) if text)
    foot = HIGH - _PAD
    feet = wrap(where, _LINE, room)[:2]
    texts = [(say(label.name, style), _NAME), (say(label.side, style), _LINE)]
    if label.size is not None:
        texts.insert(1, (say(label.size, style), _NAME))
    start = -base + 1.6
    for line, high, down in _fitting(texts, room, start, foot - len(feet) * _LINE * 1.2 - 0.6):
        records.append(Text((x, -down - high), line, high))
    for nth, line in enumerate(feet):
        y = -(foot - (len(feet) - 1 - nth) * _LINE * 1.2)
        records.append(Text((x, y), shorten(line, _LINE, room), _LINE, Ink.QUIET))
    return records


def _fitting(texts: Sequence[tuple[str, float]], room: float, start: float, limit: float) -> list[tuple[str, float, float]]:
    """The lines of all texts with their type and place from the top down, set smaller until none is lost."""
    placed: list[tuple[str, float, float]] = []
    for share in (1.0, 0.9, 0.8, 0.7, 0.6):
        placed, down = [], start
        for text, high in texts:
            for line in wrap(text, high * share, room):
                placed.append((line, high * share, down))
                down += high * share * 1.22
        if not placed or placed[-1][2] + placed[-1][1] <= limit:
            break
    return placed


def _arrow(way: str, x: float, y: float) -> Record:
    """A plain arrow, its point up or to the left."""
    shape = ((0.0, 3.0), (2.2, 0.2), (0.8, 0.2), (0.8, -3.0), (-0.8, -3.0), (-0.8, 0.2), (-2.2, 0.2))
    if way == "left":
        return Fill(polygon((x - b, y + a) for a, b in shape), Ink.HELD)
    return Fill(polygon((x + a, y + b) for a, b in shape), Ink.HELD)


def labels_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """A label for every piece of all rooms, each said as its room is.

    Raises
    ------
    Missing
        There is nothing to put one on.
    """
    styles = [style_for(dressed.room) for dressed in rooms]
    labels = [(label, styles[label.at]) for label in labels_of(rooms, trade)]
    if not labels:
        raise Missing(names_of(rooms), "", said("has nothing to hang"), said("add a treatment, or name another wall"))
    return labels_sheet(labels, Sheet(names_of(rooms), styles[0], paper))


def labels_rows(rooms: Sequence[Dressed], trade: Trade) -> tuple[tuple[str, ...], ...]:
    """The labels as a table, for a program or a printer that makes labels."""
    styles = [replace(style_for(dressed.room), plain=True) for dressed in rooms]
    rows = [tuple(say(name, styles[0]) for name in HEADS)]
    rows.extend(label_cells(label, styles[label.at]) for label in labels_of(rooms, trade))
    return tuple(rows)
