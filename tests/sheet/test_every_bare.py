"""Every kind of sheet of walls that say little: it is drawn on a page, or it says in one sentence why not."""

from __future__ import annotations

import contextlib

import pytest
from msgspec.structs import replace

from elevation.errors import Missing
from elevation.planning.dressed import dress
from elevation.room.model import Hem, Room
from elevation.sheet.every import every_sheet
from elevation.trade.tables import load_trade
from tests.findings.rooms import LAYER, at, good_room, inch, panels
from tests.setting_out.test_passing import one_way

TRADE = load_trade()
ROOMS = {
    "bare": good_room(schemes=()),
    "blank": good_room(schemes=(), openings=()),
    "unmeasured": good_room(width=None, ceiling=()),
    "no panel": at(good_room(), LAYER, panels=()),
    "no bracket": at(good_room(), LAYER, brackets=()),
    "a panel to come": at(good_room(), LAYER, hem=Hem("panel")),
    "a label": panels(good_room(), label_length=inch(84)),
    "uncased": at(good_room(), ("w1", "o1"), casing=None, frame=None),
    "round a corner": one_way(),
}


@pytest.mark.parametrize("name", ROOMS)
def test_every_sheet(name: str) -> None:
    room: Room = replace(ROOMS[name], name="")
    drawn = 0
    for kind in every_sheet():
        with contextlib.suppress(Missing):
            for page in kind.make([dress(room, TRADE)], TRADE, None):
                assert page.page is not None
                assert page.groups
                drawn += 1
    assert drawn >= 3
