"""What likely stands or runs inside the wall, drawn faintly: framing and lintels dashed, cables and pipes as a tint.

Dashed means likely: to be confirmed with a probe. What was found is drawn with a whole line. Where a tint ends nothing is
promised.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from elevation.setting_out.model import BandOut, Point, SetOut, ZoneOut
from elevation.sheet import inks
from elevation.sheet.paths import rectangle
from elevation.sheet.records import NARROW, Fill, Group, Ink, Line, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import text_width
from elevation.words import Message, Style, msg, say

HEIGHT = 2.2
"""Type size of the labels, paper mm: the smallest that is still read at arm's length."""

_DASH = (1.6, 1.0)
_LIKELY = Pen(Ink.GHOST, 0.18, _DASH)
_FOUND = Pen(Ink.HELD, NARROW)
_WOOD = inks.with_alpha(inks.WOOD_DARK, 0.16)
_SOUND = inks.with_alpha(inks.WOOD_DARK, 0.38)
_HARD = inks.with_alpha(Ink.GHOST, 0.12)
_OFF = inks.with_alpha(Ink.ACCENT, 0.07)
_CABLE = inks.with_alpha(Ink.ACCENT, 0.10)
_PIPE = inks.with_alpha(Ink.HELD, 0.12)
_CABLE_EDGE = Pen(inks.with_alpha(Ink.ACCENT, 0.55), 0.13, (0.8, 0.8))
_PIPE_EDGE = Pen(inks.with_alpha(Ink.HELD, 0.55), 0.13, (0.8, 0.8))
_PARTS = (0.22, 0.4, 0.58, 0.74)  # of the wall's height: where a label's middle may stand
_LYING = frozenset({"header", "lintel", "shutter-box"})

_Box = tuple[float, float, float, float]


def zone_group(set_out: SetOut, style: Style, mm_per_paper: float, covered: Sequence[_Box] = ()) -> Group:
    """Framing, lintels and edges to keep off, with their labels.

    Parameters
    ----------
    set_out : SetOut
    style : Style
        How labels are said.
    mm_per_paper : float
        Wall mm for one paper mm: labels stand where they fit.
    covered : sequence of (left, bottom, right, top)
        Cloth and other things that labels keep clear of, besides openings and obstacles.

    Returns
    -------
    Group
        Layer ``zone``, wall coordinates.
    """
    records: list[Record] = []
    for zone in set_out.zones:
        records.extend(_zone(zone))
    records.extend(_labels(set_out, style, mm_per_paper, covered))
    return Group((set_out.wall,), "zone", say(msg("Likely inside the wall: probe to confirm"), style), tuple(records))


def band_group(set_out: SetOut, style: Style) -> Group:
    """The bands in which cables and pipes likely run; layer ``band``."""
    records: list[Record] = []
    for band in set_out.bands:
        records.extend(_band(band))
    title = say(msg("Cables and pipes likely run here: detect first, also elsewhere"), style)
    return Group((set_out.wall,), "band", title, tuple(records))


def _zone(zone: ZoneOut) -> Iterator[Record]:
    left, bottom, right, top = zone.left_mm, zone.bottom_mm, zone.right_mm, zone.top_mm
    corners = ((left, bottom), (right, bottom), (right, top), (left, top))
    if zone.is_found:
        yield Fill(rectangle(left, bottom, right, top), _SOUND)
        yield Polyline(corners, _FOUND, closed=True)
        middle = (left + right) / 2
        yield Line((middle, bottom), (middle, top), Pen(Ink.HELD, 0.13, (6.0, 1.0, 1.0, 1.0)))
        return
    fill = {"lintel": _HARD, "keep-off": _OFF, "shutter-box": _OFF}.get(zone.kind, _WOOD)
    yield Fill(rectangle(left, bottom, right, top), fill)
    yield Polyline(corners, _LIKELY, closed=True)


def _band(band: BandOut) -> Iterator[Record]:
    fill, edge = (_PIPE, _PIPE_EDGE) if band.kind == "pipe" else (_CABLE, _CABLE_EDGE)
    left, bottom, right, top = band.left_mm, band.bottom_mm, band.right_mm, band.top_mm
    yield Fill(rectangle(left, bottom, right, top), fill)
    if band.is_upright:
        yield Line((left, bottom), (left, top), edge)
        yield Line((right, bottom), (right, top), edge)
    else:
        yield Line((left, bottom), (right, bottom), edge)
        yield Line((left, top), (right, top), edge)


def _labels(set_out: SetOut, style: Style, scale: float, covered: Sequence[_Box]) -> Iterator[Record]:
    """One label of each kind: along headers and lintels where they are free, else upright beside the zone."""
    taken = [
        (opening.left_mm - opening.casing_mm, opening.bottom_mm - opening.apron_mm, opening.right_mm + opening.casing_mm,
         opening.casing_top_mm)
        for opening in set_out.openings
    ]  # fmt: skip
    taken += covered
    taken += [(one.left_mm, one.bottom_mm, one.right_mm, one.top_mm) for one in set_out.obstacles]
    low, high = min(y for _, y in set_out.floor.points), max(y for _, y in set_out.ceiling.points)
    said: set[str] = set()
    for zone in _in_order(set_out.zones):
        kind = "found" if zone.is_found else zone.kind
        words = _WORDS.get(kind)
        if words is None or kind in said:
            continue
        text = say(words, style)
        size, long = HEIGHT * scale, text_width(text, HEIGHT) * scale
        for label in _along(zone, size, long, taken) if kind in _LYING else _upright(zone, size, long, low, high, taken):
            said.add(kind)
            yield Text(label[0], text, HEIGHT, Ink.QUIET, "middle", label[1])
            break


def _along(zone: ZoneOut, size: float, long: float, taken: Sequence[_Box]) -> Iterator[tuple[Point, float]]:
    """A place inside a lying zone, over the casing that hides its lower part."""
    middle = (zone.left_mm + zone.right_mm) / 2
    hidden = [box[3] for box in taken if box[0] < middle < box[2] and box[1] < zone.top_mm]
    foot = max([zone.bottom_mm, *hidden])
    if long < zone.right_mm - zone.left_mm and size < zone.top_mm - foot:
        yield (middle, (foot + zone.top_mm) / 2 - 0.35 * size), 0.0


def _upright(
    zone: ZoneOut, size: float, long: float, low: float, high: float, taken: Sequence[_Box]
) -> Iterator[tuple[Point, float]]:
    """Places beside an upright zone where nothing else is drawn, low ones first."""
    x = zone.left_mm - 0.4 * size
    for part in _PARTS:
        y = low + (high - low) * part
        box = (x - size, y - long / 2, x + 0.3 * size, y + long / 2)
        is_inside = box[0] > 0.0 and zone.bottom_mm < box[1] and box[3] < zone.top_mm
        if is_inside and not any(a < box[2] and box[0] < c and b < box[3] and box[1] < d for a, b, c, d in taken):
            yield (x, y), 90.0


def _in_order(zones: Iterable[ZoneOut]) -> list[ZoneOut]:
    """What was found first, then the tall before the short: a label wants the longest."""
    return sorted(zones, key=lambda zone: (not zone.is_found, zone.bottom_mm - zone.top_mm, zone.left_mm))


_WORDS: dict[str, Message] = {
    "found": msg("stud found"),
    "stud": msg("likely stud: probe to confirm"),
    "header": msg("likely header: probe to confirm"),
    "lintel": msg("likely lintel of concrete or steel: probe to confirm"),
    "keep-off": msg("too near the edge to drill"),
    "shutter-box": msg("shutter box: probe to confirm"),
}
