"""Cutting at once: every piece, longest first, from the bar that it fills best. Good, seldom the best."""

from __future__ import annotations

from collections import Counter

from elevation.planning.cutting.model import Packed, Sizes


def best_fit(sizes: Sizes) -> tuple[Packed, ...] | None:
    """Best fit decreasing: bars that are there are all open from the start; then the cheapest new one for its length.

    Returns None where the bars do not suffice, which cannot be where one kind is to be had without limit and holds the
    longest piece.
    """
    open_bars = _shelf(sizes)
    shop = [kind for kind, count in enumerate(sizes.counts) if count is None]
    for size, (width, demand) in enumerate(zip(sizes.widths, sizes.demands, strict=True)):
        for _ in range(demand):
            fitting = [bar for bar in open_bars if bar[1] >= width]
            if not fitting:
                fresh = [kind for kind in shop if sizes.rooms[kind] >= width]
                if not fresh:
                    return None
                kind = min(fresh, key=lambda kind: (sizes.costs[kind] / sizes.rooms[kind], sizes.costs[kind], kind))
                fitting = [(kind, sizes.rooms[kind], Counter())]
                open_bars.append(fitting[0])
            bar = min(fitting, key=lambda bar: bar[1])
            bar[2][size] += 1
            open_bars[_index(open_bars, bar)] = (bar[0], bar[1] - width, bar[2])
    used = [(kind, takes) for kind, _, takes in open_bars if takes]
    count = len(sizes.widths)
    return tuple(Packed(kind, tuple(takes[size] for size in range(count))) for kind, takes in used)


_Open = tuple[int, int, "Counter[int]"]


def _shelf(sizes: Sizes) -> list[_Open]:
    return [
        (kind, sizes.rooms[kind], Counter())
        for kind, count in enumerate(sizes.counts)
        if count is not None
        for _ in range(min(count, sum(sizes.demands)))
    ]


def _index(bars: list[_Open], wanted: _Open) -> int:
    return next(index for index, bar in enumerate(bars) if bar is wanted)


def cost_of(packed: tuple[Packed, ...], sizes: Sizes) -> int:
    """What must be bought for it."""
    return sum(sizes.costs[bar.kind] for bar in packed if sizes.counts[bar.kind] is None)
