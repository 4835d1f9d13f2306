"""What a rule tries where its findings are of the rarer kind: worked by hand from ``rooms.py``.

Each change that can be held makes another room, and no two of one finding say the same.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.carrying_words import carries
from elevation.findings.changing_tilt import tilt_to
from elevation.findings.model import Change
from elevation.room.edits import replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Hem, Packet, Room
from elevation.words import say
from tests.findings.rooms import (
    INCH,
    INCHES,
    LAYER,
    LEFT_BRACKET,
    RIGHT_BRACKET,
    RIGHT_PANEL,
    at,
    candidates,
    found,
    good_room,
    held,
    inch,
    mm,
    obstacle,
    rod,
    said,
    said_all,
    scene,
    the,
    with_obstacle,
)
from tests.findings.test_board import switch_under
from tests.findings.test_corner import casement, chest, round_corner, two_walls
from tests.findings.test_meeting_others import two_windows
from tests.findings.test_pelmet import dressed
from tests.findings.test_supports import tension, track


def tried(room: Room, rule: str, which: int = 0) -> list[str]:
    """The labels of what is tried, each of which is another edit; the possible ones change the room."""
    changes: list[Change] = candidates(room, rule, which)
    labels = said_all(changes)
    assert len(set(labels)) == len(labels), labels
    assert all(change.edit(room) != room for change in changes if change.is_possible)
    return labels


def tried_of(room: Room, rule: str, subject: tuple[str, ...]) -> list[str]:
    which = [one.subject for one in found(room, rule)].index(subject)
    return tried(room, rule, which)


@pytest.mark.parametrize(("first", "last", "side"), [(8, 2, 0), (2, 8, 1)])
def test_a_track_s_free_end_gets_a_fixing_at_that_end(first: float, last: float, side: int) -> None:
    room = track()
    left, *rest, right = layer_of(room, LAYER).brackets
    left, right = (
        replace(left, place=held("from-left-end", inch(first))),
        replace(right, place=held("from-right-end", inch(last))),
    )
    room = at(room, LAYER, brackets=(left, *rest, right))
    change = candidates(room, "track-fixings")[-1]
    support = scene(room).set_out.treatments[0].layers[0].support
    places = [one.x_mm for one in scene(change.edit(room)).set_out.treatments[0].layers[0].brackets]
    # 4 in at most, from memory: the new one stands half of that from the end.
    wanted = (support.left_mm + 2 * INCH, support.right_mm - 2 * INCH)[side]
    assert min(abs(x - wanted) for x in places) < INCH / 8


@pytest.mark.parametrize(("unit", "word"), [("in", " lb"), ("mm", " kg")])
def test_what_a_packet_holds_is_said_in_the_room_s_own_masses(unit: str, word: str) -> None:
    room = replace(tension(packet=Packet(inch(28), inch(48), 0.1)), unit=unit)
    assert word in said(the(room, "tension-rod").text)


def test_a_sash_round_the_corner_hits_the_rod() -> None:
    # The sash 90 in high, as high as the rod.
    room = casement(1, "left")
    tall = replace(room.walls[1].openings[0], height=inch(64))
    room = replace(room, walls=(room.walls[0], replace(room.walls[1], openings=(tall,))))
    room = rod(room, right=held("from-corner", inch(20)))
    labels = tried_of(room, "swing", LAYER)
    assert labels[0].startswith("Set the rod ")
    assert labels[0].endswith("above the casing")
    assert labels[-1].startswith("Set the right rod end ")
    assert tried_of(room, "swing", RIGHT_PANEL)[0].startswith("Set the ")


def test_a_rod_that_meets_none_round_the_corner_ends_before_it() -> None:
    for side in ("left", "right"):
        room = rod(two_walls() if side == "right" else good_room(), **{side: held("around-corner", inch(0))})
        (label,) = tried(room, "corner-bracket")
        assert label.endswith(f"before the {side} corner")
    far = at(round_corner(), RIGHT_BRACKET, place=held("from-right-end", inch(9)))
    assert len(tried(far, "corner-bracket")) == 2


def test_a_bracket_that_passes_the_wall_s_end_is_brought_back() -> None:
    # The plate is 1 1/2 in wide: at 1/2 in from the wall's end a quarter of an inch passes it.
    left = rod(good_room(), left=held("from-corner", inch(4)))
    left = at(left, LEFT_BRACKET, place=held("from-left-end", mm(-3.5 * INCH)))
    right = rod(good_room(), right=held("from-corner", inch(4)))
    right = at(right, RIGHT_BRACKET, place=held("from-right-end", mm(-3.5 * INCH)))
    for room, ref, x_mm in ((left, LEFT_BRACKET, 0.75 * INCH), (right, RIGHT_BRACKET, (144 - 0.75) * INCH)):
        which = [one.subject for one in found(room, "meets")].index(ref)
        moved = candidates(room, "meets", which)[0].edit(room)
        bracket = next(one for one in scene(moved).set_out.treatments[0].layers[0].brackets if one.ref == ref)
        assert bracket.x_mm == pytest.approx(x_mm, abs=INCH / 16)


def test_a_bracket_on_a_thing_goes_along_the_wall_or_in_height() -> None:
    thing = obstacle("picture", 45.5 * INCH, 82 * INCH, 30, 30)
    room = with_obstacle(good_room(), thing)
    labels = tried_of(room, "meets", LEFT_BRACKET)
    assert len(labels) >= 4


def test_two_rods_that_meet_are_told_from_either_side() -> None:
    beside = tried(two_windows(-30), "meets")
    assert any(label.startswith("Window 1: Set the right rod end") for label in beside)
    # The first rod goes on past the second one, 140 in beyond its window: less has to go at its left.
    past = replace_rod(two_windows(0), LAYER, right=held("beyond-opening", inch(140)))
    assert any(label.startswith("Window 1: Set the left rod end") for label in tried(past, "meets"))


def test_a_bracket_that_a_thing_round_the_corner_meets_goes_away_from_it() -> None:
    room = chest(1, 46)
    room = at(room, RIGHT_BRACKET, place=held("from-right-end", inch(0)))
    which = [one.subject for one in found(room, "meets")].index(RIGHT_BRACKET)
    moved = candidates(room, "meets", which)[0].edit(room)
    before, after = (
        next(one.x_mm for one in scene(each).set_out.treatments[0].layers[0].brackets if one.ref == RIGHT_BRACKET)
        for each in (room, moved)
    )
    assert after < before


def test_a_board_over_a_band_is_taken_away() -> None:
    assert tried(switch_under(52 * INCH), "over-box")[-1] == "Take the mounting board away"


def test_a_pelmet_ends_before_what_stands_on_its_right() -> None:
    # From 44 - 6 to 100 + 6 in: something across its right return.
    pelmet = scene(dressed()).set_out.treatments[0].pelmet
    assert pelmet is not None
    room = with_obstacle(dressed(), obstacle("picture", pelmet.right_mm - 10, 80 * INCH, 200, 50, 10))
    assert any(label.endswith("beyond the rod on the right") for label in tried(room, "pelmet-meets"))


def test_a_pelmet_before_a_heater_higher_than_its_edge_can_only_go() -> None:
    pelmet = scene(dressed()).set_out.treatments[0].pelmet
    assert pelmet is not None
    room = with_obstacle(dressed(), obstacle("flame-heater", 60 * INCH, pelmet.bottom_mm - 20, 500, 100, 60))
    assert tried(room, "pelmet-heat") == ["Take the pelmet away"]


def test_a_hem_nearer_the_floor_than_wished_may_be_wished_so() -> None:
    # 3 in clear were wished; a panel of 81 in leaves half of that.
    room = at(good_room(), LAYER, hem=Hem("clear", inch(3)))
    room = at(room, (*LAYER, "p1"), measured_length=inch(81))
    room = at(room, (*LAYER, "p2"), measured_length=inch(81))
    assert tried(room, "hem-low")[-1] == "Let the hem hang 1¹⁄₂ in clear of the floor"


def test_cloth_that_cannot_cross_a_fixing_is_given_another_heading_or_a_rod() -> None:
    room = at(track(), LAYER, heading="eyelets")
    labels = tried(room, "no-cross")
    assert any(label.startswith("Give the cloth another heading") for label in labels)
    assert "rod" in labels[-1]


def test_what_a_bracket_carries_is_said_as_far_as_it_is_known() -> None:
    bracket = scene(at(good_room(), (*LAYER, "p1"), weight_kg=2.0)).set_out.treatments[0].layers[0].brackets[0]
    assert "cannot be told" in say(carries(replace(bracket, load_n=None), "in"), INCHES)
    assert say(carries(replace(bracket, load_n=10.0, held=None), "in"), INCHES).endswith("at most")


def test_a_rod_leans_where_it_may_and_says_along_what() -> None:
    room = good_room()
    labels = said_all(tilt_to(scene(room), LAYER, "ceiling", "head", "split", "level"))
    assert [label.rpartition(" ")[2] for label in labels] == ["ceiling", "head", "ceiling"]
    # Round a corner rods are level.
    assert list(tilt_to(scene(round_corner()), LAYER, "ceiling")) == []
    assert replace_rod(room, LAYER, tilt="head") == next(iter(tilt_to(scene(room), LAYER, "head"))).edit(room)
