"""The house sheet: every wall small at one scale with its openings numbered, a schedule of windows, and the totals."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from elevation.findings.naming import opening_name
from elevation.findings.unknowns import unknowns
from elevation.planning.cloth_words import amount
from elevation.planning.dressed import Dressed
from elevation.planning.house import counts_of, counts_said
from elevation.planning.house_schedule import HouseRow, HouseSchedule, house_schedule
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.facts import digest_of
from elevation.sheet.layouts import BEYOND
from elevation.sheet.paper import scale_name, scales_for
from elevation.sheet.paths import rectangle
from elevation.sheet.records import Fill, Ink, Picture, Record, Text
from elevation.sheet.type_metrics import CAP, text_width, wrap
from elevation.sheet.work.moved import moved, reduced
from elevation.sheet.work.page import WHITE, Part, Sheet, together
from elevation.sheet.work.parts import SMALL, TableColumn, gap, heading, paragraph, table
from elevation.trade.model import Trade
from elevation.words import Message, Mm, Ratio, Style, msg, msg_plural, say

_TALLEST = 62.0
"""No wall is drawn higher, paper mm: three rows of them and their words stand on a page."""
_GAP = 7.0
_LEAST = 36.0
"""Room for the words under a narrow wall."""
_NUMBER = 3.0
_LEADING = 1.28
_TABLE = 3.3


class _Tile(Struct, frozen=True):
    """One wall: how wide and high it and its words are, where its floor is, what is drawn, from its upper left corner."""

    width: float
    height: float
    floor: float
    records: tuple[Record, ...]


def house_sheet(rooms: Sequence[Dressed], trade: Trade, sheet: Sheet) -> tuple[Picture, ...]:
    """The pages of the house sheet.

    Parameters
    ----------
    rooms : sequence of Dressed
        In each the lengths are said as its own tape has them.
    trade : Trade
    sheet : Sheet
    """
    style, width = sheet.style, sheet.width
    schedule = house_schedule(rooms, trade)
    parts: list[Part] = []
    walls = [(at, wall) for at, dressed in enumerate(rooms) for wall in dressed.walls]
    if walls:
        scale = _scale([wall for _, wall in walls], width, style.unit)
        tiles = [_tile(rooms[at], at, wall, schedule, trade, scale, style) for at, wall in walls]
        parts.extend(_rows(tiles, width))
        told = msg("All walls at {scale}, cloth as drawn just now.", scale=scale_name(scale, style.unit))
        parts.append(paragraph(say(told, style), width, SMALL, Ink.QUIET))
    if schedule.rows:
        parts += [gap(1.0), heading(say(msg("Schedule of windows"), style), width)]
        parts.extend(_schedule(rooms, schedule, width, style))
    parts.extend(together([heading(say(msg("In all"), style), width), *_totals(schedule, width, style)], sheet.page))
    return sheet.lay(msg("House sheet"), parts)


def _scale(walls: Sequence[SetOut], width: float, unit: str) -> float:
    """The largest standard scale at which every wall fits the page's width and is not too high."""
    wide = max(wall.width_mm for wall in walls)
    high = max(_top(wall) - _low(wall) for wall in walls)
    scales = (*scales_for(unit), *BEYOND)
    return next((scale for scale in scales if wide / scale <= width and high / scale <= _TALLEST), scales[-1])


def _top(wall: SetOut) -> float:
    return max(y for _, y in wall.ceiling.points)


def _low(wall: SetOut) -> float:
    return min(0.0, *(y for _, y in wall.floor.points))


def _tile(
    dressed: Dressed, at: int, wall: SetOut, schedule: HouseSchedule, trade: Trade, scale: float, style: Style
) -> _Tile:
    wide, high = wall.width_mm / scale, (_top(wall) - _low(wall)) / scale
    groups = draw_wall(wall, trade, View("drawn", stack=False), style)
    up = -high - _low(wall) / scale
    records = [record for group in groups for record in reduced(group.records, scale, 0.0, up)]
    for opening in wall.openings:
        middle = ((opening.left_mm + opening.right_mm) / 2 / scale, (opening.bottom_mm + opening.top_mm) / 2 / scale + up)
        records.extend(_number(schedule.numbers[at, opening.ref], middle))
    column = max(wide, _LEAST)
    down = high + 1.4
    name = msg("{name}", name=wall.wall_name or wall.wall)
    if dressed.room.name:
        name = msg("{room}, {wall}", room=dressed.room.name, wall=name)
    for text in wrap(say(name, style), _NUMBER, column, "semibold"):
        records.append(Text((0.0, -down - _NUMBER), text, _NUMBER, weight="semibold"))
        down += _NUMBER * _LEADING
    findings = dressed.findings[dressed.walls.index(wall)]
    counts = counts_said(findings, len(unknowns(wall)))
    for text in wrap(say(counts, style), _NUMBER, column):
        records.append(Text((0.0, -down - _NUMBER), text, _NUMBER, Ink.QUIET))
        down += _NUMBER * _LEADING
    return _Tile(column, down + 3.4, high, tuple(records))


