"""meets: clear, touching (which is allowed), and one hundredth of a millimetre too far.

Places are worked by hand from the room in ``rooms.py``; geometry, so no source. Touching is compared within 1e-6 mm.
"""

from __future__ import annotations

from math import radians, tan

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.model import Room, Station, Stool, WallEnd
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    LEFT_PANEL,
    OPENING,
    RIGHT_PANEL,
    TOO_FAR,
    at,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    obstacle,
    panels,
    rod,
    said,
    the,
    with_obstacle,
)

# --- meets: the ceiling -------------------------------------------------------------------------------------


def under_slope(left_height: float) -> Room:
    """The ceiling rises from the left end to 96 in at 72 in; the rod's left end is at 44 in, its axis at 84 1/4 in."""
    room = good_room()
    points = (Station(mm(0), mm(left_height)), Station(mm(72 * INCH), mm(96 * INCH)))
    return at(room, ("w1",), ceiling=points, crown=mm(0))


def left_height_for(gap: float) -> float:
    """How high the ceiling must begin to stand ``gap`` mm over the rod's axis at its left end, by the rule of three."""
    at_end = 84.25 * INCH + gap
    return 96 * INCH - (96 * INCH - at_end) * 72 / (72 - 44)


RADIUS = 0.922 * INCH / 2


@pytest.mark.parametrize(("gap", "is_hit"), [(RADIUS + TOO_FAR, False), (RADIUS, False), (RADIUS - TOO_FAR, True)])
def test_a_rod_may_touch_a_sloping_ceiling_but_not_pass_it(gap: float, is_hit: bool) -> None:
    hits = found(under_slope(left_height_for(gap)), "meets")
    assert bool(hits) == is_hit
    if hits:
        assert (hits[0].weight, hits[0].subject) == (Weight.STOP, LAYER)
        assert hits[0].measured_mm == pytest.approx(-TOO_FAR)
        assert "into the ceiling" in said(hits[0].text)


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
