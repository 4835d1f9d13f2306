"""Which screw goes into which holes: by hand for the bedroom, and only drills of the table in any room."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling import drill_places
from elevation.planning.fixing_lines import fixing_lines
from elevation.room.edits import replace_at
from elevation.room.file import load_room
from elevation.trade.drills import drill_for
from elevation.trade.tables import load_trade
from elevation.units import Length
from elevation.words import Style, say
from tests.strategies import random_room

TRADE = load_trade()
BEDROOM = load_room(demo_rooms() / "1-bedroom.room.json")


def lines(room, wall=0, laid=0):
    out = dress(room, TRADE).walls[wall]
    one = out.treatments[laid]
    return [say(line, Style(plain=True)) for line in fixing_lines(one, drill_places(out, one, TRADE), TRADE, room.unit)]


def test_the_bedroom_s_screws_by_hand() -> None:
    """Both straps stand on studs: the usual screw no. 8 x 2 in, pilot 7/64 in (fixings.csv), no deeper than it is long."""
    assert lines(BEDROOM) == ["1, 2: wood screw no. 8 x 2 in; drill 7/64 in, depth stop at 2 in at most"]


@pytest.mark.parametrize(
    ("fixing", "said"),
    [
        ("brick-plug", "2: plug and screw in brick; drill and depth as its packet says"),
        ("threaded", "2: self-drilling anchor in board, driven without a hole"),
        ("toggle-1/8", "2: spring toggle 1/8 in; drill 3/8 in, as deep as its packet says"),
    ],
)
def test_each_kind_of_fixing_has_its_own_line(fixing: str, said: str) -> None:
    layer = dress(BEDROOM, TRADE).walls[0].treatments[0].layers[0]
    found = lines(replace_at(BEDROOM, layer.brackets[-1].ref, fixing=fixing))
    assert found == ["1: wood screw no. 8 x 2 in; drill 7/64 in, depth stop at 2 in at most", said]


@pytest.mark.parametrize("seed", range(6))
def test_every_mark_stands_in_at_most_one_line(seed: int) -> None:
    for out in dress(random_room(seed), TRADE).walls:
        for one in out.treatments:
            places = drill_places(out, one, TRADE)
            found = [
                say(line, Style(plain=True)).split(":")[0].split(", ") for line in fixing_lines(one, places, TRADE, "in")
            ]
            marks = [mark for line in found for mark in line]
            assert len(marks) == len(set(marks)) <= len(places)
            assert set(marks) <= {place.mark for place in places}


@pytest.mark.parametrize(
    ("fixing", "said"),
    [
        # 7/64 in is 2.78 mm: of half millimetres the largest that is no larger; 5/64 in (1.98 mm) is as good as 2 mm.
        ("screw-8", "drill 7/64 in (of your drills: 2.5 mm), depth stop at 51 mm at most"),
        ("screw-6", "drill 5/64 in (of your drills: 2 mm), depth stop at 41 mm at most"),
        # What is pushed through needs room: 3/8 in is 9.53 mm, which 9.5 mm is as good as.
        ("toggle-1/8", "drill 3/8 in (of your drills: 9.5 mm), as deep as its packet says"),
        ("screw-5", "drill 3 mm, depth stop at 60 mm at most"),
    ],
)
def test_a_room_in_millimetres_is_drilled_with_metric_drills(fixing: str, said: str) -> None:
    layer = dress(BEDROOM, TRADE).walls[0].treatments[0].layers[0]
    room = replace(BEDROOM, unit="mm", graduation=Length(1.0, "1 mm"))
    for bracket in layer.brackets:
        room = replace_at(room, bracket.ref, fixing=fixing)
    style = Style(unit="mm", graduation_mm=1.0, plain=True)
    out = dress(room, TRADE).walls[0]
    one = out.treatments[0]
    (line,) = [say(line, style) for line in fixing_lines(one, drill_places(out, one, TRADE), TRADE, room.unit)]
    assert line.partition("; ")[2] == said


@pytest.mark.parametrize(
    ("hole_mm", "is_pilot", "found"),
    [
        (3.05, True, "mm-3"),  # just what counts as the same
        (2.95, True, "mm-3"),
        (2.94, True, "mm-2.5"),
        (3.05, False, "mm-3"),
        (3.06, False, "mm-3.5"),
        (0.9, True, None),
        (16.1, False, None),
    ],
)
def test_the_drill_on_the_safe_side(hole_mm: float, is_pilot: bool, found: str | None) -> None:
    drill = drill_for(hole_mm, is_pilot=is_pilot, market="mm", same_mm=0.05, drills=TRADE.drills.values())
    assert (None if drill is None else drill.id) == found
