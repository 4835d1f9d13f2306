"""Sheets that are one over all rooms, from rooms that are set out to pages, tables, and files for a machine."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.errors import Missing, said
from elevation.planning.buying.model import BuyingList
from elevation.planning.buying.shelf import saw_of
from elevation.planning.buying.table import table_rows
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import Dressed
from elevation.planning.house_schedule import house_schedule
from elevation.planning.house_table import schedule_rows
from elevation.planning.order import days_of
from elevation.planning.plate import Plate, plates
from elevation.planning.rod_pieces import rod_pieces
from elevation.planning.shop_made import flat_cuts, made_brackets
from elevation.planning.story_stick import story_sticks
from elevation.room.style import style_for
from elevation.sheet.records import Page, Picture
from elevation.sheet.work.bench import bench_sheet
from elevation.sheet.work.buying import buying_sheet
from elevation.sheet.work.house import house_sheet
from elevation.sheet.work.naming import names_of, nothing_to_drill, withheld_of
from elevation.sheet.work.page import Sheet
from elevation.sheet.work.plate import plate_sheet
from elevation.sheet.work.shop_made import made_parts
from elevation.sheet.work.story_stick import stick_sheet
from elevation.sheet.work.trial import order_sheet
from elevation.trade.model import Trade


def _sheet(rooms: Sequence[Dressed], paper: Page | None) -> Sheet:
    """One sheet over all rooms, said as the first of them is."""
    return Sheet(names_of(rooms), style_for(rooms[0].room), paper)


def house_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """All walls, all windows and the totals over rooms, said as the first of them is."""
    return house_sheet(rooms, trade, _sheet(rooms, paper))


def order_pages(rooms: Sequence[Dressed], _trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The order of work over rooms, said as the first of them is."""
    return order_sheet(days_of(rooms), _sheet(rooms, paper))


def buying_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The buying list over rooms, said as the first of them is."""
    return buying_sheet(_bought(rooms, trade), _sheet(rooms, paper))


def bench_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The bench sheet over rooms, said as the first of them is."""
    saw = saw_of(trade)
    cuts = cut_list(rod_pieces(rooms, trade), saw, trade)
    sheet = _sheet(rooms, paper)
    made = made_brackets(rooms, trade)
    flats = flat_cuts(made, saw, trade)
    return bench_sheet(cuts, saw, sheet, brackets=lambda page: made_parts(made, flats, trade, page, sheet.style))


def plate_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The drilling plates of rooms, said as the first of them is.

    Raises
    ------
    Missing
        There is nothing to drill for.
    """
    found, held = plates(rooms, trade), withheld_of(rooms)
    if not found and not held:
        raise nothing_to_drill(rooms)
    return plate_sheet(found, held, _sheet(rooms, paper))


def stick_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The story sticks of rooms, said as the first of them is.

    Raises
    ------
    Missing
        No two windows are alike.
    """
    found = story_sticks(rooms, trade)
    if not found.sticks:
        right = said("the drilling sheets have the figures of each")
        raise Missing(names_of(rooms), "", said("has no two windows alike that one stick would serve"), right)
    return stick_sheet(found, withheld_of(rooms), _sheet(rooms, paper))


def plates_to_cut(rooms: Sequence[Dressed], trade: Trade) -> tuple[Plate, ...]:
    """The same for a cutting machine.

    Raises
    ------
    Missing
        There is nothing to drill for, or nothing that may be drilled.
    """
    found = plates(rooms, trade)
    if not found and withheld_of(rooms):
        wrong = said("is withheld: {names} cannot be built as drawn", names=", ".join(withheld_of(rooms)))
        raise Missing(names_of(rooms), "", wrong, said("mend what stops it: see the findings"))
    if not found:
        raise nothing_to_drill(rooms)
    return found


def house_rows(rooms: Sequence[Dressed], trade: Trade) -> tuple[tuple[str, ...], ...]:
    """The schedule of windows as a table."""
    return tuple(schedule_rows(rooms, house_schedule(rooms, trade), replace(style_for(rooms[0].room), plain=True)))


def buying_rows(rooms: Sequence[Dressed], trade: Trade) -> tuple[tuple[str, ...], ...]:
    """The buying list as a table."""
    style = replace(style_for(rooms[0].room), plain=True)
    return tuple(table_rows(_bought(rooms, trade), style.unit, style))


def _bought(rooms: Sequence[Dressed], trade: Trade) -> BuyingList:
    saw = saw_of(trade)
    return buying_list(rooms, cut_list(rod_pieces(rooms, trade), saw, trade), trade)
