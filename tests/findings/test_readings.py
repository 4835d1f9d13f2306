"""An opening measured in several places: which reading counts, whether it is square, what is said of it.

Limits: a shutter maker's squareness test (https://www.horizonshutters.com/xpopupWH.htm): diagonals, and like readings,
within 3/16 in; a window installer's measuring guide (https://windowinstallusa.com/measurement-guide): plumb within 1/8 in.
Largest width outside the opening, smallest inside: makers' measuring guides (S. the Rod Ordering guide of
https://www.manualshelf.com/manual/achim/rdlybb2848/measurement-guide-english/page-2.html). Diagonals by plane geometry.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from elevation.findings.model import Finding, Weight
from elevation.planning.remedies import remedies
from elevation.room.find import opening_of
from elevation.room.model import Readings, Room
from elevation.room.readings import used, with_used
from elevation.trade.squareness import lean_mm
from elevation.units import Length
from tests.findings.rooms import HALF, INCH, OPENING, at, found, good_room, inch, mm, said, the, trade

WIDTH, HEIGHT = 36 * INCH, 48 * INCH


def taken(**readings: Length) -> Room:
    return at(good_room(), OPENING, taken=Readings(**readings))


def leaning(lean: float) -> Room:
    """The good room's opening with its head ``lean`` mm to the right: diagonals worked out from its corners."""
    rising = math.dist((0, 0), (WIDTH + lean, HEIGHT))
    falling = math.dist((lean, HEIGHT), (WIDTH, 0))
    return taken(diagonal_rising=mm(rising), diagonal_falling=mm(falling))


# --- formulas -----------------------------------------------------------------------------------------------


@given(st.floats(200, 3000), st.floats(200, 3000), st.floats(-100, 100))
def test_the_lean_is_that_of_the_parallelogram(width: float, height: float, lean: float) -> None:
    rising = math.dist((0, 0), (width + lean, height))
    falling = math.dist((lean, height), (width, 0))
    assert lean_mm(rising, falling, width) == pytest.approx(lean, abs=1e-6)
    # Seen in a mirror it leans the other way.
    assert lean_mm(falling, rising, width) == pytest.approx(-lean, abs=1e-6)


def test_a_square_one_by_hand() -> None:
    # A 3-4-5 triangle: 36 in by 48 in has diagonals of 60 in.
    assert lean_mm(60 * INCH, 60 * INCH, WIDTH) == 0
    # Diagonals 60 1/4 and 60 in: (60.25^2 - 60^2) / (4 * 36) = 0.2088 in.
    assert lean_mm(60.25 * INCH, 60 * INCH, WIDTH) / INCH == pytest.approx(0.20877, abs=1e-5)


# --- which reading counts -----------------------------------------------------------------------------------


def test_the_largest_outside_and_the_smallest_inside() -> None:
    read = Readings(width_top=inch(36), width_middle=inch(36.25), width_bottom=inch(35.875), height_left=inch(48))
    assert used(read, "width", is_inside=False) == inch(36.25)
    assert used(read, "width", is_inside=True) == inch(35.875)
    assert used(read, "height", is_inside=True) == inch(48)
    assert used(Readings(), "width", is_inside=False) is None


def test_the_opening_takes_the_readings_that_count() -> None:
    room = taken(width_top=inch(36), width_bottom=inch(36.25), height_middle=inch(47.5))
    made = opening_of(with_used(room, OPENING), OPENING)
    assert (made.width, made.height) == (inch(36.25), inch(47.5))
    plain = good_room()
    assert with_used(plain, OPENING) is plain


def test_another_figure_than_the_reading_is_said_and_put_right() -> None:
    room = taken(width_top=inch(36), width_bottom=inch(36.25))
    one = the(room, "reading-used")
    assert one.weight is Weight.CONSIDER
    assert said(one.text) == "Window 1: it is drawn 36 in wide, but the largest width read is 36¹⁄₄ in."
    offered = remedies(room, "w1", "s1", one, trade()).offered
    assert [said(remedy.label) for remedy in offered] == ["Take the width that was read, 36¹⁄₄ in"]
    assert not found(offered[0].room, "reading-used")


