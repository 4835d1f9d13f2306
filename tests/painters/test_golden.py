"""Sheets as they were looked at and kept: an elevation, by day and in the evening, a section, pictures to post, schemes."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

import pytest
from msgspec.structs import replace

from elevation import places
from elevation.commands.draw import picture_of
from elevation.commands.sections import section_pictures
from elevation.output.painters.png import to_png
from elevation.planning.comparing import compare
from elevation.planning.dressed import dress
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.sheet.paper import TO_POST
from elevation.sheet.post import post_pages
from elevation.sheet.records import Fill, Line, Picture
from elevation.sheet.schemes import scheme_sheet
from elevation.trade import load_trade
from tests.painters import golden

TRADE = load_trade()
DPI = 48


def demo(name: str) -> Room:
    return load_room(next(places.demo_rooms().glob(f"*{name}.room.json")))


def elevation(name: str, **given: object) -> Picture:
    room = demo(name)
    return picture_of(room, room.walls[0], room.walls[0].schemes[0], TRADE, **given)  # type: ignore[arg-type]


def section() -> Picture:
    room = demo("bedroom")
    return section_pictures(room, room.walls[0], room.walls[0].schemes[0], TRADE)[0]


def posted(page: str, **given: object) -> Picture:
    room = demo("living-room")
    dressed = dress(room, TRADE, room.walls[0].id, room.walls[0].schemes[1].id)
    return post_pages([dressed], TRADE, TO_POST[page], **given)[0]  # type: ignore[arg-type]


def schemes() -> Picture:
    room = demo("bedroom")
    wall = room.walls[0]
    return scheme_sheet(compare(room, wall.id, [None, *(one.id for one in wall.schemes)], TRADE), TRADE)


PICTURES: dict[str, Callable[[], Picture]] = {
    "elevation": partial(elevation, "bedroom"),
    "elevation-in-the-evening": partial(elevation, "flat", light="evening"),
    "section": section,
    "post-1-1": partial(posted, "1:1"),
    "post-before-and-after-by-day": partial(posted, "4:5", before=True, light="day"),
    "schemes": schemes,
}


@pytest.fixture(autouse=True)
def one_day(monkeypatch: pytest.MonkeyPatch) -> None:
    # The first of March 2026, as reproducible builds say a day.
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1772323200")


@pytest.mark.parametrize("name", PICTURES)
def test_it_is_as_it_was_when_it_was_looked_at(name, qapp, tmp_path):
    golden.check(name, to_png(PICTURES[name](), DPI), tmp_path)


def test_a_stroke_a_tenth_of_a_millimetre_wider_and_a_shade_are_seen(qapp):
    picture = elevation("bedroom")
    kept = golden.opened(to_png(picture, DPI))
    assert golden.differing(golden.opened(to_png(picture, DPI)), kept) == 0

    def changed(kind: type, **change: object) -> Picture:
        """The same with the first record of that kind changed."""
        groups = list(picture.groups)
        for at, group in enumerate(groups):
            records = list(group.records)
            first = next((place for place, record in enumerate(records) if isinstance(record, kind)), None)
            if first is not None and group.frame == "wall":
                now = {name: value(records[first]) if callable(value) else value for name, value in change.items()}
                records[first] = replace(records[first], **now)
                groups[at] = replace(group, records=tuple(records))
                return replace(picture, groups=tuple(groups))
        raise AssertionError(kind)

    wider = changed(Line, pen=lambda line: replace(line.pen, width=line.pen.width + 0.1))
    assert golden.differing(golden.opened(to_png(wider, DPI)), kept) > 0
    shaded = changed(Fill, paint="#e0d8ca")
    assert golden.differing(golden.opened(to_png(shaded, DPI)), kept) > 100
