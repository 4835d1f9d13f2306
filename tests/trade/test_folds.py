"""Fold depth by arc length against integration by quadrature and known values."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest

from elevation.trade.folds import arc_ratio, fold_depth, steepness_of, wave_places


def arc_by_quadrature(depth_mm: float, wave_mm: float) -> float:
    # Length of (depth/2) sin(2 pi x / wave) over one wave; the trapezium rule converges fast on a periodic function.
    x = np.linspace(0.0, wave_mm, 4097)
    slope = depth_mm / 2 * 2 * np.pi / wave_mm * np.cos(2 * np.pi * x / wave_mm)
    return float(np.trapezoid(np.sqrt(1 + slope**2), x))


def test_arc_of_sin_x_has_its_known_length() -> None:
    # One wave of y = sin x is 4 sqrt(2) E(1/2) = 7.6403955780554... long (complete elliptic integral, A&S 17.3).
    assert arc_ratio(1.0) * 2 * math.pi == pytest.approx(7.640395578055424, rel=1e-12)


@pytest.mark.parametrize("fullness", [1.0001, 1.05, 1.25, 1.5, 1.7, 2.0, 2.5, 3.0, 4.5, 7.9])
def test_the_fold_uses_up_its_flat_cloth(fullness: float) -> None:
    wide = 80.0
    depth = fold_depth(fullness * wide, wide)
    assert arc_by_quadrature(depth, wide) == pytest.approx(fullness * wide, rel=2e-4)


def test_flat_cloth_has_no_depth_and_bunched_cloth_half_its_width() -> None:
    assert fold_depth(100.0, 100.0) == 0.0
    assert fold_depth(100.0, 120.0) == 0.0
    assert fold_depth(100.0, 0.0) == 50.0
    assert fold_depth(100.0, 100.0 / 8) == pytest.approx(50.0)
    assert fold_depth(100.0, 100.0 / 7.99) == pytest.approx(50.0, rel=0.05)


def test_depth_grows_with_fullness() -> None:
    depths = [fold_depth(100.0, 100.0 / (1 + i / 50)) for i in range(350)]
    assert all(a <= b for a, b in pairwise(depths))


@pytest.mark.parametrize("ratio", [1.01, 1.5, 2.2, 6.0])
def test_steepness_is_the_inverse_of_the_arc(ratio: float) -> None:
    assert arc_ratio(steepness_of(ratio)) == pytest.approx(ratio, rel=1e-9)


def test_scale_does_not_matter() -> None:
    assert fold_depth(152.4, 76.2) == pytest.approx(25.4 * fold_depth(6.0, 3.0))


@pytest.mark.parametrize("ratio", [0.0, 0.5, 1.0])
def test_cloth_that_is_not_longer_than_its_wave_is_flat(ratio: float) -> None:
    assert steepness_of(ratio) == 0.0


@pytest.mark.parametrize("steepness", [1e-3, 0.1, 0.5, 1.0, 2.0, 5.0, 20.0])
def test_arc_length_by_scipys_elliptic_integral(steepness: float) -> None:
    # scipy.special.ellipe takes the parameter m = k^2 (SciPy reference, "ellipe").
    special = pytest.importorskip("scipy.special")
    k2 = steepness * steepness
    wanted = 2 / math.pi * math.sqrt(1 + k2) * float(special.ellipe(k2 / (1 + k2)))
    assert arc_ratio(steepness) == pytest.approx(wanted, rel=1e-12)


@pytest.mark.parametrize("fullness", [1.001, 1.3, 1.5, 2.0, 2.25, 2.5, 3.0, 6.0])
def test_depth_of_a_fold_by_scipys_root_of_the_same_integral(fullness: float) -> None:
    special, optimize = pytest.importorskip("scipy.special"), pytest.importorskip("scipy.optimize")

    def over(steepness: float) -> float:
        k2 = steepness * steepness
        return 2 / math.pi * math.sqrt(1 + k2) * float(special.ellipe(k2 / (1 + k2))) - fullness

    wide = 76.2
    depth = optimize.brentq(over, 0.0, 60.0, xtol=1e-12) * wide / math.pi
    assert fold_depth(fullness * wide, wide) == pytest.approx(depth, rel=2e-4)


@pytest.mark.parametrize("fullness", [1.0, 1.5, 2.5])
def test_equal_cloth_lies_between_the_places_of_a_wave(fullness: float) -> None:
    # The arc of y = -A cos(2 pi x) between two neighbours, by numpy's trapezium rule: a 32nd of the whole each.
    places = np.array(wave_places(fullness))
    assert (places[0], places[-1], len(places)) == (0.0, 1.0, 33)
    assert places + places[::-1] == pytest.approx(np.ones(33), abs=1e-6)
    slope = steepness_of(fullness) if fullness > 1 else 0.0

    def arc(to: float) -> float:
        x = np.linspace(0.0, to, 20001)
        return float(np.trapezoid(np.sqrt(1 + (slope * np.sin(2 * np.pi * x)) ** 2), x))

    whole = arc(1.0)
    assert whole == pytest.approx(fullness, rel=1e-6)
    assert [arc(place) / whole for place in places[1:-1]] == pytest.approx([part / 32 for part in range(1, 32)], abs=2e-5)
