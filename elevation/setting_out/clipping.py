"""Outlines cut to a rectangle, and their areas."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.setting_out.model import Point


def clipped(outline: Sequence[Point], left: float, bottom: float, right: float, top: float) -> tuple[Point, ...]:
    """The part of a convex outline within a rectangle, side by side (Sutherland and Hodgman, 1974); empty where none is."""
    points = list(outline)
    for axis, bound, keeps_more in ((0, left, True), (0, right, False), (1, bottom, True), (1, top, False)):
        made: list[Point] = []
        for index, now in enumerate(points):
            before = points[index - 1]
            was_in = before[axis] >= bound if keeps_more else before[axis] <= bound
            is_in = now[axis] >= bound if keeps_more else now[axis] <= bound
            if was_in != is_in:
                part = (bound - before[axis]) / (now[axis] - before[axis])
                made.append((before[0] + (now[0] - before[0]) * part, before[1] + (now[1] - before[1]) * part))
            if is_in:
                made.append(now)
        points = made
    return tuple(points)


def area_of(outline: Sequence[Point]) -> float:
    """Area within a closed outline, by the shoelace formula; 0 for fewer than three points."""
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(outline, (*outline[1:], *outline[:1]), strict=True))) / 2
