"""Numbered marks of findings, told apart by shape, and the small mark of what is held.

A *stop* is a filled octagon, *broken* a triangle, *consider* a ring: they read without colour.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from elevation.findings.model import Finding, Weight
from elevation.setting_out.model import Point
from elevation.sheet.annotation.model import Box, overlap
from elevation.sheet.paths import circle, polygon
from elevation.sheet.records import NARROW, Fill, Ink, Line, Path, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import CAP, text_width

RADIUS = 2.7
"""Half the room of a mark, paper mm."""
NUMBER = 2.9
"""Type size of the number inside."""
_OUTLINE = 0.35


def finding_mark(weight: Weight, number: int, at: Point, mm: float = 1.0) -> tuple[Record, ...]:
    """A numbered mark.

    Parameters
    ----------
    weight : Weight
    number : int
    at : Point
        Its middle, in the group's coordinates.
    mm : float
        Group coordinates for one paper mm.
    """
    x, y = at
    text = str(number)
    size = min(NUMBER, NUMBER * 3.0 / max(text_width(text, NUMBER, "semibold"), 1e-6))
    drop = CAP * size / 2 * mm
    if weight is Weight.STOP:
        points = _ngon(at, 8, RADIUS * mm, math.pi / 8)
        figure = Text((x, y - drop), text, size, Ink.PAPER, "middle", 0.0, "semibold")
        return (Fill(polygon(points), Ink.ACCENT), figure)
    if weight is Weight.BROKEN:
        low = y - RADIUS * mm
        points = ((x - 3.0 * mm, low), (x + 3.0 * mm, low), (x, low + 5.2 * mm))
        figure = Text((x, low + 0.75 * mm), text, size, Ink.ACCENT, "middle", 0.0, "semibold")
        return (Fill(polygon(points), Ink.PAPER), Polyline(points, Pen(Ink.ACCENT, _OUTLINE), True), figure)
    ring = circle(x, y, (RADIUS - 0.3) * mm)
    figure = Text((x, y - drop), text, size, Ink.TEXT, "middle", 0.0, "semibold")
    return (Fill(ring, Ink.PAPER), Path(ring, Pen(Ink.OUTLINE, _OUTLINE)), figure)


def _ngon(at: Point, count: int, radius: float, start: float) -> tuple[Point, ...]:
    step = 2 * math.pi / count
    return tuple(
        (at[0] + radius * math.cos(start + index * step), at[1] + radius * math.sin(start + index * step))
        for index in range(count)
    )


def mark_box(at: Point) -> Box:
    """The room of a mark, paper mm."""
    return at[0] - RADIUS - 0.3, at[1] - RADIUS, at[0] + RADIUS + 0.3, at[1] + RADIUS


def places(findings: Sequence[Finding], scale: float, inside: Box, clear: Sequence[Point] = ()) -> dict[int, Point]:
    """Where the marks stand, paper mm from the wall's origin, by index of the finding.

    Each stands near what it points at, inside the wall and clear of the others (no other label stands inside the wall),
    and of the points ``clear`` (wall mm), where a rod's height is taken on the screen.
    Where the wall has no room left, the last findings have no mark: the list beside the drawing still tells them.
    """
    spots = _Spots(inside)
    spots.boxes.extend(_handle_box((x / scale, y / scale)) for x, y in clear)
    found: dict[int, Point] = {}
    for index, finding in enumerate(findings):
        if finding.at is None:
            continue
        place = spots.take((finding.at[0] / scale, finding.at[1] / scale))
        if place is not None:
            found[index] = place
    return found


_NEAR = tuple(
    (far * math.cos(turn), far * math.sin(turn))
    for far in (5.5, 7.5)
    for turn in (math.pi * part for part in (0.5, 0.25, 0.75, 0.0, 1.0, -0.25, -0.75, -0.5))
)
"""A little above first, so that a mark does not hide what it is about."""
_HANDLE = 3.6
"""Half the room of a handle with its arrow heads, paper mm."""


def _handle_box(at: Point) -> Box:
    return at[0] - _HANDLE, at[1] - _HANDLE, at[0] + _HANDLE, at[1] + _HANDLE


_CELL = 2 * RADIUS + 0.8


class _Spots:
    """Room for marks: near the place first, then the nearest free spot of a lattice over the wall."""

    def __init__(self, inside: Box) -> None:
        reach = RADIUS + 0.4
        left, bottom, right, top = inside
        self.low = (left + reach, bottom + reach)
        self.high = (max(right - reach, left + reach), max(top - reach, bottom + reach))
        self.boxes: list[Box] = []

    def take(self, wish: Point) -> Point | None:
        for dx, dy in _NEAR:
            spot = (
                min(max(wish[0] + dx, self.low[0]), self.high[0]),
                min(max(wish[1] + dy, self.low[1]), self.high[1]),
            )
            box = mark_box(spot)
            if not any(overlap(box, other) for other in self.boxes):
                return self._keep(spot, box)
        lattice = (
            (self.low[0] + column * _CELL, self.low[1] + row * _CELL)
            for column in range(int((self.high[0] - self.low[0]) / _CELL) + 1)
            for row in range(int((self.high[1] - self.low[1]) / _CELL) + 1)
        )
        for spot in sorted(lattice, key=lambda spot: math.hypot(spot[0] - wish[0], spot[1] - wish[1])):
            box = mark_box(spot)
            if not any(overlap(box, other) for other in self.boxes):
                return self._keep(spot, box)
        return None

    def _keep(self, spot: Point, box: Box) -> Point:
        self.boxes.append(box)
        return spot


def pointer(weight: Weight, mark: Point, at: Point, scale: float) -> tuple[Record, ...]:
    """The line from a mark to what it points at, in wall coordinates, ending in a dot; nothing where it stands on it."""
    ink = Ink.OUTLINE if weight is Weight.CONSIDER else Ink.ACCENT
    x, y = mark[0] * scale, mark[1] * scale
    length = math.hypot(at[0] - x, at[1] - y)
    if length <= (RADIUS + 0.5) * scale:
        return ()
    start = (RADIUS - 0.2) * scale / length
    a = (x + (at[0] - x) * start, y + (at[1] - y) * start)
    return (Line(a, at, Pen(ink, NARROW)), Fill(circle(*at, 0.55 * scale), ink))


def held_mark(at: Point, mm: float = 1.0) -> tuple[Record, ...]:
    """The mark of what is held: a small filled lozenge."""
    x, y = at
    reach = 0.85 * mm
    return (Fill(polygon(((x - reach, y), (x, y - reach), (x + reach, y), (x, y + reach))), Ink.HELD),)
