"""Where the angle irons of a pelmet's shelf go: evenly, each brought onto the framing that no other is nearer to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from elevation.setting_out.framing import FRAMING
from elevation.setting_out.model import PelmetOut, ZoneOut
from elevation.units.tolerance import TOUCH_MM

_SIDE_BY_SIDE_MM = 50.8
"""Nearer to each other than 2 in two irons are one (common practice, no source)."""


def framing_behind(pelmet: PelmetOut, zones: Sequence[ZoneOut]) -> tuple[ZoneOut, ...]:
    """The framing that stands where a pelmet's shelf is, wherever along the wall."""
    found = []
    for zone in zones:
        if zone.kind in FRAMING:
            high = pelmet.top_mm + pelmet.up_at((zone.left_mm + zone.right_mm) / 2)
            if zone.bottom_mm - TOUCH_MM <= high <= zone.top_mm + TOUCH_MM:
                found.append(zone)
    return tuple(found)


def target_in(zone: ZoneOut, x_mm: float) -> float:
    """Where in a piece of framing a screw goes: the middle of a stud; of a header the place nearest to ``x_mm``."""
    if zone.kind != "header":
        return (zone.left_mm + zone.right_mm) / 2
    return min(max(x_mm, zone.left_mm), zone.right_mm)


def on_framing(pelmet: PelmetOut, zones: Sequence[ZoneOut], apart_mm: float) -> PelmetOut:
    """A pelmet with its irons on framing.

    Parameters
    ----------
    pelmet : PelmetOut
        Its irons evenly along its shelf.
    zones : sequence of ZoneOut
        What stands inside the wall.
    apart_mm : float
        The farthest from one iron to the next: where a move leaves more, one is added between.

    Returns
    -------
    PelmetOut
        The very same where no framing is near any iron.
    """
    framing = framing_behind(pelmet, zones)
    if not framing or len(pelmet.irons_mm) < 2:
        return pelmet
    places: list[float] = []
    for x in pelmet.irons_mm:
        at = min(_targets(pelmet, framing, x), key=lambda at: abs(at - x), default=x)
        if min(pelmet.irons_mm, key=lambda other: abs(at - other)) != x:
            at = x  # another iron is nearer to it
        if not places or at - places[-1] > _SIDE_BY_SIDE_MM:
            places.append(at)
    irons = tuple(_filled(pelmet, framing, places, apart_mm))
    return pelmet if irons == pelmet.irons_mm else replace(pelmet, irons_mm=irons)


def _targets(pelmet: PelmetOut, framing: Sequence[ZoneOut], x_mm: float) -> Iterator[float]:
    """Where screws would go near a place, as far as the shelf covers that."""
    for zone in framing:
        at = target_in(zone, x_mm)
        if pelmet.left_mm <= at <= pelmet.right_mm:
            yield at


def _filled(pelmet: PelmetOut, framing: Sequence[ZoneOut], places: Sequence[float], apart_mm: float) -> Iterator[float]:
    """The same irons with others between those that stand too far apart, on framing where some is there."""
    yield places[0]
    last = places[0]
    for at in places[1:]:
        while apart_mm > _SIDE_BY_SIDE_MM and at - last > apart_mm + TOUCH_MM:
            # As far along as framing allows, then the fewest are needed; on the board alone half way.
            far = last + apart_mm
            found = [x for x in _targets(pelmet, framing, far) if last + _SIDE_BY_SIDE_MM < x <= far + TOUCH_MM]
            last = max(found, default=last + min(apart_mm, (at - last) / 2))
            yield last
        yield at
        last = at
