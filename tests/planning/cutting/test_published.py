"""Published cutting instances whose optimum is known, and small ones worked by hand."""

from __future__ import annotations

import pytest

from elevation.planning.cutting.greedy import best_fit, cost_of
from elevation.planning.cutting.model import Piece, Sizes, Stock
from elevation.planning.cutting.whole import cut


def pieces(sizes, demands=None):
    demands = demands or [1] * len(sizes)
    return [Piece(f"{size}/{n}", float(size)) for size, many in zip(sizes, demands, strict=True) for n in range(many)]


def whole(sizes, demands, stock):
    return cut(pieces(sizes, demands), [Stock(str(length), float(length), None, cost) for length, cost in stock], 0.0, 1.0)


# Chvatal, Linear Programming (1983), ch. 13 (data: miro.gams.com/gallery/app_direct/cutstock): 453 rolls.
# Trim and surplus waste (brainmass.com/math/linear-programming/linear-programming-trim-and-surplus-waste-13144): 77.
# Four sizes from 20 (public problem file): 601.
# Fieldhouse (from memory): the relaxation is 259/132, its rounding up 2, yet 3 bars are needed.
# Gilmore and Gomory, Operations Research 9 (1961) 849-859, three lengths at their own cost (from memory): 170.
PUBLISHED = [
    ("rolls", [(100, 1)], [45, 36, 31, 14], [97, 610, 395, 211], 453),
    ("reels", [(100, 1)], [60, 48, 36, 24], [30, 50, 25, 90], 77),
    ("four sizes", [(20, 1)], [9, 8, 7, 6], [511, 301, 263, 383], 601),
    ("no rounding up", [(132, 1)], [44, 33, 12], [2, 3, 6], 3),
    ("three lengths", [(9, 10), (6, 7), (5, 6)], [4, 3, 2], [20, 10, 20], 170),
]

# Falkenauer's u120_00 (OR-Library, binpack1.txt): 48, where first and best fit decreasing need 49.
U120 = """42 69 67 57 93 90 38 36 45 42 33 79 27 57 44 84 86 92 46 38 85 33 82 73 49 70 59 23 57 72 74 69 33 42 28 46 30 64
29 74 41 49 55 98 80 32 25 38 82 30 35 39 57 84 62 50 55 27 30 36 20 78 47 26 45 41 58 98 91 96 73 84 37 93 91 43 73 85 81
79 71 80 76 83 41 78 70 23 42 87 43 84 60 55 49 78 73 62 36 44 94 69 32 96 70 84 58 78 25 80 58 66 83 24 98 60
42 43 43 39"""

# Scholl, Klein and Juergens (1997), bin data set 1 and 2; bounds as in the public library of bin packing problems.
SCHOLL = [
    (
        100,
        25,
        """99 99 96 96 92 92 91 88 87 86 85 76 74 72 69 67 67 62 61 56 52 51 49 46 44 42 40 40 33 33 30 30 29 28 28 27 25
        24 23 22 21 20 17 14 13 11 10 7 7 3""",
    ),
    (
        120,
        24,
        """100 97 97 95 93 87 87 86 82 82 78 76 76 75 74 71 68 66 65 63 59 59 58 58 57 52 51 46 46 46 43 42 42 41 41 41
        38 37 36 36 32 32 31 30 27 25 22 22 22 21""",
    ),
    (
        1000,
        6,
        """207 206 205 193 187 173 170 168 167 166 165 162 160 156 150 145 145 143 139 138 135 132 128 125 124 117 114
        114 112 111 108 103 100 93 88 83 79 69 65 65 58 57 46 45 42 42 36 32 25 25""",
    ),
]

# Martinelli's public instances PM_u010_01, PM_u010_02, PM_u020_01 (rafaelmartinelli/BPPLib.jl, data).
MARTINELLI = [
    (5, "24 44 76 78 52 96 58 67 74 59"),
    (4, "41 22 77 30 57 57 46 27 76 88"),
    (7, "60 67 23 26 45 76 43 85 82 41 56 25 83 50 72 23 39 21 39"),
]


@pytest.mark.parametrize(
    ("stock", "sizes", "demands", "optimum"), [row[1:] for row in PUBLISHED], ids=[r[0] for r in PUBLISHED]
)
def test_a_published_instance_is_cut_at_its_optimum_and_proven(stock, sizes, demands, optimum):
    plan = whole(sizes, demands, stock)
    assert (plan.cost, plan.bound, plan.is_proven) == (optimum, optimum, True)


def test_a_published_set_where_best_fit_needs_one_more():
    sizes = [int(size) for size in U120.split()]
    plan = whole(sizes, [1] * len(sizes), [(150, 1)])
    assert (plan.cost, plan.is_proven) == (48, True)
    kinds = sorted(set(sizes), reverse=True)
    task = Sizes(tuple(kinds), tuple(sizes.count(kind) for kind in kinds), (150,), (None,), (1,))
    assert cost_of(best_fit(task) or (), task) == 49


@pytest.mark.parametrize(("length", "optimum", "listed"), SCHOLL)
def test_published_bin_sets(length, optimum, listed):
    plan = whole([int(size) for size in listed.split()], None, [(length, 1)])
    assert (plan.cost, plan.is_proven) == (optimum, True)


@pytest.mark.parametrize(("optimum", "listed"), MARTINELLI)
def test_published_small_sets(optimum, listed):
    plan = whole([int(size) for size in listed.split()], None, [(150, 1)])
    assert (plan.cost, plan.is_proven) == (optimum, True)


@pytest.mark.parametrize(("kerf", "bars"), [(0.0, 1), (1 / 16, 2), (1 / 8, 2)])
def test_four_thirty_inch_pieces_from_a_ten_foot_bar(kerf, bars):
    """By hand: 4 x 30 = 120 in leaves nothing for three kerfs."""
    plan = cut(pieces([30] * 4), [Stock("bar", 120.0)], kerf, 1 / 32)
    assert len(plan.bars) == bars


@pytest.mark.parametrize(("length", "bars"), [(29.0, 1), (29.90625, 1), (29.9375, 2)])
def test_the_last_cut_may_coincide_with_the_end(length, bars):
    """By hand, kerf 1/8 in: 4 x 29 29/32 + 3/8 = 120 in exactly; a thirty-second more a piece does not fit."""
    plan = cut(pieces([length] * 4), [Stock("bar", 120.0)], 0.125, 1 / 32)
    assert len(plan.bars) == bars
