"""Rules about things in one place: clear, touching (which is allowed), and one hundredth of a millimetre too far.

Places are worked by hand from the room in ``rooms.py``; geometry, so no source. Touching is compared within 1e-6 mm.
"""

from __future__ import annotations

from math import radians, sqrt, tan

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.model import Bracket, Head, Obstacle, Room, Sash, Scheme, Stool, WallEnd
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    LEFT_PANEL,
    OPENING,
    RIGHT_PANEL,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    obstacle,
    panels,
    reach,
    rod,
    said,
    the,
    treatment,
    window,
    with_obstacle,
)

TOO_FAR = 0.01
"""mm: well past the 1e-6 mm within which things touch."""


def pair_of(make, touching: float, sign: int):  # type: ignore[no-untyped-def]
    """The rooms just touching and just too far."""
    return make(touching), make(touching + sign * TOO_FAR)


# --- on-casing ----------------------------------------------------------------------------------------------


def plate_beside(value: float) -> Room:
    """Left plate's edge ``value`` beside the casing (51 3/4 in), rod so low that the plate is beside it."""
    place = 51.75 * INCH - 0.75 * INCH - value
    low = rod(good_room(), height=held("above-casing", mm(0)))
    return at(low, LEFT_BRACKET, place=held("from-wall-left", mm(place)))


def plate_above(value: float) -> Room:
    """Over the casing, the plate's lower edge (2 1/2 in under the axis) ``value`` above it."""
    room = at(good_room(), LEFT_BRACKET, place=held("from-wall-left", inch(60)))
    return rod(room, height=held("above-casing", mm(2.5 * INCH + value)))


@pytest.mark.parametrize("make", [plate_beside, plate_above])
def test_a_plate_may_touch_the_casing_but_not_meet_it(make) -> None:
    assert not found(make(0.0), "on-casing")
    assert not found(make(5.0), "on-casing")
    hit = the(make(-TOO_FAR), "on-casing")
    assert hit.weight is Weight.STOP
    assert hit.subject == LEFT_BRACKET
    assert "meets the casing" in said(hit.text)


def test_a_plate_over_the_opening_says_so() -> None:
    room = rod(at(good_room(), OPENING, casing=inch(0)), height=held("above-head", inch(0)))
    room = at(room, LEFT_BRACKET, place=held("from-wall-left", inch(60)))
    assert "over the opening" in said(the(room, "on-casing").text)


def test_beside_a_half_round_head_the_casing_is_a_ring() -> None:
    # 36 in wide: radius 18 in, centre at 72 in and 30 + 48 - 18 = 60 in; ring of 2 1/4 in: outer radius 20 1/4 in.
    # A plate whose lower right corner lies on the 45 degree line touches the ring at 20.25/sqrt(2) each way.
    def make(value: float) -> Room:
        away = (20.25 * INCH + value) / sqrt(2)
        x = 72 * INCH - away - 0.75 * INCH
        y = 60 * INCH + away + 2.5 * INCH
        room = at(good_room(), OPENING, head=Head("half-round"))
        return at(room, LEFT_BRACKET, place=held("from-wall-left", mm(x)), height=mm(y))

    assert not found(make(0.0), "on-casing")
    assert found(make(-TOO_FAR), "on-casing")


def test_under_a_rake_the_casing_follows_the_slope() -> None:
    # Head from 78 in left to 96 in right over 36 in: slope 1/2; the casing's upper edge lies 2.25*sqrt(1.25) in above it.
    def make(value: float) -> Room:
        # The plate's lower right corner at x = 63 in: the head is 82.5 in high there.
        x = 63 * INCH - 0.75 * INCH
        y = 82.5 * INCH + 2.25 * INCH * sqrt(1.25) + value + 2.5 * INCH
        room = at(ceiling(good_room(), inch(140)), OPENING, head=Head("raked", right_height=inch(66)))
        return at(room, LEFT_BRACKET, place=held("from-wall-left", mm(x)), height=mm(y))

    assert not found(make(0.0), "on-casing")
    assert found(make(-TOO_FAR), "on-casing")


# --- meets: the wall's ends ---------------------------------------------------------------------------------


def finial_from_corner(value: float) -> Room:
    """Ball finials are 2 3/4 in long."""
    return rod(good_room(), left=held("from-corner", mm(2.75 * INCH + value)))


