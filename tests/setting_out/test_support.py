"""Rods and brackets from what is held; cuts, ends and joints. Worked by hand; common practice, no source."""

from __future__ import annotations

import itertools

import msgspec
import pytest

from elevation.room.model import Bracket, Held, Rod
from elevation.setting_out.model import BracketOut, SetOut, SupportOut
from elevation.setting_out.support import joints_of
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from tests.setting_out.rooms import INCH, held, inch, mm, room, treatment, window

TRADE = load_trade()


def wall_of(rod: Rod | None = None, **more) -> SetOut:
    openings = more.pop("openings", None)
    brackets = more.pop("brackets", None)
    covers = tuple(o.id for o in openings) if openings else ("w1",)
    made = treatment(openings=covers, rod=rod, brackets=brackets, panels=more.pop("panels", None))
    return set_out_afresh(room(openings, [made], **more), "a", "s", TRADE)


def support(rod: Rod | None = None, **more) -> SupportOut:
    return wall_of(rod, **more).treatments[0].layers[0].support


def rod(height=None, left=None, right=None, **more) -> Rod:
    return Rod(
        height=height or held("above-casing", 4),
        left=left or held("beyond-opening", 10),
        right=right or held("beyond-opening", 10),
        **more,
    )


# The window of these rooms: 40 to 76 in along a wall of 120 in, 30 to 84 in high, 3 1/2 in casing; ceiling 96 in.
@pytest.mark.parametrize(
    ("height", "inches"),
    [
        (held("above-head", 5), 89), (held("above-casing", 4), 91.5), (held("below-ceiling", 3), 93),
        (held("above-floor", 90), 90),
    ],
)  # fmt: skip
def test_heights_by_what_is_held(height: Held, inches: float) -> None:
    assert support(rod(height)).height_mm / INCH == pytest.approx(inches)


def test_below_the_ceiling_means_below_the_crown_where_there_is_one() -> None:
    out = wall_of(rod(held("below-ceiling", 3)), crown=inch(4))
    assert out.treatments[0].layers[0].support.height_mm / INCH == pytest.approx(89)
    assert out.treatments[0].clearances.below_ceiling_mm == pytest.approx(3 * INCH)


@pytest.mark.parametrize(
    ("left", "right", "ends"),
    [
        (held("beyond-opening", 10), held("beyond-opening", 8), (30, 84)),
        (held("beyond-casing", 6), held("beyond-casing", 6), (30.5, 85.5)),
        (held("from-corner", 12), held("from-corner", 20), (12, 100)),
        (held("rod-length", 60), held("beyond-opening", 9), (25, 85)),
        (held("beyond-opening", 9), held("rod-length", 60), (31, 91)),
        (held("rod-length", 50), held("rod-length", 50), (33, 83)),
    ],
)
def test_ends_by_what_is_held(left: Held, right: Held, ends: tuple[float, float]) -> None:
    out = support(rod(left=left, right=right))
    assert (out.left_mm / INCH, out.right_mm / INCH) == pytest.approx(ends)
    assert out.length_mm / INCH == pytest.approx(ends[1] - ends[0])


def test_one_rod_over_several_openings_stands_over_the_highest_and_beyond_the_outermost() -> None:
    openings = (window("a1", left=20), window("a2", left=70, height=60), window("a3", left=130, width=24))
    out = support(rod(), openings=openings, width=200.0)
    assert (out.left_mm / INCH, out.right_mm / INCH) == pytest.approx((10, 164))
    assert out.height_mm / INCH == pytest.approx(30 + 60 + 3.5 + 4)
    assert support(rod(held("above-head", 4)), openings=openings, width=200.0).height_mm / INCH == pytest.approx(
        30 + 60 + 4
    )


def test_a_rod_never_has_less_than_no_length() -> None:
    out = support(rod(left=held("beyond-opening", -30), right=held("beyond-opening", -30)))
    assert out.length_mm == 0.0
    assert out.left_mm / INCH == pytest.approx(58)


def test_the_lowest_ceiling_along_the_rod_holds_it() -> None:
    from elevation.room.model import Station

    made = room(None, [treatment(rod=rod(held("below-ceiling", 3)))])
    wall = msgspec.structs.replace(made.walls[0], ceiling=(Station(inch(0), inch(110)), Station(inch(120), inch(98))))
    out = set_out_afresh(msgspec.structs.replace(made, walls=(wall,)), "a", "s", TRADE)
    # The rod ends at 86 in: 110 - 86/10 = 101.4 in there.
    assert out.treatments[0].layers[0].support.height_mm / INCH == pytest.approx(98.4)


def test_bare_ends_are_cut_two_inches_longer() -> None:
    out = support(rod(ends="bare"))
    assert (out.cut_length_mm - out.length_mm) / INCH == pytest.approx(2)
    assert out.metal_left_mm == out.cut_left_mm
    assert (out.left_mm - out.cut_left_mm) / INCH == pytest.approx(1)


def test_finials_stand_beyond_the_rod_and_do_not_lengthen_its_tube() -> None:
    out = support(rod(ends="ball-finial"))
    assert out.cut_length_mm == out.length_mm
    assert out.metal_right_mm - out.right_mm == pytest.approx(TRADE.ends["ball-finial"].length_mm)


def test_a_typed_diameter_wins_over_the_table() -> None:
    assert support(rod()).diameter_mm == pytest.approx(0.922 * INCH)
    assert support(rod(diameter=mm(22))).diameter_mm == 22


@pytest.mark.parametrize(("stock", "pieces"), [(119.9, 1), (56, 1), (55.99, 2), (28, 2), (27.9, 3)])
def test_pieces_by_stock(stock: float, pieces: int) -> None:
    assert support(rod(stock=inch(stock))).pieces == pieces


