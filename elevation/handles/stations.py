"""Points of the ceiling line and stations of the floor, each up and down.

Only what was measured can be dragged: a line that is drawn dashed has no points yet.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.findings.shapes import extremes
from elevation.handles.context import Context, Family, HoldFigure, Scale, make
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.edits import replace_at
from elevation.room.find import wall_of
from elevation.room.model import Room, Station
from elevation.setting_out.model import Span
from elevation.units import Length
from elevation.words import msg

CEILING, FLOOR = "ceiling", "floor"

LEAST_HEIGHT_MM = 300.0
"""Ceiling and floor stay at least this far apart."""
MOST_CEILING_MM = 12_000.0
MOST_FLOOR_MM = 500.0
"""How far a floor may lie off the datum."""


def _hold(wall_id: str, field: str, index: int) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        stations: tuple[Station, ...] = getattr(wall_of(room, wall_id), field)
        moved = replace(stations[index], height=figure)
        return replace_at(room, (wall_id,), **{field: (*stations[:index], moved, *stations[index + 1 :])})

    return write


def _handles(context: Context) -> Iterable[Handle]:
    _, floor_mm = extremes(context.set_out.floor, 0.0, context.set_out.width_mm)
    ceiling_mm, _ = extremes(context.set_out.ceiling, 0.0, context.set_out.width_mm)
    lift_mm = context.room.floor_to_come.mm if context.room.floor_to_come is not None else 0.0
    heads_mm = max((opening.casing_top_mm for opening in context.set_out.openings), default=floor_mm)
    for index, station in enumerate(context.wall.ceiling):
        # A level ceiling stays over every head; of a raked one each point may come down by itself.
        least_mm = heads_mm if len(context.wall.ceiling) == 1 else 0.0
        span = (max(floor_mm + LEAST_HEIGHT_MM, least_mm), MOST_CEILING_MM)
        yield _handle(context, CEILING, index, station, span, 0.0)
    for index, station in enumerate(context.wall.floor):
        span = (-MOST_FLOOR_MM, min(MOST_FLOOR_MM, ceiling_mm - LEAST_HEIGHT_MM))
        yield _handle(context, FLOOR, index, station, span, lift_mm)


def _handle(context: Context, axis: str, index: int, station: Station, span: Span, lift_mm: float) -> Handle:
    value_mm = station.height.mm + lift_mm
    if axis == CEILING:
        name = msg("ceiling, point {number}", number=index + 1)
    else:
        name = msg("floor, station {number}", number=index + 1)
    return make(
        axis,
        (context.wall.id, str(index)),
        (station.x.mm, value_mm),
        "y",
        value_mm,
        span,
        Scale(lift_mm, 1),
        station.height,
        _hold(context.wall.id, axis, index),
        name,
        msg("above the level line"),
        low_why=msg("the openings") if axis == CEILING else msg("as far as it goes"),
    )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    own = int(handle.ref[-1])
    stations = context.wall.ceiling if handle.axis == CEILING else context.wall.floor
    lift_mm = handle.value_mm - stations[own].height.mm
    for index, station in enumerate(stations):
        if index != own:
            if handle.axis == CEILING:
                reason = msg("level with point {number}", number=index + 1)
            else:
                reason = msg("level with station {number}", number=index + 1)
            yield Sticking(handle.axis, handle.ref, station.height.mm + lift_mm, reason, NEIGHBOUR)
    if handle.axis == FLOOR:
        yield Sticking(handle.axis, handle.ref, lift_mm, msg("level with the left end"), PROPORTION)
    if 0 < own < len(stations) - 1:
        before, after, here = stations[own - 1], stations[own + 1], stations[own]
        run_mm = after.x.mm - before.x.mm
        if run_mm > 0:
            rise_mm = (after.height.mm - before.height.mm) * (here.x.mm - before.x.mm) / run_mm
            straight_mm = before.height.mm + rise_mm + lift_mm
            yield Sticking(handle.axis, handle.ref, straight_mm, msg("straight between its neighbours"), PROPORTION)


FAMILY = Family(frozenset({CEILING, FLOOR}), _handles, _places)
