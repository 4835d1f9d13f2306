"""Rounding to the tape's marks and the figures that show it.

The tie rule: NIST Handbook 44, section 10 "Rounding Numerical Values", 10.3 "Rules for Reading of Indications": an
indication half way between two graduations is read as the even one. NIST SP 811 (2008), B.7.1, has the same for digits.
https://www.nist.gov/pml/owm/nist-handbook-44-current-edition
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation.units import (
    format_at_mark,
    format_length,
    format_mark,
    length_of,
    mark_of,
    mm_of_mark,
    parse_length,
    quantise,
)
from elevation.units.format import round_half_even

EIGHTH, SIXTEENTH, THIRTY_SECOND = 25.4 / 8, 25.4 / 16, 25.4 / 32
TAPES = [("in", EIGHTH), ("in", SIXTEENTH), ("in", THIRTY_SECOND), ("mm", 1.0), ("mm", 5.0)]


@pytest.mark.parametrize(
    ("inches", "graduation_mm", "figure"),
    [
        (0.40625, SIXTEENTH, "3/8"),  # 6.5 sixteenths: a tie, down to the even 6
        (1.03125, SIXTEENTH, "1"),  # 16.5: down to 16
        (35.96875, SIXTEENTH, "36"),  # 575.5: up to 576
        (12.71875, SIXTEENTH, "12 3/4"),  # 203.5: up to 204
        (0.015625, SIXTEENTH, "0"),  # a quarter of a graduation
        (0.03125, SIXTEENTH, "0"),  # 0.5: down to 0
        (0.09375, SIXTEENTH, "1/8"),  # 1.5: up to 2
        (2.999, SIXTEENTH, "3"),
        (2.9375, SIXTEENTH, "2 15/16"),
        (0.0625, EIGHTH, "0"),
        (0.1875, EIGHTH, "1/4"),
        (50.375, EIGHTH, "50 3/8"),
        (50.359375, THIRTY_SECOND, "50 3/8"),  # 1611.5 thirty-seconds: up to 1612
        (50.34375, THIRTY_SECOND, "50 11/32"),
        (-0.40625, SIXTEENTH, "-3/8"),
        (-12.71875, SIXTEENTH, "-12 3/4"),
        (-0.01, SIXTEENTH, "0"),
    ],
)
def test_handbook_44_ties_in_inches(inches: float, graduation_mm: float, figure: str) -> None:
    assert format_length(inches * 25.4, "in", graduation_mm, plain=True, sign=False) == figure


@pytest.mark.parametrize(
    ("mm", "graduation_mm", "figure"),
    [
        (0.5, 1.0, "0"),
        (1.5, 1.0, "2"),
        (2.5, 1.0, "2"),
        (1279.525, 1.0, "1280"),
        (2.5, 5.0, "0"),
        (7.5, 5.0, "10"),
        (1282.4, 5.0, "1280"),
        (1282.6, 5.0, "1285"),
        (12.25, 0.5, "12"),
        (12.75, 0.5, "13"),
        (12.6, 0.5, "12,5"),
    ],
)
def test_handbook_44_ties_in_millimetres(mm: float, graduation_mm: float, figure: str) -> None:
    assert format_length(mm, "mm", graduation_mm, decimal_mark=",", sign=False) == figure


@pytest.mark.parametrize("noise_mm", [-1e-9, 0.0, 1e-9])
def test_float_noise_never_decides_a_tie(noise_mm: float) -> None:
    assert mark_of(203.5 * SIXTEENTH + noise_mm, SIXTEENTH) == 204
    assert mark_of(202.5 * SIXTEENTH + noise_mm, SIXTEENTH) == 202


def test_figures_as_they_are_set() -> None:
    assert format_length(50.375 * 25.4, "in", EIGHTH) == "50\u00b3\u2044\u2088"
    assert format_length(15 / 16 * 25.4, "in", SIXTEENTH, with_unit=True) == "¹⁵⁄₁₆ in"
    assert format_length(-0.5 * 25.4, "in", EIGHTH) == "\u2212¹⁄₂"
    assert format_length(1280.0, "mm", 1.0, with_unit=True) == "1280 mm"
    assert format_length(0.0, "in", EIGHTH) == "0"
    assert format_mark(403, "in", EIGHTH, plain=True) == "50 3/8"
    assert format_length(1280.0, "in", 1.0, plain=True) == "50.3937"


@pytest.mark.parametrize(
    ("mm", "sign"),
    [(76.2, ""), (76.2 + 1e-7, ""), (76.2 + 1e-3, "+"), (76.2 - 1e-3, "−"), (76.9, "+"), (75.5, "−")],
)
def test_a_sign_says_that_something_was_rounded_away(mm: float, sign: str) -> None:
    assert format_length(mm, "in", SIXTEENTH) == f"3{sign}"
    assert format_length(mm, "in", SIXTEENTH, sign=False) == "3"
    assert format_length(mm, "in", SIXTEENTH, plain=True) == "3" + sign.replace("−", "-")


def test_the_sign_of_a_moved_segment_looks_from_its_figure() -> None:
    assert format_at_mark(10.4, 11, "mm", 1.0) == "11−"
    assert format_at_mark(10.4, 10, "mm", 1.0) == "10+"
    assert format_at_mark(10.0, 10, "mm", 1.0) == "10"


def test_lengths_written_for_files() -> None:
    assert length_of(50.37 * 25.4, "in", EIGHTH).text == "50 3/8 in"
    assert length_of(1279.525, "mm", 1.0).text == "1280 mm"
    assert length_of(1279.525, "mm", 1.0).mm == 1280.0
    assert length_of(12.6, "mm", 0.5).text == "12.5 mm"


@pytest.mark.parametrize("graduation_mm", [0.0, -1.0, float("nan"), float("inf"), 1e-9])
def test_a_graduation_is_a_positive_length(graduation_mm: float) -> None:
    with pytest.raises(ValueError, match="too fine" if graduation_mm == 1e-9 else "positive length"):
        quantise(1.0, graduation_mm)


def test_only_two_units_are_shown() -> None:
    with pytest.raises(ValueError, match="'in' or 'mm'"):
        format_length(1.0, "ft", 1.0)


lengths = st.floats(-20_000, 20_000, allow_nan=False)
tapes = st.sampled_from(TAPES)


@given(lengths, tapes, st.booleans(), st.booleans(), st.sampled_from(".,"))
def test_shown_then_read_is_the_rounded_length(
    mm: float, tape: tuple[str, float], plain: bool, sign: bool, decimal_mark: str
) -> None:
    unit, graduation_mm = tape
    shown = format_length(mm, unit, graduation_mm, decimal_mark=decimal_mark, with_unit=True, plain=plain, sign=sign)
    assert parse_length(shown, "in").mm == quantise(mm, graduation_mm)


@given(lengths, tapes)
def test_a_written_length_is_exactly_its_text(mm: float, tape: tuple[str, float]) -> None:
    unit, graduation_mm = tape
    length = length_of(mm, unit, graduation_mm)
    assert length == parse_length(length.text, "mm") == parse_length(length.text, "in")
    assert length.mm == quantise(mm, graduation_mm)
    assert length_of(length.mm, unit, graduation_mm) == length


@given(st.integers(-20_000, 20_000), tapes)
def test_marks_survive_both_ways(mark: int, tape: tuple[str, float]) -> None:
    unit, graduation_mm = tape
    mm = mm_of_mark(mark, graduation_mm)
    assert mark_of(mm, graduation_mm) == mark
    shown = format_length(mm, unit, graduation_mm, with_unit=True)
    assert not shown.split()[0].endswith(("+", "−"))
    assert mark_of(parse_length(shown).mm, graduation_mm) == mark


@given(lengths, tapes)
def test_nearest_and_even_by_exact_arithmetic(mm: float, tape: tuple[str, float]) -> None:
    unit, graduation_mm = tape
    # Independent reference: Python's round() of an exact Fraction, which rounds half to even.
    exact = Fraction(254, 10) / round(25.4 / graduation_mm) if unit == "in" else Fraction(graduation_mm)
    marks = Fraction(mm) / exact
    near_tie = abs(marks % 1 - Fraction(1, 2)) * exact < Fraction(1, 500_000)
    if not near_tie:
        assert mark_of(mm, graduation_mm) == round(marks)
    assert abs(quantise(mm, graduation_mm) - mm) <= graduation_mm / 2 + 2e-6


@given(st.integers(-40_000, 40_000), tapes)
def test_exact_ties_go_to_the_even_mark(low: int, tape: tuple[str, float]) -> None:
    _, graduation_mm = tape
    assert mark_of((low + 0.5) * graduation_mm, graduation_mm) == round(Fraction(2 * low + 1, 2))


@pytest.mark.parametrize(
    ("numerator", "denominator", "nearest"),
    [
        (1, 3, 0),
        (2, 3, 1),
        (1, 2, 0),
        (3, 2, 2),
        (5, 2, 2),
        (7, 2, 4),
        (49, 100, 0),
        (51, 100, 1),
        (8, 4, 2),
        (13, 8, 2),
        (11, 8, 1),
    ],
)
def test_half_goes_to_the_even_number(numerator: int, denominator: int, nearest: int) -> None:
    assert round_half_even(numerator, denominator) == nearest


@pytest.mark.parametrize(
    ("mark", "unit", "graduation_mm", "figure"),
    [
        # 1 mm is 5/127 in = 0.03937; 2 mm 0.07874; 127 mm are 5 in: no tape's fraction, so decimals, at most four.
        (1, "in", 1.0, "0.0394"), (2, "in", 1.0, "0.0787"), (127, "in", 1.0, "5"), (-1, "in", 1.0, "-0.0394"),
        # 1/64 in is the finest fraction of a tape; 1/128 in = 0.0078125.
        (1, "in", 25.4 / 64, "1/64"), (65, "in", 25.4 / 64, "1 1/64"), (1, "in", 25.4 / 128, "0.0078"),
        # 1/16 in in mm is 1.5875 exactly; 0.00125 and 0.00375 mm are ties of the fourth decimal.
        (1, "mm", 25.4 / 16, "1.5875"), (16, "mm", 25.4 / 16, "25.4"),
        (1, "mm", 0.00125, "0.0012"), (3, "mm", 0.00125, "0.0038"),
    ],
)  # fmt: skip
def test_figures_of_the_other_system(mark: int, unit: str, graduation_mm: float, figure: str) -> None:
    assert format_mark(mark, unit, graduation_mm, plain=True) == figure


def test_fractions_are_set_unless_asked_for_plain() -> None:
    assert format_mark(6, "in", 25.4 / 16) == "³⁄₈"


@pytest.mark.parametrize("graduation_mm", [25.4 / 16, 1.0, 5.0])
def test_a_tie_is_a_tie_within_a_millionth_of_a_millimetre_whatever_the_graduation(graduation_mm: float) -> None:
    # Half way between the second and the third mark: the tie goes to the second, beyond it to the third.
    middle_mm = 2.5 * graduation_mm
    assert mark_of(middle_mm + 0.9e-6, graduation_mm) == 2
    assert mark_of(middle_mm + 1.1e-6, graduation_mm) == 3
    # Between the first and the second: the tie goes to the second, before it to the first.
    middle_mm = 1.5 * graduation_mm
    assert mark_of(middle_mm - 0.9e-6, graduation_mm) == 2
    assert mark_of(middle_mm - 1.1e-6, graduation_mm) == 1
