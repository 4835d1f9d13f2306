"""Counts of rings and pieces, at and about their limits."""

from __future__ import annotations

import pytest

from elevation.trade.counting import pieces_of, rings_of
from elevation.trade.mitres import bend
from elevation.trade.placement import split_gap


@pytest.mark.parametrize(
    ("flat", "pitch", "even", "rings"),
    [(54, 6, False, 10), (48, 6, False, 9), (54, 6, True, 10), (48, 6, True, 10), (3, 6, False, 2), (40, 6, False, 8)],
)
def test_rings_stand_at_both_edges_and_about_their_pitch_apart(flat: int, pitch: int, even: bool, rings: int) -> None:
    # Ring pitch 5 to 7 in: a rod maker's guide; eyelets in even numbers: allpeoplequilt.com.
    assert rings_of(flat, pitch, even) == rings
    if not even and flat > pitch:
        assert 5 <= flat / (rings - 1) <= 7


@pytest.mark.parametrize(
    ("length", "stock", "pieces"),
    [
        (119.99, 120, 1),
        (120, 120, 1),
        (120.01, 120, 2),
        (240, 120, 2),
        (240.01, 120, 3),
        (239.5, 120, 2),
        (100, 0, 1),
        (3 * 0.1, 0.1, 3),
    ],
)
def test_the_fewest_pieces(length: float, stock: float, pieces: int) -> None:
    assert pieces_of(length, stock) == pieces


def test_a_gap_too_small_for_both_is_shared() -> None:
    # 4 in of gap shared between 3 and 3 in leaves 2 and 2; common practice, no source.
    assert split_gap(92, 96, 3, 3) == pytest.approx(94)
    # 4 in between 3 and 1 in: 3 above the head, 1 below the ceiling.
    assert split_gap(92, 96, 3, 1) == pytest.approx(95)
    assert split_gap(92, 96, 0, 0) == pytest.approx(94)
    assert split_gap(92, 96, 0, 3) == pytest.approx(92)


# A circle's tangents from the corner are r tan(turn / 2), its arc r turn: geometry. From outside it turns as far.
@pytest.mark.parametrize(
    ("angle", "tangent", "arc"), [(90, 100.0, 157.0796), (135, 41.4214, 78.5398), (225, 41.4214, 78.5398), (180, 0.0, 0.0)]
)
def test_a_bend_in_place_of_a_mitre(angle: float, tangent: float, arc: float) -> None:
    assert bend(100.0, angle) == pytest.approx((tangent, arc), abs=1e-4)