def test_both_sides_are_put_right_together() -> None:
    room = taken(width_top=inch(36.25), height_left=inch(48.5))
    offered = remedies(room, "w1", "s1", the(room, "reading-used"), trade()).offered
    assert [said(remedy.label) for remedy in offered] == ["Take the width and the height that were read"]


@pytest.mark.parametrize(("off", "count"), [(0.0, 0), (HALF, 0), (HALF + 0.01, 1)])
def test_a_reading_within_half_a_graduation_is_the_same_figure(off: float, count: int) -> None:
    assert len(found(taken(width_middle=mm(WIDTH + off)), "reading-used")) == count


# --- square and plumb ---------------------------------------------------------------------------------------


def square(differ: float) -> Room:
    """Diagonals that differ by so much, on an opening so wide that it hardly leans."""
    room = at(good_room(width=inch(600)), OPENING, width=inch(200))
    return at(room, OPENING, taken=Readings(diagonal_rising=mm(5000 + differ), diagonal_falling=mm(5000)))


LIMIT = 3 / 16 * INCH


@pytest.mark.parametrize("differ", [LIMIT - 1, LIMIT, LIMIT + HALF])
def test_nothing_is_said_up_to_the_limit(differ: float) -> None:
    assert not [one for one in found(square(differ), "out-of-square") if one.limit_mm == pytest.approx(LIMIT)]


def test_past_it_it_is_said_with_the_lean() -> None:
    one = the(square(LIMIT + HALF + 0.01), "out-of-square")
    assert one.measured_mm == pytest.approx(LIMIT + HALF + 0.01)
    assert one.limit_mm == pytest.approx(LIMIT)
    room = leaning(1 * INCH)
    # Diagonals by hand: sqrt(37^2 + 48^2) - sqrt(35^2 + 48^2) = 60.605 - 59.405 = 1.199 in, on a 1/16 in tape 1 3/16 in.
    text = said(the(room, "out-of-square").text)
    assert text.startswith("Window 1: its diagonals differ by 1³⁄₁₆")
    assert "1 in to the right of its sill" in text
    assert "to the left of its sill" in said(the(leaning(-1 * INCH), "out-of-square").text)


PLUMB = INCH / 8


@pytest.mark.parametrize(("lean", "count"), [(PLUMB, 0), (PLUMB + HALF - 1e-4, 0), (PLUMB + HALF + 0.01, 1)])
def test_plumb_at_its_limit(lean: float, count: int) -> None:
    for way in (1, -1):
        assert len(found(leaning(way * lean), "out-of-square")) == count


def test_out_of_plumb_says_which_way() -> None:
    # 5 1/2 thirty-seconds are too much for plumb, and the diagonals (0.206 in apart) still within their limit.
    lean = 5.5 / 32 * INCH
    assert "to the right, more than ¹⁄₈ in" in said(the(leaning(lean), "out-of-square").text)
    assert "to the left, more than ¹⁄₈ in" in said(the(leaning(-lean), "out-of-square").text)


@pytest.mark.parametrize("side", ["width", "height"])
@pytest.mark.parametrize(("differ", "count"), [(LIMIT, 0), (LIMIT + HALF, 0), (LIMIT + HALF + 0.01, 1)])
def test_like_readings_at_their_limit(side: str, differ: float, count: int) -> None:
    first, last = ("width_top", "width_bottom") if side == "width" else ("height_left", "height_right")
    whole = WIDTH if side == "width" else HEIGHT
    room = taken(**{first: mm(whole), last: mm(whole - differ)})
    differing: list[Finding] = list(found(room, "readings-differ"))
    assert len(differing) == count
    if count:
        assert differing[0].measured_mm == pytest.approx(differ)
        assert side + "s differ" in said(differing[0].text)


def test_one_reading_or_one_diagonal_says_nothing() -> None:
    room = taken(width_top=inch(36), diagonal_rising=inch(70))
    assert [one.rule for one in found(room) if one.rule in ("readings-differ", "out-of-square", "reading-used")] == []


def test_every_finding_names_its_source() -> None:
    room = replace(leaning(INCH))
    assert said(the(room, "out-of-square").authority) == "a shutter maker's squareness test"
