"""Steps of paths: rectangles, arcs and the outline of an opening, in whatever mm the caller uses.

Arcs travel as cubics; a quarter circle by one cubic with the handle length 0.5522847498 of the
radius departs from the circle by less than 0.03 % of it.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence

from elevation.setting_out.model import OpeningOut, Point, Profile

Step = tuple[str | float, ...]
Steps = tuple[Step, ...]

_CLOSE: Step = ("Z",)


def polygon(points: Iterable[Point]) -> Steps:
    """A closed outline through ``points``."""
    return (*path_through(points), _CLOSE)


def path_through(points: Iterable[Point]) -> Steps:
    """Straight steps through ``points``, open."""
    return tuple(("L" if index else "M", x, y) for index, (x, y) in enumerate(points))


def rectangle(left: float, bottom: float, right: float, top: float) -> Steps:
    """A closed rectangle."""
    return (("M", left, bottom), ("L", right, bottom), ("L", right, top), ("L", left, top), _CLOSE)


def segment(x1: float, y1: float, x2: float, y2: float) -> Steps:
    """One straight line, to be joined with others in one path."""
    return (("M", x1, y1), ("L", x2, y2))


def ellipse(x: float, y: float, across: float, up: float) -> Steps:
    """A closed ellipse about (x, y) with half axes ``across`` and ``up``."""
    a, b = 0.5522847498 * across, 0.5522847498 * up
    return (
        ("M", x + across, y),
        ("C", x + across, y + b, x + a, y + up, x, y + up),
        ("C", x - a, y + up, x - across, y + b, x - across, y),
        ("C", x - across, y - b, x - a, y - up, x, y - up),
        ("C", x + a, y - up, x + across, y - b, x + across, y),
        _CLOSE,
    )


def circle(x: float, y: float, radius: float) -> Steps:
    """A closed circle."""
    return ellipse(x, y, radius, radius)


def rounded(left: float, bottom: float, right: float, top: float, radius: float) -> Steps:
    """A closed rectangle with round corners; the radius shrinks where it does not fit."""
    r = min(radius, (right - left) / 2, (top - bottom) / 2)
    k = r * (1 - 0.5522847498)
    return (
        ("M", left + r, bottom),
        ("L", right - r, bottom),
        ("C", right - k, bottom, right, bottom + k, right, bottom + r),
        ("L", right, top - r),
        ("C", right, top - k, right - k, top, right - r, top),
        ("L", left + r, top),
        ("C", left + k, top, left, top - k, left, top - r),
        ("L", left, bottom + r),
        ("C", left, bottom + k, left + k, bottom, left + r, bottom),
        _CLOSE,
    )


def arc(x: float, y: float, radius: float, start: float, end: float) -> Steps:
    """Cubic steps of a circular arc about (x, y) from angle ``start`` to ``end`` (radians).

    The first point is not among them: the caller has moved there.
    """
    count = max(1, math.ceil(abs(end - start) / (math.pi / 2) - 1e-9))
    step = (end - start) / count
    handle = 4 / 3 * math.tan(step / 4) * radius
    steps: list[Step] = []
    for index in range(count):
        a = start + index * step
        b = a + step
        steps.append(
            (
                "C",
                x + radius * math.cos(a) - handle * math.sin(a),
                y + radius * math.sin(a) + handle * math.cos(a),
                x + radius * math.cos(b) + handle * math.sin(b),
                y + radius * math.sin(b) - handle * math.cos(b),
                x + radius * math.cos(b),
                y + radius * math.sin(b),
            )
        )
    return tuple(steps)


def head_tops(opening: OpeningOut) -> Point:
    """Height of the head at the left and at the right jamb (of an arc: where it springs)."""
    if opening.head == "raked":
        return opening.left_top_mm, opening.right_top_mm
    if opening.head in ("segmental", "half-round"):
        spring = opening.top_mm - opening.rise_mm
        return spring, spring
    return opening.top_mm, opening.top_mm


def head_at(opening: OpeningOut, x: float, grow: float) -> float:
    """Height of the head's edge, offset by ``grow`` mm, at ``x``."""
    left_top, right_top = head_tops(opening)
    if opening.head in ("segmental", "half-round") and opening.rise_mm > 1e-6:
        half = (opening.right_mm - opening.left_mm) / 2
        centre = (opening.left_mm + opening.right_mm) / 2
        radius = (half * half + opening.rise_mm**2) / (2 * opening.rise_mm)
        reach = radius + grow
        return opening.top_mm - radius + math.sqrt(max(0.0, reach * reach - (x - centre) ** 2))
    slope = (right_top - left_top) / max(opening.right_mm - opening.left_mm, 1e-9)
    return left_top + slope * (x - opening.left_mm) + grow * math.hypot(1.0, slope)


