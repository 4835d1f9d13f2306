"""The schedule of windows: every opening once, totals by hand for one room and added up for several."""

from __future__ import annotations

import pytest
from msgspec.structs import fields

from elevation.output.tables import to_csv
from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.house_schedule import HouseSchedule, house_schedule
from elevation.planning.house_table import HEADS, schedule_rows
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.trade.tables import load_trade
from elevation.words import Style
from tests.strategies import random_room

TRADE = load_trade()
DEMOS = [load_room(path) for path in sorted(demo_rooms().glob("*.room.json"))]


def scheduled(*rooms: Room) -> HouseSchedule:
    return house_schedule([dress(room, TRADE) for room in rooms], TRADE)


def test_the_bedroom_by_hand() -> None:
    """One window, one rod of 60 in on two straps, two panels of one piece with ten rings each; one piece of advice."""
    whole = scheduled(DEMOS[0]).totals
    assert (whole.rooms, whole.walls, whole.openings, whole.bare, whole.treatments) == (1, 1, 1, 0, 1)
    assert (whole.rods, whole.brackets, whole.panels, whole.rings) == (1, 2, 2, 20)
    assert whole.rod_mm == pytest.approx(60 * 25.4)
    assert (whole.cloth_mm, whole.cloth_unknown) == (0.0, 0)


def test_totals_of_a_house_are_those_of_its_rooms() -> None:
    house = scheduled(*DEMOS).totals
    alone = [scheduled(room).totals for room in DEMOS]
    for field in fields(type(house)):
        parts = [getattr(one, field.name) for one in alone]
        if field.name == "found":
            assert house.found == tuple(sum(part[at] for part in parts) for at in range(3))
        else:
            assert getattr(house, field.name) == pytest.approx(sum(parts)), field.name


@pytest.mark.parametrize("seed", range(12))
def test_every_opening_has_one_number_and_stands_in_the_table(seed: int) -> None:
    rooms = (random_room(seed), random_room(seed + 500))
    found = scheduled(*rooms)
    count = sum(len(wall.openings) for room in rooms for wall in room.walls)
    assert sorted(found.numbers.values()) == list(range(1, count + 1))
    assert {number for row in found.rows for number in row.numbers} == set(found.numbers.values())
    bare = [row for row in found.rows if row.laid is None]
    covered = {number for row in found.rows if row.laid is not None for number in row.numbers}
    assert {number for row in bare for number in row.numbers} == set(found.numbers.values()) - covered
    assert len(bare) == found.totals.bare


@pytest.mark.parametrize("language", ["en", "de"])
def test_its_table_has_numbers_in_cells_of_their_own(language: str) -> None:
    dressed = [dress(room, TRADE) for room in DEMOS]
    rows = list(schedule_rows(dressed, house_schedule(dressed, TRADE), Style(plain=True, language=language)))
    assert {len(row) for row in rows} == {len(HEADS)}
    first = rows[1]
    # The bedroom's window is 38 by 57 in, its rod 60 in long.
    assert (first[0], first[5], first[6], first[7], first[8]) == ("1", "in", "38", "57", "60")
    for row in rows[1:]:
        for cell in (row[0], *row[6:]):
            assert cell == "" or float(cell) >= 0
    assert b"'" not in to_csv(rows).replace(b"'s", b"")