def test_a_finial_may_touch_the_neighbour_wall_but_not_pass_it() -> None:
    assert not found(finial_from_corner(0.0), "meets")
    hit = the(finial_from_corner(-TOO_FAR), "meets")
    assert hit.weight is Weight.STOP
    assert hit.subject == LAYER
    assert hit.measured_mm == pytest.approx(-TOO_FAR)


def test_an_open_end_of_the_wall_lets_the_finial_pass_but_holds_the_plate() -> None:
    room = at(finial_from_corner(-20.0), ("w1",), left=WallEnd("open"))
    assert not found(room, "meets")
    # The plate is 1 1/2 in wide, its bracket 2 in in from the rod's end.
    beyond = rod(room, left=held("from-corner", mm(0)))
    off = at(beyond, LEFT_BRACKET, place=held("from-wall-left", mm(0.75 * INCH - TOO_FAR)))
    assert found(off, "meets")[0].subject == LEFT_BRACKET
    assert not found(at(beyond, LEFT_BRACKET, place=held("from-wall-left", mm(0.75 * INCH))), "meets")


@pytest.mark.parametrize(
    ("angle", "depth"),
    # A leaning neighbour is nearest at the front of the ball: 3 1/2 + 1 1/8 in out; one that opens, at its back: 2 3/8 in.
    [(60.0, 4.625), (135.0, 2.375)],
)
def test_in_an_oblique_corner_the_neighbour_leans_over_or_away(angle, depth) -> None:
    end = WallEnd("corner", angle=angle)
    room = at(good_room(), ("w1",), left=end, right=end)
    edge = depth * INCH / tan(radians(angle))

    def make(value: float) -> Room:
        return rod(room, left=held("from-corner", mm(edge + 2.75 * INCH + value)))

    def make_right(value: float) -> Room:
        return rod(room, right=held("from-corner", mm(edge + 2.75 * INCH + value)))

    for put in (make, make_right):
        assert not found(put(0.0), "meets")
        assert found(put(-TOO_FAR), "meets")[0].subject == LAYER


def test_right_end_as_the_left() -> None:
    room = rod(good_room(), right=held("from-corner", mm(2.75 * INCH)))
    assert not found(room, "meets")
    hit = the(rod(good_room(), right=held("from-corner", mm(2.75 * INCH - TOO_FAR))), "meets")
    assert "right end" in said(hit.text)
    assert not found(at(rod(good_room(), right=held("beyond-opening", inch(60))), ("w1",), width=None), "meets")


def test_a_rod_too_long_for_its_wall_tells_the_worse_end() -> None:
    for left, right, worse in ((1, 2, "left"), (2, 1, "right")):
        room = rod(good_room(), left=held("from-corner", inch(left)), right=held("from-corner", inch(right)))
        hit = the(room, "meets")
        assert f"the {worse} end of the rod" in said(hit.text)
        assert hit.measured_mm == pytest.approx(-1.75 * INCH)


# --- meets: obstacles ---------------------------------------------------------------------------------------


def test_rod_and_picture_meet_in_height_and_in_depth() -> None:
    # Conduit of 3/4 in trade size is 0.922 in thick; its axis is at 84 1/4 in, 3 1/2 in out.
    radius = 0.922 * INCH / 2
    bottom = 84.25 * INCH + radius

    def above(value: float) -> Room:
        return with_obstacle(good_room(), obstacle("picture", 1700, bottom + value, 300, 100, 200))

    def deep(value: float) -> Room:
        return with_obstacle(good_room(), obstacle("picture", 1700, bottom - 20, 300, 100, 3.5 * INCH - radius + value))

    assert not found(above(0.0), "meets")
    assert the(above(-TOO_FAR), "meets").subject == LAYER
    assert not found(deep(0.0), "meets")
    assert found(deep(TOO_FAR), "meets")


def test_finials_are_thicker_than_the_rod() -> None:
    # Balls of 2 1/4 in: from 44 in leftward 2 3/4 in, 1 1/8 in above the axis.
    bottom = (84.25 + 1.125) * INCH
    beside = obstacle("smoke-alarm", 42 * INCH, bottom, 20, 50, 200)
    assert not found(with_obstacle(good_room(), beside), "meets")
    assert found(with_obstacle(good_room(), replace(beside, bottom=mm(bottom - TOO_FAR))), "meets")


