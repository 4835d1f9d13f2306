"""The lines of proportion over the wall: thin where they only lie there, strong where a rod stands on one."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.guides import Guide, Reach, guides_of, held_by, reaches_of
from elevation.setting_out.model import Point, SetOut, TreatmentOut
from elevation.sheet.inks import with_alpha
from elevation.sheet.paths import rectangle
from elevation.sheet.records import Fill, Group, Ink, Line, Pen, Record, Text
from elevation.sheet.type_metrics import text_width
from elevation.units.format import set_fraction
from elevation.words import Mm, Style, msg, say

HEIGHT = 2.9
"""Type size, paper mm."""
_PART = Pen(Ink.HELD, 0.2, (2.4, 1.4))
_MIDDLE = Pen(Ink.HELD, 0.2, (6.0, 1.2, 1.0, 1.2))
"""Long and short dashes: a centre line, as ISO 128 draws it."""
_ON = Pen(Ink.HELD, 0.4)
_REACH = Pen(Ink.HELD, 0.25)
_PLATE = with_alpha(Ink.PAPER, 0.86)
_PAST = 2.5
"""How far a level's line runs past what it is level with, paper mm."""
_OVER = 3.2
"""How far over the rod's centre line the reaches are marked, paper mm."""
_TICK = 1.1
_STEPS = {"1/3": 0.8, "1/2": 5.2, "2/3": 9.6}
"""How far right of the rod each share of head to ceiling stands, paper mm."""


def guide_groups(set_out: SetOut, style: Style, mm_per_paper: float) -> tuple[Group, ...]:
    """The lines of a wall in one group, and the reach of each treatment in one of its own.

    Parameters
    ----------
    set_out : SetOut
    style : Style
    mm_per_paper : float
        Wall mm for one paper mm.

    Returns
    -------
    tuple of Group
        Layer ``guide``, wall coordinates.
    """
    half = style.graduation_mm / 2
    records: list[Record] = []
    for guide in guides_of(set_out):
        on = held_by(guide, set_out.treatments, half)
        # What stands there is a line only for what is in line with it.
        if on or guide.kind not in ("level", "edge"):
            records += _line(guide, on, mm_per_paper)
    title = say(msg("Lines of proportion"), style)
    found = [Group((set_out.wall,), "guide", title, tuple(records))]
    found += [
        Group(reach.about, "guide", title, tuple(_reach(reach, style, mm_per_paper))) for reach in reaches_of(set_out, half)
    ]
    return tuple(found)


def _line(guide: Guide, on: Sequence[TreatmentOut], scale: float) -> list[Record]:
    low, high = guide.run
    if guide.kind in ("level", "edge"):
        places = [place for one in on for place in _span(one, guide)]
        low, high = min([low, *places]) - _PAST * scale, max([high, *places]) + _PAST * scale
    pen = _ON if on else _MIDDLE if guide.kind == "middle" else _PART
    records: list[Record] = [Line(_point(guide, low), _point(guide, high), pen)]
    if guide.mark:
        records += _mark(guide, low, high, scale, is_on=bool(on))
    return records


def _span(treatment: TreatmentOut, guide: Guide) -> tuple[float, ...]:
    support = treatment.layers[0].support
    return (support.metal_left_mm, support.metal_right_mm) if guide.axis == "y" else (support.height_mm,)


def _point(guide: Guide, along_mm: float) -> Point:
    return (guide.at_mm, along_mm) if guide.axis == "x" else (along_mm, guide.at_mm)


def _mark(guide: Guide, low: float, high: float, scale: float, *, is_on: bool) -> list[Record]:
    """The share on a plate of paper: near the floor, near the wall's left end, or right of the rod that the line is for."""
    text = set_fraction(*(int(part) for part in guide.mark.split("/")))
    wide, tall = (text_width(text, HEIGHT) + 1.4) * scale, HEIGHT * 1.2 * scale
    if guide.axis == "x":
        x, y = guide.at_mm, low + 3.0 * scale
    elif guide.kind == "gap":
        # Each a step farther out: three marks in a narrow gap would lie on each other.
        x, y = high + wide / 2 + _STEPS[guide.mark] * scale, guide.at_mm
    else:
        x, y = low + wide / 2 + 2.0 * scale, guide.at_mm
    weight = "semibold" if is_on else "regular"
    return [
        Fill(rectangle(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2), _PLATE),
        Text((x, y - 0.34 * HEIGHT * scale), text, HEIGHT, Ink.HELD, "middle", 0.0, weight),  # type: ignore[arg-type]
    ]


def _reach(reach: Reach, style: Style, scale: float) -> list[Record]:
    """Both reaches over the rod: alike they carry the strokes of equal lengths, else the longer one says by how much."""
    y = reach.y_mm + _OVER * scale
    records: list[Record] = []
    lengths = [right - left for left, right in (reach.left, reach.right)]
    for (left, right), length in zip((reach.left, reach.right), lengths, strict=True):
        if right - left <= 2 * _TICK * scale:
            continue
        records.append(Line((left, y), (right, y), _REACH))
        records += [Line((x, y - _TICK * scale), (x, y + _TICK * scale), _REACH) for x in (left, right)]
        middle = (left + right) / 2
        if reach.is_equal:
            records += [
                Line((x - 0.4 * scale, y - _TICK * scale), (x + 0.4 * scale, y + _TICK * scale), _ON)
                for x in (middle - 0.5 * scale, middle + 0.5 * scale)
            ]
        elif length == max(lengths):
            text = say(msg("+{length}", length=Mm(length - min(lengths))), style)
            wide = (text_width(text, HEIGHT) + 1.2) * scale
            low = y + 0.6 * scale
            records += [
                Fill(rectangle(middle - wide / 2, low, middle + wide / 2, low + HEIGHT * 1.2 * scale), _PLATE),
                Text((middle, low + 0.3 * HEIGHT * scale), text, HEIGHT, Ink.HELD, "middle"),
            ]
    return records
