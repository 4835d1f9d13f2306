"""The sheets to work by, as ``elevation draw --sheet`` makes them."""

from __future__ import annotations

from elevation.commands import choosing
from elevation.commands.arguments import Draw
from elevation.errors import Missing
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import Dressed, dress
from elevation.planning.drilling import drill_places
from elevation.planning.hanging import hanging_steps
from elevation.planning.rod_pieces import rod_pieces
from elevation.planning.stops import stopped
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.sheet.dates import sheet_date
from elevation.sheet.facts import state_of, title_of
from elevation.sheet.paper import page_named
from elevation.sheet.records import Page, Picture
from elevation.sheet.work.bench import bench_sheet
from elevation.sheet.work.drilling import drilling_sheets, withheld
from elevation.sheet.work.hanging import hanging_sheet
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.words import Style, msg, say

WORK_SHEETS = ("bench", "drilling", "hanging")
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
    paper = None if given.paper is None else _upright(page_named(given.paper))
    if given.sheet == "drilling":
        return drilling_pages(dressed, trade, paper)
    if given.sheet == "hanging":
        return hanging_pages(dressed, trade, paper)
    return bench_pages((dressed,), room, trade, paper)


def _upright(page: Page) -> Page:
    return Page(page.name, page.height_mm, page.width_mm)


def drilling_pages(dressed: Dressed, trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """A page a bracket, or a pair of them; one that says why for each treatment that must not be drilled."""
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
            for layer in laid.layers:
                own = [place for place in drill_places(wall, laid, trade) if place.ref[:-1] == layer.ref]
                pages.extend(drilling_sheets(own, subject, layer.support.diameter_mm, style, paper, sheet_date()))
    if not pages:
        raise Missing(
            dressed.room.name or "room", "", "has no bracket to drill for", "give a rod on brackets, or name another wall"
        )
    return tuple(pages)


def hanging_pages(dressed: Dressed, trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The steps of every treatment, each beginning a page of its own."""
    style = style_for(dressed.room)
    pages: list[Picture] = []
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        stops = stopped(findings)
        for laid in wall.treatments:
            state = state_of((laid,))
            band = say(msg("STOP: do not build this as drawn; see the findings"), style) if laid.ref in stops else ""
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
    if not pages:
        raise Missing(dressed.room.name or "room", "", "has nothing to hang", "add a treatment, or name another wall")
    return tuple(pages)


def _subject(room: Room, wall: SetOut, laid: TreatmentOut, style: Style) -> str:
    return " · ".join(text for text in (room.name, wall.wall_name or wall.wall, title_of(laid, style)) if text)


def bench_pages(rooms: tuple[Dressed, ...], first: Room, trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The bench sheet over rooms, said as the first of them is."""
    saw = row_of(trade.saws, _SAW, "saw")
    cuts = cut_list(rod_pieces(rooms, trade), saw)
    subject = ", ".join(dict.fromkeys(dressed.room.name for dressed in rooms if dressed.room.name))
    return bench_sheet(cuts, saw, subject, style_for(first), paper)
