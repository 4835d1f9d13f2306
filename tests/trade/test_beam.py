"""The rod as a beam against closed forms, handbook tables and another library."""

from __future__ import annotations

import random
import warnings
from fractions import Fraction
from itertools import pairwise
from math import sqrt
from typing import Any

import pytest

from elevation.trade.beam import Beam, Bent, Load, sampled, under
from elevation.trade.bending import _eliminated, bend

EXACT = 1e-9


def equal_spans(count: int, loads: list[Load]) -> Bent:
    """Spans of length 1 and stiffness 1; loads as they are."""
    return one(Beam(0.0, float(count), tuple(float(i) for i in range(count + 1)), 1.0), loads)


def one(beam: Beam, loads: list[Load]) -> Bent:
    found = bend(beam, [loads])
    assert found is not None
    return found[0]


def spread(left: float, right: float) -> Load:
    """A load of 1 on each unit of length."""
    return Load(left, right, right - left)


def parts(text: str) -> list[float]:
    return [float(Fraction(part)) for part in text.split()]


# Continuous beams of equal spans under an even load: Civil Engineering Formulas, table 2.1; the American institute's manual
# of steel construction, table 3-23, has 0.0054 at 0.421 L, 0.0069 at 0.446 L and 0.0065 at 0.440 L for the end spans of
# two, three and four. Fractions are exact; places and depths are roots of the quartics.
EVEN = [
    (1, "1/2 1/2", "0 0", 0, 0.5, 0.013020833333333333),
    (2, "3/8 5/4 3/8", "0 -1/8 0", 0, 0.42153516540863, 0.0054161216058287),
    (3, "2/5 11/10 11/10 2/5", "0 -1/10 -1/10 0", 0, 0.44603660110148, 0.0068842132802095),
    (3, "2/5 11/10 11/10 2/5", "0 -1/10 -1/10 0", 1, 0.5, 0.00052083333333333),
    (4, "11/28 8/7 13/14 8/7 11/28", "0 -3/28 -1/14 -3/28 0", 0, 0.43971452558159, 0.0064603764328610),
    (4, "11/28 8/7 13/14 8/7 11/28", "0 -3/28 -1/14 -3/28 0", 1, 0.54114526242232, 0.0018908209746146),
    (4, "11/28 8/7 13/14 8/7 11/28", "0 -3/28 -1/14 -3/28 0", 2, 0.45885473757768, 0.0018908209746146),
    (5, "15/38 43/38 37/38 37/38 43/38 15/38", "0 -2/19 -3/38 -3/38 -2/19 0", 0, 0.44142630793228, 0.0065716093886369),
    (5, "15/38 43/38 37/38 37/38 43/38 15/38", "0 -2/19 -3/38 -3/38 -2/19 0", 2, 0.5, 0.0031524122807018),
]


@pytest.mark.parametrize(("count", "reactions", "moments", "span", "x", "sag"), EVEN)
def test_equal_spans_under_an_even_load(count: int, reactions: str, moments: str, span: int, x: float, sag: float) -> None:
    bent = equal_spans(count, [spread(0.0, count)])
    assert bent.reactions_n == pytest.approx(parts(reactions), abs=EXACT)
    assert bent.moments_nmm == pytest.approx(parts(moments), abs=EXACT)
    at, deep = bent.deepest(span, span + 1)
    assert at - span == pytest.approx(x, abs=1e-7)
    assert deep == pytest.approx(sag, rel=EXACT)


