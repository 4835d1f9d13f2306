"""The sketch on the measuring sheet: a wall not to scale, its measurements numbered where they are taken."""

from __future__ import annotations

import math
from collections.abc import Sequence

from elevation.room.model import Opening, Ref, Wall
from elevation.sheet.furniture import Inside
from elevation.sheet.paths import arc, rectangle
from elevation.sheet.records import NARROW, WIDE, Fill, Ink, Line, Path, Pen, Polyline, Record, Text
from elevation.sheet.tape_order import TapeField
from elevation.sheet.type_metrics import CAP, text_width

_SIZE = 2.5
_HALF = 1.7
_CHAIN = 9.0
_WHOLE = 16.0
_WIDE_PEN = Pen(Ink.OUTLINE, WIDE)
_THIN = Pen(Ink.THIN, NARROW)
_EXTENSION = Pen(Ink.THIN, 0.18)
_STROKE = Pen(Ink.THIN, WIDE)


class _Badges:
    """Framed numbers; each takes the place it is told if that is free of the others, else none: the table has it."""

    def __init__(self, facts: Sequence[TapeField]) -> None:
        self.numbers = {(entry.ref, entry.field): entry.number for entry in facts}
        self.records: list[Record] = []
        self.taken: list[tuple[float, float, float, float]] = []

    def put(self, ref: Ref, field: str, *places: tuple[float, float]) -> None:
        number = self.numbers.get((ref, field))
        if number is None:
            return
        text = str(number)
        half = max(_HALF, text_width(text, _SIZE, "semibold") / 2 + 0.6)
        for x, y in places:
            left, bottom, right, top = x - half, y - _HALF, x + half, y + _HALF
            gap = 0.4
            if any(
                left < other[2] + gap and other[0] < right + gap and bottom < other[3] + gap and other[1] < top + gap
                for other in self.taken
            ):
                continue
            self.taken.append((left, bottom, right, top))
            corners = ((left, bottom), (right, bottom), (right, top), (left, top))
            self.records.append(Fill(rectangle(left, bottom, right, top), Ink.PAPER))
            self.records.append(Polyline(corners, _THIN, True))
            base = y - CAP * _SIZE / 2
            self.records.append(Text((x, base), text, _SIZE, Ink.TEXT, "middle", 0.0, "semibold"))
            return


def sketch(wall: Wall, facts: Sequence[TapeField], place: Inside) -> tuple[Record, ...]:
    """The sketch inside ``place``.

    Parameters
    ----------
    wall : Wall
        Openings stand side by side at equal distances, whatever was measured.
    facts : sequence of TapeField
    place : Inside
    """
    left, right = place.left + 14.0, place.right - 9.0
    bottom, top = place.bottom + _WHOLE + 3.0, place.top - 6.0
    here = (wall.id,)
    badges = _Badges(facts)
    records: list[Record] = [
        Polyline(((left, bottom), (right, bottom), (right, top), (left, top)), _WIDE_PEN, True),
        Line((left, bottom + 2.4), (right, bottom + 2.4), _THIN),
        Line((left, top - 2.0), (right, top - 2.0), _THIN),
        *_across(left, right, bottom - _WHOLE),
        *_upright(bottom, top, left - 7.0),
        Line((left - 1.0, bottom), (left - 8.5, bottom), _EXTENSION),
        Line((left - 1.0, top), (left - 8.5, top), _EXTENSION),
    ]
    badges.put(here, "width", ((left + right) / 2, bottom - _WHOLE))
    _profiles(wall, badges, left, bottom, right, top)
    badges.put(here, "crown", (right + 4.0, top - 1.0))
    badges.put(here, "baseboard", (right + 4.0, bottom + 1.6))
    if wall.openings:
        records.extend(_openings(wall, badges, left, bottom, right, top))
    else:
        records.extend(Line((x, bottom - 1.0), (x, bottom - _WHOLE - 1.5), _EXTENSION) for x in (left, right))
    return (*records, *badges.records)


def _profiles(wall: Wall, badges: _Badges, left: float, bottom: float, right: float, top: float) -> None:
    here = (wall.id,)
    badges.put(here, "ceiling.0.height", (left - 7.0, (bottom + top) / 2))
    # Points of a profile stand where they were asked for: over the ceiling, under the floor.
    last = max(1, len(wall.ceiling) - 1)
    for index in range(len(wall.ceiling)) if len(wall.ceiling) > 1 else ():
        x = left + (right - left) * index / last
        badges.put(here, f"ceiling.{index}.x", (x, top + 3.0))
        if index > 0:
            badges.put(here, f"ceiling.{index}.height", (x + 5.5, top + 3.0), (x - 5.5, top + 3.0))
    last = max(1, len(wall.floor) - 1)
    for index in range(len(wall.floor)):
        x = left + (right - left) * index / last
        badges.put(here, f"floor.{index}.x", (x, bottom - 3.0), (x + 4.0, bottom - 3.0))
        badges.put(here, f"floor.{index}.height", (x + 5.5, bottom - 3.0), (x - 5.5, bottom - 3.0))


