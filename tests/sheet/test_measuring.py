"""The measuring sheet, blank and filled."""

from __future__ import annotations

from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.room.model import Readings, Room, Wall
from elevation.room.style import style_for
from elevation.sheet.furniture import inside
from elevation.sheet.measuring import measuring_sheet, measuring_sheets
from elevation.sheet.paper import A3, A4
from elevation.sheet.records import Line, Picture, Text
from elevation.sheet.tape_order import fields, reading_fields
from elevation.sheet.type_metrics import text_width
from elevation.units import Length
from elevation.words import Style
from tests.strategies import random_walls


def _texts(picture: Picture) -> list[Text]:
    return [record for group in picture.groups for record in group.records if isinstance(record, Text)]


def _walls() -> list[tuple[Room, Wall]]:
    demo = [
        (room, wall)
        for path in sorted(demo_rooms().glob("*.room.json"))
        for room in [load_room(path)]
        for wall in room.walls
    ]
    return [*demo, *random_walls(80, 4000)]


def test_every_measurement_of_the_form_has_its_number_and_a_line_to_write_on() -> None:
    for room, wall in _walls():
        picture = measuring_sheet(room, wall, style_for(room))
        numbers = {record.text for record in _texts(picture) if record.weight == "semibold"}
        assert {str(entry.number) for entry in fields(wall)} <= numbers
        blanks = [
            record
            for group in picture.groups
            for record in group.records
            if isinstance(record, Line) and record.pen.ink == "quiet"
        ]
        # A line for each figure, and one for each reading that it may be chosen from.
        assert len(blanks) == len(fields(wall)) + len(reading_fields(wall))


def test_nothing_leaves_the_frame_and_lines_are_wide_enough_for_a_pencil() -> None:
    for room, wall in _walls():
        picture = measuring_sheet(room, wall, style_for(room))
        assert picture.page is not None
        place = inside(picture.page)
        for record in _texts(picture):
            width = text_width(record.text, record.height, record.weight)
            left = record.at[0] - (width / 2 if record.align == "middle" else 0.0)
            assert place.left - 1e-6 <= left, record.text
            assert left + width <= place.right + 1e-6, record.text
            assert place.bottom <= record.at[1] <= place.top, record.text
        blanks = [
            record
            for group in picture.groups
            for record in group.records
            if isinstance(record, Line) and record.pen.ink == "quiet"
        ]
        assert all(line.b[0] - line.a[0] >= 7.0 for line in blanks)


def test_no_figure_that_was_measured_is_given_away() -> None:
    room = load_room(next(demo_rooms().glob("*bedroom*")))
    wall = room.walls[0]
    texts = {record.text for record in _texts(measuring_sheet(room, wall, style_for(room)))}
    assert wall.width is not None
    assert "144" not in texts
    assert wall.width.text not in texts


def test_a_wall_of_which_nothing_is_known_has_a_sheet() -> None:
    picture = measuring_sheet(Room(), Wall("w1"), Style("mm", 1.0))
    assert picture.page is A4
    assert measuring_sheet(Room(), Wall("w1"), Style("mm", 1.0), A3).page is A3


def test_filled_it_says_all_that_was_measured_and_leaves_the_rest_blank() -> None:
    room = load_room(next(demo_rooms().glob("*bedroom*")))
    wall = room.walls[0]
    read = Readings(width_top=Length(911.225, "35 7/8 in"), diagonal_falling=Length(1524.0, "60 in"))
    wall = replace(wall, openings=(replace(wall.openings[0], taken=read), *wall.openings[1:]))
    blank = [record.text for record in _texts(measuring_sheet(room, wall, style_for(room)))]
    filled = [record.text for record in _texts(measuring_sheet(room, wall, style_for(room), is_filled=True))]
    more = list(filled)
    for text in blank:
        if text in more:
            more.remove(text)
    assert {"144", "35⁷⁄₈", "60"} <= set(more)
    figures = [text for text in more if not any(letter.isalpha() for letter in text)]
    # One figure for each length of the wall, its openings and obstacles that was measured, no more.
    assert len(figures) == _measured(wall)


def _measured(wall: Wall) -> int:
    count = 0
    things = {(wall.id,): wall, **{(wall.id, part.id): part for part in (*wall.openings, *wall.obstacles)}}
    for entry in (*fields(wall), *reading_fields(wall)):
        thing: object = things[entry.ref]
        for step in entry.field.split("."):
            if step.isdigit():
                thing = thing[int(step)] if int(step) < len(thing) else None  # type: ignore[index, arg-type]
            elif thing is not None:
                thing = getattr(thing, step)
        count += isinstance(thing, Length)
    return count


def test_a_filled_sheet_stays_in_its_frame() -> None:
    for room, wall in _walls()[:60]:
        picture = measuring_sheet(room, wall, style_for(room), is_filled=True)
        assert picture.page is not None
        place = inside(picture.page)
        for record in _texts(picture):
            width = text_width(record.text, record.height, record.weight)
            left = record.at[0] - (width / 2 if record.align == "middle" else 0.0)
            assert place.left - 1e-6 <= left
            assert left + width <= place.right + 1e-6


def test_a_room_has_a_sheet_for_each_of_its_walls() -> None:
    room = load_room(next(demo_rooms().glob("*bedroom*")))
    room = replace(room, walls=(*room.walls, replace(room.walls[0], id="other", name="Other wall")))
    sheets = measuring_sheets(room, style_for(room))
    assert len(sheets) == len(room.walls)
    assert "Other wall" in sheets[-1].title


def test_readings_have_the_number_of_the_figure_they_lead_to() -> None:
    for _, wall in _walls()[:40]:
        numbers = {(entry.ref, entry.field): entry.number for entry in fields(wall)}
        for entry in reading_fields(wall):
            used = "width" if entry.field.startswith("taken.width") else "height"
            assert entry.number == numbers[entry.ref, used]
        labels = [entry.label for entry in reading_fields(wall)]
        assert len(set(labels)) == len(labels)
