"""Handle by reason: dragging there sticks, the readout names it, and the file holds the exact figure."""

from __future__ import annotations

import pytest

from elevation.handles.model import Handle
from elevation.handles.sticking import candidates
from elevation.places import demo_rooms
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.session.gesture import Gesture
from elevation.session.session import Session
from elevation.trade.tables import load_trade
from elevation.units import Length
from elevation.words import Style
from elevation.words.say import say
from tests.handles.case import Case
from tests.handles.cases_cloth import CLOTH
from tests.handles.cases_corners import CORNERS
from tests.handles.cases_inside import INSIDE
from tests.handles.cases_mounts import MOUNTS
from tests.handles.cases_rods import RODS
from tests.handles.cases_section import SECTION
from tests.handles.cases_wall import WALL
from tests.handles.rooms import INCH

TRADE = load_trade()
PX_MM = 0.5
"""8 pixels are 4 mm: near enough to tell the places of these rooms apart."""
CASES = (*RODS, *CLOTH, *WALL, *INSIDE, *MOUNTS, *SECTION, *CORNERS)


def _where(handle: Handle, at_in: float | None, words: str) -> float:
    if at_in is not None:
        return at_in * INCH
    # A hard limit: pull far past the end that the words name.
    return handle.low_mm - 500.0 if words == say(handle.low_why, Style()) else handle.high_mm + 500.0


def _drag(case: Case) -> tuple[Session, Gesture, float]:
    """Press the handle and pull it to 2 pixels beside the place, or far past a hard limit."""
    session = Session(case.start, TRADE)
    handle = session.handle(case.axis, case.ref)
    gesture = session.press(handle, case.alone)
    wanted_mm = _where(gesture.handle, case.at_in, case.words)
    beside_mm = 0.0 if case.at_in is None else 1.0 if wanted_mm < handle.value_mm else -1.0
    gesture.move(wanted_mm + beside_mm, PX_MM)
    return session, gesture, wanted_mm


@pytest.mark.parametrize("case", CASES, ids=[case.id for case in CASES])
def test_dragging_there_sticks_names_it_and_keeps_it(case: Case) -> None:
    session, gesture, wanted_mm = _drag(case)
    if case.at_in is not None:
        assert gesture.stuck.value_mm == pytest.approx(wanted_mm, abs=1e-6)
    readout = say(gesture.readout, Style())
    assert any(words in readout for words in case.words.split("|")), readout
    assert gesture.stuck.reason is not None
    gesture.release()
    # A panel squeezed to its stack is open, and its stack is no whole number of graduations.
    # The angle of a corner is the roundest one that the same figure of the tape says.
    slack_mm = {"lead": INCH / 32 + 1e-6, "corner-left": INCH / 16}.get(case.axis, 1e-6)
    landed_mm = session.handle(case.axis, case.ref).value_mm
    assert landed_mm == pytest.approx(gesture.stuck.value_mm, abs=slack_mm)
    kept = load_bytes(dump_room(session.committed), "kept")
    assert kept == session.committed
    if case.read is not None:
        found = case.read(kept)
        assert (found.text if isinstance(found, Length) else found) == case.text
    session.undo()
    assert session.committed is case.start


def _offered() -> set[tuple[str, str]]:
    """Every handle and reason that the demo rooms offer."""
    found = set()
    for path in sorted(demo_rooms().glob("*.room.json")):
        session = Session(load_room(path), TRADE)
        for wall in session.room.walls:
            session.switch_wall(wall.id)
            for handle in session.handles():
                for alone in (False, True):
                    places = candidates(handle.bound(alone), session.scene(), alone=alone)
                    found.update((handle.axis, place.reason.template) for place in places)
    return found


def test_the_table_has_a_case_for_every_reason_that_the_demo_rooms_offer() -> None:
    covered = set()
    for case in CASES:
        _, gesture, _ = _drag(case)
        assert gesture.stuck.reason is not None
        covered.add((case.axis, gesture.stuck.reason.template))
    # Both ends of a rod, and both sides of an opening, need one case between them.
    alike = {
        "rod-right": "rod-left",
        "pelmet-right": "pelmet-left",
        "corner-right": "corner-left",
        "opening-right": "opening-left",
    }
    covered = {(alike.get(axis, axis), reason) for axis, reason in covered}
    missing = {(alike.get(axis, axis), reason) for axis, reason in _offered()} - covered
    assert sorted(missing) == []
