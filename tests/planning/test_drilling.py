"""Places of holes: from two sides, adding up, and the same in the mirror."""

from __future__ import annotations

import pytest

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling import drill_places, mirrored
from elevation.room.file import load_room
from elevation.setting_out.profile import height_at
from elevation.trade.tables import load_trade
from tests.strategies import random_room

TRADE = load_trade()
ROOMS = [load_room(path) for path in sorted(demo_rooms().glob("*.room.json"))] + [random_room(seed) for seed in range(60)]


def all_places(room):
    for wall in dress(room, TRADE).walls:
        for laid in wall.treatments:
            for place in drill_places(wall, laid, TRADE):
                yield wall, laid, place


def test_the_bedroom_by_hand():
    """Casing 48 to 96 + 3 in each side, brackets 44 and 100 in; ceiling 96 in; axis 86 1/4 in; holes 1 over, 2 under."""
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    (_, _, left), (_, _, right) = all_places(room)
    inch = 25.4
    assert [left.x_mm / inch, right.x_mm / inch] == pytest.approx([44.0, 100.0])
    assert [left.along.first_mm / inch, left.along.second_mm / inch] == pytest.approx([44.0, 100.0])
    assert [left.upright.first_mm / inch, left.upright.second_mm / inch] == pytest.approx([86.25, 9.75])
    assert left.beside[1] == pytest.approx(right.beside[1]) == pytest.approx(5.5 * inch)
    assert [y / inch for _, y in left.holes] == pytest.approx([87.25, 84.25])
    assert [x / inch for x, _ in left.holes] == pytest.approx([44.0, 44.0])


def test_both_sides_add_up_to_the_whole():
    seen = 0
    for room in ROOMS:
        for _, _, place in all_places(room):
            for sides in (place.along, place.upright):
                if sides.second_mm is not None:
                    assert sides.first_mm + sides.second_mm == pytest.approx(sides.whole_mm)
                    seen += 1
    assert seen > 200


def test_heights_are_over_the_floor_right_there():
    for room in ROOMS:
        for wall, laid, place in all_places(room):
            if laid.mount in ("wall", "ceiling"):
                assert place.upright.first_mm == pytest.approx(place.height_mm - height_at(wall.floor, place.x_mm))


def test_every_bracket_with_screws_has_one_sheet():
    for room in ROOMS:
        places = [place for _, _, place in all_places(room)]
        groups = mirrored(places)
        assert sorted(one.ref for pair in groups for one in pair) == sorted(place.ref for place in places)
        for pair in groups:
            assert len(pair) <= 2
            assert len({one.kit.id for one in pair}) == 1
