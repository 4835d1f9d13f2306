"""The inside angle of a corner, as a tape finds it: so far along both walls from the corner, and across from mark to mark.

The figure is the distance across. Where a round angle lies within half a graduation of it, that angle is taken: nobody can
tell the two apart with a tape.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import acos, cos, degrees, radians, sin, sqrt

from elevation.findings.model import Sticking
from elevation.findings.naming import side_name
from elevation.handles.context import Context, Family
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR
from elevation.room.corners import SIDES, Side
from elevation.room.joining import put_angle
from elevation.room.model import Room
from elevation.units import Length
from elevation.words import Mm, msg

AXES = {"left": "corner-left", "right": "corner-right"}
LEAST, MOST = 30.0, 175.0
"""Between these angles, in degrees, a corner can be dragged; others are typed."""

_ROUND = (45.0, 15.0, 5.0, 1.0, 0.5)
_STICK = (90.0, 120.0, 135.0, 150.0)


def along_mm(unit: str) -> float:
    """How far along both walls the marks are made: 12 in, or 300 mm."""
    return 304.8 if unit == "in" else 300.0


def across_of(angle: float, along: float) -> float:
    """The distance across from mark to mark, for an inside angle in degrees."""
    return 2 * along * sin(radians(angle / 2))


def angle_of(across: float, along: float, slack: float) -> float:
    """The inside angle in degrees for a distance across; the roundest one within ``slack`` of it."""
    exact = degrees(2 * _asin(across / (2 * along)))
    for step in _ROUND:
        near = round(exact / step) * step
        if near > 0 and abs(across_of(near, along) - across) <= slack:
            return near
    return round(exact, 2)


def _asin(part: float) -> float:
    part = min(max(part, 0.0), 1.0)
    return acos(sqrt(1 - part * part))


def _handles(context: Context) -> Iterable[Handle]:
    for number, side in enumerate(SIDES):
        angle = context.set_out.angles[number]
        if context.set_out.ends[number] == "corner" and LEAST <= angle <= MOST:
            yield _handle(context, side, angle)


def _handle(context: Context, side: Side, angle: float) -> Handle:
    room, wall_id = context.room, context.wall.id
    along, slack = along_mm(room.unit), room.graduation_mm / 2
    corner = 0.0 if side == "left" else context.set_out.width_mm
    sign = 1.0 if side == "left" else -1.0

    def x_of(degree: float) -> float:
        return corner + sign * along * cos(radians(degree))

    def shown_mm(value_mm: float) -> float:
        part = min(max((value_mm - corner) * sign / along, -1.0), 1.0)
        return 2 * along * sqrt((1 - part) / 2)

    def from_shown(across_mm: float) -> float:
        return corner + sign * along * (1 - across_mm * across_mm / (2 * along * along))

    def hold(room: Room, figure: Length, _alone: bool) -> Room:
        return put_angle(room, wall_id, side, angle_of(figure.mm, along, slack))

    def move(room: Room, value_mm: float, _alone: bool) -> Room:
        return put_angle(room, wall_id, side, angle_of(shown_mm(value_mm), along, slack))

    ends = sorted((x_of(LEAST), x_of(MOST)))
    whys = (msg("as blunt as a corner is dragged"), msg("as sharp as a corner is dragged"))
    whys = whys if side == "left" else whys[::-1]
    return Handle(
        AXES[side],
        (wall_id,),
        (x_of(angle), sin(radians(angle)) * along),
        "x",
        x_of(angle),
        ends[0],
        ends[1],
        msg("angle of the {side} corner, {angle}°", side=side_name(side), angle=round(angle, 2)),
        msg("across, {along} along both walls from the corner", along=Mm(along, about=True)),
        shown_mm,
        from_shown,
        move,
        hold,
        low_why=whys[0],
        high_why=whys[1],
        sheet="plan",
    )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    along = along_mm(context.room.unit)
    for angle in _STICK:
        reason = msg("a square corner") if angle == 90.0 else msg("a corner of {angle}°", angle=angle)
        yield Sticking(handle.axis, handle.ref, handle.from_shown(across_of(angle, along)), reason, NEIGHBOUR)


FAMILY = Family(frozenset(AXES.values()), _handles, _places)
