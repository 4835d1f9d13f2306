"""What stands near enough to a treatment for a rule about it to care.

A rule compares things with a treatment at distances that its limits name: what stands farther off than the greatest of all
limits changes nothing that it finds. A rule for which that does not hold says so (``Rule.is_near``).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from elevation.setting_out.model import BesideOut, ObstacleOut, OpeningOut, SetOut, Span, TreatmentOut
from elevation.setting_out.profile import around
from elevation.setting_out.reach import reach_of
from elevation.trade.model import Trade
from elevation.units import Length

Near = tuple[object, ...]
"""What stands near a treatment, to be compared as a whole."""


def greatest_limit(limits: Mapping[str, Length], trade: Trade) -> float:
    """The greatest length among the trade's limits and a room's own, in mm: no rule looks farther."""
    lengths = [row.value for row in trade.limits.values() if row.kind == "length"]
    return max(*lengths, *(own.mm for own in limits.values()), 0.0)


def near_of(treatment: TreatmentOut, far_mm: float) -> Callable[[SetOut], Near]:
    """A function that tells what of its wall stands within ``far_mm`` of a treatment."""
    reach = reach_of(treatment)
    left, right = reach[0] - far_mm, reach[1] + far_mm

    def within(things: Sequence[Any], span_of: Callable[[Any], Span]) -> tuple[Any, ...]:
        found = []
        for thing in things:
            low, high = span_of(thing)
            if low <= right and high >= left:
                found.append(thing)
        return tuple(found)

    def near(set_out: SetOut) -> Near:
        bands = within(set_out.bands, _span)
        obstacles = within(set_out.obstacles, _of_obstacle)
        # A band tells by its name what it comes from, however far away that hangs.
        named = {band.ref for band in bands}
        return (
            within(set_out.openings, _of_opening),
            obstacles,
            tuple(obstacle for obstacle in set_out.obstacles if obstacle.ref in named and obstacle not in obstacles),
            within(set_out.zones, _span),
            bands,
            within(set_out.beside, _of_beside),
            around(set_out.floor, left, right),
            around(set_out.ceiling, left, right),
        )

    return near


def _span(thing: Any) -> Span:
    return thing.left_mm, thing.right_mm


def _of_opening(opening: OpeningOut) -> Span:
    """An opening with its casing, its stool's horns and what its sash sweeps."""
    beside = opening.casing_mm + (opening.stool[1] if opening.stool is not None else 0.0)
    left, right = opening.left_mm - beside, opening.right_mm + beside
    for swept in opening.sweep:
        left, right = min(left, swept[0]), max(right, swept[2])
    return left, right


def _of_obstacle(obstacle: ObstacleOut) -> Span:
    """An obstacle with the room that its own sheet asks for."""
    free = obstacle.clearance_mm or 0.0
    return obstacle.left_mm - free, obstacle.right_mm + free


def _of_beside(thing: BesideOut) -> Span:
    free = thing.clearance_mm or 0.0
    xs = [x for x, _ in thing.outline]
    return min(xs) - free, max(xs) + free
