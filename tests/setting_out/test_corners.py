"""Corners: where axes meet, what of the neighbour wall comes before this one, and treatments that go round the corner."""

from __future__ import annotations

import math
import random
from typing import Any

import msgspec
import pytest
import shapely
from shapely import affinity

from elevation.room.model import (
    Bracket,
    Held,
    Layer,
    Obstacle,
    Opening,
    Panel,
    Rod,
    Room,
    Sash,
    Scheme,
    Station,
    Treatment,
    Wall,
    WallEnd,
)
from elevation.setting_out.corners import leaves_of, stretch_of, turned
from elevation.setting_out.keeper import Keeper
from elevation.setting_out.model import CornerOut, SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from elevation.trade.mitres import mitre
from tests.setting_out.rooms import mm

TRADE = load_trade()
change: Any = msgspec.structs.replace


# Worked by hand: 100 out from both walls. At a right angle the axes meet 100 from the corner; at 120 degrees 100 / tan 60
# = 100 / 1.7320508 = 57.735027; at 135 degrees 100 / tan 67.5 = 100 / 2.4142136 = 41.421356; along one straight wall (180)
# there is no corner; round an outside corner of 270 the axis runs on by as much as it stands out.
@pytest.mark.parametrize(
    ("angle", "wanted"), [(90, 100.0), (120, 57.7350269), (135, 41.4213562), (180, 0.0), (270, -100.0), (60, 173.2050808)]
)
def test_axes_meet_where_the_hand_finds_them(angle: float, wanted: float) -> None:
    assert mitre(100.0, angle) == pytest.approx(wanted, abs=1e-6)


@pytest.mark.parametrize("angle", [60.0, 90.0, 120.0, 135.0, 150.0, 200.0, 270.0])
def test_the_axes_of_both_walls_meet_in_one_point(angle: float) -> None:
    # Independently of the tangent: the mitre point of the neighbour, turned into this wall's plan, is this wall's.
    out, wide = 88.9, 1500.0
    corner = CornerOut("b", "B", 900.0, angle)
    ((x, z),) = turned([(mitre(out, angle), out)], "right", wide, corner)
    assert (x, z) == (pytest.approx(wide - mitre(out, angle)), pytest.approx(out))
    ((x, z),) = turned([(900.0 - mitre(out, angle), out)], "left", wide, corner)
    assert (x, z) == (pytest.approx(mitre(out, angle)), pytest.approx(out))


@pytest.mark.parametrize("angle", [45.0, 90.0, 120.0, 135.0, 250.0])
def test_the_neighbours_plan_is_turned_as_shapely_turns_it(angle: float) -> None:
    points = [(10.0, 0.0), (600.0, 0.0), (600.0, 250.0), (10.0, 250.0)]
    mine = turned(points, "right", 2000.0, CornerOut("b", "B", 900.0, angle))
    # Seen from above with the room below, z grows downward: in shapely's axes (y up) the plan is (x, -z). A straight wall
    # of 180 degrees would go on to the right; each degree less turns it toward the room about the corner, clockwise.
    there = affinity.translate(shapely.Polygon([(x, -z) for x, z in points]), 2000.0, 0.0)
    there = affinity.rotate(there, -(180.0 - angle), origin=(2000.0, 0.0))
    wanted = [(x, -y) for x, y in there.exterior.coords[:-1]]
    for (x, z), (wx, wz) in zip(mine, wanted, strict=True):
        assert (x, z) == (pytest.approx(wx), pytest.approx(wz))


def wall(key: str, left: WallEnd, right: WallEnd, *, treatments: tuple[Treatment, ...] = (), **more: Any) -> Wall:
    opening = Opening(id="o", left=mm(400), width=mm(700), height=mm(1200), sill=mm(800), casing=mm(60), **more)
    schemes = (Scheme("s", "", treatments),) if treatments else ()
    return Wall(
        id=key,
        name=key.upper(),
        width=mm(1500),
        ceiling=(Station(mm(0), mm(2500)),),
        left=left,
        right=right,
        openings=(opening,),
        schemes=schemes,
    )


