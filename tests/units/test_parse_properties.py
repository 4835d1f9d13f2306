"""Lengths written in every way the grammar allows, beside their exact value; and noise."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from elevation.errors import BadInput
from elevation.units import Length, parse_length
from elevation.units.format import set_fraction
from elevation.units.parse import LARGEST_MM, LONGEST_TEXT

# Sizes in mm, typed here again: NIST Handbook 44, appendix C.
SIZE = {"in": Fraction(254, 10), "ft": Fraction(3048, 10), "cm": Fraction(10), "m": Fraction(1000), "mm": Fraction(1)}
SPELT = {
    "in": ["in", '"', " inches", "″", " in."],
    "ft": ["ft", "'", " feet", "′"],
    "cm": ["cm", " cm"],
    "m": ["m", " m"],
    "mm": ["mm", " mm"],
}

Written = tuple[str, Fraction]


@st.composite
def fractions(draw: st.DrawFn) -> Written:
    bottom = draw(st.sampled_from([2, 4, 8, 16, 32, 3, 10]))
    top = draw(st.integers(1, bottom - 1))
    text = draw(st.sampled_from([f"{top}/{bottom}", f"{top} / {bottom}", f"{top}⁄{bottom}", set_fraction(top, bottom)]))
    return text, Fraction(top, bottom)


@st.composite
def numbers(draw: st.DrawFn) -> Written:
    kind = draw(st.sampled_from(["whole", "decimal", "fraction", "mixed"]))
    whole = draw(st.integers(0, 400))
    if kind == "whole":
        return str(whole), Fraction(whole)
    if kind == "decimal":
        # Two or four digits: three may be thousands, which test_parse.py has case by case.
        digits = draw(st.sampled_from([2, 4]))
        part = draw(st.integers(0, 10**digits - 1))
        mark = draw(st.sampled_from(".,"))
        return f"{whole}{mark}{part:0{digits}d}", whole + Fraction(part, 10**digits)
    text, value = draw(fractions())
    if kind == "fraction":
        return text, value
    joint = draw(st.sampled_from([" ", "-", "  "]))
    return f"{whole}{joint}{text}", whole + value


@st.composite
def measures(draw: st.DrawFn) -> Written:
    text, value = draw(numbers())
    unit = draw(st.sampled_from(sorted(SIZE)))
    text, value = text + draw(st.sampled_from(SPELT[unit])), value * SIZE[unit]
    smaller = {"ft": "in", "m": "cm"}.get(unit)
    if smaller and draw(st.booleans()):
        more, size = draw(numbers())
        text, value = f"{text} {more}{draw(st.sampled_from(SPELT[smaller]))}", value + size * SIZE[smaller]
    return text, value


@st.composite
def sums(draw: st.DrawFn) -> Written:
    text, value = draw(measures())
    for _ in range(draw(st.integers(0, 2))):
        more, size = draw(measures())
        times = draw(st.integers(1, 4))
        if times > 1:
            more, size = f"{times} {draw(st.sampled_from('*×'))} {more}", times * size
        if draw(st.booleans()):
            text, value = f"{text} + {more}", value + size
        else:
            text, value = f"{text} - {more}", value - size
    return text, value


@given(sums(), st.sampled_from(["in", "mm"]))
def test_exact_value_in_any_room(written: Written, unit: str) -> None:
    text, value = written
    if len(text) > LONGEST_TEXT:
        return
    length = parse_length(text, unit)
    assert length.mm == float(value)
    assert length.text == text.strip()


@given(numbers(), st.sampled_from(["in", "mm"]))
def test_bare_numbers_take_the_room_s_unit(written: Written, unit: str) -> None:
    text, value = written
    length = parse_length(text, unit)
    assert length == Length(float(value * SIZE[unit]), f"{text} {unit}")
    assert parse_length(length.text, "mm" if unit == "in" else "in") == length


@given(
    st.one_of(
        st.text(max_size=30),
        st.text(alphabet="0123456789 .,/-+*'\"″′½⅜³⁄₈₀⁰inftcm−×x", max_size=20),
    ),
    st.sampled_from(["in", "mm"]),
)
def test_anything_else_is_refused_in_one_line(text: str, unit: str) -> None:
    try:
        length = parse_length(text, unit)
    except BadInput as error:
        said = str(error)
    else:
        said = length.text
        assert abs(length.mm) <= LARGEST_MM
        # What was read reads the same in any room: files keep the text, not the room's unit of that day.
        assert parse_length(length.text, "in") == length == parse_length(length.text, "mm")
    assert said.isprintable()
