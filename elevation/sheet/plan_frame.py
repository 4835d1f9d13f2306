"""Where a plan stands under its elevation, and the pieces of walls seen from above.

A plan is drawn below the elevation with the wall's face on a level line: what stands out from the wall lies under that
line, what lies in the wall over it. So x is the elevation's own x.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import cos, radians, sin, tan

from msgspec import Struct

from elevation.room.corners import Side
from elevation.setting_out.clipping import clipped
from elevation.setting_out.leaves import TURNS_OUT, leaves
from elevation.setting_out.model import CornerOut, Point, SetOut
from elevation.sheet import inks
from elevation.sheet.paths import polygon
from elevation.sheet.records import NARROW, WIDE, Fill, Ink, Line, Pen, Polyline, Record

LEAST_DEPTH_MM = 260.0
MOST_DEPTH_MM = 760.0
"""A strip shows at least and at most so much of the room before the wall."""

LEAST_WALL_MM = 130.0
_BEHIND_SASH_MM = 55.0
_ROOM_MM = 70.0
SASH_MM = 42.0
"""How thick a sash is drawn."""

MOST_OUTSIDE_MM = 300.0
"""Of leaves that turn out, at most so much is drawn outside the wall."""

CUT = inks.blend(Ink.WALL, Ink.OUTLINE, 0.30)
"""What is cut through."""

_EDGE = Pen(Ink.OUTLINE, WIDE)
_UNKNOWN = Pen(Ink.GHOST, NARROW, (2.0, 1.0))
_FINE = Pen(inks.FINE_LINE, 0.18)


class Frame(Struct, frozen=True, gc=False):
    """A plan's place: the face's line ``y0``, how thick the wall is drawn, how much of the room is shown; wall mm.

    ``outside_mm`` is how much is shown behind the wall, where leaves turn out.
    """

    y0: float
    thick_mm: float
    depth_mm: float
    width_mm: float
    outside_mm: float = 0.0

    @property
    def top_mm(self) -> float:
        """The upper edge of what is drawn."""
        return self.y0 + self.thick_mm + self.outside_mm

    def at(self, x: float, z: float) -> Point:
        """Where a point of the plan (along the wall, out from its face) is drawn."""
        return x, self.y0 - z

    def all(self, points: Iterable[Point]) -> tuple[Point, ...]:
        """The same for several."""
        return tuple(self.at(x, z) for x, z in points)


def frame_of(set_out: SetOut, y0: float = 0.0) -> Frame:
    """The plan of a wall with its face at ``y0``: as deep as what stands out from it, within limits."""
    thick = max([LEAST_WALL_MM, *((opening.reveal_mm or 0.0) + _BEHIND_SASH_MM for opening in set_out.openings)])
    outs = [LEAST_DEPTH_MM, *(obstacle.out_mm + _ROOM_MM for obstacle in set_out.obstacles)]
    for opening in set_out.openings:
        outs.extend(out + _ROOM_MM for _, _, _, _, out in opening.sweep)
    for treatment in set_out.treatments:
        for layer in treatment.layers:
            fold = max([0.0, *(panel.fold_depth_mm for panel in layer.panels)])
            outs.append(layer.support.projection_mm + fold / 2 + _ROOM_MM)
    return Frame(y0, thick, min(max(outs), MOST_DEPTH_MM), set_out.width_mm, min(_outside(set_out, thick), MOST_OUTSIDE_MM))


def _outside(set_out: SetOut, thick: float) -> float:
    """How far leaves that turn out reach beyond the wall as it is drawn."""
    found = [0.0]
    for opening in set_out.openings:
        if opening.sash in TURNS_OUT:
            back = 0.35 * thick if opening.reveal_mm is None else opening.reveal_mm
            found += [back + SASH_MM + leaf.wide_mm - thick for leaf in leaves(opening)]
    return max(found)


def angle_at(set_out: SetOut, side: Side) -> float | None:
    """The inside angle at an end of the wall; None where it is open."""
    number = 0 if side == "left" else 1
    if set_out.ends[number] == "open":
        return None
    return set_out.angles[number]


def stub_length(frame: Frame, angle: float) -> float:
    """How much of a neighbour wall is drawn: as far as the strip is deep, never far beyond this wall's end."""
    s = abs(sin(radians(angle)))
    return min(frame.depth_mm / s if s > 0.35 else frame.depth_mm / 0.35, 1.35 * frame.depth_mm)


def along_neighbour(frame: Frame, side: Side, angle: float, along: float, out: float) -> Point:
    """A point of the neighbour wall, given from the corner along it and out from it, in this wall's plan."""
    c, s = cos(radians(angle)), sin(radians(angle))
    x, z = along * c + out * s, along * s - out * c
    return (x, z) if side == "left" else (frame.width_mm - x, z)


