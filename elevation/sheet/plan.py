"""A wall seen from above, to scale: what the tape found, what hangs, how far everything stands out, and what turns.

Groups are in wall coordinates with the plan under the elevation (``plan_frame``); each carries the Ref of what it draws, so
that a drag draws only its own treatment again.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from elevation.room.corners import SIDES
from elevation.setting_out.model import BesideOut, SetOut, Span, TreatmentOut
from elevation.sheet import inks
from elevation.sheet.bay import BayWall, bay_extent, bay_frame, bay_group, inner_sides
from elevation.sheet.paths import polygon
from elevation.sheet.plan_frame import Frame, overhangs, within
from elevation.sheet.plan_ground import LABEL, angle_room, ground_records
from elevation.sheet.plan_hung import treatment_records
from elevation.sheet.plan_leaves import SWING, carried_records
from elevation.sheet.records import Fill, Group, Ink, Pen, Polyline, Record
from elevation.words import Style, msg, say

_QUIET = Pen(Ink.GHOST, 0.18)
_MOVES = ("sash", "door", "door-swing")

Position = Literal["open", "closed", "drawn", "none"]


def plan_groups(
    set_out: SetOut,
    frame: Frame,
    style: Style,
    mm_per_paper: float,
    position: Position = "open",
    bay: Sequence[BayWall] = (),
) -> list[Group]:
    """The plan of a wall.

    Parameters
    ----------
    set_out : SetOut
    frame : Frame
        Where it stands, from ``bay_frame``.
    style : Style
        How labels and titles are said.
    mm_per_paper : float
        Wall mm for one paper mm: labels stand off by paper mm.
    position : str
        Which position of the panels is drawn.
    bay : sequence of BayWall
        The other walls that its treatments run over, from ``bay_of``.

    Returns
    -------
    list of Group
        Layer ``plan``: the others of the bay, the wall with all that stands on it, then what comes round the corners, then
        each treatment.
    """
    # The farthest first: each wall writes the angle of the corner that it shares with the next one out.
    groups = [bay_group(one, frame.y0, style, mm_per_paper, position) for one in reversed(bay)]
    groups += ground_group(set_out, frame, style, mm_per_paper, bay)
    groups += beside_group(set_out, frame, style, bay)
    for treatment in set_out.treatments:
        groups += treatment_group(treatment, set_out.angles, frame, style, mm_per_paper, position)
    return groups


def ground_group(
    set_out: SetOut, frame: Frame, style: Style, mm_per_paper: float, bay: Sequence[BayWall] = ()
) -> tuple[Group, ...]:
    """The wall with its openings, what stands before it, and its corners; walls of its bay are drawn by themselves."""
    title = say(msg("Plan, seen from above"), style)
    stubs = tuple(side for side in SIDES if side not in inner_sides(bay))
    return (Group((set_out.wall,), "plan", title, ground_records(set_out, frame, style, mm_per_paper, stubs)),)


def beside_group(set_out: SetOut, frame: Frame, style: Style, bay: Sequence[BayWall] = ()) -> tuple[Group, ...]:
    """What comes round the corners; none where nothing does. What stands on a wall of the bay is drawn with that."""
    whole = {one.set_out.wall for one in bay}
    beyond = overhangs(set_out, frame)
    joined = {leg for treatment in set_out.treatments for leg in treatment.joined if leg is not None}
    near = tuple(
        record for thing in set_out.beside if thing.ref[0] not in whole for record in _beside(thing, frame, beyond, joined)
    )
    return (Group((set_out.wall, "beside"), "plan", say(msg("Round the corners"), style), near),) if near else ()


def treatment_group(
    treatment: TreatmentOut, angles: Span, frame: Frame, style: Style, mm_per_paper: float, position: str
) -> tuple[Group, ...]:
    """One treatment: depends on nothing but its arguments."""
    title = say(msg("Plan, seen from above"), style)
    records = (
        *carried_records(treatment, frame),
        *treatment_records(treatment, angles, frame, style, mm_per_paper, position),
    )
    return (Group(treatment.ref, "plan", title, records),)


def _beside(thing: BesideOut, frame: Frame, beyond: tuple[float, float], joined: set[tuple[str, ...]]) -> list[Record]:
    """Something of a neighbour wall, quietly."""
    outline = within(thing.outline, frame, beyond)
    if len(outline) < 3:
        return []
    points = frame.all(outline)
    if thing.kind in _MOVES:
        return [Polyline(points, SWING, True)]
    if thing.kind == "panel":
        return [Fill(polygon(points), inks.with_alpha(Ink.GHOST, 0.25))]
    if thing.kind in ("rod", "bracket"):
        tone = inks.METAL_MIDDLE if thing.ref[:3] in joined else inks.METAL_LIGHT
        return [Fill(polygon(points), tone)]
    return [Fill(polygon(points), inks.ENAMEL), Polyline(points, _QUIET, True)]


def plan_extent(
    set_out: SetOut, frame: Frame, mm_per_paper: float, bay: Sequence[BayWall] = ()
) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of the strip with its caption and the walls of its bay, wall mm."""
    left, right = overhangs(set_out, frame)
    top = frame.top_mm + (1.6 + LABEL) * mm_per_paper
    box = (-left, frame.y0 - frame.depth_mm - 1.0 * mm_per_paper, set_out.width_mm + right, top)
    left, bottom, right, top = bay_extent(bay, frame.y0, box)
    more = angle_room(frame, mm_per_paper)
    return left - more, bottom, right + more, top


def under(set_out: SetOut, bottom_mm: float, mm_per_paper: float, bay: Sequence[BayWall] = ()) -> Frame:
    """The frame of a plan whose upper edge stands just under ``bottom_mm``, the lower edge of what is drawn above it."""
    first = bay_frame(set_out, bay)
    _, _, _, top = plan_extent(set_out, first, mm_per_paper, bay)
    return bay_frame(set_out, bay, bottom_mm - 3.0 * mm_per_paper - top)
