"""Every sheet to work by, from rooms that are set out to pages: the one list that commands and window choose from."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec.structs import replace

from elevation.errors import Missing, said
from elevation.planning.buying.model import BuyingList
from elevation.planning.buying.table import table_rows
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import Dressed
from elevation.planning.drilling import drill_places
from elevation.planning.drilling_waits import waits_for
from elevation.planning.hanging import hanging_steps
from elevation.planning.house_schedule import house_schedule
from elevation.planning.house_table import schedule_rows
from elevation.planning.order import days_of
from elevation.planning.plate import Plate, plates
from elevation.planning.ready_words import ready_for
from elevation.planning.rod_pieces import rod_pieces
from elevation.planning.sewing.said import HEADS as SEWING_HEADS
from elevation.planning.sewing.said import table_rows as sewing_cells
from elevation.planning.sewing.whole import sewing_of
from elevation.planning.shop_made import flat_cuts, made_brackets
from elevation.planning.stops import stopped
from elevation.planning.story_stick import story_sticks
from elevation.planning.trial import trial_steps
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.dates import sheet_date
from elevation.sheet.facts import state_of, title_of
from elevation.sheet.records import Page, Picture
from elevation.sheet.work.bench import bench_sheet
from elevation.sheet.work.buying import buying_sheet
from elevation.sheet.work.drilling import drilling_sheets, waiting, withheld
from elevation.sheet.work.hanging import hanging_sheet
from elevation.sheet.work.house import house_sheet
from elevation.sheet.work.plate import plate_sheet
from elevation.sheet.work.sewing import cutting_sheet, window_sheet
from elevation.sheet.work.shop_made import made_parts
from elevation.sheet.work.story_stick import stick_sheet
from elevation.sheet.work.trial import order_sheet, trial_sheet
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.words import Message, Style, msg, say

_SAW = "hacksaw"

Maker = Callable[[Sequence[Dressed], Trade, Page | None], tuple[Picture, ...]]


def drilling_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """A page a bracket, or a pair of them; one that says why for each treatment that must not be drilled.

    Raises
    ------
    Missing
        There is nothing to drill for.
    """
    pages = [page for dressed in rooms for page in _drilling(dressed, trade, paper)]
    if not pages:
        raise _nothing_to_drill(rooms)
    return tuple(pages)


def _drilling(dressed: Dressed, trade: Trade, paper: Page | None) -> list[Picture]:
    style = style_for(dressed.room)
    pages: list[Picture] = []
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        stops = stopped(findings)
        for laid in wall.treatments:
            subject = _subject(dressed.room, wall, laid, style)
            if laid.ref in stops:
                pages.append(
                    withheld([say(one.text, style) for one in stops[laid.ref]], subject, style, paper, sheet_date())
                )
                continue
            reasons = waits_for(laid)
            if reasons:
                said_ = [say(one, style) for one in reasons]
                pages.append(waiting(said_, subject, style, paper, sheet_date()))
                continue
            for layer in laid.layers:
                own = [place for place in drill_places(wall, laid, trade) if place.ref[:-1] == layer.ref]
                pages.extend(drilling_sheets(own, subject, layer.support.diameter_mm, style, paper, sheet_date()))
    return pages


def hanging_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The steps of every treatment, each beginning a page of its own.

    Raises
    ------
    Missing
        There is nothing to hang.
    """
    pages = [page for dressed in rooms for page in _hanging(dressed, trade, paper)]
    if not pages:
        raise Missing(_names(rooms), "", said("has nothing to hang"), said("add a treatment, or name another wall"))
    return tuple(pages)


def _hanging(dressed: Dressed, trade: Trade, paper: Page | None) -> list[Picture]:
    style = style_for(dressed.room)
    pages: list[Picture] = []
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        stops = stopped(findings)
        for laid in wall.treatments:
            state = state_of((laid,))
            band = _band(style) if laid.ref in stops else ""
            pages.extend(
                hanging_sheet(
                    hanging_steps(dressed.room, wall, laid, trade),
                    _subject(dressed.room, wall, laid, style),
                    "" if state is None else say(state, style),
                    style,
                    paper,
                    band=band,
                )
            )
    return pages


