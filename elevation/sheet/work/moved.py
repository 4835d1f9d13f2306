"""Records moved on the sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from msgspec.structs import replace

from elevation.setting_out.model import Point
from elevation.sheet.records import Dimension, Fill, Gradient, Line, Path, Polyline, Record, Text

Steps = tuple[tuple[str | float, ...], ...]


def moved(records: Iterable[Record], right: float, up: float) -> tuple[Record, ...]:
    """The records, each moved by so much (in their own coordinates)."""

    def point(at: Point) -> Point:
        return (at[0] + right, at[1] + up)

    return tuple(_moved(record, point, right, up) for record in records)


def _moved(record: Record, point: Callable[[Point], Point], right: float, up: float) -> Record:
    if isinstance(record, Line):
        return replace(record, a=point(record.a), b=point(record.b))
    if isinstance(record, Polyline):
        return replace(record, points=tuple(point(at) for at in record.points))
    if isinstance(record, Path):
        return replace(record, steps=_steps(record.steps, right, up))
    if isinstance(record, Fill):
        paint = record.paint
        if isinstance(paint, Gradient):
            paint = replace(paint, a=point(paint.a), b=point(paint.b))
        return replace(record, steps=_steps(record.steps, right, up), paint=paint)
    if isinstance(record, Text):
        return replace(record, at=point(record.at))
    return _dimension(record, point, right, up)


def _dimension(record: Dimension, point: Callable[[Point], Point], right: float, up: float) -> Dimension:
    return replace(
        record,
        a=point(record.a),
        b=point(record.b),
        line=record.line + (up if record.along == "x" else right),
        text_at=point(record.text_at),
        leader=tuple(point(at) for at in record.leader),
    )


def _steps(steps: Steps, right: float, up: float) -> Steps:
    # A step is its letter and then x and y in turn.
    return tuple(
        (step[0], *(float(value) + (right if place % 2 == 0 else up) for place, value in enumerate(step[1:])))
        for step in steps
    )
