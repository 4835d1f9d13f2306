"""Where a finding points, and the figures it carries: worked by hand from ``rooms.py``, geometry, so no source."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.rules import no_room, uneven_rods
from elevation.findings.rules.uneven_rods import common_height
from elevation.room.model import Hem, Room, Station
from tests.findings import test_limits as limits
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    at,
    candidates,
    ceiling,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    obstacle,
    panels,
    said,
    said_all,
    scene,
    the,
    treatment,
    window,
    with_obstacle,
)
from tests.findings.test_mounts import deep, on

SLOPE = (Station(inch(45.5), mm(0)), Station(inch(72), inch(1)))
"""A floor that rises 1 in under the left panel's way."""


def long(inches: float) -> Room:
    """Cloth made so long over that floor; it begins at 82 1/2 in."""
    return at(at(good_room(), ("w1",), floor=SLOPE), LAYER, hem=Hem("length", inch(inches)))


def two_covered() -> Room:
    """One rod over window 1 and one 50 in high from 110 in on: casing to 82 1/4 in, the ceiling 5 in over it."""
    openings = (window(), window("o2", left=110, height=inch(50)))
    room = good_room(width=inch(200), openings=openings)
    return at(ceiling(room, inch(87.25)), ("w1", "s1", "t1"), openings=("o1", "o2"))


POINTS = [
    # rule, room, measured, limit, at: all in inches.
    ("no-room", limits.gap(5 * INCH), 5, 6, (72, 82.75)),
    ("no-room", two_covered(), 5, 6, (100, 84.75)),
    # The second window's rod: 10 in beyond an opening from 160 to 196 in, 1 in over the others at 84 1/4 in.
    ("uneven-rods", limits.second_rod(INCH), 1, 1 / 16, (178, 85.25)),
    ("hem-varies", limits.floor_varies(INCH), 1, None, (58.75, 2)),
    ("hem-varies", long(80.5), 1, None, (58.75, 2)),
    # An outlet 1/4 in under the left plate, whose bracket's centre is at 46 in.
    ("over-box", with_obstacle(good_room(), obstacle("outlet", 46.5 * INCH, 82 * INCH, 70, 70)), -0.25, 0, (46, 84.25)),
]


@pytest.mark.parametrize(("rule", "room", "measured", "limit", "place"), POINTS, ids=[case[0] for case in POINTS])
def test_what_is_wrong_and_where(rule, room, measured, limit, place) -> None:
    one = found(room, rule)[0]
    assert one.measured_mm == pytest.approx(measured * INCH)
    if limit is not None:
        assert one.limit_mm == pytest.approx(limit * INCH)
    assert one.at == pytest.approx((place[0] * INCH, place[1] * INCH))


# --- no-room --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("gap_mm", "begins"),
    [
        (-INCH, "Window 1: the ceiling comes down 1 in below the head"),
        (-0.6, "Window 1: the ceiling comes down"),
        (0.0, "Window 1: the gap between head and ceiling is 0 in"),
        (0.6, "Window 1: the gap between head and ceiling is"),
        (5 * INCH, "Window 1: the gap between head and ceiling is 5 in"),
    ],
)
def test_a_ceiling_under_the_head_leaves_no_gap_to_tell_of(gap_mm: float, begins: str) -> None:
    assert said(the(limits.gap(gap_mm), "no-room").text).startswith(begins)


def splits(room: Room) -> list[float]:
    here = scene(room)
    places = no_room.RULE.stickings(here, here.set_out.treatments[0])
    return [one.value_mm / INCH for one in places if said(one.reason) == "splits the gap between head and ceiling"]


def test_the_rod_sticks_in_the_middle_of_a_gap_that_is_too_small() -> None:
    # Casing top at 80 1/4 in; 3 in are asked for below and above.
    assert splits(limits.gap(5 * INCH)) == pytest.approx([82.75])
    assert splits(two_covered()) == pytest.approx([84.75])
    assert splits(limits.gap(0.5)) == pytest.approx([80.25 + 0.25 / INCH])
    for none in (limits.gap(0.0), limits.gap(-0.5), limits.gap(7 * INCH), at(good_room(), ("w1",), ceiling=())):
        assert splits(none) == []
    here = scene(limits.gap(5 * INCH))
    (place,) = no_room.RULE.stickings(here, here.set_out.treatments[0])
    assert (place.ref, place.rank, place.breaks) == (LAYER, 1, "no-room")


# --- hem-varies -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("long_in", "offered"),
    [
        # Over the floor's high end the hem is 82 1/2 - 1 - length: 1 in, 1/2 mm, nothing, and 1/10 in on the floor.
        (80.5, ["Let the hem hang 1 in clear of the floor"]),
        (81.5 - 0.5 / INCH, ["Let the hem hang ¹⁄₁₆ in clear of the floor"]),
        (81.5, ["Let the hem hang 0 in clear of the floor"]),
        (81.5 + 0.5 / INCH, []),
        (81.6, []),
    ],
)
def test_cloth_still_to_be_hemmed_may_follow_the_floor(long_in: float, offered: list[str]) -> None:
    assert said_all(candidates(long(long_in), "hem-varies")) == offered


