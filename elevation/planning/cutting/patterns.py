"""Cutting by patterns: the linear relaxation by column generation, and the best whole mix of the patterns it met.

The method is that of Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research
9 (1961) 849-859: a pattern says how many pieces of each size one bar gives; the price of a size in the current mix is its
dual value; the pattern worth most by these prices, found by a knapsack over the bar's length, enters the mix until none is
worth more than its bar. What the relaxation costs, rounded up, is a bound for every way of cutting.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from elevation.planning.cutting.milp import NO_END, Programme, minimise
from elevation.planning.cutting.model import Packed, Sizes

# Below this a pattern is not worth its bar: the solver's own tolerance on prices is a tenth of it.
_WORTH = 1e-6
_MOST_ROUNDS = 2000


class Generated(Struct, frozen=True):
    """The patterns met and the bound of the relaxation (None where time ran out before it was reached)."""

    patterns: tuple[Packed, ...]
    bound: int | None


def generate(sizes: Sizes, start: Sequence[Packed], until: float, is_cancelled: Callable[[], bool]) -> Generated:
    """All patterns that the relaxation wants, from those of a first way of cutting.

    Parameters
    ----------
    sizes : Sizes
    start : sequence of Packed
        A whole way of cutting: it makes the first mix possible.
    until : float
        ``time.monotonic()`` at which to stop.
    is_cancelled : callable
    """
    met = dict.fromkeys(start)
    for _ in range(_MOST_ROUNDS):  # pragma: no branch - new patterns end long before the last round
        mix = minimise(_mix(sizes, list(met)), is_whole=False)
        if mix is None:  # pragma: no cover - the first mix is possible: it is a whole way of cutting
            return Generated(tuple(met), None)
        fresh = [found for kind in range(len(sizes.rooms)) for found in _worth(sizes, kind, mix.prices) if found not in met]
        if not fresh:
            return Generated(tuple(met), rounded_up(mix.cost, sizes))
        met.update(dict.fromkeys(fresh))
        if time.monotonic() > until or is_cancelled():
            return Generated(tuple(met), None)
    return Generated(tuple(met), None)  # pragma: no cover - as above


def rounded_up(cost: float, sizes: Sizes) -> int:
    """The least whole cost not below ``cost``: bars are bought whole.

    What lies a hair above a whole number is that number, reckoned with rounding.
    """
    step = math.gcd(*(cost for cost, count in zip(sizes.costs, sizes.counts, strict=True) if count is None)) or 1
    return step * math.ceil(cost / step - _WORTH)


def _mix(sizes: Sizes, patterns: Sequence[Packed]) -> Programme:
    """How often each pattern: every size as often as it is wanted, no kind of bar more often than it is there."""
    rows = len(sizes.widths)
    takes = [(size, at, float(many)) for at, one in enumerate(patterns) for size, many in enumerate(one.takes) if many]
    return Programme(
        costs=[_cost(sizes, one.kind) for one in patterns],
        low=[*map(float, sizes.demands), *[-NO_END] * len(sizes.rooms)],
        high=[NO_END] * rows + [NO_END if count is None else float(count) for count in sizes.counts],
        entries=[*takes, *((rows + one.kind, at, 1.0) for at, one in enumerate(patterns))],
    )


def _cost(sizes: Sizes, kind: int) -> float:
    return float(sizes.costs[kind]) if sizes.counts[kind] is None else 0.0


def _worth(sizes: Sizes, kind: int, prices: Sequence[float]) -> list[Packed]:
    """The pattern worth most on that kind of bar, if it is worth more than the bar."""
    rows = len(sizes.widths)
    takes, worth = knapsack(sizes, sizes.rooms[kind], prices[:rows])
    return [Packed(kind, takes)] if worth > _cost(sizes, kind) - prices[rows + kind] + _WORTH else []


def knapsack(sizes: Sizes, room: int, prices: Sequence[float]) -> tuple[tuple[int, ...], float]:
    """The set of pieces worth most that fits ``room``, no size more often than it is wanted, and its worth.

    Bounded knapsack over all lengths up to ``room``: sizes are split into bundles of 1, 2, 4 ... pieces.
    """
    best = np.zeros(room + 1)
    bundles: list[tuple[int, int, NDArray[np.bool_]]] = []
    for size, (width, demand, price) in enumerate(zip(sizes.widths, sizes.demands, prices, strict=True)):
        if price <= 0 or width > room:
            continue
        left, bundle = min(demand, room // width), 1
        while left > 0:
            many = min(bundle, left)
            left -= many
            bundle *= 2
            reach = many * width
            with_it = best[: room + 1 - reach] + many * price
            takes = with_it > best[reach:] + 1e-12
            best[reach:][takes] = with_it[takes]
            bundles.append((size, many, takes))
    counts = [0] * len(sizes.widths)
    at = room
    for size, many, takes in reversed(bundles):
        reach = many * sizes.widths[size]
        if at >= reach and takes[at - reach]:
            counts[size] += many
            at -= reach
    return tuple(counts), float(best[room])


def best_whole(
    sizes: Sizes, patterns: Sequence[Packed], bound: int, until: float, is_cancelled: Callable[[], bool]
) -> tuple[Packed, ...] | None:
    """The cheapest whole mix of these patterns, or one at ``bound``; None where time does not allow any."""
    seconds = until - time.monotonic()
    if seconds <= 0 or is_cancelled():
        return None
    mix = minimise(_mix(sizes, patterns), is_whole=True, seconds=seconds, enough=bound + _WORTH, is_cancelled=is_cancelled)
    return None if mix is None else bars_of(sizes, patterns, mix.columns)


def bars_of(sizes: Sizes, patterns: Sequence[Packed], columns: Sequence[float]) -> tuple[Packed, ...]:
    """The bars of a mix; pieces cut beyond what is wanted are left in the bar, and bars left empty are not cut."""
    left = list(sizes.demands)
    bars: list[Packed] = []
    for pattern, times in zip(patterns, columns, strict=True):
        for _ in range(round(times)):
            takes = tuple(min(wanted, have) for wanted, have in zip(pattern.takes, left, strict=True))
            left = [have - taken for have, taken in zip(left, takes, strict=True)]
            if any(takes):
                bars.append(Packed(pattern.kind, takes))
    return tuple(bars)
