"""A wall set out without what hangs on it: its chain, its lines, its openings and what stands there."""

from __future__ import annotations

from msgspec import Struct

from elevation.room.corners import Side, angles_of
from elevation.room.model import Obstacle, Opening, Room, Wall
from elevation.setting_out.chain import Resolved, resolved
from elevation.setting_out.facts import Defaults, Overhead, WallFacts
from elevation.setting_out.model import ObstacleOut, OpeningOut
from elevation.setting_out.opening import Placed
from elevation.setting_out.profile import profile_of
from elevation.units import Length


class Grounds(Struct, frozen=True, gc=False):
    """A wall set out without what hangs on it."""

    defaults: Defaults
    chain: Resolved
    placed: dict[str, Placed]
    openings: tuple[OpeningOut, ...]
    facts: WallFacts
    overhead: Overhead
    obstacles: tuple[ObstacleOut, ...]


def chain_of(
    openings: tuple[Opening, ...],
    width: Length | None,
    gap_right: Length | None,
    wall_id: str,
    graduation: Length | None,
    unit: str,
    defaults: Defaults,
) -> Resolved:
    """The chain of a wall, from just those facts that it depends on."""
    wall = Wall(id=wall_id, openings=openings, width=width, gap_right=gap_right)
    mark = graduation.mm if graduation is not None else (25.4 / 16 if unit == "in" else 1.0)
    return resolved(wall, mark, defaults.assumed_gap_mm)


def facts_of(room: Room, wall: Wall, chain: Resolved, openings: tuple[OpeningOut, ...], defaults: Defaults) -> WallFacts:
    """Width and lines of a wall, with usual ones where they were not measured."""
    # A ceiling that was not measured is drawn at a usual height, or above what is known to stand under it.
    tallest = max((opening.casing_top_mm for opening in openings), default=0.0)
    ceiling_mm = max(defaults.assumed_ceiling_mm, tallest + defaults.assumed_gap_mm)
    width_mm = chain.width_mm
    if not chain.known_width:
        # A wall is at least as wide as what was measured on it.
        width_mm = max([width_mm, *(obstacle.left.mm + obstacle.width.mm for obstacle in wall.obstacles)])
    return WallFacts(
        width_mm=width_mm,
        known_width=chain.known_width,
        ceiling=profile_of(wall.ceiling, ceiling_mm),
        # Heights are measured from the floor, so one without stations is known: level at the datum.
        floor=profile_of(wall.floor, 0.0, room.floor_to_come.mm if room.floor_to_come else 0.0, known_level=True),
        crown_mm=wall.crown.mm if wall.crown else 0.0,
        baseboard_mm=wall.baseboard.mm if wall.baseboard else 0.0,
        floor_to_come_mm=room.floor_to_come.mm if room.floor_to_come else 0.0,
        angles=angles_of(room, wall),
    )


def obstacles_of(wall_id: str, obstacles: tuple[Obstacle, ...]) -> tuple[ObstacleOut, ...]:
    """What stands on a wall, in its own mm."""
    return tuple(
        ObstacleOut(
            ref=(wall_id, obstacle.id),
            kind=obstacle.kind,
            name=obstacle.name,
            left_mm=obstacle.left.mm,
            right_mm=obstacle.left.mm + obstacle.width.mm,
            bottom_mm=obstacle.bottom.mm,
            top_mm=obstacle.bottom.mm + obstacle.height.mm,
            out_mm=obstacle.projection.mm,
            clearance_mm=obstacle.clearance.mm if obstacle.clearance else None,
        )
        for obstacle in obstacles
    )


def from_corner(side: Side, grounds: Grounds) -> tuple[tuple[float, float, float], ...]:
    """The openings of a neighbour as distances from the corner at ``side`` of this wall."""
    wide = grounds.facts.width_mm
    if side == "right":
        return tuple((one.left_mm, one.right_mm, one.reveal_mm or 0.0) for one in grounds.openings)
    return tuple((wide - one.right_mm, wide - one.left_mm, one.reveal_mm or 0.0) for one in reversed(grounds.openings))
