"""What rules measure where there are several things to choose from: the widest, the deepest, the first from the left.

Pieces of a set-out are put together by hand; figures by hand.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.looking import draws_from, ends_of, noun_at, outer
from elevation.findings.rules.meets_layers import rods_meet
from elevation.findings.rules.no_meet import bare
from elevation.findings.rules.stack_on_glass import over_glass
from elevation.findings.rules.uneven_rods import common_height
from elevation.findings.shapes import corner_room, extremes, height_at, meet, shared
from elevation.room.model import Bracket, Room, Scheme
from elevation.setting_out.model import LayerOut, Profile
from tests.findings import test_limits as limits
from tests.findings.rooms import INCH, at, found, good_room, held, inch, layer, said, scene, treatment, window

ROOM = scene(good_room()).set_out.treatments[0]
OPENING = ROOM.openings[0]  # 54 to 90 in


def closed(*spans: tuple[float, float]) -> LayerOut:
    """The room's layer with panels that close over ``spans``, in inches."""
    panel = ROOM.layers[0].panels[0]
    made = tuple(replace(panel, closed=(low * INCH, high * INCH)) for low, high in spans)
    return replace(ROOM.layers[0], panels=made)


@pytest.mark.parametrize(
    ("spans", "left_bare"),
    [
        (((50, 72), (72, 95)), None),
        (((50, 70), (72, 95)), (70, 72)),
        # The widest of three bare parts, wherever it is.
        (((55, 70), (72, 87)), (87, 90)),
        (((57, 70), (72, 89)), (54, 57)),
        (((55, 68), (72, 89)), (68, 72)),
        (((50, 60), (61, 70), (73, 95)), (70, 73)),
        (((50, 60), (63, 70), (71, 95)), (60, 63)),
        # A panel that lies over another hides none of what is bare.
        (((50, 80), (60, 70), (85, 95)), (80, 85)),
        (((20, 40), (95, 110)), (54, 90)),
        ((), (54, 90)),
        (((54, 90),), None),
    ],
)
def test_the_widest_bare_part_of_an_opening(spans, left_bare) -> None:
    got = bare(closed(*spans), OPENING)
    if left_bare is None:
        assert got is None
    else:
        assert got == pytest.approx((left_bare[0] * INCH, left_bare[1] * INCH))


def test_of_several_openings_the_barest_is_told() -> None:
    openings = (window(), window("o2", left=110), window("o3", left=166))

    def room(*flats: float) -> Room:
        # One panel for the first two openings from the left, one for the last from the right.
        one = layer()
        cloth = tuple(replace(panel, flat_width=inch(flat)) for panel, flat in zip(one.panels, flats, strict=True))
        cover = treatment(openings=("o1", "o2", "o3"), layers=(replace(one, panels=cloth),))
        return good_room(width=inch(300), openings=openings, schemes=(Scheme(id="s1", treatments=(cover,)),))

    # Rod 44 to 212 in; cloth begins at 45 1/2 and 210 1/2 in.
    few = found(room(80, 40), "no-meet")
    # From 125 1/2 to 146 in and from 166 to 170 1/2 in nothing covers.
    assert said(few[0].text) == "Window 2: the closed cloth leaves 20¹⁄₂ in bare on the right."
    other = found(room(100, 20), "no-meet")
    assert said(other[0].text) == "Window 3: the closed cloth leaves 24¹⁄₂ in bare on the left."


def test_of_several_openings_the_glass_most_covered_is_told() -> None:
    first = replace(OPENING, glass_left_mm=100.0, glass_right_mm=300.0)
    second = replace(OPENING, number=2, glass_left_mm=350.0, glass_right_mm=600.0)
    panel = replace(ROOM.layers[0].panels[0], open=(250.0, 450.0))
    for both in ((first, second), (second, first)):
        got = over_glass(panel, both)
        assert got is not None
        assert got[0] == pytest.approx(100.0)
        assert got[1].number == 2
    assert over_glass(replace(panel, open=(300.0, 350.0)), (first, second)) is None
    # Cloth that ends on the sill or begins under it covers no glass.
    assert over_glass(replace(panel, hem_low_mm=first.glass_top_mm), (first,)) is None
    assert over_glass(replace(panel, top_mm=first.glass_bottom_mm), (first,)) is None


def test_how_deep_two_rods_run_into_each_other() -> None:
    # Balls of 2 1/4 in: axes 1 in apart in depth overlap 1 1/4 in; at one height more, so depth counts.
    one = ROOM.layers[0]
    back = replace(one, support=replace(one.support, projection_mm=one.support.projection_mm - INCH))
    assert rods_meet(one, back) == pytest.approx(1.25 * INCH)
    higher = replace(back, support=replace(back.support, height_mm=back.support.height_mm + 2 * INCH))
    assert rods_meet(one, higher) == pytest.approx(0.25 * INCH)
    assert rods_meet(higher, one) == pytest.approx(0.25 * INCH)
    beside = replace(one.support, left_mm=5000.0, right_mm=6000.0, metal_left_mm=4930.0, metal_right_mm=6070.0)
    assert rods_meet(one, replace(one, support=beside)) == 0.0


def test_the_outermost_panel_of_an_end_is_the_one_that_draws_clear_to_it() -> None:
    one = ROOM.layers[0]
    left, right = one.panels
    inner = replace(left, parks_at_mm=left.parks_at_mm + 20.0)
    assert draws_from(replace(one, panels=(inner, left, right)), "left") is left
    assert draws_from(replace(one, panels=(left, inner, right)), "left") is left
    inner = replace(right, parks_at_mm=right.parks_at_mm - 20.0)
    assert draws_from(replace(one, panels=(left, inner, right)), "right") is right
    assert draws_from(replace(one, panels=(left, right, inner)), "right") is right
    assert draws_from(replace(one, panels=(replace(left, stationary=True), right)), "left") is None


