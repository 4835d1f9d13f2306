"""Handles that are remembered are those that would be made anew, and a drag makes only its own treatment's."""

from __future__ import annotations

import random

import pytest

from elevation.errors import ElevationError
from elevation.handles.all_handles import handles
from elevation.handles.model import Handle
from elevation.handles.remembered import HANGING, STANDING, HandleKeeper
from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.session.session import Session
from elevation.setting_out import whole
from elevation.setting_out.whole import set_out
from elevation.trade.tables import load_trade
from elevation.words import Style, say
from tests.bench.rooms import windows
from tests.strategies import random_room

TRADE = load_trade()


@pytest.fixture(autouse=True)
def _nothing_remembered(monkeypatch: pytest.MonkeyPatch) -> None:
    """Equal rooms that other tests set out are not taken for these."""
    monkeypatch.setattr(whole, "_keepers", {})


def said(handle: Handle) -> tuple[object, ...]:
    """All that a handle is, but for what it would do."""
    return tuple(getattr(handle, name) for name in Handle.__struct_fields__ if not callable(getattr(handle, name)))


def same_moves(one: Handle, other: Handle, room: Room) -> bool:
    """Whether both would do the same."""
    low_mm, high_mm = one.bound(False).low_mm, one.bound(False).high_mm
    target_mm = min(max(one.value_mm + 7.0, low_mm), high_mm)
    return one.shown_mm(target_mm) == other.shown_mm(target_mm) and one.move(room, target_mm, False) == other.move(
        room, target_mm, False
    )


@pytest.mark.parametrize("seed", range(24))
def test_remembered_handles_are_those_made_anew(seed: int) -> None:
    choose, room = random.Random(seed), random_room(seed)
    session, keeper = Session(room, TRADE), HandleKeeper()
    for _ in range(8):
        out = set_out(room, session.wall_id, session.scheme_id, TRADE)
        kept, fresh = keeper.handles(room, out, TRADE), handles(room, out, TRADE)
        assert list(map(said, kept)) == list(map(said, fresh))
        one = choose.choice(range(len(kept)))
        assert same_moves(kept[one], fresh[one], room)
        handle = kept[one].bound(False)
        to_mm = choose.uniform(max(handle.low_mm, handle.value_mm - 200), min(handle.high_mm, handle.value_mm + 200))
        try:
            moved = handle.move(room, to_mm, choose.random() < 0.5)
            set_out(moved, session.wall_id, session.scheme_id, TRADE)
        except ElevationError:
            continue
        # Now and then back to the room before, as Esc and the curve of the glass do.
        room = moved if choose.random() < 0.8 else room


@pytest.mark.parametrize("seed", range(12))
def test_some_handles_are_those_of_all(seed: int) -> None:
    choose, room = random.Random(seed), random_room(seed)
    session = Session(room, TRADE)
    every = session.handles()
    keys = [handle.key for handle in choose.sample(every, min(len(every), 5))]
    some = session.some_handles(keys)
    assert some == {handle.key: handle for handle in every if handle.key in keys}
    fresh = Session(room, TRADE)
    assert {key: said(handle) for key, handle in fresh.some_handles(keys).items()} == {
        key: said(handle) for key, handle in some.items()
    }


def test_some_handles_of_one_treatment_make_no_other_s() -> None:
    session = Session(windows(4), TRADE)
    session.some_handles([("rod-height", ("w1", "s1", "t3", "l1"))])
    assert session.pipeline.handle_keeper.runs == {("w1", "s1", "t3"): 1}


def test_handles_of_two_layers_are_told_apart_by_name() -> None:
    """The list of handles and a screen reader have nothing but the name; one layer alone needs no more than its window."""
    guest = load_room(demo_rooms() / "7-guest-room.room.json")
    passage = next(wall for wall in guest.walls if wall.id == "passage")
    names = {}
    for scheme in passage.schemes:
        made = handles(guest, set_out(guest, passage.id, scheme.id, TRADE), TRADE)
        names[len(scheme.treatments[0].layers)] = [say(handle.name, Style()) for handle in made]
    assert len(set(names[2])) == len(names[2])
    assert {"projection, Window 1, front layer", "projection, Window 1, back layer"} <= set(names[2])
    assert "projection, Window 1" in names[1]


def test_every_family_hangs_or_stands() -> None:
    assert not {id(family) for family in HANGING} & {id(family) for family in STANDING}


@pytest.mark.parametrize("axis", ["rod-height", "rod-right", "bracket", "hem", "lead"])
def test_dragging_makes_no_other_treatment_s_handles(axis: str) -> None:
    session = Session(windows(4), TRADE)
    handle = next(one for one in session.handles() if one.axis == axis)
    gesture = session.press(handle)
    # The first move parts this room from equal ones that were set out before.
    gesture.move(handle.value_mm + 6.0, 0.01, free=True)
    before = session.handles()
    runs = dict(session.pipeline.handle_keeper.runs)
    for step in range(2, 7):
        gesture.move(handle.value_mm + 6.0 * step, 0.01, free=True)
        now = session.some_handles({one.key for one in before})
        for one in before:
            if one.ref[:3] != handle.ref[:3]:
                assert now[one.key] is one
    gesture.cancel()
    made = {ref: count - runs[ref] for ref, count in session.pipeline.handle_keeper.runs.items()}
    assert made.pop(handle.ref[:3]) >= 4
    assert set(made.values()) == {0}


def test_moving_an_opening_makes_no_handles_of_rods_over_others() -> None:
    session = Session(windows(4), TRADE)
    handle = next(one for one in session.handles() if one.key == ("opening-right", ("w1", "o2")))
    gesture = session.press(handle)
    gesture.move(handle.value_mm + 20.0, 0.01, free=True)
    session.handles()
    runs = dict(session.pipeline.handle_keeper.runs)
    gesture.move(handle.value_mm + 40.0, 0.01, free=True)
    session.handles()
    made = {ref[2]: count - runs[ref] for ref, count in session.pipeline.handle_keeper.runs.items()}
    assert made == {"t1": 0, "t2": 1, "t3": 0, "t4": 0}
    gesture.cancel()
