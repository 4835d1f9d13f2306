"""What stands on every sheet: paper, frame, title block, scale bar, notes. Paper mm, y up."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

from elevation.setting_out.model import Point
from elevation.sheet.annotation.marks import held_mark
from elevation.sheet.paper import FRAME
from elevation.sheet.paths import rectangle
from elevation.sheet.records import NARROW, Fill, Ink, Line, Page, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import shorten, text_width
from elevation.words import Style, msg, say

Weight = Literal["regular", "semibold", "italic"]
_THIN = Pen(Ink.THIN, NARROW)
_FRAME_PEN = Pen(Ink.OUTLINE, 0.7)
"""ISO 5457: the frame line is 0.7 mm wide."""

_BARS_IN = (6, 12, 24, 36, 48, 72, 96, 120, 192, 240, 360, 480, 960)
_BARS_MM = (100, 200, 500, 1000, 2000, 3000, 4000, 5000, 10000, 20000, 50000)
_LONGEST_BAR = 62.0


class Inside(Struct, frozen=True, gc=False):
    """The rectangle inside the frame."""

    left: float
    bottom: float
    right: float
    top: float


def inside(page: Page) -> Inside:
    """Where the frame of a sheet runs."""
    return Inside(FRAME.left, FRAME.other, page.width_mm - FRAME.other, page.height_mm - FRAME.other)


def frame(page: Page) -> tuple[Record, ...]:
    """The paper and its frame."""
    room = inside(page)
    corners = ((room.left, room.bottom), (room.right, room.bottom), (room.right, room.top), (room.left, room.top))
    return (Fill(rectangle(0.0, 0.0, page.width_mm, page.height_mm), Ink.PAPER), Polyline(corners, _FRAME_PEN, True))


class Title(Struct, frozen=True, gc=False):
    """The words of a title block."""

    room: str
    wall: str
    scheme: str
    document: str
    scale: str
    date: str
    sheet: str


TITLE_HEIGHT = 35.0


def title_block(title: Title, left: float, bottom: float, width: float, style: Style) -> tuple[Record, ...]:
    """Room, wall, scheme, and under them what the sheet is, scale, date, sheet number (fields of ISO 7200).

    Parameters
    ----------
    title : Title
    left, bottom, width : float
        Where it stands; it is ``TITLE_HEIGHT`` high.
    style : Style
    """
    pad = 3.5
    room = width - 2 * pad
    right, top = left + width, bottom + TITLE_HEIGHT
    records: list[Record] = [Line((left, top), (right, top), Pen(Ink.OUTLINE, 0.5))]
    x = left + pad
    records.append(_fitted((x, top - 8.0), title.room, 5.6, 4.0, room, "semibold"))
    records.append(_fitted((x, top - 13.3), title.wall, 4.2, 3.2, room))
    records.append(_fitted((x, top - 17.5), title.scheme, 3.2, 2.5, room, "italic", Ink.QUIET))
    records.append(_fitted((x, top - 21.4), title.document, 2.6, 2.2, room))
    split = bottom + 12.2
    records.append(Line((left, split), (right, split), _THIN))
    is_narrow = width < 60.0
    date_width, sheet_width = (16.6, 10.4) if is_narrow else (19.5, 13.0)
    cells = (
        (say(msg("Scale"), style), title.scale, width - date_width - sheet_width),
        (say(msg("Date"), style), title.date, date_width),
        (say(msg("Sheet"), style), title.sheet, sheet_width),
    )
    size = 2.8 if is_narrow else 3.3
    for index, (label, value, cell) in enumerate(cells):
        inset = pad if index == 0 else 1.4 if is_narrow else 1.8
        records.append(_fitted((left + inset, bottom + 8.0), label, 2.5, 2.5, cell - inset, ink=Ink.QUIET))
        records.append(_fitted((left + inset, bottom + 3.6), value, size, 2.2, cell - inset - 0.6))
        left += cell
        if index < 2:
            records.append(Line((left, bottom), (left, split), _THIN))
    return tuple(records)


def _fitted(
    at: Point, text: str, size: float, least: float, width: float, weight: Weight = "regular", ink: str = Ink.TEXT
) -> Text:
    """One line of text, set smaller where it must be, cut short where even that is too long."""
    need = text_width(text, size, weight)
    if need > width:
        size = max(least, round(size * width / need - 0.01, 2))
    return Text(at, shorten(text, size, width, weight), size, ink, "left", 0.0, weight)


def scale_bar(scale: float, left: float, base: float, style: Style) -> tuple[tuple[Record, ...], float]:
    """A bar of round length in alternating parts; returns its records and how wide it is with its figures."""
    inches = style.unit == "in"
    lengths = [length * 25.4 for length in _BARS_IN] if inches else [float(length) for length in _BARS_MM]
    length = max((length for length in lengths if length / scale <= _LONGEST_BAR), default=lengths[0])
    whole = length / scale
    parts = _parts(length, inches)
    records: list[Record] = []
    for index in range(parts):
        x1, x2 = left + whole * index / parts, left + whole * (index + 1) / parts
        if index % 2 == 0:
            records.append(Fill(rectangle(x1, base, x2, base + 1.5), Ink.OUTLINE))
    corners = ((left, base), (left + whole, base), (left + whole, base + 1.5), (left, base + 1.5))
    records.append(Polyline(corners, Pen(Ink.OUTLINE, NARROW), True))
    end = _bar_text(length, inches)
    records.append(Text((left, base + 2.6), "0", 2.8, align="middle"))
    records.append(Text((left + whole, base + 2.6), end, 2.8, align="middle"))
    return tuple(records), whole + text_width(end, 2.8) / 2


def _parts(length: float, inches: bool) -> int:
    count = round(length / 304.8) if inches else round(length / 10 ** len(str(int(length)).rstrip("0")[1:] or ""))
    if inches and count < 1:
        return 2
    if inches:
        return count if count <= 6 else next(part for part in (4, 5, 6, 2) if count % part == 0)
    return {1: 5, 2: 4, 3: 3, 4: 4, 5: 5}.get(int(str(int(length))[0]), 5)


def _bar_text(length: float, inches: bool) -> str:
    if not inches:
        return f"{length / 1000:g} m" if length >= 1000 else f"{length:g} mm"
    inch = round(length / 25.4)
    return f"{inch // 12} ft" if inch >= 12 else f"{inch} in"


def notes(texts: Sequence[str], held: str, left: float, base: float, width: float) -> tuple[Record, ...]:
    """Notes beside the scale bar, the legend of the held mark first: one line, or two; what fits neither is cut short."""
    size, gap, mark = 2.8, 4.5, 2.8
    rows: list[list[tuple[float, str, bool]]] = [[]]
    x = 0.0
    for text, is_legend in [(held, True)] * bool(held) + [(text, False) for text in texts]:
        need = text_width(text, size) + (mark if is_legend else 0.0)
        if x and x + need > width:
            if len(rows) == 2:
                continue
            rows.append([])
            x = 0.0
        rows[-1].append((x, text, is_legend))
        x += need + gap
    records: list[Record] = []
    for index, row in enumerate(rows):
        y = base + (len(rows) - 1) * 2.7 - index * 3.8
        for x, text, is_legend in row:
            if is_legend:
                records.extend(held_mark((left + x + 0.9, y + 0.95)))
                x += mark
            records.append(Text((left + x, y), shorten(text, size, width - x), size, Ink.QUIET))
    return tuple(records)


def stop_band(text: str, left: float, top: float, width: float) -> tuple[Record, ...]:
    """The band across a sheet that must not be built from; ``STOP_HEIGHT`` high."""
    size = STOP_TYPE
    line = shorten(text, size, width - STOP_MARGINS, "semibold")
    return (
        Fill(rectangle(left, top - STOP_HEIGHT, left + width, top), Ink.ACCENT),
        Text((left + width / 2, top - STOP_HEIGHT / 2 - 0.33 * size), line, size, Ink.PAPER, "middle", 0.0, "semibold"),
    )


STOP_HEIGHT = 8.0
STOP_TYPE = 4.2
STOP_MARGINS = 8.0
