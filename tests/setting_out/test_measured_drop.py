"""Her own rings, measured: where the cloth begins follows them and nothing else moves. Geometry, no source needed."""

import msgspec
import pytest

from elevation.room import edits
from elevation.room.file import dump_room, load_bytes
from elevation.setting_out.whole import set_out
from elevation.trade.tables import load_trade
from elevation.units import Length
from tests.bench.rooms import windows

LAYER = ("w1", "s1", "t1", "l1")


def _panel(room):
    return set_out(room, "w1", "s1", load_trade()).treatments[0].layers[0].panels[0]


@pytest.mark.parametrize("inches", [0, 1.75, 4])
def test_the_cloth_begins_as_far_below_the_rod_as_was_measured(inches):
    room = windows(1)
    measured = edits.replace_at(room, LAYER, drop=Length(inches * 25.4, f"{inches} in"))
    before, after = _panel(room), _panel(measured)
    assert after.heading_mm == pytest.approx(inches * 25.4)
    assert before.top_mm + before.heading_mm == pytest.approx(after.top_mm + after.heading_mm)
    assert after.hem == before.hem, "a hem held clear of the floor stays there"
    assert after.finished_length_mm - before.finished_length_mm == pytest.approx(after.top_mm - before.top_mm)


def test_it_is_kept_in_the_file():
    measured = edits.replace_at(windows(1), LAYER, drop=Length(44.45, "1 3/4 in"))
    back = load_bytes(dump_room(measured), "x")
    assert back.walls[0].schemes[0].treatments[0].layers[0].drop == Length(44.45, "1 3/4 in")


def test_a_negative_one_is_refused():
    bad = msgspec.structs.replace(windows(1).walls[0].schemes[0].treatments[0].layers[0], drop=Length(-25.4, "-1 in"))
    room = edits.replace_at(windows(1), ("w1", "s1", "t1"), layers=(bad,))
    with pytest.raises(Exception, match="drop"):
        load_bytes(dump_room(room), "x")
