from __future__ import annotations

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont

from elevation.places import resources
from elevation.sheet.make_advances import table_text
from elevation.sheet.type_files import WEIGHTS, font_path
from elevation.sheet.type_metrics import CAP, DESCENT, shorten, text_width, wrap

SAMPLES = (
    "50³⁄₈",
    "To AVA, Wäsche fi ffl 127,9",
    "rod 1280 mm, cut 1330 mm",
    "The rod hangs 2¹⁄₂ in over the casing; 3 in is the least.",
)


def test_the_committed_table_is_what_the_script_makes() -> None:
    assert (resources() / "type" / "advances.json").read_text("utf-8") == table_text()


@pytest.mark.parametrize("weight", WEIGHTS)
@pytest.mark.parametrize("text", SAMPLES)
def test_widths_agree_with_fonttools(text: str, weight: str) -> None:
    # Reference: the font's own hmtx table read by fontTools.
    font = TTFont(font_path(weight))
    names, metrics = font.getBestCmap(), font["hmtx"]
    expected = sum(metrics[names[ord(character)]][0] for character in text) / font["head"].unitsPerEm * 3.5
    assert text_width(text, 3.5, weight) == pytest.approx(expected, rel=3e-4)


@pytest.mark.parametrize("weight", WEIGHTS)
@pytest.mark.parametrize("text", SAMPLES)
def test_widths_agree_with_pillow(text: str, weight: str) -> None:
    # Reference: Pillow's basic layout (FreeType advances, no shaping), at a size where its rounding is small.
    font = ImageFont.truetype(str(font_path(weight)), 1000, layout_engine=ImageFont.Layout.BASIC)
    # Basic layout still kerns pairs, so letters are measured one by one.
    expected = sum(font.getlength(character) for character in text) / 1000 * 3.5
    assert text_width(text, 3.5, weight) == pytest.approx(expected, rel=3e-4)


@pytest.mark.parametrize("weight", WEIGHTS)
def test_heights_are_the_fonts(weight: str) -> None:
    font = TTFont(font_path(weight))
    per_em = font["head"].unitsPerEm
    assert pytest.approx(font["OS/2"].sCapHeight / per_em, abs=1e-3) == CAP
    glyphs, names = font["glyf"], font.getBestCmap()
    assert -min(glyphs[names[ord(letter)]].yMin for letter in "gpqyj") / per_em <= DESCENT + 0.02


def test_characters_that_the_font_lacks_have_some_room() -> None:
    assert text_width("窓", 10.0) == 10.0
    assert text_width("\u0001\u200b", 10.0) < 3.0


@given(st.text(max_size=120), st.floats(8.0, 80.0))
def test_wrapped_lines_fit_and_lose_nothing(text: str, width: float) -> None:
    lines = wrap(text, 3.0, width)
    assert all(text_width(line, 3.0) <= width or len(line) == 1 for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


@given(st.text(max_size=60), st.floats(4.0, 80.0))
def test_shortened_text_fits(text: str, width: float) -> None:
    short = shorten(text, 3.0, width)
    assert short == text or short.endswith("…")
    assert text_width(short, 3.0) <= max(width, text_width("…", 3.0))