def _across(low: float, high: float, y: float) -> list[Record]:
    strokes = (Line((x - 0.9, y - 0.9), (x + 0.9, y + 0.9), _STROKE) for x in (low, high))
    return [Line((low, y), (high, y), _THIN), *strokes]


def _upright(low: float, high: float, x: float) -> list[Record]:
    strokes = (Line((x - 0.9, y + 0.9), (x + 0.9, y - 0.9), _STROKE) for y in (low, high))
    return [Line((x, low), (x, high), _THIN), *strokes]


def _openings(wall: Wall, badges: _Badges, left: float, bottom: float, right: float, top: float) -> list[Record]:
    step = (right - left) / len(wall.openings)
    casing = min(2.6, step * 0.06)
    chain = bottom - _CHAIN
    records: list[Record] = []
    ends = [left]
    for index, opening in enumerate(wall.openings):
        low_x, high_x = left + step * (index + 0.3), left + step * (index + 0.78)
        sill = bottom if opening.kind != "window" else bottom + (top - bottom) * 0.3
        head = bottom + (top - bottom) * 0.78
        records.extend(_opening(opening, low_x, sill, high_x, head, casing))
        before = ends[-1]
        ends.extend((low_x - casing, low_x, high_x, high_x + casing))
        ref = (wall.id, opening.id)
        middle = (low_x + high_x) / 2
        gap = (before + low_x - casing) / 2
        badges.put(ref, "gap", (gap, chain))
        badges.put(ref, "left", (gap, chain))
        badges.put(ref, "width", (middle, chain))
        badges.put(ref, "casing", (low_x - casing / 2, chain + 4.2))
        badges.put(ref, "sill", (middle, (bottom + sill) / 2))
        badges.put(ref, "height", (middle, (sill + head) / 2))
        badges.put(ref, "head.rise", (middle, head - 3.0))
        badges.put(ref, "head.right_height", (high_x - 2.5, (sill + head) / 2 - 5.0))
        badges.put(ref, "frame", (low_x + 2.6, head - 7.5))
        badges.put(ref, "reveal", (high_x - 2.6, head - 7.5))
        badges.put(ref, "sash.handle_out", (middle, (sill + head) / 2 - 5.0))
        badges.put(ref, "sash.handle_stands", (middle, (sill + head) / 2 - 10.0))
        badges.put(ref, "stool.thickness", (low_x - casing - 4.0, sill))
        badges.put(ref, "stool.horn", (high_x + casing + 4.0, sill))
        badges.put(ref, "stool.projection", (low_x + 0.5, sill - 4.4))
        badges.put(ref, "apron", (high_x - 0.5, sill - 4.4))
        records.append(Text((middle, head + casing + 1.4), str(index + 1), 3.3, Ink.QUIET, "middle", 0.0, "semibold"))
    ends.append(right)
    badges.put((wall.id,), "gap_right", ((ends[-2] + right) / 2, chain))
    records.append(Line((left, chain), (right, chain), _THIN))
    for x in ends:
        far = bottom - _WHOLE - 1.5 if x in (left, right) else chain - 1.5
        records.append(Line((x, bottom - 1.0), (x, far), _EXTENSION))
        records.append(Line((x - 0.8, chain - 0.8), (x + 0.8, chain + 0.8), _STROKE))
    return records


def _opening(opening: Opening, left: float, low: float, right: float, top: float, casing: float) -> list[Record]:
    records: list[Record] = []
    for grow, pen in ((casing, _THIN), (0.0, _WIDE_PEN)):
        a, b, head = left - grow, right + grow, top + grow
        if opening.head.kind in ("half-round", "segmental"):
            rise = (b - a) / 2 if opening.head.kind == "half-round" else (b - a) / 5
            records.append(Path(_arched(a, low, b, head, min(rise, (head - low) * 0.6)), pen))
        elif opening.head.kind == "raked":
            records.append(Polyline(((a, low), (a, head), (b, head - (head - low) * 0.25), (b, low)), pen))
        else:
            records.append(Polyline(((a, low), (a, head), (b, head), (b, low)), pen))
    if opening.kind == "window":
        horn = casing + 1.2
        corners = ((left - horn, low), (right + horn, low), (right + horn, low - 1.0), (left - horn, low - 1.0))
        records.append(Polyline(corners, _THIN, True))
    return records


def _arched(left: float, low: float, right: float, top: float, rise: float) -> tuple[tuple[str | float, ...], ...]:
    half = (right - left) / 2
    radius = (half * half + rise * rise) / (2 * rise)
    centre_y = top - radius
    turn = math.atan2(top - rise - centre_y, half)
    return (
        ("M", left, low),
        ("L", left, top - rise),
        *arc(left + half, centre_y, radius, math.pi - turn, turn),
        ("L", right, low),
    )
