"""Ceiling and floor lines: heights between measured points, least and greatest over a stretch of wall."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from elevation.room.model import Station
from elevation.setting_out.model import Point, Profile


def profile_of(
    stations: Sequence[Station], assumed_mm: float, lift_mm: float = 0.0, *, known_level: bool = False
) -> Profile:
    """A profile from measured stations.

    Parameters
    ----------
    stations : sequence of Station
        In any order; none: level at ``assumed_mm``, and known only where ``known_level`` says so.
    assumed_mm : float
        The height that is drawn where nothing was measured.
    lift_mm : float
        Added to every height (a floor still to be laid).
    """
    if not stations:
        return Profile(((0.0, assumed_mm + lift_mm),), known=known_level)
    points = sorted((station.x.mm, station.height.mm + lift_mm) for station in stations)
    return Profile(tuple(points))


def height_at(profile: Profile, x_mm: float) -> float:
    """Height of the line at ``x_mm``: straight between points, level beyond the first and last."""
    points = profile.points
    if x_mm <= points[0][0]:
        return points[0][1]
    for (x0, y0), (x1, y1) in pairwise(points):
        if x_mm < x1:
            return y0 + (y1 - y0) * (x_mm - x0) / (x1 - x0)
    return points[-1][1]


def extent_over(profile: Profile, left_mm: float, right_mm: float) -> tuple[float, float]:
    """Least and greatest height over a stretch: at its ends and at the points within."""
    if len(profile.points) == 1:
        level = profile.points[0][1]
        return level, level
    a, b = height_at(profile, left_mm), height_at(profile, right_mm)
    low, high = (a, b) if a < b else (b, a)
    for x, y in profile.points:
        if left_mm < x < right_mm:
            low, high = min(low, y), max(high, y)
    return low, high


def lowest_over(profile: Profile, left_mm: float, right_mm: float) -> float:
    """Least height over a stretch."""
    return extent_over(profile, left_mm, right_mm)[0]


def stretch(profile: Profile, left_mm: float, right_mm: float, shift_mm: float = 0.0) -> tuple[Point, ...]:
    """The line from ``left_mm`` to ``right_mm`` as points, moved up by ``shift_mm``."""
    inner = [(x, y + shift_mm) for x, y in profile.points if left_mm < x < right_mm]
    return (
        (left_mm, height_at(profile, left_mm) + shift_mm),
        *inner,
        (right_mm, height_at(profile, right_mm) + shift_mm),
    )


def around(profile: Profile, left_mm: float, right_mm: float) -> tuple[bool, tuple[Point, ...]]:
    """All that tells how the line runs over a stretch: whether it was measured, and its points there and next to there.

    Lines for which this is the same have the very same heights over the stretch.
    """
    points = profile.points
    first, last = 0, len(points) - 1
    while first < last and points[first + 1][0] <= left_mm:
        first += 1
    while last > first and points[last - 1][0] >= right_mm:
        last -= 1
    return profile.known, points[first : last + 1]
