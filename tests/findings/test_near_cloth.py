"""Rules about what must not come near cloth or rod: heaters, registers, swinging sashes and doors.

Places are worked by hand from the room in ``rooms.py``; geometry, so no source. Touching is compared within 1e-6 mm.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.model import Obstacle, Room, Sash
from tests.findings.rooms import (
    INCH,
    LAYER,
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
    reach,
    rod,
    said,
    the,
    with_obstacle,
)

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
