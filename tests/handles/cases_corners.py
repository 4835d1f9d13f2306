"""Corners by tape: 12 in along both walls, and across from mark to mark, worked by hand."""

from __future__ import annotations

from elevation.room.joining import put_angle
from tests.handles.case import Case, fact
from tests.handles.rooms import room

ANGLE = fact("left.angle", "a")
BLUNT = put_angle(room(), "a", "left", 110.0)


def along(across: float) -> float:
    """Where the mark on the left-hand wall stands along this one, inches from the corner: 12 cos A = 12 - c^2 / 24."""
    return 12 - across * across / 24


CORNERS = (
    # 12 times the root of 2 is 16.971 in; the nearest sixteenth is 17, and nobody tells that corner from a square one.
    Case("corner-square", BLUNT, "corner-left", ("a",), along(17), "a square corner", ANGLE, 90.0),
    # 24 sin 67.5 = 22.173 in across; the nearest sixteenth is 22 3/16.
    Case("corner-bay", BLUNT, "corner-left", ("a",), along(22 + 3 / 16), "a corner of 135°", ANGLE, 135.0),
    # 24 sin 15 = 6.212 in: the first sixteenth past it is 6 1/4, 2 asin(6.25 / 24) = 30.19 degrees.
    Case("corner-sharp", BLUNT, "corner-left", ("a",), None, "as sharp as a corner is dragged", ANGLE, 30.19),
    # 24 sin 87.5 = 23.977 in: the last sixteenth before it is 23 15/16, which is as near to 170 degrees (23.909 in).
    Case("corner-blunt", BLUNT, "corner-left", ("a",), None, "as blunt as a corner is dragged", ANGLE, 170.0),
)