def _band(style: Style) -> str:
    return say(msg("STOP: do not build this as drawn; see the findings"), style)


def _names(rooms: Sequence[Dressed]) -> str:
    return ", ".join(dict.fromkeys(dressed.room.name for dressed in rooms if dressed.room.name))


def _subject(room: Room, wall: SetOut, laid: TreatmentOut, style: Style) -> str:
    return " · ".join(text for text in (room.name, wall.wall_name or wall.wall, title_of(laid, style)) if text)


def bench_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The bench sheet over rooms, said as the first of them is."""
    saw = row_of(trade.saws, _SAW, "saw")
    cuts = cut_list(rod_pieces(rooms, trade), saw, trade)
    style = style_for(rooms[0].room)
    made = made_brackets(rooms, trade)
    flats = flat_cuts(made, saw, trade)
    return bench_sheet(
        cuts, saw, _names(rooms), style, paper, brackets=lambda width: made_parts(made, flats, trade, width, style)
    )


def trial_pages(rooms: Sequence[Dressed], _trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The tape trial of every treatment.

    Raises
    ------
    Missing
        There is nothing to try.
    """
    pages: list[Picture] = []
    for dressed in rooms:
        style = style_for(dressed.room)
        for wall in dressed.walls:
            for laid in wall.treatments:
                subject = _subject(dressed.room, wall, laid, style)
                pages.extend(trial_sheet(trial_steps(wall, laid), subject, style, paper))
    if not pages:
        raise Missing(_names(rooms), "", said("has nothing to hang"), said("add a treatment, or name another wall"))
    return tuple(pages)


