"""The cut list: pieces and stock in, bars out.

Best fit at once; if a bound shows that nothing is better, that is the answer. Else patterns, else the proof, each until
the time is over: the best so far is always at hand, and the plan says how far above the bound it may lie.
"""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Sequence

from elevation.planning.cutting.arcs import prove
from elevation.planning.cutting.greedy import best_fit, cost_of
from elevation.planning.cutting.model import Bar, CutPlan, Packed, Piece, Sizes, Stock
from elevation.planning.cutting.patterns import best_whole, generate, rounded_up
from elevation.planning.cutting.tidy import in_order, one_offcut
from elevation.units.tolerance import TOUCH_MM


def cut(
    pieces: Sequence[Piece],
    stock: Sequence[Stock],
    kerf_mm: float,
    grain_mm: float,
    *,
    seconds: float = 10.0,
    is_cancelled: Callable[[], bool] = lambda: False,
) -> CutPlan:
    """Cut ``pieces`` from ``stock``.

    Parameters
    ----------
    pieces : sequence of Piece
    stock : sequence of Stock
    kerf_mm : float
        What one cut of the saw takes. Pieces fit a bar if each with a kerf fits the bar with one kerf more: the last cut
        may coincide with the bar's end.
    grain_mm : float
        Pieces are reckoned up, and bars down, to whole grains: no plan asks for more than there is. A fine graduation of
        the tape costs little.
    seconds : float
        How long to look for better and for the proof; 0 for best fit alone.
    is_cancelled : callable
        Asked between steps; True ends with the best so far.

    Returns
    -------
    CutPlan
    """
    until = time.monotonic() + seconds
    fits = [
        piece for piece in pieces if any(piece.length_mm <= bar.length_mm + TOUCH_MM for bar in stock if bar.count != 0)
    ]
    too_long = tuple(piece for piece in pieces if piece not in fits)
    while True:
        sizes = _sizes(fits, stock, kerf_mm, grain_mm)
        packed = best_fit(sizes) if fits else ()
        if packed is not None:
            break
        # A shelf alone that does not suffice: what does not fit is said, longest first.
        longest = max(fits, key=lambda piece: piece.length_mm)
        fits.remove(longest)
        too_long = (*too_long, longest)
    bound = _least(sizes)
    if cost_of(packed, sizes) > bound and seconds > 0:
        packed, bound = _better(packed, sizes, bound, until, is_cancelled)
    ordered = in_order(one_offcut(packed, sizes), sizes)
    return CutPlan(_bars(ordered, fits, stock, kerf_mm, sizes, grain_mm), too_long, cost_of(ordered, sizes), bound)


def _better(
    packed: tuple[Packed, ...], sizes: Sizes, bound: int, until: float, is_cancelled: Callable[[], bool]
) -> tuple[tuple[Packed, ...], int]:
    met = generate(sizes, packed, until, is_cancelled)
    bound = max(bound, met.bound if met.bound is not None else bound)
    if cost_of(packed, sizes) > bound:
        found = best_whole(sizes, met.patterns, bound, until, is_cancelled)
        packed = packed if found is None else _cheaper(packed, found, sizes)
    if cost_of(packed, sizes) > bound:
        proof = prove(sizes, bound, until, is_cancelled)
        bound = proof.bound
        packed = packed if proof.packed is None else _cheaper(packed, proof.packed, sizes)
    return packed, bound


def _cheaper(one: tuple[Packed, ...], other: tuple[Packed, ...], sizes: Sizes) -> tuple[Packed, ...]:
    return other if cost_of(other, sizes) < cost_of(one, sizes) else one


def _sizes(pieces: Sequence[Piece], stock: Sequence[Stock], kerf_mm: float, grain_mm: float) -> Sizes:
    # A kerf more than the bar holds may be asked for by the last cut.
    widths = [_up((piece.length_mm + kerf_mm) / grain_mm) for piece in pieces]
    kinds = tuple(dict.fromkeys(sorted(widths, reverse=True)))
    return Sizes(
        widths=kinds,
        demands=tuple(widths.count(width) for width in kinds),
        rooms=tuple(_down((bar.length_mm + kerf_mm) / grain_mm) for bar in stock),
        counts=tuple(bar.count for bar in stock),
        costs=tuple(bar.cost for bar in stock),
    )


def _up(grains: float) -> int:
    return math.ceil(grains - TOUCH_MM)


def _down(grains: float) -> int:
    return math.floor(grains + TOUCH_MM)


def _least(sizes: Sizes) -> int:
    """What the material alone costs: all pieces end to end, the shelf used to its last grain."""
    there = sum(room * count for room, count in zip(sizes.rooms, sizes.counts, strict=True) if count is not None)
    missing = sum(width * demand for width, demand in zip(sizes.widths, sizes.demands, strict=True)) - there
    shop = [cost / room for room, cost, count in zip(sizes.rooms, sizes.costs, sizes.counts, strict=True) if count is None]
    return rounded_up(missing * min(shop), sizes) if missing > 0 and shop else 0


def _bars(
    packed: Sequence[Packed],
    pieces: Sequence[Piece],
    stock: Sequence[Stock],
    kerf_mm: float,
    sizes: Sizes,
    grain_mm: float,
) -> tuple[Bar, ...]:
    waiting: dict[int, list[Piece]] = {}
    for piece in pieces:
        waiting.setdefault(_up((piece.length_mm + kerf_mm) / grain_mm), []).append(piece)
    bars = []
    for one in packed:
        taken = tuple(
            waiting[width].pop(0) for width, many in zip(sizes.widths, one.takes, strict=True) for _ in range(many)
        )
        marks: list[float] = []
        at = 0.0
        for piece in taken:
            at += piece.length_mm
            marks.append(at)
            at += kerf_mm
        kind = stock[one.kind]
        bars.append(Bar(kind, taken, tuple(marks), max(0.0, kind.length_mm - at)))
    return tuple(bars)