def leg(key: str, left: Held, right: Held, continues: str | None = None, kind: Any = "rod") -> Treatment:
    rod = Rod(Held("above-casing", mm(100)), left, right, projection=mm(100), ends="cap", kind=kind)
    brackets = (Bracket("b1", Held("from-left-end", mm(60))), Bracket("b2", Held("from-right-end", mm(60))))
    panels = (Panel("p1", mm(1200)), Panel("p2", mm(1200), parks="right"))
    return Treatment(key, ("o",), (Layer("l", rod, brackets, panels=panels),), continues=continues)


AROUND, BEYOND = Held("around-corner", mm(0)), Held("beyond-opening", mm(200))


def bay(angle: float) -> Room:
    walls = (
        wall("a", WallEnd(), WallEnd("corner", "b", angle), treatments=(leg("t", BEYOND, AROUND),)),
        wall(
            "b",
            WallEnd("corner", "a", angle),
            WallEnd("corner", "c", angle),
            treatments=(leg("t", AROUND, AROUND, "t"),),
        ),
        wall("c", WallEnd("corner", "b", angle), WallEnd(), treatments=(leg("t", AROUND, BEYOND, "t"),)),
    )
    return Room(unit="mm", walls=walls)


def of(room: Room, wall_id: str) -> SetOut:
    return set_out_afresh(room, wall_id, "s", TRADE)


@pytest.mark.parametrize(("angle", "off"), [(90.0, 100.0), (120.0, 57.7350269), (135.0, 41.4213562)])
def test_the_legs_of_a_bay_are_cut_at_the_mitre(angle: float, off: float) -> None:
    room = bay(angle)
    first, middle, last = (of(room, key).treatments[0].layers[0].support for key in "abc")
    assert (first.left_mm, first.right_mm) == (pytest.approx(200.0), pytest.approx(1500.0 - off))
    assert (middle.left_mm, middle.right_mm) == (pytest.approx(off), pytest.approx(1500.0 - off))
    assert (last.left_mm, last.right_mm) == (pytest.approx(off), pytest.approx(1300.0))
    # Cut on the mitre, measured at the axis: no cap, no finial and no extra tube in a corner.
    assert middle.cut_length_mm == pytest.approx(1500.0 - 2 * off)
    assert (middle.metal_left_mm, middle.metal_right_mm) == (middle.left_mm, middle.right_mm)


def test_legs_hang_at_the_first_ones_height_whatever_their_own_says() -> None:
    room = bay(135.0)
    third = room.walls[2]
    other = leg("t", AROUND, BEYOND, "t")
    rod = change(other.layers[0].rod, height=Held("above-floor", mm(900)), projection=mm(40), section="conduit-1")
    other = change(other, layers=(change(other.layers[0], rod=rod),))
    room = change(room, walls=(*room.walls[:2], change(third, schemes=(change(third.schemes[0], treatments=(other,)),))))
    first, last = (of(room, key).treatments[0].layers[0].support for key in "ac")
    assert last.height_mm == pytest.approx(first.height_mm) == pytest.approx(800 + 1200 + 60 + 100)
    assert (last.projection_mm, last.diameter_mm) == (first.projection_mm, first.diameter_mm)


def test_a_floor_that_falls_toward_the_corner_takes_the_datum_along() -> None:
    room = bay(90.0)
    first = change(room.walls[0], floor=(Station(mm(0), mm(0)), Station(mm(1500), mm(-12))))
    room = change(room, walls=(first, *room.walls[1:]))
    high, low = (of(room, key).treatments[0].layers[0].support.height_mm for key in "ab")
    # The datum of the second wall lies 12 mm under the first one's, on the floor of the corner.
    assert low == pytest.approx(high + 12.0)


def test_who_goes_on_with_whom() -> None:
    room = bay(120.0)
    joined = [of(room, key).treatments[0].joined for key in "abc"]
    assert joined == [
        (None, ("b", "s", "t")),
        (("a", "s", "t"), ("c", "s", "t")),
        (("b", "s", "t"), None),
    ]


