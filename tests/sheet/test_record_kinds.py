"""What moves, leans or hatches a drawing does it to every kind of record."""

from __future__ import annotations

import pytest

from elevation.output.dimension_lines import dimension_lines
from elevation.setting_out.standing import Profile
from elevation.sheet import hatch
from elevation.sheet.leaning import lean
from elevation.sheet.records import Dimension, Fill, Gradient, Line, Path, Pen, Polyline, Stop, Text
from elevation.sheet.work.moved import mapped

PEN = Pen()
STEPS = (("M", 0.0, 100.0), ("L", 100.0, 100.0))
MEASURED = Dimension((), "", (0.0, 100.0), (100.0, 100.0), "x", 120.0, "4 in", (50.0, 122.0), "between")
RECORDS = (
    Line((0.0, 100.0), (100.0, 100.0), PEN),
    Polyline(((0.0, 100.0), (100.0, 100.0)), PEN),
    Path(STEPS, PEN),
    Fill(STEPS, "#ffffff"),
    Fill(STEPS, Gradient((0.0, 100.0), (100.0, 100.0), (Stop(0.0, "#ffffff"), Stop(1.0, "#000000")))),
    Text((100.0, 100.0), "rod", 3.0),
    MEASURED,
)


def test_a_leaning_rod_takes_along_all_that_is_drawn_and_no_dimension() -> None:
    # 10 mm higher at its right end: what was at 100 mm is at 110 there, and where it was at the left.
    line = Profile(((0.0, 100.0), (100.0, 110.0)), True)
    leant = lean(RECORDS, line, 100.0)
    assert leant[0] == Line((0.0, 100.0), (100.0, 110.0), PEN)
    assert leant[1] == Polyline(((0.0, 100.0), (100.0, 110.0)), PEN)
    for one in leant[2:5]:
        assert one.steps[-1][-1] == pytest.approx(110.0)
    assert leant[5] == Text((100.0, 110.0), "rod", 3.0)
    assert leant[6] is MEASURED


def test_what_is_moved_is_moved_whole() -> None:
    def point(at: tuple[float, float]) -> tuple[float, float]:
        return at[0] + 7.0, at[1] - 3.0

    moved = mapped(RECORDS, point)
    assert moved[0] == Line((7.0, 97.0), (107.0, 97.0), PEN)
    assert moved[1].points[-1] == (107.0, 97.0)
    assert all(one.steps[0][1:] == (7.0, 97.0) for one in moved[2:5])
    assert (moved[4].paint.a, moved[4].paint.b) == ((7.0, 97.0), (107.0, 97.0))
    assert moved[5].at == (107.0, 97.0)
    assert (moved[6].a, moved[6].b, moved[6].line, moved[6].text_at) == ((7.0, 97.0), (107.0, 97.0), 117.0, (57.0, 119.0))


def test_hatching_fills_its_box_and_a_box_without_inside_has_none() -> None:
    # Lines 10 mm apart along both edges: of a square of 40 mm the corner lines are points, and no lines.
    lines = hatch.oblique((0.0, 0.0, 40.0, 40.0), 10.0 / 2**0.5)
    assert len([step for step in lines if step[0] == "M"]) == 7
    assert hatch.oblique((0.0, 0.0, 0.0, 40.0), 5.0) == ()
    assert hatch.oblique((0.0, 5.0, 40.0, 5.0), 5.0) == ()


def test_a_dimension_on_what_it_measures_has_no_extension_lines() -> None:
    def lines(at: float) -> int:
        on = Dimension((), "", (0.0, 0.0), (100.0, 0.0), "x", at, "4 in", (50.0, 2.0), "between")
        return len([one for one in dimension_lines(on, 1.0) if isinstance(one, Line)])

    assert lines(40.0) == lines(0.0) + 2
