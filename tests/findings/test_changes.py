"""Candidate changes before anything is tried: which figure that is held becomes which, by hand from ``rooms.py``."""

from __future__ import annotations

import pytest

from elevation.findings.all_rules import rule_of
from elevation.findings.changing import bracket_to, plain_ends, rod_end, rod_ends, rod_height, rod_projection
from elevation.findings.model import Change
from elevation.room.model import Held, Room
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    RIGHT_BRACKET,
    at,
    found,
    good_room,
    held,
    inch,
    mm,
    reach,
    rod,
    said,
    scene,
)


def said_all(changes: object) -> list[str]:
    return [said(change.label) for change in changes]  # type: ignore[attr-defined]


def candidates(room: Room, rule: str, which: int = 0) -> list[Change]:
    return list(rule_of(rule).changes(scene(room), found(room, rule)[which]))


def test_a_plate_on_the_casing_goes_up_out_or_along() -> None:
    # The casing's outer edges are at 51 3/4 and 92 1/4 in, its top at 80 1/4 in. With the ends 4 in beyond the opening the
    # brackets' centres are 2 in beyond it, at 52 and 92 in, their plates 3/4 in to either side; the centre line 2 in above
    # the casing takes the plates down to 79 3/4 in.
    room = rod(reach(good_room(), inch(4)), height=held("above-casing", inch(2)))
    for which, side in enumerate(("left", "right")):
        labels = [label for label in said_all(candidates(room, "on-casing", which)) if "plate" not in label]
        assert labels[:4] == [
            "Set the rod 2¹⁄₂ in above the casing",
            "Set both rod ends 5 in beyond the opening",
            f"Set the {side} rod end 5 in beyond the opening",
            f"Move the {side} end bracket 1 in to the {side}",
        ]


def test_of_two_ways_off_the_casing_the_nearer_comes_first() -> None:
    # A middle bracket at 55 in: 4 in to the left (51), 38 in to the right, which is farther than a bracket is moved.
    room = rod(good_room(), height=held("above-casing", inch(2)))
    room = at(room, LEFT_BRACKET, place=held("from-wall-left", inch(55)))
    moves = [label for label in said_all(candidates(room, "on-casing")) if label.startswith("Move")]
    assert moves == ["Move the left end bracket 4 in to the left"]


HEIGHTS = [
    # The centre line is at 84 1/4 in, the ceiling at 96 in, the head at 78 in; wanted is 1 1/8 in more.
    (held("above-casing", inch(4)), "Set the rod 5¹⁄₈ in above the casing"),
    (held("above-head", inch(6.25)), "Set the rod 7³⁄₈ in above the opening"),
    (held("below-ceiling", inch(11.75)), "Set the rod 10⁵⁄₈ in below the ceiling"),
    (held("above-floor", inch(84.25)), "Set the rod 85³⁄₈ in above the floor"),
]


@pytest.mark.parametrize(("how", "label"), HEIGHTS, ids=[how.hold for how, _ in HEIGHTS])
def test_a_rod_is_raised_by_the_figure_that_is_held(how: Held, label: str) -> None:
    here = scene(rod(good_room(), height=how))
    assert said_all(rod_height(here, LAYER, 85.375 * INCH)) == [label]
    # To the graduation it is at already: nothing to do.
    assert said_all(rod_height(here, LAYER, 84.25 * INCH)) == []


def test_a_rod_goes_to_the_first_graduation_beyond_and_slack_may_leave_it_short() -> None:
    here = scene(good_room())
    half, nearly = INCH / 32, 84.25 * INCH + INCH / 32
    assert said_all(rod_height(here, LAYER, nearly)) == ["Set the rod 4¹⁄₁₆ in above the casing"]
    assert said_all(rod_height(here, LAYER, nearly, half)) == []
    assert said_all(rod_height(here, LAYER, nearly + 0.01, half)) == ["Set the rod 4¹⁄₁₆ in above the casing"]
    low = 84.25 * INCH - INCH / 32
    assert said_all(rod_height(here, LAYER, low)) == ["Set the rod 3¹⁵⁄₁₆ in above the casing"]
    assert said_all(rod_height(here, LAYER, low, half)) == []


ENDS = [
    # The rod runs from 44 to 100 in: 10 in beyond the opening, 7 3/4 in beyond the casing, 44 in from either corner.
    (held("beyond-opening", inch(10)), "11 in beyond the opening"),
    (held("beyond-casing", inch(7.75)), "8³⁄₄ in beyond the casing"),
    (held("from-corner", inch(44)), "43 in from the corner"),
]


