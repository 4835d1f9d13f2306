"""What covers glass where whole columns of cloth do not: tied panels with their true outline.

A cover lies between two lines over one stretch of wall. The share of the glass that covers leave clear is summed over
narrow columns between all the corners of those lines, each by its middle: exact where lines are straight, as the head of
a level or raked opening and the pieces of a swept edge are, and within a ten-thousandth under an arc.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import ceil

from msgspec import Struct

from elevation.setting_out.heads import Shape, height_over
from elevation.setting_out.model import PanelOut, Point, Span, TieOut

WIDEST_MM = 20.0
"""No column is wider."""

FAR_MM = 1e6
"""Higher and lower than anything."""


class Cover(Struct, frozen=True, gc=False):
    """What is covered from the line ``low`` up to the line ``high``; points with rising x, over the same stretch."""

    low: tuple[Point, ...]
    high: tuple[Point, ...]


def column(span: Span) -> Cover:
    """Cloth that covers all of the glass over a stretch of wall."""
    return box(span[0], -FAR_MM, span[1], FAR_MM)


def box(left: float, bottom: float, right: float, top: float) -> Cover:
    """A rectangle."""
    return Cover(((left, bottom), (right, bottom)), ((left, top), (right, top)))


def tied_covers(panel: PanelOut, tie: TieOut) -> tuple[Cover, Cover]:
    """A tied panel: from its heading down to the swept edge, and from its waist down to the hem."""
    is_left = panel.side == "left"
    fixed = panel.drawn[0] if is_left else panel.drawn[1]
    hook, y = tie.hook
    near = tie.waist[1] if is_left else tie.waist[0]
    foot = tie.foot[1] if is_left else tie.foot[0]
    lead = tie.edge[0][0]
    over_low = ((hook, y), (near, y), *reversed(tie.edge[:-1]))
    over_high = ((hook, y), (fixed, panel.top_mm), (lead, panel.top_mm))
    under_low = ((hook, tie.hem_mm), (foot, tie.hem_mm + tie.lift_mm))
    under_high = ((hook, y), (near, y), (foot, tie.hem_mm + tie.lift_mm))
    return Cover(_rising(over_low), _rising(over_high)), Cover(_rising(under_low), _rising(under_high))


def _rising(points: Sequence[Point]) -> tuple[Point, ...]:
    return tuple(points) if points[-1][0] >= points[0][0] else tuple(reversed(points))


def clear_beside(shapes: Iterable[Shape], covers: Sequence[Cover], area_mm2: float) -> float:
    """The share of the glass that covers leave clear, counted once where they lie over each other.

    Parameters
    ----------
    shapes : iterable of Shape
        The glass of each opening.
    covers : sequence of Cover
    area_mm2 : float
        All the glass; 1 is clear where there is none.
    """
    if area_mm2 <= 0:
        return 1.0
    hidden = sum(_hidden(shape, covers) for shape in shapes)
    return min(max(1.0 - hidden / area_mm2, 0.0), 1.0)


def _hidden(shape: Shape, covers: Sequence[Cover]) -> float:
    near = [c for c in covers if c.low[0][0] < shape.right_mm and c.low[-1][0] > shape.left_mm]
    places = {shape.left_mm, shape.right_mm}
    for cover in near:
        places.update(x for x, _ in (*cover.low, *cover.high) if shape.left_mm < x < shape.right_mm)
    ordered = sorted(places)
    total = 0.0
    for left, right in pairwise(ordered):
        count = max(1, ceil((right - left) / WIDEST_MM))
        wide = (right - left) / count
        total += wide * sum(_high(shape, near, left + (index + 0.5) * wide) for index in range(count))
    return total


def _high(shape: Shape, covers: Sequence[Cover], x: float) -> float:
    """How much of the glass's height is covered at ``x``."""
    bottom, top = shape.bottom_mm, height_over(shape, x)
    found: list[Span] = []
    for cover in covers:
        if cover.low[0][0] < x < cover.low[-1][0]:
            low, high = max(line_at(cover.low, x), bottom), min(line_at(cover.high, x), top)
            if high > low:
                found.append((low, high))
    found.sort()
    total, reached = 0.0, bottom
    for low, high in found:
        if high > reached:
            total += high - max(low, reached)
            reached = high
    return total


def line_at(line: tuple[Point, ...], x: float) -> float:
    """Height of a line with rising x at ``x``, level beyond its ends."""
    after = bisect_right(line, x, key=_x)
    if after == 0:
        return line[0][1]
    if after == len(line):
        return line[-1][1]
    (x0, y0), (x1, y1) = line[after - 1], line[after]
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def _x(point: Point) -> float:
    return point[0]