def test_a_panel_meets_what_reaches_its_plane_anywhere_on_its_way() -> None:
    # Right panel: 72 to 98 1/2 in when closed. Its plane is 3 1/2 in out.
    def deep(value: float) -> Room:
        return with_obstacle(good_room(), obstacle("furniture", 1900, 0, 400, 700, 3.5 * INCH + value))

    assert not found(deep(0.0), "meets")
    assert the(deep(TOO_FAR), "meets").subject == RIGHT_PANEL

    def across(value: float) -> Room:
        return with_obstacle(good_room(), obstacle("furniture", 98.5 * INCH - value, 0, 400, 700, 600))

    assert not found(across(0.0), "meets")
    assert found(across(TOO_FAR), "meets")


def test_a_deep_stool_meets_closed_cloth() -> None:
    room = at(good_room(), OPENING, stool=Stool(inch(1), inch(1), inch(3.5)))
    assert not found(room, "meets")
    deep = at(good_room(), OPENING, stool=Stool(inch(1), inch(1), mm(3.5 * INCH + TOO_FAR)))
    assert {one.subject for one in found(deep, "meets")} == {LEFT_PANEL, RIGHT_PANEL}
    assert "stool of Window 1" in said(found(deep, "meets")[0].text)


def test_the_stool_reaches_past_the_casing_by_its_horns() -> None:
    # Cloth that stands still beside the window, 45 1/2 to 50 in; the casing's left edge is at 51 3/4 in.
    still = panels(good_room(), stationary=True)

    def make(horn: float) -> Room:
        return at(still, OPENING, stool=Stool(inch(1), mm(horn), inch(5)))

    assert not found(make(1.75 * INCH), "meets")
    assert {one.subject for one in found(make(1.75 * INCH + TOO_FAR), "meets")} == {LEFT_PANEL, RIGHT_PANEL}
    # Cloth that ends on the sill passes over it.
    over = at(at(good_room(), OPENING, stool=Stool(inch(1), inch(1), inch(5))), LAYER, hem=layer().hem)
    sill = replace(layer().hem, target="sill", at=mm(0))
    assert found(over, "meets")
    assert not found(at(over, LAYER, hem=sill), "meets")
    # Cloth as long as reaches under the board still meets it.
    assert found(at(over, LAYER, hem=replace(sill, target="length", at=mm(52.5 * INCH + TOO_FAR))), "meets")


def test_of_several_things_the_deepest_is_told_and_pointed_at() -> None:
    shallow = obstacle("furniture", 98.5 * INCH - 20, 0, 400, 700, 300, name="chair")
    deep = obstacle("furniture", 98.5 * INCH - 90, 0, 400, 700, 300, name="chest")
    for pair in ((shallow, deep), (deep, shallow)):
        hit = the(with_obstacle(good_room(), *pair), "meets")
        assert "chest" in said(hit.text)
        assert hit.measured_mm == pytest.approx(-90.0)
        assert hit.at == pytest.approx((98.5 * INCH - 45, 350.0))
    low = obstacle("picture", 1500, 84.25 * INCH - 5, 300, 4, 300, name="low")
    high = obstacle("picture", 1900, 84.25 * INCH - 5, 200, 40, 300, name="high")
    for pair in ((low, high), (high, low)):
        hit = the(with_obstacle(good_room(), *pair), "meets")
        assert "high" in said(hit.text)
        assert hit.at == pytest.approx((2000.0, 84.25 * INCH))
    left = obstacle("picture", 46.75 * INCH - 5, 82 * INCH, 60, 60, 0, name="left")
    more = obstacle("picture", 46.75 * INCH - 15, 82 * INCH, 60, 60, 0, name="more")
    for pair in ((left, more), (more, left)):
        hit = the(with_obstacle(good_room(), *pair), "meets")
        assert "more" in said(hit.text)


def test_a_bracket_reaches_to_the_top_of_the_rod_and_the_foot_of_its_plate() -> None:
    # Plate 81 3/4 to 85 3/4 in high, 45 1/4 to 46 3/4 in wide: higher and wider than the arm.
    for left, bottom, dx, dy in (
        (46.75, 82, 1, 0), (45.25 - 30 / INCH, 82, -1, 0), (45.5, 85.75, 0, 1), (45.5, 81.75 - 30 / INCH, 0, -1),
    ):  # fmt: skip
        touching = obstacle("picture", left * INCH, bottom * INCH, 30, 30)
        assert not found(with_obstacle(good_room(), touching), "meets")
        into = obstacle("picture", left * INCH - dx * TOO_FAR, bottom * INCH - dy * TOO_FAR, 30, 30)
        assert [one.subject for one in found(with_obstacle(good_room(), into), "meets")] == [LEFT_BRACKET]


