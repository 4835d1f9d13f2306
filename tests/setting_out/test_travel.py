"""Travel between stops: worked cases by hand, in inches along the rod; common practice, no source."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from elevation.setting_out.model import BracketOut
from elevation.setting_out.travel import Mover, Way, ways_of


def bracket(x: float, bracket_id: str = "", *, passes: bool = False, half: float = 0.0) -> BracketOut:
    name = bracket_id or f"b{x:g}"
    return BracketOut(("a", "s", "t", "l", name), x, 90.0, False, passes, half, (x, 88.0, x, 92.0), "shop-strap")


def mover(parks="left", flat=54.0, stack=4.5, stationary=False, drawn=None) -> Mover:
    return Mover(parks, flat, stack, stationary, drawn)


def ways(panels, brackets, left=0.0, right=96.0, *, rings=True, outside=True, ring=0.0) -> list[Way]:
    return ways_of(panels, brackets, left, right, rings=rings, parks_outside=outside, ring_mm=ring)


def fullness(panel: Mover, way: Way) -> float:
    return panel.flat_mm / (way.closed[1] - way.closed[0])


ENDS = (bracket(0.0), bracket(96.0))


def test_a_pair_meets_in_the_middle() -> None:
    left, right = ways([mover(), mover("right")], ENDS)
    assert left.closed == (0.0, 48.0)
    assert right.closed == (48.0, 96.0)
    assert (left.side, right.side) == ("left", "right")
    assert left.open == (0.0, 4.5)
    assert right.open == (91.5, 96.0)


def test_unlike_panels_meet_where_their_fullness_is_equal() -> None:
    pair = [mover(flat=108), mover("right", flat=54)]
    left, right = ways(pair, ENDS)
    assert left.closed[1] == right.closed[0] == pytest.approx(64.0)
    assert fullness(pair[0], left) == pytest.approx(fullness(pair[1], right))


def test_a_middle_bracket_8_in_off_centre_of_96_gives_fullness_1_7_and_2_4() -> None:
    # 96 in of flat cloth a side: 96 / 56 = 1.71, 96 / 40 = 2.40.
    pair = [mover(flat=96), mover("right", flat=96)]
    left, right = ways(pair, (bracket(0), bracket(56), bracket(96)))
    assert fullness(pair[0], left) == pytest.approx(1.714, abs=0.001)
    assert fullness(pair[1], right) == pytest.approx(2.4)
    assert left.closed[1] == right.closed[0] == 56.0
    assert left.cannot_pass == right.cannot_pass == ()


def test_rings_that_pass_the_middle_bracket_meet_in_the_middle() -> None:
    pair = [mover(flat=96), mover("right", flat=96)]
    brackets = (bracket(0), bracket(56, passes=True), bracket(96))
    left, right = ways(pair, brackets)
    assert left.closed[1] == right.closed[0] == 48.0
    # Eyelets, tabs and pockets never pass a middle bracket.
    left, right = ways(pair, brackets, rings=False)
    assert left.closed[1] == right.closed[0] == 56.0


def test_two_middle_brackets_leave_a_gap_and_name_what_is_in_the_way() -> None:
    left, right = ways([mover(), mover("right")], (bracket(0), bracket(30), bracket(60), bracket(96)))
    assert (left.closed, right.closed) == ((0.0, 30.0), (60.0, 96.0))
    assert [ref[-1] for ref in left.cannot_pass] == ["b30"]
    assert [ref[-1] for ref in right.cannot_pass] == ["b60"]


@pytest.mark.parametrize(
    ("parks", "travel", "closed"), [("left", (0.0, 96.0), (0.0, 96.0)), ("right", (0.0, 96.0), (0.0, 96.0))]
)
def test_one_way_closes_to_the_far_end(parks: str, travel: tuple[float, float], closed: tuple[float, float]) -> None:
    (way,) = ways([mover(parks, flat=200, stack=15)], ENDS)
    assert way.travel == travel
    assert way.closed == closed


def test_one_way_stops_at_the_first_bracket_in_its_way_nearest_first() -> None:
    brackets = (bracket(0), bracket(30), bracket(60), bracket(96))
    (left,) = ways([mover("left", flat=200)], brackets)
    assert left.closed == (0.0, 30.0)
    assert [ref[-1] for ref in left.cannot_pass] == ["b30", "b60"]
    (right,) = ways([mover("right", flat=200)], brackets)
    assert right.closed == (60.0, 96.0)
    assert [ref[-1] for ref in right.cannot_pass] == ["b60", "b30"]


def test_the_outermost_ring_is_held_beyond_the_end_bracket() -> None:
    brackets = (bracket(3, half=0.375), bracket(93, half=0.375))
    left, right = ways([mover(), mover("right")], brackets, ring=0.25)
    assert left.open[0] == pytest.approx(3 - 0.375 - 0.125)
    assert right.open[1] == pytest.approx(93 + 0.375 + 0.125)


def test_a_ring_is_never_held_beyond_the_rods_end() -> None:
    left, right = ways([mover(), mover("right")], (bracket(0.25, half=0.375), bracket(95.9, half=0.375)), ring=0.25)
    assert left.open[0] == 0.0
    assert right.open[1] == 96.0


def test_a_pockets_cloth_begins_inside_the_end_brackets() -> None:
    left, right = ways(
        [mover(), mover("right")], (bracket(3, half=0.375), bracket(93, half=0.375)), rings=False, outside=False, ring=0.25
    )
    assert left.closed[0] == pytest.approx(3.375)
    assert right.closed[1] == pytest.approx(92.625)


@pytest.mark.parametrize(("passes", "far"), [(False, 92.625), (True, 96.0)])
def test_a_leading_edge_stops_inside_the_far_end_bracket_unless_rings_pass_it(passes: bool, far: float) -> None:
    brackets = (bracket(3, half=0.375), bracket(93, half=0.375, passes=passes))
    (way,) = ways([mover(flat=200, stack=15)], brackets)
    assert way.closed[1] == pytest.approx(far)


def test_middle_parks_stand_at_both_sides_of_their_bracket() -> None:
    # Two windows under one rod: outer panels at the ends, two inner ones between the windows.
    brackets = (bracket(0), bracket(48, "m"), bracket(96))
    panels = [mover("left", flat=36), mover("left-of:m", flat=36), mover("right-of:m", flat=36), mover("right", flat=36)]
    a, b, c, d = ways(panels, brackets)
    assert (a.closed, b.closed, c.closed, d.closed) == ((0.0, 24.0), (24.0, 48.0), (48.0, 72.0), (72.0, 96.0))
    assert (b.open, c.open) == ((43.5, 48.0), (48.0, 52.5))
    assert (b.side, c.side) == ("right", "left")
    assert all(way.cannot_pass == () for way in (a, b, c, d))


def test_a_lone_middle_panel_draws_to_the_end_it_faces() -> None:
    brackets = (bracket(0), bracket(48, "m"), bracket(96))
    (way,) = ways([mover("left-of:m", flat=100)], brackets)
    assert way.closed == (0.0, 48.0)
    (way,) = ways([mover("right-of:m", flat=100)], brackets)
    assert way.closed == (48.0, 96.0)


def test_a_parking_place_whose_bracket_is_gone_falls_back_to_the_rods_end() -> None:
    (way,) = ways([mover("left-of:gone")], ENDS)
    assert (way.side, way.open) == ("right", (91.5, 96.0))


def test_cloth_that_is_not_wide_enough_does_not_meet() -> None:
    left, right = ways([mover(flat=40), mover("right", flat=40)], ENDS)
    assert left.closed == (0.0, 40.0)
    assert right.closed == (56.0, 96.0)


def test_a_stationary_panel_stays_and_stops_its_neighbour() -> None:
    still, moving = ways([mover("left", stationary=True, stack=5, drawn=20), mover("right", flat=200)], ENDS)
    assert still.open == still.closed == still.drawn == still.travel == (0.0, 20.0)
    assert moving.closed == (20.0, 96.0)
    assert moving.cannot_pass == ()


def test_a_stationary_panel_without_a_width_stands_as_its_stack() -> None:
    (way,) = ways([mover("right", stationary=True)], ENDS)
    assert way.open == (91.5, 96.0)


def test_a_moving_panel_that_parks_with_a_stationary_one_begins_beside_it() -> None:
    still, moving = ways([mover("left", stationary=True, drawn=10), mover("left", flat=200)], ENDS)
    assert still.open == (0.0, 10.0)
    assert moving.open[0] == 10.0


def test_two_panels_at_one_end_share_the_way_by_flat_width() -> None:
    first, second = ways([mover(flat=60), mover(flat=120)], ENDS)
    assert first.closed == (0.0, pytest.approx(32.0))
    assert second.closed == (pytest.approx(32.0), pytest.approx(96.0))
    assert (first.open, second.open) == ((0.0, 4.5), (4.5, 9.0))


@pytest.mark.parametrize(
    ("drawn", "got"), [(None, 4.5), (0.0, 4.5), (4.5, 4.5), (20.0, 20.0), (48.0, 48.0), (54.0, 54.0), (90.0, 54.0)]
)
def test_a_panel_is_drawn_between_its_stack_and_its_flat_width(drawn: float | None, got: float) -> None:
    left, _ = ways([mover(drawn=drawn), mover("right")], ENDS)
    assert left.drawn == (0.0, got)


def test_leading_edges_drawn_past_each_other_meet_half_way() -> None:
    left, right = ways([mover(drawn=54), mover("right", drawn=50)], ENDS)
    assert left.drawn[1] == right.drawn[0] == pytest.approx((54 + 46) / 2)


def test_stacks_longer_than_the_rod_do_not_overlap() -> None:
    left, right = ways([mover(stack=8), mover("right", stack=8)], (bracket(0), bracket(10)), right=10.0)
    assert left.open == (0.0, 5.0)
    assert right.open == (5.0, 10.0)
    assert left.closed[1] <= right.closed[0]


def test_a_rod_without_brackets_has_its_ends_as_stops() -> None:
    left, right = ways([mover(), mover("right")], ())
    assert (left.closed, right.closed) == ((0.0, 48.0), (48.0, 96.0))


def test_a_lone_bracket_carries_the_end_that_it_is_nearer_to() -> None:
    left, right = ways([mover(), mover("right")], (bracket(3),))
    assert left.open[0] == 3.0
    assert right.open[1] == 96.0


def test_brackets_off_the_rod_stop_nothing() -> None:
    left, right = ways([mover(), mover("right")], (bracket(-20), bracket(0), bracket(96), bracket(120)))
    assert (left.closed, right.closed) == ((0.0, 48.0), (48.0, 96.0))


def test_a_rod_of_no_length_is_no_trouble() -> None:
    for way in ways([mover(), mover("right"), mover("left-of:b0")], (bracket(0),), right=0.0):
        assert way.open == way.closed == (0.0, 0.0)


def test_a_drawn_panel_pushes_those_inside_it_along() -> None:
    # 96 in of rod, 4 1/2 in of stack inside: the outer one draws 91 1/2 in at most.
    outer, inner = ways([mover(flat=200, drawn=500), mover(flat=108)], ENDS)
    assert (outer.drawn, inner.drawn) == ((0.0, 91.5), (91.5, 96.0))
    assert outer.travel == (0.0, 91.5)
    assert inner.travel == (4.5, 96.0)


def test_a_drawn_panel_leaves_its_mate_its_stack() -> None:
    left, right = ways([mover(flat=200, drawn=95), mover("right")], ENDS)
    assert (left.drawn, right.drawn) == ((0.0, 91.5), (91.5, 96.0))


def test_several_panels_drawn_past_others_meet_half_way_and_keep_their_stacks() -> None:
    # 30 + 4 1/2 in from the left against 60 in from the right, all the rod: half way is 17 1/4 in.
    brackets = (bracket(0), bracket(60))
    outer, inner, right = ways([mover(drawn=30), mover(), mover("right", flat=108, drawn=500)], brackets, right=60.0)
    assert (outer.drawn, inner.drawn) == ((0.0, 12.75), (12.75, 17.25))
    assert right.drawn == (17.25, 60.0)


def test_a_stack_thicker_than_its_share_takes_no_more_than_there_is() -> None:
    # The narrow one's share of 30 in of reach is 2 in, its stack 4 1/2 in: the wide one closes over the rest.
    narrow, wide, right = ways(
        [mover(flat=10), mover(flat=140), mover("right", flat=150)], (bracket(0), bracket(60)), right=60.0
    )
    assert narrow.closed == (0.0, 4.5)
    assert wide.closed == (4.5, pytest.approx(30.0))
    assert right.closed == (pytest.approx(30.0), 60.0)


def test_a_bracket_beyond_the_rods_end_holds_no_panel_there() -> None:
    (way,) = ways([mover("left-of:far", flat=200)], (bracket(0), bracket(90), bracket(100, "far")))
    assert way.open == (91.5, 96.0)
    still, moving = ways([mover(stationary=True, flat=300, drawn=200), mover(flat=100)], ENDS)
    assert still.open == (0.0, 96.0)
    assert moving.open == (96.0, 96.0)


@pytest.mark.parametrize("seed", range(8))
def test_no_cloth_leaves_the_rod_or_hangs_over_another(seed: int) -> None:
    dice = random.Random(seed)
    for _ in range(60):
        length = dice.choice([0.0, 20.0, 60.0, 96.0, 200.0])
        places = sorted(
            dice.choice([-3.0, 0.0, 2.0, length / 3, length / 2, length, length + 3]) for _ in range(dice.randrange(5))
        )
        made = [bracket(x, f"b{i}", passes=dice.random() < 0.4, half=0.375) for i, x in enumerate(places)]
        parks = ["left", "right", *(f"{side}-of:b{i}" for i in range(len(made)) for side in ("left", "right"))]
        panels = [
            mover(
                dice.choice(parks), dice.choice([10, 54, 108, 200]), dice.choice([4.5, 9, 20]),
                dice.random() < 0.2, dice.choice([None, 0, 10, 30, 500]),
            )
            for _ in range(dice.randrange(1, 5))
        ]  # fmt: skip
        out = ways(panels, made, 0.0, length, rings=dice.random() < 0.6, outside=dice.random() < 0.7, ring=0.25)
        for name in ("open", "closed", "drawn"):
            spans = sorted(getattr(way, name) for way in out)
            assert all(-1e-9 <= left <= right <= length + 1e-9 for left, right in spans), name
            wide = [span for span in spans if span[1] - span[0] > 1e-9]
            assert all(a[1] <= b[0] + 1e-9 for a, b in pairwise(wide)), name
        for way in out:
            assert way.travel[0] <= way.closed[0] + 1e-9
            assert way.closed[1] <= way.travel[1] + 1e-9


def test_panels_that_stand_still_meet_half_way_where_both_want_more() -> None:
    # 60 in from the left and 50 in from the right on 96 in: both give 7 in.
    left, right = ways(
        [mover(stationary=True, flat=80, drawn=60), mover("right", stationary=True, flat=80, drawn=50)], ENDS
    )
    assert (left.open, right.open) == ((0.0, 53.0), (53.0, 96.0))
    left, right = ways(
        [mover(stationary=True, flat=80, drawn=40), mover("right", stationary=True, flat=80, drawn=50)], ENDS
    )
    assert (left.open, right.open) == ((0.0, 40.0), (46.0, 96.0))


def test_a_lone_bracket_in_the_middle_counts_as_the_left_one() -> None:
    left, right = ways([mover(), mover("right")], (bracket(48),))
    assert (left.open[0], right.open[1]) == (48.0, 96.0)
