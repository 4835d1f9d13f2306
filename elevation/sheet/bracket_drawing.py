"""A bracket kit drawn by its figures: from the front with its screws, and from the side with the rod in it."""

from __future__ import annotations

import math

from elevation.sheet import inks
from elevation.sheet.paths import arc, circle, polygon, rectangle, segment
from elevation.sheet.records import NARROW, Fill, Group, Ink, Path, Pen, Record
from elevation.trade.model import BracketRow

ROD_MM = 25.0
OUT_MM = 89.0
"""The rod that a kit is drawn with, and its projection where the kit is made to any."""
_PLATE_MM = 3.175
_METAL = Pen(inks.METAL_DARK, NARROW)
_CENTRE = Pen(Ink.THIN, 0.18, (3.0, 0.7, 0.5, 0.7))
_HOLE_MM = 5.0
_APART_MM = 45.0
_RING_MM = 19.0
"""Radius of the ring that is drawn on the rod where rings pass the bracket."""


def bracket_group(row: BracketRow) -> Group:
    """Both views in one group; the rod's axis is at height 0, the front view at the left of 0, the side view from 0 on."""
    records = _under_ceiling(row) if row.mount == "ceiling" else [*_front(row), *_side(row)]
    return Group((row.id,), "bracket", row.name, tuple(records))


def extent(row: BracketRow) -> tuple[float, float, float, float]:
    """Left, bottom, right, top of both views, mm."""
    half = row.plate_width_mm / 2
    if row.mount == "ceiling":
        return -half - ROD_MM, -ROD_MM, half + ROD_MM, row.drop_mm + 12.0
    left = -_APART_MM - 2 * max(half, ROD_MM) - 10.0
    bottom = min(-row.plate_below_mm, -2 * _RING_MM if row.rings_pass else 0.0)
    return left, bottom - 12.0, _out(row) + ROD_MM, row.plate_above_mm + 12.0


def _out(row: BracketRow) -> float:
    return row.out_mm if row.out_mm > 0 else OUT_MM


def _front(row: BracketRow) -> list[Record]:
    x = -_APART_MM - max(row.plate_width_mm / 2, ROD_MM)
    half = row.plate_width_mm / 2
    plate = rectangle(x - half, -row.plate_below_mm, x + half, row.plate_above_mm)
    width = rectangle(x - row.width_mm / 2, -ROD_MM / 2 - 3.0, x + row.width_mm / 2, ROD_MM / 2 + 3.0)
    records: list[Record] = [Fill(plate, inks.METAL_LIGHT), Path(plate, _METAL)]
    for height in row.holes_mm:
        hole = circle(x, height, _HOLE_MM / 2)
        cross = (*segment(x - 6.0, height, x + 6.0, height), *segment(x, height - 6.0, x, height + 6.0))
        records += [Fill(hole, Ink.PAPER), Path(hole, _METAL), Path(cross, Pen(Ink.THIN, 0.13))]
    axis = segment(x - half - 8.0, 0.0, x + half + 8.0, 0.0)
    return [*records, Fill(width, inks.METAL_MIDDLE), Path(width, _METAL), Path(axis, _CENTRE)]


def _side(row: BracketRow) -> list[Record]:
    radius = ROD_MM / 2
    plate = rectangle(0.0, -row.plate_below_mm, _PLATE_MM, row.plate_above_mm)
    deep = row.arm_deep_mm if row.arm_deep_mm > 0 else 8.0
    under = -radius - 2.0
    foot = max(-row.plate_below_mm + deep, under - 20.0)
    out = _out(row)
    arm = polygon(((_PLATE_MM, foot), (_PLATE_MM, foot - deep), (out, under - deep), (out, under)))
    return [
        Fill(arm, inks.METAL_LIGHT),
        Path(arm, _METAL),
        Fill(plate, inks.METAL_MIDDLE),
        Path(plate, _METAL),
        *_rod(out, row),
    ]


def _rod(x: float, row: BracketRow) -> list[Record]:
    radius = ROD_MM / 2
    reach = radius + 2.2
    start, end = (math.pi * 1.05, math.pi * 1.95) if not row.holds_down else (math.pi * 0.5, math.pi * 2.5)
    disc = circle(x, 0.0, radius)
    ring: tuple[Record, ...] = ()
    if row.rings_pass:
        # An open ring over the rod: its gap lets the arm through.
        gap = math.radians(40)
        middle = ROD_MM / 2 + 1.5 - _RING_MM
        low, high = -math.pi / 2 + gap, 3 * math.pi / 2 - gap
        first = ("M", x + _RING_MM * math.cos(low), middle + _RING_MM * math.sin(low))
        ring = (Path((first, *arc(x, middle, _RING_MM, low, high)), Pen(inks.METAL_DARK, 0.5)),)
    steps = (("M", x + reach * math.cos(start), reach * math.sin(start)), *arc(x, 0.0, reach, start, end))
    axes = (*segment(x - radius - 8.0, 0.0, x + radius + 8.0, 0.0), *segment(x, -radius - 8.0, x, radius + 8.0))
    return [
        Fill(disc, inks.SECTION_BODY),
        Path(disc, _METAL),
        Path(steps, Pen(inks.METAL_MIDDLE, 0.7)),
        Path(axes, _CENTRE),
        *ring,
    ]


def _under_ceiling(row: BracketRow) -> list[Record]:
    half, top = row.plate_width_mm / 2, row.drop_mm
    plate, stem = rectangle(-half, top - _PLATE_MM, half, top), rectangle(-4.0, 0.0, 4.0, top - _PLATE_MM)
    ceiling = segment(-half - ROD_MM, top, half + ROD_MM, top)
    records: list[Record] = [
        Fill(stem, inks.METAL_LIGHT),
        Path(stem, _METAL),
        Fill(plate, inks.METAL_MIDDLE),
        Path(plate, _METAL),
    ]
    low, high = top - _PLATE_MM - 4.0, top + 8.0
    records.extend(Path(segment(place, low, place, high), _CENTRE) for place in row.holes_mm)
    return [*records, Path(ceiling, Pen(Ink.OUTLINE, 0.5)), *_rod(0.0, row)]