def mirrored(room: Room) -> Room:
    """The bay seen in a mirror: the order of the walls and the sides of each change."""

    def held(one: Held) -> Held:
        return one

    def flip(one: Wall, continues: str | None) -> Wall:
        (treatment,) = one.schemes[0].treatments
        layer = treatment.layers[0]
        rod = change(layer.rod, left=held(layer.rod.right), right=held(layer.rod.left))
        opening = change(one.openings[0], left=mm(1500 - 400 - 700))
        made = change(treatment, layers=(change(layer, rod=rod),), continues=continues)
        ends = {"left": one.right, "right": one.left}
        return change(one, openings=(opening,), schemes=(change(one.schemes[0], treatments=(made,)),), **ends)

    a, b, c = room.walls
    return change(room, walls=(flip(c, None), flip(b, "t"), flip(a, "t")))


@pytest.mark.parametrize("angle", [90.0, 120.0, 135.0])
def test_a_bay_in_the_mirror_is_cut_the_other_way_round(angle: float) -> None:
    room = bay(angle)
    other = mirrored(room)
    for key in "abc":
        here = of(room, key).treatments[0].layers[0]
        there = of(other, key).treatments[0].layers[0]
        assert there.support.left_mm == pytest.approx(1500.0 - here.support.right_mm)
        assert there.support.right_mm == pytest.approx(1500.0 - here.support.left_mm)
        assert there.support.height_mm == pytest.approx(here.support.height_mm)
        assert [bracket.x_mm for bracket in there.brackets] == pytest.approx(
            [1500.0 - bracket.x_mm for bracket in reversed(here.brackets)]
        )
        # What of the neighbours comes before the wall is mirrored with it.
        ours = [(thing.kind, min(x for x, _ in thing.outline)) for thing in of(room, key).beside]
        theirs = [(thing.kind, 1500.0 - max(x for x, _ in thing.outline)) for thing in of(other, key).beside]
        for kind in {kind for kind, _ in ours}:
            here_mm, there_mm = (sorted(x for one, x in found if one == kind) for found in (ours, theirs))
            assert there_mm == pytest.approx(here_mm)


# --- swings --------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("hinge", ["left", "right", "both"])
@pytest.mark.parametrize("reveal", [0, 120])
def test_a_leaf_sweeps_what_a_turning_leaf_covers(hinge: Any, reveal: int) -> None:
    room = Room(
        unit="mm",
        walls=(wall("a", WallEnd(), WallEnd(), sash=Sash("casement-in", hinge), reveal=mm(reveal) if reveal else None),),
    )
    opening = set_out_afresh(room, "a", None, TRADE).openings[0]
    swept = shapely.union_all([shapely.Polygon(outline) for outline in leaves_of(opening)])
    wide = 350.0 if hinge == "both" else 700.0
    leaves = []
    if hinge in ("left", "both"):
        leaves.append((400.0, shapely.LineString([(400.0, -reveal), (400.0 + wide, -reveal)]), 1.0))
    if hinge in ("right", "both"):
        leaves.append((1100.0, shapely.LineString([(1100.0, -reveal), (1100.0 - wide, -reveal)]), -1.0))
    # The independent sweep: shapely turns the closed leaf about its hinge, degree by degree.
    for hinge_x, leaf, way in leaves:
        for degrees in range(91):
            turned_leaf = affinity.rotate(leaf, way * degrees, origin=(hinge_x, -reveal))
            assert swept.buffer(1e-6).contains(turned_leaf)
    true_area = len(leaves) * math.pi / 4 * wide * wide
    assert true_area <= swept.area <= true_area * 1.003
    for outline in leaves_of(opening):
        assert shapely.Polygon(outline).convex_hull.area == pytest.approx(shapely.Polygon(outline).area)


@pytest.mark.parametrize("angle", [60.0, 90.0, 120.0, 150.0])
def test_a_rectangle_meets_an_outline_where_shapely_says(angle: float) -> None:
    choose = random.Random(7)
    room = Room(unit="mm", walls=(wall("a", WallEnd(), WallEnd(), sash=Sash("casement-in", "left")),))
    (outline,) = leaves_of(set_out_afresh(room, "a", None, TRADE).openings[0])
    there = turned(outline, "right", 1500.0, CornerOut("a", "A", 1500.0, angle))
    shape = shapely.Polygon(there)
    seen = {True: 0, False: 0}
    for _ in range(400):
        left, back = choose.uniform(-500, 2500), choose.uniform(0, 900)
        right, front = left + choose.uniform(1, 300), back + choose.uniform(1, 120)
        stretch = stretch_of(there, back, front)
        mine = stretch is not None and stretch[0] < right and stretch[1] > left
        theirs = shape.intersects(shapely.box(left, back, right, front))
        assert mine == theirs
        seen[mine] += 1
    assert min(seen.values()) > 20


