"""The picture to post: the wall with what hangs, and three figures under it; no title block, no dimensions.

Its pages are pixels to be: 137.16 mm at 200 dots to the inch are the 1080 pixels that such pictures are shown at.
"""

from __future__ import annotations

from collections.abc import Sequence

from elevation.errors import Missing, said
from elevation.planning.dressed import Dressed
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.paper import TO_POST
from elevation.sheet.paths import height_at, rectangle
from elevation.sheet.records import Fill, Group, Ink, Page, Picture, Record, Text
from elevation.sheet.type_metrics import shorten, text_width
from elevation.trade.model import Trade
from elevation.words import Message, Mm, Percent, Style, msg, say

_MARGIN, _STRIP = 0.06, 30.0
_LABEL, _VALUE, _LEAST = 3.4, 7.0, 4.0


def post_pages(rooms: Sequence[Dressed], trade: Trade, paper: Page | None = None) -> tuple[Picture, ...]:
    """A picture of each wall on which something hangs.

    Raises
    ------
    Missing
        Nothing hangs on any of them.
    """
    page = paper or TO_POST["4:5"]
    pages = [
        post_picture(dressed.room.name, wall, trade, style_for(dressed.room), page)
        for dressed in rooms
        for wall in dressed.walls
        if wall.treatments
    ]
    if not pages:
        names = ", ".join(dressed.room.name for dressed in rooms if dressed.room.name)
        raise Missing(names, "", said("has nothing to hang"), said("add a treatment, or name another wall"))
    return tuple(pages)


def post_picture(room: str, wall: SetOut, trade: Trade, style: Style, page: Page) -> Picture:
    """One wall, as large as the page lets it be, over its three figures."""
    edge = _MARGIN * min(page.width_mm, page.height_mm)
    low_mm = min(0.0, *(y for _, y in wall.floor.points))
    wide_mm = max(wall.width_mm, 1.0)
    high_mm = max(max(y for _, y in wall.ceiling.points) - low_mm, 1.0)
    wide, high = page.width_mm - 2 * edge, page.height_mm - 2 * edge - _STRIP
    scale = max(wide_mm / wide, high_mm / high)
    # On a page much higher than the wall the figures stay under it, and both stand in the middle.
    base = edge + _STRIP + (high - high_mm / scale) / 2
    origin = ((page.width_mm - wide_mm / scale) / 2, base - low_mm / scale)
    ground = Fill(rectangle(0.0, 0.0, page.width_mm, page.height_mm), Ink.PAPER)
    name = " · ".join(text for text in (room, wall.wall_name or wall.wall, wall.scheme_name) if text)
    groups = (
        Group((), "sheet", say(msg("Sheet"), style), (ground,), "paper"),
        *draw_wall(wall, trade, View("drawn", stack=False), style),
        Group((), "title", say(msg("Figures"), style), tuple(_strip(wall, style, page, edge, base)), "paper"),
    )
    return Picture(groups, scale, origin, page, name, say(msg("Picture of {name}.", name=name), style))


def figures_of(wall: SetOut) -> tuple[tuple[Message, Message], ...]:
    """The first treatment's height of the rod, length of the rod and glass clear when open, each with its label."""
    laid = wall.treatments[0]
    support = laid.layers[0].support
    floor = height_at(wall.floor, (support.left_mm + support.right_mm) / 2)
    return (
        (msg("rod over the floor"), msg("{length}", length=Mm(support.height_mm - floor))),
        (msg("rod, end to end"), msg("{length}", length=Mm(support.length_mm))),
        (msg("glass clear when open"), msg("{share}", share=Percent(laid.glass.clear_open))),
    )


def _strip(wall: SetOut, style: Style, page: Page, edge: float, base: float) -> list[Record]:
    records: list[Record] = []
    column = (page.width_mm - 2 * edge) / 3
    for index, (label, value) in enumerate(figures_of(wall)):
        x = edge + column * (index + 0.5)
        text = say(value, style)
        need = text_width(text, _VALUE, "semibold")
        size = _VALUE if need <= column - 3.0 else max(_LEAST, _VALUE * (column - 3.0) / need)
        records.append(Text((x, base - 15.0), text, round(size, 2), Ink.TEXT, "middle", 0.0, "semibold"))
        records.append(
            Text((x, base - 21.5), shorten(say(label, style), _LABEL, column - 2.0), _LABEL, Ink.QUIET, "middle")
        )
    return records
