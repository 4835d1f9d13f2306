"""Screws in wood and plates on the wall against published values and worked cases."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.trade import load_trade
from elevation.trade.fixing import Strength, lever_of, on_plate, screw_strength, times_held, withdrawal_n

TRADE = load_trade()
LBF = 4.4482216152605
INCH = 25.4


# Withdrawal W = 2850 G2 D lbf for each inch of thread (National Design Specification 12.2-2), worked for the usual studs;
# the last row is a published worked table (no. 10 in G 0.45: 109 lbf, printed whole).
@pytest.mark.parametrize(("gravity", "inches", "pounds", "near"), [
    (0.42, 0.138, 69.38, 1e-4), (0.50, 0.138, 98.33, 1e-4), (0.55, 0.138, 118.97, 1e-4),
    (0.42, 0.164, 82.45, 1e-4), (0.50, 0.164, 116.85, 1e-4), (0.55, 0.164, 141.39, 1e-4),
    (0.42, 0.190, 95.52, 1e-4), (0.50, 0.190, 135.38, 1e-4), (0.45, 0.190, 109.0, 7e-3),
])  # fmt: skip
def test_withdrawal_of_a_wood_screw(gravity: float, inches: float, pounds: float, near: float) -> None:
    assert withdrawal_n(gravity, inches * INCH, INCH) / LBF == pytest.approx(pounds, rel=near)


def test_the_allowable_pull_is_a_fifth_of_the_breaking_one() -> None:
    # Wood Handbook eq. 8-10 has 15700 G2 D L for the ultimate one: 5.509 times as much.
    assert 15700 * 0.42**2 * 0.164 * LBF / withdrawal_n(0.42, 0.164 * INCH, INCH) == pytest.approx(5.509, rel=1e-3)


def test_a_no_8_screw_through_board_into_a_stud() -> None:
    # 2 in less 5/8 in of board and 1/8 in of plate: 1.25 in of thread; 103.1 lbf, 92.8 with 0.9 for a load that stays.
    found = screw_strength(TRADE.fixings["screw-8"], 0.75 * INCH, False, 0.42, 0.9)
    assert found is not None
    assert (found.pull_n or 0) / LBF == pytest.approx(92.76, rel=1e-4)
    # Shear 36.7 lbf through 5/8 in of board (dowel equations, AWC TR12), in part: 1.25 in is less than ten diameters.
    assert (found.shear_n or 0) / LBF == pytest.approx(36.7 * 0.9 * 1.25 / 1.64, rel=1e-4)


def test_a_screw_just_long_enough() -> None:
    row = TRADE.fixings["screw-8"]
    before = row.length_mm - 6 * row.diameter_mm
    assert screw_strength(row, before - 1e-6, True, 0.42, 0.9) is not None
    assert screw_strength(row, before + 1e-6, True, 0.42, 0.9) is None
    # In a board it holds by what there is of it.
    thin = screw_strength(row, before, True, 0.42, 0.9, wood_mm=12.0)
    assert thin is not None
    assert thin.pull_n == pytest.approx(withdrawal_n(0.42, row.diameter_mm, 12.0) * 0.9)
    assert screw_strength(row, row.length_mm, True, 0.42, 0.9, wood_mm=12.0) is None


# 20 lbf 4 in out, screws 2 in apart, the lower 1/2 in over the plate's edge: 32 lbf on the upper one, 10 lbf shear on each.
# Moments about the lower edge, worked by hand; a 3/16 in toggle in 1/2 in board (30 and 50 lbf) bears 15.789 lbf of it, a
# no. 8 screw (92.76 and 38.43 lbf) 33.05 lbf.
def test_a_bracket_as_a_cantilever_on_two_screws() -> None:
    holes, below = (1.0, -1.0), 1.5
    assert lever_of(holes, below) == 2.5
    asked = on_plate(20.0, 80.0, holes, below)
    assert asked == pytest.approx((32.0, 10.0))
    assert asked is not None
    assert 20 * (times_held(*asked, Strength(30.0, 50.0)) or 0) == pytest.approx(15.789, abs=1e-3)
    assert 20 * (times_held(*asked, Strength(92.76, 38.43)) or 0) == pytest.approx(33.05, abs=5e-3)


def test_one_screw_and_none() -> None:
    # One screw 1/2 in over the edge: T = R p / e.
    assert on_plate(10.0, 40.0, (0.0,), 0.5) == pytest.approx((80.0, 10.0))
    assert on_plate(10.0, 40.0, (), 0.5) is None
    assert on_plate(10.0, 40.0, (-1.0,), 1.0) is None


def test_what_is_not_known_holds_no_number_of_times() -> None:
    assert times_held(10.0, 5.0, Strength(None, 50.0)) is None
    assert times_held(10.0, 5.0, Strength(30.0, None)) is None
    assert times_held(10.0, 0.0, Strength(30.0, None)) == pytest.approx(3.0)
    assert times_held(0.0, 5.0, Strength(None, 50.0)) == pytest.approx(10.0)
    assert times_held(0.0, 0.0, Strength(30.0, 50.0)) is None
    assert times_held(10.0, 5.0, Strength(0.0, 50.0)) is None
    assert times_held(0.5, 0.0, Strength(0.25, None)) == pytest.approx(0.5)


def test_anchors_stand_lowest_first_and_masonry_rows_are_empty() -> None:
    for row in TRADE.fixings.values():
        if row.into == "masonry":
            assert row.pull_n == row.shear_n == 0.0
        if row.into == "board":
            assert row.factor == 4.0
            # A small flange tears through at 77 lbf (ASTM C1396, nail pull of 1/2 in board): a quarter is the most.
            if row.id in ("plug", "threaded"):
                assert row.pull_n <= 77 / 4 * LBF
    pulls = [row.pull_n for row in TRADE.fixings.values() if row.into == "board" and row.pull_n > 0]
    assert pulls == sorted(pulls)


def test_a_screw_of_no_thickness_holds_nothing() -> None:
    # The tables write 0 for what has no size of its own; somebody's own row may write it for a screw.
    row = replace(TRADE.fixings["screw-8"], diameter_mm=0.0)
    assert screw_strength(row, 3.0, True, 0.42, 0.9) is None
    assert screw_strength(row, 3.0, True, 0.42, 0.9, 20.0) is None