# --- what stands beside --------------------------------------------------------------------------------------------------


def test_a_radiator_round_a_square_corner_stands_before_this_wall() -> None:
    first = wall("a", WallEnd(), WallEnd("corner", "b", 90.0))
    heater = Obstacle("x", "hot-water-radiator", mm(50), mm(100), mm(600), mm(500), mm(120))
    second = change(wall("b", WallEnd("corner", "a", 90.0), WallEnd()), obstacles=(heater,))
    out = set_out_afresh(Room(unit="mm", walls=(first, second)), "a", None, TRADE)
    (thing,) = [thing for thing in out.beside if thing.kind == "hot-water-radiator"]
    xs, zs = zip(*thing.outline, strict=True)
    # 120 out from the side wall, from 50 to 650 out from this one.
    assert (min(xs), max(xs)) == (pytest.approx(1380.0), pytest.approx(1500.0))
    assert (min(zs), max(zs)) == (pytest.approx(50.0), pytest.approx(650.0))
    assert (thing.bottom_mm, thing.top_mm, thing.side) == (100.0, 600.0, "right")


def test_a_corner_that_one_wall_tells_of_is_known_to_both() -> None:
    first, second = wall("a", WallEnd(), WallEnd("corner", "b", 110.0)), wall("b", WallEnd("corner"), WallEnd())
    out = set_out_afresh(Room(unit="mm", walls=(first, second)), "b", None, TRADE)
    assert out.corners[0] is not None
    assert (out.corners[0].wall, out.corners[0].angle) == ("a", 110.0)


def test_from_a_wall_whose_width_is_not_known_nothing_is_measured() -> None:
    first = change(wall("a", WallEnd(), WallEnd("corner", "b", 90.0)), width=None)
    second = wall("b", WallEnd("corner", "a", 90.0), WallEnd(), sash=Sash("casement-in"))
    out = set_out_afresh(Room(unit="mm", walls=(first, second)), "a", None, TRADE)
    assert not out.beside


# --- what is worked out again --------------------------------------------------------------------------------------------


def test_a_drag_on_one_wall_sets_out_nothing_on_another() -> None:
    room = bay(135.0)
    keepers: dict[str, Keeper] = {}

    def keeper(key: str) -> Keeper:
        return keepers.setdefault(key, Keeper())

    def run(made: Room, key: str) -> SetOut:
        one = next(one for one in made.walls if one.id == key)
        return keeper(key).set_out(made, one, one.schemes[0], TRADE, keeper)

    before = {key: run(room, key) for key in "abc"}
    runs = {key: dict(keeper(key).treatment_runs()) for key in "ac"}
    middle = room.walls[1]
    treatment = middle.schemes[0].treatments[0]
    layer = treatment.layers[0]
    moved = change(layer, brackets=(change(layer.brackets[0], place=Held("from-left-end", mm(80))), layer.brackets[1]))
    schemes = (change(middle.schemes[0], treatments=(change(treatment, layers=(moved,)),)),)
    made = change(room, walls=(room.walls[0], change(middle, schemes=schemes), room.walls[2]))
    after = {key: run(made, key) for key in "abc"}
    assert {key: dict(keeper(key).treatment_runs()) for key in "ac"} == runs
    for key in "ac":
        assert after[key].treatments is before[key].treatments
    # And what was dragged finds its neighbours as they were: the very same things.
    assert after["b"].beside is before["b"].beside
    assert after["b"].treatments[0] is not before["b"].treatments[0]


def test_inches_and_millimetres_find_the_same_corner() -> None:
    room = bay(120.0)
    here = of(room, "b")
    there = of(change(room, unit="in"), "b")
    assert there.treatments[0].layers[0].support == here.treatments[0].layers[0].support
    assert there.beside == here.beside
