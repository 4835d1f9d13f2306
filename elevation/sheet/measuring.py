"""A blank measuring sheet: the wall as a sketch, every measurement numbered as in the form, and lines to write on."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.room.model import Obstacle, Ref, Room, Wall
from elevation.sheet import furniture
from elevation.sheet.blocks import HEADING
from elevation.sheet.furniture import Inside, inside
from elevation.sheet.measuring_sketch import sketch
from elevation.sheet.paper import pages_for
from elevation.sheet.records import NARROW, Group, Ink, Line, Page, Pen, Picture, Record, Text
from elevation.sheet.tape_order import TapeField, fields, kind_of
from elevation.sheet.type_metrics import shorten, text_width
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

_Numbers = dict[tuple[Ref, str], int]
_LABEL = 52.0
_ABREAST = 3
"""Obstacles side by side: their columns are then wide enough to write in."""

_ROWS: tuple[tuple[tuple[str, ...], Message], ...] = (
    (("gap", "left"), msg("from the casing (or wall end) before it")),
    (("casing",), msg("width of its casing")),
    (("width",), msg("width between the jambs")),
    (("sill",), msg("floor to sill")),
    (("height",), msg("sill (or floor) to head")),
    (("head.rise",), msg("rise of the arch")),
    (("head.right_height",), msg("height at the right side")),
    (("reveal",), msg("depth of the reveal")),
    (("frame",), msg("opening to glass")),
    (("stool.thickness",), msg("stool: thickness")),
    (("stool.horn",), msg("stool: past the casing")),
    (("stool.projection",), msg("stool: out from the wall")),
    (("apron",), msg("height of the apron")),
    (("sash.handle_out",), msg("handle out from the wall")),
)

_ACROSS: tuple[tuple[str, Message], ...] = (
    ("left", msg("from the left")),
    ("width", msg("width")),
    ("bottom", msg("over floor")),
    ("height", msg("height")),
    ("projection", msg("out")),
    ("clearance", msg("keep clear")),
)


def measuring_sheet(room: Room, wall: Wall, style: Style, paper: Page | None = None) -> Picture:
    """The measuring sheet of a wall, to be printed and filled in by hand.

    Parameters
    ----------
    room : Room
    wall : Wall
        Its openings and obstacles give the lines to fill in; nothing that was measured is shown.
    style : Style
    paper : Page or None
        None: the small sheet of the room's unit, the large one where the lines would be too narrow to write on.

    Returns
    -------
    Picture
        With a page, all in sheet coordinates.
    """
    facts = fields(wall)
    numbers = {(entry.ref, entry.field): entry.number for entry in facts}
    pages = pages_for(style.unit) if paper is None else (paper,)
    page, height = _choose(wall, facts, numbers, pages)
    place = inside(page)
    title = say(msg("Measuring sheet"), style)
    zones = _zones(wall, facts, page, height)
    drawing = zones.sketch
    records: list[Record] = [
        *furniture.frame(page),
        Line((drawing.right, drawing.bottom), (drawing.right, place.top), _RULE),
        *_heading(room, wall, style, drawing, title),
        *sketch(wall, facts, Inside(drawing.left + _PAD, drawing.bottom + 4.0, drawing.right - _PAD, place.top - 24.0)),
        *_wall_list(wall, facts, zones.wall, height, style),
        *_before(wall, numbers, zones.obstacles, height, style),
    ]
    if wall.openings:
        records.append(Line((place.left, drawing.bottom), (place.right, drawing.bottom), _RULE))
        records.extend(_openings(wall, numbers, zones.openings, height, style))
    name = " · ".join(part for part in (title, room.name, wall.name or wall.id) if part)
    count = len(facts)
    description = say(msg("A sketch of the wall with {count} numbered measurements to fill in.", count=count), style)
    return Picture((Group((), "sheet", title, tuple(records), "paper"),), 1.0, (0.0, 0.0), page, name, description)


def _choose(wall: Wall, facts: Sequence[TapeField], numbers: _Numbers, pages: Sequence[Page]) -> tuple[Page, float]:
    """The first sheet on which lines are far enough apart to write on, and how far apart they are, mm."""
    for page in pages:
        height = _ROW_MOST
        least = _ROW_LEAST if page is not pages[-1] else 2.6
        while height > least and not _fits(wall, facts, numbers, page, height):
            height -= 0.2
        if height > least or page is pages[-1]:
            return page, height
    raise AssertionError("no page")


def _fits(wall: Wall, facts: Sequence[TapeField], numbers: _Numbers, page: Page, height: float) -> bool:
    zones = _zones(wall, facts, page, height)
    rows = len(_used(wall, numbers))
    cell = (zones.openings.right - zones.openings.left - _LABEL) / max(1, len(wall.openings))
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
    step = min(44.0, (place.right - place.left - _PAD - 4.0 - _LABEL) / max(1, len(wall.openings)))
    used = place.left + _PAD + _LABEL + step * len(wall.openings) + 8.0
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


def _used(wall: Wall, numbers: _Numbers) -> list[tuple[tuple[str, ...], Message]]:
    """The rows that at least one opening has."""
    refs = [(wall.id, opening.id) for opening in wall.openings]
    return [row for row in _ROWS if any((ref, field) in numbers for ref in refs for field in row[0])]


def _heading(room: Room, wall: Wall, style: Style, place: Inside, title: str) -> list[Record]:
    width = place.right - place.left - 2 * _PAD
    x = place.left + _PAD
    names = ", ".join(part for part in (room.name, wall.name or wall.id) if part)
    unit = msg("inches and fractions") if style.unit == "in" else msg("millimetres")
    note = say(msg("in {unit}; heights from a level line; of three widths write the least", unit=unit), style)
    return [
        Text((x, place.top - 8.6), shorten(title, 5.2, width, "semibold"), 5.2, weight="semibold"),
        Text((x, place.top - 14.2), shorten(names, 3.8, width), 3.8),
        Text((x, place.top - 18.8), shorten(note, 2.8, width), 2.8, Ink.QUIET),
    ]


def _blank(number: int, left: float, right: float, y: float, size: float) -> list[Record]:
    """A number and the line to write its figure on."""
    return [
        Text((left, y), str(number), size, Ink.TEXT, "left", 0.0, "semibold"),
        Line((left + 5.6, y - 0.7), (right, y - 0.7), _BLANK),
    ]


def _wall_list(wall: Wall, facts: Sequence[TapeField], place: Inside, height: float, style: Style) -> list[Record]:
    size = min(3.1, height * 0.62)
    left, right = place.left + 4.0, place.right - 4.0
    y = place.top - 8.6
    records: list[Record] = [_title(say(msg("Wall"), style), left, y)]
    y -= 1.6
    blank = 24.0
    for entry in facts:
        if entry.ref == (wall.id,):
            y -= height
            records.append(_words(say(entry.name, style), left, y, size, right - blank - left - 2.0))
            records.extend(_blank(entry.number, right - blank, right, y, size))
    return records


def _before(wall: Wall, numbers: _Numbers, zones: Sequence[Inside], height: float, style: Style) -> list[Record]:
    """What stands before the wall, a few things side by side, zone after zone."""
    each = (len(_across(wall, numbers)) + 1.4) * height
    records: list[Record] = []
    rest = list(wall.obstacles)
    for zone in zones:
        count = int((zone.top - zone.bottom - 9.0) / each)
        if not rest or count < 1:
            continue
        y = zone.top - 7.6
        records.append(_title(say(msg("Before the wall"), style), zone.left, y))
        for _ in range(count):
            group, rest = rest[:_ABREAST], rest[_ABREAST:]
            if group:
                records.extend(_obstacles(wall, group, numbers, Inside(zone.left, 0.0, zone.right, y), height, style))
            y -= each
    return records


def _obstacles(
    wall: Wall, group: Sequence[Obstacle], numbers: _Numbers, place: Inside, height: float, style: Style
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
        records.append(_words(say(words, style), place.left, y, size, label - 1.0))
        for index, obstacle in enumerate(group):
            number = numbers.get(((wall.id, obstacle.id), field))
            x = place.left + label + index * step
            if number is not None:
                records.extend(_blank(number, x, x + step - 1.8, y, size))
            else:
                records.append(Text((x, y), "–", size, Ink.QUIET))
    return records


def _across(wall: Wall, numbers: _Numbers) -> list[tuple[str, Message]]:
    """The measurements that at least one obstacle asks for."""
    return [column for column in _ACROSS if any(((wall.id, item.id), column[0]) in numbers for item in wall.obstacles)]


def _words(text: str, left: float, y: float, size: float, width: float) -> Record:
    """What to measure, set smaller where a language needs more words."""
    size = max(2.4, min(size, size * width / max(text_width(text, size), 1e-6)))
    return Text((left, y), shorten(text, size, width), size)


def _title(text: str, left: float, y: float) -> Record:
    return Text((left, y), text, HEADING, Ink.TEXT, "left", 0.0, "semibold")


def _openings(wall: Wall, numbers: _Numbers, place: Inside, height: float, style: Style) -> list[Record]:
    left = place.left
    step = min(44.0, (place.right - left - _LABEL) / len(wall.openings))
    size = min(3.1, height * 0.62)
    y = place.top - 7.6
    records: list[Record] = [_title(say(msg("Openings"), style), left, y)]
    records.extend(_title(str(index + 1), left + _LABEL + index * step, y) for index in range(len(wall.openings)))
    y -= 1.4
    for names, words in _used(wall, numbers):
        y -= height
        records.append(_words(say(words, style), left, y, size, _LABEL - 2.0))
        for index, opening in enumerate(wall.openings):
            ref = (wall.id, opening.id)
            number = next((numbers[(ref, name)] for name in names if (ref, name) in numbers), None)
            x = left + _LABEL + index * step
            if number is not None:
                records.extend(_blank(number, x, x + step - 2.5, y, size))
            else:
                records.append(Text((x, y), "–", size, Ink.QUIET))
    return records
