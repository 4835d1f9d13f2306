"""Records moved, or made smaller and moved, on the sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from msgspec.structs import replace

from elevation.setting_out.model import Point
from elevation.sheet.records import Dimension, Fill, Gradient, Line, Path, Polyline, Record, Text

Steps = tuple[tuple[str | float, ...], ...]


def moved(records: Iterable[Record], right: float, up: float) -> tuple[Record, ...]:
    """The records, each moved by so much (in their own coordinates)."""
    return reduced(records, 1.0, right, up)


def reduced(records: Iterable[Record], scale: float, right: float, up: float) -> tuple[Record, ...]:
    """The records, ``scale`` times smaller and then moved; pens and type are paper's and keep their size."""

    def point(at: Point) -> Point:
        return (at[0] / scale + right, at[1] / scale + up)

    return mapped(records, point)


def mapped(records: Iterable[Record], point: Callable[[Point], Point]) -> tuple[Record, ...]:
    """The records with each of their points where ``point`` puts it; text is moved, not turned."""
    return tuple(_moved(record, point) for record in records)


def _moved(record: Record, point: Callable[[Point], Point]) -> Record:
    if isinstance(record, Line):
        return replace(record, a=point(record.a), b=point(record.b))
    if isinstance(record, Polyline):
        return replace(record, points=tuple(point(at) for at in record.points))
    if isinstance(record, Path):
        return replace(record, steps=_steps(record.steps, point))
    if isinstance(record, Fill):
        paint = record.paint
        if isinstance(paint, Gradient):
            paint = replace(paint, a=point(paint.a), b=point(paint.b))
        return replace(record, steps=_steps(record.steps, point), paint=paint)
    if isinstance(record, Text):
        return replace(record, at=point(record.at))
    return _dimension(record, point)


def _dimension(record: Dimension, point: Callable[[Point], Point]) -> Dimension:
    # The line lies at one height (or one distance) over its whole length.
    line = point((record.line, record.line))[1 if record.along == "x" else 0]
    return replace(
        record,
        a=point(record.a),
        b=point(record.b),
        line=line,
        text_at=point(record.text_at),
        leader=tuple(point(at) for at in record.leader),
    )


def _steps(steps: Steps, point: Callable[[Point], Point]) -> Steps:
    """Path steps: each is its letter and then x and y in turn."""
    found: list[tuple[str | float, ...]] = []
    for step in steps:
        numbers = [float(value) for value in step[1:]]
        moved_ = [value for at in zip(numbers[::2], numbers[1::2], strict=True) for value in point(at)]
        found.append((step[0], *moved_))
    return tuple(found)
