"""Places that handles stick to because of a rule: there the rule is just kept, a little beyond it is broken.

The handle is put there in the room and the rule asked: figures come from the set-out, not from the rule's own words.
"""

from __future__ import annotations

import pytest

from elevation.findings.all_rules import stickings
from elevation.findings.model import Sticking
from elevation.room.model import Hem, Room, Sash
from tests.findings import test_escape as way_out
from tests.findings import test_limits as limits
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    LEFT_PANEL,
    OPENING,
    RIGHT_BRACKET,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    mm,
    obstacle,
    panels,
    reach,
    rod,
    said,
    scene,
    with_obstacle,
)

BEYOND = 2.0
"""mm past the place: more than a graduation of 1/16 in."""


def places(room: Room, axis: str, words: str) -> list[Sticking]:
    now = scene(room)
    every = stickings(now, now.set_out.treatments[0])
    return [one for one in every if one.axis == axis and words in said(one.reason)]


def height(room: Room, value: float) -> Room:
    return rod(room, height=held("above-floor", mm(value)))


def left_end(room: Room, value: float) -> Room:
    return rod(room, left=held("from-corner", mm(value)))


def right_end(room: Room, value: float) -> Room:
    return rod(room, right=held("from-corner", mm(144 * INCH - value)))


def bracket(room: Room, value: float) -> Room:
    return at(room, LEFT_BRACKET, place=held("from-wall-left", mm(value)))


def hem(room: Room, value: float) -> Room:
    return at(room, LAYER, hem=Hem("length", mm(82.5 * INCH - value)))


TALL = ceiling(good_room(), inch(120))
SWINGING = at(good_room(), OPENING, sash=Sash("casement-in", "left"), casing=inch(0))
OVER_CASING = bracket(good_room(), 60 * INCH)
HEATED = with_obstacle(hem(good_room(), 1000.0), obstacle("hot-water-radiator", 1400, 0, 800, 600, 80))

CASES = [
    # axis, words of the reason, rule, room, how the handle is put, the place by hand in mm, the bad side
    ("rod-height", "3 in above the casing", "rod-low", TALL, height, 83.25 * INCH, -1),
    ("rod-height", "12 in above the casing", "rod-high", TALL, height, 92.25 * INCH, 1),
    ("rod-height", "3 in below the ceiling", "rod-under-ceiling", good_room(), height, 93 * INCH, 1),
    ("rod-height", "cloth begins level", "cloth-below-head", good_room(), height, 82 * INCH, -1),
    ("rod-height", "just clear the casing", "on-casing", OVER_CASING, height, 82.75 * INCH, -1),
    ("rod-height", "when it opens", "swing", SWINGING, height, 78 * INCH + 0.461 * INCH, -1),
    ("rod-height", "way out", "escape", way_out.bedroom(height=inch(24)), height, 54.461 * INCH, -1),
    # Brackets stand 2 in in from the rod's ends.
    ("rod-left", "the least to draw clear", "reach-short", good_room(), left_end, 46 * INCH, 1),
    ("rod-right", "the least to draw clear", "reach-short", good_room(), right_end, 98 * INCH, -1),
    ("bracket", "the least to draw clear", "reach-short", good_room(), bracket, 48 * INCH, 1),
    ("rod-left", "the most that is usual", "reach-long", good_room(), left_end, 40 * INCH, -1),
    ("rod-right", "the most that is usual", "reach-long", good_room(), right_end, 104 * INCH, 1),
    ("bracket", "the most that is usual", "reach-long", good_room(), bracket, 42 * INCH, -1),
    # Finials of 2 3/4 in.
    ("rod-left", "neighbouring wall", "meets", good_room(), left_end, 2.75 * INCH, -1),
    ("rod-right", "neighbouring wall", "meets", good_room(), right_end, 141.25 * INCH, 1),
    ("bracket", "beside the casing", "on-casing", rod(good_room(), height=held("above-casing", inch(0))), bracket,
     51 * INCH, 1),
    ("hem", "hot-water radiator", "heat", HEATED, hem, 600 + INCH, -1),
]  # fmt: skip


@pytest.mark.parametrize(
    ("axis", "words", "rule", "room", "put", "value", "bad"), CASES, ids=[f"{one[2]}-{one[0]}" for one in CASES]
)
def test_a_place_is_where_its_rule_is_just_kept(axis, words, rule, room, put, value, bad) -> None:
    found_places = places(room, axis, words)
    near = [one for one in found_places if one.value_mm == pytest.approx(value, abs=1e-6)]
    assert near, [(said(one.reason), one.value_mm) for one in found_places]
    assert near[0].breaks is None

    def of_rule(now: Room) -> set[tuple[str, ...]]:
        return {one.subject for one in found(now, rule)}

    kept = of_rule(put(room, value))
    past = of_rule(put(room, value + bad * BEYOND))
    assert past - kept, rule


def test_hard_limits_come_before_rules() -> None:
    ranks = {words: places(room, axis, words)[0].rank for axis, words, _, room, _, _, _ in CASES}
    assert {ranks["neighbouring wall"], ranks["just clear the casing"], ranks["when it opens"]} == {0}
    assert ranks["3 in above the casing"] == 1


def test_a_gap_that_holds_no_rod_offers_its_middle_and_says_what_it_breaks() -> None:
    # Casing top at 80 1/4 in, 5 in to the ceiling: the middle at 82 3/4 in.
    (one,) = places(limits.gap(5 * INCH), "rod-height", "splits the gap")
    assert one.value_mm == pytest.approx(82.75 * INCH)
    assert one.breaks == "no-room"


def test_where_the_open_cloth_just_clears_the_glass() -> None:
    # Stack 4 1/2 in from 1/2 in outside the bracket: bracket 4 in beyond the glass, rod end 2 in further.
    room = reach(good_room(), inch(3))
    (left,) = places(room, "rod-left", "clears the glass")
    (right,) = places(room, "rod-right", "clears the glass")
    assert left.value_mm == pytest.approx(48 * INCH)
    assert right.value_mm == pytest.approx(96 * INCH)
    assert left.ref == LAYER


def test_where_panels_in_hand_hang_as_wished() -> None:
    # 84 in long: top of the cloth at 84 1/2 in, the axis 1 3/4 in over it.
    room = panels(good_room(), label_length=inch(84))
    (one,) = places(room, "rod-height", "panels in hand")
    assert one.value_mm == pytest.approx(86.25 * INCH)


def test_under_the_joint_of_a_rod() -> None:
    # 56 in of 30 in pieces: the joint in the middle, at 72 in.
    ones = places(rod(good_room(), stock=inch(30)), "bracket", "joint")
    assert [one.value_mm for one in ones] == [pytest.approx(72 * INCH)] * 2
    assert {one.ref for one in ones} == {LEFT_BRACKET, RIGHT_BRACKET}


def test_stickings_of_a_hem_belong_to_the_panel() -> None:
    assert places(HEATED, "hem", "radiator")[0].ref[:4] == LEFT_PANEL[:4]
