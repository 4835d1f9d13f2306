"""Which treatments carry a stop."""

from __future__ import annotations

from msgspec.structs import replace

from elevation.planning.stops import stopped
from tests.findings import test_meeting_others as others
from tests.findings import test_plates as plates
from tests.findings.rooms import LAYER, at, found, good_room, layer


def test_a_clean_room_has_no_stop() -> None:
    assert stopped(found(good_room())) == {}


def test_a_stop_of_a_bracket_belongs_to_its_treatment() -> None:
    stops = stopped(found(plates.plate_above(-5.0)))
    assert list(stops) == [("w1", "s1", "t1")]
    assert [one.rule for one in stops["w1", "s1", "t1"]] == ["on-casing"]


def test_only_the_treatment_that_has_it() -> None:
    room = at(others.two_windows(10.0), ("w1", "s1", "t2", "l1"), brackets=layer().brackets[:1])
    assert list(stopped(found(room))) == [("w1", "s1", "t2")]
    assert LAYER[:3] not in stopped(found(room))


def test_a_stop_of_the_treatment_itself_counts_and_one_of_an_opening_forbids_nothing() -> None:
    (stop,) = found(plates.plate_above(-5.0), "on-casing")
    own, opening = replace(stop, subject=LAYER[:3]), replace(stop, subject=("w1", "o1"))
    assert stopped((opening, own, stop)) == {LAYER[:3]: (own, stop)}
    assert stopped((opening,)) == {}
