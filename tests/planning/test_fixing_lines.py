"""Which screw goes into which holes: by hand for the bedroom, and only drills of the table in any room."""

from __future__ import annotations

import pytest

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling import drill_places
from elevation.planning.fixing_lines import fixing_lines
from elevation.room.edits import replace_at
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from elevation.words import Style, say
from tests.strategies import random_room

TRADE = load_trade()
BEDROOM = load_room(demo_rooms() / "1-bedroom.room.json")


def lines(room, wall=0, laid=0):
    out = dress(room, TRADE).walls[wall]
    one = out.treatments[laid]
    return [say(line, Style(plain=True)) for line in fixing_lines(one, drill_places(out, one, TRADE), TRADE)]


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
            found = [say(line, Style(plain=True)).split(":")[0].split(", ") for line in fixing_lines(one, places, TRADE)]
            marks = [mark for line in found for mark in line]
            assert len(marks) == len(set(marks)) <= len(places)
            assert set(marks) <= {place.mark for place in places}
