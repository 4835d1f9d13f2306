"""Whether two straight pieces cross."""

from __future__ import annotations

from elevation.setting_out.model import Point


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def crosses(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether the piece from ``a`` to ``b`` meets the piece from ``c`` to ``d`` (touching counts, lying along does not)."""
    one, two = _turn(a, b, c), _turn(a, b, d)
    three, four = _turn(c, d, a), _turn(c, d, b)
    return one * two <= 0 and three * four <= 0 and not (one == two == 0)


def crosses_box(a: Point, b: Point, box: tuple[float, float, float, float]) -> bool:
    """Whether the piece from ``a`` to ``b`` meets a box (left, low, right, high) or ends in it."""
    left, low, right, high = box
    if max(a[0], b[0]) < left or min(a[0], b[0]) > right or max(a[1], b[1]) < low or min(a[1], b[1]) > high:
        return False
    if left <= a[0] <= right and low <= a[1] <= high:
        return True
    corners = ((left, low), (right, low), (right, high), (left, high))
    return any(crosses(a, b, corners[side], corners[(side + 1) % 4]) for side in range(4))
