"""Stretches of wall: what several cover together, and what they have in common with one. By hand."""

from __future__ import annotations

import pytest

from elevation.setting_out.spans import common, union


@pytest.mark.parametrize(
    ("spans", "together"),
    [
        ([], []),
        ([(0, 10)], [(0, 10)]),
        ([(20, 30), (0, 10)], [(0, 10), (20, 30)]),  # apart, in any order
        ([(0, 10), (5, 20)], [(0, 20)]),  # over each other
        ([(0, 10), (10, 20)], [(0, 20)]),  # touching
        ([(0, 30), (5, 10)], [(0, 30)]),  # one within the other
        ([(0, 30), (5, 10), (20, 40), (50, 60)], [(0, 40), (50, 60)]),
        ([(5, 5), (10, 8)], []),  # nothing, and less than nothing
        ([(0, 10), (4, 4), (12, 12)], [(0, 10)]),
        ([(0, 10), (20, 30), (25, 40)], [(0, 10), (20, 40)]),  # with the last one, not the first
        ([(-20, -10), (-15, -5)], [(-20, -5)]),
    ],
)
def test_what_several_cover_together(spans, together) -> None:
    assert union(spans) == together


@pytest.mark.parametrize(
    ("left", "right", "length"),
    [(0, 40, 20), (5, 25, 10), (10, 20, 0), (-10, 0, 0), (30, 99, 0), (2, 4, 2), (9, 21, 2), (25, 5, 0)],
)
def test_length_in_common(left, right, length) -> None:
    assert common([(0, 10), (20, 30)], left, right) == length
