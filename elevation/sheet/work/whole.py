"""Every sheet to work by, from rooms that are set out to pages: the one list that commands and window choose from."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from msgspec.structs import replace

from elevation.errors import Missing, said
from elevation.findings.model import Finding
from elevation.planning.dressed import Dressed
from elevation.planning.drilling import drill_places
from elevation.planning.drilling_waits import waits_for
from elevation.planning.hanging import hanging_steps
from elevation.planning.plate import Plate
from elevation.planning.ready_words import ready_for
from elevation.planning.sewing.said import HEADS as SEWING_HEADS
from elevation.planning.sewing.said import table_rows as sewing_cells
from elevation.planning.sewing.whole import sewing_of
from elevation.planning.stops import stopped
from elevation.planning.tiles import tilings
from elevation.planning.trial import trial_steps
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.facts import state_of
from elevation.sheet.records import Page, Picture
from elevation.sheet.work.drilling import drilling_sheets, waiting, withheld
from elevation.sheet.work.hanging import hanging_sheet
from elevation.sheet.work.labels import labels_pages, labels_rows
from elevation.sheet.work.lists import (
    bench_pages,
    buying_pages,
    buying_rows,
    house_pages,
    house_rows,
    order_pages,
    plate_pages,
    plates_to_cut,
    stick_pages,
)
from elevation.sheet.work.naming import band_of, names_of, nothing_to_drill, subject_of
from elevation.sheet.work.page import Sheet
from elevation.sheet.work.sewing import cutting_sheet, window_sheet
from elevation.sheet.work.tiles import tile_sheets
from elevation.sheet.work.trial import trial_sheet
from elevation.trade.model import Trade
from elevation.words import Message, msg, say

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
        raise nothing_to_drill(rooms)
    return tuple(pages)


def _drilling(dressed: Dressed, trade: Trade, paper: Page | None) -> list[Picture]:
    pages: list[Picture] = []
    for wall, laid, sheet, held in _to_drill(dressed, paper):
        if held is not None:
            pages.append(held)
            continue
        for layer in laid.layers:
            own = [place for place in drill_places(wall, laid, trade) if place.ref[:-1] == layer.ref]
            pages.extend(drilling_sheets(own, layer.support.diameter_mm, sheet))
    return pages


def _to_drill(dressed: Dressed, paper: Page | None) -> Iterator[tuple[SetOut, TreatmentOut, Sheet, Picture | None]]:
    """Every treatment with what its sheets are about, and the page in place of them where none must be made."""
    style = style_for(dressed.room)
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        stops = stopped(findings)
        for laid in wall.treatments:
            sheet = Sheet(subject_of(dressed.room, wall, laid, style), style, paper)
            yield wall, laid, sheet, _held_back(laid, stops.get(laid.ref, ()), sheet)


def tile_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """Sheets from casings' corners to brackets; why there are none for a treatment that must not be drilled.

    Raises
    ------
    Missing
        No bracket stands beside an opening with a level head.
    """
    pages: list[Picture] = []
    for dressed in rooms:
        for wall, laid, sheet, held in _to_drill(dressed, paper):
            pages.extend([held] if held is not None else tile_sheets(tilings(laid, drill_places(wall, laid, trade)), sheet))
    if not pages:
        right = said("the drilling sheets have the figures of each")
        raise Missing(names_of(rooms), "", said("has no bracket beside a casing with a level head"), right)
    return tuple(pages)


def _held_back(laid: TreatmentOut, stops: Sequence[Finding], sheet: Sheet) -> Picture | None:
    """The page in place of a drilling sheet that must not be made, or not yet; None where nothing hinders it."""
    if stops:
        return withheld([say(one.text, sheet.style) for one in stops], sheet)
    reasons = waits_for(laid)
    return waiting([say(one, sheet.style) for one in reasons], sheet) if reasons else None


def hanging_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The steps of every treatment, each beginning a page of its own.

    Raises
    ------
    Missing
        There is nothing to hang.
    """
    pages = [page for dressed in rooms for page in _hanging(dressed, trade, paper)]
    if not pages:
        raise Missing(names_of(rooms), "", said("has nothing to hang"), said("add a treatment, or name another wall"))
    return tuple(pages)


