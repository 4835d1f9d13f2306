"""A drag never makes a room that its own file would refuse; the limit is where the file's is."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.room.edits import replace_at
from elevation.room.file import dump_room, load_bytes
from elevation.room.model import Head, Pelmet, Room, Station
from elevation.session.session import Session
from elevation.trade.tables import load_trade
from elevation.words import Style
from elevation.words.say import say
from tests.handles.rooms import INCH, SECOND, WINDOW, inch, room

TRADE = load_trade()

ARCHED = room(openings=(replace(WINDOW, head=Head("segmental", rise=inch(10))),))
GABLE = room(
    openings=(replace(SECOND, left=inch(60)),),
    covers=("w2",),
    ceiling=(Station(inch(0), inch(60)), Station(inch(75), inch(120)), Station(inch(150), inch(60))),
)
SLOPE = room(
    openings=(replace(SECOND, left=inch(60), width=inch(15), head=Head("raked", right_height=inch(58))),),
    covers=("w2",),
    ceiling=(Station(inch(0), inch(60)), Station(inch(75), inch(120))),
)

# A hall 20 ft high: nothing but the file's own limit keeps a pelmet from being built up to the ceiling.
HALL = replace_at(
    room(ceiling=(Station(inch(0), inch(240)),)),
    ("a", "s", "t1"),
    pelmet=Pelmet(depth=inch(10), above=inch(3), left=inch(4), right=inch(4), projection=inch(8)),
)

# room, axis, ref, pull towards, the limit in inches
CASES = {
    # An arc rises at most half its width: 10 in need 20.
    "arc-left": (ARCHED, "opening-left", ("a", "w1"), 1, 70.0),
    "arc-right": (ARCHED, "opening-right", ("a", "w1"), -1, 70.0),
    # The head stands at 76 in; the gable has that height at 20 and at 130 in.
    "gable-left": (GABLE, "opening-left", ("a", "w2"), -1, 20.0),
    "gable-right": (GABLE, "opening-right", ("a", "w2"), 1, 130.0),
    # From 60 to 80 in the gable is lowest at its left side, over 60: 60 + 60 * 60 / 75.
    # The rod is 88 in high; a pelmet stands at most 2 m over it.
    "pelmet-top": (HALL, "pelmet-top", ("a", "s", "t1"), 1, 88.0 + 2000.0 / 25.4),
    "gable-head": (GABLE, "opening-head", ("a", "w2"), 1, 108.0),
    # A head that runs parallel to the slope rises until it touches: 60 + 60 * 60 / 75 at its left side.
    "slope-head": (SLOPE, "opening-head", ("a", "w2"), 1, 108.0),
    # With its left foot at h the gable stands over 60 at h + (120 - h) * 60 / 75, and that is 76 at h = -100: no limit
    # but the floor's. The ridge may come down until the corner at 60 meets 76: 60 + (h - 60) * 60 / 75 = 76.
    "gable-ridge": (GABLE, "ceiling", ("a", "1"), -1, 80.0),
}


@pytest.mark.parametrize("name", CASES)
def test_the_limit_is_where_the_file_draws_it(name: str) -> None:
    start, axis, ref, towards, limit_in = CASES[name]
    session = Session(start, TRADE)
    gesture = session.press(session.handle(axis, ref))
    gesture.move((limit_in + towards * 30) * INCH, 1.0)
    # at the limit, within the graduation that still fits
    assert gesture.stuck.value_mm == pytest.approx(limit_in * INCH, abs=start.graduation_mm)
    assert (gesture.stuck.value_mm - limit_in * INCH) * towards <= 1e-3
    assert say(gesture.readout, Style()).endswith(("what is measured beside it", "the ceiling", "as far as it goes"))
    assert load_bytes(dump_room(session.room), "now") == session.room
    # just beyond it the file refuses
    handle = gesture.handle
    beyond: Room = handle.move(start, (limit_in * INCH) + towards * 2 * start.graduation_mm, False)
    with pytest.raises(BadInput):
        load_bytes(dump_room(beyond), "beyond")


def test_digits_beyond_the_limit_are_refused_with_what_can_be() -> None:
    session = Session(ARCHED, TRADE)
    gesture = session.press(session.handle("opening-right", ("a", "w1")))
    with pytest.raises(BadInput, match="from 20 in to 96 in"):
        gesture.type("19")
    gesture.type("20")
    assert session.room.walls[0].openings[0].width == inch(20)