# One panel drawn and the other open, and point loads in the middle: the first three rows of the loaded spans stand in a
# piping designer's tables of three and four spans; all are exact by the theorem of three moments, worked by hand.
PATTERNS = [
    (2, [spread(0, 1)], "7/16 5/8 -1/16", 0, 0.4724382175, 0.00915055607504),
    (3, [spread(0, 1)], "13/30 13/20 -1/10 1/60", 0, 0.4699755648, 0.00889598377783),
    (3, [spread(0, 2)], "23/60 6/5 9/20 -1/30", 0, 0.4304728638, 0.00590045017414),
    (3, [spread(0, 1), spread(2, 3)], "9/20 11/20 11/20 9/20", 0, 0.4792593402, 0.00991746765230),
    (3, [spread(1, 2)], "-1/20 11/20 11/20 -1/20", 1, 0.5, 0.00677083333333),
    (4, [spread(0, 1), spread(2, 3)], "25/56 4/7 13/28 4/7 -3/56", 0, 0.4773925099, 0.00969789132044),
    (1, [Load(0.5, 0.5, 1.0)], "1/2 1/2", 0, 0.5, 1 / 48),
    (2, [Load(0.5, 0.5, 1.0)], "13/32 11/16 -3/32", 0, 0.4803844614, 0.0150120144192),
    (2, [Load(0.5, 0.5, 1.0), Load(1.5, 1.5, 1.0)], "5/16 11/8 5/16", 0, 1 / sqrt(5), 1 / (48 * sqrt(5))),
    (3, [Load(i + 0.5, i + 0.5, 1.0) for i in range(3)], "7/20 23/20 23/20 7/20", 0, 0.4629100499, 0.0115727512472),
    (1, [spread(0, 0.25)], "7/32 1/32", 0, 0.431742429292, 0.00191145667230),
    (1, [spread(0, 0.15), spread(0.85, 1)], "3/20 3/20", 0, 0.5, 1773 / 1280000),
]


@pytest.mark.parametrize(("count", "loads", "reactions", "span", "x", "sag"), PATTERNS)
def test_panels_that_are_not_all_drawn(
    count: int, loads: list[Load], reactions: str, span: int, x: float, sag: float
) -> None:
    bent = equal_spans(count, loads)
    assert bent.reactions_n == pytest.approx(parts(reactions), abs=EXACT)
    at, deep = bent.deepest(span, span + 1)
    assert at - span == pytest.approx(x, abs=1e-7)
    assert deep == pytest.approx(sag, rel=2e-11 / sag + EXACT)


# Even load over the whole length with both ends beyond the brackets by a (L = w = EI = 1); exact:
# mid 5/384 - a2/16, tip (3 a3 + 6 a2 - 1) a / 24, slope at the bracket (1 - 6 a2) / 24.
@pytest.mark.parametrize(("a", "mid", "tip"), [
    (0.05, 247 / 19200, -7877 / 3840000),
    (0.10, 119 / 9600, -937 / 240000),
    (0.25, 7 / 768, -37 / 6144),
])  # fmt: skip
def test_ends_beyond_the_brackets(a: float, mid: float, tip: float) -> None:
    bent = one(Beam(-a, 1 + a, (0.0, 1.0), 1.0), [spread(-a, 1 + a)])
    assert bent.reactions_n == pytest.approx([(1 + 2 * a) / 2] * 2, rel=EXACT)
    assert bent.sag_at(0.5) == pytest.approx(mid, rel=EXACT)
    assert bent.sag_at(-a) == pytest.approx(tip, rel=EXACT)
    assert bent.sag_at(1 + a) == pytest.approx(tip, rel=EXACT)
    assert bent.slope_at(0.0) == pytest.approx((1 - 6 * a * a) / 24, rel=EXACT)
    assert bent.moment_at(0.5) == pytest.approx(1 / 8 - a * a / 2, rel=EXACT)


def test_short_ends_lift_and_long_ones_drop() -> None:
    # The tip stays level with the brackets where 3 a3 + 6 a2 = 1: a = 0.374661059835271.
    for a, drops in ((0.37466105983, False), (0.37466105984, True)):
        bent = one(Beam(-a, 1 + a, (0.0, 1.0), 1.0), [spread(-a, 1 + a)])
        assert (bent.sag_at(-a) > 0) is drops


