"""The ground of a plan: the wall cut through, its openings and what stands before it, seen from above."""

from __future__ import annotations

from typing import Literal

from elevation.room.corners import SIDES, Side
from elevation.setting_out.model import ObstacleOut, OpeningOut, SetOut
from elevation.sheet import inks
from elevation.sheet.paths import polygon
from elevation.sheet.plan_frame import SASH_MM, Frame, angle_at, outer_corner, wall_records
from elevation.sheet.plan_leaves import SWING, swing_records
from elevation.sheet.records import NARROW, Fill, Ink, Line, Pen, Polyline, Record, Text
from elevation.words import Style, msg, say

Align = Literal["left", "middle", "right"]

LABEL = 2.5
"""Type size, paper mm."""

_IN_WALL = 0.9
"""How many times its type size a wall is drawn thick where an angle is written in it."""
_BESIDE = 3.0

_LEFT: Align = "left"
_MIDDLE: Align = "middle"
_RIGHT: Align = "right"

_CASING_MM = 18.0
_THIN = Pen(Ink.THIN, NARROW)
_FINE = Pen(inks.FINE_LINE, 0.18)
_GHOST = Pen(Ink.GHOST, NARROW, (2.0, 1.0))


def ground_records(
    set_out: SetOut,
    frame: Frame,
    style: Style,
    mm_per_paper: float,
    stubs: tuple[Side, ...] = SIDES,
    angles: tuple[Side, ...] = SIDES,
    *,
    is_titled: bool = True,
) -> tuple[Record, ...]:
    """The wall cut through, its openings with what turns in them, what stands before it, and the corners' angles.

    Parameters
    ----------
    set_out : SetOut
    frame : Frame
    style : Style
    mm_per_paper : float
    stubs : tuple of str
        The sides at which the beginning of the neighbour wall is drawn; at the others it is drawn whole, by itself.
    angles : tuple of str
        The corners whose angles are written.
    is_titled : bool
        With its caption.
    """
    records: list[Record] = list(wall_records(set_out, frame, stubs))
    for opening in set_out.openings:
        records += opening_records(opening, frame)
    for obstacle in set_out.obstacles:
        records += _obstacle(obstacle, frame)
    for side in SIDES:
        angle = angle_at(set_out, side)
        if angle is None or side not in angles:
            continue
        corner = 0.0 if side == "left" else set_out.width_mm
        # The angle is written in the wall itself, where the two are joined: before it hang rod and cloth.
        x, z = outer_corner(frame, side, angle)
        place, align = (corner + x) / 2, _MIDDLE
        if angle_room(frame, mm_per_paper):
            # A wall drawn thinner than that has no room for it: it stands outside, where the wall would run on.
            off = 0.5 * LABEL * mm_per_paper
            place, align = (min(x, 0.0) - off, _RIGHT) if side == "left" else (max(x, corner) + off, _LEFT)
        at = frame.at(place, z / 2)
        text = say(msg("{angle}°", angle=round(angle, 2)), style)
        records.append(Text((at[0], at[1] - LABEL * 0.36 * mm_per_paper), text, LABEL, Ink.TEXT, align))
    if not is_titled:
        return tuple(records)
    above = frame.top_mm + 1.6 * mm_per_paper
    records.append(Text((0.0, above), say(msg("Plan, seen from above"), style), LABEL, Ink.QUIET))
    return tuple(records)


def angle_room(frame: Frame, mm_per_paper: float) -> float:
    """How much an angle takes beyond the outer corner, wall mm; 0 where it is written in the wall."""
    return _BESIDE * LABEL * mm_per_paper if frame.thick_mm < _IN_WALL * LABEL * mm_per_paper else 0.0


def opening_records(opening: OpeningOut, frame: Frame) -> list[Record]:
    """Casing, stool, sash and glass of an opening, and the way of what turns into the room."""
    reveal, left, right = opening.reveal_mm, opening.left_mm, opening.right_mm
    back = 0.35 * frame.thick_mm if reveal is None else reveal
    sash = frame.all(((left, -back), (right, -back), (right, -back - SASH_MM), (left, -back - SASH_MM)))
    pen = _GHOST if reveal is None else _THIN
    glass = frame.y0 + back + SASH_MM / 2
    records: list[Record] = [
        Fill(polygon(sash), inks.FRAME),
        Polyline(sash, pen, True),
        Line((left, glass), (right, glass), _FINE),
        Line(frame.at(left, 0.0), frame.at(right, 0.0), _FINE),
    ]
    if opening.casing_mm > 0:
        for a, b in ((left - opening.casing_mm, left), (right, right + opening.casing_mm)):
            outline = frame.all(((a, 0.0), (b, 0.0), (b, _CASING_MM), (a, _CASING_MM)))
            records += [Fill(polygon(outline), Ink.TRIM), Polyline(outline, _FINE, True)]
    if opening.stool is not None and opening.stool[2] > 0:
        _, horn, out = opening.stool
        wide = opening.casing_mm + horn
        outline = frame.all(((left - wide, 0.0), (right + wide, 0.0), (right + wide, out), (left - wide, out)))
        records += [Fill(polygon(outline), Ink.TRIM), Polyline(outline, _FINE, True)]
    records += swing_records(opening, frame, back)
    return records


def _obstacle(obstacle: ObstacleOut, frame: Frame) -> list[Record]:
    if obstacle.out_mm <= 0:
        return []
    deep = min(obstacle.out_mm, frame.depth_mm)
    left, right = obstacle.left_mm, obstacle.right_mm
    outline = frame.all(((left, 0.0), (right, 0.0), (right, deep), (left, deep)))
    if obstacle.kind == "door-swing":
        return [Polyline(outline, SWING, True)]
    records: list[Record] = [Fill(polygon(outline), inks.ENAMEL), Polyline(outline, _THIN, True)]
    if obstacle.kind == "hot-water-radiator":
        # Its fins, as a plan shows them.
        count = max(2, round((right - left) / 60.0))
        for number in range(1, count):
            at = left + (right - left) * number / count
            records.append(Line(frame.at(at, deep * 0.3), frame.at(at, deep), _FINE))
    return records
