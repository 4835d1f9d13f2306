"""Pelmets and blinds in sizes that fit what hangs there, to begin with."""

from __future__ import annotations

from math import ceil

from elevation.room.model import Blind, Pelmet, Room
from elevation.units import Length, length_of

_SIXTH = 6.0
"""A pelmet is a sixth to a fifth of the curtain's length: handbooks."""

_STEP = {"in": 12.7, "mm": 10.0}
"""Sizes are taken to the next half inch or centimetre."""

_OVER_MM = 50.0
_FREE_MM = 20.0
_LEAST_MM = 150.0


def _up(room: Room, mm: float) -> Length:
    step = _STEP[room.unit]
    return length_of(ceil(mm / step - 1e-9) * step, room.unit, room.graduation_mm)


def usual_pelmet(
    room: Room, curtain_mm: float, heading_mm: float, ends_mm: float, front_mm: float, low_mm: float, high_mm: float
) -> Pelmet:
    """A stiff pelmet in proportion, with room behind it.

    Parameters
    ----------
    room : Room
    curtain_mm : float
        Length of the longest panel.
    heading_mm : float
        The rod's centre line down to the top of the cloth: the pelmet hides it.
    ends_mm : float
        How far metal stands beyond the rod's ends.
    front_mm : float
        How far rod and folds stand out from the wall.
    low_mm : float
        The rod's centre line down to the top of the glass: the pelmet ends there, where it can.
    high_mm : float
        The rod's centre line up to the ceiling: the pelmet's top goes no higher.
    """
    depth = max(curtain_mm / _SIXTH, _OVER_MM + max(heading_mm, 0.0) + _OVER_MM, _LEAST_MM)
    above = max(min(depth - low_mm, high_mm - _STEP[room.unit]), min(_OVER_MM, high_mm - _STEP[room.unit]), 0.0)
    ends = _up(room, ends_mm + _FREE_MM)
    return Pelmet(_up(room, depth), _up(room, above), ends, ends, _up(room, front_mm + _FREE_MM))


def usual_blind(room: Room) -> Blind:
    """A blind with a small box in the reveal, without cords."""
    return Blind(_up(room, 70.0), _up(room, 70.0))