def test_unequal_spans() -> None:
    # Spans of 60 and 40 with ends of 6 (w = EI = 1), by the theorem of three moments in exact fractions.
    bent = one(Beam(-6.0, 106.0, (0.0, 60.0, 100.0), 1.0), [spread(-6, 106)])
    assert bent.moments_nmm == pytest.approx([-18, -341, -18], rel=EXACT)
    assert bent.reactions_n == pytest.approx(parts("1837/60 1523/24 717/40"), rel=EXACT)
    assert bent.deepest(0, 60) == pytest.approx((27.0841167144, 89160.397714230), rel=EXACT)
    assert bent.deepest(60, 100) == pytest.approx((91.9765289541, 955.74585546702), rel=EXACT)
    assert bent.sag_at(-6.0) == pytest.approx(-31218, rel=EXACT)
    assert bent.sag_at(106.0) == pytest.approx(-758, rel=EXACT)


def test_a_joint_over_a_bracket_makes_two_simple_spans() -> None:
    bent = one(Beam(0.0, 2.0, (0.0, 1.0, 2.0), 1.0, (1.0,)), [spread(0, 2)])
    assert bent.reactions_n == pytest.approx([0.5, 1.0, 0.5], rel=EXACT)
    assert bent.deepest(0, 1)[1] == pytest.approx(5 / 384, rel=EXACT)
    assert bent.moments_nmm == pytest.approx([0, 0, 0], abs=EXACT)


def test_a_joint_between_brackets_hangs_by_what_reaches_over() -> None:
    # Gerber's beam: spans 1 and 1, hinge at 1.5. The piece right of it is a simple beam that rests with 1/4 on the end of
    # the other; the moment over the middle support is -(1/4) (1/2) - (1/2)2 / 2 = -1/4.
    bent = one(Beam(0.0, 2.0, (0.0, 1.0, 2.0), 1.0, (1.5,)), [spread(0, 2)])
    assert bent.moments_nmm[1] == pytest.approx(-0.25, rel=EXACT)
    turned = one(Beam(0.0, 2.0, (0.0, 1.0, 2.0), 1.0, (0.5,)), [spread(0, 2)])
    assert turned.reactions_n == pytest.approx([0.25, 1.5, 0.25], rel=EXACT)
    assert turned.sag_at(0.5) == pytest.approx(bent.sag_at(1.5), rel=EXACT)
    assert bent.reactions_n == pytest.approx([0.25, 1.5, 0.25], rel=EXACT)


def test_what_cannot_stand_has_no_answer() -> None:
    load = [[spread(0, 1)]]
    assert bend(Beam(0.0, 1.0, (), 1.0), load) is None
    assert bend(Beam(0.0, 1.0, (0.5,), 1.0), load) is None
    assert bend(Beam(0.0, 1.0, (0.5, 0.5), 1.0), load) is None
    assert bend(Beam(0.0, 1.0, (0.0, 1.0), 0.0), load) is None
    assert bend(Beam(0.0, 1.0, (0.0, 1.0), -1.0), load) is None
    assert bend(Beam(0.0, 1.0, (0.0, 1.0), float("nan")), load) is None
    # A hinge in the only span lets it fall.
    assert bend(Beam(0.0, 1.0, (0.0, 1.0), 1.0, (0.5,)), load) is None


def test_a_joint_beyond_the_outer_brackets_is_held_by_its_spigot() -> None:
    plain, joined = (one(Beam(-0.1, 1.1, (0.0, 1.0), 1.0, h), [spread(-0.1, 1.1)]) for h in ((), (-0.05, 0.0, 1.0)))
    assert plain.reactions_n == joined.reactions_n
    assert plain.sag_at(-0.1) == joined.sag_at(-0.1)