def order_pages(rooms: Sequence[Dressed], _trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The order of work over rooms, said as the first of them is."""
    return order_sheet(days_of(rooms), _names(rooms), style_for(rooms[0].room), paper)


def buying_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The buying list over rooms, said as the first of them is."""
    return buying_sheet(_bought(rooms, trade), _names(rooms), style_for(rooms[0].room), paper)


def plate_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The drilling plates of rooms, said as the first of them is.

    Raises
    ------
    Missing
        There is nothing to drill for.
    """
    found, held = plates(rooms, trade), _withheld(rooms)
    if not found and not held:
        raise _nothing_to_drill(rooms)
    return plate_sheet(found, held, _names(rooms), style_for(rooms[0].room), paper)


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
        raise Missing(_names(rooms), "", said("has no two windows alike that one stick would serve"), right)
    return stick_sheet(found, _withheld(rooms), _names(rooms), style_for(rooms[0].room), paper)


def plates_to_cut(rooms: Sequence[Dressed], trade: Trade) -> tuple[Plate, ...]:
    """The same for a cutting machine.

    Raises
    ------
    Missing
        There is nothing to drill for, or nothing that may be drilled.
    """
    found = plates(rooms, trade)
    if not found and _withheld(rooms):
        wrong = said("is withheld: {names} cannot be built as drawn", names=", ".join(_withheld(rooms)))
        raise Missing(_names(rooms), "", wrong, said("mend what stops it: see the findings"))
    if not found:
        raise _nothing_to_drill(rooms)
    return found


def _nothing_to_drill(rooms: Sequence[Dressed]) -> Missing:
    right = said("give a rod on brackets, or name another wall")
    return Missing(_names(rooms), "", said("has no bracket to drill for"), right)


def _withheld(rooms: Sequence[Dressed]) -> tuple[str, ...]:
    """Treatments that must not be drilled for."""
    return tuple(
        _subject(dressed.room, wall, laid, style_for(dressed.room))
        for dressed in rooms
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True)
        for laid in wall.treatments
        if laid.ref in stopped(findings)
    )


def house_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """All walls, all windows and the totals over rooms, said as the first of them is."""
    return house_sheet(rooms, trade, _names(rooms), style_for(rooms[0].room), paper)


def house_rows(rooms: Sequence[Dressed], trade: Trade) -> tuple[tuple[str, ...], ...]:
    """The schedule of windows as a table."""
    return tuple(schedule_rows(rooms, house_schedule(rooms, trade), replace(style_for(rooms[0].room), plain=True)))


def buying_rows(rooms: Sequence[Dressed], trade: Trade) -> tuple[tuple[str, ...], ...]:
    """The buying list as a table."""
    style = replace(style_for(rooms[0].room), plain=True)
    return tuple(table_rows(_bought(rooms, trade), style.unit, style))


def _bought(rooms: Sequence[Dressed], trade: Trade) -> BuyingList:
    saw = row_of(trade.saws, _SAW, "saw")
    return buying_list(rooms, cut_list(rod_pieces(rooms, trade), saw, trade), trade)


def sewing_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The bolts of each room, then the pages of each window that hangs any cloth.

    Raises
    ------
    Missing
        No cloth hangs.
    """
    pages = [page for dressed in rooms for page in _sewing(dressed, trade, paper)]
    if not pages:
        raise Missing(_names(rooms), "", said("has no cloth to sew"), said("add panels, or name another wall"))
    return tuple(pages)


def sewing_rows(rooms: Sequence[Dressed], trade: Trade) -> tuple[tuple[str, ...], ...]:
    """Bolts and panels of all rooms as a table."""
    head = replace(style_for(rooms[0].room), plain=True)
    rows = [tuple(say(name, head) for name in SEWING_HEADS)]
    for dressed in rooms:
        style = replace(style_for(dressed.room), plain=True)
        rows.extend(sewing_cells(dressed, sewing_of(dressed, trade), style))
    return tuple(rows)


def _sewing(dressed: Dressed, trade: Trade, paper: Page | None) -> list[Picture]:
    style = style_for(dressed.room)
    whole = sewing_of(dressed, trade)
    pages: list[Picture] = []
    if whole.bolts:
        pages.extend(cutting_sheet(whole.bolts, dressed.room.name, style, paper, sheet_date()))
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        stops = stopped(findings)
        for laid in wall.treatments:
            own = [layer for layer in whole.layers if layer.hung.laid.ref == laid.ref]
            if not own:
                continue
            state = state_of((laid,))
            pages.extend(
                window_sheet(
                    own,
                    [ready_for(dressed.room, layer.hung.layer, trade) for layer in own],
                    _subject(dressed.room, wall, laid, style),
                    "" if state is None else say(state, style),
                    style,
                    trade,
                    paper,
                    band=_band(style) if laid.ref in stops else "",
                    date=sheet_date(),
                )
            )
    return pages


WORK_SHEETS: dict[str, tuple[Message, Maker]] = {
    "house": (msg("House sheet"), house_pages),
    "trial": (msg("Tape trial"), trial_pages),
    "order": (msg("Order of work"), order_pages),
    "buying": (msg("Buying list"), buying_pages),
    "bench": (msg("Bench sheet"), bench_pages),
    "sewing": (msg("Sewing sheets"), sewing_pages),
    "drilling": (msg("Drilling sheets"), drilling_pages),
    "plate": (msg("Drilling plates"), plate_pages),
    "stick": (msg("Story sticks"), stick_pages),
    "hanging": (msg("Hanging sheets"), hanging_pages),
}
"""By the name on the command line: what it is called, and what makes it."""

WORK_TABLES: dict[str, Callable[[Sequence[Dressed], Trade], tuple[tuple[str, ...], ...]]] = {
    "house": house_rows,
    "buying": buying_rows,
    "sewing": sewing_rows,
}
"""Sheets that are tables as well, for other programs: what makes their rows, the head first."""

TO_CUT: dict[str, Callable[[Sequence[Dressed], Trade], tuple[Plate, ...]]] = {"plate": plates_to_cut}
"""Sheets that a cutting machine takes as well: what it is to cut."""
