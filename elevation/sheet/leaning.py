"""A rod that was read to hang out of level, and the cloth on it, drawn along its readings.

Rods and cloth are drawn as if level, which keeps their drawing simple; what was drawn then goes along with the line that
the tape found.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from msgspec.structs import replace

from elevation.setting_out.model import Point, Profile
from elevation.setting_out.profile import height_at
from elevation.sheet.paths import Step
from elevation.sheet.records import Fill, Gradient, Line, Path, Polyline, Record, Text


def lean(records: Sequence[Record], line: Profile, height_mm: float) -> list[Record]:
    """The records, each point as much higher as the rod's line there is over the level rod.

    Parameters
    ----------
    records : sequence of Record
        Drawn around a level rod.
    line : Profile
        The rod's axis as it was read, wall mm.
    height_mm : float
        Height of the level rod.
    """
    made = _Lean(line, height_mm)
    return [made.record(record) for record in records]


class _Lean:
    def __init__(self, line: Profile, height_mm: float) -> None:
        self._line, self._height = line, height_mm
        self._knots = tuple(x for x, _ in line.points)
        (x0, y0), (x1, y1) = line.points[0], line.points[-1]
        self._slope = (y1 - y0) / (x1 - x0) if x1 > x0 else 0.0
        self._middle = (x0 + x1) / 2

    def record(self, record: Record) -> Record:
        if isinstance(record, Path):
            return replace(record, steps=self._steps(record.steps))
        if isinstance(record, Fill):
            return Fill(self._steps(record.steps), self._paint(record.paint))
        if isinstance(record, Polyline):
            return replace(record, points=tuple(self.point(*point) for point in record.points))
        if isinstance(record, Line):
            return replace(record, a=self.point(*record.a), b=self.point(*record.b))
        if isinstance(record, Text):
            return replace(record, at=self.point(*record.at))
        # A dimension is laid beside what is drawn, never with it.
        return record

    def point(self, x: float, y: float) -> Point:
        return x, y + height_at(self._line, x) - self._height

    def _steps(self, steps: Sequence[Step]) -> tuple[Step, ...]:
        made: list[Step] = []
        at: Point | None = None
        for step in steps:
            numbers = [float(number) for number in step[1:]]
            if not numbers:
                made.append(step)
                continue
            end = numbers[-2], numbers[-1]
            if step[0] == "L" and at is not None:
                made.extend(("L", *self.point(*knot)) for knot in self._between(at, end))
            moved = [part for x, y in zip(numbers[::2], numbers[1::2], strict=True) for part in self.point(x, y)]
            made.append((step[0], *moved))
            at = end
        return tuple(made)

    def _between(self, a: Point, b: Point) -> list[Point]:
        """Where a straight step bends, because the line does."""
        low, high = sorted((a[0], b[0]))
        knots = [x for x in self._knots if low + 1e-6 < x < high - 1e-6]
        if a[0] > b[0]:
            knots.reverse()
        return [(x, a[1] + (b[1] - a[1]) * (x - a[0]) / (b[0] - a[0])) for x in knots]

    def _paint(self, paint: str | Gradient) -> str | Gradient:
        if not isinstance(paint, Gradient) or paint.a[0] != paint.b[0]:
            return paint
        # Light from above falls across the rod as it leans.
        middle, half = (paint.a[1] + paint.b[1]) / 2, (paint.a[1] - paint.b[1]) / 2
        x, y = self.point(self._middle, middle)
        long = hypot(1.0, self._slope)
        dx, dy = -self._slope * half / long, half / long
        return replace(paint, a=(x + dx, y + dy), b=(x - dx, y - dy))