def test_the_end_that_passes_the_wall_is_pointed_at() -> None:
    # Metal 2 3/4 in beyond the rod's ends.
    assert the(finial_from_corner(-INCH), "meets").at == pytest.approx((-INCH, 84.25 * INCH))
    right = rod(good_room(), right=held("from-corner", mm(1.75 * INCH)))
    assert the(right, "meets").at == pytest.approx((145 * INCH, 84.25 * INCH))


def test_a_bracket_meets_a_flat_thing_under_its_plate() -> None:
    # Left plate: 45 1/4 to 46 3/4 in, from 81 3/4 to 85 3/4 in.
    picture = obstacle("picture", 46.75 * INCH, 82 * INCH, 30, 30)
    assert not found(with_obstacle(good_room(), picture), "meets")
    hit = found(with_obstacle(good_room(), replace(picture, left=mm(46.75 * INCH - TOO_FAR))), "meets")
    assert [one.subject for one in hit] == [LEFT_BRACKET]


def test_cloth_before_a_heater_is_left_to_the_heat_rule() -> None:
    room = with_obstacle(good_room(), obstacle("electric-heater", 1500, 0, 300, 200, 300))
    assert not found(room, "meets")
    assert found(room, "heat")


# --- meets: layers and treatments ---------------------------------------------------------------------------


def test_two_rods_of_one_treatment_may_touch() -> None:
    front = layer()

    # Balls of 2 1/4 in: axes 2 1/4 in apart touch.
    def make(value: float) -> Room:
        back = layer("l2", rod=replace(front.rod, projection=mm(1.25 * INCH + value)), panels=())
        scheme = Scheme(id="s1", treatments=(treatment(layers=(front, back)),))
        return good_room(schemes=(scheme,))

    assert not found(make(0.0), "meets")
    assert found(make(TOO_FAR), "meets")[0].subject == ("w1", "s1", "t1", "l2")


def two_windows(value: float) -> Room:
    """Two equal rods whose finials stand ``value`` apart: each reaches 12 3/4 in beyond its 36 in opening."""
    second = window("o2", left=54 + 36 + 25.5 + value / INCH)
    both = (treatment(), treatment("t2", ("o2",)))
    return good_room(width=inch(300), openings=(window(), second), schemes=(Scheme(id="s1", treatments=both),))


def test_neighbouring_rods_may_touch_but_not_meet() -> None:
    assert not found(two_windows(0.0), "meets")
    hit = the(two_windows(-TOO_FAR), "meets")
    assert hit.subject == ("w1", "s1", "t2", "l1")
    assert hit.measured_mm == pytest.approx(-TOO_FAR, abs=1e-6)


def test_rods_one_above_the_other_do_not_meet() -> None:
    room = two_windows(-100.0)
    higher = replace(layer(panels=()).rod, height=held("above-casing", mm(4 * INCH + 2.25 * INCH)))
    second = treatment("t2", ("o2",), layers=(layer(rod=higher, panels=(), brackets=()),))
    first = treatment(layers=(layer(panels=(), brackets=()),))
    room = at(room, ("w1", "s1"), treatments=(first, second))
    assert not found(room, "meets")
    lower = replace(higher, height=held("above-casing", mm(6.25 * INCH - TOO_FAR)))
    second = treatment("t2", ("o2",), layers=(layer(rod=lower, panels=(), brackets=()),))
    assert found(at(room, ("w1", "s1"), treatments=(first, second)), "meets")


def behind(gap_in: float, out_in: float, higher_in: float, *, is_dressed: bool) -> Room:
    """Two windows ``gap_in`` apart; the second rod stands ``out_in`` nearer to the wall and ``higher_in`` higher."""
    one = layer(brackets=()) if is_dressed else layer(brackets=(), panels=())
    if is_dressed:
        one = replace(one, rod=replace(one.rod, ends="bare"))
    other = replace(one.rod, projection=mm((3.5 - out_in) * INCH), height=held("above-casing", mm((4 + higher_in) * INCH)))
    first, second = treatment(layers=(one,)), treatment("t2", ("o2",), layers=(replace(one, rod=other),))
    openings = (window(), window("o2", left=54 + 36 + gap_in))
    return good_room(width=inch(300), openings=openings, schemes=(Scheme(id="s1", treatments=(first, second)),))


