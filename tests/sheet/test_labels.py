"""The label ladder: each rung, and over real and random walls no label on another or off the sheet."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation.output.dimension_lines import dimension_lines
from elevation.room.style import style_for
from elevation.setting_out.model import Point
from elevation.sheet.annotation import RUNGS, Annotation
from elevation.sheet.annotation.ladder import Line, Rows, climb
from elevation.sheet.annotation.letters import ALPHABET, letter, letter_room
from elevation.sheet.annotation.model import FIGURE, Label, Segment
from elevation.sheet.annotation.segments import crosses_box
from elevation.sheet.elevation import arranged_sheet
from elevation.sheet.furniture import inside
from elevation.sheet.records import Dimension, Polyline
from elevation.sheet.records import Line as Straight
from elevation.sheet.type_metrics import text_width
from tests.sheet.sheet_cases import case_of, demo_cases, lay, overlapping, trade
from tests.strategies import random_walls

RANDOM_WALLS = 500
FEW_WALLS = 120
"""So many of them at every run; all of them with the slow tests."""


def _line(
    lengths: list[float], text: str = "123", crossing: tuple[float, ...] = (), bounds: tuple[float, float] | None = None
) -> Line:
    ends, start = [], 0.0
    for length in lengths:
        ends.append((start, start + length))
        start += length
    segments = tuple(Segment(("w",), "width", low, high, 0.0, 0.0, (text,)) for low, high in ends)
    return Line(segments, tuple(ends), bounds or (-12.0, start + 12.0), crossing, 2.4)


def _rungs(lengths: list[float], **given_: object) -> list[str]:
    line = _line(lengths, **given_)  # type: ignore[arg-type]
    return [label.rung for label in climb(line, Rows(True), (None,) * len(lengths))]


def test_a_figure_stands_between_its_strokes_where_it_fits() -> None:
    assert _rungs([30.0, 40.0]) == ["between", "between"]


def test_a_narrow_one_stands_beside_over_the_neighbours_free_part() -> None:
    assert _rungs([60.0, 3.0, 60.0]) == ["between", "beside", "between"]


def test_where_the_neighbour_is_full_it_goes_to_the_second_level() -> None:
    assert _rungs([12.0, 3.0, 12.0]) == ["between", "staggered", "between"]


def test_two_that_would_meet_there_are_told_apart_by_a_leader() -> None:
    rungs = _rungs([12.0, 3.0, 3.0, 12.0])
    assert rungs[0] == rungs[3] == "between"
    assert set(rungs[1:3]) == {"staggered", "leader"}


def test_the_last_rung_is_a_key_letter_and_always_works() -> None:
    rungs = _rungs([0.4] * 40, bounds=(0.0, 16.0))
    assert set(rungs) <= set(RUNGS)
    assert rungs.count("key") > 20


@pytest.mark.parametrize("spare", [-0.01, 0.01])
def test_a_figure_needs_room_to_spare_to_climb_and_keeps_its_rung_until_that_is_used_up(spare: float) -> None:
    # Strokes and clearances at both ends take 2.6 mm; 1 mm of spare lies between gaining a rung and losing it.
    width = text_width("123", FIGURE)
    gains, loses = width + 2.6 + 1.0, width + 2.6

    def rung(length: float, previous: str | None) -> str:
        labels = climb(_line([40.0, length, 40.0]), Rows(True), (None, previous, None))
        return labels[1].rung

    assert (rung(gains + spare, "staggered") == "between") == (spare > 0)
    assert (rung(loses + spare, "between:0") == "between") == (spare > 0)
    assert rung((gains + loses) / 2, "between:0") == "between"
    assert rung((gains + loses) / 2, "beside:+1") == "beside"


def _box(label: Label) -> tuple[float, float, float, float]:
    return label.centre - label.width / 2, label.near, label.centre + label.width / 2, label.far


@given(
    st.lists(st.floats(0.1, 45.0), min_size=1, max_size=30),
    st.booleans(),
    st.lists(st.floats(0.0, 200.0), max_size=8),
    st.sampled_from(["1", "123", "50³⁄₈+"]),
)
def test_labels_of_one_line_never_meet_and_keep_their_bounds(
    lengths: list[float], above_is_out: bool, crossing: list[float], text: str
) -> None:
    line = _line(lengths, text, tuple(crossing))
    labels = climb(line, Rows(above_is_out), (None,) * len(lengths))
    boxes = [_box(label) for label in labels]
    for place, one in enumerate(boxes):
        assert line.bounds[0] - 1e-6 <= one[0]
        assert one[2] <= line.bounds[1] + 1e-6
        for other in boxes[place + 1 :]:
            assert not (one[0] < other[2] - 1e-6 and other[0] < one[2] - 1e-6 and one[1] < other[3] and other[1] < one[3])


@given(st.lists(st.floats(1.0, 45.0), min_size=2, max_size=12), st.booleans())
def test_a_leader_runs_through_no_label(lengths: list[float], above_is_out: bool) -> None:
    labels = climb(_line(lengths), Rows(above_is_out), (None,) * len(lengths))
    for label in labels:
        if label.leader is None or label.rung == "key":
            continue
        for other in labels:
            if other is not label:
                left, near, right, far = _box(other)
                assert not crosses_box(label.leader[:2], label.leader[2:], (left, near, right, far))


def test_letters_run_on_after_the_alphabet() -> None:
    letters = [letter(index) for index in range(500)]
    assert letters[: len(ALPHABET)] == list(ALPHABET)
    assert letters[len(ALPHABET)] == "AA"
    assert len(set(letters)) == 500
    for count in (1, 21, 22, 462, 463):
        assert all(text_width(text, FIGURE) <= letter_room(count, FIGURE) + 1e-9 for text in letters[:count])


def test_over_the_demo_rooms_no_two_labels_overlap_and_none_leaves_the_sheet() -> None:
    for case in demo_cases():
        _check_sheet(case)


@pytest.mark.parametrize("count", [FEW_WALLS, pytest.param(RANDOM_WALLS, marks=pytest.mark.slow)])
def test_over_random_walls_no_two_labels_overlap_and_none_leaves_the_sheet(count: int) -> None:
    rungs: Counter[str] = Counter()
    for room, wall in random_walls(count):
        scheme_id = wall.schemes[0].id if wall.schemes else None
        rungs.update(_check_sheet(case_of(room, wall, scheme_id)))
    # Every rung is in use, or this test would say nothing about it; the last one is the rarest.
    total = sum(rungs[rung] for rung in RUNGS)
    assert all(rungs[rung] > 0.01 * total for rung in RUNGS)
    assert rungs["key"] < 0.15 * total
    assert rungs["between"] > 0.4 * total


def _check_sheet(case: object) -> Counter[str]:
    room, set_out, findings = case  # type: ignore[misc]
    arranged = arranged_sheet(room, set_out, findings, trade(), style_for(room))
    annotation = arranged.annotation
    assert overlapping(annotation) == []
    place = inside(arranged.page)
    x, y = arranged.origin
    for (left, bottom, right, top), text, _ in annotation.labels:
        assert place.left <= left + x, text
        assert right + x <= place.right, text
        assert place.bottom <= bottom + y, text
        assert top + y <= place.top, text
    return Counter(rung for _, _, rung in annotation.labels)


def _strokes(annotation: Annotation, scale: float) -> list[tuple[Point, Point]]:
    """Every line of every dimension, paper mm from the wall's origin."""
    found = []
    for group in annotation.groups:
        for record in group.records:
            if not isinstance(record, Dimension):
                continue
            for part in dimension_lines(record, scale):
                if isinstance(part, Straight):
                    found.append((part.a, part.b))
                elif isinstance(part, Polyline):
                    found.extend(pairwise(part.points))
    return [((a[0] / scale, a[1] / scale), (b[0] / scale, b[1] / scale)) for a, b in found]


def test_on_the_sheets_of_the_demo_rooms_no_line_runs_through_a_label() -> None:
    for room, set_out, findings in demo_cases():
        arranged = arranged_sheet(room, set_out, findings, trade(), style_for(room))
        strokes = _strokes(arranged.annotation, arranged.scale)
        assert strokes
        for (left, bottom, right, top), text, rung in arranged.annotation.labels:
            if rung != "mark":
                # A quarter of a millimetre of every box is air.
                box = (left + 0.25, bottom + 0.25, right - 0.25, top - 0.25)
                assert not any(crosses_box(a, b, box) for a, b in strokes), text


@pytest.mark.parametrize("scale", [6.0, 10.0, 18.0, 30.0, 75.0])
def test_on_the_screen_at_any_zoom_no_two_labels_overlap(scale: float) -> None:
    for case in demo_cases():
        assert overlapping(lay(case, scale)) == []
