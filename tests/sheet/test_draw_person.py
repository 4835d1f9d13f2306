"""Somebody beside the window: on the floor, as tall as it says, off the openings, in one place while a rod is dragged."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.setting_out.model import Profile
from elevation.sheet.draw_person import HALF_WIDTH, person_group, stands_at
from elevation.sheet.paths import bounds, height_at
from elevation.sheet.records import Fill, Path, Text
from elevation.trade.tables import load_trade
from elevation.words import Style
from tests.sheet.draw_cases import IN, make_obstacle, make_opening, make_treatment, make_wall

TRADE = load_trade()
INCH = Style("in", IN / 16, ".", "en")
TALL = 65 * IN
LEVEL = Profile(((0.0, 0.0),))


def drawn(out, style=INCH, trade=TRADE):
    group = person_group(out, trade, style, 20.0)
    fill = next(record for record in group.records if isinstance(record, Fill))
    text = next(record for record in group.records if isinstance(record, Text))
    return group, bounds(fill.steps), text


@pytest.mark.parametrize("high_in", [40.0, 65.0, 74.5])
def test_it_is_as_tall_as_it_says_on_the_line_of_the_floor(high_in):
    limit = replace(TRADE.limits["person-high"], value=high_in * IN)
    trade = replace(TRADE, limits={**TRADE.limits, "person-high": limit})
    out = make_wall((make_opening(),), floor=Profile(((0.0, 10.0), (146 * IN, -25.0))))
    _, (left, bottom, right, top), text = drawn(out, trade=trade)
    at = (left + right) / 2
    assert bottom == pytest.approx(height_at(out.floor, at))
    assert top - bottom == pytest.approx(high_in * IN)
    assert text.text == {40.0: "40 in", 65.0: "65 in", 74.5: "74¹⁄₂ in"}[high_in]
    assert text.at[0] == pytest.approx(at)
    assert text.at[1] > top


def test_fill_and_edge_are_one_outline_alike_on_both_sides():
    group, (left, _, right, _), text = drawn(make_wall((make_opening(),)))
    fill, path = group.records[:2]
    assert isinstance(path, Path)
    assert path.steps == fill.steps
    assert group.layer == "person"
    assert text.at[0] - left == pytest.approx(right - text.at[0])
    assert HALF_WIDTH * TALL * 0.9 < (right - left) / 2 <= HALF_WIDTH * TALL + 1e-6


@pytest.mark.parametrize("left_in", [10.0, 30.0, 49.0, 68.0, 88.0])
def test_it_stands_beside_the_opening_and_its_cloth_and_hides_neither(left_in):
    opening = make_opening(left=left_in * IN)
    x = stands_at(146 * IN, (opening,), (), LEVEL, TALL)
    half = HALF_WIDTH * TALL
    assert half <= x <= 146 * IN - half
    assert (
        x + half <= opening.left_mm - opening.casing_mm - 12 * IN
        or x - half >= opening.right_mm + opening.casing_mm + 12 * IN
    )


def test_it_hides_the_least_of_what_stands_there():
    # As much wall left as right of the window: a chest of drawers stands left, then right.
    opening = make_opening()
    for at, is_right in ((4 * IN, True), (110 * IN, False)):
        x = stands_at(146 * IN, (opening,), (make_obstacle("furniture", at, 0.0, 30 * IN, 32 * IN),), LEVEL, TALL)
        assert (x > 73 * IN) == is_right
    # Something over the head is not hidden, just under the top of the head it is.
    for bottom, middle in ((TALL, True), (TALL - 30.0, False)):
        thing = make_obstacle("other", 61.0, bottom, 600.0, 500.0)
        x = stands_at(800.0, (), (thing,), LEVEL, TALL)
        assert (x == 400.0) == middle


@pytest.mark.parametrize("wide_in", [20.0, 49.0, 60.0])
def test_where_no_piece_is_wide_enough_it_stands_in_the_widest(wide_in):
    opening = make_opening(left=2 * IN, width=wide_in * IN)
    x = stands_at((wide_in + 12) * IN, (opening,), (), LEVEL, TALL)
    assert opening.right_mm + opening.casing_mm < x < (wide_in + 12) * IN


def test_a_wall_that_is_all_opening_has_it_in_its_middle():
    assert stands_at(900.0, (make_opening(left=0.0, width=900.0),), (), LEVEL, TALL) == 450.0


def test_it_does_not_walk_while_a_rod_is_dragged():
    opening = make_opening()
    places = {drawn(make_wall((opening,), (make_treatment(opening, reach=reach * IN),)))[2].at for reach in (4, 8, 20)}
    assert len(places) == 1


def test_it_is_said_in_german_in_millimetres():
    group, _, text = drawn(make_wall((make_opening(),)), Style("mm", 1.0, ",", "de"))
    assert group.title == "Jemand, 1651 mm groß, zum Vergleich"
    assert text.text == "1651 mm"
