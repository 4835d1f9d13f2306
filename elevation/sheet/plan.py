"""A wall seen from above, to scale: what the tape found, what hangs, how far everything stands out, and what turns.

Groups are in wall coordinates with the plan under the elevation (``plan_frame``); each carries the Ref of what it draws, so
that a drag draws only its own treatment again.
"""

from __future__ import annotations

from typing import Literal

from elevation.room.corners import SIDES
from elevation.setting_out.model import BesideOut, ObstacleOut, OpeningOut, SetOut, Span, TreatmentOut
from elevation.sheet import inks
from elevation.sheet.paths import polygon
from elevation.sheet.plan_frame import SASH_MM, Frame, angle_at, clipped, frame_of, outer_corner, overhangs, wall_records
from elevation.sheet.plan_hung import treatment_records
from elevation.sheet.plan_leaves import SWING, carried_records, swing_records
from elevation.sheet.records import NARROW, Fill, Group, Ink, Line, Pen, Polyline, Record, Text
from elevation.words import Style, msg, say

LABEL = 2.5
"""Type size, paper mm."""

_CASING_MM = 18.0
_THIN = Pen(Ink.THIN, NARROW)
_FINE = Pen(inks.FINE_LINE, 0.18)
_GHOST = Pen(Ink.GHOST, NARROW, (2.0, 1.0))
_QUIET = Pen(Ink.GHOST, 0.18)
_MOVES = ("sash", "door", "door-swing")

Position = Literal["open", "closed", "drawn", "none"]


def plan_groups(
    set_out: SetOut, frame: Frame, style: Style, mm_per_paper: float, position: Position = "open"
) -> list[Group]:
    """The plan of a wall.

    Parameters
    ----------
    set_out : SetOut
    frame : Frame
        Where it stands, from ``frame_of``.
    style : Style
        How labels and titles are said.
    mm_per_paper : float
        Wall mm for one paper mm: labels stand off by paper mm.
    position : str
        Which position of the panels is drawn.

    Returns
    -------
    list of Group
        Layer ``plan``: the wall with all that stands on it, then what comes round the corners, then each treatment.
    """
    groups = [*ground_group(set_out, frame, style, mm_per_paper), *beside_group(set_out, frame, style)]
    for treatment in set_out.treatments:
        groups += treatment_group(treatment, set_out.angles, frame, style, mm_per_paper, position)
    return groups


def ground_group(set_out: SetOut, frame: Frame, style: Style, mm_per_paper: float) -> tuple[Group, ...]:
    """The wall with its openings, what stands before it, and its corners."""
    title = say(msg("Plan, seen from above"), style)
    return (Group((set_out.wall,), "plan", title, ground_records(set_out, frame, style, mm_per_paper)),)


def beside_group(set_out: SetOut, frame: Frame, style: Style) -> tuple[Group, ...]:
    """What comes round the corners; none where nothing does."""
    beyond = overhangs(set_out, frame)
    joined = {leg for treatment in set_out.treatments for leg in treatment.joined if leg is not None}
    near = tuple(record for thing in set_out.beside for record in _beside(thing, frame, beyond, joined))
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


def ground_records(set_out: SetOut, frame: Frame, style: Style, mm_per_paper: float) -> tuple[Record, ...]:
    """The wall cut through, its openings with what turns in them, what stands before it, and the corners' angles."""
    records: list[Record] = list(wall_records(set_out, frame))
    for opening in set_out.openings:
        records += opening_records(opening, frame)
    for obstacle in set_out.obstacles:
        records += _obstacle(obstacle, frame)
    for side in SIDES:
        angle = angle_at(set_out, side)
        if angle is None:
            continue
        corner = 0.0 if side == "left" else set_out.width_mm
        # The angle is written in the wall itself, where the two are joined: before it hang rod and cloth.
        x, z = outer_corner(frame, side, angle)
        at = frame.at((corner + x) / 2, z / 2)
        text = say(msg("{angle}°", angle=round(angle, 2)), style)
        records.append(Text((at[0], at[1] - LABEL * 0.36 * mm_per_paper), text, LABEL, Ink.TEXT, "middle"))
    above = frame.top_mm + 1.6 * mm_per_paper
    records.append(Text((0.0, above), say(msg("Plan, seen from above"), style), LABEL, Ink.QUIET))
    return tuple(records)


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


def _beside(thing: BesideOut, frame: Frame, beyond: tuple[float, float], joined: set[tuple[str, ...]]) -> list[Record]:
    """Something of a neighbour wall, quietly."""
    outline = clipped(thing.outline, frame, beyond)
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


def plan_extent(set_out: SetOut, frame: Frame, mm_per_paper: float) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of the strip with its caption, wall mm."""
    left, right = overhangs(set_out, frame)
    top = frame.top_mm + (1.6 + LABEL) * mm_per_paper
    return -left, frame.y0 - frame.depth_mm - 1.0 * mm_per_paper, set_out.width_mm + right, top


def under(set_out: SetOut, bottom_mm: float, mm_per_paper: float) -> Frame:
    """The frame of a plan whose caption stands just under ``bottom_mm``, the lower edge of what is drawn above it."""
    first = frame_of(set_out)
    top = first.top_mm + (1.6 + LABEL) * mm_per_paper
    return frame_of(set_out, bottom_mm - 3.0 * mm_per_paper - top)
