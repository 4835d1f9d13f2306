"""Fold depth by arc length against integration by quadrature and known values."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest

from elevation.trade.folds import arc_ratio, fold_depth, steepness_of


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
