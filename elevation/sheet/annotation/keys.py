"""The key table of a picture without margin, and the numbers of the openings."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from elevation.room.model import Ref
from elevation.setting_out.model import SetOut
from elevation.sheet.annotation.model import Box, KeyLine
from elevation.sheet.records import NARROW, Ink, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import CAP, text_width

_SIZE = 3.3
_ROW = 4.8
_NUMBER = 2.7
_HALF = 1.85
_REACH = _HALF + 0.5
"""A line farther than this from an opening does not touch a number under it."""
_DOWN = 3.0
"""Middle of an opening's number below the wall: between the outline and the first line's figures."""


def key_table(
    keys: Sequence[KeyLine], unshown: Sequence[tuple[Ref, str]], extent: Box, scale: float
) -> tuple[tuple[Record, ...], float]:
    """The key table in rows under the drawing, wall coordinates, and how far down it reaches (paper mm)."""
    left, bottom, right, _ = extent
    if not keys and not unshown:
        return (), bottom
    records: list[Record] = []
    y = bottom - 2.0
    if keys:
        step = max(text_width(key.figure, _SIZE) for key in keys) + 11.0
        across = max(1, int((right - left) // step))
        for start in range(0, len(keys), across):
            y -= _ROW
            for place, key in enumerate(keys[start : start + across]):
                x = left + place * step
                records.append(Text((x * scale, y * scale), key.letter, _SIZE, weight="semibold"))
                records.append(Text(((x + 5.5) * scale, y * scale), key.figure, _SIZE))
    for _, text in unshown:
        y -= _ROW
        records.append(Text((left * scale, y * scale), text, _SIZE))
    return tuple(records), y - 1.5


def opening_numbers(
    set_out: SetOut, foot: float, crossing: Sequence[float], scale: float
) -> tuple[tuple[Record, ...], tuple[tuple[Box, str], ...]]:
    """A small framed number under each opening where there are several; kept clear of extension lines and each other.

    Returns
    -------
    (records, labels)
        Records in wall coordinates; boxes in paper mm from the wall's origin, with their texts.
    """
    if len(set_out.openings) < 2:
        return (), ()
    records: list[Record] = []
    labels: list[tuple[Box, str]] = []
    taken: list[tuple[float, float]] = []
    y = foot - _DOWN
    for opening in set_out.openings:
        low, high = opening.left_mm / scale, opening.right_mm / scale
        # Only lines that come near: on a long wall most cross it elsewhere.
        near = crossing[bisect_left(crossing, low - _REACH) : bisect_right(crossing, high + _REACH)]
        x = _place((low + high) / 2, low, high, [*((place - 0.4, place + 0.4) for place in near), *taken])
        if x is None:
            x = _place((low + high) / 2, low - 3 * _HALF, high + 3 * _HALF, taken)
        if x is None:
            continue
        taken.append((x - _HALF - 0.5, x + _HALF + 0.5))
        text = str(opening.number)
        corners = tuple(
            ((x + dx) * scale, (y + dy) * scale)
            for dx, dy in ((-_HALF, -_HALF), (_HALF, -_HALF), (_HALF, _HALF), (-_HALF, _HALF))
        )
        records.append(Polyline(corners, Pen(Ink.THIN, NARROW), True))
        base = y - CAP * _NUMBER / 2
        records.append(Text((x * scale, base * scale), text, _NUMBER, Ink.TEXT, "middle", 0.0, "semibold"))
        labels.append(((x - _HALF, y - _HALF, x + _HALF, y + _HALF), text))
    return tuple(records), tuple(labels)


def _place(wish: float, low: float, high: float, blocked: Sequence[tuple[float, float]]) -> float | None:
    spans = [(a - _HALF, b + _HALF) for a, b in blocked if b + _HALF >= low and a - _HALF <= high]

    def free(x: float) -> bool:
        return all(not a + 1e-9 < x < b - 1e-9 for a, b in spans)

    if free(wish):
        return wish
    edges = [edge for span in spans for edge in span if low <= edge <= high and free(edge)]
    return min(edges, key=lambda edge: (abs(edge - wish), edge), default=None)
