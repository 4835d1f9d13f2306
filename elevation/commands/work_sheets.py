"""The sheets to work by, as ``elevation draw --sheet`` makes them."""

from __future__ import annotations

from elevation.commands import choosing
from elevation.commands.arguments import Draw
from elevation.errors import BadInput
from elevation.output.cutting_files import to_cutting_svg, to_dxf
from elevation.output.tables import to_csv, to_text
from elevation.planning.dressed import Dressed, dress
from elevation.room.model import Room
from elevation.sheet.paper import page_named
from elevation.sheet.records import Page, Picture
from elevation.sheet.work.whole import TO_CUT, WORK_SHEETS, WORK_TABLES
from elevation.trade.model import Trade


def work_pages(given: Draw, room: Room, trade: Trade) -> tuple[Picture, ...]:
    """The pages of the sheet that was asked for, of one wall or of all."""
    paper = None if given.paper is None else page_named(given.paper)
    upright = None if paper is None else Page(paper.name, paper.height_mm, paper.width_mm)
    _, maker = WORK_SHEETS[given.sheet]
    return maker((_dressed(given, room, trade),), trade, upright)


def work_table(given: Draw, room: Room, trade: Trade) -> bytes:
    """The same sheet as a table, by the file's ending: ``.csv`` or ``.txt``; raises BadInput where it is none."""
    ending = given.out.suffix.lower()
    if given.sheet not in WORK_TABLES:
        raise BadInput(
            "command line", "--out", f"“{given.out.name}” is a table", f"tables are made of {', '.join(WORK_TABLES)}"
        )
    rows = WORK_TABLES[given.sheet]((_dressed(given, room, trade),), trade)
    return (to_csv if ending == ".csv" else to_text)(rows)


def work_cut(given: Draw, room: Room, trade: Trade) -> bytes:
    """The same sheet for a cutting machine, ``.dxf`` or ``.svg``; raises BadInput where it is none for one."""
    if given.sheet not in TO_CUT:
        wrong = f"“{given.out.name}” is for a cutting machine"
        raise BadInput("command line", "--out", wrong, f"that is made of {', '.join(TO_CUT)}")
    found = TO_CUT[given.sheet]((_dressed(given, room, trade),), trade)
    return (to_dxf if given.out.suffix.lower() == ".dxf" else to_cutting_svg)(found)


def _dressed(given: Draw, room: Room, trade: Trade) -> Dressed:
    wall = None if given.wall is None else choosing.walls(room, given.wall, given.room.name)[0]
    scheme = None
    if given.scheme is not None:
        of_wall = wall or choosing.walls(room, None, given.room.name)[0]
        chosen = choosing.schemes(of_wall, given.scheme, False, given.room.name)[0]
        wall, scheme = of_wall, None if chosen is None else chosen.id
    return dress(room, trade, None if wall is None else wall.id, scheme)
