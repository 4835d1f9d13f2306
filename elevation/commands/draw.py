"""``elevation draw``: one sheet, or one a wall in a PDF, to the file that was named."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TypeVar

from elevation.commands import choosing
from elevation.commands.arguments import Draw
from elevation.commands.main import EXIT_FINE
from elevation.commands.schemes import scheme_pictures
from elevation.commands.sections import section_pictures
from elevation.commands.work_sheets import work_cut, work_pages, work_table
from elevation.errors import BadInput, BadOutput, Missing
from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.output.svg import to_svg
from elevation.planning.dressed import dress
from elevation.room.keeping.atomic import write_atomically
from elevation.room.model import Room, Scheme, Wall
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.draw_light import MODES, Mode
from elevation.sheet.elevation import elevation_sheet
from elevation.sheet.measuring import measuring_sheet
from elevation.sheet.paper import TO_POST, page_named, scale_of
from elevation.sheet.plan_sheet import plan_sheet
from elevation.sheet.post import post_pages
from elevation.sheet.post_figures import USUAL, figures_named
from elevation.sheet.records import Picture
from elevation.sheet.unfolded import unfold, unfolded_sheet
from elevation.sheet.work.whole import TO_CUT, WORK_SHEETS
from elevation.trade.model import Trade
from elevation.trade.own import load_with_own
from elevation.trade.tables import load_trade

_Page = TypeVar("_Page")

ENDINGS = (".svg", ".pdf", ".png")
TABLES = (".csv", ".txt")
CUTS = (".dxf", ".svg")
"""What cutting machines read."""


def run_draw(given: Draw) -> int:
    """Draw what was asked for; raises an ElevationError where that cannot be done."""
    ending = given.out.suffix.lower()
    if ending not in ENDINGS + TABLES + CUTS:
        raise BadInput("command line", "--out", f"“{given.out.name}” has no known ending", f"use {', '.join(ENDINGS)}")
    refuse_a_room(given.out, (given.room,))
    trade = load_with_own(load_trade)
    room, trade = choosing.load(given.room, trade)
    walls = choosing.walls(room, given.wall, given.room.name)
    if not walls:
        raise BadInput(given.room.name, "walls", "has no wall to draw", "add one")
    if ending in TABLES:
        write_atomically(given.out, work_table(given, room, trade))
        return EXIT_FINE
    if ending == ".dxf" or (ending in CUTS and given.sheet in TO_CUT):
        write_atomically(given.out, work_cut(given, room, trade))
        return EXIT_FINE
    if given.paper in TO_POST and given.sheet != "picture":
        raise BadInput("command line", "--paper", f"{given.paper} is the shape of a picture", "add --sheet picture")
    light = next((mode for mode in MODES if mode == given.light), None)
    if given.sheet == "picture":
        shown = [dress(room, trade, wall.id, _scheme_id(wall, given)) for wall in walls]
        page = None if given.paper is None else page_named(given.paper)
        figures = USUAL if given.figures is None else figures_named(given.figures)
        pages = post_pages(shown, trade, page, figures, before=given.before, light=light)
        write(_one_page(pages, given), given.out, given.dpi)
        return EXIT_FINE
    if given.sheet == "schemes":
        write(_one_page(scheme_pictures(given, room, walls, trade), given), given.out, given.dpi)
        return EXIT_FINE
    if given.sheet in WORK_SHEETS:
        write(_one_page(work_pages(given, room, trade), given), given.out, given.dpi)
        return EXIT_FINE
    if given.sheet == "section":
        sections = [picture for wall in walls for picture in _sections(room, wall, given, trade)]
        write(_one_page(sections, given), given.out, given.dpi)
        return EXIT_FINE
    # One wall a page: only the page that is asked for is worked out.
    drawn = _one_page(walls, given)
    pictures = [
        picture_of(
            room,
            wall,
            choosing.schemes(wall, given.scheme, False, given.room.name)[0],
            trade,
            sheet=given.sheet,
            paper=given.paper,
            scale=given.scale,
            light=light,
        )
        for wall in drawn
    ]
    write(pictures, given.out, given.dpi)
    return EXIT_FINE


def _one_page(pages: Sequence[_Page], given: Draw) -> Sequence[_Page]:
    """All pages for a PDF; the page that was asked for where a file holds one."""
    if given.out.suffix.lower() == ".pdf":
        return pages
    if not 1 <= given.page <= len(pages):
        raise BadInput("command line", "--page", f"is {given.page}", f"give a number from 1 to {len(pages)}")
    return pages[given.page - 1 : given.page]


def _scheme_id(wall: Wall, given: Draw) -> str | None:
    scheme = choosing.schemes(wall, given.scheme, False, given.room.name)[0]
    return None if scheme is None else scheme.id


def _sections(room: Room, wall: Wall, given: Draw, trade: Trade) -> list[Picture]:
    scheme = choosing.schemes(wall, given.scheme, False, given.room.name)[0]
    return section_pictures(room, wall, scheme, trade, paper=given.paper, scale=given.scale, at=given.at)


def refuse_a_room(out: Path, rooms: Sequence[Path]) -> None:
    """Raise BadOutput where writing ``out`` would replace one of ``rooms``, under whatever name it is given."""
    for room in rooms:
        try:
            same = out.samefile(room)
        except (OSError, ValueError):
            # One of them is not there or cannot be looked at: reading and writing say so themselves.
            same = False
        if same:
            raise BadOutput(str(out), "", "is the room file itself", "name another file")


def picture_of(
    room: Room,
    wall: Wall,
    scheme: Scheme | None,
    trade: Trade,
    *,
    sheet: str = "elevation",
    paper: str | None = None,
    scale: str | None = None,
    light: Mode | None = None,
) -> Picture:
    """The sheet of one wall; ``paper``, ``scale`` and ``light`` as on the command line, None for what fits or is drawn."""
    style = style_for(room)
    page = None if paper is None else page_named(paper)
    if sheet in ("measuring", "measurements"):
        return measuring_sheet(room, wall, style, page, is_filled=sheet == "measurements")
    laid = set_out(room, wall.id, None if scheme is None else scheme.id, trade)
    findings = find(Scene(room, laid, trade))
    ratio = None if scale is None else scale_of(scale)
    if sheet == "plan":
        return plan_sheet(room, laid, findings, trade, style, page, ratio)
    if sheet == "unfolded":
        row = unfold(room, wall, laid.scheme, trade)
        every = [finding for one in row for finding in find(Scene(room, one.set_out, trade))]
        return unfolded_sheet(room, row, every, trade, style, page, ratio)
    return elevation_sheet(room, laid, findings, trade, style, paper=page, scale=ratio, light=light)


def write(pictures: Sequence[Picture], out: Path, dpi: int) -> None:
    """Write the pictures to ``out``, whose ending picks the format; only PDF takes more than the first."""
    ending = out.suffix.lower()
    if ending == ".svg":
        write_atomically(out, to_svg(pictures[0]))
        return
    # Said before anything is drawn or loaded: drawing takes a while.
    if not out.parent.is_dir():
        raise BadOutput(str(out), "", "cannot be written: its folder does not exist", "name a folder that exists")
    _needs_qt()
    if ending == ".png":
        from elevation.output.painters.png import to_png

        write_atomically(out, to_png(pictures[0], dpi))
    else:
        from elevation.output.painters.pdf import to_pdf

        write_atomically(out, to_pdf(pictures))


def _needs_qt() -> None:
    from elevation.commands.screen import FOR_QT, missing_packages

    packages = missing_packages(FOR_QT)
    if packages:
        raise Missing(
            "PNG and PDF",
            "",
            "need Qt's system libraries",
            f"on Debian: apt-get install {' '.join(packages)}; or draw to .svg, which needs none",
        )
    try:
        import PySide6.QtGui  # noqa: F401
    except ImportError as error:
        raise Missing("PNG and PDF", "", f"need Qt ({error})", "draw to .svg, which needs none") from error
