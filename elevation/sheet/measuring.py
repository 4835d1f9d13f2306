"""The measuring sheet: the wall as a sketch, measurements numbered as in the form, lines to write on, blank or filled."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.room.model import Obstacle, Room, Wall
from elevation.sheet import furniture
from elevation.sheet.furniture import Inside, inside
from elevation.sheet.measuring_lines import Figures, Numbers, blank, figures_of, title_record, words_record
from elevation.sheet.measuring_openings import LABEL, cell_width, openings_table, rows_of
from elevation.sheet.measuring_sketch import sketch
from elevation.sheet.paper import pages_for
from elevation.sheet.records import NARROW, Group, Ink, Line, Page, Pen, Picture, Record, Text
from elevation.sheet.tape_order import TapeField, fields, kind_of, reading_fields
from elevation.sheet.type_metrics import shorten
from elevation.words import Message, Style, msg, say

_PAD = 6.0
_TOP_PART = 0.54
"""Part of the sheet's height for the sketch; the table of openings stands under it."""
_ROW_MOST = 7.0
_ROW_LEAST = 3.8
_BLANK = Pen(Ink.QUIET, 0.18)
_RULE = Pen(Ink.THIN, NARROW)
_LIST_WIDTH = 0.36
"""Part of the width for the list of the wall and of what stands before it."""

_ABREAST = 3
"""Obstacles side by side: their columns are then wide enough to write in."""

_ACROSS: tuple[tuple[str, Message], ...] = (
    ("left", msg("from the left")),
    ("width", msg("width")),
    ("bottom", msg("over floor")),
    ("height", msg("height")),
    ("projection", msg("out")),
    ("clearance", msg("keep clear")),
)


def measuring_sheets(
    room: Room, style: Style, paper: Page | None = None, *, is_filled: bool = False
) -> tuple[Picture, ...]:
    """The measuring sheets of all walls of a room, in order."""
    return tuple(measuring_sheet(room, wall, style, paper, is_filled=is_filled) for wall in room.walls)


def measuring_sheet(room: Room, wall: Wall, style: Style, paper: Page | None = None, *, is_filled: bool = False) -> Picture:
    """The measuring sheet of a wall, to be printed and filled in by hand.

    Parameters
    ----------
    room : Room
    wall : Wall
        Its openings and obstacles give the lines to fill in.
    style : Style
    paper : Page or None
        None: the small sheet of the room's unit, the large one where the lines would be too narrow to write on.
    is_filled : bool
        What was measured stands on its line; what was not stays blank.

    Returns
    -------
    Picture
        With a page, all in sheet coordinates.
    """
    facts = fields(wall)
    numbers = {(entry.ref, entry.field): entry.label for entry in (*facts, *reading_fields(wall))}
    figures = figures_of(wall, numbers, style) if is_filled else {}
    pages = pages_for(style.unit) if paper is None else (paper,)
    page, height = _choose(wall, facts, numbers, pages)
    place = inside(page)
    title = say(msg("Measurements") if is_filled else msg("Measuring sheet"), style)
    zones = _zones(wall, facts, page, height)
    drawing = zones.sketch
    records: list[Record] = [
        *furniture.frame(page),
        Line((drawing.right, drawing.bottom), (drawing.right, place.top), _RULE),
        *_heading(room, wall, style, drawing, title),
        *sketch(wall, facts, Inside(drawing.left + _PAD, drawing.bottom + 4.0, drawing.right - _PAD, place.top - 24.0)),
        *_wall_list(wall, facts, figures, zones.wall, height, style),
        *_before(wall, numbers, figures, zones.obstacles, height, style),
    ]
    if wall.openings:
        records.append(Line((place.left, drawing.bottom), (place.right, drawing.bottom), _RULE))
        records.extend(openings_table(wall, numbers, figures, zones.openings, height, style))
    name = " · ".join(part for part in (title, room.name, wall.name or wall.id) if part)
    count = len(facts)
    description = say(msg("A sketch of the wall with {count} numbered measurements to fill in.", count=count), style)
    return Picture((Group((), "sheet", title, tuple(records), "paper"),), 1.0, (0.0, 0.0), page, name, description)


def _choose(wall: Wall, facts: Sequence[TapeField], numbers: Numbers, pages: Sequence[Page]) -> tuple[Page, float]:
    """The first sheet on which lines are far enough apart to write on, and how far apart they are, mm."""
    for page in pages:  # pragma: no branch - the last page takes whatever there is
        height = _ROW_MOST
        least = _ROW_LEAST if page is not pages[-1] else 2.6
        while height > least and not _fits(wall, facts, numbers, page, height):
            height -= 0.2
        if height > least or page is pages[-1]:
            return page, height
    raise AssertionError("no page")  # pragma: no cover - the last page takes whatever there is


