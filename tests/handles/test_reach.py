"""At the zoom of a whole wall on the screen, a slow drag comes past every place that it may stick to."""

from __future__ import annotations

import pytest

from elevation.handles.model import Handle
from elevation.handles.sticking import candidates, stick
from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.session.session import Session
from elevation.trade.tables import load_trade

TRADE = load_trade()
PX_MM = 3.8
"""A wall of 12 ft across 960 pixels."""
STEP_MM = 2.0
HUNG = ("rod-height", "rod-left", "rod-right", "bracket", "hem", "lead")


def _passed(handle: Handle, session: Session) -> set[float]:
    """Where a handle comes to rest while it is dragged slowly from end to end and back."""
    places = candidates(handle, session.scene())
    graduation_mm, steps = session.room.graduation_mm, int((handle.high_mm - handle.low_mm) / STEP_MM) + 1
    rested = set()
    for start_mm, step_mm in ((handle.low_mm, STEP_MM), (handle.high_mm, -STEP_MM)):
        held_on = None
        for step in range(steps + 1):
            held_on = stick(handle, start_mm + step * step_mm, places, graduation_mm, PX_MM, held_on, False)
            rested.add(round(held_on.value_mm, 3))
    return rested


@pytest.mark.parametrize("name", ["1-bedroom", "4-flat"])
def test_no_place_is_hidden_behind_another(name: str) -> None:
    session = Session(load_room(demo_rooms() / f"{name}.room.json"), TRADE)
    for found in session.handles():
        if found.axis not in HUNG:
            continue
        handle = found.bound(alone=False)
        wanted = {round(place.value_mm, 3) for place in candidates(handle, session.scene())}
        assert wanted <= _passed(handle, session), found.axis


def test_a_track_and_a_tension_rod_are_called_what_they_are() -> None:
    from elevation.words import Style, say
    from tests.handles.rooms import room, with_rod

    for kind, word in (("rod", "rod"), ("track", "track"), ("tension-rod", "tension rod")):
        session = Session(room(layer=with_rod(kind=kind)), TRADE)
        names = [say(one.name, Style()) for one in session.handles() if one.axis in ("rod-height", "rod-left", "rod-right")]
        assert len(names) == 3
        assert all(word in name for name in names)
        assert (kind == "tension-rod") is all("tension" in name for name in names)
