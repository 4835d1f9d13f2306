"""What stands before the wall, from the side: heaters, shelves, furniture, fittings; cut or beyond the cut."""

from __future__ import annotations

from elevation.setting_out.model import ObstacleOut
from elevation.sheet import hatch, inks
from elevation.sheet.paths import Step, circle, rectangle, rounded, segment
from elevation.sheet.records import NARROW, Fill, Ink, Path, Pen, Record

_FINE = Pen(inks.FINE_LINE, 0.13)
_CUT = Pen(Ink.OUTLINE, 0.35)
_BEYOND = Pen(Ink.THIN, NARROW)
_PLAIN_MM = 3.0
"""Things that stand out less are drawn at least this thick."""


def obstacle_records(thing: ObstacleOut, *, is_cut: bool) -> list[Record]:
    """One thing as seen from the side; what is cut has a stronger outline."""
    out = max(thing.out_mm, _PLAIN_MM)
    pen = _CUT if is_cut else _BEYOND
    low, high = thing.bottom_mm, thing.top_mm
    if thing.kind == "hot-water-radiator":
        return _radiator(low, high, out, pen)
    if thing.kind == "shelf":
        return _shelf(low, high, out, pen)
    if thing.kind == "furniture":
        body = rectangle(0.0, low, out, high)
        return [Fill(body, inks.WOOD), *_maybe_hatch((0.0, low, out, high), is_cut), Path(body, pen)]
    if thing.kind in ("electric-heater", "fan-heater", "portable-heater", "flame-heater"):
        body = rounded(0.0, low, out, high, min(12.0, out * 0.15))
        slots: list[Step] = []
        for index in range(1, 5):
            y = high - (high - low) * 0.06 * index
            slots.extend(segment(out * 0.2, y, out * 0.85, y))
        return [Fill(body, inks.ENAMEL), Path(tuple(slots), Pen(inks.EMBER, 0.18)), Path(body, pen)]
    if thing.kind == "pipe":
        radius = min(out / 2, (high - low) / 2, 30.0)
        if high - low > 3 * radius:
            tube = rectangle(out - 2 * radius, low, out, high)
        else:
            tube = circle(out - radius, (low + high) / 2, radius)
        return [Fill(tube, inks.ENAMEL_SHADE), Path(tube, pen)]
    body = rounded(0.0, low, out, high, min(4.0, out * 0.3))
    return [Fill(body, inks.PLASTIC), Path(body, pen)]


def _maybe_hatch(box: tuple[float, float, float, float], is_cut: bool) -> list[Record]:
    return [Path(hatch.oblique(box, 70.0), _FINE)] if is_cut else []


def _radiator(low: float, high: float, out: float, pen: Pen) -> list[Record]:
    """Two panels with fins between them, on a bracket at the wall; the projection is its front."""
    deep = out * 0.62
    left = out - deep
    body = rounded(left, low, out, high, min(8.0, deep * 0.2))
    lines: list[Step] = []
    for share in (0.22, 0.78):
        lines.extend(segment(left + deep * share, low, left + deep * share, high))
    pitch = 14.0
    fins: list[Step] = []
    count = max(1, int((high - low) / pitch))
    for index in range(1, count):
        y = low + (high - low) * index / count
        fins.extend(segment(left + deep * 0.22, y, left + deep * 0.78, y))
    arms: list[Step] = []
    for y in (low + (high - low) * 0.15, high - (high - low) * 0.15):
        arms.extend(rectangle(0.0, y - 6.0, left, y + 6.0))
    return [
        Fill(tuple(arms), inks.METAL_LIGHT),
        Path(tuple(arms), _FINE),
        Fill(body, inks.ENAMEL),
        Path(tuple(fins), Pen(inks.ENAMEL_SHADE, 0.13)),
        Path(tuple(lines), _FINE),
        Path(body, pen),
    ]


def _shelf(low: float, high: float, out: float, pen: Pen) -> list[Record]:
    thick = min(30.0, high - low)
    records: list[Record] = []
    if high - low > thick + 10.0:
        brace = (("M", 0.0, low), ("L", 12.0, low), ("L", out * 0.8, high - thick), ("L", 0.0, high - thick), ("Z",))
        records += [Fill(brace, inks.WOOD_DARK), Path(brace, _FINE)]
    board = rectangle(0.0, high - thick, out, high)
    return [*records, Fill(board, inks.WOOD), Path(board, pen)]