def test_one_rod_may_stand_behind_a_neighbours() -> None:
    # Balls of 2 1/4 in at one height, one right before the other: 10 in and 2 3/4 in beyond each opening.
    assert not found(behind(22.75, 2.25, 0, is_dressed=False), "meets")
    assert not found(behind(22.75, -2.25, 0, is_dressed=False), "meets")
    hit = the(behind(22.75, 2.25 - TOO_FAR / INCH, 0, is_dressed=False), "meets")
    assert hit.measured_mm == pytest.approx(-2.25 * INCH)
    assert found(behind(22.75, -2.25 + TOO_FAR / INCH, 0, is_dressed=False), "meets")


def test_cloth_may_hang_behind_a_neighbours_cloth() -> None:
    # Without brackets cloth begins at the rods' ends, 10 in beyond each opening: 1 in over each other at 19 in. The second
    # rod is so much higher that the metal clears; cloth is as deep as its rod, 0.922 in.
    assert not found(behind(19, 0.922, 8, is_dressed=True), "meets")
    assert not found(behind(19, -0.922, 8, is_dressed=True), "meets")
    for nearer in (0.922 - TOO_FAR / INCH, -0.922 + TOO_FAR / INCH):
        hit = found(behind(19, nearer, 8, is_dressed=True), "meets")
        assert hit
        # The bare tube, 1 in longer, stands 2 in in the other's cloth.
        assert hit[0].measured_mm == pytest.approx(-2 * INCH)
    assert not found(behind(21, 0, 8, is_dressed=True), "meets")


# --- over-box -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["outlet", "switch", "shelf"])
def test_a_plate_over_a_box_is_broken(kind) -> None:
    box = obstacle(kind, 46.75 * INCH, 82 * INCH, 70, 70)
    clear = found(with_obstacle(good_room(), box), "over-box")
    assert not [one for one in clear if one.weight is Weight.BROKEN]
    every = found(with_obstacle(good_room(), replace(box, left=mm(46.75 * INCH - TOO_FAR))), "over-box")
    (hit,) = [one for one in every if one.weight is Weight.BROKEN]
    assert hit.subject == LEFT_BRACKET
    assert "current off" in said(hit.caution) if hit.caution else False


@pytest.mark.parametrize("kind", ["outlet", "switch", "light"])
def test_the_cable_band_runs_two_inches_beside_a_box(kind) -> None:
    # From memory: cables run straight up or down from a box; 2 in to each side is taken.
    def make(value: float) -> Room:
        return with_obstacle(good_room(), obstacle(kind, 46.75 * INCH + 2 * INCH + value, 300, 70, 115))

    assert not found(make(0.0), "over-box")
    near = the(make(-TOO_FAR), "over-box")
    assert near.weight is Weight.CONSIDER
    assert near.caution is not None


def test_a_shelf_has_no_cable() -> None:
    assert not found(with_obstacle(good_room(), obstacle("shelf", 46 * INCH, 300, 70, 20)), "over-box")


# --- heat ---------------------------------------------------------------------------------------------------


def test_cloth_that_hangs_before_a_heater_is_a_stop() -> None:
    before = with_obstacle(good_room(), obstacle("electric-heater", 1200, 60, 300, 200, 20))
    assert the(before, "heat").weight is Weight.STOP
    assert "own sheet" in said(the(before, "heat").authority)
    assert the(before, "heat").caution is not None
    # Cloth that ends above it cannot touch it, but is too near.
    short = at(before, LAYER, hem=replace(layer().hem, target="length", at=mm(82.5 * INCH - 300)))
    assert the(short, "heat").weight is Weight.BROKEN


def test_distance_from_a_heater_is_taken_straight_through_the_room() -> None:
    # 3-4-5: 180 mm beside and 240 mm above make 300 mm; 304.8 are asked for.
    room = at(good_room(), LAYER, hem=replace(layer().hem, target="length", at=mm(82.5 * INCH - 440)))
    near = obstacle("electric-heater", 45.5 * INCH - 180 - 200, 0, 200, 200, 300)
    assert the(with_obstacle(room, near), "heat").measured_mm == pytest.approx(300.0)