def _hanging(dressed: Dressed, trade: Trade, paper: Page | None) -> list[Picture]:
    pages: list[Picture] = []
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        stops = stopped(findings)
        for laid in wall.treatments:
            sheet = _told(dressed, wall, laid, paper, is_stopped=laid.ref in stops)
            pages.extend(hanging_sheet(hanging_steps(dressed.room, wall, laid, trade), sheet))
    return pages


def _told(dressed: Dressed, wall: SetOut, laid: TreatmentOut, paper: Page | None, *, is_stopped: bool) -> Sheet:
    """A sheet of one treatment with its state, and a band across it where it must not be built."""
    style = style_for(dressed.room)
    state = state_of((laid,))
    return Sheet(
        subject_of(dressed.room, wall, laid, style),
        style,
        paper,
        state="" if state is None else say(state, style),
        band=band_of(style) if is_stopped else "",
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
                sheet = Sheet(subject_of(dressed.room, wall, laid, style), style, paper)
                pages.extend(trial_sheet(trial_steps(wall, laid), sheet))
    if not pages:
        raise Missing(names_of(rooms), "", said("has nothing to hang"), said("add a treatment, or name another wall"))
    return tuple(pages)


def sewing_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The bolts of each room, then the pages of each window that hangs any cloth.

    Raises
    ------
    Missing
        No cloth hangs.
    """
    pages = [page for dressed in rooms for page in _sewing(dressed, trade, paper)]
    if not pages:
        raise Missing(names_of(rooms), "", said("has no cloth to sew"), said("add panels, or name another wall"))
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
    whole = sewing_of(dressed, trade)
    pages: list[Picture] = []
    if whole.bolts:
        pages.extend(cutting_sheet(whole.bolts, Sheet(dressed.room.name, style_for(dressed.room), paper)))
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        stops = stopped(findings)
        for laid in wall.treatments:
            own = [layer for layer in whole.layers if layer.hung.laid.ref == laid.ref]
            valance = next((one for one in whole.valances if one.laid.ref == laid.ref), None)
            if not own and valance is None:
                continue
            ready = [ready_for(dressed.room, layer.hung.layer, trade) for layer in own]
            sheet = _told(dressed, wall, laid, paper, is_stopped=laid.ref in stops)
            pages.extend(window_sheet(own, ready, valance, sheet, trade))
    return pages


WORK_SHEETS: dict[str, tuple[Message, Maker]] = {
    "house": (msg("House sheet"), house_pages),
    "trial": (msg("Tape trial"), trial_pages),
    "order": (msg("Order of work"), order_pages),
    "buying": (msg("Buying list"), buying_pages),
    "bench": (msg("Bench sheet"), bench_pages),
    "sewing": (msg("Sewing sheets"), sewing_pages),
    "drilling": (msg("Drilling sheets"), drilling_pages),
    "tiles": (msg("Drilling tiles"), tile_pages),
    "plate": (msg("Drilling plates"), plate_pages),
    "stick": (msg("Story sticks"), stick_pages),
    "hanging": (msg("Hanging sheets"), hanging_pages),
    "labels": (msg("Labels"), labels_pages),
}
"""By the name on the command line: what it is called, and what makes it."""

WORK_TABLES: dict[str, Callable[[Sequence[Dressed], Trade], tuple[tuple[str, ...], ...]]] = {
    "house": house_rows,
    "buying": buying_rows,
    "sewing": sewing_rows,
    "labels": labels_rows,
}
"""Sheets that are tables as well, for other programs: what makes their rows, the head first."""

TO_CUT: dict[str, Callable[[Sequence[Dressed], Trade], tuple[Plate, ...]]] = {"plate": plates_to_cut}
"""Sheets that a cutting machine takes as well: what it is to cut."""