def _fits(wall: Wall, facts: Sequence[TapeField], numbers: Numbers, page: Page, height: float) -> bool:
    zones = _zones(wall, facts, page, height)
    cell = cell_width(zones.openings, len(wall.openings))
    rows = len(rows_of(wall, numbers, cell))
    if wall.openings and (cell < 17.0 or rows * height + 13.0 > zones.openings.top - zones.openings.bottom):
        return False
    groups = -(-len(wall.obstacles) // _ABREAST)
    each = (len(_across(wall, numbers)) + 1.4) * height
    room = sum(int((zone.top - zone.bottom - 9.0) / each) for zone in zones.obstacles) if groups else 0
    return zones.obstacles[0].top >= zones.obstacles[0].bottom and room >= groups


class _Zones(Struct, frozen=True, gc=False):
    """How the sheet is divided: the sketch, the wall's list, the openings' table, and where obstacles may stand."""

    sketch: Inside
    wall: Inside
    openings: Inside
    obstacles: tuple[Inside, ...]


def _zones(wall: Wall, facts: Sequence[TapeField], page: Page, height: float) -> _Zones:
    place = inside(page)
    cut = place.top - (place.top - place.bottom) * _TOP_PART if wall.openings else place.bottom
    split = place.right - (place.right - place.left) * _LIST_WIDTH
    own = sum(1 for entry in facts if entry.ref == (wall.id,))
    under_list = place.top - 12.0 - own * height
    obstacles = [Inside(split + 4.0, cut + 2.0, place.right - 4.0, under_list)]
    step = cell_width(Inside(place.left + _PAD, 0.0, place.right - 4.0, 0.0), len(wall.openings))
    used = place.left + _PAD + LABEL + step * len(wall.openings) + 8.0
    width = place.right - place.left
    # What the openings leave free beside their table is as good a place.
    while wall.openings and place.right - 4.0 - used >= min(76.0, width * 0.3):
        right = min(used + 84.0, place.right - 4.0)
        obstacles.append(Inside(used, place.bottom + 2.0, right, cut))
        used = right + 8.0
    return _Zones(
        Inside(place.left, cut, split, place.top),
        Inside(split, cut, place.right, place.top),
        Inside(place.left + _PAD, place.bottom, place.right - 4.0, cut),
        tuple(obstacles),
    )


def _heading(room: Room, wall: Wall, style: Style, place: Inside, title: str) -> list[Record]:
    width = place.right - place.left - 2 * _PAD
    x = place.left + _PAD
    names = ", ".join(part for part in (room.name, wall.name or wall.id) if part)
    unit = msg("inches and fractions") if style.unit == "in" else msg("millimetres")
    note = say(
        msg("in {unit}; heights from a level line; of three readings the largest counts, inside the smallest", unit=unit),
        style,
    )
    return [
        Text((x, place.top - 8.6), shorten(title, 5.2, width, "semibold"), 5.2, weight="semibold"),
        Text((x, place.top - 14.2), shorten(names, 3.8, width), 3.8),
        Text((x, place.top - 18.8), shorten(note, 2.8, width), 2.8, Ink.QUIET),
    ]


def _wall_list(
    wall: Wall, facts: Sequence[TapeField], figures: Figures, place: Inside, height: float, style: Style
) -> list[Record]:
    size = min(3.1, height * 0.62)
    left, right = place.left + 4.0, place.right - 4.0
    y = place.top - 8.6
    records: list[Record] = [title_record(say(msg("Wall"), style), left, y)]
    y -= 1.6
    width = 24.0
    for entry in facts:
        if entry.ref == (wall.id,):
            y -= height
            records.append(words_record(say(entry.name, style), left, y, size, right - width - left - 2.0))
            figure = figures.get((entry.ref, entry.field), "")
            records.extend(blank(entry.label, right - width, right, y, size, figure))
    return records


def _before(
    wall: Wall, numbers: Numbers, figures: Figures, zones: Sequence[Inside], height: float, style: Style
) -> list[Record]:
    """What stands before the wall, a few things side by side, zone after zone."""
    each = (len(_across(wall, numbers)) + 1.4) * height
    records: list[Record] = []
    rest = list(wall.obstacles)
    for zone in zones:
        count = int((zone.top - zone.bottom - 9.0) / each)
        if not rest or count < 1:
            continue
        y = zone.top - 7.6
        records.append(title_record(say(msg("Before the wall"), style), zone.left, y))
        for _ in range(count):
            group, rest = rest[:_ABREAST], rest[_ABREAST:]
            if group:
                records.extend(
                    _obstacles(wall, group, numbers, figures, Inside(zone.left, 0.0, zone.right, y), height, style)
                )
            y -= each
    return records


def _obstacles(
    wall: Wall,
    group: Sequence[Obstacle],
    numbers: Numbers,
    figures: Figures,
    place: Inside,
    height: float,
    style: Style,
) -> list[Record]:
    """A few obstacles side by side under their names."""
    size = min(3.1, height * 0.62)
    label = 19.0
    step = (place.right - place.left - label) / _ABREAST
    y = place.top - height * 1.1
    records: list[Record] = []
    for index, obstacle in enumerate(group):
        name = obstacle.name or say(kind_of(obstacle.kind), style)
        x = place.left + label + index * step
        records.append(Text((x, y), shorten(name, size, step - 1.5, "italic"), size, Ink.TEXT, "left", 0.0, "italic"))
    for field, words in _across(wall, numbers):
        y -= height
        records.append(words_record(say(words, style), place.left, y, size, label - 1.0))
        for index, obstacle in enumerate(group):
            key = ((wall.id, obstacle.id), field)
            x = place.left + label + index * step
            if key in numbers:
                records.extend(blank(numbers[key], x, x + step - 1.8, y, size, figures.get(key, "")))
            else:
                records.append(Text((x, y), "–", size, Ink.QUIET))
    return records


def _across(wall: Wall, numbers: Numbers) -> list[tuple[str, Message]]:
    """The measurements that at least one obstacle asks for."""
    return [column for column in _ACROSS if any(((wall.id, item.id), column[0]) in numbers for item in wall.obstacles)]
