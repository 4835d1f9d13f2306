"""The whole bay in one plan: the other walls that treatments of one wall run over, each at its true angle.

Every wall is drawn in its own plan, with its face on a level line, and then turned to where it stands beside the wall that
is looked at. All are drawn as thick as the thickest, so that their outer faces meet.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, radians, sin

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.corners import SIDES, Side, beside
from elevation.room.find import wall_of
from elevation.room.model import Room
from elevation.setting_out.model import Point, SetOut
from elevation.setting_out.whole import set_out as set_out_wall
from elevation.sheet.plan_frame import Frame, frame_of
from elevation.sheet.plan_ground import ground_records
from elevation.sheet.plan_hung import treatment_records
from elevation.sheet.plan_leaves import carried_records
from elevation.sheet.records import Group, Record
from elevation.sheet.work.moved import mapped
from elevation.trade.model import Trade
from elevation.words import Style, msg, say

Box = tuple[float, float, float, float]


class Turn(Struct, frozen=True, gc=False):
    """Where another wall's plan stands in that of the wall looked at: turned, then moved along its face and out from it."""

    cos: float = 1.0
    sin: float = 0.0
    x: float = 0.0
    z: float = 0.0

    def at(self, point: Point) -> Point:
        """Where a point of the other wall's plan stands."""
        x, z = point
        return self.x + x * self.cos - z * self.sin, self.z + x * self.sin + z * self.cos

    def after(self, other: Turn) -> Turn:
        """The turn of what ``other`` has turned already."""
        x, z = self.at((other.x, other.z))
        return Turn(self.cos * other.cos - self.sin * other.sin, self.sin * other.cos + self.cos * other.sin, x, z)


class BayWall(Struct, frozen=True, gc=False):
    """One other wall of a bay: set out, in its own frame, and where that stands. ``ends`` are its sides the bay ends at."""

    set_out: SetOut
    frame: Frame
    turn: Turn
    side: Side
    ends: tuple[Side, ...]


def turn_beside(side: Side, angle: float, width_mm: float, other_width_mm: float) -> Turn:
    """How the neighbour wall at one end of a wall stands in that wall's plan."""
    c, s = cos(radians(angle)), sin(radians(angle))
    if side == "right":
        return Turn(-c, s, width_mm, 0.0)
    return Turn(-c, -s, other_width_mm * c, other_width_mm * s)


def bay_of(room: Room, laid: SetOut, trade: Trade) -> tuple[BayWall, ...]:
    """The other walls that treatments of a wall run over, outward from it; none where nothing goes round its corners."""
    found: list[tuple[SetOut, Turn, Side]] = []
    for number, side in enumerate(SIDES):
        last, turn = laid, Turn()
        while True:
            leg = next((one.joined[number] for one in last.treatments if one.joined[number] is not None), None)
            there = None if leg is None else beside(room, wall_of(room, last.wall), side)
            if leg is None or there is None or any(one.wall == leg[0] for one, _, _ in found) or leg[0] == laid.wall:
                break
            other = set_out_wall(room, leg[0], leg[1], trade)
            turn = turn.after(turn_beside(side, there.angle, last.width_mm, other.width_mm))
            found.append((other, turn, side))
            last = other
    if not found:
        return ()
    thick = max(frame_of(one).thick_mm for one in (laid, *(other for other, _, _ in found)))
    made: list[BayWall] = []
    for index, (other, turn, side) in enumerate(found):
        is_last = index + 1 == len(found) or found[index + 1][2] != side
        made.append(BayWall(other, replace(frame_of(other), thick_mm=thick), turn, side, (side,) if is_last else ()))
    return tuple(made)


def inner_sides(bay: Sequence[BayWall]) -> tuple[Side, ...]:
    """The ends of the wall looked at that its bay goes on at."""
    return tuple(side for side in SIDES if any(one.side == side for one in bay))


def bay_frame(set_out: SetOut, bay: Sequence[BayWall], y0: float = 0.0) -> Frame:
    """The frame of the wall looked at: as thick as the others."""
    frame = frame_of(set_out, y0)
    return replace(frame, thick_mm=max([frame.thick_mm, *(one.frame.thick_mm for one in bay)]))


def bay_group(one: BayWall, y0: float, style: Style, mm_per_paper: float, position: str) -> Group:
    """One other wall of the bay with all that stands and hangs on it."""
    wall = one.set_out
    records: list[Record] = list(
        ground_records(wall, one.frame, style, mm_per_paper, one.ends, (one.side,), is_titled=False)
    )
    for treatment in wall.treatments:
        records += carried_records(treatment, one.frame)
        records += treatment_records(treatment, wall.angles, one.frame, style, mm_per_paper, position, has_figure=False)

    def place(at: Point) -> Point:
        x, z = one.turn.at((at[0], -at[1]))
        return x, y0 - z

    title = say(msg("Plan of {wall}", wall=wall.wall_name or wall.wall), style)
    return Group((wall.wall, "bay"), "plan", title, mapped(records, place))


def bay_extent(
    bay: Sequence[BayWall], y0: float, box: tuple[float, float, float, float]
) -> tuple[float, float, float, float]:
    """A box (left, bottom, right, top) grown to hold the other walls too."""
    left, bottom, right, top = box
    for one in bay:
        frame = one.frame
        deep = max([0.0, *(layer.support.projection_mm for t in one.set_out.treatments for layer in t.layers)]) + 60.0
        for x in (-frame.thick_mm, frame.width_mm + frame.thick_mm):
            for z in (-frame.thick_mm - frame.outside_mm, deep):
                at = one.turn.at((x, z))
                left, right = min(left, at[0]), max(right, at[0])
                bottom, top = min(bottom, y0 - at[1]), max(top, y0 - at[1])
    return left, bottom, right, top
