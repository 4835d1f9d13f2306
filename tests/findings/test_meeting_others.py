"""meets, between layers and between treatments: touching is allowed, one hundredth of a millimetre more is not.

Places are worked by hand from the room in ``rooms.py``; geometry, so no source. Touching is compared within 1e-6 mm.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.model import Room, Scheme
from tests.findings.rooms import (
    INCH,
    TOO_FAR,
    at,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    the,
    treatment,
    window,
)


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
