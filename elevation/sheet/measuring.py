"""A blank measuring sheet: the wall as a sketch, every measurement numbered as in the form, and lines to write on."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.room.model import Opening, Room, Wall
from elevation.sheet import furniture
from elevation.sheet.blocks import BODY, HEADING
from elevation.sheet.furniture import Inside, inside
from elevation.sheet.paper import pages_for
from elevation.sheet.paths import rectangle
from elevation.sheet.records import NARROW, WIDE, Fill, Group, Ink, Line, Page, Pen, Picture, Polyline, Record, Text
from elevation.sheet.tape_order import TapeField, fields
from elevation.sheet.type_metrics import CAP, shorten, text_width
from elevation.words import Style, msg, say

_TABLE = 0.46
"""Part of the sheet's width that the table takes."""
_ROW_MOST = 7.4
_ROW_LEAST = 3.9
_NUMBER = 2.7
_BADGE = 1.9
_WIDE_PEN = Pen(Ink.OUTLINE, WIDE)
_THIN = Pen(Ink.THIN, NARROW)


class _Sketch(Struct, frozen=True, gc=False):
    """Where the wall of the sketch stands on the sheet."""

    left: float
    bottom: float
    right: float
    top: float


def measuring_sheet(room: Room, wall: Wall, style: Style, paper: Page | None = None) -> Picture:
    """The measuring sheet of a wall, to be printed and filled in by hand.

    Parameters
    ----------
    room : Room
    wall : Wall
        Its openings and obstacles give the lines to fill in; nothing that was measured is shown.
    style : Style
    paper : Page or None
        None: the small sheet of the room's unit, the large one where the table needs it.

    Returns
    -------
    Picture
        With a page, all in sheet coordinates.
    """
    facts = fields(wall)
    pages = pages_for(style.unit) if paper is None else (paper,)
    page = next((page for page in pages if _row_height(len(facts), page) >= _ROW_LEAST + 0.4), pages[-1])
    room_inside = inside(page)
    split = room_inside.right - (room_inside.right - room_inside.left) * _TABLE
    sketch_room = Inside(room_inside.left, room_inside.bottom, split, room_inside.top)
    title = say(msg("Measuring sheet"), style)
    records: list[Record] = [
        *furniture.frame(page),
        Line((split, room_inside.bottom), (split, room_inside.top), _THIN),
        *_heading(room, wall, style, sketch_room, title),
        *_sketch(wall, facts, sketch_room),
        *_notes(style, sketch_room),
        *_table(facts, Inside(split, room_inside.bottom, room_inside.right, room_inside.top), style),
    ]
    name = " · ".join(part for part in (title, room.name, wall.name or wall.id) if part)
    description = say(msg("A sketch of the wall with {count} numbered measurements to fill in.", count=len(facts)), style)
    return Picture((Group((), "sheet", title, tuple(records), "paper"),), 1.0, (0.0, 0.0), page, name, description)


