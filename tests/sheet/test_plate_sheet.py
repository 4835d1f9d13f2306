"""Drilling plates on paper: nothing leaves the pages, and the holes stand as the kit says."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import Missing
from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.plate import HOLE_MM, plates
from elevation.room.file import load_room
from elevation.sheet.paths import bounds
from elevation.sheet.records import Path
from elevation.sheet.work.lists import plate_pages
from elevation.trade.tables import load_trade
from tests.sheet.pages import check_inside
from tests.strategies import random_room

TRADE = load_trade()


def circles(pages):
    boxes = [bounds(one.steps) for page in pages for group in page.groups for one in group.records if isinstance(one, Path)]
    return [((a + c) / 2, (b + d) / 2) for a, b, c, d in boxes if c - a == pytest.approx(HOLE_MM)]


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("path", sorted(demo_rooms().glob("*.room.json")), ids=lambda path: path.name.split(".")[0])
def test_every_demo_room(path, language):
    dressed = dress(replace(load_room(path), language=language), TRADE)
    try:
        pages = plate_pages((dressed,), TRADE)
    except Missing:
        assert path.name.startswith("8-")  # no holes there
        return
    check_inside(pages)
    found = plates((dressed,), TRADE)
    spans = [max(plate.kit.holes_mm) - min(plate.kit.holes_mm) for plate in found]
    at = circles(pages)
    assert len(at) == sum(len(plate.holes) for plate in found)
    for plate, span in zip(found, spans, strict=True):
        own, at = at[: len(plate.holes)], at[len(plate.holes) :]
        axis = 0 if plate.on == "ceiling" else 1
        assert max(one[axis] for one in own) - min(one[axis] for one in own) == pytest.approx(span, abs=1e-6)


@pytest.mark.parametrize("seed", range(8))
def test_no_text_leaves_the_page(seed):
    try:
        check_inside(plate_pages((dress(random_room(seed), TRADE),), TRADE))
    except Missing:
        assert plates((dress(random_room(seed), TRADE),), TRADE) == ()
