import pytest

from elevation.sheet import inks
from elevation.sheet.records import Ink

GROUNDS = (Ink.PAPER, Ink.WALL, inks.WALL_LOW)


@pytest.mark.parametrize(
    ("ink", "ground", "ratio"),
    [
        # W3C, WCAG 2.2, contrast ratio: from 1 (none) to 21 (black on white).
        ("#000000", "#ffffff", 21.0),
        ("#ffffff", "#ffffff", 1.0),
        # The palest grey that passes 4.5 on white, and the next that does not (W3C technique G18; figures from memory).
        ("#767676", "#ffffff", 4.54),
        ("#777777", "#ffffff", 4.48),
    ],
)
def test_contrast_is_that_of_wcag(ink, ground, ratio):
    assert inks.contrast(ink, ground) == pytest.approx(ratio, abs=0.005)
    assert inks.contrast(ground, ink) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("ink", [Ink.TEXT, Ink.OUTLINE, Ink.THIN, Ink.ACCENT, Ink.HELD])
def test_text_reads_on_paper_and_wall(ink, ground):
    # WCAG 2.2, 1.4.3: 4.5 to 1.
    assert inks.contrast(ink, ground) >= 4.5


@pytest.mark.parametrize("ground", GROUNDS)
def test_quiet_text_reads(ground):
    assert inks.contrast(Ink.QUIET, ground) >= 4.5


@pytest.mark.parametrize("ground", [*GROUNDS, Ink.FLOOR])
@pytest.mark.parametrize("ink", [Ink.OUTLINE, Ink.THIN, Ink.METAL, Ink.ACCENT, Ink.HELD, Ink.GHOST])
def test_marks_are_seen_on_every_ground(ink, ground):
    # WCAG 2.2, 1.4.11: 3 to 1.
    assert inks.contrast(ink, ground) >= 3.0


def test_the_accent_stands_apart_from_what_is_held_by_more_than_hue_names():
    assert inks.colour(Ink.ACCENT) != inks.colour(Ink.HELD)


@pytest.mark.parametrize("ink", list(Ink))
def test_every_role_has_a_colour(ink):
    assert len(inks.colour(ink)) == 7
    assert inks.colour(ink).startswith("#")


def test_a_colour_stands_for_itself_and_anything_else_is_refused():
    assert inks.colour("#12ab34cd") == "#12ab34cd"
    with pytest.raises(KeyError):
        inks.colour("mauve")


def test_blending_goes_from_one_colour_to_the_other():
    assert inks.blend("#000000", "#ffffff", 0.0) == "#000000"
    assert inks.blend("#000000", "#ffffff", 1.0) == "#ffffff"
    assert inks.blend("#20406080", "#204060", 0.5) == "#20406080"
    assert inks.with_alpha("#204060", 0.5) == "#20406080"


def test_fine_lines_of_mouldings_are_seen_on_the_trim():
    assert inks.contrast(inks.FINE_LINE, Ink.TRIM) >= 3.0