def test_of_several_heaters_the_gravest_is_told() -> None:
    before = obstacle("electric-heater", 1200, 60, 300, 200, 20)
    beside = obstacle("electric-heater", 45.5 * INCH - 300, 0, 200, 300, 20)
    for pair in ((before, beside), (beside, before)):
        assert the(with_obstacle(good_room(), *pair), "heat").weight is Weight.STOP
    nearer = replace(beside, left=mm(45.5 * INCH - 250))
    for pair in ((nearer, beside), (beside, nearer)):
        assert the(with_obstacle(good_room(), *pair), "heat").measured_mm == pytest.approx(50.0, abs=20.0)


def test_a_radiator_may_stand_beside_the_cloth() -> None:
    beside = obstacle("hot-water-radiator", 98.5 * INCH, 0, 300, 600, 100)
    assert not found(with_obstacle(good_room(), beside), "heat")
    under = replace(beside, left=mm(98.5 * INCH - TOO_FAR))
    assert the(with_obstacle(good_room(), under), "heat").weight is Weight.CONSIDER


def test_a_floor_register_may_stand_beside_the_cloth_or_well_below_it() -> None:
    beside = obstacle("floor-register", 98.5 * INCH, 0, 300, 5, 100)
    assert not found(with_obstacle(good_room(), beside), "heat")
    under = with_obstacle(good_room(), replace(beside, left=mm(98.5 * INCH - TOO_FAR)))
    assert the(under, "heat").weight is Weight.CONSIDER
    # 12 in over it, cloth turns no air.
    high = replace(layer().hem, target="length", at=mm(82.5 * INCH - 5 - 12 * INCH))
    assert not found(at(under, LAYER, hem=high), "heat")
    low = replace(high, at=mm(82.5 * INCH - 5 - 12 * INCH + TOO_FAR))
    assert found(at(under, LAYER, hem=low), "heat")


def test_a_wall_register_behind_cloth() -> None:
    over = obstacle("wall-register", 1900, 100, 300, 200, 10)
    assert the(with_obstacle(good_room(), over), "heat").weight is Weight.CONSIDER
    short = replace(layer().hem, target="length", at=mm(82.5 * INCH - 300))
    assert not found(with_obstacle(at(good_room(), LAYER, hem=short), over), "heat")


# --- swing --------------------------------------------------------------------------------------------------


def test_an_in_swinging_sash_meets_a_rod_below_its_top() -> None:
    # The sash turns from 54 to 90 in up to 78 in.
    radius = 0.922 * INCH / 2
    room = at(good_room(), OPENING, sash=Sash("casement-in", "left"), casing=inch(0))

    def make(value: float) -> Room:
        return rod(room, height=held("above-head", mm(radius + value)))

    assert LAYER not in {one.subject for one in found(make(0.0), "swing")}
    assert LAYER in {one.subject for one in found(make(-TOO_FAR), "swing")}


def test_open_cloth_may_stand_beside_a_swinging_sash() -> None:
    # The open stack is 4 1/2 in wide from 1/2 in outside the bracket: with the bracket 4 in out it just reaches the jamb.
    room = at(good_room(), OPENING, sash=Sash("casement-in", "left"))
    assert not found(reach(room, inch(6)), "swing")
    hits = found(reach(room, mm(6 * INCH - TOO_FAR)), "swing")
    assert {one.subject for one in hits} == {LEFT_PANEL, RIGHT_PANEL}
    assert all(one.weight is Weight.STOP for one in hits)
    assert not found(reach(at(room, OPENING, sash=Sash("casement-out")), inch(3)), "swing")


def test_a_door_of_another_wall_meets_cloth_wherever_it_hangs() -> None:
    # The right panel's way ends at 98 1/2 in.
    beside = obstacle("door-swing", 98.5 * INCH, 0, 800, 2000, 800)
    assert not found(with_obstacle(good_room(), beside), "swing")
    hit = the(with_obstacle(good_room(), replace(beside, left=mm(98.5 * INCH - TOO_FAR))), "swing")
    assert hit.subject == RIGHT_PANEL
    flat = replace(beside, left=mm(2000), projection=inch(3.5))
    assert not found(with_obstacle(good_room(), flat), "swing")


