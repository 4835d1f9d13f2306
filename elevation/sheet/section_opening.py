"""The opening in section: frame and sash with glass, stool, apron, casing, and how far what moves comes into the room."""

from __future__ import annotations

import math

from elevation.setting_out.model import OpeningOut
from elevation.sheet import inks
from elevation.sheet.draw_face import GHOST_DASH
from elevation.sheet.paths import Step, arc, rectangle, rounded, segment
from elevation.sheet.records import NARROW, Fill, Ink, Path, Pen, Record
from elevation.sheet.section_cut import Cut

_NARROW = Pen(Ink.OUTLINE, NARROW)
_GHOST = Pen(Ink.GHOST, NARROW, GHOST_DASH)
_SWING = Pen(Ink.THIN, 0.18, (2.4, 1.2))
_GLASS = Pen(Ink.OUTLINE, 0.18)
_PANE_MM = 4.0
_UNIT_MM = 20.0
"""Two panes and the gap between them; from memory."""
_RAIL_MM = 42.0
_TURNS = frozenset({"casement-in", "swing-in"})


def opening_records(cut: Cut) -> list[Record]:
    """Everything of the opening that is cut, in the order it is laid down; nothing where none is."""
    opening = cut.opening
    if opening is None:
        return []
    records: list[Record] = [*_behind(cut, opening), *_sashes(cut, opening), *_stool(cut, opening), *_casing(cut, opening)]
    records.extend(_handle(cut, opening))
    records.extend(_swing(cut, opening))
    return records


def _behind(cut: Cut, opening: OpeningOut) -> list[Record]:
    """The jamb beyond the cut, and the sill outside the sash."""
    reveal = rectangle(cut.sash_mm, opening.bottom_mm, 0.0, cut.head_mm)
    outside = rectangle(-cut.thick_mm, opening.bottom_mm, cut.sash_mm, cut.head_mm)
    return [
        Fill(outside, inks.SKY_LOW),
        Fill(reveal, inks.FRAME),
        Path(segment(0.0, opening.bottom_mm, 0.0, cut.head_mm), _GLASS),
    ]


def _sashes(cut: Cut, opening: OpeningOut) -> list[Record]:
    deep, face = cut.stock.sash_mm, cut.sash_mm
    low, high = opening.bottom_mm, cut.head_mm
    pen = _NARROW if opening.reveal_mm is not None else _GHOST
    rail = min(max(opening.frame_mm, 0.0) or _RAIL_MM, (high - low) / 4)
    if opening.kind == "door" and opening.frame_mm <= 0:
        leaf = rectangle(face - deep, low, face, high)
        return [Fill(leaf, inks.WOOD), Path(leaf, pen)]
    if opening.sash == "double-hung":
        middle = (low + high) / 2
        half = min(_RAIL_MM, rail) / 2
        lower = _sash(face, deep / 2, low, middle + half, rail, 2 * half, pen)
        upper = _sash(face - deep / 2, deep / 2, middle - half, high, 2 * half, rail, pen)
        return [*upper, *lower]
    if opening.sash == "sliding":
        # One leaf stands behind the other: beyond the cut its edge shows.
        back = _sash(face - deep / 2, deep / 2, low, high, rail, rail, _GLASS)
        return [*back, *_sash(face, deep / 2, low, high, rail, rail, pen)]
    return _sash(face, deep, low, high, rail, rail, pen)


def _sash(face: float, deep: float, low: float, high: float, foot: float, head: float, pen: Pen) -> list[Record]:
    """One sash: bottom and top rail, the glass between them."""
    bottom, top = rectangle(face - deep, low, face, low + foot), rectangle(face - deep, high - head, face, high)
    unit = min(_UNIT_MM, deep * 0.6)
    middle = face - deep / 2
    pane = min(_PANE_MM, unit / 3)
    panes: list[Step] = []
    for z in (middle - unit / 2, middle + unit / 2 - pane):
        panes.extend(rectangle(z, low + foot * 0.7, z + pane, high - head * 0.7))
    return [
        Fill(tuple(panes), Ink.GLASS),
        Path(tuple(panes), _GLASS),
        Fill(bottom, inks.WOOD),
        Fill(top, inks.WOOD),
        Path((*bottom, *top), pen),
    ]


