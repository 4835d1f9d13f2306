"""On walls of every kind: a handle comes to rest where it says, and what results can be saved."""

from __future__ import annotations

import random

import pytest

from elevation.handles.all_handles import handles
from elevation.handles.possible import within_possible
from elevation.handles.sticking import candidates
from elevation.room.file import dump_room, load_bytes
from elevation.session.session import Session
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.tables import load_trade
from tests.strategies import random_room

TRADE = load_trade()


@pytest.mark.parametrize("seed", range(24))
def test_every_place_is_reached_and_can_be_kept(seed: int) -> None:
    room, choose = random_room(seed), random.Random(seed)
    session = Session(room, TRADE)
    half_mm = room.graduation_mm / 2 + 1e-6
    found = session.handles()
    for handle in choose.sample(found, min(len(found), 8)):
        alone = choose.random() < 0.5
        bound = within_possible(handle.bound(alone), room, alone)
        assert bound.low_mm <= bound.value_mm <= bound.high_mm
        assert bound.from_shown(bound.shown_mm(bound.value_mm)) == pytest.approx(bound.value_mm)
        places = candidates(bound, session.scene(), alone=alone)
        for place in choose.sample(places, min(len(places), 3)):
            moved = handle.move(room, place.value_mm, alone)
            out = set_out_afresh(moved, session.wall_id, session.scheme_id, TRADE)
            landed = {other.key: other for other in handles(moved, out, TRADE)}
            # A panel that is squeezed to its stack is open, within half a graduation of where it was let go.
            slack_mm = half_mm if handle.axis == "lead" else 1e-5
            # A leading edge may close its panel against its stop, where it has no way left to go.
            if handle.key in landed or handle.axis != "lead":
                assert landed[handle.key].value_mm == pytest.approx(place.value_mm, abs=slack_mm), handle.axis
            assert load_bytes(dump_room(moved), "moved") == moved
