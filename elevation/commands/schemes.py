"""Schemes side by side, as ``elevation draw --sheet schemes`` makes them."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.commands import choosing
from elevation.commands.arguments import Draw
from elevation.errors import Missing, said
from elevation.planning.comparing import compare, pages_of
from elevation.room.model import Room, Wall
from elevation.sheet.paper import page_named, scale_of
from elevation.sheet.records import Picture
from elevation.sheet.schemes import scheme_sheet
from elevation.trade.model import Trade


def scheme_pictures(given: Draw, room: Room, walls: Sequence[Wall], trade: Trade) -> list[Picture]:
    """A page for up to four schemes of each wall; with ``--scheme`` that one, before and after.

    Raises
    ------
    Missing
        No wall has a scheme.
    NoSuch
        A wall has no scheme of that name.
    BadInput
        The scale that was asked for does not fit.
    """
    page = None if given.paper is None else page_named(given.paper)
    scale = None if given.scale is None else scale_of(given.scale)
    pages: list[Picture] = []
    for wall in walls:
        sets = pages_of(room, wall.id)
        if given.scheme is not None:
            scheme = choosing.schemes(wall, given.scheme, False, given.room.name)[0]
            sets = () if scheme is None else ((None, scheme.id),)
        pages += [scheme_sheet(compare(room, wall.id, ids, trade), trade, page, scale) for ids in sets]
    if not pages:
        raise Missing(room.name, "", said("has no scheme to compare"), said("add a treatment, or name another wall"))
    return pages
