"""Cutting proven: every way of cutting as a flow along the bar.

The model is the arc-flow one of Valerio de Carvalho, "Exact solution of bin-packing problems using column generation and
branch-and-bound", Annals of Operations Research 86 (1999) 629-659: a unit of flow from the bar's zero end to its far end is
one bar; an arc from one place to another as far on as a piece is wide is that piece. Pieces are laid longest first, so
that only places are looked at which such an order can reach.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from itertools import pairwise

from msgspec import Struct

from elevation.planning.cutting.milp import NO_END, Programme, minimise
from elevation.planning.cutting.model import Packed, Sizes
from elevation.planning.cutting.patterns import rounded_up

_HAIR = 1e-6


class Proof(Struct, frozen=True):
    """The best bars found (None if none) and a bound for every way of cutting."""

    packed: tuple[Packed, ...] | None
    bound: int


class _Graph(Struct, frozen=True):
    """Arcs (from, to, size; -1 for nothing cut) between places, and per kind of bar the arc that ends it."""

    places: tuple[int, ...]
    arcs: tuple[tuple[int, int, int], ...]


def prove(sizes: Sizes, bound: int, until: float, is_cancelled: Callable[[], bool]) -> Proof:
    """The cheapest way of cutting, or the best found by ``until``; ``bound`` is what is known already."""
    seconds = until - time.monotonic()
    if seconds <= 0 or is_cancelled():
        return Proof(None, bound)
    graph = _graph(sizes)
    solved = minimise(_flow(sizes, graph), is_whole=True, seconds=seconds, enough=bound + _HAIR, is_cancelled=is_cancelled)
    if solved is None:  # pragma: no cover - the flow always has a way of its own; only time or the person ends it earlier
        return Proof(None, bound)
    return Proof(_bars(sizes, graph, solved.columns), max(bound, rounded_up(solved.bound, sizes)))


def _graph(sizes: Sizes) -> _Graph:
    room = max(sizes.rooms)
    reached = {0}
    arcs: set[tuple[int, int, int]] = set()
    for size, (width, demand) in enumerate(zip(sizes.widths, sizes.demands, strict=True)):
        before = sorted(reached)
        for place in before:
            for _ in range(demand):
                if place + width > room:
                    break
                arcs.add((place, place + width, size))
                place += width
                reached.add(place)
    places = tuple(sorted(reached | set(sizes.rooms)))
    idle = {(a, b, -1) for a, b in pairwise(places)}
    return _Graph(places, tuple(sorted(arcs | idle)))


def _flow(sizes: Sizes, graph: _Graph) -> Programme:
    """Columns: one an arc, then one a kind of bar (how many of it). Rows: one a place, a size, a kind with a count."""
    row_of = {place: row for row, place in enumerate(graph.places)}
    first_size, first_bar = len(graph.places), len(graph.arcs)
    entries: list[tuple[int, int, float]] = []
    for column, (start, end, size) in enumerate(graph.arcs):
        entries += [(row_of[start], column, -1.0), (row_of[end], column, 1.0)]
        if size >= 0:
            entries.append((first_size + size, column, 1.0))
    low = [0.0] * first_size + [float(demand) for demand in sizes.demands]
    high = [0.0] * first_size + [NO_END] * len(sizes.demands)
    costs = [0.0] * first_bar
    for kind, (room, count) in enumerate(zip(sizes.rooms, sizes.counts, strict=True)):
        column = first_bar + kind
        # A bar brings its flow in at the zero end and takes it out at its far end.
        entries += [(row_of[0], column, 1.0), (row_of[room], column, -1.0)]
        costs.append(float(sizes.costs[kind]) if count is None else 0.0)
        if count is not None:
            entries.append((len(low), column, 1.0))
            low.append(0.0)
            high.append(float(count))
    return Programme(costs, low, high, entries)


def _bars(sizes: Sizes, graph: _Graph, columns: tuple[float, ...]) -> tuple[Packed, ...]:
    """The flow taken apart into bars, each walked back from its far end.

    What arrives at a place is as much as leaves it or ends there, so the way back never comes to a dead end.
    """
    left = [round(times) for times in columns]
    arriving: dict[int, list[int]] = {}
    for arc, (_, end, _) in enumerate(graph.arcs):
        arriving.setdefault(end, []).append(arc)
    wanted = list(sizes.demands)
    bars: list[Packed] = []
    for kind, room in enumerate(sizes.rooms):
        for _ in range(left[len(graph.arcs) + kind]):
            takes = [0] * len(wanted)
            place = room
            while place > 0:
                arc = next(arc for arc in arriving[place] if left[arc] > 0)
                left[arc] -= 1
                place, _, size = graph.arcs[arc]
                # A size cut once more than wanted is not cut.
                if size >= 0 and wanted[size] > 0:
                    wanted[size] -= 1
                    takes[size] += 1
            if any(takes):  # pragma: no branch - a bar that flows is cut
                bars.append(Packed(kind, tuple(takes)))
    return tuple(bars)
