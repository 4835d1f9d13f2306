"""From the casing's corner to a bracket's holes, at true size: what is drawn, and on how many sheets that overlap."""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec import Struct

from elevation.planning.drilling import DrillPlace
from elevation.setting_out.model import OpeningOut, Point, TreatmentOut
from elevation.units.tolerance import TOUCH_MM

OVERLAP_MM = 20.0
"""So much of a sheet is on its neighbour again: a cross stands whole on one of them."""
AROUND_MM = 18.0
MOST_SHEETS = 6
"""More sheets are no longer laid edge to edge without an error that a tape would not make."""

Box = tuple[float, float, float, float]


class Tiling(Struct, frozen=True):
    """One bracket and the corner it is laid out from, in wall mm.

    Attributes
    ----------
    place : DrillPlace
    corner : Point
        The casing's upper corner (the opening's, where uncased) that is nearest.
    inward : int
        Which way the casing goes on from there: 1 to the right, -1 to the left.
    box : Box
        All that is drawn: left, bottom, right, top.
    """

    place: DrillPlace
    corner: Point
    inward: int
    box: Box


def tilings(laid: TreatmentOut, places: Sequence[DrillPlace]) -> tuple[Tiling, ...]:
    """What can be tiled: brackets on the wall beside an opening whose head is level, so that it has a corner there.

    Parameters
    ----------
    laid : TreatmentOut
    places : sequence of DrillPlace
        Its brackets.
    """
    found: list[Tiling] = []
    corners = [corner for opening in laid.openings if _is_level(opening) for corner in _corners(opening)]
    for place in places:
        if place.on != "wall" or not corners:
            continue
        corner, inward = min(corners, key=lambda one: math.dist(one[0], (place.x_mm, place.height_mm)))
        half = place.kit.plate_width_mm / 2
        low, high = place.height_mm - place.kit.plate_below_mm, place.height_mm + place.kit.plate_above_mm
        box = (
            min(corner[0], place.x_mm - half) - AROUND_MM,
            min(corner[1], low) - AROUND_MM,
            max(corner[0], place.x_mm + half) + AROUND_MM,
            max(corner[1], high) + AROUND_MM,
        )
        found.append(Tiling(place, corner, inward, box))
    return tuple(found)


def _is_level(opening: OpeningOut) -> bool:
    return opening.rise_mm <= TOUCH_MM and abs(opening.left_top_mm - opening.right_top_mm) <= TOUCH_MM


def _corners(opening: OpeningOut) -> tuple[tuple[Point, int], tuple[Point, int]]:
    top = opening.casing_top_mm
    return ((opening.left_mm - opening.casing_mm, top), 1), ((opening.right_mm + opening.casing_mm, top), -1)


def tiles_of(box: Box, wide: float, high: float, *, from_right: bool = False) -> tuple[tuple[str, Box], ...]:
    """The sheets of a drawing: each with its name (A1 lowest left, B right of A) and what of the wall it shows.

    Parameters
    ----------
    box : Box
    wide, high : float
        Room on one sheet, mm.
    from_right : bool
        The last column ends where the drawing does, so that what stands there is whole on one sheet.
    """
    left, bottom, right, top = box
    across = _count(right - left, wide)
    up = _count(top - bottom, high)
    if from_right:
        left = right - across * (wide - OVERLAP_MM) - OVERLAP_MM
    return tuple(
        (
            f"{chr(ord('A') + column)}{row + 1}",
            (
                left + column * (wide - OVERLAP_MM),
                bottom + row * (high - OVERLAP_MM),
                left + column * (wide - OVERLAP_MM) + wide,
                bottom + row * (high - OVERLAP_MM) + high,
            ),
        )
        for row in range(up)
        for column in range(across)
    )


def _count(length: float, room: float) -> int:
    return max(1, math.ceil((length - OVERLAP_MM) / (room - OVERLAP_MM) - TOUCH_MM))
