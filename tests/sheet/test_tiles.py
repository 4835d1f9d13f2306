"""Drilling tiles: the way from the casing's corner to every hole, measured back over sheets laid on each other."""

from __future__ import annotations

from itertools import pairwise

import pytest
from msgspec.structs import replace

from elevation.commands.sheets import ON_REQUEST
from elevation.errors import Missing
from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling import drill_places
from elevation.planning.tiles import MOST_SHEETS, OVERLAP_MM, tiles_of, tilings
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.sheet.paths import bounds
from elevation.sheet.records import Ink, Line, Path
from elevation.sheet.work.page import Sheet
from elevation.sheet.work.tiles import tile_sheets
from elevation.sheet.work.whole import tile_pages
from elevation.trade.tables import load_trade
from tests.sheet.pages import check_inside
from tests.strategies import random_room

TRADE = load_trade()


@pytest.mark.parametrize(("width", "count"), [(100, 1), (180, 1), (180.1, 2), (340, 2), (340.1, 3), (500, 3), (500.1, 4)])
def test_how_many_sheets_by_hand(width: float, count: int) -> None:
    """Sheets of 180 mm that lie 20 mm over each other: 180, 340, 500 ..."""
    tiles = tiles_of((0.0, 0.0, width, 100.0), 180.0, 240.0)
    assert [name for name, _ in tiles] == [f"{chr(65 + at)}1" for at in range(count)]
    assert tiles[-1][1][2] >= width
    for (_, one), (_, other) in pairwise(tiles):
        assert one[2] - other[0] == pytest.approx(OVERLAP_MM)
    back = tiles_of((0.0, 0.0, width, 100.0), 180.0, 240.0, from_right=True)
    assert len(back) == count
    assert back[-1][1][2] == pytest.approx(width)
    assert back[0][1][0] <= 1e-9


def measured(pages, tiles):
    """Crosses and casing's corner in the drawing's own coordinates: sheets laid over each other by their names."""
    holes, corners = set(), set()
    for page, (_, box) in zip(pages, tiles, strict=True):
        records = page.groups[0].records
        move = (box[0] - 15.0, box[1] - 30.0)
        for one in records:
            if isinstance(one, Path):
                left, bottom, right, top = bounds(one.steps)
                holes.add((round((left + right) / 2 + move[0], 3), round((bottom + top) / 2 + move[1], 3)))
        casing = [one for one in records if isinstance(one, Line) and one.pen.ink == Ink.ACCENT]
        level = [one for one in casing if one.a[1] == one.b[1]]
        upright = [one for one in casing if one.a[0] == one.b[0]]
        if level and upright:
            corners.add((round(upright[0].a[0] + move[0], 3), round(level[0].a[1] + move[1], 3)))
    return holes, corners


@pytest.mark.parametrize("name", ["1-bedroom", "4-flat", "5-kitchen", "2-living-room"])
def test_every_hole_stands_as_far_from_the_corner_as_at_the_wall(name: str) -> None:
    room = load_room(demo_rooms() / f"{name}.room.json")
    tried = 0
    for wall in dress(room, TRADE).walls:
        for laid in wall.treatments:
            for tiling in tilings(laid, drill_places(wall, laid, TRADE)):
                pages = tile_sheets([tiling], Sheet("x", style_for(room), date=""))
                check_inside(pages)
                page = pages[0].page
                assert page is not None
                tiles = tiles_of(
                    tiling.box,
                    page.width_mm - 30.0,
                    page.height_mm - 76.0,
                    from_right=tiling.place.x_mm > tiling.corner[0],
                )
                if len(tiles) > MOST_SHEETS:
                    continue
                holes, corners = measured(pages, tiles)
                assert holes == {(round(x, 3), round(y, 3)) for x, y in tiling.place.holes}
                assert corners == {(round(tiling.corner[0], 3), round(tiling.corner[1], 3))}
                tried += 1
    assert tried >= 2


def pages_of(room):
    """The room's tiles; none where no bracket stands beside a level head."""
    try:
        return tile_pages([dress(room, TRADE)], TRADE)
    except Missing:
        return ()


@pytest.mark.parametrize("language", ["en", "de"])
def test_demo_rooms_and_what_is_not_asked_for(language: str) -> None:
    assert "tiles" in ON_REQUEST
    made = {}
    for path in sorted(demo_rooms().glob("*.room.json")):
        made[path.name] = pages_of(replace(load_room(path), language=language))
        check_inside(made[path.name])
    assert made["1-bedroom.room.json"]
    # Nothing may be drilled there.
    assert not made["8-rented-room.room.json"]


@pytest.mark.parametrize("seed", range(6))
def test_no_text_leaves_the_page(seed: int) -> None:
    check_inside(pages_of(random_room(seed)))
