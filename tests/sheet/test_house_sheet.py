"""The house sheet: nothing leaves its pages, every opening's number is on it, walls stand at one scale."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.house_schedule import house_schedule
from elevation.room.file import load_room
from elevation.sheet.paths import bounds
from elevation.sheet.records import Fill, Ink
from elevation.sheet.work.lists import house_pages
from elevation.trade.tables import load_trade
from tests.sheet.pages import check_inside, texts
from tests.strategies import random_room

TRADE = load_trade()
DEMOS = [load_room(path) for path in sorted(demo_rooms().glob("*.room.json"))]


@pytest.mark.parametrize("language", ["en", "de"])
def test_the_demo_rooms_as_one_house(language: str) -> None:
    rooms = [dress(replace(room, language=language), TRADE) for room in DEMOS]
    pages = house_pages(rooms, TRADE)
    check_inside(pages)
    said = [text.text for text in texts(pages)]
    numbers = house_schedule(rooms, TRADE).numbers.values()
    # On a plate over its opening, and in the table (there perhaps beside others).
    plates = [text.text for text in texts(pages) if text.ink == "#ffffff"]
    assert sorted(map(int, plates)) == sorted(numbers)
    assert any("House sheet" in text for text in said) is (language == "en")
    for room in DEMOS:
        assert any(room.name in text for text in said)


@pytest.mark.parametrize("seed", range(12))
def test_no_text_leaves_the_page(seed: int) -> None:
    check_inside(house_pages([dress(random_room(seed), TRADE), dress(random_room(seed + 700), TRADE)], TRADE))


def test_openings_stand_apart_as_at_the_wall() -> None:
    """Middles of the plates of the hall's openings, measured back from the page, against the set-out, at one scale."""
    hall = dress(next(room for room in DEMOS if room.name == "Assembly hall"), TRADE)
    plates = [
        bounds(record.steps)
        for page in house_pages([hall], TRADE)
        for group in page.groups
        for record in group.records
        if isinstance(record, Fill) and record.paint == Ink.TEXT
    ]
    middles = sorted((left + right) / 2 for left, _, right, _ in plates)
    openings = hall.walls[0].openings
    real = [(opening.left_mm + opening.right_mm) / 2 for opening in openings]
    assert len(middles) == len(real)
    scale = (real[-1] - real[0]) / (middles[-1] - middles[0])
    assert scale == pytest.approx(round(scale), abs=1e-6)
    for middle, place in zip(middles, real, strict=True):
        assert middle - middles[0] == pytest.approx((place - real[0]) / scale, abs=0.01)
