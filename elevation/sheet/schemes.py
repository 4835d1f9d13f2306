"""Schemes of one wall side by side at one scale, over a table of what differs."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.errors import Missing, said
from elevation.findings.model import Weight
from elevation.planning.compared_rows import Seen
from elevation.planning.comparing import Comparison, compare, pages_of
from elevation.planning.dressed import Dressed
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut
from elevation.sheet.bare_sheet import Drawing, Words, bare_sheet
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.records import NARROW, Group, Ink, Line, Page, Pen, Picture, Record, Text
from elevation.sheet.type_metrics import wrap
from elevation.sheet.work.moved import moved
from elevation.trade.model import Trade
from elevation.units.format import LESS, MORE
from elevation.words import Message, Style, msg, say

_LABELS = 34.0
"""Width of the column of labels, paper mm."""
_GAP = 7.0
_LEAST_COLUMN = 44.0
_NAME, _BODY, _SMALL = 4.0, 3.2, 2.8
_LEADING = 1.28
NONE = "–"
"""Stands where a scheme has no such figure."""
ENOUGH = 50.0
"""Schemes are told apart at a smaller scale than one is measured at: no larger sheet is taken before this."""
_RULE = Pen(Ink.THIN, NARROW)


def scheme_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """For each wall its schemes side by side, up to four on a page; one scheme alone stands beside the bare wall.

    Raises
    ------
    Missing
        No wall has a scheme.
    """
    pages: list[Picture] = []
    for dressed in rooms:
        for wall in dressed.walls:
            sets = pages_of(dressed.room, wall.wall)
            pages += [scheme_sheet(compare(dressed.room, wall.wall, ids, trade), trade, paper) for ids in sets]
    if not pages:
        names = ", ".join(dressed.room.name for dressed in rooms if dressed.room.name)
        raise Missing(names, "", said("has no scheme to compare"), said("add a treatment, or name another wall"))
    return tuple(pages)


def scheme_sheet(
    compared: Comparison, trade: Trade, page: Page | None = None, scale: float | None = None, date: str | None = None
) -> Picture:
    """One page of schemes.

    Parameters
    ----------
    compared : Comparison
    trade : Trade
    page, scale, date
        As for ``bare_sheet``.

    Raises
    ------
    BadInput
        The scale that was asked for does not fit.
    """
    room = compared.room
    style = style_for(room)
    drawn = [draw_wall(one.set_out, trade, View("drawn", stack=False), style) for one in compared.schemes]

    def draw(at: float) -> Drawing:
        return _drawing(compared, drawn, style, at)

    wall = compared.schemes[0].set_out
    names = ", ".join(say(one.name, style) for one in compared.schemes)
    room_name, wall_name = room.name or say(msg("Room"), style), wall.wall_name or wall.wall
    words = Words(
        room_name,
        wall_name,
        "",
        say(msg("Schemes side by side"), style),
        _number(room, wall),
        say(msg("Schemes of {wall} in {room}: {names}.", wall=wall_name, room=room_name, names=names), style),
    )
    notes = [say(msg("cloth as drawn just now"), style)]
    figures = [say(value, style) for row in compared.rows for value in row.values if value is not None]
    if any(mark in text for text in figures for mark in (MORE, LESS)):
        notes.append(say(msg("{more} {less} a little more, less than the figure", more=MORE, less=LESS), style))
    return bare_sheet(draw, words, style, page, scale, date, notes, _stop(compared.schemes, style), ENOUGH)


def _number(room: Room, wall: SetOut) -> str:
    place = next((index for index, one in enumerate(room.walls, 1) if one.id == wall.wall), 1)
    return f"{place} / {max(1, len(room.walls))}"


def _stop(schemes: Sequence[Seen], style: Style) -> str:
    stopped = [one for one in schemes if any(finding.weight is Weight.STOP for finding in one.findings)]
    if not stopped:
        return ""
    names = ", ".join(say(one.name, style) for one in stopped)
    return say(msg("Stop: do not build as drawn — {names}", names=names), style)


def _drawing(compared: Comparison, drawn: Sequence[tuple[Group, ...]], style: Style, unit: float) -> Drawing:
    wall = compared.schemes[0].set_out
    low = min(0.0, *(y for _, y in wall.floor.points))
    high = max(y for _, y in wall.ceiling.points)
    wide = wall.width_mm / unit
    column = max(wide, _LEAST_COLUMN)
    lefts = [_LABELS + _GAP + place * (column + _GAP) for place in range(len(drawn))]
    right = lefts[-1] + column
    groups: list[Group] = []
    for left, pictures in zip(lefts, drawn, strict=True):
        across = (left + (column - wide) / 2) * unit
        groups += [replace(group, records=moved(group.records, across, 0.0)) for group in pictures]
    titles, top = _titles(compared.schemes, lefts, column, style, high, unit)
    rows, bottom = _table(compared, lefts, column, right, style, low - 6.0 * unit, unit)
    groups.append(Group((wall.wall, "schemes"), "title", say(msg("Schemes side by side"), style), (*titles, *rows)))
    return Drawing(tuple(groups), (0.0, bottom, right * unit, top))


def _titles(
    schemes: Sequence[Seen], lefts: Sequence[float], column: float, style: Style, high: float, unit: float
) -> tuple[list[Record], float]:
    """The names over the walls, and how high they reach."""
    wrapped = [wrap(say(one.name, style), _NAME, column, "semibold") for one in schemes]
    records: list[Record] = []
    step = _NAME * _LEADING * unit
    for left, lines in zip(lefts, wrapped, strict=True):
        for at, line in enumerate(reversed(lines)):
            place = ((left + column / 2) * unit, high + 3.0 * unit + at * step)
            records.append(Text(place, line, _NAME, Ink.TEXT, "middle", 0.0, "semibold"))
    return records, high + 3.0 * unit + max(len(lines) for lines in wrapped) * step


def _table(
    compared: Comparison,
    lefts: Sequence[float],
    column: float,
    right: float,
    style: Style,
    top: float,
    unit: float,
) -> tuple[list[Record], float]:
    """What differs, a row a figure under the walls; then what does not, in a line. Where it ends as well."""
    records: list[Record] = [Line((0.0, top), (right * unit, top), _RULE)]
    y = top
    for row in compared.differing:
        cells = [(0.0, _LABELS, say(row.label, style), Ink.QUIET)]
        cells += [
            (left, column, NONE if value is None else say(value, style), Ink.TEXT)
            for left, value in zip(lefts, row.values, strict=True)
        ]
        y = _row(records, cells, y, unit)
        records.append(Line((0.0, y), (right * unit, y), _RULE))
    for line in wrap(say(alike_said(compared), style), _SMALL, right):
        y -= _SMALL * _LEADING * unit
        records.append(Text((0.0, y), line, _SMALL, Ink.QUIET))
    return records, y - 1.5 * unit


def _row(records: list[Record], cells: Sequence[tuple[float, float, str, str]], top: float, unit: float) -> float:
    """One row of cells (left, width, text, ink); where it ends."""
    low = top
    for left, width, text, ink in cells:
        y = top - 0.9 * unit
        for line in wrap(text, _BODY, width):
            y -= _BODY * unit
            records.append(Text((left * unit, y), line, _BODY, ink))
            y -= _BODY * (_LEADING - 1.0) * unit
        low = min(low, y)
    return low - 0.8 * unit


def alike_said(compared: Comparison) -> Message:
    """What reads the same in every scheme, as one sentence."""
    parts: list[Message] = [
        msg("{label}: {value}", label=row.label, value=value)
        for row in compared.alike
        for value in row.values[:1]
        if value is not None
    ]
    if not parts:
        return msg("No figure is the same in all.")
    listed = parts[0]
    for part in parts[1:]:
        listed = msg("{first}; {then}", first=listed, then=part)
    return msg("The same in all: {listed}.", listed=listed)
