"""What people type, read exactly.

Sizes of units: NIST Handbook 44 (2024), appendix C, "Units of length": 1 in = 2.54 cm exactly, 1 ft = 12 in = 0.3048 m,
1 yd = 3 ft = 0.9144 m; https://www.nist.gov/pml/owm/nist-handbook-44-current-edition
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from elevation.errors import BadInput
from elevation.units import parse_length
from elevation.units.scan import VULGAR
from elevation.units.writing import length_of

INCH = Fraction(254, 10)


def inches(text: str) -> Fraction:
    """The length in inches that an inch room reads, as the exact ratio nearest to its float."""
    return Fraction(parse_length(text, "in").mm / 25.4).limit_denominator(10_000)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("50 3/8", Fraction(403, 8)),
        ('50-3/8"', Fraction(403, 8)),
        ("50 3 / 8 in", Fraction(403, 8)),
        ("50 3/8in.", Fraction(403, 8)),
        ("50³⁄₈", Fraction(403, 8)),
        ("50 ³⁄₈ inches", Fraction(403, 8)),
        ("50⅜", Fraction(403, 8)),
        ("50-⅜″", Fraction(403, 8)),
        ("3/8", Fraction(3, 8)),
        ("⅜″", Fraction(3, 8)),
        ("½", Fraction(1, 2)),
        ("15/8", Fraction(15, 8)),
        ("63 1/2 in", Fraction(127, 2)),
        ("4' 2 3/8\"", Fraction(403, 8)),
        ("4'2-3/8\"", Fraction(403, 8)),
        ("4'-2 3/8\"", Fraction(403, 8)),
        ("4’ 2 3/8”", Fraction(403, 8)),
        ("4′2″", Fraction(50)),
        ("4'-2''", Fraction(50)),
        ("4 ft 2.5 in", Fraction(101, 2)),
        ("4ft 2,5in", Fraction(101, 2)),
        ("4 Feet 2 Inches", Fraction(50)),
        ("5 ft 3 in", Fraction(63)),
        ("5 ft 3", Fraction(63)),
        ("5'3", Fraction(63)),
        ("12'", Fraction(144)),
        ("2 yd 1 ft 3 in", Fraction(87)),
        ("36 + 2*3 1/2", Fraction(43)),
        ("36 + 2*3 1/2 in", Fraction(43)),
        ("36 + 2 × 3½″", Fraction(43)),
        ("3 1/2 x 2 + 36", Fraction(43)),
        ("2 in * 3", Fraction(6)),
        ("120 - 48 1/2", Fraction(143, 2)),
        ("120-48", Fraction(72)),
        ("120−48", Fraction(72)),
        ("50 - 3/8", Fraction(397, 8)),
        ("50 -3/8", Fraction(397, 8)),
        ("2.5-3/8", Fraction(17, 8)),
        ("50 3/8-1/4", Fraction(401, 8)),
        ("4' - 2\"", Fraction(46)),
        ("10'-2'", Fraction(96)),
        ("-3", Fraction(-3)),
        ("−3 1/2 in", Fraction(-7, 2)),
        ("-4' 2\"", Fraction(-50)),
        ("+3", Fraction(3)),
        ("  7  ", Fraction(7)),
        ("7\u00a0in", Fraction(7)),
        (".5", Fraction(1, 2)),
        (",5", Fraction(1, 2)),
        ("0", Fraction(0)),
        ("1.234,5", Fraction(2469, 2)),
        ("1,234.5", Fraction(2469, 2)),
        ("1,234,567.5 mm - 1,234,000.5 mm + 0 in", Fraction(567 * 10, 254)),
    ],
)
def test_customary_lengths(text: str, expected: Fraction) -> None:
    assert inches(text) == expected


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("127.9 cm", 1279.0),
        ("127,9cm", 1279.0),
        ("1279mm", 1279.0),
        ("1279", 1279.0),
        ("1,28 m", 1280.0),
        ("1.28 m", 1280.0),
        ("1,5 m", 1500.0),
        ("1 m 28 cm", 1280.0),
        ("1 m 28 cm 3 mm", 1283.0),
        ("12.8 dm", 1280.0),
        ("1.234,5", 1234.5),
        ("1.234.567", 1234567.0),
        ("104.775 mm", 104.775),
        ("2 Meter", 2000.0),
        ("50 3/8 in", 1279.525),
        ("6 ft", 1828.8),
        ("1 yd", 914.4),
        ("½ in", 12.7),
        ("2 * 40 + 1200", 1280.0),
        ("1 m + 2 in", 1050.8),
    ],
)
def test_metric_room(text: str, mm: float) -> None:
    assert parse_length(text, "mm").mm == mm


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        # Read the other way these would be longer than 100 m, or they are not three digits after one mark.
        ("100,001 mm", 100.001),
        ("1.280 m", 1280.0),
        ("1,280 m", 1280.0),
        ("10.001 cm", 100.01),
        ("1234,5 mm", 1234.5),
        ("1,2340 mm", 1.234),
        ("1,23 mm", 1.23),
        ("0,375 mm", 0.375),
        ("1234.567 mm", 1234.567),
        ("1,234.0 mm", 1234.0),
        ("1.375 in", 34.925),
        ("1.250 ft", 381.0),
        ("3,938 in", 100.0252),
    ],
)
def test_three_digits_after_a_mark_that_can_mean_one_thing_only(text: str, mm: float) -> None:
    assert parse_length(text, "mm").mm == pytest.approx(mm, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "unit", "kept"),
    [
        ("50 3/8", "in", "50 3/8 in"),
        ("1280", "mm", "1280 mm"),
        ("  4' 2 3/8\" ", "mm", "4' 2 3/8\""),
        ("50 3/8 in", "mm", "50 3/8 in"),
        ("36 + 2*3 1/2", "in", "36 in + 2*3 1/2 in"),
        ("36 in + 2", "in", "36 in + 2 in"),
        ("5 ft 3", "mm", "5 ft 3"),
        ("50³⁄₈+ in", "in", "50³⁄₈ in"),
        ("50³⁄₈−", "in", "50³⁄₈ in"),
        ("50\t3/8", "in", "50 3/8 in"),
    ],
)
def test_text_is_kept_and_reads_the_same_in_any_room(text: str, unit: str, kept: str) -> None:
    length = parse_length(text, unit)
    assert length.text == kept
    assert parse_length(length.text, "in") == length == parse_length(length.text, "mm")


def test_ready_made_fractions_are_unicode_s() -> None:
    # unicodedata is the Unicode Character Database of the Python that runs this: an independent table.
    import unicodedata

    for char, (top, bottom) in VULGAR.items():
        assert Fraction(unicodedata.numeric(char)).limit_denominator(20) == Fraction(top, bottom)


@pytest.mark.parametrize(
    ("text", "unit", "place", "part"),
    [
        ("", "in", "", "is empty"),
        ("   ", "in", "", "is empty"),
        ("50 3/", "in", "character 6", "lower number of a fraction"),
        ("/8", "in", "character 1", "a number was expected"),
        ("1/0", "in", "character 3", "cannot be 0"),
        ("50¹⁄₀", "in", "character 3", "cannot be 0"),
        ("50 9/8", "in", "character 4", "less than 1"),
        ("12-36/2", "in", "character 4", "less than 1"),
        ("10'-14\"", "in", "character 5", "hyphen"),
        ("2.5 1/2", "in", "character 5", "decimal"),
        ("1.5/2", "in", "character 1", "whole"),
        ("1 280 mm", "mm", "character 3", "expected"),
        ("50 3/8 1/8", "in", "character 8", "expected"),
        ("3 lb", "in", "character 3", "lb is not a unit"),
        ("m", "mm", "character 1", "a number was expected"),
        ("2 in * 3 in", "in", "character 8", "area"),
        ("5 in 3 ft", "in", "character 6", "cannot follow"),
        ("1 m 2 in", "in", "character 5", "cannot follow"),
        ("1 m 28", "mm", "character 7", "unit of this number"),
        ("120 cm + 5", "mm", "character 10", "unit of this number"),
        ("36 + 10 cm", "in", "character 1", "unit of this number"),
        ("36 in + 2", "mm", "character 9", "unit of this number"),
        ("36+", "in", "character 4", "ends where"),
        ("36 +", "in", "character 5", "ends where"),
        ("36 * ", "in", "character 5", "ends where"),
        ("5 - -3", "in", "character 5", "a number was expected"),
        ("2 * -3", "in", "character 5", "a number was expected"),
        ("--3", "in", "character 2", "a number was expected"),
        ("(3)", "in", "character 1", "a number was expected"),
        ("1.2.3", "in", "character 1", "commas and dots"),
        ("12.3456.7,5", "in", "character 1", "commas and dots"),
        ("1,2.3,4", "in", "character 1", "commas and dots"),
        ("1,234 mm", "mm", "character 1", "1,234 can mean 1234 or 1.234; write 1234, or 1,2340 for the smaller one"),
        ("1.234", "mm", "character 1", "1.234 can mean 1234 or 1.234; write 1234, or 1.2340"),
        ("1,234 mm", "in", "character 1", "1,234 can mean 1234"),
        ("500 + 2 * 1.250", "mm", "character 11", "1.250 can mean 1250 or 1.25"),
        ("2 * 1,250 mm", "in", "character 5", "1,250 can mean"),
        ("1,234 * 2 cm", "in", "character 1", "1,234 can mean"),
        ("1 m 1,234 mm", "mm", "character 5", "1,234 can mean"),
        ("100,000 mm", "mm", "character 1", "100,000 can mean 100000 or 100"),
        ("1,375 in", "in", "character 1", "1,375 can mean 1375 or 1.375"),
        ("1,375", "in", "character 1", "1,375 can mean"),
        ("5,", "in", "character 2", "expected"),
        ("1e5", "in", "character 2", "not a unit"),
        ("nan", "in", "character 1", "not a unit"),
        ("inf in", "in", "character 1", "not a unit"),
        ("__import__('os')", "in", "character 1", "expected"),
        ("٣ in", "in", "character 1", "expected"),
        ("3\x00", "in", "character 2", "expected"),
        ("2²", "in", "character 2", "expected"),
        ("9" * 13, "in", "character 1", "more than 12 digits"),
        ("¹" * 20 + "⁄₂", "in", "character 1", "more than 12 digits"),
        ("999999999 m", "in", "", "10 km"),
        ("1 + " * 40 + "1", "in", "", "characters long"),
    ],
)
def test_refused_with_place_and_expectation(text: str, unit: str, place: str, part: str) -> None:
    with pytest.raises(BadInput) as caught:
        parse_length(text, unit, what="den.room.json", where="walls[0].width")
    sentence = str(caught.value)
    assert sentence.startswith("den.room.json: walls[0].width: ")
    assert place in sentence
    assert part in sentence
    assert sentence.isprintable()


def test_never_read_as_the_quantity_library_would() -> None:
    # pint 0.25 reads these three as 31.5 in, 15 m and an area: the reason why it never sees a person's text.
    assert inches("63 1/2 in") == Fraction(127, 2)
    assert parse_length("1,5 m").mm == 1500
    assert inches("5 ft 3 in") == 63


def test_what_the_program_writes_with_three_decimals_reads_back() -> None:
    # A tape of 1/8 mm: its marks have three decimals.
    written = length_of(12.125, "mm", 0.125)
    assert written.mm == 12.125
    assert parse_length(written.text) == parse_length(written.text, "mm") == written


def test_a_unit_that_nobody_knows_is_a_fault_of_the_caller() -> None:
    with pytest.raises(ValueError, match="no such unit: 'ell'"):
        parse_length("3", unit="ell")
