"""Where a label stands on each rung of the ladder, and that no leader runs through a figure, over crowded lines."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from elevation.sheet.annotation.ladder import APART, CLEAR, STROKE, Line, Rows, _Ladder, climb
from elevation.sheet.annotation.model import Label, Segment
from elevation.sheet.annotation.segments import crosses, crosses_box

NARROW = st.lists(st.floats(0.4, 16.0), min_size=3, max_size=14)
WIDE_TEXT = "50³⁄₈+"


def line_of(lengths: list[float], text: str, crossing: tuple[float, ...] = ()) -> Line:
    ends, start = [], 0.0
    for length in lengths:
        ends.append((start, start + length))
        start += length
    segments = tuple(Segment(("w",), "width", low, high, 0.0, 0.0, (text,)) for low, high in ends)
    return Line(segments, tuple(ends), (-12.0, start + 12.0), crossing, 2.4)


def laid(line: Line, above_is_out: bool = True) -> tuple[Label, ...]:
    return climb(line, Rows(above_is_out), (None,) * len(line.ends))


@settings(max_examples=400)
@given(NARROW, st.booleans(), st.sampled_from(["7", "123", WIDE_TEXT]))
def test_a_label_stands_where_its_rung_says(lengths: list[float], above_is_out: bool, text: str) -> None:
    line = line_of(lengths, text)
    for (low, high), label in zip(line.ends, laid(line, above_is_out), strict=True):
        middle, half = (low + high) / 2, label.width / 2
        off = abs(label.centre - middle)
        if label.rung == "between":
            assert low + STROKE + 0.2 <= label.centre - half + 1e-6
            assert label.centre + half <= high - STROKE - 0.2 + 1e-6
        elif label.rung == "beside":
            # Past one of its own strokes, as near to it as the stroke allows and no farther off than 1.5 mm more.
            gaps = (low - label.centre - half, label.centre - half - high)
            assert STROKE + 0.2 - 1e-6 <= max(gaps) <= STROKE + 0.3 + 1.5
        elif label.rung == "staggered":
            # 1 mm of the figure at least stands under its own dimension's middle.
            assert off <= max(0.0, half - 1.5) + 0.5 + 1e-6
            assert label.leader is None
        elif label.rung == "leader":
            assert label.leader is not None
            x1, y1, x2, y2 = label.leader
            assert (x1, y1) == (middle, 0.0)
            assert label.centre - half + 0.8 - 1e-6 <= x2 <= label.centre + half - 0.8 + 1e-6 or half < 0.8
            assert y2 == pytest.approx(label.near - 0.2)
            assert off <= half + 6.5 + 1e-6


@settings(max_examples=400)
@given(NARROW, st.booleans(), st.sampled_from(["123", WIDE_TEXT]))
def test_leaders_cross_neither_figures_nor_each_other(lengths: list[float], above_is_out: bool, text: str) -> None:
    labels = [label for label in laid(line_of(lengths, text), above_is_out) if label.rung != "key"]
    led = [label for label in labels if label.leader is not None]
    for one in led:
        assert one.leader is not None
        for other in labels:
            if other is not one:
                box = (other.centre - other.width / 2, other.near, other.centre + other.width / 2, other.far)
                assert not crosses_box(one.leader[:2], one.leader[2:], box)
    for one, other in combinations(led, 2):
        assert one.leader is not None
        assert other.leader is not None
        assert not crosses(one.leader[:2], one.leader[2:], other.leader[:2], other.leader[2:])


@settings(max_examples=400)
@given(
    st.lists(st.floats(0.0, 60.0), max_size=6),
    st.lists(st.tuples(st.floats(0.0, 55.0), st.floats(0.5, 8.0)), max_size=4),
    st.floats(0.0, 60.0),
    st.floats(0.5, 12.0),
)
def test_the_free_place_nearest_to_the_wish_is_found(
    crossing: list[float], taken: list[tuple[float, float]], wish: float, width: float
) -> None:
    """Against trying every place that could be the nearest: the wish, and both ends of whatever stands in the way."""
    ladder = _Ladder(line_of([60.0], "1", tuple(crossing)), Rows(True))
    for start, long in taken:
        ladder._put(0, "1", "staggered", 1, start + long / 2, long)
    found = ladder._find(1, 0.0, 60.0, width, wish)
    half = width / 2
    spans = [(place - CLEAR - half, place + CLEAR + half) for place in crossing]
    spans += [(start - APART - half, start + long + APART + half) for start, long in taken]
    clamped = min(max(wish, half), 60.0 - half)
    places = [clamped, *(edge for span in spans for edge in span)]
    free = [
        place
        for place in places
        if half - 1e-9 <= place <= 60.0 - half + 1e-9 and not any(a + 1e-7 < place < b - 1e-7 for a, b in spans)
    ]
    if not free:
        assert found is None
        return
    assert found is not None
    assert abs(found - clamped) == pytest.approx(min(abs(place - clamped) for place in free), abs=1e-6)


def test_of_two_free_places_alike_the_left_one_is_taken() -> None:
    ladder = _Ladder(line_of([60.0], "1", (30.0,)), Rows(True))
    assert ladder._find(1, 0.0, 60.0, 4.0, 30.0) == pytest.approx(30.0 - CLEAR - 2.0)


def test_a_figure_needs_its_width_and_no_more_between_bounds() -> None:
    ladder = _Ladder(line_of([60.0], "1"), Rows(True))
    assert ladder._find(1, 10.0, 15.0, 5.0, 0.0) == pytest.approx(12.5)
    assert ladder._find(1, 10.0, 15.0, 5.001, 0.0) is None


def test_what_matters_more_takes_its_place_first() -> None:
    """Two narrow dimensions beside each other: the one of higher priority is not sent farther out than the other."""
    line = line_of([12.0, 3.0, 3.0, 12.0], "123")
    rungs = ("between", "beside", "staggered", "leader", "key")
    for first in (1, 2):
        segments = tuple(replace(one, priority=1 if place == first else 0) for place, one in enumerate(line.segments))
        labels = laid(Line(segments, line.ends, line.bounds, (), line.letter_room))
        other = 3 - first
        assert rungs.index(labels[first].rung) < rungs.index(labels[other].rung)


def test_beside_means_past_the_end_of_the_chain_or_over_the_wider_neighbour() -> None:
    first, *_ = laid(line_of([3.0, 60.0], "123"))
    assert (first.rung, first.centre < 0.0) == ("beside", True)
    for lengths in ([40.0, 3.0, 60.0], [60.0, 3.0, 40.0]):
        line = line_of(lengths, "123")
        label = laid(line)[1]
        wider_right = lengths[2] > lengths[0]
        assert label.rung == "beside"
        assert (label.centre > line.ends[1][1]) == wider_right
