"""On walls of every kind: a handle comes to rest where it says, and what results can be saved."""

from __future__ import annotations

import random

import pytest

from elevation.handles.all_handles import handles
from elevation.handles.model import Handle
from elevation.handles.possible import within_possible
from elevation.handles.sticking import candidates
from elevation.room.file import dump_room, load_bytes
from elevation.room.model import Ref
from elevation.session.session import Session
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.tables import load_trade
from tests.strategies import random_room

TRADE = load_trade()


def _is_there(handle: Handle, wanted_mm: float, landed: dict[tuple[str, Ref], Handle], out: SetOut, half_mm: float) -> bool:
    now = landed.get(handle.key)
    if handle.axis != "lead":
        return now is not None and abs(now.value_mm - wanted_mm) <= 1e-5
    # A panel that closes against its stop has no way left to go. One squeezed to its stack is open, within half a
    # graduation of where it was let go. Two that were measured wider than their rod press against each other.
    if now is None or abs(now.value_mm - wanted_mm) <= half_mm:
        return True
    panels = [panel for treatment in out.treatments for layer in treatment.layers for panel in layer.panels]
    edges = [
        edge for panel in panels if panel.ref != handle.ref and panel.ref[:4] == handle.ref[:4] for edge in panel.drawn
    ]
    return any(abs(edge_mm - now.value_mm) <= 1e-6 for edge_mm in edges)


@pytest.mark.parametrize("seed", range(16))
def test_every_place_is_reached_and_can_be_kept(seed: int) -> None:
    room, choose = random_room(seed), random.Random(seed)
    session = Session(room, TRADE)
    half_mm = room.graduation_mm / 2 + 1e-6
    found = session.handles()
    # What the section shows is drawn apart: two of those to eight of the elevation's.
    on_wall = [handle for handle in found if handle.sheet == "elevation"]
    out_from_wall = [handle for handle in found if handle.sheet == "section"]
    some = choose.sample(on_wall, min(len(on_wall), 8))
    for handle in [*some, *out_from_wall[:2]]:
        alone = choose.random() < 0.5
        bound = within_possible(handle.bound(alone), room, alone)
        assert bound.low_mm <= bound.value_mm <= bound.high_mm
        assert bound.from_shown(bound.shown_mm(bound.value_mm)) == pytest.approx(bound.value_mm)
        places = candidates(bound, session.scene(), alone=alone)
        for place in choose.sample(places, min(len(places), 3)):
            moved = handle.move(room, place.value_mm, alone)
            out = set_out_afresh(moved, session.wall_id, session.scheme_id, TRADE)
            landed = {other.key: other for other in handles(moved, out, TRADE)}
            assert _is_there(handle, place.value_mm, landed, out, half_mm), (handle.axis, place)
            assert load_bytes(dump_room(moved), "moved") == moved