def test_loads_beside_the_rod_hang_at_its_end() -> None:
    bent = one(Beam(0.0, 1.0, (0.0, 1.0), 1.0), [Load(-5.0, -4.0, 1.0), Load(0.5, 9.0, 2.0)])
    same = one(Beam(0.0, 1.0, (0.0, 1.0), 1.0), [Load(0.0, 0.0, 1.0), Load(0.5, 1.0, 2.0)])
    assert bent.reactions_n == same.reactions_n
    assert sum(bent.reactions_n) == pytest.approx(3.0, rel=EXACT)


def test_a_conduit_with_its_cloth() -> None:
    # 3/4 in conduit (ANSI C80.3: 0.922 in outside, 0.049 in wall, so I = 0.012843 in4), E 29e6 psi, 0.46 lb/ft itself and
    # 2 lb/ft of cloth: 5 w L4 / 384 E I, to the digits worked from the closed form.
    spans = (48, 0.0380, 59.0), (60, 0.0929, 92.2), (72, 0.1926, 132.8), (84, 0.3568, 180.8), (96, 0.6087, 236.2)
    w = 2.46 / 12
    for span, sag, moment in spans:
        bent = one(Beam(0.0, float(span), (0.0, float(span)), 29e6 * 0.012843), [Load(0.0, float(span), w * span)])
        assert bent.deepest(0, span)[1] == pytest.approx(sag, abs=6e-5)
        assert bent.greatest_moment() == pytest.approx(moment, abs=0.06)
    middle = one(Beam(0.0, 96.0, (0.0, 48.0, 96.0), 29e6 * 0.012843), [Load(0.0, 96.0, w * 96)])
    assert middle.deepest(0, 48)[1] == pytest.approx(0.01582, abs=6e-6)
    assert middle.reactions_n == pytest.approx([3.69, 12.30, 3.69], abs=5e-3)


def random_case(seed: int) -> tuple[Beam, list[Load], float]:
    dice = random.Random(seed)
    spans = [dice.randint(8, 48) * 50.0 for _ in range(dice.randint(1, 5))]
    supports = [0.0]
    for span in spans:
        supports.append(supports[-1] + span)
    ends = [dice.choice((0.0, dice.uniform(30, 300))) for _ in range(2)]
    left, right = -ends[0], supports[-1] + ends[1]
    loads = [Load(left, right, dice.uniform(1, 60))]
    for _ in range(dice.randint(1, 5)):
        # No two places closer than 1/100 of the rod: the other library loses its digits over tiny elements.
        a, b = sorted(left + (right - left) * dice.randint(1, 99) / 100 for _ in range(2))
        loads.append(Load(a, b if dice.random() < 0.7 else a, dice.uniform(1, 80)))
    return Beam(left, right, tuple(supports), dice.uniform(2e8, 8e9)), loads, right - left


