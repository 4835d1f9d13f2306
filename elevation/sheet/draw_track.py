"""Tracks and tension rods: what they look like where a rod would be."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.setting_out.model import Span, SupportOut
from elevation.sheet import inks
from elevation.sheet.paths import Step, rectangle, rounded, segment
from elevation.sheet.records import NARROW, Fill, Gradient, Path, Pen, Record, Stop

_PAD_MM = 12.0


def between(left: float, right: float, hidden: Sequence[Span]) -> list[Span]:
    """The parts of ``left..right`` that no span of ``hidden`` covers, left to right."""
    seen: list[Span] = []
    at = left
    for near, far in sorted(hidden):
        if near > at:
            seen.append((at, min(near, right)))
        at = max(at, far)
        if at >= right:
            break
    if at < right:
        seen.append((at, right))
    return [span for span in seen if span[1] - span[0] > 1e-6]


def track_records(support: SupportOut, hidden: Sequence[Span]) -> list[Record]:
    """A track: a slim box with the lip that its glides run in, and a stop at each end."""
    half = support.diameter_mm / 2
    low, high = support.height_mm - half, support.height_mm + half
    lip = low + support.diameter_mm * 0.28
    box: list[Step] = []
    lines: list[Step] = []
    for near, far in between(support.left_mm, support.right_mm, hidden):
        box.extend(rectangle(near, low, far, high))
        lines.extend(segment(near, low, far, low))
        lines.extend(segment(near, high, far, high))
        lines.extend(segment(near, lip, far, lip))
    light, body, shade, edge = inks.ROD_TONES.get(support.material, inks.ROD_TONES["steel"])
    face = Gradient(
        (0.0, high), (0.0, low), (Stop(0.0, light), Stop(0.62, light), Stop(0.7, body), Stop(0.74, shade), Stop(1.0, body))
    )
    records: list[Record] = []
    if box:
        records += [Fill(tuple(box), face), Path(tuple(lines), Pen(edge, NARROW))]
    stops: list[Step] = []
    for x, tip in ((support.left_mm, support.metal_left_mm), (support.right_mm, support.metal_right_mm)):
        reach = tip if abs(tip - x) > 1e-6 else x
        if not any(near < x < far for near, far in hidden):
            inner = x + (4.0 if x == support.left_mm else -4.0)
            stops.extend(rounded(min(reach, inner), low - 1.0, max(reach, inner), high + 1.0, 1.5))
    if stops:
        records += [Fill(tuple(stops), body), Path(tuple(stops), Pen(edge, NARROW))]
    return records


def tension_records(support: SupportOut, hidden: Sequence[Span], tone: Gradient, pen: Pen) -> list[Record]:
    """What tells a tension rod: rubber pads at the jambs, and the sleeve out of which the thinner tube is pulled."""
    half = support.diameter_mm / 2
    low, high = support.height_mm - half * 1.35, support.height_mm + half * 1.35
    pads: list[Step] = []
    for x, way in ((support.left_mm, 1.0), (support.right_mm, -1.0)):
        if not any(near < x + way * _PAD_MM / 2 < far for near, far in hidden):
            pads.extend(rounded(min(x, x + way * _PAD_MM), low, max(x, x + way * _PAD_MM), high, 2.0))
    middle = support.left_mm + (support.right_mm - support.left_mm) * 0.62
    records: list[Record] = []
    if not any(near < middle < far for near, far in hidden):
        sleeve = rounded(middle - half * 1.6, low, middle + half * 1.6, high, half * 0.3)
        records += [Fill(sleeve, tone), Path(sleeve, pen)]
    if pads:
        records += [Fill(tuple(pads), inks.EMBER), Path(tuple(pads), pen)]
    return records