def opening_path(opening: OpeningOut, grow: float = 0.0, bottom: float | None = None, *, closed: bool = True) -> Steps:
    """The outline of an opening, offset outward by ``grow`` mm (negative: inward).

    Parameters
    ----------
    opening : OpeningOut
        Any head: flat, segmental, half-round, raked. Arcs stay concentric, slopes parallel.
    grow : float
        Offset in mm, all round but at the bottom.
    bottom : float or None
        Where the outline ends below; None: the opening's bottom.
    closed : bool
        False leaves the bottom edge open: up the left jamb, over the head, down the right.

    Returns
    -------
    tuple
        Steps starting at the lower left corner.
    """
    left, right = opening.left_mm - grow, opening.right_mm + grow
    low = opening.bottom_mm if bottom is None else bottom
    left_top, right_top = head_tops(opening)
    steps: list[Step] = [("M", left, low)]
    if opening.head in ("segmental", "half-round") and opening.rise_mm > 1e-6:
        half = (opening.right_mm - opening.left_mm) / 2
        centre_x = (opening.left_mm + opening.right_mm) / 2
        radius = (half * half + opening.rise_mm**2) / (2 * opening.rise_mm)
        centre_y = opening.top_mm - radius
        outer = max(radius + grow, 1e-6)
        across = min((right - left) / 2, outer)
        rise = math.sqrt(max(0.0, outer * outer - across * across))
        if low > centre_y + rise:
            # A lunette: the arc meets the bottom edge before it reaches the jamb.
            rise = min(low - centre_y, outer)
            across = math.sqrt(outer * outer - rise * rise)
            steps[0] = ("M", centre_x - across, low)
            left, right = centre_x - across, centre_x + across
        start = math.atan2(rise, -across)
        steps.append(("L", left, centre_y + rise))
        steps.extend(arc(centre_x, centre_y, outer, start, math.pi - start))
    elif opening.head == "raked":
        slope = (right_top - left_top) / max(opening.right_mm - opening.left_mm, 1e-9)
        lift = grow * math.hypot(1.0, slope)
        steps.append(("L", left, left_top + lift - grow * slope))
        steps.append(("L", right, right_top + lift + grow * slope))
    else:
        steps.append(("L", left, left_top + grow))
        steps.append(("L", right, right_top + grow))
    steps.append(("L", right, low))
    if closed:
        steps.append(_CLOSE)
    return tuple(steps)


def height_at(profile: Profile, x: float) -> float:
    """Height of a profile at ``x``: straight between its points, level beyond its ends."""
    points = profile.points
    if x <= points[0][0]:
        return points[0][1]
    for (x1, y1), (x2, y2) in itertools.pairwise(points):
        if x <= x2:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1) if x2 > x1 else y2
    return points[-1][1]


def along(profile: Profile, left: float, right: float) -> tuple[Point, ...]:
    """The profile's points between two places, with a point at each of them."""
    inner = tuple(point for point in profile.points if left < point[0] < right)
    return ((left, height_at(profile, left)), *inner, (right, height_at(profile, right)))


def lowered(points: Sequence[Point], by: float) -> tuple[Point, ...]:
    """The points ``by`` mm lower."""
    return tuple((x, y - by) for x, y in points)


def bounds(steps: Iterable[Step]) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of all points of the steps, handles of cubics included."""
    xs: list[float] = []
    ys: list[float] = []
    for step in steps:
        numbers = [float(part) for part in step[1:]]
        xs.extend(numbers[0::2])
        ys.extend(numbers[1::2])
    return min(xs), min(ys), max(xs), max(ys)
