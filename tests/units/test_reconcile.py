"""Chains of rounded segments add up to the rounded whole."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation.units import mark_of, reconcile, reconcile_chain

SIXTEENTH = 25.4 / 16


def test_three_equal_parts_of_a_whole() -> None:
    # 3 x 10.4 = 31.2: each rounds to 10, the whole to 31; the middle one takes the missing one (worked by hand).
    chain = reconcile_chain([10.4, 10.4, 10.4], 31.2, 1.0)
    assert chain.marks == (10, 11, 10)
    assert chain.moved == (0, 1, 0)
    assert chain.closes


def test_the_segment_falsified_least_moves() -> None:
    # 1.4 + 2.3 + 3.45 = 7.15 -> 7; own roundings 1 + 2 + 3 = 6; 3.45 lost most and takes it.
    assert reconcile([1.4, 2.3, 3.45], 7.15, 1.0) == [1, 2, 4]


def test_too_many_are_taken_back() -> None:
    # 1.6 + 2.7 + 3.55 = 7.85 -> 8; own roundings 2 + 3 + 4 = 9; 3.55 had gained most.
    assert reconcile([1.6, 2.7, 3.55], 7.85, 1.0) == [2, 3, 3]


def sixteenths(*marks: float) -> list[float]:
    return [mark * SIXTEENTH for mark in marks]


@pytest.mark.parametrize(
    ("marks", "moved"),
    [
        # Of the three, the second loses most of a mark: neither the shortest nor the longest takes it.
        ((10.3, 20.45, 40.4), (0, 1, 0)),
        # Too many: the second gains most.
        ((10.7, 20.55, 40.6), (0, -1, 0)),
        # Equal losses: the longer one; both ways.
        ((10.4, 40.4, 20.2), (0, 1, 0)),
        ((20.2, 40.4, 10.4), (0, 1, 0)),
        ((10.6, 40.6, 20.8), (0, -1, 0)),
        # Equal in everything: the one nearest to the middle, of five the third, of two in the middle the first.
        ((20.21, 20.21, 20.21, 20.21, 20.21), (0, 0, 1, 0, 0)),
        ((20.2, 20.2, 20.2, 20.2), (0, 1, 0, 0)),
        # A millionth of a mark, or of a mm, decides nothing: float noise must not.
        ((40.4 + 2e-7, 40.4, 40.4), (0, 1, 0)),
    ],
)
def test_who_moves_on_a_tape_in_sixteenths(marks: tuple[float, ...], moved: tuple[int, ...]) -> None:
    parts = sixteenths(*marks)
    assert reconcile_chain(parts, sum(parts), SIXTEENTH).moved == moved


def test_a_measured_segment_stays() -> None:
    chain = reconcile_chain([1.4, 2.3, 3.45], 7.15, 1.0, [False, False, True])
    assert chain.marks == (2, 2, 3)
    assert chain.moved == (1, 0, 0)


def test_measured_all_over_cannot_close_and_says_by_how_much() -> None:
    chain = reconcile_chain([10.4, 10.4, 10.4], 31.2, 1.0, [True, True, True])
    assert chain.marks == (10, 10, 10)
    assert chain.open_by == 1
    assert not chain.closes


def test_flags_match_segments() -> None:
    with pytest.raises(ValueError, match="2 flags for 3 segments"):
        reconcile([1.0, 2.0, 3.0], 6.0, 1.0, [True, False])


def test_no_segments() -> None:
    assert reconcile([], 0.0, 1.0) == []


segments = st.lists(st.floats(0, 3000, allow_nan=False), min_size=1, max_size=14)
tapes = st.sampled_from([25.4 / 8, SIXTEENTH, 25.4 / 32, 1.0, 5.0])


@given(segments, tapes)
def test_a_free_chain_always_closes(parts: list[float], graduation_mm: float) -> None:
    chain = reconcile_chain(parts, sum(parts), graduation_mm)
    assert chain.closes
    assert sum(chain.marks) == chain.total == mark_of(sum(parts), graduation_mm)
    for part, mark, moved in zip(parts, chain.marks, chain.moved, strict=True):
        assert mark - mark_of(part, graduation_mm) == moved
        assert abs(moved) <= 1
        # At most one and a half graduations from the truth; in fact a moved one lost something on the side it moves to
        # unless nothing else was left.
        assert abs(part - mark * graduation_mm) <= 1.5 * graduation_mm + 1e-5


@given(segments, tapes, st.data())
def test_measured_segments_keep_their_own_rounding(parts: list[float], graduation_mm: float, data: st.DataObject) -> None:
    fixed = data.draw(st.lists(st.booleans(), min_size=len(parts), max_size=len(parts)))
    chain = reconcile_chain(parts, sum(parts), graduation_mm, fixed)
    for part, mark, moved, is_fixed in zip(parts, chain.marks, chain.moved, fixed, strict=True):
        if is_fixed:
            assert moved == 0
            assert mark == mark_of(part, graduation_mm)
    assert sum(chain.marks) + chain.open_by == chain.total
    if not chain.closes:
        # Everything that may move has moved.
        assert all(is_fixed or moved for is_fixed, moved in zip(fixed, chain.moved, strict=True))


@given(segments, tapes)
def test_a_chain_read_from_the_right_has_the_same_set_of_moves(parts: list[float], graduation_mm: float) -> None:
    there = reconcile_chain(parts, sum(parts), graduation_mm)
    back = reconcile_chain(parts[::-1], sum(parts), graduation_mm)
    assert sorted(there.marks) == sorted(back.marks)


def test_a_mirrored_chain_is_the_mirror_image() -> None:
    # All segments differ, so nothing but the rule itself decides.
    parts = [311.3, 42.4, 907.2, 88.45, 1203.1]
    assert reconcile(parts[::-1], sum(parts), 1.0) == reconcile(parts, sum(parts), 1.0)[::-1]
