"""Clearances on the wall: one figure never lies on another."""

from __future__ import annotations

import pytest

from elevation.places import demo_rooms
from elevation.room.edits import replace_rod
from elevation.room.file import load_room
from elevation.room.hung import Held
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.records import Text
from elevation.trade.tables import load_trade
from elevation.units import parse_length
from elevation.window.clearance_marks import clearance_groups

TRADE = load_trade()


@pytest.mark.parametrize(("back", "figures"), [(None, ["3⁵⁄₁₆−"]), ("6 in", ["3⁵⁄₁₆−"]), ("9 in", ["3⁵⁄₁₆−", "8⁵⁄₈+"])])
def test_two_layers_nearly_at_one_height_have_one_figure_to_the_ceiling(back: str | None, figures: list[str]) -> None:
    """The guest room's passage, by hand: both axes 3 3/4 in under the ceiling, tubes of 0.922 and, behind, 0.706 in outside
    (conduit); 3.75 - 0.461 = 3.289 is less than 3.75 - 0.353. At 1:26 a figure is 3.4 in high: 2 1/4 in lower the back one
    has no room yet, 5 1/4 in lower it has: 9 - 0.353 = 8.647.
    """
    room = load_room(demo_rooms() / "7-guest-room.room.json")
    scheme = room.walls[2].schemes[0].id
    out = set_out(room, "passage", scheme, TRADE)
    if back is not None:
        below = Held("below-ceiling", parse_length(back))
        out = set_out(replace_rod(room, out.treatments[0].layers[1].ref, height=below), "passage", scheme, TRADE)
    (group,) = clearance_groups(out, style_for(room), 26.0)
    found = [record.text for record in group.records if isinstance(record, Text)]
    # Each that stands also tells what it leaves free at the right.
    assert [text for text in found if text[0] in "2358" and text != "31¹⁄₄"] == figures
    assert found.count("31¹⁄₄") == len(figures)
