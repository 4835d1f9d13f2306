"""Heads of openings: the curve over an opening or its glass, its height, its area, its outline.

A shape is the region between a level bottom and a head that is level, raked or a circular arc. Areas between any two places
along the wall are exact integrals of the head's function: no polygon takes part.
"""

from __future__ import annotations

import math
from functools import lru_cache

from msgspec import Struct

from elevation.setting_out.model import Point

SEGMENTS_A_QUARTER = 512


class Shape(Struct, frozen=True, gc=False):
    """A region under a head.

    ``left_mm .. right_mm`` is where it is higher than nothing. Level and raked: the head runs from ``left_top_mm`` to
    ``right_top_mm``. Arc (``radius_mm`` > 0): about ``(centre_x_mm, centre_y_mm)``.
    """

    left_mm: float
    right_mm: float
    bottom_mm: float
    left_top_mm: float
    right_top_mm: float
    radius_mm: float = 0.0
    centre_x_mm: float = 0.0
    centre_y_mm: float = 0.0

    @property
    def top_mm(self) -> float:
        """The highest point."""
        if self.radius_mm and self.left_mm <= self.centre_x_mm <= self.right_mm:
            return self.centre_y_mm + self.radius_mm
        return max(self.left_top_mm, self.right_top_mm)


def level(left: float, right: float, bottom: float, left_top: float, right_top: float) -> Shape:
    """A shape under a level or raked head, cut off where a slope goes below its bottom; empty shapes have no width."""
    if (left_top < bottom and right_top < bottom) or right <= left:
        return Shape(left, left, bottom, bottom, bottom)
    if left_top < bottom:
        left += (bottom - left_top) / (right_top - left_top) * (right - left)
        left_top = bottom
    elif right_top < bottom:
        right -= (bottom - right_top) / (left_top - right_top) * (right - left)
        right_top = bottom
    return Shape(left, right, bottom, left_top, right_top)


def arched(left: float, right: float, bottom: float, centre_x: float, centre_y: float, radius: float) -> Shape:
    """A shape under an arc, cut off where the arc goes below its bottom or ends."""
    if radius <= 0 or centre_y + radius <= bottom:
        return Shape(centre_x, centre_x, bottom, bottom, bottom)
    half = radius
    if bottom > centre_y:
        half = math.sqrt(radius * radius - (bottom - centre_y) ** 2)
    left, right = max(left, centre_x - half), min(right, centre_x + half)
    if right <= left:
        return Shape(centre_x, centre_x, bottom, bottom, bottom)
    first, last = (centre_y + _sagitta(radius, x - centre_x) for x in (left, right))
    return Shape(left, right, bottom, first, last, radius, centre_x, centre_y)


def _sagitta(radius: float, away: float) -> float:
    """Height of a circle over its centre, ``away`` from it; where it stands upright a rounding error must not lift it."""
    square = radius * radius - away * away
    return math.sqrt(square) if square > 1e-12 * radius * radius else 0.0


def height_over(shape: Shape, x_mm: float) -> float:
    """Height of the head at ``x_mm``, which must lie within the shape."""
    if shape.radius_mm:
        away = x_mm - shape.centre_x_mm
        return shape.centre_y_mm + math.sqrt(max(shape.radius_mm**2 - away * away, 0.0))
    if shape.right_mm <= shape.left_mm:
        return shape.left_top_mm
    part = (x_mm - shape.left_mm) / (shape.right_mm - shape.left_mm)
    return shape.left_top_mm + (shape.right_top_mm - shape.left_top_mm) * part


def area_left_of(shape: Shape, x_mm: float) -> float:
    """Area of the shape to the left of ``x_mm``, by formula."""
    left = shape.left_mm
    x = min(max(x_mm, left), shape.right_mm)
    wide = x - left
    if wide <= 0:
        return 0.0
    if shape.radius_mm:
        r, c = shape.radius_mm, shape.centre_x_mm
        return (shape.centre_y_mm - shape.bottom_mm) * wide + _under_circle(x - c, r) - _under_circle(left - c, r)
    head = height_over(shape, x)
    return wide * ((shape.left_top_mm + head) / 2 - shape.bottom_mm)


def area_of(shape: Shape) -> float:
    """Area of the whole shape, by formula."""
    return area_left_of(shape, shape.right_mm)


def area_between(shape: Shape, left_mm: float, right_mm: float) -> float:
    """Area of the shape between two places along the wall."""
    if right_mm <= shape.left_mm or left_mm >= shape.right_mm or right_mm <= left_mm:
        return 0.0
    return area_left_of(shape, right_mm) - area_left_of(shape, left_mm)


def _under_circle(u: float, r: float) -> float:
    # Antiderivative of sqrt(r^2 - u^2).
    u = min(max(u, -r), r)
    return (u * math.sqrt(r * r - u * u) + r * r * math.asin(u / r)) / 2


@lru_cache(maxsize=12)
def _unit_arc(start: float, stop: float, count: int) -> tuple[Point, ...]:
    """Points between the ends of an arc of the unit circle: alike for all openings of one shape, whatever their size."""
    step = (stop - start) / count
    return tuple((math.cos(start + i * step), math.sin(start + i * step)) for i in range(1, count))


def outline(shape: Shape) -> tuple[Point, ...]:
    """The shape as one closed polygon, anticlockwise from the lower left corner; the first point is not repeated.

    Arcs have at least 512 segments a quarter.
    """
    if shape.right_mm <= shape.left_mm:
        return ()
    base: tuple[Point, ...] = ((shape.left_mm, shape.bottom_mm), (shape.right_mm, shape.bottom_mm))
    if not shape.radius_mm:
        return (*base, (shape.right_mm, shape.right_top_mm), (shape.left_mm, shape.left_top_mm))
    cx, cy, r = shape.centre_x_mm, shape.centre_y_mm, shape.radius_mm
    start = math.atan2(shape.right_top_mm - cy, shape.right_mm - cx)
    stop = math.atan2(shape.left_top_mm - cy, shape.left_mm - cx)
    # An even number, so that the crown of a whole arc is one of its points.
    count = 2 * max(1, math.ceil((stop - start) / math.pi * SEGMENTS_A_QUARTER))
    arc = [(cx + r * c, cy + r * s) for c, s in _unit_arc(start, stop, count)]
    return (*base, (shape.right_mm, shape.right_top_mm), *arc, (shape.left_mm, shape.left_top_mm))