def test_a_door_meets_a_rod_in_depth_and_the_deepest_is_told() -> None:
    # Conduit 0.922 in thick, 3 1/2 in out; balls from 2 3/8 in out are at its ends only.
    back = 3.5 * INCH - 0.922 * INCH / 2

    def door(out: float, high: float = 60, name: str = "") -> Obstacle:
        return obstacle("door-swing", 1700, 84.25 * INCH - 30, 300, high, out, name=name)

    assert not found(with_obstacle(good_room(), door(back)), "swing")
    hit = the(with_obstacle(good_room(), door(back + TOO_FAR)), "swing")
    assert hit.subject == LAYER
    assert hit.measured_mm == pytest.approx(-(0.922 * INCH / 2 + 30))
    assert hit.at == pytest.approx((1850.0, 84.25 * INCH))
    small, large = door(200, 25, "small"), door(200, 60, "large")
    for pair in ((small, large), (large, small)):
        assert "large" in said(the(with_obstacle(good_room(), *pair), "swing").text)


def test_of_two_doors_the_one_deeper_in_the_cloth_is_told() -> None:
    near = obstacle("door-swing", 98.5 * INCH - 20, 0, 800, 2000, 800, name="near")
    far = obstacle("door-swing", 98.5 * INCH - 90, 0, 800, 2000, 800, name="far")
    for pair in ((near, far), (far, near)):
        hit = the(with_obstacle(good_room(), *pair), "swing")
        assert "far" in said(hit.text)
        assert hit.measured_mm == pytest.approx(-90.0)
        assert hit.at == pytest.approx((98.5 * INCH - 45, 1000.0))


# --- cannot-pass, splice, no-bracket ------------------------------------------------------------------------


def three_brackets(kit: str, heading: str = "clip-rings", parks: tuple[str, str] = ("left", "left")) -> Room:
    middle = Bracket(id="b3", place=held("from-centre", inch(0)), kit=kit)
    one = layer(brackets=(*layer().brackets, middle), heading=heading)
    first = replace(one.panels[0], parks=parks[0], flat_width=inch(108))
    one = replace(one, panels=(first,) if parks[0] == parks[1] else (first, replace(one.panels[1], parks=parks[1])))
    return at(good_room(), ("w1", "s1", "t1"), layers=(one,))


@pytest.mark.parametrize(
    ("kit", "heading", "is_stopped"),
    # A strap stops rings; an open arm lets open rings pass; eyelets, tabs and pockets pass no middle bracket.
    [
        ("shop-strap", "clip-rings", True),
        ("open-arm", "clip-rings", False),
        ("open-arm", "eyelets", True),
        ("open-arm", "tab", True),
        ("open-arm", "rod-pocket", True),
        ("open-arm", "rings", False),
    ],
)
def test_one_panel_before_a_middle_bracket(kit, heading, is_stopped) -> None:
    assert bool(found(three_brackets(kit, heading), "cannot-pass")) is is_stopped
    assert bool(found(three_brackets(kit, heading), "no-meet")) is is_stopped


def test_a_pair_meets_at_a_middle_bracket() -> None:
    assert not found(three_brackets("shop-strap", parks=("left", "right")), "cannot-pass")


def test_a_joint_needs_a_bracket() -> None:
    # Rod of 56 in from pieces of 30 in: two pieces, one joint.
    room = rod(good_room(), stock=inch(30))
    hit = the(room, "splice")
    assert hit.weight is Weight.STOP
    # A bracket between 26 and 30 in from the left end takes it.
    middle = Bracket(id="b3", place=held("from-left-end", inch(28)))
    held_up = at(room, LAYER, brackets=(*layer().brackets, middle))
    assert not found(held_up, "splice")
    assert not found(rod(good_room(), stock=inch(56)), "splice")


def test_a_rod_needs_two_brackets_on_it() -> None:
    first, second = layer().brackets
    assert "no bracket" in said(the(at(good_room(), LAYER, brackets=()), "no-bracket").text)
    assert "a single bracket" in said(the(at(good_room(), LAYER, brackets=(first,)), "no-bracket").text)
    assert not found(at(good_room(), LAYER, brackets=(first, second)), "no-bracket")
    # The rod ends at 44 in: a bracket there still carries it.
    at_end = replace(first, place=held("from-wall-left", inch(44)))
    assert not found(at(good_room(), LAYER, brackets=(at_end, second)), "no-bracket")
    off = replace(first, place=held("from-wall-left", mm(44 * INCH - TOO_FAR)))
    subjects = {one.subject for one in found(at(good_room(), LAYER, brackets=(off, second)), "no-bracket")}
    assert subjects == {LAYER, LEFT_BRACKET}
    # What stands still needs carrying as well.
    assert found(at(panels(good_room(), stationary=True), LAYER, brackets=()), "no-bracket")
