"""Each bound of a possible room just inside, at, and just outside it; and what only a whole wall can tell."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.room.check_wall import head_height
from elevation.room.model import Head, Obstacle, Opening, Room, Station, Wall, WallEnd
from elevation.room.stand import excess, height_at, stands
from elevation.room.validate import check_room
from elevation.units import Length


def mm(value: float) -> Length:
    return Length(float(value), f"{value:g} mm")


def opening(key: str = "o", **fields: Any) -> Opening:
    usual: dict[str, Any] = {"width": mm(1000), "height": mm(1200), "sill": mm(800), "left": mm(1000)}
    return Opening(id=key, **(usual | fields))


def wall(**fields: Any) -> Wall:
    usual: dict[str, Any] = {"width": mm(4000), "ceiling": (Station(mm(0), mm(2500)),), "openings": (opening(),)}
    return Wall(id="w", **(usual | fields))


def fault(**fields: Any) -> str:
    """The sentence about a wall with these fields; empty where the wall can be."""
    try:
        check_room(Room(walls=(wall(**fields),)), "x")
    except BadInput as error:
        return str(error)
    return ""


NAN, INF = float("nan"), float("inf")

# field of the opening, the last value that can be, the first that cannot
EDGES = [
    ("width", 0.001, 0.0),
    ("height", 0.001, 0.0),
    ("casing", 0.0, -0.001),
    ("casing", 1000.0, 1000.001),
    ("apron", 0.0, -0.001),
    ("reveal", 5000.0, 5000.001),
    ("shutter_box", 5000.0, 5000.001),
    ("frame", 499.99, 500.0),  # half of the width: no glass is left
    ("sill", -2000.0, -2000.001),
    ("sill", 1300.0, 1300.001),  # 1300 + 1200 touches the ceiling at 2500
    ("left", 0.0, -0.001),
    ("left", 3000.0, 3000.001),  # 3000 + 1000 touches the wall's end at 4000
    ("height", 1700.0, 1700.001),
    ("width", 3000.0, 3000.001),
]


@pytest.mark.parametrize(("field", "inside", "outside"), EDGES)
def test_an_opening_just_inside_and_just_outside(field: str, inside: float, outside: float) -> None:
    assert fault(openings=(opening(**{field: mm(inside)}),)) == ""
    assert fault(openings=(opening(**{field: mm(outside)}),)).startswith("x: walls[0].openings[0]")


@pytest.mark.parametrize("value", [NAN, INF, -INF])
@pytest.mark.parametrize("field", ["width", "height", "sill", "left", "gap", "casing", "apron", "reveal", "frame"])
def test_no_length_is_endless_or_no_number(field: str, value: float) -> None:
    assert f"walls[0].openings[0].{field}: is not a finite length" in fault(openings=(opening(**{field: mm(value)}),))


@pytest.mark.parametrize(("width", "right"), [(100_000.0, True), (100_000.001, False), (0.001, True), (0.0, False)])
def test_a_wall_is_up_to_a_hundred_metres(width: float, right: bool) -> None:
    assert (fault(width=mm(width), openings=()) == "") is right


@pytest.mark.parametrize(
    ("head", "right"),
    [
        (Head("segmental", rise=mm(500)), True),  # half the width: just a half circle
        (Head("segmental", rise=mm(500.001)), False),
        (Head("segmental", rise=mm(0)), False),
        (Head("segmental"), False),
        (Head("half-round"), True),
        (Head("raked", right_height=mm(1700)), True),  # 800 + 1700 touches the ceiling
        (Head("raked", right_height=mm(1700.001)), False),
        (Head("raked", right_height=mm(0)), False),
    ],
)
def test_heads(head: Head, right: bool) -> None:
    assert (fault(openings=(opening(head=head),)) == "") is right


def test_a_half_round_head_needs_half_the_width_in_height() -> None:
    assert fault(openings=(opening(head=Head("half-round"), height=mm(500)),)) == ""
    assert "half-round" in fault(openings=(opening(head=Head("half-round"), height=mm(499.999)),))


def test_openings_may_touch_but_not_overlap() -> None:
    first = opening("a", left=mm(500))
    assert fault(openings=(first, opening("b", left=mm(1500)))) == ""
    said = fault(openings=(first, opening("b", left=mm(1499.9))))
    assert said.startswith("x: walls[0].openings[1]: overlaps openings[0] by 0.1 mm")
    assert "overlaps" in fault(openings=(opening("b", left=mm(1500)), first))


def test_a_chain_of_gaps_may_miss_as_a_tape_is_misread() -> None:
    chain = (opening("a", left=None, gap=mm(500), casing=mm(80)), opening("b", left=None, gap=mm(300), casing=mm(80)))
    # 500 + 80 + 1000 + 80 + 300 + 80 = 2040
    assert stands(wall(openings=chain)) == (580.0, 2040.0)
    # Whatever is missed inside the wall is a closing error, shown and measured again, never refused.
    for gap_right in (960, 880, 0, 960 - 254, 960 + 254, 90_000):
        assert fault(openings=chain, gap_right=mm(gap_right)) == ""
    # 2040 + 1000 is 960 inside the end; a gap of 1960 mm more than it was would stand a metre past it.
    for more, right in ((960 + 254, True), (1960, True), (1960.1, False)):
        long = (chain[0], replace(chain[1], gap=mm(300 + more)))
        for gap_right in (None, mm(880)):
            assert (fault(openings=long, gap_right=gap_right) == "") is right
    assert "past the wall's right end" in fault(openings=long)


def test_a_place_from_the_walls_end_is_no_misread_chain() -> None:
    # A left side typed from the wall's end says where it stands: over its neighbour it is refused.
    chain = (opening("a", left=None, gap=mm(500)), opening("b", left=mm(1499.9)))
    assert "overlaps openings[0] by 0.1 mm" in fault(openings=chain)


@pytest.mark.parametrize(("gap_right", "right"), [(1900, True), (2154, True), (2900, True), (2900.1, False)])
def test_a_blank_link_may_be_left_without_room_by_a_misread_one(gap_right: float, right: bool) -> None:
    # 100 + 1000 + blank + 1000 + 1900 = 4000: more than 1900 on the right leaves less than nothing.
    chain = (opening("a", left=None, gap=mm(100)), opening("b", left=None))
    assert (fault(openings=chain, gap_right=mm(gap_right)) == "") is right


@pytest.mark.parametrize(("gap_right", "right"), [(1000, True), (1254, True), (2000, True), (2000.1, False)])
def test_so_may_an_opening_that_nothing_places(gap_right: float, right: bool) -> None:
    # 1000 + blank + 1000 + blank + 1000 + 1000 = 4000: both blanks are nothing; the last one comes a metre too far left.
    chain = (opening("a", left=mm(0)), opening("b", left=None), opening("c", left=None))
    assert (fault(openings=chain, gap_right=mm(gap_right)) == "") is right


def test_a_blank_gap_is_read_from_the_right() -> None:
    chain = (opening("a", left=mm(300)), opening("b", left=None, casing=mm(80)))
    assert stands(wall(openings=chain, gap_right=mm(420))) == (300.0, 2500.0)
    assert stands(wall(openings=chain)) == (300.0, None)
    assert stands(wall(openings=(replace(chain[1], id="c"), replace(chain[1], gap=mm(100))), gap_right=mm(420))) == (
        1240.0,
        2500.0,
    )


def test_openings_that_nothing_places_must_fit_between_the_others() -> None:
    def row(width: float) -> tuple[Opening, ...]:
        return (opening("a", left=mm(0)), opening("b", left=None, width=mm(width)), opening("c", left=mm(2000)))

    assert fault(openings=row(1000)) == ""
    assert fault(openings=row(1000.1)).startswith("x: walls[0].openings[1]: needs 0.1 mm more")


def test_an_opening_fits_under_a_raked_ceiling_all_along() -> None:
    def gable(peak: float) -> tuple[Station, ...]:
        return (Station(mm(0), mm(1000)), Station(mm(2000), mm(peak)), Station(mm(4000), mm(1000)))

    # At the opening's left side, a quarter along: (1000 + peak) / 2 must reach its top at 2000.
    window = opening(left=mm(1000), width=mm(2000), sill=mm(800), height=mm(1200))
    assert fault(ceiling=gable(3000), openings=(window,)) == ""
    assert "over the ceiling" in fault(ceiling=gable(2999.9), openings=(window,))
    # A half-round head clears the slope that a flat one of the same crown meets.
    arch = replace(window, head=Head("half-round"))
    assert fault(ceiling=gable(2500), openings=(arch,)) == ""
    assert "over the ceiling" in fault(ceiling=gable(2500), openings=(window,))


def test_a_misread_tape_under_a_raked_ceiling_is_a_closing_error_too() -> None:
    # 1500 mm at the left end, 100 mm more for every 100 mm: an opening 2000 mm high fits from 500 mm on.
    slope = (Station(mm(0), mm(1500)), Station(mm(2000), mm(3500)))

    def said(gap: float, gap_right: float | None) -> str:
        window = opening(left=None, gap=mm(gap), width=mm(600), sill=mm(800), height=mm(1200))
        return fault(ceiling=slope, openings=(window,), gap_right=None if gap_right is None else mm(gap_right))

    assert said(500, 2900) == ""
    assert "over the ceiling" in said(499, 2901)
    # Read 254 mm too short: it closes nowhere, so it may well stand where it fits; without the last link nothing says so.
    assert said(246, 2900) == ""
    assert "over the ceiling" in said(246, None)
    assert "over the ceiling" in said(246, 2901)


def test_an_opening_without_a_place_is_still_lower_than_the_ceiling() -> None:
    assert "over the ceiling" in fault(openings=(opening(left=None, height=mm(1701)),))
    assert fault(openings=(opening(left=None, height=mm(1700)),), ceiling=()) == ""


def test_profiles_run_from_left_to_right_inside_the_wall() -> None:
    def line(*points: tuple[float, float]) -> tuple[Station, ...]:
        return tuple(Station(mm(x), mm(y)) for x, y in points)

    assert fault(ceiling=line((0, 2500), (4000, 2400))) == ""
    assert "ceiling[1].x" in fault(ceiling=line((0, 2500), (4000.1, 2400)))
    assert "not to the right" in fault(ceiling=line((100, 2500), (100, 2400)))
    assert "not to the right" in fault(floor=line((100, 0), (50, 0)))
    assert "floor[0].height" in fault(
        floor=line(
            (0, 2000.1),
        ),
        openings=(),
    )
    assert "floor[1].height: is 1900 mm, over the ceiling" in fault(
        ceiling=line((0, 1800)), floor=line((0, 0), (2000, 1900)), openings=()
    )
    assert "under the floor" in fault(ceiling=line((0, 100), (4000, 2500)), floor=line((0, 150), (4000, 0)), openings=())
    assert "leaves only 250 mm" in fault(ceiling=line((0, 250)), openings=())


@pytest.mark.parametrize(("angle", "right"), [(20.0, True), (19.9, False), (340.0, True), (340.1, False), (90.0, True)])
def test_corner_angles(angle: float, right: bool) -> None:
    assert (fault(left=WallEnd(angle=angle)) == "") is right


def test_obstacles_stand_on_the_wall() -> None:
    def thing(**fields: Any) -> tuple[Obstacle, ...]:
        usual: dict[str, Any] = {"left": mm(3000), "bottom": mm(0), "width": mm(1000), "height": mm(500)}
        return (Obstacle("x", "shelf", **(usual | fields)),)

    assert fault(obstacles=thing()) == ""
    assert "walls[0].obstacles[0]: reaches 0.1 mm past" in fault(obstacles=thing(width=mm(1000.1)))
    assert "obstacles[0].left" in fault(obstacles=thing(left=mm(-0.1)))
    assert "obstacles[0].height" in fault(obstacles=thing(height=mm(0)))
    assert "obstacles[0].projection" in fault(obstacles=thing(projection=mm(-1)))
    assert "obstacles[0].clearance" in fault(obstacles=thing(clearance=mm(NAN)))


def test_things_on_one_wall_share_their_ids() -> None:
    shelf = Obstacle("o", "shelf", mm(0), mm(0), mm(100), mm(100))
    assert 'obstacles[0].id: is "o", which openings[0] has already' in fault(obstacles=(shelf,))


def test_a_room_is_of_sensible_size() -> None:
    walls = tuple(Wall(f"w{number}") for number in range(201))
    check_room(Room(walls=walls[:200]), "x")
    with pytest.raises(BadInput, match="201 walls"):
        check_room(Room(walls=walls), "x")


def test_a_circle_through_crown_and_springing() -> None:
    # Euclid's sagitta: r = (w^2/4 + h^2) / 2h. For w = 8, h = 2: r = 5, and 3 off the middle it has fallen by 1.
    arch = Opening("o", mm(8), mm(10), sill=mm(0), head=Head("segmental", rise=mm(2)))
    assert head_height(arch, 4) == pytest.approx(10.0)
    assert head_height(arch, 0) == pytest.approx(8.0)
    assert head_height(arch, 8) == pytest.approx(8.0)
    assert head_height(arch, 1) == pytest.approx(9.0)
    rake = Opening("o", mm(8), mm(10), sill=mm(1), head=Head("raked", right_height=mm(6)))
    assert [head_height(rake, x) for x in (0, 4, 8)] == [11.0, 9.0, 7.0]


def test_a_profile_is_straight_between_points_and_level_beyond() -> None:
    line = (Station(mm(100), mm(10)), Station(mm(300), mm(30)))
    assert [height_at(line, x) for x in (0, 100, 200, 300, 400)] == [10.0, 10.0, 20.0, 30.0, 30.0]
    assert height_at((), 5) is None


@pytest.mark.parametrize(
    ("fields", "mm_more"),
    [
        ({"gap_right": mm(1840)}, 0.0), ({"gap_right": mm(2094)}, 254.0), ({"gap_right": mm(1000)}, -840.0),
        ({}, 0.0), ({"gap_right": mm(9), "width": None}, 0.0),
        ({"gap_right": mm(9), "openings": (opening(),)}, 0.0),
    ],
)  # fmt: skip
def test_how_much_a_full_chain_is_longer_than_its_wall(fields: dict[str, Any], mm_more: float) -> None:
    # 1000 + 80 + 1000 + 80 + 1840 = 4000.
    chain = (opening(left=None, gap=mm(1000), casing=mm(80)),)
    assert excess(wall(**({"openings": chain} | fields))) == mm_more


@pytest.mark.parametrize(
    ("studs", "told"),
    [
        ((4000.0,), ""),
        ((4000.1,), "past the wall's right end"),
        ((400.0, 800.0), ""),
        ((400.0, 400.0), "not to the right of the stud before"),
        ((800.0, 400.0), "not to the right of the stud before"),
    ],
)
def test_studs_stand_on_the_wall_in_order(studs: tuple[float, ...], told: str) -> None:
    found = fault(studs=tuple(mm(stud) for stud in studs))
    assert told in found
    assert (found == "") is (told == "")


@pytest.mark.parametrize(("rise", "right"), [(300, True), (300.1, False)])
def test_an_arc_rises_no_higher_than_its_opening(rise: float, right: bool) -> None:
    low = opening(height=mm(300), head=Head("segmental", rise=mm(rise)))
    assert (fault(openings=(low,)) == "") is right


@pytest.mark.parametrize(("gap_right", "right"), [(4000, True), (4000.1, False)])
def test_an_opening_read_from_the_right_may_miss_as_a_tape_is_misread(gap_right: float, right: bool) -> None:
    # 4000 wide, the opening 1000: with 4000 to the right of it, its left end is a metre past the wall's.
    told = fault(openings=(opening(left=None),), gap_right=mm(gap_right))
    assert (told == "") is right
    assert right or "reaches past the wall's left end" in told


def test_a_wall_carries_a_sensible_number_of_things() -> None:
    shelves = tuple(Obstacle(f"n{number}", "shelf", mm(0), mm(0), mm(9), mm(9)) for number in range(500))
    assert fault(obstacles=shelves, openings=()) == ""
    assert "has 501 things on it" in fault(obstacles=shelves)
