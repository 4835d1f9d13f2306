"""Strokes of the brush on a panel: what makes folds look hung by hand and not ruled.

Each stroke follows a curve of the cloth and has no width at its ends. Strokes are solid and each a record of its own: a
screen paints them ten times as fast as clear ones, or as many in one path.
"""

from __future__ import annotations

import math

from elevation.setting_out.model import Point
from elevation.sheet.cloth import Tones
from elevation.sheet.draw_drape import Curve, Drape, stray, valley
from elevation.sheet.paths import Step
from elevation.sheet.records import Fill, Record

_MOST = 34


def strokes(drape: Drape) -> list[Record]:
    """Hollows beside the valleys from heading and hem, a crease here and there, light along the crests."""
    count = len(drape.foot) - 1
    paint: Tones = drape.tones
    each = 1 if drape.is_light else 3
    stride = max(1, math.ceil(count * each / _MOST))
    records: list[Record] = []
    near = valley(drape, 0)
    for index in range(count):
        far = valley(drape, index + 1)
        if index % stride == 0 and count > 1:
            pitch = drape.valleys_foot[index + 1] - drape.valleys_foot[index]
            reach = 0.42 + 0.36 * abs(stray(index * 5 + 2))
            records.append(Fill(_stroke(far, 0.0, reach, -0.24 * drape.pitch_mm), paint.hollow))
            if not drape.is_light:
                rise = 0.2 + 0.26 * abs(stray(index * 7 + 3))
                records.append(Fill(_stroke(far, 1.0 - rise, 1.0, -0.3 * pitch), paint.hollow))
                if index % 3 != 1:
                    flank = _between(near, far, 0.6 + 0.08 * stray(index * 17 + 9))
                    start = 0.35 + 0.3 * abs(stray(index * 19 + 4))
                    records.append(Fill(_stroke(flank, start, 1.0, 0.12 * pitch), paint.crease))
                else:
                    crest = _between(near, far, 0.32)
                    start = 0.05 + 0.2 * abs(stray(index * 11 + 5))
                    end = 0.7 + 0.24 * abs(stray(index * 13 + 7))
                    records.append(Fill(_stroke(crest, start, end, 0.13 * drape.pitch_mm), paint.crest))
        near = far
    return records


def _mix(a: Point, b: Point, share: float) -> Point:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def _between(near: Curve, far: Curve, share: float) -> Curve:
    """The curve ``share`` of the way from one valley to the next."""
    return (
        _mix(near[0], far[0], share),
        _mix(near[1], far[1], share),
        _mix(near[2], far[2], share),
        _mix(near[3], far[3], share),
    )


def _part(curve: Curve, start: float, end: float) -> Curve:
    """The cubic between two of its parameters (de Casteljau's construction, twice)."""
    p0, p1, p2, p3 = curve
    if end < 1.0:
        a, b, c = _mix(p0, p1, end), _mix(p1, p2, end), _mix(p2, p3, end)
        ab, bc = _mix(a, b, end), _mix(b, c, end)
        p1, p2, p3 = a, ab, _mix(ab, bc, end)
    if start > 0.0:
        share = start / end
        a, b, c = _mix(p0, p1, share), _mix(p1, p2, share), _mix(p2, p3, share)
        ab, bc = _mix(a, b, share), _mix(b, c, share)
        p0, p1, p2 = _mix(ab, bc, share), bc, c
    return p0, p1, p2, p3


def _stroke(curve: Curve, start: float, end: float, bulge: float) -> tuple[Step, ...]:
    """A stroke along a part of a curve, ``bulge`` mm wide to one side in its body, pointed at both ends."""
    p0, p1, p2, p3 = _part(curve, start, end)
    return (
        ("M", *p0),
        ("C", *p1, *p2, *p3),
        ("C", p2[0] + bulge * 0.8, p2[1], p1[0] + bulge, p1[1], *p0),
        ("Z",),
    )