def _stool(cut: Cut, opening: OpeningOut) -> list[Record]:
    records: list[Record] = []
    thick, _, out = opening.stool if opening.stool is not None else (0.0, 0.0, 0.0)
    if opening.stool is not None and thick > 0:
        board = rounded(cut.sash_mm, opening.bottom_mm - thick, max(out, 0.0), opening.bottom_mm, thick * 0.3)
        records += [Fill(board, inks.WOOD), Path(board, _NARROW)]
    if opening.apron_mm > 0:
        top = opening.bottom_mm - thick
        apron = rectangle(0.0, top - opening.apron_mm, cut.stock.casing_mm, top)
        records += [Fill(apron, Ink.TRIM), Path(apron, _NARROW)]
    return records


def _casing(cut: Cut, opening: OpeningOut) -> list[Record]:
    if opening.casing_mm <= 0:
        return []
    pen = _NARROW if opening.known_casing else _GHOST
    thick = cut.stock.casing_mm
    boxes = [rectangle(0.0, cut.head_mm, thick, cut.casing_top_mm)]
    if opening.kind == "window" and opening.stool is None and opening.apron_mm <= 0:
        boxes.append(rectangle(0.0, opening.bottom_mm - opening.casing_mm, thick, opening.bottom_mm))
    # The casing of the jamb, beyond the cut.
    beyond = rectangle(0.0, opening.bottom_mm, thick, cut.head_mm)
    records: list[Record] = [Fill(beyond, Ink.TRIM), Path(beyond, _GLASS)]
    for box in boxes:
        records += [Fill(box, inks.TRIM_DEEP), Path(box, pen)]
    return records


def _handle(cut: Cut, opening: OpeningOut) -> list[Record]:
    """The handle that stands out from the sash, at the height where a hand finds it."""
    out = opening.handle_out_mm
    if out <= 0:
        if not opening.handle_stands_mm:
            # None was measured.
            return []
        out = cut.sash_mm + opening.handle_stands_mm
    y = (opening.bottom_mm + cut.head_mm) / 2 if opening.kind == "window" else opening.bottom_mm + 1020.0
    neck = rectangle(cut.sash_mm, y - 7.0, out, y + 7.0)
    grip = rounded(out - 12.0, y - 80.0, out, y + 9.0, 5.0)
    return [
        Fill(neck, inks.METAL_LIGHT),
        Path(neck, Pen(inks.METAL_DARK, 0.18)),
        Fill(grip, inks.METAL_LIGHT),
        Path(grip, Pen(inks.METAL_DARK, 0.18)),
    ]


def _swing(cut: Cut, opening: OpeningOut) -> list[Record]:
    """Dashed: where a leaf that turns in, or a sash that tilts in, comes to stand."""
    if not opening.sweep:
        return []
    _, bottom, _, top, out = opening.sweep[0]
    if opening.sash in _TURNS and out > 0:
        return [Path(rectangle(cut.sash_mm, bottom, out, min(top, cut.head_mm)), _SWING)]
    if opening.sash == "tilt-in" and out > cut.sash_mm:
        height = cut.head_mm - bottom
        lean = math.asin(min(1.0, (out - cut.sash_mm) / max(height, 1e-6)))
        tip = (cut.sash_mm + height * math.sin(lean), bottom + height * math.cos(lean))
        leaf = (*segment(cut.sash_mm, bottom, *tip), *_turned(cut.sash_mm, bottom, height, lean))
        return [Path(leaf, _SWING)]
    return []


def _turned(z: float, y: float, height: float, lean: float) -> tuple[Step, ...]:
    start = (math.pi / 2, math.pi / 2 - lean)
    return (("M", z, y + height), *arc(z, y, height, *start))
