"""Every sheet there is, with what it is for: the one list that command line and window choose from."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.planning.dressed import Dressed
from elevation.room.find import wall_of
from elevation.room.style import style_for
from elevation.sheet.elevation import elevation_sheet
from elevation.sheet.measuring import measuring_sheet
from elevation.sheet.plan_sheet import plan_sheet
from elevation.sheet.post import post_pages
from elevation.sheet.records import Page, Picture
from elevation.sheet.schemes import scheme_pages
from elevation.sheet.section_sheet import section_sheet
from elevation.sheet.unfolded import unfold, unfolded_sheet
from elevation.sheet.work.whole import WORK_SHEETS, Maker
from elevation.trade.model import Trade
from elevation.words import Message, msg


class SheetKind(Struct, frozen=True):
    """One kind of sheet.

    Attributes
    ----------
    name : str
        On the command line.
    title, purpose : Message
        What it is called, and in a few words what it is for.
    make : callable
        ``(rooms, trade, paper) -> pages``; paper None takes what suits. Raises Missing where there is nothing to draw.
    is_upright : bool
        Its paper stands upright.
    is_over_all : bool
        One over all rooms: what is bought and cut is bought and cut once. Else each room has its own pages.
    """

    name: str
    title: Message
    purpose: Message
    make: Maker
    is_upright: bool = False
    is_over_all: bool = False


def elevation_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The elevation of each wall."""
    return tuple(
        elevation_sheet(dressed.room, wall, findings, trade, style_for(dressed.room), paper)
        for dressed in rooms
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True)
    )


def section_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """A section through each treatment, or through a bare wall's first opening."""
    return tuple(
        section_sheet(dressed.room, wall, findings, trade, style_for(dressed.room), laid, paper)
        for dressed in rooms
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True)
        for laid in wall.treatments or (None,)
    )


def plan_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """The plan of each wall."""
    return tuple(
        plan_sheet(dressed.room, wall, findings, trade, style_for(dressed.room), paper)
        for dressed in rooms
        for wall, findings in zip(dressed.walls, dressed.findings, strict=True)
    )


def unfolded_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """Each row of walls that meet in corners, once."""
    pages: list[Picture] = []
    for dressed in rooms:
        drawn: set[str] = set()
        found = {wall.wall: findings for wall, findings in zip(dressed.walls, dressed.findings, strict=True)}
        for wall in dressed.walls:
            if wall.wall in drawn:
                continue
            row = unfold(dressed.room, wall_of(dressed.room, wall.wall), wall.scheme, trade)
            drawn.update(one.set_out.wall for one in row)
            every = [finding for one in row for finding in found.get(one.set_out.wall, ())]
            pages.append(unfolded_sheet(dressed.room, row, every, trade, style_for(dressed.room), paper))
    return tuple(pages)


def _measuring(*, is_filled: bool) -> Maker:
    def make(rooms: Sequence[Dressed], _trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
        return tuple(
            measuring_sheet(
                dressed.room, wall_of(dressed.room, wall.wall), style_for(dressed.room), paper, is_filled=is_filled
            )
            for dressed in rooms
            for wall in dressed.walls
        )

    return make


_DRAWINGS: tuple[SheetKind, ...] = (
    SheetKind("elevation", msg("Elevation"), msg("the wall to scale with every figure and finding"), elevation_pages),
    SheetKind("section", msg("Section"), msg("rod, bracket and cloth from the side"), section_pages),
    SheetKind("plan", msg("Plan"), msg("what stands and hangs, from above"), plan_pages),
    SheetKind("unfolded", msg("Unfolded elevation"), msg("walls that meet in corners, side by side"), unfolded_pages),
    SheetKind("schemes", msg("Schemes side by side"), msg("what differs between them, before and after"), scheme_pages),
    SheetKind("picture", msg("Picture to post"), msg("wall, cloth and three figures, no title block"), post_pages),
    SheetKind("measuring", msg("Measuring sheet"), msg("blank, to fill in at the wall"), _measuring(is_filled=False)),
    SheetKind("measurements", msg("Measurements"), msg("what was measured, wall by wall"), _measuring(is_filled=True)),
)

_PURPOSES: dict[str, Message] = {
    "house": msg("all walls small, all windows in one table, totals"),
    "trial": msg("stick it up with tape before you drill"),
    "order": msg("what to do on which day"),
    "buying": msg("what to buy in packs, over all rooms"),
    "bench": msg("cut every rod from as little stock as can be"),
    "sewing": msg("pieces on the bolt, pleats and hems, alterations"),
    "drilling": msg("holes at true size, to prick through"),
    "tiles": msg("from the casing's corner to the holes, on several sheets"),
    "plate": msg("holes for a cutting machine, as DXF or SVG"),
    "stick": msg("marks for windows that are alike, once on a batten"),
    "hanging": msg("step by step at this wall"),
    "labels": msg("one for every piece, to cut out"),
}
OVER_ALL = ("house", "order", "buying", "bench", "plate", "stick", "labels")
"""Sheets to work by that are one over all rooms."""

ON_REQUEST = ("tiles",)
"""Sheets that are made only where they are asked for by name."""


def every_sheet() -> tuple[SheetKind, ...]:
    """All kinds, drawings first, then the sheets to work by in the order of ``WORK_SHEETS``."""
    work = (
        SheetKind(name, title, _PURPOSES.get(name, msg("to work by")), make, True, name in OVER_ALL)
        for name, (title, make) in WORK_SHEETS.items()
    )
    return (*_DRAWINGS, *work)


def paper_for(kind: SheetKind, paper: Page | None) -> Page | None:
    """The paper as this kind of sheet lies on it: those to work by stand upright."""
    if paper is None or not kind.is_upright:
        return paper
    return Page(paper.name, paper.height_mm, paper.width_mm)
