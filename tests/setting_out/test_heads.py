"""Heads by themselves: where a shape begins and ends, how high it is, where it is empty. Plain geometry, by hand."""

from __future__ import annotations

import math

import pytest

from elevation.setting_out.heads import arched, area_between, area_left_of, area_of, height_over, level, outline

# --- raked ----------------------------------------------------------------------------------------------------


def test_a_slope_is_cut_off_where_it_dips_under_the_bottom() -> None:
    # From 400 under the bottom to 600 over it along 1000: a slope of 1, so it comes out at 400. Left and mirrored.
    rising = level(100.0, 1100.0, 800.0, 400.0, 1400.0)
    assert (rising.left_mm, rising.right_mm) == (pytest.approx(500.0), 1100.0)
    assert (rising.left_top_mm, rising.right_top_mm) == (800.0, 1400.0)
    assert area_of(rising) == pytest.approx(600 * 600 / 2)
    falling = level(100.0, 1100.0, 800.0, 1400.0, 400.0)
    assert (falling.left_mm, falling.right_mm) == (100.0, pytest.approx(700.0))
    assert (falling.left_top_mm, falling.right_top_mm) == (1400.0, 800.0)
    assert area_of(falling) == pytest.approx(600 * 600 / 2)


def test_a_steep_slope_is_cut_off_in_proportion() -> None:
    # 100 under to 300 over the bottom along 1000: a quarter of the way.
    assert level(0.0, 1000.0, 500.0, 400.0, 800.0).left_mm == pytest.approx(250.0)
    assert level(0.0, 1000.0, 500.0, 800.0, 400.0).right_mm == pytest.approx(750.0)
    # One that just reaches the bottom is not cut.
    whole = level(0.0, 1000.0, 500.0, 500.0, 800.0)
    assert (whole.left_mm, whole.right_mm) == (0.0, 1000.0)


@pytest.mark.parametrize(
    ("left", "right", "left_top", "right_top"),
    [(0, 1000, 400, 450), (0, 1000, 450, 400), (1000, 1000, 900, 900), (1000, 900, 900, 900)],
)
def test_nothing_is_left_of_a_head_under_its_bottom_or_without_width(left, right, left_top, right_top) -> None:
    shape = level(float(left), float(right), 500.0, float(left_top), float(right_top))
    assert shape.left_mm == shape.right_mm
    assert shape.top_mm == 500.0
    assert area_of(shape) == 0.0
    assert outline(shape) == ()
    assert height_over(shape, shape.left_mm) == 500.0


def test_a_slope_is_straight_between_its_ends() -> None:
    shape = level(100.0, 1100.0, 0.0, 500.0, 900.0)
    for x, y in ((100.0, 500.0), (350.0, 600.0), (1100.0, 900.0)):
        assert height_over(shape, x) == pytest.approx(y)
    assert shape.top_mm == 900.0


# --- arcs -----------------------------------------------------------------------------------------------------


def test_the_height_of_a_circle_by_pythagoras() -> None:
    # Radius 500 about (1000, 300): 3-4-5 at 300 and 400 beside the middle.
    shape = arched(500.0, 1500.0, 0.0, 1000.0, 300.0, 500.0)
    for x, y in ((1000.0, 800.0), (1300.0, 700.0), (700.0, 700.0), (1400.0, 600.0), (600.0, 600.0)):
        assert height_over(shape, x) == pytest.approx(y)
    # Where it stands upright a rounding error is no height.
    assert height_over(shape, 1500.0000001) == pytest.approx(300.0)
    assert shape.top_mm == pytest.approx(800.0)


def test_a_part_of_an_arc_beside_its_crown_is_as_high_as_its_higher_end() -> None:
    # From 300 to 400 right of the middle the arc falls from 700 to 600; to the left it rises.
    assert arched(1300.0, 1400.0, 0.0, 1000.0, 300.0, 500.0).top_mm == pytest.approx(700.0)
    assert arched(600.0, 700.0, 0.0, 1000.0, 300.0, 500.0).top_mm == pytest.approx(700.0)
    # A crown at the very end is reached.
    assert arched(1000.0, 1400.0, 0.0, 1000.0, 300.0, 500.0).top_mm == pytest.approx(800.0)
    assert arched(600.0, 1000.0, 0.0, 1000.0, 300.0, 500.0).top_mm == pytest.approx(800.0)


def test_a_bottom_over_the_centre_cuts_a_chord() -> None:
    # 400 over the centre of a circle of radius 500 the chord is 2 x 300.
    shape = arched(0.0, 2000.0, 700.0, 1000.0, 300.0, 500.0)
    assert (shape.left_mm, shape.right_mm) == (pytest.approx(700.0), pytest.approx(1300.0))
    # At the centre it is the whole diameter.
    whole = arched(0.0, 2000.0, 300.0, 1000.0, 300.0, 500.0)
    assert (whole.left_mm, whole.right_mm) == (500.0, 1500.0)


@pytest.mark.parametrize(
    ("left", "right", "bottom", "radius"),
    [
        (500, 1500, 800, 500),  # the crown only touches the bottom
        (500, 1500, 900, 500),
        (500, 1500, 0, 0),
        (500, 1500, 0, -5),
        (1600, 1700, 0, 500),  # beside the circle
        (1500, 1600, 0, 500),
        (1200, 1200, 0, 500),
    ],
)
def test_nothing_is_left_of_an_arc_under_its_bottom_or_beside_it(left, right, bottom, radius) -> None:
    shape = arched(float(left), float(right), float(bottom), 1000.0, 300.0, float(radius))
    assert shape.left_mm == shape.right_mm == 1000.0
    assert shape.radius_mm == 0.0
    assert area_of(shape) == 0.0
    assert outline(shape) == ()


def test_an_arc_of_half_a_millimetre_is_still_one() -> None:
    assert area_of(arched(-1.0, 1.0, 0.0, 0.0, 0.0, 0.5)) == pytest.approx(math.pi * 0.25 / 2)


# --- areas between two places -----------------------------------------------------------------------------------


def test_area_to_the_left_and_between() -> None:
    # Under a slope from 100 to 300 along 100 .. 1100: to 600 it is 500 x (100 + 200) / 2.
    shape = level(100.0, 1100.0, 0.0, 100.0, 300.0)
    assert area_left_of(shape, 600.0) == pytest.approx(75_000.0)
    assert area_left_of(shape, 50.0) == area_left_of(shape, 100.0) == 0.0
    assert area_left_of(shape, 5000.0) == pytest.approx(200_000.0)
    assert area_left_of(shape, 100.5) == pytest.approx(0.5 * 100.05)
    assert area_between(shape, 600.0, 1100.0) == pytest.approx(125_000.0)
    for left, right in ((0.0, 100.0), (1100.0, 2000.0), (600.0, 600.0), (700.0, 600.0)):
        assert area_between(shape, left, right) == 0.0


def test_a_quarter_disc_left_of_the_middle() -> None:
    shape = arched(500.0, 1500.0, 300.0, 1000.0, 300.0, 500.0)
    assert area_left_of(shape, 1000.0) == pytest.approx(math.pi * 500**2 / 4)
    assert area_between(shape, 1000.0, 1500.0) == pytest.approx(math.pi * 500**2 / 4)
