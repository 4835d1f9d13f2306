"""The buying list as pages: nothing leaves them, every line is on them, in either language."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import dress
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.sheet.work.buying import buying_sheet
from elevation.sheet.work.page import Sheet
from elevation.trade.tables import load_trade
from tests.sheet.pages import check_inside, texts
from tests.strategies import random_room

TRADE = load_trade()


def pages_of(room):
    dressed = (dress(room, TRADE),)
    cuts = cut_list(rod_pieces(dressed, TRADE), TRADE.saws["hacksaw"], TRADE, seconds=0.0)
    found = buying_list(dressed, cuts, TRADE)
    return found, buying_sheet(found, Sheet(room.name, style_for(room), date="2026-03-01"))


@pytest.mark.parametrize("seed", range(40))
def test_no_text_leaves_the_page(seed):
    _, pages = pages_of(random_room(seed))
    check_inside(pages)


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("path", sorted(demo_rooms().glob("*.room.json")), ids=lambda path: path.name.split(".")[0])
def test_every_demo_room_has_a_box_for_every_line(path, language):
    found, pages = pages_of(replace(load_room(path), language=language))
    check_inside(pages)
    boxes = [
        record
        for page in pages
        for group in page.groups
        for record in group.records
        if type(record).__name__ == "Polyline" and record.closed
    ]
    assert len(boxes) == len(found.lines)
    said = " ".join(text.text for text in texts(pages))
    assert ("Buying list" in said) is (language == "en")
