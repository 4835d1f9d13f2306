"""The blank measuring sheet."""

from __future__ import annotations

from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.room.model import Room, Wall
from elevation.room.style import style_for
from elevation.sheet.furniture import inside
from elevation.sheet.measuring import measuring_sheet
from elevation.sheet.paper import A3, A4
from elevation.sheet.records import Line, Picture, Text
from elevation.sheet.tape_order import fields
from elevation.sheet.type_metrics import text_width
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
        assert len(blanks) == len(fields(wall))


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
