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
