"""The sheets to work by, as ``elevation draw --sheet`` makes them."""

from __future__ import annotations

from elevation.commands import choosing
from elevation.commands.arguments import Draw
from elevation.planning.dressed import dress
from elevation.room.model import Room
from elevation.sheet.paper import page_named
from elevation.sheet.records import Page, Picture
from elevation.sheet.work.whole import WORK_SHEETS
from elevation.trade.model import Trade


def work_pages(given: Draw, room: Room, trade: Trade) -> tuple[Picture, ...]:
    """The pages of the sheet that was asked for, of one wall or of all."""
    wall = None if given.wall is None else choosing.walls(room, given.wall, given.room.name)[0]
    scheme = None
    if given.scheme is not None:
        of_wall = wall or choosing.walls(room, None, given.room.name)[0]
        chosen = choosing.schemes(of_wall, given.scheme, False, given.room.name)[0]
        wall, scheme = of_wall, None if chosen is None else chosen.id
    dressed = dress(room, trade, None if wall is None else wall.id, scheme)
    paper = None if given.paper is None else page_named(given.paper)
    upright = None if paper is None else Page(paper.name, paper.height_mm, paper.width_mm)
    _, maker = WORK_SHEETS[given.sheet]
    return maker((dressed,), trade, upright)
