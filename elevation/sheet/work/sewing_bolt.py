"""Bolts of cloth drawn to scale: pieces by their marks, what is no use hatched, running marks from the square end."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.sewing.chains import running
from elevation.planning.sewing.model import Area, BoltPlan, Strip
from elevation.planning.sewing.said import STRIP_NAMES, piece_mark, piece_rows
from elevation.sheet.paths import polygon, rectangle
from elevation.sheet.records import Fill, Ink, Line, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import shorten, text_width
from elevation.sheet.work.page import Part
from elevation.sheet.work.parts import BODY, SMALL, TableColumn, table
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, Style, msg, say

_LOW, _HIGH, _TIGHT = 21.0, 36.0, 17.0
"""How high a bolt is drawn: so that a mark can be read in it, and no higher; and where a page would not hold all."""
_CLOTH, _WASTE, _EDGE = "#e9eef0", "#e0dbd2", "#d5d0c6"
_OUTLINE = Pen(Ink.OUTLINE, 0.5)
_CUT = Pen(Ink.OUTLINE, 0.35)
_HATCH = Pen(Ink.THIN, 0.13)
_LEFT = 4.0
_STEP = 4.4


def bolt_parts(bolt: BoltPlan, width: float, style: Style, *, is_tight: bool = False) -> list[Part]:
    """A bolt in as many rows as it needs, all to one scale.

    Parameters
    ----------
    bolt : BoltPlan
    width : float
        Room on the page.
    style : Style
    is_tight : bool
        Draw it lower.
    """
    room = width - 2 * _LEFT
    scale = scale_of(bolt, room, is_tight=is_tight)
    rows: list[list[Strip]] = [[]]
    for strip in bolt.strips:
        if rows[-1] and strip.to_mm - rows[-1][0].from_mm > room * scale + TOUCH_MM:
            rows.append([])
        rows[-1].append(strip)
    marks = running([0.0, *(strip.to_mm for strip in bolt.strips)], style.graduation_mm).marks_mm
    parts, done = [], 0
    for row in rows:
        parts.append(_row(row, marks[done : done + len(row) + 1], bolt.width_mm, scale, width, style))
        done += len(row)
    return parts


def scale_of(bolt: BoltPlan, room: float, *, is_tight: bool = False) -> float:
    """Wall mm to paper mm: as large as the page allows, rows as high as they can be read, no strip longer than a row."""
    longest = max((strip.to_mm - strip.from_mm for strip in bolt.strips), default=room)
    low, high = (_TIGHT, _LOW) if is_tight else (_LOW, _HIGH)
    return max(bolt.width_mm / high, min(bolt.length_mm / room, bolt.width_mm / low), longest / room)


def _row(
    strips: Sequence[Strip], marks: Sequence[float], bolt_wide: float, scale: float, width: float, style: Style
) -> Part:
    start = strips[0].from_mm
    low = -1.5 - bolt_wide / scale
    records: list[Record] = []
    for strip in strips:
        x1, x2 = _LEFT + (strip.from_mm - start) / scale, _LEFT + (strip.to_mm - start) / scale
        for area in strip.areas:
            records.extend(_area(strip, area, x1, x2, low, scale, style))
    end = _LEFT + (strips[-1].to_mm - start) / scale
    records.append(Polyline(((_LEFT, low), (end, low), (end, -1.5), (_LEFT, -1.5)), _OUTLINE, True))
    places = [_LEFT + (strip.from_mm - start) / scale for strip in strips] + [end]
    figures, deep = _figures(places, marks, low, width, style)
    return Part(-low + 3.6 + deep, (*records, *figures))


def _figures(
    places: Sequence[float], marks: Sequence[float], low: float, width: float, style: Style
) -> tuple[list[Record], float]:
    """Running marks under the cloth; those closer than their figures are wide go down a step.

    A line to a figure further down leaves out the figures that it passes, so that none is struck through.
    """
    placed: list[tuple[float, float, int, str]] = []
    ends = [-1e9] * 3
    for x, mark in zip(places, marks, strict=True):
        figure = "0" if mark == 0 else say(msg("{length}", length=Mm(mark)), style)
        half = text_width(figure, SMALL) / 2
        middle = min(max(x, half), width - half)
        level = next((at for at, last in enumerate(ends) if middle - half >= last + 1.5), len(ends) - 1)
        ends[level] = middle + half
        placed.append((x, middle, level, figure))
    records: list[Record] = []
    for x, middle, level, figure in placed:
        top = low
        for above in range(level):
            step = low - 4.6 - above * _STEP
            if any(at == above and abs(x - other) < text_width(text, SMALL) / 2 + 0.5 for _, other, at, text in placed):
                records.append(Line((x, top), (x, step + SMALL * 0.85), _CUT))
                top = step - SMALL * 0.25
        base = low - 4.6 - level * _STEP
        records.append(Line((x, top), (x, base + SMALL * 0.85), _CUT))
        records.append(Text((middle, base), figure, SMALL, align="middle"))
    return records, 2.8 + max((level for _, _, level, _ in placed), default=0) * _STEP


def _area(strip: Strip, area: Area, x1: float, x2: float, low: float, scale: float, style: Style) -> list[Record]:
    y1, y2 = low + area.from_mm / scale, low + area.to_mm / scale
    if area.piece is None:
        return _waste(strip, area, (x1, y1, x2, y2), style)
    records: list[Record] = [
        Fill(rectangle(x1, y1, x2, y2), _CLOTH),
        Polyline(((x1, y1), (x2, y1), (x2, y2), (x1, y2)), _CUT, True),
    ]
    middle = (y1 + y2) / 2
    # Which way is up: a small arrow at the top of every piece.
    if x2 - x1 > 9.0 and area.piece.share:
        records.append(Fill(polygon(((x1 + 1.2, middle), (x1 + 3.2, middle - 1.1), (x1 + 3.2, middle + 1.1))), Ink.THIN))
    mark = say(piece_mark(area.piece), style)
    left = x1 + (3.4 if x2 - x1 > 9.0 else 0.4)
    room = x2 - left - 0.6
    size = BODY if text_width(mark, BODY, "semibold") <= room else SMALL
    across = (left + x2) / 2
    is_split = len(strip.areas) > 1 and area.kind == "piece" and _is_shared(strip)
    if is_split and y2 - y1 >= 2 * BODY and text_width(_wide(area, style), SMALL) <= room - 1.0:
        records.append(Text((across, middle + 0.6), mark, size, align="middle", weight="semibold"))
        records.append(Text((across, middle - SMALL), _wide(area, style), SMALL, Ink.QUIET, "middle"))
    elif text_width(mark, SMALL, "semibold") > room and _stands(mark, x2 - left, y2 - y1):
        # Up a narrow piece, whole: a label that is cut short names nothing.
        at = ((left + x2) / 2 + SMALL * 0.35, middle)
        records.append(Text(at, mark, SMALL, align="middle", turn=90.0, weight="semibold"))
    elif y2 - y1 >= SMALL:
        text = shorten(mark, size, room, "semibold")
        records.append(Text((across, middle - size * 0.35), text, size, align="middle", weight="semibold"))
    return records


def _stands(mark: str, wide: float, high: float) -> bool:
    return wide >= SMALL + 0.4 and high >= text_width(mark, SMALL, "semibold") + 0.8


def _is_shared(strip: Strip) -> bool:
    """Whether what lies across has to be measured: more than one piece, or a strip that is left over."""
    return len([area for area in strip.areas if area.kind != "selvedge"]) > 1


def _wide(area: Area, style: Style) -> str:
    return say(msg("{width} wide", width=Mm(area.to_mm - area.from_mm, about=True)), style)


def _waste(strip: Strip, area: Area, box: tuple[float, float, float, float], style: Style) -> list[Record]:
    x1, y1, x2, y2 = box
    tint = _EDGE if area.kind == "selvedge" else _WASTE
    records: list[Record] = [Fill(rectangle(x1, y1, x2, y2), tint), Line((x2, y1), (x2, y2), _CUT)]
    if area.kind == "selvedge":
        return records
    text = say(STRIP_NAMES[strip.kind], style)
    if text_width(text, SMALL, "italic") <= x2 - x1 - 1.5 and y2 - y1 >= SMALL + 1.0:
        at = ((x1 + x2) / 2, (y1 + y2) / 2 - SMALL * 0.35)
        records.append(Text(at, text, SMALL, Ink.QUIET, "middle", weight="italic"))
    elif text_width(text, SMALL, "italic") <= y2 - y1 - 1.5 and x2 - x1 >= SMALL + 0.6:
        at = ((x1 + x2) / 2 + SMALL * 0.35, (y1 + y2) / 2)
        records.append(Text(at, text, SMALL, Ink.QUIET, "middle", 90.0, "italic"))
    else:
        reach = min(x2 - x1, y2 - y1)
        records.append(Line((x1, y1), (x1 + reach, y1 + reach), _HATCH))
    return records


def piece_table(bolt: BoltPlan, width: float, style: Style, *, is_tight: bool = False) -> tuple[Part, ...]:
    """Every piece in the order of cutting: where it begins and ends on the tape, its size, what is trimmed off it.

    Pieces of which nothing more is said stand in two columns, read down.
    """
    rows = piece_rows(bolt, style)
    has_notes = any(row[-1] for row in rows)
    names = (msg("Piece"), msg("From"), msg("To"), msg("Across"))
    shares = (1.5, 2.0, 2.0, 2.0)
    columns = [
        TableColumn(say(name, style), share, "left" if at == 0 else "right")
        for at, (name, share) in enumerate(zip(names, shares, strict=True))
    ]
    size = SMALL if is_tight else BODY
    if has_notes:
        return table([*columns, TableColumn(say(msg("Then"), style), 5.2)], rows, width, size)
    plain = [row[:-1] for row in rows]
    if len(plain) < _TWO_COLUMNS:
        return table([*columns, TableColumn("", 5.2)], [(*row, "") for row in plain], width, size)
    high = -(-len(plain) // 2)
    blank = ("",) * len(columns)
    pairs = [(*plain[at], "", *(plain[at + high] if at + high < len(plain) else blank)) for at in range(high)]
    return table([*columns, TableColumn("", 0.6), *columns], pairs, width, size)


_TWO_COLUMNS = 5
