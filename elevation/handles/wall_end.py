"""The wall's right end; openings stay where they stand."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.handles.context import Context, Family, HoldFigure, Scale, make, shifted
from elevation.handles.model import Handle
from elevation.handles.ranks import PROPORTION
from elevation.room.edits import replace_at
from elevation.room.find import wall_of
from elevation.room.model import Room, Station
from elevation.units import Length
from elevation.units.tolerance import TOUCH_MM
from elevation.words import msg

AXIS = "wall-end"

LEAST_WALL_MM = 300.0
MOST_WALL_MM = 60_000.0


def _hold(wall_id: str, width_mm: float) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        wall = wall_of(room, wall_id)
        fields: dict[str, object] = {"width": figure}
        if wall.gap_right is not None:
            fields["gap_right"] = shifted(room, wall.gap_right, figure.mm - width_mm)
        for line in ("ceiling", "floor"):
            stations: tuple[Station, ...] = getattr(wall, line)
            fields[line] = tuple(
                Station(figure, station.height) if _is_at_end(station, width_mm) else station for station in stations
            )
        return replace_at(room, (wall_id,), **fields)

    return write


def _is_at_end(station: Station, width_mm: float) -> bool:
    """Whether a height was measured at the wall's very end: there it stays measured."""
    return station.x.mm >= width_mm - TOUCH_MM


def _handles(context: Context) -> Iterable[Handle]:
    set_out = context.set_out
    stations = (*context.wall.ceiling, *context.wall.floor)
    taken = [
        LEAST_WALL_MM,
        *(opening.right_mm + opening.casing_mm for opening in set_out.openings),
        *(obstacle.right_mm for obstacle in set_out.obstacles),
        *(stud.mm for stud in context.wall.studs),
        *(station.x.mm for station in stations if not _is_at_end(station, set_out.width_mm)),
    ]
    low_mm = max(taken)
    ceiling = set_out.ceiling.points[-1][1] if set_out.ceiling.points else 0.0
    yield make(
        AXIS,
        (context.wall.id,),
        (set_out.width_mm, ceiling / 2),
        "x",
        set_out.width_mm,
        (low_mm, MOST_WALL_MM),
        Scale(0.0, 1),
        context.wall.width,
        _hold(context.wall.id, set_out.width_mm),
        msg("the wall's right end"),
        msg("wide"),
        low_why=msg("what stands on the wall"),
    )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    openings = context.set_out.openings
    if openings:
        # The same clear wall on both sides, from casing to end.
        first, last = openings[0], openings[-1]
        value_mm = last.right_mm + last.casing_mm + first.left_mm - first.casing_mm
        yield Sticking(handle.axis, handle.ref, value_mm, msg("as much wall on the right as on the left"), PROPORTION)


FAMILY = Family(frozenset({AXIS}), _handles, _places)
