"""What is remembered has a bound, and forgetting changes nothing."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings import memo as findings_memo
from elevation.findings.all_rules import find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Scene
from elevation.handles import remembered as handles_remembered
from elevation.handles.all_handles import handles
from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.setting_out import keeper, room_rods, whole
from elevation.setting_out.memo import Memo
from elevation.setting_out.whole import set_out, set_out_afresh
from elevation.trade import load_trade
from tests.findings.test_corner import two_walls


def test_a_memo_knows_calls_by_what_they_were_given() -> None:
    one, two = object(), object()
    memo = Memo(lambda *given: given)
    assert memo(one) == (one,)
    # The same beginning is not the same call.
    assert memo(one, two) == (one, two)
    assert memo(one) == (one,)
    assert memo.calls == 2
    memo(two)
    memo(one)
    assert memo.calls == 4  # the last two calls are kept, no more


@pytest.mark.parametrize("name", ["2-living-room", "9-bay", "6-hall"])
def test_what_is_forgotten_is_worked_out_again(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    room, trade = load_room(demo_rooms() / f"{name}.room.json"), load_trade()
    places = [(wall.id, scheme.id) for wall in room.walls for scheme in wall.schemes]
    wanted = {place: [one.key for one in handles(room, set_out(room, *place, trade), trade)] for place in places}
    for module, limit in (
        (keeper, "MOST_PARTS"), (whole, "MOST_WALLS"), (room_rods, "_MOST"), (findings_memo, "_MOST"),
        (handles_remembered, "MOST_TREATMENTS"),
    ):  # fmt: skip
        monkeypatch.setattr(module, limit, 0)
    whole._keepers.clear()
    room_rods._kept.clear()
    memo = TreatmentMemo(find_afresh)
    for place in places * 2:
        laid = set_out(room, *place, trade)
        assert laid == set_out_afresh(room, *place, trade)
        scene = Scene(room, laid, trade)
        assert find(scene, memo) == find(scene, TreatmentMemo(find_afresh))
        assert [one.key for one in handles(room, laid, trade)] == wanted[place]


def test_a_wall_without_a_scheme_has_no_rod_that_others_could_go_by() -> None:
    room = two_walls()
    bare = replace(room, walls=(room.walls[0], replace(room.walls[1], schemes=())))
    assert len(room_rods.rods_elsewhere(room, "w1", "s1", load_trade())) == 1
    assert room_rods.rods_elsewhere(bare, "w1", "s1", load_trade()) == ()
