"""The one tolerance policy, just inside, at and just outside each limit."""

from __future__ import annotations

import pytest

from elevation.units import format_length, quantise
from elevation.units.tolerance import exceeds, falls_short, less_ratio, overlaps, same_ratio, touches

HALF = 25.4 / 32
LIMIT = 3 * 25.4


@pytest.mark.parametrize(
    ("measured_mm", "short"),
    [(LIMIT, False), (LIMIT - HALF + 1e-3, False), (LIMIT - HALF, False), (LIMIT - HALF - 1e-3, True), (0.0, True)],
)
def test_falls_short_by_more_than_half_a_graduation(measured_mm: float, short: bool) -> None:
    assert falls_short(measured_mm, LIMIT, HALF) is short


@pytest.mark.parametrize(
    ("measured_mm", "over"),
    [(LIMIT, False), (LIMIT + HALF - 1e-3, False), (LIMIT + HALF, False), (LIMIT + HALF + 1e-3, True)],
)
def test_exceeds_by_more_than_half_a_graduation(measured_mm: float, over: bool) -> None:
    assert exceeds(measured_mm, LIMIT, HALF) is over


def test_what_reads_as_the_limit_is_never_called_less() -> None:
    for step in range(-200, 201):
        measured_mm = LIMIT + step * HALF / 100
        reads_as_limit = format_length(measured_mm, "in", 2 * HALF, sign=False) == "3"
        if reads_as_limit:
            assert not falls_short(measured_mm, LIMIT, HALF)
            assert not exceeds(measured_mm, LIMIT, HALF)
        assert reads_as_limit == (quantise(measured_mm, 2 * HALF) == pytest.approx(LIMIT))


def test_touching_and_overlapping() -> None:
    assert touches(10.0, 10.0 + 9e-7)
    assert not touches(10.0, 10.0 + 2e-6)
    assert not overlaps(0, 10, 10, 20)
    assert not overlaps(0, 10 + 5e-7, 10, 20)
    assert overlaps(0, 10.001, 10, 20)
    assert not overlaps(10, 20, 0, 10)


def test_ratios() -> None:
    assert same_ratio(1.0, 1.0 + 5e-10)
    assert not same_ratio(1.0, 1.0 + 2e-9)
    assert same_ratio(0.0, 0.0)
    assert not less_ratio(1.0, 1.0 + 5e-10)
    assert less_ratio(1.0, 1.1)


def test_the_very_edge_of_touching_still_touches() -> None:
    # Just inside, at and just outside 1e-6 mm, for all four questions; at the edge nothing is called short, over or apart.
    for beyond_mm, is_apart in ((0.9e-6, False), (1e-6, False), (1.1e-6, True)):
        assert touches(0.0, beyond_mm) is not is_apart
        assert falls_short(-beyond_mm, 0.0, 0.0) is is_apart
        assert exceeds(beyond_mm, 0.0, 0.0) is is_apart
        assert overlaps(0.0, 5.0, -5.0, beyond_mm) is is_apart
        assert overlaps(-5.0, beyond_mm, 0.0, 5.0) is is_apart


@pytest.mark.parametrize(("apart", "same"), [(0.9e-9, True), (1.1e-9, False)])
def test_the_edge_of_equal_ratios(apart: float, same: bool) -> None:
    assert same_ratio(1.0 - apart, 1.0) is same
    assert same_ratio(1.0, 1.0 - apart) is same
    assert less_ratio(1.0 - apart, 1.0) is not same
    assert not less_ratio(1.0, 1.0 - apart)
    # Of the larger, whatever its sign.
    assert same_ratio(-1000.0, -1000.0 + 1000 * apart) is same
