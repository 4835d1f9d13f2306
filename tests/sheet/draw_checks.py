"""What every test of the drawing asks of groups: where they reach, and whether every output can replay them."""

from __future__ import annotations

import math
from itertools import pairwise

from elevation.sheet import inks
from elevation.sheet.records import LAYERS, Fill, Gradient, Line, Path, Polyline
from tests.sheet.test_draw_paths import flattened

SASHES = ("fixed", "double-hung", "sliding", "casement-in", "casement-out", "tilt-in", "swing-in", "swing-out")
SHADOW_MM = 60.0


def points_of(record):
    match record:
        case Line():
            return [record.a, record.b]
        case Polyline():
            return list(record.points)
        case _:
            return flattened(record.steps, 8)


def extent(groups):
    points = [point for group in groups for record in group.records for point in points_of(record)]
    xs, ys = [float(x) for x, _ in points], [float(y) for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def is_dashed(record):
    return isinstance(record, Path | Polyline | Line) and bool(record.pen.dash)


def check_grammar(groups):
    """Every record can be replayed: finite numbers, paths that begin, gradients in order, colours that exist."""
    sizes = {"M": 3, "L": 3, "C": 7, "Z": 1}
    for group in groups:
        assert group.layer in LAYERS
        assert group.title
        assert group.ref
        assert group.records
        for record in group.records:
            assert all(math.isfinite(x) and math.isfinite(y) for x, y in points_of(record))
            if isinstance(record, Fill | Path):
                assert record.steps[0][0] == "M"
                assert all(len(step) == sizes[step[0]] for step in record.steps)
                assert all(b[0] == "M" for a, b in pairwise(record.steps) if a[0] == "Z")
            if isinstance(record, Fill):
                if isinstance(record.paint, Gradient):
                    stops = record.paint.stops
                    assert record.paint.a != record.paint.b
                    assert all(0.0 <= stop.at <= 1.0 + 1e-9 for stop in stops)
                    assert all(a.at < b.at for a, b in pairwise(stops))
                    # One clearness a gradient: Qt's PDF engine paints a gradient of several as solid (seen in its output).
                    assert len({inks.parts(stop.colour)[3] for stop in stops}) == 1
                else:
                    assert inks.parts(record.paint)
            else:
                assert inks.parts(record.pen.ink)