def test_joints_stand_over_brackets_where_they_can() -> None:
    assert joints_of(0.0, 180.0, 120.0, (2.0, 90.0, 178.0)) == ((90.0,), ())
    # 50 would leave 130 for the second piece.
    assert joints_of(0.0, 180.0, 120.0, (2.0, 50.0, 178.0)) == ((90.0,), (90.0,))
    # Of two that do, the one that makes more even pieces.
    assert joints_of(0.0, 180.0, 120.0, (2.0, 70.0, 95.0, 178.0)) == ((95.0,), ())
    # The only bracket in reach of the first joint leads to one in reach of the second.
    assert joints_of(0.0, 300.0, 120.0, (2.0, 100.0, 195.0, 298.0)) == ((100.0, 195.0), ())
    joints, free = joints_of(0.0, 300.0, 120.0, (2.0, 100.0, 298.0))
    assert joints[0] == 100.0
    assert free == joints[1:]
    assert joints_of(0.0, 120.0, 120.0, (2.0, 60.0)) == ((), ())


@pytest.mark.parametrize("inner", [(), (90.0,), (70.0, 95.0), (100.0, 195.0)])
@pytest.mark.parametrize("length", [180.0, 300.0])
def test_joints_move_with_the_rod(length: float, inner: tuple[float, ...]) -> None:
    here = joints_of(0.0, length, 120.0, inner)
    there = joints_of(1000.0, 1000.0 + length, 120.0, tuple(x + 1000.0 for x in inner))
    for a, b in zip(here, there, strict=True):
        assert [x + 1000.0 for x in a] == pytest.approx(list(b))


@pytest.mark.parametrize("inner", [(), (100.0,), (2.0, 60.0, 198.0), (40.0, 130.0, 245.0), (118.0, 150.0, 270.0)])
@pytest.mark.parametrize("length", [180.0, 239.9, 300.0, 355.0])
def test_a_mirrored_rod_is_joined_in_mirrored_places(length: float, inner: tuple[float, ...]) -> None:
    joints, free = joints_of(0.0, length, 120.0, tuple(x for x in inner if x < length))
    there = joints_of(0.0, length, 120.0, tuple(length - x for x in reversed(inner) if x < length))
    assert sorted(length - x for x in there[0]) == pytest.approx(joints)
    assert len(there[1]) == len(free)


def test_joints_in_the_open_stand_evenly_between_those_that_a_bracket_carries() -> None:
    assert joints_of(0.0, 300.0, 120.0, (100.0,)) == ((100.0, 200.0), (200.0,))
    assert joints_of(0.0, 300.0, 120.0, (200.0,)) == ((100.0, 200.0), (100.0,))


@pytest.mark.parametrize("length", [100.0, 121.0, 239.9, 240.0, 240.1, 355.0, 600.0])
def test_no_piece_is_longer_than_its_stock(length: float) -> None:
    for inner in ((), (60.0,), (118.0, 230.0), (50.0, 119.0, 121.0, 239.0)):
        joints, free = joints_of(0.0, length, 120.0, inner)
        edges = (0.0, *joints, length)
        assert all(b - a <= 120.0 + 1e-5 for a, b in itertools.pairwise(edges))
        assert list(joints) == sorted(joints)
        assert set(free) <= set(joints)
        assert set(joints) - set(free) <= set(inner)


def bracket(hold: str, at: float, bracket_id: str = "b", **more) -> Bracket:
    return Bracket(id=bracket_id, place=held(hold, at), **more)


@pytest.mark.parametrize(
    ("hold", "at", "x"),
    [
        ("from-left-end", 2, 32), ("from-right-end", 2, 84), ("from-centre", 5, 63), ("from-centre", -5, 53),
        ("from-wall-left", 33, 33),
    ],
)  # fmt: skip
def test_brackets_by_what_is_held(hold: str, at: float, x: float) -> None:
    out = wall_of(rod(), brackets=(bracket(hold, at),)).treatments[0].layers[0].brackets[0]
    assert out.x_mm / INCH == pytest.approx(x)


def brackets(*made: Bracket) -> tuple[BracketOut, ...]:
    return wall_of(rod(), brackets=made).treatments[0].layers[0].brackets


def test_a_height_as_built_wins() -> None:
    plan, built = brackets(bracket("from-left-end", 2, "p"), bracket("from-right-end", 2, "q", height=inch(91.25)))
    assert (plan.height_mm / INCH, plan.built) == (pytest.approx(91.5), False)
    assert (built.height_mm / INCH, built.built) == (pytest.approx(91.25), True)
    assert built.plate[3] - plan.plate[3] == pytest.approx(-0.25 * INCH)


def test_brackets_stand_in_order_and_carry_their_plate() -> None:
    right, left = bracket("from-right-end", 2, "r"), bracket("from-left-end", 2, "l")
    out = brackets(right, left)
    assert [b.ref[-1] for b in out] == ["l", "r"]
    kit = TRADE.brackets["shop-strap"]
    assert out[0].plate == pytest.approx(
        (
            out[0].x_mm - kit.plate_width_mm / 2,
            out[0].height_mm - kit.plate_below_mm,
            out[0].x_mm + kit.plate_width_mm / 2,
            out[0].height_mm + kit.plate_above_mm,
        )
    )


def test_what_is_said_of_rings_wins_over_the_kit() -> None:
    out = brackets(
        bracket("from-left-end", 2, "1"),
        bracket("from-centre", 0, "2", rings_pass=True),
        bracket("from-right-end", 2, "3", kit="open-arm"),
    )
    assert [b.rings_pass for b in out] == [False, True, True]
