"""Each stud that was found, sideways; those that are only likely follow it."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.findings.naming import opening_name
from elevation.findings.shapes import height_at
from elevation.handles.context import Context, Family, HoldFigure, Scale, make, right_end_mm
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR
from elevation.room.edits import replace_at
from elevation.room.find import wall_of
from elevation.room.model import Room
from elevation.trade.tables import limit_of
from elevation.units import Length
from elevation.words import Message, msg

AXIS = "stud"

_UP = 0.38
"""A stud's handle stands at this part of the wall's height: under most openings' middles, over most sockets."""
_LEAST_APART_MM = 30.0


def _hold(wall_id: str, index: int) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        studs = wall_of(room, wall_id).studs
        return replace_at(room, (wall_id,), studs=(*studs[:index], figure, *studs[index + 1 :]))

    return write


def _handles(context: Context) -> Iterable[Handle]:
    studs = context.wall.studs
    for index, stud in enumerate(studs):
        low_mm = studs[index - 1].mm + _LEAST_APART_MM if index else 0.0
        high_mm = studs[index + 1].mm - _LEAST_APART_MM if index + 1 < len(studs) else right_end_mm(context.set_out)
        yield make(
            AXIS,
            (context.wall.id, str(index)),
            (stud.mm, height_at(context.set_out.ceiling, stud.mm) * _UP),
            "x",
            stud.mm,
            (low_mm, high_mm),
            Scale(0.0, 1),
            stud,
            _hold(context.wall.id, index),
            msg("stud {number} that was found", number=index + 1),
            msg("from the wall's left end to its middle"),
            low_why=msg("the stud beside it") if index else msg("the wall's end"),
            high_why=msg("the stud beside it") if index + 1 < len(studs) else msg("the wall's end"),
        )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    for value_mm, reason in _reasons(int(handle.ref[-1]), context):
        yield Sticking(handle.axis, handle.ref, value_mm, reason, NEIGHBOUR)


def _reasons(own: int, context: Context) -> Iterable[tuple[float, Message]]:
    wall, limits = context.wall, context.room.limits
    step = wall.stud_spacing or limits.get("stud-spacing")
    step_mm = step.mm if step is not None else limit_of(context.trade, "stud-spacing")
    if own:
        yield wall.studs[own - 1].mm + step_mm, msg("the usual spacing from the stud before")
    if own + 1 < len(wall.studs):
        yield wall.studs[own + 1].mm - step_mm, msg("the usual spacing from the stud after")
    for zone in context.set_out.zones:
        if zone.kind == "king":
            opening = next(one for one in context.set_out.openings if one.ref == zone.ref)
            reason = msg("where the king stud of {opening} likely stands", opening=opening_name(opening))
            yield (zone.left_mm + zone.right_mm) / 2, reason


FAMILY = Family(frozenset({AXIS}), _handles, _places)
