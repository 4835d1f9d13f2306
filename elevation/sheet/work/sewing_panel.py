"""Panels drawn flat and to scale: their lines up both edges with the lengths between, seams, pleats, what is cut off."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.planning.piece_names import PanelName
from elevation.planning.sewing.chains import running
from elevation.planning.sewing.model import Alteration, Marks, SewnPanel
from elevation.sheet.paths import circle, polygon, rectangle
from elevation.sheet.records import Fill, Ink, Line, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import shorten, text_width, wrap
from elevation.sheet.work.page import Part
from elevation.sheet.work.parts import BODY, SMALL
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Style, msg, say

HIGHS = (66.0, 56.0, 46.0, 36.0)
"""How high panels are drawn where there is room for it, and where a page would not hold all."""
_SIDE = 19.0
"""Room beside a panel for the lengths up its edge."""
_CLOTH, _TURNED, _OFF = "#e9eef0", "#d8dfe3", "#e8d9d4"
_OUTLINE = Pen(Ink.OUTLINE, 0.5)
_LEADING = Pen(Ink.HELD, 1.1)
_FOLD = Pen(Ink.OUTLINE, 0.35, (3.0, 1.2))
_CUT = Pen(Ink.ACCENT, 0.5, (1.2, 1.2))
_SEAM = Pen(Ink.THIN, 0.25, (0.8, 0.8))
_TICK = Pen(Ink.THIN, 0.25)


class Band(Struct, frozen=True):
    """A stretch up a panel from its top: its length at the left and at the right edge, how it looks, what ends it.

    ``kind``: ``turned`` (folded over at the heading or the hem), ``cloth`` or ``off``; ``end`` is the line under it:
    ``fold``, ``cut`` or empty.
    """

    left_mm: float
    right_mm: float
    kind: str
    end: str = ""


class Flat(Struct, frozen=True):
    """A panel as it is drawn.

    ``seams_mm`` are from its left edge, ``pieces`` the words for what lies between them. ``leading`` is the side of its
    leading edge; empty: it has none. ``titles`` stand under it.
    """

    width_mm: float
    bands: tuple[Band, ...]
    leading: str
    seams_mm: tuple[float, ...] = ()
    pieces: tuple[str, ...] = ()
    marks: Marks | None = None
    titles: tuple[str, ...] = ()


def panel_parts(flats: Sequence[Flat], width: float, style: Style, high: float = HIGHS[0]) -> list[Part]:
    """Panels two and two beside each other, all to one scale.

    Parameters
    ----------
    flats : sequence of Flat
    width : float
        Room on the page.
    style : Style
    high : float
        The tallest is drawn no higher.
    """
    if not flats:
        return []
    half = width if len(flats) == 1 else (width - 4.0) / 2
    tall = max(max(sum(band.left_mm for band in one.bands), sum(band.right_mm for band in one.bands)) for one in flats)
    scale = max(tall / high, max(one.width_mm for one in flats) / (half - 2 * _SIDE))
    parts = []
    for at in range(0, len(flats), 2):
        records: list[Record] = []
        deep = 0.0
        for nth, one in enumerate(flats[at : at + 2]):
            drawn, down = _panel(one, nth * (half + 4.0), half, scale, style)
            records.extend(drawn)
            deep = max(deep, down)
        parts.append(Part(deep + 3.0, tuple(records)))
    return parts


def _panel(one: Flat, left: float, room: float, scale: float, style: Style) -> tuple[list[Record], float]:
    wide = one.width_mm / scale
    x1 = left + (room - wide) / 2
    x2 = x1 + wide
    top = -4.0
    records: list[Record] = []
    down = (top, top)
    lows: list[tuple[float, float]] = [down]
    for band in one.bands:
        low = (down[0] - band.left_mm / scale, down[1] - band.right_mm / scale)
        tint = {"turned": _TURNED, "off": _OFF}.get(band.kind, _CLOTH)
        records.append(Fill(polygon(((x1, low[0]), (x2, low[1]), (x2, down[1]), (x1, down[0]))), tint))
        if band.end:
            records.append(Line((x1, low[0]), (x2, low[1]), _CUT if band.end == "cut" else _FOLD))
        down = low
        lows.append(low)
    records.append(Polyline(((x1, down[0]), (x2, down[1]), (x2, top), (x1, top)), _OUTLINE, True))
    records.extend(_seams(one, x1, wide, scale, lows))
    if one.marks is not None:
        records.extend(_marks(one.marks, one, x1, x2, scale, lows))
    if one.leading:
        leading = x1 if one.leading == "left" else x2
        records.append(Line((leading, min(down)), (leading, top), _LEADING))
        records.extend(_leading_word(one, x1, x2, scale, lows, style))
    lowest = min(down)
    for side, x, nth in (("left", x1, 0), ("right", x2, 1)):
        lengths = [band.left_mm if side == "left" else band.right_mm for band in one.bands]
        chain = _chain(lengths, [low[nth] for low in lows], x, side, style)
        records.extend(chain)
        lowest = min([lowest, *(record.at[1] for record in chain if isinstance(record, Text))])
    below = lowest - 1.6
    for number, title in enumerate(one.titles):
        size, weight = (BODY, "semibold") if number == 0 else (SMALL, "regular")
        for line in wrap(title, size, room, weight):
            text = shorten(line, size, room, weight)
            records.append(
                Text(
                    (left + room / 2, below - size),
                    text,
                    size,
                    Ink.TEXT if number == 0 else Ink.QUIET,
                    "middle",
                    weight="semibold" if number == 0 else "regular",
                )
            )
            below -= size * 1.3
    return records, -below


def _chain(lengths: Sequence[float], places: Sequence[float], x: float, side: str, style: Style) -> list[Record]:
    """The lengths up one edge, brought to the tape so that they add up, with ticks at the lines between them."""
    sums = [0.0]
    for length in lengths:
        sums.append(sums[-1] + length)
    between = running(sums, style.graduation_mm).between_mm
    away = -1.0 if side == "left" else 1.0
    records: list[Record] = [Line((x + away * 0.6, y), (x + away * 2.6, y), _TICK) for y in places]
    middles = [(a + b) / 2 for a, b in pairwise(places)]
    # A band that is lower than its figure lets it stand clear of its neighbour's.
    order = sorted(range(len(middles)), key=lambda at: -lengths[at])
    taken: list[float] = []
    for at in order:
        y = middles[at]
        step = 1.0 if at < len(middles) / 2 else -1.0
        while any(abs(y - other) < BODY * 1.08 for other in taken):
            y += step * 0.4
        taken.append(y)
        if lengths[at] > TOUCH_MM:
            figure = say(msg("{length}", length=Mm(between[at])), style)
            align = "right" if side == "left" else "left"
            records.append(
                Text((x + away * 3.2, y - BODY * 0.35), figure, BODY, align="right" if align == "right" else "left")
            )
    return records


def _seams(one: Flat, x1: float, wide: float, scale: float, lows: Sequence[tuple[float, float]]) -> list[Record]:
    records: list[Record] = []
    top, bottom = lows[0], lows[-1]
    places = [x1 + seam / scale for seam in one.seams_mm]
    for x in places:
        share = (x - x1) / wide
        low = bottom[0] + (bottom[1] - bottom[0]) * share
        records.append(Line((x, low), (x, top[0]), _SEAM))
    edges = [x1, *places, x1 + wide]
    # Below the heading, clear of the words along the edges.
    high = lows[1][0] if len(lows) > 2 else top[0]
    for word, (a, b) in zip(one.pieces, pairwise(edges), strict=False):
        if text_width(word, SMALL) <= b - a - 1.0:
            records.append(Text(((a + b) / 2, high - SMALL * 1.5), word, SMALL, Ink.QUIET, "middle"))
    return records


def _leading_word(
    one: Flat, x1: float, x2: float, scale: float, lows: Sequence[tuple[float, float]], style: Style
) -> list[Record]:
    """The words that name the leading edge and the fixed one, along them, where they fit."""
    records: list[Record] = []
    longest = max(range(len(one.bands)), key=lambda at: one.bands[at].left_mm)
    tall = lows[longest][0] - lows[longest + 1][0]
    middle = lows[longest][0] - tall / 2
    for side, x, inward in (("left", x1, 1.0), ("right", x2, -1.0)):
        word = say(msg("leading edge") if side == one.leading else msg("fixed edge"), style)
        strip = min((abs(x1 + seam / scale - x) for seam in one.seams_mm), default=x2 - x1)
        if text_width(word, SMALL) <= tall - 3.0 and x2 - x1 >= 14.0 and strip >= 2 * SMALL:
            at = x + (SMALL + 0.9 if inward > 0 else -1.7)
            ink = Ink.HELD if side == one.leading else Ink.QUIET
            records.append(Text((at, middle), word, SMALL, ink, "middle", 90.0))
    return records


def _marks(
    marks: Marks, one: Flat, x1: float, x2: float, scale: float, lows: Sequence[tuple[float, float]]
) -> list[Record]:
    """Pleats as dark stretches of the heading, rings and eyelets as circles on its line, tabs and hooks as strokes."""
    top = lows[0][0]
    line = lows[1][0] if one.bands and one.bands[0].kind == "turned" and len(lows) > 2 else top
    records: list[Record] = []

    def x_of(place: float) -> float:
        return x1 + place / scale if one.leading == "left" else x2 - place / scale

    if marks.pleats is not None:
        deep = max(top - line, 2.2)
        for start, end in marks.pleats.marks_mm:
            a, b = sorted((x_of(start), x_of(end)))
            records.append(Fill(rectangle(a, line, b, line + deep), "#b9c3c9"))
    for place in marks.flat:
        x = x_of(place)
        if marks.kind in ("rings", "eyelets"):
            records.append(Fill(circle(x, line, 0.7), Ink.METAL))
        else:
            records.append(Line((x, line - 0.9), (x, line + 0.9), _OUTLINE))
    return records


def made_flat(panel: SewnPanel, seam_mm: float, style: Style) -> Flat:
    """A panel to be made, as it lies hemmed at the sides and not yet turned at heading and hem."""
    leading = "right" if panel.side == "left" else "left"
    bands = (
        Band(panel.heading_mm, panel.heading_mm, "turned", "fold"),
        Band(panel.left.finished_mm, panel.right.finished_mm, "cloth", "fold"),
        Band(panel.left.hem_mm, panel.right.hem_mm, "turned"),
    )
    seams, at = [], 0.0
    for number, piece in enumerate(panel.pieces):
        edges = (panel.side_hem_mm if number == 0 else seam_mm) + (
            panel.side_hem_mm if number == len(panel.pieces) - 1 else seam_mm
        )
        at += piece.width_mm - edges
        seams.append(at)
    whole = seams[-1] if seams else panel.hemmed_mm
    places = [seam / whole * panel.hemmed_mm for seam in seams[:-1]]
    words = [f"{piece.number}" if piece.share != 0.5 else "½" for piece in panel.pieces]
    if leading == "right":
        places = [panel.hemmed_mm - place for place in reversed(places)]
        words.reverse()
    return Flat(
        width_mm=panel.hemmed_mm,
        bands=tuple(band for band in bands if max(band.left_mm, band.right_mm) > TOUCH_MM),
        leading=leading,
        seams_mm=tuple(places),
        pieces=tuple(words) if len(words) > 1 else (),
        marks=panel.marks,
        titles=flat_titles(panel.name, panel.hemmed_mm, panel.finished_mm, Mm(panel.cut_mm), style),
    )


def flat_titles(name: PanelName, flat_mm: float, finished_mm: float, cut: Mm, style: Style) -> tuple[str, ...]:
    """What stands under a piece that is sewn: its mark and name, its widths, its cut."""
    return (
        say(msg("{mark}: {name}", mark=name.mark, name=name.name), style),
        say(
            msg(
                "{flat} wide flat, {finished} finished",
                flat=Mm(flat_mm, about=True),
                finished=Mm(finished_mm, about=True),
            ),
            style,
        ),
        say(msg("{cut} long with heading and hem", cut=cut), style),
    )


def ready_flat(one: Alteration, style: Style) -> Flat:
    """A ready-made panel: what stays, what is turned up, what is cut off."""
    bands: tuple[Band, ...]
    has = one.has_mm or 0.0
    if one.left is not None and one.right is not None and one.what in ("shorten", "turn-up"):
        cut = has if one.cut_mm is None else one.cut_mm
        bands = (
            Band(one.left.finished_mm, one.right.finished_mm, "cloth", "fold"),
            Band(one.left.hem_mm, one.right.hem_mm, "turned", "cut" if has - cut > TOUCH_MM else ""),
            Band(has - cut, has - cut, "off"),
        )
    else:
        bands = (Band(has, has, "cloth"),)
    name = say(msg("{mark}: {name}", mark=one.name.mark, name=one.name.name), style)
    size = msg("{width} wide, {length} long", width=Mm(one.width_mm), length=Mm(has))
    how = {"hung": msg("as it hangs"), "measured": msg("measured")}.get(one.by, msg("by its label"))
    words: Message = msg("{size}, {how}", size=size, how=how)
    if one.count > 1:
        words = msg("{count} pieces, each {size}", count=one.count, size=words)
    return Flat(
        width_mm=one.width_mm,
        bands=tuple(band for band in bands if max(band.left_mm, band.right_mm) > TOUCH_MM),
        leading="right" if one.side == "left" else "left",
        marks=one.marks,
        titles=(name, say(words, style)),
    )
