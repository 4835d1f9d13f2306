"""What every cut plan keeps, whatever is asked of it."""

from __future__ import annotations

import itertools
import math
import threading
import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation.planning.cutting.model import Piece, Stock
from elevation.planning.cutting.whole import cut


def made(lengths):
    return [Piece(f"p{number}", float(length)) for number, length in enumerate(lengths)]


def fewest_by_trying(lengths, room):
    """The fewest bars by trying every way of sharing out the pieces: independent of what is tested."""
    best = len(lengths)

    def place(at, bars):
        nonlocal best
        if len(bars) >= best:
            return
        if at == len(lengths):
            best = len(bars)
            return
        for bar in range(len(bars)):
            if bars[bar] + lengths[at] <= room:
                place(at + 1, [*bars[:bar], bars[bar] + lengths[at], *bars[bar + 1 :]])
        place(at + 1, [*bars, lengths[at]])

    place(0, [])
    return best


@given(st.lists(st.integers(3, 60), min_size=1, max_size=9), st.integers(60, 100))
def test_as_few_bars_as_trying_everything_finds(lengths, room):
    plan = cut(made(lengths), [Stock("bar", float(room))], 0.0, 1.0)
    assert plan.cost == fewest_by_trying(sorted(lengths, reverse=True), room)
    assert plan.is_proven


@given(
    st.lists(st.floats(20, 900), min_size=0, max_size=25),
    st.lists(st.tuples(st.floats(100, 1200), st.sampled_from([None, 0, 1, 2])), min_size=1, max_size=3),
    st.sampled_from([0.0, 1.5875, 3.0]),
)
def test_every_piece_is_in_one_bar_or_said_to_be_too_long(lengths, bars, kerf):
    stock = [Stock(f"s{number}", length, count) for number, (length, count) in enumerate(bars)]
    plan = cut(made(lengths), stock, kerf, 0.5, seconds=1.0)
    cut_ones = [piece for bar in plan.bars for piece in bar.pieces]
    assert sorted(p.key for p in (*cut_ones, *plan.too_long)) == sorted(p.key for p in made(lengths))
    for one in stock:
        used = sum(bar.stock.key == one.key for bar in plan.bars)
        assert one.count is None or used <= one.count
    for bar in plan.bars:
        assert sum(p.length_mm for p in bar.pieces) + kerf * (len(bar.pieces) - 1) <= bar.stock.length_mm + 1e-6
        starts = [0.0, *(mark + kerf for mark in bar.marks_mm[:-1])]
        assert [m - s for m, s in zip(bar.marks_mm, starts, strict=True)] == pytest.approx(
            [p.length_mm for p in bar.pieces]
        )
        left = bar.stock.length_mm - bar.marks_mm[-1] - kerf
        assert bar.offcut_mm == pytest.approx(max(0.0, left), abs=1e-9)
    assert plan.bound <= plan.cost


@given(st.lists(st.integers(10, 90), min_size=1, max_size=20), st.randoms())
def test_the_order_of_the_wishes_changes_nothing(lengths, shuffled):
    other = list(lengths)
    shuffled.shuffle(other)
    first, second = (cut(made(one), [Stock("bar", 100.0)], 0.0, 1.0) for one in (lengths, other))
    assert first.cost == second.cost
    assert [[p.length_mm for p in b.pieces] for b in first.bars] == [[p.length_mm for p in b.pieces] for b in second.bars]


@given(st.lists(st.integers(10, 90), min_size=1, max_size=15))
def test_inches_and_millimetres_agree(lengths):
    inches = cut(made(lengths), [Stock("bar", 100.0)], 0.125, 1 / 32)
    metric = cut(made([25.4 * one for one in lengths]), [Stock("bar", 2540.0)], 3.175, 25.4 / 32)
    assert inches.cost == metric.cost


def test_the_shelf_is_used_before_anything_is_bought():
    shelf, shop = Stock("offcut", 50.0, 1), Stock("bar", 100.0)
    plan = cut(made([40, 60, 35]), [shop, shelf], 0.0, 1.0)
    assert [bar.stock.key for bar in plan.bars] == ["offcut", "bar"]
    assert plan.cost == 1
    assert len(cut(made([40, 60, 35]), [shop], 0.0, 1.0).bars) == 2


def test_a_shelf_that_does_not_suffice_says_what_it_lacks():
    plan = cut(made([40, 30, 30]), [Stock("offcut", 60.0, 1)], 0.0, 1.0)
    assert [piece.length_mm for piece in plan.too_long] == [40.0]
    assert plan.cost == 0


@pytest.mark.parametrize(("length", "fits"), [(99.9, True), (100.0, True), (100.1, False)])
def test_a_piece_as_long_as_the_bar(length, fits):
    plan = cut(made([length]), [Stock("bar", 100.0)], 3.0, 0.1)
    assert bool(plan.bars) is fits
    assert bool(plan.too_long) is not fits


def test_the_cheaper_bar_is_taken_where_prices_differ():
    """By hand: 3 pieces of 40: one bar of 120 at 500, or two of 80 at 300 = 600; at 240 each the two are cheaper."""
    long, short = Stock("long", 120.0, None, 500), Stock("short", 80.0, None, 300)
    assert [bar.stock.key for bar in cut(made([40] * 3), [long, short], 0.0, 1.0).bars] == ["long"]
    cheaper = Stock("short", 80.0, None, 240)
    assert [bar.stock.key for bar in cut(made([40] * 3), [long, cheaper], 0.0, 1.0).bars] == ["short", "short"]


def test_what_is_left_over_is_one_long_piece():
    """By hand, from bars of 100: 50 + 50 and 20 + 20 leave 60 in one piece; 50 + 20 twice leaves 30 twice."""
    plan = cut(made([50, 20, 50, 20]), [Stock("bar", 100.0)], 0.0, 1.0)
    assert max(bar.offcut_mm for bar in plan.bars) == 60.0


def test_alike_bars_stand_beside_each_other():
    plan = cut(made([60, 30, 60, 30, 45, 45]), [Stock("bar", 100.0)], 0.0, 1.0)
    patterns = [tuple(piece.length_mm for piece in bar.pieces) for bar in plan.bars]
    assert len([pattern for pattern, _ in itertools.groupby(patterns)]) == len(set(patterns))


def triplets():
    """180 pieces, three a bar with nothing left over: hard, the optimum is 60 by construction."""
    lengths = []
    for number in range(60):
        first = 380 + (number * 37) % 110
        second = 250 + (number * 53) % max(1, (1000 - first) // 2 - 250)
        lengths += [first, second, 1000 - first - second]
    return made(lengths)


def test_without_time_best_fit_and_an_honest_bound():
    plan = cut(triplets(), [Stock("bar", 1000.0)], 0.0, 1.0, seconds=0)
    assert plan.bound == 60
    assert plan.cost > 60
    assert not plan.is_proven


def test_a_cancelled_search_ends_with_a_whole_plan():
    cancelled = threading.Event()
    cancelled.set()
    started = time.monotonic()
    plan = cut(triplets(), [Stock("bar", 1000.0)], 0.0, 1.0, seconds=600, is_cancelled=cancelled.is_set)
    assert sum(len(bar.pieces) for bar in plan.bars) == 180
    assert time.monotonic() - started < 60


def test_nothing_is_cut_from_nothing():
    assert cut([], [Stock("bar", 100.0)], 1.0, 1.0).bars == ()
    assert cut(made([10]), [], 1.0, 1.0).too_long == tuple(made([10]))
    assert math.isclose(cut(made([10]), [Stock("bar", 100.0)], 1.0, 1.0).bars[0].offcut_mm, 89.0)
