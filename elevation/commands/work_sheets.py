"""The sheets to work by, as ``elevation draw --sheet`` makes them."""

from __future__ import annotations

from elevation.commands import choosing
from elevation.commands.arguments import Draw
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import Dressed, dress
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.sheet.paper import page_named
from elevation.sheet.records import Page, Picture
from elevation.sheet.work.bench import bench_sheet
from elevation.trade.model import Trade
from elevation.trade.tables import row_of

WORK_SHEETS = ("bench",)
_SAW = "hacksaw"


def work_pages(given: Draw, room: Room, trade: Trade) -> tuple[Picture, ...]:
    """The pages of the sheet that was asked for, of one wall or of all."""
    wall = None if given.wall is None else choosing.walls(room, given.wall, given.room.name)[0]
    scheme = None
    if given.scheme is not None:
        of_wall = wall or choosing.walls(room, None, given.room.name)[0]
        chosen = choosing.schemes(of_wall, given.scheme, False, given.room.name)[0]
        wall, scheme = of_wall, None if chosen is None else chosen.id
    dressed = dress(room, trade, None if wall is None else wall.id, scheme)
    return bench_pages((dressed,), room, trade, None if given.paper is None else page_named(given.paper))


def bench_pages(rooms: tuple[Dressed, ...], first: Room, trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The bench sheet over rooms, said as the first of them is."""
    saw = row_of(trade.saws, _SAW, "saw")
    cuts = cut_list(rod_pieces(rooms, trade), saw)
    subject = ", ".join(dict.fromkeys(dressed.room.name for dressed in rooms if dressed.room.name))
    page = None if paper is None else Page(paper.name, paper.height_mm, paper.width_mm)
    return bench_sheet(cuts, saw, subject, style_for(first), page)
