"""Somebody who stands beside the window at true height, so that a wall on a screen is seen as large as it is.

The outline is our own, in parts of the height: the crotch at 0.47, shoulders a quarter of it wide, the head an eighth and
a little more (common practice of figure drawing, no source).
"""

from __future__ import annotations

from itertools import pairwise

from elevation.setting_out.model import ObstacleOut, OpeningOut, Profile, SetOut, Span
from elevation.sheet.inks import blend, with_alpha
from elevation.sheet.paths import Step, height_at, rectangle
from elevation.sheet.records import NARROW, Fill, Group, Ink, Path, Pen, Record, Text
from elevation.sheet.type_metrics import text_width
from elevation.trade.model import Trade
from elevation.words import Mm, Style, msg, say

HALF_WIDTH = 0.142
"""From its middle to a hand, in parts of the height."""

_ABOVE = 1.4
_TYPE = 2.9
_CLEAR_MM = 60.0
"""Kept free at either side, where there is room."""

_CLOTH_MM = 320.0
"""Beside a casing, where cloth usually stacks: 12 in of rod and a little more (common practice, no source)."""

_INK = blend(Ink.WALL, Ink.OUTLINE, 0.3)
_PLATE = with_alpha(Ink.PAPER, 0.88)
_EDGE = Pen(blend(Ink.WALL, Ink.OUTLINE, 0.72), NARROW)

# The right half from the crown to the crotch: two handles and an end each, in parts of the height.
_HALF = (
    ((0.030, 1.000), (0.044, 0.974), (0.044, 0.938)),
    ((0.044, 0.908), (0.036, 0.888), (0.025, 0.876)),
    ((0.025, 0.868), (0.025, 0.862), (0.026, 0.852)),
    ((0.034, 0.832), (0.088, 0.832), (0.106, 0.806)),
    ((0.124, 0.788), (0.124, 0.715), (0.132, 0.640)),
    ((0.136, 0.585), (0.142, 0.530), (0.136, 0.470)),
    ((0.134, 0.440), (0.114, 0.438), (0.112, 0.470)),
    ((0.112, 0.540), (0.102, 0.620), (0.092, 0.700)),
    ((0.082, 0.680), (0.074, 0.650), (0.075, 0.615)),
    ((0.076, 0.580), (0.090, 0.555), (0.090, 0.505)),
    ((0.090, 0.420), (0.074, 0.360), (0.068, 0.280)),
    ((0.070, 0.200), (0.054, 0.120), (0.051, 0.045)),
    ((0.051, 0.022), (0.076, 0.020), (0.078, 0.000)),
    ((0.060, 0.000), (0.045, 0.000), (0.028, 0.000)),
    ((0.024, 0.014), (0.027, 0.030), (0.026, 0.050)),
    ((0.030, 0.200), (0.012, 0.340), (0.000, 0.468)),
)


def person_group(set_out: SetOut, trade: Trade, style: Style, mm_per_paper: float) -> Group:
    """Somebody as tall as the limit ``person-high`` says, on the floor of the wall, with that height over the head.

    Parameters
    ----------
    set_out : SetOut
    trade : Trade
    style : Style
    mm_per_paper : float
        Wall mm for one paper mm.

    Returns
    -------
    Group
        Layer ``person``, wall coordinates.
    """
    high = trade.limits["person-high"].value
    x = stands_at(set_out.width_mm, set_out.openings, set_out.obstacles, set_out.floor, high)
    y = height_at(set_out.floor, x)
    outline = _outline(x, y, high)
    figure = say(msg("{figure}", figure=Mm(high)), style)
    base, half = y + high + _ABOVE * mm_per_paper, (text_width(figure, _TYPE) / 2 + 0.5) * mm_per_paper
    low, top = base - 0.5 * mm_per_paper, base + (0.74 * _TYPE + 0.5) * mm_per_paper
    records: tuple[Record, ...] = (
        Fill(outline, _INK),
        Path(outline, _EDGE),
        # Pictures and cloth hang behind it.
        Fill(rectangle(x - half, low, x + half, top), _PLATE),
        Text((x, base), figure, _TYPE, Ink.TEXT, "middle"),
    )
    title = say(msg("Somebody {high} tall, for comparison", high=Mm(high)), style)
    return Group((set_out.wall,), "person", title, records)


def stands_at(
    wide_mm: float, openings: tuple[OpeningOut, ...], obstacles: tuple[ObstacleOut, ...], floor: Profile, high_mm: float
) -> float:
    """Where along the wall the middle of somebody so tall is drawn, mm from the wall's left end.

    In a piece of wall between openings, in its middle, at an end of it or beside the cloth of a window, wherever the least
    of cloth and of what stands before the wall is hidden. Where no piece is wide enough, in the widest all the same. Cloth
    counts by where it usually hangs: the figure must not walk while a rod is dragged.
    """
    need = HALF_WIDTH * high_mm + _CLEAR_MM
    pieces = sorted(_pieces(wide_mm, openings), key=lambda piece: piece[0] - piece[1])
    enough = [piece for piece in pieces if piece[1] - piece[0] >= 2 * need] or pieces[:1]
    far = need + _CLOTH_MM
    places = [
        x
        for a, b in enough
        for x in ((a + b) / 2, a + need, b - need, a + far, b - far)
        if a + need <= x <= b - need or x == (a + b) / 2
    ]
    half = HALF_WIDTH * high_mm
    things = [(one.left_mm, one.bottom_mm, one.right_mm, one.top_mm) for one in obstacles]
    things += [
        (edge, height_at(floor, edge), edge + _CLOTH_MM, high_mm)
        for one in openings
        for edge in (one.left_mm - one.casing_mm - _CLOTH_MM, one.right_mm + one.casing_mm)
    ]

    def hidden(x: float) -> float:
        y = height_at(floor, x)
        return sum(
            max(0.0, min(right, x + half) - max(left, x - half)) * max(0.0, min(top, y + high_mm) - max(bottom, y))
            for left, bottom, right, top in things
        )

    return min(places, key=hidden) if places else wide_mm / 2


def _pieces(wide_mm: float, openings: tuple[OpeningOut, ...]) -> list[Span]:
    """What of the wall stands between its openings with their casings."""
    edges = [0.0]
    for one in sorted(openings, key=lambda opening: opening.left_mm):
        edges += [one.left_mm - one.casing_mm, max(edges[-1], one.right_mm + one.casing_mm)]
    edges.append(wide_mm)
    return [(a, b) for index, (a, b) in enumerate(pairwise(edges)) if index % 2 == 0 and b > a]


def _outline(x: float, y: float, high_mm: float) -> tuple[Step, ...]:
    """The whole outline: down the right side, up the left."""
    right = [(0.0, 1.0), *(point for curve in _HALF for point in curve)]
    left = [(-u, v) for u, v in reversed(right)]
    points = [(x + u * high_mm, y + v * high_mm) for u, v in (*right, *left[1:])]
    curves = zip(points[1::3], points[2::3], points[3::3], strict=True)
    return (("M", *points[0]), *(("C", *a, *b, *c) for a, b, c in curves), ("Z",))
