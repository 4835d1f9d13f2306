"""A panel of cloth as records: one wash across all its folds, strokes of the brush, lines and outline."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.sheet.draw_drape import Drape, valley
from elevation.sheet.draw_strokes import strokes
from elevation.sheet.paths import Step, polygon
from elevation.sheet.records import Fill, Gradient, Path, Pen, Record

_SHADOW_MM = 24.0


def cloth_records(drape: Drape, marks: Sequence[Record] = ()) -> list[Record]:
    """The panel's cloth below its heading, back to front: shadow, wash, strokes of the brush, hem line, outline.

    ``marks`` are those of its pattern; they lie on the cloth, with the lines of valleys and hem over them.
    """
    outline = outline_path(drape)
    paint = drape.tones
    wash = Gradient((drape.left_mm, 0.0), (drape.right_mm, 0.0), drape.stops)
    records: list[Record] = [_cast(drape), Fill(outline, wash)]
    records.extend(strokes(drape))
    records.extend(marks)
    if len(drape.foot) > 2:
        records.append(Path(_valleys(drape), Pen(paint.line, 0.13)))
    if drape.lift_mm > 0 and drape.top_mm - max(drape.foot) > 500:
        records.append(Path(_hem_line(drape), Pen(paint.line, 0.1)))
    records.append(Path(outline, Pen(paint.edge, 0.2)))
    return records


def outline_path(drape: Drape) -> tuple[Step, ...]:
    """The closed outline of the cloth: heading, right edge, scalloped hem, left edge."""
    count = len(drape.foot) - 1
    steps: list[Step] = [("M", drape.left_mm, drape.top_mm)]
    steps.extend(_top_step(drape, index) for index in range(count))
    steps.append(_side(drape, count, down=True))
    steps.extend(_hem_step(drape, index) for index in range(count - 1, -1, -1))
    steps.append(_side(drape, 0, down=False))
    steps.append(("Z",))
    return tuple(steps)


def _top_step(drape: Drape, index: int) -> Step:
    x1, x2, y = drape.valleys_top[index], drape.valleys_top[index + 1], drape.top_mm
    if drape.dip_mm <= 0:
        return ("L", x2, y)
    low = y - drape.dip_mm * 4 / 3
    third = (x2 - x1) * 0.28
    return ("C", x1 + third, low, x2 - third, low, x2, y)


def _hem_step(drape: Drape, index: int) -> Step:
    """The hem of one fold from its right valley to its left: its front hangs to the hem, its back is seen higher."""
    x1, x2 = drape.valleys_foot[index], drape.valleys_foot[index + 1]
    y1, y2 = drape.foot[index], drape.foot[index + 1]
    dip = drape.lift_mm / 3
    third = (x2 - x1) * 0.3
    return ("C", x2 - third, y2 - dip, x1 + third, y1 - dip, x1, y1 + drape.lift_mm)


def _side(drape: Drape, index: int, *, down: bool) -> Step:
    start, a, b, end = valley(drape, index)
    return ("C", *a, *b, *end) if down else ("C", *b, *a, *start)


def _valleys(drape: Drape) -> tuple[Step, ...]:
    steps: list[Step] = []
    for index in range(1, len(drape.foot) - 1):
        steps.append(("M", drape.valleys_top[index], drape.top_mm))
        steps.append(_side(drape, index, down=True))
    return tuple(steps)


def _hem_line(drape: Drape) -> tuple[Step, ...]:
    """The stitched line of the turned hem, 4 in above it (common practice, no source)."""
    up = 101.6
    steps: list[Step] = []
    for index in range(len(drape.foot) - 1, 0, -1):
        x, y = drape.valleys_foot[index], drape.foot[index] + drape.lift_mm + up
        steps.append(("M", x, y))
        step = _hem_step(drape, index - 1)
        steps.append((step[0], *(float(part) + (up if place % 2 else 0.0) for place, part in enumerate(step[1:]))))
    return tuple(steps)


def _cast(drape: Drape) -> Fill:
    """The shadow on the wall to the right of the panel; light comes from the left and from above."""
    right, top, low = drape.right_mm, drape.top_mm - 8.0, drape.foot[-1] + drape.lift_mm
    reach = min(_SHADOW_MM, max(9.0, drape.pitch_mm * 0.3))
    corners = ((right, low), (right + reach, low), (right + reach, top - reach), (right, top))
    return Fill(polygon(corners), drape.tones.shade)
