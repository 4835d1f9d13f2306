"""Ceiling and floor lines."""

from __future__ import annotations

import numpy as np
import pytest

from elevation.room.model import Station
from elevation.setting_out.profile import extent_over, height_at, profile_of, stretch
from tests.setting_out.rooms import mm

RAKED = profile_of((Station(mm(3000), mm(1800)), Station(mm(0), mm(2400)), Station(mm(1000), mm(2600))), 0.0)


@pytest.mark.parametrize("x", [-500.0, 0.0, 250.0, 999.0, 1000.0, 1001.0, 2000.0, 3000.0, 4000.0])
def test_heights_agree_with_an_independent_interpolation(x: float) -> None:
    xs, ys = zip(*RAKED.points, strict=True)
    assert height_at(RAKED, x) == pytest.approx(float(np.interp(x, xs, ys)))


@pytest.mark.parametrize(
    ("left", "right"), [(-100, 5000), (200, 900), (900, 1100), (1200, 2900), (1000, 1000), (3100, 3500)]
)
def test_least_and_greatest_agree_with_a_dense_sampling(left: float, right: float) -> None:
    xs = np.unique(np.concatenate([np.linspace(left, right, 5001), np.clip([0, 1000, 3000], left, right)]))
    ys = np.interp(xs, *zip(*RAKED.points, strict=True))
    low, high = extent_over(RAKED, left, right)
    assert low == pytest.approx(float(ys.min()))
    assert high == pytest.approx(float(ys.max()))


def test_not_measured_is_level_and_not_known() -> None:
    made = profile_of((), 2438.4, 10.0)
    assert not made.known
    assert height_at(made, 1234.0) == 2448.4
    assert profile_of((), 0.0, known_level=True).known
    assert made.points[0][0] == 0.0


def test_a_floor_still_to_be_laid_lifts_every_point() -> None:
    made = profile_of((Station(mm(0), mm(10)), Station(mm(1000), mm(30))), 0.0, 15.0)
    assert made.points == ((0.0, 25.0), (1000.0, 45.0))
    assert made.known


def test_one_station_is_level_everywhere() -> None:
    one = profile_of((Station(mm(500), mm(2400)),), 0.0)
    assert extent_over(one, 0.0, 3000.0) == (2400.0, 2400.0)
    assert height_at(one, 100.0) == height_at(one, 900.0) == 2400.0


def test_a_step_is_taken_at_its_far_side() -> None:
    # Two heights read at one place: a ledge. Left of it the first holds, from it on the second.
    step = profile_of(
        (Station(mm(0), mm(0)), Station(mm(1000), mm(0)), Station(mm(1000), mm(50)), Station(mm(2000), mm(50))), 0.0
    )
    assert height_at(step, 999.0) == 0.0
    assert height_at(step, 1000.0) == 50.0
    assert extent_over(step, 500.0, 1500.0) == (0.0, 50.0)


def test_a_stretch_has_its_ends_and_the_points_between() -> None:
    assert stretch(RAKED, 500.0, 2000.0, 5.0) == (
        (500.0, pytest.approx(2505.0)),
        (1000.0, pytest.approx(2605.0)),
        (2000.0, pytest.approx(2205.0)),
    )