def test_an_end_that_carries_the_rod_makes_every_bracket_one_between() -> None:
    """The end bracket stands at the panel's place: where the rod's end is held too, cloth parks before it."""
    one = ROOM.layers[0]
    left, right = one.panels
    for number, side, panel in ((0, "left", left), (1, "right", right)):
        end = one.brackets[0 if side == "left" else -1]
        there = replace(one, panels=(replace(panel, parks_at_mm=end.x_mm),))
        assert draws_from(there, side) is not None
        carried = tuple(at == number for at in (0, 1))
        assert draws_from(replace(there, support=replace(there.support, carried=carried)), side) is None
        other = tuple(at != number for at in (0, 1))
        assert draws_from(replace(there, support=replace(there.support, carried=other)), side) is not None
        # Before that bracket, towards the end, it clears the end that carries.
        step = -1.0 if side == "left" else 1.0
        beyond = replace(there, panels=(replace(panel, parks_at_mm=end.x_mm + step),))
        assert draws_from(replace(beyond, support=replace(beyond.support, carried=carried)), side) is not None


def test_a_panel_parked_at_a_bracket_between_clears_no_end() -> None:
    one = ROOM.layers[0]
    left, right = one.panels
    middle = replace(one.brackets[0], x_mm=72 * INCH)
    three = replace(one, brackets=(one.brackets[0], middle, one.brackets[1]))
    for side, panel in (("left", left), ("right", right)):
        assert draws_from(replace(three, panels=(replace(panel, parks_at_mm=72 * INCH),)), side) is None
        assert draws_from(replace(three, panels=(panel,)), side) is panel


def test_what_a_treatment_hangs_on_is_its_front_layers() -> None:
    back = layer("l2", rod=replace(layer().rod, kind="track"))
    made = scene(at(good_room(), ("w1", "s1", "t1"), layers=(layer(), back)))
    assert said(noun_at(made, ("w1", "s1", "t1"))) == said(noun_at(made, ("w1", "s1", "t1", "l1"))) == "rod"
    assert said(noun_at(made, ("w1", "s1", "t1", "l2", "p1"))) == "track"


def test_ends_are_the_outermost_brackets_in_any_order() -> None:
    one = ROOM.layers[0]
    turned = replace(one, brackets=tuple(reversed(one.brackets)))
    for each in (one, turned):
        ends = ends_of(each)
        assert ends is not None
        assert [end.ref[-1] for end in ends] == ["b1", "b2"]
    assert ends_of(replace(one, brackets=())) is None
    assert outer((OPENING, replace(OPENING, number=2)), "right").number == 2
    assert outer((OPENING, replace(OPENING, number=2)), "left").number == 1


def test_the_height_that_most_rods_have() -> None:
    assert common_height(scene(limits.second_rod(INCH))) == pytest.approx(84.25 * INCH)
    # Two rods: the higher one.
    two = at(limits.second_rod(INCH), ("w1", "s1", "t3"), layers=())
    assert common_height(scene(two)) == pytest.approx(85.25 * INCH)
    assert common_height(scene(good_room())) is None


# --- shapes -------------------------------------------------------------------------------------------------


def test_heights_of_a_profile() -> None:
    line = Profile(((0.0, 100.0), (1000.0, 200.0), (2000.0, 150.0)))
    assert [height_at(line, x) for x in (-50, 0, 250, 1000, 1500, 2000, 9000)] == [100, 100, 125, 200, 175, 150, 150]
    assert extremes(line, 500.0, 1500.0) == (150.0, 200.0)
    assert extremes(line, 1200.0, 1800.0) == (160.0, 190.0)
    assert extremes(line, 0.0, 400.0) == (100.0, 140.0)
    assert height_at(Profile(()), 5.0) == 0.0


@pytest.mark.parametrize(
    ("other", "by"),
    [
        ((10.0, 10.0, 20.0, 20.0), None),
        ((9.0, 9.0, 20.0, 20.0), 1.0),
        ((-5.0, 2.0, 3.0, 8.0), 3.0),
        ((4.0, 7.0, 6.0, 30.0), 3.0),
        ((4.0, -9.0, 6.0, 2.0), 2.0),
        ((10.0, 0.0, 20.0, 10.0), None),
        ((0.0, 10.0, 10.0, 20.0), None),
        ((-10.0, 0.0, 0.0, 10.0), None),
        ((0.0, -10.0, 10.0, 0.0), None),
    ],
)
def test_rectangles_that_meet_and_by_how_much(other, by) -> None:
    box = (0.0, 0.0, 10.0, 10.0)
    assert meet(box, other) is (by is not None)
    assert meet(other, box) is (by is not None)
    if by is not None:
        assert shared(box, other) == pytest.approx(by)


@pytest.mark.parametrize(("angle", "at_mm"), [(45.0, 120.0), (90.0, 0.0), (135.0, -80.0)])
def test_a_neighbour_wall_in_its_corner(angle: float, at_mm: float) -> None:
    # At 45 degrees it leans over this wall by as much as one is out from it: most at the front; at 135 away, least behind.
    assert corner_room(angle, 80.0, 120.0) == pytest.approx(at_mm, abs=1e-6)


def test_a_bracket_may_be_given_in_any_order() -> None:
    turned = at(good_room(), ("w1", "s1", "t1", "l1"), brackets=tuple(reversed(layer().brackets)))
    assert found(turned) == ()
    third = Bracket(id="b3", place=held("from-centre", inch(0)))
    assert not found(at(turned, ("w1", "s1", "t1", "l1"), brackets=(third, *layer().brackets)), "no-bracket")
