from __future__ import annotations

import pytest

from elevation.errors import BadInput, NoSuch
from elevation.sheet.paper import FOOT_INCH, ISO_5455, PAGES, last_page_for, page_named, scale_name, scale_of, scales_for
from elevation.words import Style, say


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [
        ("a4", 297.0, 210.0),  # ISO 216
        ("a3", 420.0, 297.0),  # ISO 216
        ("letter", 11 * 25.4, 8.5 * 25.4),  # ASME Y14.1 size A
        ("tabloid", 17 * 25.4, 11 * 25.4),  # ASME Y14.1 size B
    ],
)
def test_sheet_sizes_are_those_of_the_standards(name: str, width: float, height: float) -> None:
    page = page_named(name.upper())
    assert page.width_mm == pytest.approx(width, abs=1e-9)
    assert page.height_mm == pytest.approx(height, abs=1e-9)


def test_an_unknown_sheet_names_those_that_exist() -> None:
    with pytest.raises(NoSuch, match="a4, a3, letter, tabloid"):
        page_named("folio")
    assert len(PAGES) == 4


def test_scales_of_millimetre_rooms_are_those_that_iso_5455_recommends() -> None:
    # ISO 5455:1979, table of recommended scales: full size and reductions.
    assert ISO_5455 == (1, 2, 5, 10, 20, 50, 100, 200)
    assert scales_for("mm") is ISO_5455


def test_foot_inch_scales() -> None:
    # Architects' scales, ratio 12 in over the inches that show a foot (computed).
    assert FOOT_INCH == (4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192)
    assert scales_for("in") is FOOT_INCH


@pytest.mark.parametrize(
    ("text", "scale"),
    [
        ("1:20", 20.0),
        (" 1 : 2.5 ", 2.5),
        ("2:1", 0.5),
        ("1/2 in = 1 ft", 24.0),
        ("1 1/2 in = 1 ft", 8.0),
        ('1-1/2" = 1\'-0"', 8.0),
        ("3/16 IN=1 FT", 64.0),
        ("3 inches = 1 foot", 4.0),
    ],
)
def test_scales_are_read_as_people_write_them(text: str, scale: float) -> None:
    assert scale_of(text) == scale


@pytest.mark.parametrize(
    "text", ["", "20", "1:0", "0:1", "1/0 in = 1 ft", "-1:20", "1:20 ft", "one to twenty", "1:nan", "1:99999", "99999:1"]
)
def test_what_is_no_scale_is_told(text: str) -> None:
    with pytest.raises(BadInput, match="write"):
        scale_of(text)


@pytest.mark.parametrize("scale", FOOT_INCH)
def test_a_foot_inch_scale_is_read_back_from_its_name(scale: float) -> None:
    message = scale_name(scale, "in")
    assert str(message.params["ratio"]) == f"1:{scale:.0f}"
    assert scale_name(scale, "mm").params == {"ratio": f"1:{scale:.0f}"}


@pytest.mark.parametrize(
    ("scale", "inches"),
    # Architects' scales as they are written on drawings (common practice).
    [
        (4, "3"),
        (8, "1¹⁄₂"),
        (12, "1"),
        (16, "³⁄₄"),
        (24, "¹⁄₂"),
        (32, "³⁄₈"),
        (48, "¹⁄₄"),
        (64, "³⁄₁₆"),
        (96, "¹⁄₈"),
        (128, "³⁄₃₂"),
        (192, "¹⁄₁₆"),
    ],
)
def test_a_foot_inch_scale_is_named_as_architects_do(scale: float, inches: str) -> None:
    assert say(scale_name(scale, "in"), Style()) == f"{inches} in = 1 ft (1:{scale})"


@pytest.mark.parametrize(("scale", "name"), [(1.0, "1:1"), (0.5, "2:1"), (2.5, "1:2.5"), (0.4, "2.5:1"), (20.0, "1:20")])
def test_any_scale_is_named_as_a_ratio_with_one_for_the_smaller(scale: float, name: str) -> None:
    for unit in ("in", "mm"):
        assert say(scale_name(scale, unit), Style()) == name


def test_scales_reach_from_ten_times_to_a_two_thousandth() -> None:
    assert scale_of("10:1") == 0.1
    assert scale_of("1:2000") == 2000.0
    for text in ("10.1:1", "1:2001"):
        with pytest.raises(BadInput, match="beyond what a sheet can show"):
            scale_of(text)


def test_the_last_sheets_have_their_published_sizes() -> None:
    # ISO 216: A2 is 420 x 594 mm. ASME Y14.1: size C is 17 x 22 in.
    assert (last_page_for("mm").width_mm, last_page_for("mm").height_mm) == (594.0, 420.0)
    inches = last_page_for("in")
    assert (inches.width_mm, inches.height_mm) == pytest.approx((22 * 25.4, 17 * 25.4))