def _row_height(count: int, page: Page) -> float:
    room = inside(page)
    usable = room.top - room.bottom - 18.0
    rows = -(-count // _table_columns(count, page))
    return min(_ROW_MOST, usable / max(1, rows))


def _table_columns(count: int, page: Page) -> int:
    room = inside(page)
    in_one = int((room.top - room.bottom - 18.0) / 5.2)
    most = 3 if page.width_mm > 350.0 else 2
    return min(most, max(1, -(-count // in_one)))


def _heading(room: Room, wall: Wall, style: Style, place: Inside, title: str) -> list[Record]:
    width = place.right - place.left - 12.0
    x = place.left + 6.0
    names = ", ".join(part for part in (room.name, wall.name or wall.id) if part)
    blanks = say(msg("measured on ____________  by ____________"), style)
    return [
        Text((x, place.top - 9.5), shorten(title, 5.6, width, "semibold"), 5.6, weight="semibold"),
        Text((x, place.top - 15.6), shorten(names, 4.0, width), 4.0),
        Text((x, place.top - 20.8), shorten(blanks, 3.0, width), 3.0, Ink.QUIET),
    ]


def _notes(style: Style, place: Inside) -> list[Record]:
    unit = msg("all lengths in inches and sixteenths") if style.unit == "in" else msg("all lengths in millimetres")
    texts = (
        unit,
        msg("heights from a level line, not from the floor, where the floor is out of level"),
        msg("measure widths at three heights and write the least"),
    )
    x, y = place.left + 6.0, place.bottom + 5.0
    width = place.right - place.left - 12.0
    return [
        Text((x, y + (len(texts) - 1 - index) * 3.9), shorten(say(text, style), 2.8, width), 2.8, Ink.QUIET)
        for index, text in enumerate(texts)
    ]


def _table(facts: Sequence[TapeField], place: Inside, style: Style) -> list[Record]:
    page = Page("", place.right + 10.0, place.top + 10.0)
    columns = _table_columns(len(facts), page)
    rows = -(-len(facts) // columns)
    height = min(_ROW_MOST, (place.top - place.bottom - 18.0) / max(1, rows))
    size = min(3.1, height * 0.56)
    step = (place.right - place.left - 4.0) / columns
    head = say(msg("What to measure"), style)
    records: list[Record] = [Text((place.left + 6.0, place.top - 9.0), head, HEADING, Ink.TEXT, "left", 0.0, "semibold")]
    for index, entry in enumerate(facts):
        column, row = divmod(index, rows)
        left = place.left + 4.0 + column * step
        y = place.top - 13.5 - row * height - height * 0.68
        blank = 21.0 if columns == 1 else 15.0
        end = left + step - 4.0
        number = str(entry.number)
        records.append(Text((left + 5.0, y), number, size, Ink.TEXT, "right", 0.0, "semibold"))
        words = shorten(say(entry.name, style), size, end - blank - left - 8.0)
        records.append(Text((left + 7.0, y), words, size))
        records.append(Line((end - blank, y - 0.6), (end, y - 0.6), Pen(Ink.QUIET, 0.18)))
    return records


class _Badges:
    """Numbers in small rings along the sketch; each is told its place and keeps clear of the others."""

    def __init__(self, facts: Sequence[TapeField]) -> None:
        self.numbers = {(entry.ref, entry.field): entry.number for entry in facts}
        self.records: list[Record] = []
        self.taken: list[tuple[float, float]] = []

    def put(self, ref: tuple[str, ...], field: str, x: float, y: float, way: tuple[float, float]) -> None:
        number = self.numbers.get((ref, field))
        if number is None:
            return
        while any(abs(x - other[0]) < 2.2 * _BADGE and abs(y - other[1]) < 2.2 * _BADGE for other in self.taken):
            x, y = x + way[0] * 1.1, y + way[1] * 1.1
        self.taken.append((x, y))
        text = str(number)
        half = max(_BADGE, text_width(text, _NUMBER, "semibold") / 2 + 0.7)
        self.records.append(Fill(rectangle(x - half, y - _BADGE, x + half, y + _BADGE), Ink.PAPER))
        self.records.append(
            Polyline(
                ((x - half, y - _BADGE), (x + half, y - _BADGE), (x + half, y + _BADGE), (x - half, y + _BADGE)),
                _THIN,
                True,
            )
        )
        self.records.append(Text((x, y - CAP * _NUMBER / 2), text, _NUMBER, Ink.TEXT, "middle", 0.0, "semibold"))


def _sketch(wall: Wall, facts: Sequence[TapeField], place: Inside) -> list[Record]:
    """The wall not to scale: openings side by side, the dimension lines of the chain under it, heights in it."""
    wide = place.right - place.left - 30.0
    high = min(wide * 0.62, place.top - place.bottom - 78.0)
    middle = (place.top - 24.0 + place.bottom + 20.0) / 2
    left = place.left + 18.0
    area = _Sketch(left, middle - high / 2 + 9.0, left + wide, middle + high / 2 + 9.0)
    badges = _Badges(facts)
    here = (wall.id,)
    records: list[Record] = [
        Polyline(
            ((area.left, area.bottom), (area.right, area.bottom), (area.right, area.top), (area.left, area.top)),
            _WIDE_PEN,
            True,
        ),
        Line((area.left, area.bottom + 2.6), (area.right, area.bottom + 2.6), _THIN),
        Line((area.left, area.top - 2.2), (area.right, area.top - 2.2), _THIN),
    ]
    records.extend(_line(area.left, area.right, area.bottom - 24.0, along="x"))
    badges.put(here, "width", (area.left + area.right) / 2, area.bottom - 24.0, (1.0, 0.0))
    points = max(1, len(wall.ceiling))
    for index in range(points):
        x = area.left + wide * 0.035 if points == 1 else area.left + wide * (0.035 + 0.93 * index / (points - 1))
        if index == 0:
            records.extend(_line(area.bottom, area.top, area.left - 9.0, along="y"))
            badges.put(here, "ceiling.0.height", area.left - 9.0, (area.bottom + area.top) / 2, (0.0, 1.0))
        else:
            badges.put(here, f"ceiling.{index}.height", x, area.top + 3.4, (1.0, 0.0))
        badges.put(here, f"ceiling.{index}.x", x, area.top + 3.4, (1.0, 0.0))
    for index in range(len(wall.floor)):
        x = area.left + wide * (0.06 + 0.88 * index / max(1, len(wall.floor) - 1))
        badges.put(here, f"floor.{index}.x", x, area.bottom - 3.4, (1.0, 0.0))
        badges.put(here, f"floor.{index}.height", x, area.bottom - 3.4, (1.0, 0.0))
    badges.put(here, "crown", area.right + 4.0, area.top - 1.5, (0.0, -1.0))
    badges.put(here, "baseboard", area.right + 4.0, area.bottom + 1.5, (0.0, 1.0))
    records.extend(_openings(wall, area, badges))
    _stand(wall, area, badges)
    return [*records, *badges.records]


def _line(low: float, high: float, at: float, *, along: str) -> list[Record]:
    """A plain dimension line with its strokes."""
    stroke = 1.0
    if along == "x":
        return [
            Line((low, at), (high, at), _THIN),
            *(Line((x - stroke, at - stroke), (x + stroke, at + stroke), Pen(Ink.THIN, WIDE)) for x in (low, high)),
        ]
    return [
        Line((at, low), (at, high), _THIN),
        *(Line((at - stroke, y + stroke), (at + stroke, y - stroke), Pen(Ink.THIN, WIDE)) for y in (low, high)),
    ]


def _openings(wall: Wall, area: _Sketch, badges: _Badges) -> list[Record]:
    count = len(wall.openings)
    if count == 0:
        return []
    records: list[Record] = []
    step = (area.right - area.left) / count
    chain = area.bottom - 13.0
    ends = [area.left]
    for index, opening in enumerate(wall.openings):
        left, right = area.left + step * (index + 0.27), area.left + step * (index + 0.77)
        low = area.bottom if opening.kind != "window" else area.bottom + (area.top - area.bottom) * 0.3
        top = area.bottom + (area.top - area.bottom) * 0.76
        records.extend(_opening(opening, left, low, right, top))
        casing = min(3.0, step * 0.05)
        ends.extend((left - casing, left, right, right + casing))
        ref = (wall.id, opening.id)
        previous = ends[-5]
        badges.put(ref, "gap", (previous + left - casing) / 2, chain, (0.0, -1.0))
        badges.put(ref, "left", (previous + left - casing) / 2, chain, (0.0, -1.0))
        badges.put(ref, "casing", left - casing / 2, chain + 5.0, (0.0, 1.0))
        badges.put(ref, "width", (left + right) / 2, chain, (0.0, -1.0))
        x = (left + right) / 2
        badges.put(ref, "sill", x, (area.bottom + low) / 2, (0.0, 1.0))
        badges.put(ref, "height", x, (low + top) / 2 + 2.0, (0.0, 1.0))
        badges.put(ref, "head.rise", x, top - 2.5, (1.0, 0.0))
        badges.put(ref, "head.right_height", right - 2.5, (low + top) / 2, (0.0, 1.0))
        badges.put(ref, "frame", left + 3.0, top - 3.0, (0.0, -1.0))
        badges.put(ref, "reveal", right - 3.0, top - 3.0, (0.0, -1.0))
        badges.put(ref, "sash.handle_out", x, (low + top) / 2 - 4.0, (0.0, -1.0))
        badges.put(ref, "stool.thickness", left - 1.0, low - 1.0, (0.0, -1.0))
        badges.put(ref, "stool.horn", right + 1.0, low - 1.0, (0.0, -1.0))
        badges.put(ref, "stool.projection", left - 1.0, low - 6.0, (0.0, -1.0))
        badges.put(ref, "apron", right + 1.0, low - 6.0, (0.0, -1.0))
        number = str(index + 1)
        records.append(Text((x, top + 4.6), number, BODY, Ink.QUIET, "middle", 0.0, "semibold"))
    ends.append(area.right)
    records.extend(_chain(ends, chain, area))
    badges.put((wall.id,), "gap_right", (ends[-2] + area.right) / 2, chain, (0.0, -1.0))
    return records


def _chain(ends: Sequence[float], at: float, area: _Sketch) -> list[Record]:
    records: list[Record] = [Line((area.left, at), (area.right, at), _THIN)]
    for x in ends:
        records.append(Line((x, area.bottom - 1.0), (x, at - 1.5), Pen(Ink.THIN, 0.18)))
        records.append(Line((x - 0.9, at - 0.9), (x + 0.9, at + 0.9), Pen(Ink.THIN, WIDE)))
    for x in (area.left, area.right):
        records.append(Line((x, at - 1.5), (x, area.bottom - 25.5), Pen(Ink.THIN, 0.18)))
    return records


def _opening(opening: Opening, left: float, low: float, right: float, top: float) -> list[Record]:
    casing = min(3.0, (right - left) * 0.1)
    outer = ((left - casing, low), (left - casing, top + casing), (right + casing, top + casing), (right + casing, low))
    inner = ((left, low), (left, top), (right, top), (right, low))
    records: list[Record] = [Polyline(outer, _THIN), Polyline(inner, _WIDE_PEN, opening.kind == "window")]
    if opening.kind == "window":
        horn = casing + 1.6
        records.append(
            Polyline(
                ((left - horn, low), (right + horn, low), (right + horn, low - 1.2), (left - horn, low - 1.2)), _THIN, True
            )
        )
    return records


def _stand(wall: Wall, area: _Sketch, badges: _Badges) -> None:
    """Obstacles have their numbers in rows over the wall: where they stand is not known yet."""
    x, y = area.left + 3.0, area.top + 9.5
    for obstacle in wall.obstacles:
        for field in ("left", "width", "bottom", "height", "projection", "clearance"):
            badges.put((wall.id, obstacle.id), field, x, y, (1.0, 0.0))


__all__ = ["measuring_sheet"]