def _number(number: int, at: tuple[float, float]) -> Iterator[Record]:
    """An opening's number on a plate of its own: no finding's mark has its shape."""
    text = str(number)
    half, high = max(text_width(text, _NUMBER, "semibold") / 2 + 1.0, 2.0), 2.2
    yield Fill(rectangle(at[0] - half, at[1] - high, at[0] + half, at[1] + high), Ink.TEXT)
    yield Text((at[0], at[1] - CAP * _NUMBER / 2), text, _NUMBER, WHITE, "middle", 0.0, "semibold")


def _rows(tiles: Sequence[_Tile], width: float) -> list[Part]:
    """Walls beside each other as they fit, in their order, all of a row standing on one floor line."""
    rows: list[list[_Tile]] = [[]]
    used = 0.0
    for tile in tiles:
        if rows[-1] and used + tile.width > width + 1e-6:
            rows.append([])
            used = 0.0
        rows[-1].append(tile)
        used += tile.width + _GAP
    parts = []
    for row in rows:
        left = 0.0
        records: list[Record] = []
        floor = max(tile.floor for tile in row)
        for tile in row:
            records.extend(moved(tile.records, left, tile.floor - floor))
            left += tile.width + _GAP
        parts.append(Part(max(tile.height + floor - tile.floor for tile in row), tuple(records)))
    return parts


def _schedule(rooms: Sequence[Dressed], schedule: HouseSchedule, width: float, style: Style) -> tuple[Part, ...]:
    columns = (
        TableColumn(say(msg("No."), style), 0.9),
        TableColumn(say(msg("Where"), style), 2.5),
        TableColumn(say(msg("Opening"), style), 2.2),
        TableColumn(say(msg("What hangs there"), style), 5.2),
        TableColumn(say(msg("Findings"), style), 2.0),
    )
    return table(columns, [_cells(rooms[row.room], row, style) for row in schedule.rows], width, _TABLE)


def _cells(dressed: Dressed, row: HouseRow, style: Style) -> tuple[str, ...]:
    # Its own tape's unit and marks, in the language of the sheet.
    own = replace(style_for(dressed.room), language=style.language, decimal_mark=style.decimal_mark)
    place = " · ".join(text for text in (dressed.room.name, row.wall.wall_name or row.wall.wall) if text)
    if row.laid is not None and row.laid.name:
        place = f"{place}: {row.laid.name}"
    sizes = dict.fromkeys(
        say(
            msg(
                "{width} by {height}",
                width=Mm(opening.right_mm - opening.left_mm),
                height=Mm(opening.top_mm - opening.bottom_mm),
            ),
            own,
        )
        for opening in row.openings
    )
    kinds = dict.fromkeys(say(opening_name(opening), style) for opening in row.openings if opening.kind != "window")
    return (
        ", ".join(str(number) for number in row.numbers),
        place,
        "; ".join((*kinds, *sizes)),
        say(msg("bare"), style) if row.laid is None else digest_of(row.laid, own),
        say(counts_of(*row.found, 0), style) if any(row.found) else "",
    )


def _run(mm: float, unit: str) -> Message:
    """A long length as stock is spoken of: feet in a room of inches, else metres."""
    if unit == "in":
        return msg("{amount} ft", amount=Ratio(mm / 304.8, 1))
    return msg("{amount} m", amount=Ratio(mm / 1000.0, 2))


def _totals(schedule: HouseSchedule, width: float, style: Style) -> list[Part]:
    whole = schedule.totals
    openings = msg("{count}", count=whole.openings)
    if whole.bare:
        openings = msg_plural("{all}, {count} of them bare", "{all}, {count} of them bare", all=openings, count=whole.bare)
    cloth = amount(whole.cloth_mm, style.unit)
    if whole.cloth_unknown:
        more = msg_plural("{count} not known yet", "{count} not known yet", count=whole.cloth_unknown)
        cloth = msg("{first}, {then}", first=cloth, then=more)
    rods = msg("{count}", count=whole.rods)
    if whole.rod_mm:
        rods = msg("{count}, {length} end to end", count=whole.rods, length=_run(whole.rod_mm, style.unit))
    rows: list[tuple[Message, Message]] = [
        (msg("Rooms and walls"), msg("{rooms} and {walls}", rooms=whole.rooms, walls=whole.walls)),
        (msg("Openings"), openings),
        (msg("Treatments"), msg("{count}", count=whole.treatments)),
        (msg("Rods and tracks"), rods),
        (msg("Brackets"), msg("{count}", count=whole.brackets)),
        (msg("Panels, pieces"), msg("{count}", count=whole.panels)),
        (msg("Rings, glides, eyelets"), msg("{count}", count=whole.rings)),
    ]
    if whole.cloth_mm or whole.cloth_unknown:
        rows.append((msg("Cloth to sew, face alone"), cloth))
    rows.append((msg("Findings"), counts_of(*whole.found, 0) if any(whole.found) else msg("none")))
    if whole.missing:
        rows.append((msg("Not known yet"), msg("{count}", count=whole.missing)))
    columns = (TableColumn("", 4.0), TableColumn("", 6.0))
    cells = [(say(label, style), say(value, style)) for label, value in rows]
    parts = list(table(columns, cells, width)[1:])
    parts.append(
        paragraph(say(msg("What to buy and what it costs stands on the buying list."), style), width, SMALL, Ink.QUIET)
    )
    return parts