@pytest.mark.parametrize(("how", "place"), ENDS, ids=[how.hold for how, _ in ENDS])
def test_ends_move_outward_by_the_figure_that_is_held(how: Held, place: str) -> None:
    here = scene(rod(good_room(), left=how, right=how))
    assert said_all(rod_end(here, LAYER, "left", INCH)) == [f"Set the left rod end {place}"]
    assert said_all(rod_end(here, LAYER, "right", INCH)) == [f"Set the right rod end {place}"]
    assert said_all(rod_ends(here, LAYER, INCH)) == [f"Set both rod ends {place}"]


def test_a_held_length_takes_both_moves_where_both_ends_move() -> None:
    here = scene(rod(good_room(), right=held("rod-length", inch(56))))
    assert said_all(rod_ends(here, LAYER, INCH)) == [
        "Set the rod ends: left 11 in beyond the opening, right at a rod length of 58 in"
    ]
    assert said_all(rod_end(here, LAYER, "right", INCH)) == ["Set the right rod end at a rod length of 57 in"]


def test_nothing_is_moved_so_far_in_that_no_rod_is_left() -> None:
    # The rod is 56 in long.
    here = scene(good_room())
    assert list(rod_end(here, LAYER, "left", -56.01 * INCH)) == []
    assert list(rod_end(here, LAYER, "left", -55.9 * INCH)) != []
    assert list(rod_ends(here, LAYER, -28.01 * INCH)) == []
    assert list(rod_ends(here, LAYER, -27.9 * INCH)) != []
    # What would be a negative reach is only tried, never offered.
    assert [change.is_possible for change in rod_end(here, LAYER, "left", -10 * INCH)] == [True]
    assert [change.is_possible for change in rod_end(here, LAYER, "left", -11 * INCH)] == [False]
    assert [change.is_possible for change in rod_ends(here, LAYER, -11 * INCH)] == [False]


def test_one_impossible_figure_of_a_pair_is_enough() -> None:
    here = scene(rod(good_room(), left=held("beyond-opening", inch(4))))
    assert [change.is_possible for change in rod_ends(here, LAYER, -5 * INCH)] == [False]
    assert [change.is_possible for change in rod_ends(here, LAYER, -4 * INCH)] == [True]


@pytest.mark.parametrize(
    ("ref", "wanted", "label"),
    [
        # Brackets at 46 and 98 in, held from the rod's ends.
        (LEFT_BRACKET, 45, "Move the left end bracket 1 in to the left"),
        (LEFT_BRACKET, 48, "Move the left end bracket 2 in to the right"),
        (RIGHT_BRACKET, 97, "Move the right end bracket 1 in to the left"),
        (RIGHT_BRACKET, 100, "Move the right end bracket 2 in to the right"),
    ],
)
def test_a_bracket_moves_the_way_it_says(ref, wanted, label) -> None:
    here = scene(good_room())
    (change,) = bracket_to(here, ref, wanted * INCH)
    assert said(change.label) == label
    moved = scene(change.edit(here.room)).set_out.treatments[0].layers[0].brackets
    assert wanted * INCH == pytest.approx(next(one.x_mm for one in moved if one.ref == ref))


def test_a_bracket_is_moved_a_foot_and_no_farther() -> None:
    here = scene(good_room())
    assert list(bracket_to(here, LEFT_BRACKET, 58 * INCH)) != []
    assert list(bracket_to(here, LEFT_BRACKET, 58.1 * INCH)) == []
    assert list(bracket_to(here, LEFT_BRACKET, 46 * INCH)) == []


def test_a_rod_is_held_out_only_farther_and_never_past_ten_inches() -> None:
    here = scene(rod(good_room(), projection=mm(76.2)))
    assert said_all(rod_projection(here, LAYER, 3.5 * INCH)) == ["Hold the rod 3¹⁄₂ in out from the wall"]
    assert said_all(rod_projection(here, LAYER, 10 * INCH)) == ["Hold the rod 10 in out from the wall"]
    assert said_all(rod_projection(here, LAYER, 2.9 * INCH)) == []
    assert said_all(rod_projection(here, LAYER, 10.01 * INCH)) == []


def test_only_finials_longer_than_a_cap_are_taken_off() -> None:
    ends = scene(good_room()).trade.ends
    caps = [row for row in ends.values() if row.shape == "cap"]
    shortest = min(row.length_mm for row in caps)
    for row in ends.values():
        here = scene(rod(good_room(), ends=row.id))
        offered = said_all(plain_ends(here, LAYER))
        is_longer = row.shape not in ("none", "cap") and row.length_mm > shortest
        assert offered == (["End the rod in flat caps"] if is_longer else [])