def test_panels_in_hand_follow_no_floor() -> None:
    assert said_all(candidates(limits.floor_varies(INCH), "hem-varies")) == []
    assert said_all(candidates(panels(long(80.5), measured_length=inch(80.5)), "hem-varies")) == []


# --- uneven-rods ----------------------------------------------------------------------------------------------


def rods_at(*above: float, **fields: object) -> Room:
    """Windows side by side, each rod so many inches above its casing (80 1/4 in)."""
    openings = tuple(window(f"o{n}", left=54 + 80 * n) for n, _ in enumerate(above))
    hung = tuple(
        treatment(f"t{n}", (f"o{n}",), layers=(layer(rod=replace(layer().rod, height=held("above-casing", inch(over)))),))
        for n, over in enumerate(above)
    )
    room = good_room(width=inch(500), openings=openings)
    return at(at(room, ("w1", "s1"), treatments=hung), (), **fields)


def with_back_layer(room: Room, key: str, above: float) -> Room:
    """Another layer behind the front one of a treatment, at another height."""
    back = layer("l2", rod=replace(layer().rod, height=held("above-casing", inch(above)), projection=inch(1.5)))
    front = next(one for one in room.walls[0].schemes[0].treatments if one.id == key).layers
    return at(room, ("w1", "s1", key), layers=(*front, back))


def common(room: Room) -> float | None:
    height = common_height(scene(room))
    return None if height is None else height / INCH - 80.25


def test_the_common_height_is_what_most_have_the_highest_of_what_reads_alike() -> None:
    assert common(rods_at(4)) is None
    assert common(rods_at(4, 5, 4)) == pytest.approx(4)
    assert common(rods_at(5, 4, 4)) == pytest.approx(4)
    # As many at 5 in: the higher one; 4 in and 4.02 in are one mark of the tape.
    assert common(rods_at(4, 5)) == pytest.approx(5)
    assert common(rods_at(4, 4.02, 5)) == pytest.approx(4.02)
    # Back layers do not count.
    assert common(with_back_layer(with_back_layer(rods_at(4, 5, 4), "t0", 5), "t2", 5)) == pytest.approx(4)


def test_the_front_rod_is_the_one_that_is_uneven() -> None:
    room = with_back_layer(rods_at(4, 5, 4), "t1", 4)
    (one,) = found(room, "uneven-rods")
    assert one.subject == ("w1", "s1", "t1", "l1")


@pytest.mark.parametrize("wish", [False, True])
def test_higher_and_lower_are_said_as_they_are(wish: bool) -> None:
    of = "room" if wish else "wall"
    for over, way in ((5, "higher"), (3, "lower")):
        (one,) = found(rods_at(4, over, 4, one_height=wish), "uneven-rods")
        assert f"the rod stands 1 in {way} than the other rods of this {of}." in said(one.text)
    # A room's own limit may be finer than its tape: 0.9 mm against none at all.
    for by, way in ((0.9, "higher"), (-0.9, "lower")):
        room = rods_at(4, 4 + by / INCH, 4, one_height=wish, unit="mm", limits={"uneven-rods": mm(0)})
        (one,) = found(room, "uneven-rods")
        assert f"{way} than the other rods of this {of}." in said(one.text)


def sticks(room: Room, which: int) -> list[float]:
    here = scene(room)
    places = uneven_rods.RULE.stickings(here, here.set_out.treatments[which])
    return [one.value_mm / INCH - 80.25 for one in places]


def test_a_rod_sticks_at_the_height_of_the_others_where_that_is_wished() -> None:
    room = rods_at(4, 5, 6, 6, one_height=True)
    assert sticks(room, 0) == pytest.approx([6])
    assert sticks(rods_at(4, 5, one_height=True), 1) == pytest.approx([4])
    assert sticks(rods_at(4, 5), 1) == []
    assert sticks(rods_at(4, one_height=True), 0) == []
    layered = with_back_layer(with_back_layer(rods_at(4, 5, one_height=True), "t0", 7), "t1", 7)
    assert sticks(layered, 1) == pytest.approx([4])
    here = scene(layered)
    (place,) = uneven_rods.RULE.stickings(here, here.set_out.treatments[1])
    assert place.ref == ("w1", "s1", "t1", "l1")


def test_a_rod_inside_its_opening_is_none_of_the_others() -> None:
    # A café rod stands where its window does: no rod before the wall is drawn to its height.
    inside = on("reveal", deep()).walls[0]
    cafe = replace(inside.schemes[0].treatments[0], id="t9", openings=("o9",))
    room = rods_at(4, 5, one_height=True)
    wall = room.walls[0]
    room = at(room, ("w1",), openings=(*wall.openings, replace(inside.openings[0], id="o9", left=inch(300))))
    room = at(room, ("w1", "s1"), treatments=(*wall.schemes[0].treatments, cafe))
    assert sticks(room, 0) == pytest.approx([5])
    only = at(room, ("w1", "s1"), treatments=(wall.schemes[0].treatments[0], cafe))
    assert sticks(only, 0) == []


def test_brackets_of_a_bare_wall_are_no_boxes() -> None:
    assert not found(good_room(), "over-box")
    assert LEFT_BRACKET not in {one.subject for one in found(good_room())}
