"""Where cables and pipes likely run inside the wall: straight from what they feed, and where a country usually lays them.

A band says "detect first here". No place outside the bands is free for that.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct

from elevation.room.model import Ref
from elevation.setting_out.facts import WallFacts
from elevation.setting_out.model import BandOut, ObstacleOut, OpeningOut
from elevation.trade.model import BandRow, Trade
from elevation.trade.tables import limit_of
from elevation.units import Length

CABLED = frozenset({"outlet", "switch", "light"})
PIPED = frozenset({"hot-water-radiator", "pipe"})


class BandSizes(Struct, frozen=True, gc=False):
    """How far a band reaches beyond what it is about, in mm, and the country's rows."""

    cable_mm: float
    pipe_mm: float
    rows: tuple[BandRow, ...]


def band_sizes(trade: Trade, limits: Mapping[str, Length], wiring: str) -> BandSizes:
    """The figures of the limits table, or the room's own, and the rows of the country."""

    def length(limit_id: str) -> float:
        own = limits.get(limit_id)
        return limit_of(trade, limit_id) if own is None else own.mm

    rows = tuple(row for row in trade.bands.values() if row.region == wiring)
    return BandSizes(length("cable-band"), length("pipe-band"), rows)


def bands_of(
    wall_id: str,
    obstacles: tuple[ObstacleOut, ...],
    openings: tuple[OpeningOut, ...],
    ends: tuple[str, str],
    facts: WallFacts,
    sizes: BandSizes,
) -> tuple[BandOut, ...]:
    """The bands of a wall: those of boxes and pipes first, then those of the country.

    Parameters
    ----------
    wall_id : str
    obstacles : tuple of ObstacleOut
    openings : tuple of OpeningOut
    ends : (str, str)
        ``corner`` or ``open``, left and right.
    facts : WallFacts
    sizes : BandSizes
    """
    low = min(y for _, y in facts.floor.points)
    high = max(y for _, y in facts.ceiling.points)
    found = [band for obstacle in obstacles for band in _of_obstacle(obstacle, facts.width_mm, low, high, sizes)]
    for row in sizes.rows:
        found.extend(_of_row(row, (wall_id,), openings, ends, facts))
    return tuple(found)


def _of_obstacle(obstacle: ObstacleOut, width_mm: float, low: float, high: float, sizes: BandSizes) -> Iterator[BandOut]:
    """Straight up and down, then straight to both sides, over the whole wall."""
    left, right, bottom, top = obstacle.left_mm, obstacle.right_mm, obstacle.bottom_mm, obstacle.top_mm
    ref = obstacle.ref
    if obstacle.kind in CABLED:
        by = sizes.cable_mm
        yield BandOut("cable", ref, "", max(left - by, 0.0), low, min(right + by, width_mm), high, is_upright=True)
        yield BandOut("cable", ref, "", 0.0, bottom - by, width_mm, top + by)
    elif obstacle.kind == "hot-water-radiator":
        # Its valves stand at the lower corners.
        by = sizes.pipe_mm
        for x in (left, right):
            yield BandOut("pipe", ref, "", max(x - by, 0.0), low, min(x + by, width_mm), high, is_upright=True)
        yield BandOut("pipe", ref, "", 0.0, bottom - by, width_mm, bottom + by)
    elif obstacle.kind == "pipe":
        by = sizes.pipe_mm
        if top - bottom >= right - left:
            yield BandOut("pipe", ref, "", max(left - by, 0.0), low, min(right + by, width_mm), high, is_upright=True)
        else:
            yield BandOut("pipe", ref, "", 0.0, bottom - by, width_mm, top + by)


def _of_row(
    row: BandRow, ref: Ref, openings: tuple[OpeningOut, ...], ends: tuple[str, str], facts: WallFacts
) -> Iterator[BandOut]:
    low = min(y for _, y in facts.floor.points)
    high = max(y for _, y in facts.ceiling.points)
    width = facts.width_mm
    if row.side == "ceiling":
        yield from _along(row, ref, facts.ceiling.points, width, -1.0)
    elif row.side == "floor":
        yield from _along(row, ref, facts.floor.points, width, 1.0)
    elif row.side == "corner":
        for kind, a, b in ((ends[0], row.near_mm, row.far_mm), (ends[1], width - row.far_mm, width - row.near_mm)):
            if kind == "corner":
                yield BandOut("cable", ref, row.id, max(a, 0.0), low, min(b, width), high, is_upright=True)
    else:
        for opening in openings:
            for a, b in (
                (opening.left_mm - row.far_mm, opening.left_mm - row.near_mm),
                (opening.right_mm + row.near_mm, opening.right_mm + row.far_mm),
            ):
                if b > 0.0 and a < width:
                    yield BandOut("cable", opening.ref, row.id, max(a, 0.0), low, min(b, width), high, is_upright=True)


def _along(row: BandRow, ref: Ref, points: Iterable[tuple[float, float]], width: float, way: float) -> Iterator[BandOut]:
    """A band along ceiling or floor; along a line that is not level one box holds all of it."""
    heights = [y for _, y in points]
    near, far = (max(heights), min(heights)) if way < 0 else (min(heights), max(heights))
    a, b = near + way * row.near_mm, far + way * row.far_mm
    yield BandOut("cable", ref, row.id, 0.0, min(a, b), width, max(a, b))
