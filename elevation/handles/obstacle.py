"""Where each obstacle stands on the wall."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.findings.naming import obstacle_name, opening_name
from elevation.findings.shapes import extremes
from elevation.handles.context import Context, Family, HoldFigure, Scale, ceiling_over_mm, make, right_end_mm
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.edits import replace_at
from elevation.room.model import Ref, Room
from elevation.setting_out.model import ObstacleOut
from elevation.units import Length
from elevation.words import Message, msg

X, Y = "obstacle-x", "obstacle-y"


def _hold(ref: Ref, field: str) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        return replace_at(room, ref, **{field: figure})

    return write


def _handles(context: Context) -> Iterable[Handle]:
    measured = {obstacle.id: obstacle for obstacle in context.wall.obstacles}
    for obstacle in context.set_out.obstacles:
        own = measured[obstacle.ref[1]]
        name = obstacle_name(obstacle)
        wide_mm, tall_mm = obstacle.right_mm - obstacle.left_mm, obstacle.top_mm - obstacle.bottom_mm
        floor_mm, _ = extremes(context.set_out.floor, obstacle.left_mm, obstacle.right_mm)
        ceiling_mm = ceiling_over_mm(context.set_out, obstacle.left_mm, obstacle.right_mm)
        yield make(
            X,
            obstacle.ref,
            (obstacle.left_mm, (obstacle.bottom_mm + obstacle.top_mm) / 2),
            "x",
            obstacle.left_mm,
            (0.0, right_end_mm(context.set_out) - wide_mm),
            Scale(obstacle.left_mm - own.left.mm, 1),
            own.left,
            _hold(obstacle.ref, "left"),
            msg("{obstacle}, sideways", obstacle=name),
            msg("from the wall's left end"),
            low_why=msg("the wall's end"),
            high_why=msg("the wall's end"),
        )
        yield make(
            Y,
            obstacle.ref,
            ((obstacle.left_mm + obstacle.right_mm) / 2, obstacle.bottom_mm),
            "y",
            obstacle.bottom_mm,
            (floor_mm, ceiling_mm - tall_mm),
            Scale(obstacle.bottom_mm - own.bottom.mm, 1),
            own.bottom,
            _hold(obstacle.ref, "bottom"),
            msg("{obstacle}, up and down", obstacle=name),
            msg("above the floor"),
            low_why=msg("the floor"),
            high_why=msg("the ceiling"),
        )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    own = next(obstacle for obstacle in context.set_out.obstacles if obstacle.ref == handle.ref)
    reasons = _sideways(context, own) if handle.axis == X else _upright(context, own)
    for value_mm, reason, rank in reasons:
        yield Sticking(handle.axis, handle.ref, value_mm, reason, rank)


Place = tuple[float, Message, int]


def _sideways(context: Context, own: ObstacleOut) -> Iterable[Place]:
    wide_mm = own.right_mm - own.left_mm
    for opening in context.set_out.openings:
        name = opening_name(opening)
        left_mm, right_mm = opening.left_mm - opening.casing_mm, opening.right_mm + opening.casing_mm
        yield left_mm - wide_mm, msg("touches the casing of {opening}", opening=name), NEIGHBOUR
        yield right_mm, msg("touches the casing of {opening}", opening=name), NEIGHBOUR
        middle_mm = (opening.left_mm + opening.right_mm - wide_mm) / 2
        yield middle_mm, msg("under the middle of {opening}", opening=name), PROPORTION
    for other in context.set_out.obstacles:
        if other.ref != own.ref:
            yield other.left_mm, msg("in line with {obstacle}", obstacle=obstacle_name(other)), NEIGHBOUR


def _upright(context: Context, own: ObstacleOut) -> Iterable[Place]:
    tall_mm = own.top_mm - own.bottom_mm
    for other in context.set_out.obstacles:
        if other.ref != own.ref:
            yield other.bottom_mm, msg("level with {obstacle}", obstacle=obstacle_name(other)), NEIGHBOUR
    for opening in context.set_out.openings:
        if opening.kind == "window":
            reason = msg("top level with the sill of {opening}", opening=opening_name(opening))
            yield opening.bottom_mm - tall_mm, reason, NEIGHBOUR


FAMILY = Family(frozenset({X, Y}), _handles, _places)