def overhangs(set_out: SetOut, frame: Frame) -> tuple[float, float]:
    """How far the strip runs beyond the wall's left and right end, in mm."""
    found = []
    for side in ("left", "right"):
        angle = angle_at(set_out, side)
        if angle is None:
            found.append(0.0)
            continue
        long = stub_length(frame, angle)
        ends = [along_neighbour(frame, side, angle, long, out) for out in (0.0, -frame.thick_mm)]
        ends.append(outer_corner(frame, side, angle))
        beyond = [-x if side == "left" else x - frame.width_mm for x, _ in ends]
        found.append(max(0.0, *beyond))
    return found[0], found[1]


def outer_corner(frame: Frame, side: Side, angle: float) -> Point:
    """Where the outer faces of two walls meet."""
    over = frame.thick_mm / tan(radians(angle / 2))
    over = min(max(over, -3 * frame.thick_mm), 3 * frame.thick_mm)
    return (-over if side == "left" else frame.width_mm + over), -frame.thick_mm


def wall_records(set_out: SetOut, frame: Frame, stubs: tuple[Side, ...] = ("left", "right")) -> list[Record]:
    """The wall and the beginnings of its neighbours, cut through; their outer faces are dashed: no tape was there."""
    left, right = angle_at(set_out, "left"), angle_at(set_out, "right")
    start = (0.0, -frame.thick_mm) if left is None else outer_corner(frame, "left", left)
    end = (frame.width_mm, -frame.thick_mm) if right is None else outer_corner(frame, "right", right)
    spans = [(one.left_mm, one.right_mm) for one in set_out.openings]
    records = _band(frame, _pieces(spans, frame.width_mm), (0.0, frame.width_mm), start, end)
    for side, angle, number in (("left", left, 0), ("right", right, 1)):
        if angle is not None and side in stubs:
            records += _stub(frame, side, angle, set_out.corners[number])
    return records


def _pieces(spans: Sequence[tuple[float, float]], wide: float) -> list[tuple[float, float]]:
    """What of a wall stands between its openings."""
    edges = [0.0]
    for left, right in sorted(spans):
        edges += [min(max(left, 0.0), wide), min(max(right, 0.0), wide)]
    edges.append(wide)
    return [(a, b) for a, b in zip(edges[::2], edges[1::2], strict=True) if b > a]


def _band(
    frame: Frame, pieces: Sequence[tuple[float, float]], ends: tuple[float, float], start: Point, end: Point
) -> list[Record]:
    records: list[Record] = []
    for a, b in pieces:
        first = start if a <= ends[0] else (a, -frame.thick_mm)
        last = end if b >= ends[1] else (b, -frame.thick_mm)
        outline = frame.all(((a, 0.0), (b, 0.0), last, first))
        records += [
            Fill(polygon(outline), CUT),
            Line(outline[0], outline[1], _EDGE),
            Line(outline[3], outline[2], _UNKNOWN),
        ]
        if a > ends[0]:
            records.append(Line(outline[0], outline[3], _EDGE))
        if b < ends[1]:
            records.append(Line(outline[1], outline[2], _EDGE))
    return records


def _stub(frame: Frame, side: Side, angle: float, corner: CornerOut | None) -> list[Record]:
    """The beginning of a neighbour wall, with its openings where they are known."""
    long = stub_length(frame, angle)
    if corner is not None:
        long = min(long, corner.width_mm)
    openings = () if corner is None else corner.openings
    records: list[Record] = []
    for a, b in _pieces([(near, far) for near, far, _ in openings], long):
        inner = (along_neighbour(frame, side, angle, a, 0.0), along_neighbour(frame, side, angle, b, 0.0))
        back = outer_corner(frame, side, angle) if a <= 0 else along_neighbour(frame, side, angle, a, -frame.thick_mm)
        outer = (back, along_neighbour(frame, side, angle, b, -frame.thick_mm))
        outline = frame.all((inner[0], inner[1], outer[1], outer[0]))
        records += [
            Fill(polygon(outline), CUT),
            Line(outline[0], outline[1], _EDGE),
            Line(outline[3], outline[2], _UNKNOWN),
        ]
        if a > 0:
            records.append(Line(outline[0], outline[3], _EDGE))
        if b < long:
            records.append(Line(outline[1], outline[2], _EDGE))
    for near, far, reveal in openings:
        if near < long:
            records += _sash(frame, side, angle, near, min(far, long), reveal)
    return records


def _sash(frame: Frame, side: Side, angle: float, near: float, far: float, reveal: float) -> list[Record]:
    corners = ((near, -reveal), (far, -reveal), (far, -reveal - SASH_MM), (near, -reveal - SASH_MM))
    outline = frame.all(along_neighbour(frame, side, angle, a, z) for a, z in corners)
    return [Fill(polygon(outline), inks.FRAME), Polyline(outline, _FINE, True)]


def within(outline: Sequence[Point], frame: Frame, beyond: tuple[float, float]) -> tuple[Point, ...]:
    """A convex outline cut to what the strip shows; empty where nothing is left."""
    return clipped(outline, -beyond[0], -frame.thick_mm, frame.width_mm + beyond[1], frame.depth_mm)