def by_finite_elements(beam: Beam, loads: list[Load]) -> tuple[list[float], list[float], list[float]]:
    """Reactions, places and sags of the nodes as anaStruct (frames by finite elements) has them, good to some 1e-7."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from anastruct import SystemElements
    places = sorted({beam.left_mm, beam.right_mm, *beam.supports_mm, *(x for a in loads for x in (a.left_mm, a.right_mm))})
    system: Any = SystemElements(EA=1e6, EI=beam.stiffness_n_mm2)
    for a, b in pairwise(places):
        system.add_element(location=[[a, 0.0], [b, 0.0]])
    node = {x: index for index, x in enumerate(places, 1)}
    for number, x in enumerate(beam.supports_mm):
        if number:
            system.add_support_roll(node_id=node[x], direction="x")
        else:
            system.add_support_hinged(node_id=node[x])
    each = [0.0] * (len(places) - 1)
    for load in loads:
        if load.left_mm == load.right_mm:
            system.point_load(node_id=node[load.left_mm], Fy=-load.force_n)
            continue
        for index in range(node[load.left_mm] - 1, node[load.right_mm] - 1):
            each[index] += load.force_n / (load.right_mm - load.left_mm)
    for index, w in enumerate(each, 1):
        if w:
            system.q_load(element_id=index, q=-w)
    system.solve()
    # Its forces are those of the beam on the support, and its y points up.
    reactions = [-system.reaction_forces[node[x]].Fy for x in beam.supports_mm]
    sags = [-system.get_node_displacements(node[x])["uy"] for x in places]
    return reactions, places, sags


@pytest.mark.parametrize("seed", range(25))
def test_random_rods_agree_with_finite_elements(seed: int) -> None:
    beam, loads, _ = random_case(seed)
    bent = one(beam, loads)
    reactions, places, sags = by_finite_elements(beam, loads)
    total = sum(load.force_n for load in loads)
    deepest = max(abs(bent.sag_at(x)) for x in places)
    assert reactions == pytest.approx(bent.reactions_n, abs=2e-6 * total)
    assert sags == pytest.approx([bent.sag_at(x) for x in places], abs=2e-6 * deepest)


@pytest.mark.parametrize("seed", range(40))
def test_forces_and_moments_balance(seed: int) -> None:
    beam, loads, long = random_case(seed)
    bent = one(beam, loads)
    total = sum(load.force_n for load in loads)
    assert sum(bent.reactions_n) == pytest.approx(total, rel=EXACT)
    turning = sum(load.force_n * (load.left_mm + load.right_mm) / 2 for load in loads)
    held = sum(r * x for r, x in zip(bent.reactions_n, beam.supports_mm, strict=True))
    assert held == pytest.approx(turning, abs=EXACT * total * long)
    assert [bent.sag_at(x) for x in beam.supports_mm] == pytest.approx([0.0] * len(beam.supports_mm), abs=1e-9 * long)


@pytest.mark.parametrize("seed", range(20))
def test_mirrored_rods_bend_alike(seed: int) -> None:
    beam, loads, _ = random_case(seed)
    other = Beam(-beam.right_mm, -beam.left_mm, tuple(-x for x in reversed(beam.supports_mm)), beam.stiffness_n_mm2)
    bent, turned = one(beam, loads), one(other, [Load(-load.right_mm, -load.left_mm, load.force_n) for load in loads])
    assert turned.reactions_n[::-1] == pytest.approx(bent.reactions_n, rel=1e-7, abs=1e-7)
    for x in (beam.left_mm, beam.right_mm, (beam.left_mm + beam.right_mm) / 3):
        assert turned.sag_at(-x) == pytest.approx(bent.sag_at(x), rel=1e-7, abs=1e-9)


def test_loads_add_up() -> None:
    beam = Beam(0.0, 3000.0, (100.0, 1500.0, 2900.0), 5e9)
    a, b = [Load(0.0, 3000.0, 20.0)], [Load(200.0, 900.0, 55.0)]
    found = bend(beam, [a, b, a + b])
    assert found is not None
    added = under([(found[0], 1.0), (found[1], 1.0)])
    assert added.reactions_n == pytest.approx(found[2].reactions_n, rel=EXACT)
    assert added.deepest(100.0, 1500.0) == pytest.approx(found[2].deepest(100.0, 1500.0), rel=EXACT)
    line = added.line(2.0)
    assert line.at(800.0) == pytest.approx(2 * added.sag_at(800.0), rel=EXACT)
    assert max(map(max, sampled([added])[0])) <= added.deepest(100.0, 1500.0)[1] + 1e-12


def test_twice_the_load_sags_twice_and_twice_the_stiffness_half() -> None:
    beam, stiff = (Beam(0.0, 2400.0, (0.0, 900.0, 2400.0), ei) for ei in (4e9, 8e9))
    once, twice = one(beam, [Load(0.0, 2000.0, 10.0)]), one(beam, [Load(0.0, 2000.0, 20.0)])
    half = one(stiff, [Load(0.0, 2000.0, 10.0)])
    assert twice.sag_at(1500.0) == pytest.approx(2 * once.sag_at(1500.0), rel=EXACT)
    assert half.sag_at(1500.0) == pytest.approx(once.sag_at(1500.0) / 2, rel=EXACT)
    assert half.reactions_n == pytest.approx(once.reactions_n, rel=EXACT)


@pytest.mark.parametrize("size", [1, 2, 4, 8, 14])
def test_linear_equations_agree_with_a_library(size: int) -> None:
    np = pytest.importorskip("numpy")
    chance = random.Random(size)
    for _ in range(30):
        # Three in ten coefficients are nothing, so that rows must change places.
        matrix = [[chance.uniform(-2, 2) if chance.random() < 0.7 else 0.0 for _ in range(size)] for _ in range(size)]
        known = [[chance.uniform(-5, 5) for _ in range(3)] for _ in range(size)]
        if abs(np.linalg.det(matrix)) < 1e-3:
            continue
        wanted = np.linalg.solve(matrix, known)
        found = _eliminated([list(row) for row in matrix], [list(row) for row in known])
        assert found is not None
        assert np.allclose(found, wanted, rtol=1e-7, atol=1e-9)


def test_equations_that_say_the_same_twice_have_no_answer() -> None:
    assert _eliminated([[1.0, 2.0], [2.0, 4.0]], [[1.0], [2.0]]) is None


def test_between_a_support_and_itself_nothing_hangs() -> None:
    found = equal_spans(2, [spread(0, 2)])
    assert found.deepest(1.0, 1.0) == (1.0, 0.0)
    assert found.deepest(0.0, 1.0)[1] > 0


def test_a_load_on_the_end_beyond_the_last_of_three_brackets() -> None:
    # Three moments (Clapeyron): M2 = -1, M0 = 0, so 4 M1 + M2 = 0 and M1 = 1/4; reactions by balance. Its mirror likewise.
    for supports, x in (((0.0, 1.0, 2.0), 3.0), ((1.0, 2.0, 3.0), 0.0)):
        bent = one(Beam(0.0, 3.0, supports, 1.0), [Load(x, x, 1.0)])
        reactions, moments = list(bent.reactions_n), list(bent.moments_nmm)
        if x == 0.0:
            reactions, moments = reactions[::-1], moments[::-1]
        assert reactions == pytest.approx([0.25, -1.5, 2.25], rel=EXACT)
        assert moments == pytest.approx([0.0, 0.25, -1.0], abs=EXACT)


@pytest.mark.parametrize("long", [0.5, 3.0, 700.0])
def test_a_jointed_beam_is_the_same_at_any_scale(long: float) -> None:
    # Gerber's beam again: an even load of 1 a unit makes reactions grow with the length, moments with its square, sag with
    # its fourth power.
    small, large = (
        one(Beam(0.0, 2.5 * by, (0.0, by, 2.5 * by), 1.0, (1.5 * by,)), [spread(0, 2.5 * by)]) for by in (1.0, long)
    )
    assert large.reactions_n == pytest.approx([long * one for one in small.reactions_n], rel=1e-7)
    assert large.moments_nmm == pytest.approx([long**2 * one for one in small.moments_nmm], rel=1e-7, abs=1e-9)
    assert large.sag_at(1.5 * long) == pytest.approx(long**4 * small.sag_at(1.5), rel=1e-7)


def test_one_load_so_many_times_as_heavy() -> None:
    bent = equal_spans(2, [spread(0, 2)])
    heavy = under([(bent, 3.0)])
    assert heavy.reactions_n == pytest.approx([3 * one for one in bent.reactions_n], rel=EXACT)
    assert heavy.moments_nmm == pytest.approx([3 * one for one in bent.moments_nmm], rel=EXACT)
    assert [heavy.sag_at(x) for x in (0.1, 0.7, 1.4)] == pytest.approx(
        [3 * bent.sag_at(x) for x in (0.1, 0.7, 1.4)], rel=EXACT
    )
