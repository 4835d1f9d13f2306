"""Everything that can be dragged on one wall: one family of handles a file, listed here and nowhere else."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.handles import (
    blind,
    board,
    bracket,
    corner_angle,
    hem,
    lead,
    obstacle,
    opening_heights,
    opening_sides,
    pelmet,
    projection,
    rod_ends,
    rod_height,
    stations,
    studs,
    tie,
    wall_end,
)
from elevation.handles.context import Context, Family
from elevation.handles.model import Handle
from elevation.room.find import wall_of
from elevation.room.model import Room
from elevation.setting_out.model import SetOut
from elevation.trade.model import Trade

FAMILIES: tuple[Family, ...] = (
    rod_height.FAMILY,
    rod_ends.FAMILY,
    projection.FAMILY,
    bracket.FAMILY,
    board.FAMILY,
    hem.FAMILY,
    lead.FAMILY,
    tie.FAMILY,
    pelmet.FAMILY,
    blind.FAMILY,
    opening_sides.FAMILY,
    opening_heights.FAMILY,
    obstacle.FAMILY,
    stations.FAMILY,
    studs.FAMILY,
    wall_end.FAMILY,
    corner_angle.FAMILY,
)
"""The order of the handles: what hangs first, then what it hangs on."""


def handles(room: Room, set_out: SetOut, trade: Trade) -> tuple[Handle, ...]:
    """All handles of a wall.

    Parameters
    ----------
    room : Room
    set_out : SetOut
        One of its walls, set out.
    trade : Trade
    """
    context = Context(room, wall_of(room, set_out.wall), set_out, trade)
    return tuple(handle for family in FAMILIES for handle in family.handles(context))


def own_places(handle: Handle, room: Room, set_out: SetOut, trade: Trade, alone: bool) -> Iterable[Sticking]:
    """Where a handle may stick for reasons that are no rule's: neighbours, proportions, what the shop sells."""
    context = Context(room, wall_of(room, set_out.wall), set_out, trade)
    for family in FAMILIES:
        if handle.axis in family.axes:
            yield from family.places(handle, context, alone)
