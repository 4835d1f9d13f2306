"""The picture to post: the wall with what hangs, and up to three figures under it; no title block, no dimensions.

Before and after stand beside each other or one over the other, whichever is larger, at one scale: one viewpoint.

Its pages are pixels to be: 137.16 mm at 200 dots to the inch are the 1080 pixels that such pictures are shown at.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.errors import Missing, said
from elevation.planning.dressed import Dressed
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out
from elevation.sheet.draw_light import Mode, light_groups
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.paper import TO_POST
from elevation.sheet.paths import rectangle
from elevation.sheet.post_figures import USUAL, figures_of
from elevation.sheet.records import Fill, Group, Ink, Page, Picture, Record, Text
from elevation.sheet.type_metrics import shorten, text_width
from elevation.sheet.work.moved import moved
from elevation.trade.model import Trade
from elevation.words import Style, msg, say

_MARGIN, _STRIP = 0.06, 30.0
_LABEL, _VALUE, _LEAST = 3.4, 7.0, 4.0
_GAP, _ABOVE = 5.0, 6.0
"""Between before and after, and over each of them for its word, paper mm."""


def post_pages(
    rooms: Sequence[Dressed],
    trade: Trade,
    paper: Page | None = None,
    figures: Sequence[str] = USUAL,
    *,
    before: bool = False,
    light: Mode | None = None,
) -> tuple[Picture, ...]:
    """A picture of each wall on which something hangs.

    Parameters
    ----------
    rooms : sequence of Dressed
    trade : Trade
    paper : Page or None
        One of ``TO_POST``; None: 4:5.
    figures : sequence of str
        Names out of ``FIGURES``, up to three.
    before : bool
        The bare wall stands beside the dressed one.
    light : str or None
        ``day`` or ``evening``; None: as it is drawn.

    Raises
    ------
    Missing
        Nothing hangs on any of them.
    """
    page = paper or TO_POST["4:5"]
    pages = []
    for dressed in rooms:
        for wall in dressed.walls:
            if wall.treatments:
                bare = set_out(dressed.room, wall.wall, None, trade) if before else None
                style = style_for(dressed.room)
                pages.append(post_picture(dressed.room, wall, trade, style, page, figures, bare, light))
    if not pages:
        names = ", ".join(dressed.room.name for dressed in rooms if dressed.room.name)
        raise Missing(names, "", said("has nothing to hang"), said("add a treatment, or name another wall"))
    return tuple(pages)


def post_picture(
    room: Room,
    wall: SetOut,
    trade: Trade,
    style: Style,
    page: Page,
    figures: Sequence[str] = USUAL,
    bare: SetOut | None = None,
    light: Mode | None = None,
) -> Picture:
    """One wall, as large as the page lets it be, over its figures; with ``bare``, what was before, at the same scale."""
    edge = _MARGIN * min(page.width_mm, page.height_mm)
    low_mm = min(0.0, *(y for _, y in wall.floor.points))
    wide_mm = max(wall.width_mm, 1.0)
    high_mm = max(max(y for _, y in wall.ceiling.points) - low_mm, 1.0)
    wide, high = page.width_mm - 2 * edge, page.height_mm - 2 * edge - _STRIP
    across, up, scale = _arranged(wide, high, wide_mm, high_mm, has_before=bare is not None)
    tile = (wide_mm / scale, high_mm / scale)
    whole = (across * tile[0] + (across - 1) * _GAP, up * tile[1] + (up - 1) * (_GAP + _ABOVE) + _ABOVE * (across * up > 1))
    # On a page much higher than the wall the figures stay under it, and both stand in the middle.
    base = edge + _STRIP + (high - whole[1]) / 2
    left = (page.width_mm - whole[0]) / 2
    origin = (left, base - low_mm / scale)
    ground = Fill(rectangle(0.0, 0.0, page.width_mm, page.height_mm), Ink.PAPER)
    name = " · ".join(text for text in (room.name, wall.wall_name or wall.wall, wall.scheme_name) if text)
    view = View("drawn", stack=False)
    groups = [Group((), "sheet", say(msg("Sheet"), style), (ground,), "paper")]
    records: list[Record] = []
    if bare is None:
        groups += [*draw_wall(wall, trade, view, style), *light_groups(room, wall, trade, light, "drawn", style)]
    else:
        # Before stands left of after, or over it.
        right = (tile[0] + _GAP) * (across - 1)
        upper = (tile[1] + _GAP + _ABOVE) * (up - 1)
        for one, x, y, word in ((bare, 0.0, upper, msg("before")), (wall, right, 0.0, msg("after"))):
            drawn = (*draw_wall(one, trade, view, style), *light_groups(room, one, trade, light, "drawn", style))
            groups += [replace(group, records=moved(group.records, x * scale, y * scale)) for group in drawn]
            at = (left + x + tile[0] / 2, base + y + tile[1] + 1.9)
            records.append(Text(at, say(word, style), _LABEL, Ink.QUIET, "middle"))
    records += _strip(wall, style, page, edge, base, figures)
    groups.append(Group((), "title", say(msg("Figures"), style), tuple(records), "paper"))
    return Picture(tuple(groups), scale, origin, page, name, say(msg("Picture of {name}.", name=name), style))


def _arranged(wide: float, high: float, wide_mm: float, high_mm: float, *, has_before: bool) -> tuple[int, int, float]:
    """How many walls across and up, and the scale: before and after beside or over each other, whichever is larger."""
    if not has_before:
        return 1, 1, max(wide_mm / wide, high_mm / high)
    beside = max(wide_mm / ((wide - _GAP) / 2), high_mm / (high - _ABOVE))
    over = max(wide_mm / wide, high_mm / ((high - _GAP - 2 * _ABOVE) / 2))
    return (2, 1, beside) if beside <= over else (1, 2, over)


def _strip(wall: SetOut, style: Style, page: Page, edge: float, base: float, figures: Sequence[str]) -> list[Record]:
    records: list[Record] = []
    told = figures_of(wall, figures)
    column = (page.width_mm - 2 * edge) / max(len(told), 1)
    for index, (label, value) in enumerate(told):
        x = edge + column * (index + 0.5)
        text = say(value, style)
        need = text_width(text, _VALUE, "semibold")
        size = _VALUE if need <= column - 3.0 else max(_LEAST, _VALUE * (column - 3.0) / need)
        records.append(Text((x, base - 15.0), text, round(size, 2), Ink.TEXT, "middle", 0.0, "semibold"))
        records.append(
            Text((x, base - 21.5), shorten(say(label, style), _LABEL, column - 2.0), _LABEL, Ink.QUIET, "middle")
        )
    return records
