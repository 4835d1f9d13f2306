"""Capture, release, rank and the freeing modifier, each just inside, at and just outside its distance."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.handles.model import Handle, Stuck
from elevation.handles.ranks import NEIGHBOUR, RULE
from elevation.handles.sticking import landing_mm, stick
from elevation.words import msg

GRADUATION_MM = 1.0
PX_MM = 2.0


def handle(low_mm: float = 0.0, high_mm: float = 1000.0, base_mm: float = 0.0, sign: int = 1) -> Handle:
    return Handle(
        axis="rod-height",
        ref=("a",),
        at=(0.0, 500.0),
        along="y",
        value_mm=500.0,
        low_mm=low_mm,
        high_mm=high_mm,
        name=msg("rod"),
        shown_as=msg("high"),
        shown_mm=lambda value: sign * (value - base_mm),
        from_shown=lambda figure: base_mm + sign * figure,
        move=lambda room, _value, _alone: room,
        hold=lambda room, _figure, _alone: room,
    )


def place(value_mm: float, reason: str = "there", rank: int = RULE, breaks: str | None = None) -> Sticking:
    return Sticking("rod-height", ("a",), value_mm, msg("{reason}", reason=reason), rank, breaks)


def resting(wanted_mm: float, *places: Sticking, held_on: Stuck | None = None, free: bool = False) -> Stuck:
    return stick(handle(), wanted_mm, tuple(places), GRADUATION_MM, PX_MM, held_on, free)


@pytest.mark.parametrize("side", [1, -1])
@pytest.mark.parametrize(("px", "caught"), [(7.9, True), (8.0, True), (8.1, False)])
def test_a_place_catches_within_8_pixels(px: float, side: int, caught: bool) -> None:
    stuck = resting(600.0 + side * px * PX_MM, place(600.0))
    assert (stuck.reason is not None) is caught
    assert (stuck.value_mm == 600.0) is caught


@pytest.mark.parametrize("side", [1, -1])
@pytest.mark.parametrize(("px", "is_held"), [(11.9, True), (12.0, True), (12.1, False)])
def test_what_is_caught_is_held_to_12_pixels(px: float, side: int, is_held: bool) -> None:
    caught = resting(600.0, place(600.0))
    stuck = resting(600.0 + side * px * PX_MM, place(600.0), held_on=caught)
    assert (stuck == caught) is is_held


def test_between_8_and_12_pixels_only_what_was_caught_is_held() -> None:
    wanted_mm = 600.0 + 10 * PX_MM
    assert resting(wanted_mm, place(600.0)).reason is None
    assert resting(wanted_mm, place(600.0), held_on=Stuck(600.0)).reason is None
    assert resting(wanted_mm, place(600.0), held_on=resting(600.0, place(600.0))).reason is not None


def test_a_rule_wins_over_a_nearer_neighbour() -> None:
    rule, neighbour = place(600.0, "rule"), place(610.0, "neighbour", NEIGHBOUR)
    assert resting(605.9, neighbour, rule).reason == rule.reason


@pytest.mark.parametrize("held", [False, True])
@pytest.mark.parametrize(("px", "is_there"), [(1.9, True), (2.0, True), (2.1, False)])
def test_a_place_right_under_the_pointer_wins_over_rank_and_hold(px: float, is_there: bool, held: bool) -> None:
    rule, neighbour = place(600.0, "rule"), place(610.0, "neighbour", NEIGHBOUR)
    held_on = resting(600.0, rule, neighbour) if held else None
    stuck = resting(610.0 - px * PX_MM, rule, neighbour, held_on=held_on)
    assert stuck.reason == (neighbour.reason if is_there else rule.reason)


def test_of_one_rank_the_nearer_wins() -> None:
    a, b = place(600.0, "a"), place(610.0, "b")
    assert resting(604.9, a, b).reason == a.reason
    assert resting(605.1, a, b).reason == b.reason


def test_what_holds_gives_way_to_a_nearer_place_beyond_its_own_capture() -> None:
    rule, beside = place(600.0, "rule"), place(625.0, "beside", NEIGHBOUR)
    caught = resting(600.0, rule, beside)
    assert resting(616.0, rule, beside, held_on=caught) == caught
    assert resting(616.1, rule, beside, held_on=caught).reason == beside.reason
    assert resting(623.9, rule, held_on=caught) == caught


def test_within_its_own_capture_what_holds_is_kept_against_a_rule_that_comes_into_reach() -> None:
    neighbour, rule = place(600.0, "neighbour", NEIGHBOUR), place(622.0, "rule")
    caught = resting(599.0, neighbour, rule)
    assert caught.reason == neighbour.reason
    # The rule is within 8 pixels from 606 on and nearer from 611 on; the neighbour keeps it up to 8 pixels of its own.
    for wanted_mm in (606.0, 612.0, 616.0):
        assert resting(wanted_mm, neighbour, rule, held_on=caught) == caught
    assert resting(616.1, neighbour, rule, held_on=caught).reason == rule.reason
    # Nobody held: of two in reach the rule comes first.
    assert resting(612.0, neighbour, rule).reason == rule.reason


@pytest.mark.parametrize("free", [True, False])
def test_at_the_very_end_of_the_way_it_says_why_it_stops(free: bool) -> None:
    here = replace(handle(), low_why=msg("the floor"), high_why=msg("the ceiling"))
    assert stick(here, 0.0, (), GRADUATION_MM, PX_MM, None, free) == Stuck(0.0, msg("the floor"))
    assert stick(here, 1000.0, (), GRADUATION_MM, PX_MM, None, free) == Stuck(1000.0, msg("the ceiling"))
    assert stick(here, 999.4, (), GRADUATION_MM, PX_MM, None, free) == Stuck(999.0)


def test_the_modifier_frees_from_everything_but_graduations_and_limits() -> None:
    caught = resting(600.0, place(600.0))
    assert resting(603.4, place(600.0), held_on=caught, free=True) == Stuck(603.0)
    stuck = resting(1200.0, place(600.0), free=True)
    assert stuck.value_mm == 1000.0
    assert stuck.reason is not None


def test_without_a_place_it_rests_on_a_graduation() -> None:
    assert resting(733.4) == Stuck(733.0)
    assert resting(733.6) == Stuck(734.0)
    # a tie goes to the even mark (NIST Handbook 44, General Code, rounding off)
    assert resting(733.5) == Stuck(734.0)
    assert resting(732.5) == Stuck(732.0)


def test_the_broken_rule_travels_with_the_place() -> None:
    assert resting(600.0, place(600.0, breaks="rod-low")).breaks == "rod-low"


@pytest.mark.parametrize(
    ("wanted_mm", "landed_mm"), [(-5.0, 0.75), (0.0, 0.75), (10.0, 9.75), (999.9, 999.75), (1200.0, 999.75)]
)
def test_graduations_are_those_of_the_held_figure(wanted_mm: float, landed_mm: float) -> None:
    # The figure is measured from 0.75 mm over the datum: marks lie at 0.75, 1.75 ...
    assert landing_mm(handle(0.3, 1000.2, 0.75), wanted_mm, GRADUATION_MM) == pytest.approx(landed_mm)


@pytest.mark.parametrize("sign", [1, -1])
def test_a_landing_never_leaves_the_range(sign: int) -> None:
    here = handle(10.4, 20.6, 0.0, sign)
    assert landing_mm(here, -100.0, GRADUATION_MM) == pytest.approx(11.0)
    assert landing_mm(here, 100.0, GRADUATION_MM) == pytest.approx(20.0)


def test_a_range_smaller_than_a_graduation_keeps_the_place_itself() -> None:
    assert landing_mm(handle(10.2, 10.6), 10.4, GRADUATION_MM) == pytest.approx(10.4)
