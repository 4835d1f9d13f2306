"""Edits that put something new on the wall, where there is room for it."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.edits import edit_at, put_obstacle, put_opening, replace_at
from elevation.room.find import wall_of
from elevation.room.model import Obstacle, Opening, Ref, Room, Station, Stool
from elevation.setting_out.chain import resolve
from elevation.units import Length, length_of

_LEAST_MM = 300.0


def _length(room: Room, mm: float) -> Length:
    return length_of(mm, room.unit, room.graduation_mm)


def more_opening(room: Room, wall_id: str) -> tuple[Room, Ref]:
    """One window more, in the widest free stretch of the wall, as the last one where it is a window that fits there.

    What is proposed is in round figures: nobody takes it for what the tape said.

    Raises
    ------
    BadInput
        No stretch of the wall is wide enough.
    """
    wall = wall_of(room, wall_id)
    gaps = [link for link in resolve(wall, room.graduation_mm).links if link.key.startswith("gap")]
    widest = max(gaps, key=lambda link: link.right_mm - link.left_mm, default=None)
    low, high = (widest.left_mm, widest.right_mm) if widest else (0.0, wall.width.mm if wall.width else 3000.0)
    if high - low < _LEAST_MM:
        raise BadInput(
            "", "", said("no stretch of this wall is wide enough for another opening"), said("make one narrower first")
        )
    model = wall.openings[-1] if wall.openings else None
    tall = model is not None and model.kind != "window"
    casing = model.casing if model is not None else None
    fits = model is not None and not tall and model.width.mm <= (high - low) / 2
    width = model.width.mm if model is not None and fits else _round_down(room, (high - low) / 3)
    left = _round_down(room, low + (high - low - width) / 2)
    opening = Opening(
        "",
        model.width if model is not None and fits else _length(room, width),
        model.height if model is not None and not tall else _length(room, 1219.2),
        left=_length(room, left),
        sill=model.sill if model is not None and not tall else _length(room, 812.8),
        casing=casing if casing is not None and casing.mm < min(width / 2, (high - low - width) / 2 - 25.4) else None,
    )
    return put_opening(room, wall_id, opening)


def _round_down(room: Room, mm: float) -> float:
    """Down to a whole inch, or to 10 mm."""
    whole = 25.4 if room.unit == "in" else 10.0
    return int(mm / whole + 1e-9) * whole


def more_obstacle(room: Room, wall_id: str) -> tuple[Room, Ref]:
    """One obstacle more: an outlet near the wall's left end, to be moved and named."""
    size, up = _length(room, 76.2), _length(room, 304.8)
    return put_obstacle(
        room, wall_id, Obstacle("", "outlet", left=_length(room, 203.2), bottom=up, width=size, height=_length(room, 114.3))
    )


def more_floor(room: Room, wall_id: str) -> tuple[Room, Ref]:
    """One floor station more: the wall's ends first, then the middle of the longest stretch between stations."""
    wall = wall_of(room, wall_id)
    end = wall.width.mm if wall.width is not None else 3000.0
    zero = Station(_length(room, 0.0), _length(room, 0.0))
    if not wall.floor:
        stations: tuple[Station, ...] = (zero, Station(_length(room, end), _length(room, 0.0)))
    else:
        xs = [station.x.mm for station in wall.floor]
        if len(xs) == 1:
            x = end if xs[0] < end / 2 else 0.0
        else:
            left, right = max(pairwise(xs), key=lambda pair: pair[1] - pair[0])
            x = (left + right) / 2
        new = Station(_length(room, x), _length(room, 0.0))
        stations = tuple(sorted((*wall.floor, new), key=lambda station: station.x.mm))
    return replace_at(room, (wall_id,), floor=stations), (wall_id,)


def with_stool(ref: Ref, room: Room, wanted: Any) -> Room:
    """A room in which the opening at ``ref`` has a stool of a usual size, or none."""
    stool = Stool(_length(room, 25.4), _length(room, 25.4), _length(room, 50.8)) if wanted else None

    def put(opening: Opening) -> Opening:
        return replace(opening, stool=stool)

    return edit_at(room, ref, put)
