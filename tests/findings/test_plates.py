"""Rules about what a wall plate covers: casings and openings, boxes and their cables.

Places are worked by hand from the room in ``rooms.py``; geometry, so no source. Touching is compared within 1e-6 mm.
"""

from __future__ import annotations

from math import sqrt

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.model import Head, Room
from tests.findings.rooms import (
    INCH,
    LEFT_BRACKET,
    OPENING,
    TOO_FAR,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    mm,
    obstacle,
    rod,
    said,
    the,
    with_obstacle,
)

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
