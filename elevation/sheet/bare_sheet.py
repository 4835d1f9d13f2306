"""A sheet with one drawing over its whole width: frame, scale bar, notes and title block, nothing beside it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from elevation.errors import BadInput, said
from elevation.sheet import furniture
from elevation.sheet.annotation.model import Box
from elevation.sheet.dates import sheet_date
from elevation.sheet.layouts import BEYOND
from elevation.sheet.paper import SMALLEST_COMFORTABLE, last_page_for, pages_for, scale_name, scales_for
from elevation.sheet.records import NARROW, Group, Ink, Line, Page, Pen, Picture
from elevation.words import Style, msg, say

_PAD = 4.0
_TITLE_WIDTH = 78.0


class Drawing(Struct, frozen=True, gc=False):
    """What is drawn at a scale: groups in wall mm, and all that they take up (left, bottom, right, top in wall mm)."""

    groups: tuple[Group, ...]
    extent: Box


class Words(Struct, frozen=True, gc=False):
    """The words of the title block: room, wall, scheme, what the sheet is, and its number; ``description`` says it all."""

    room: str
    wall: str
    scheme: str
    document: str
    sheet: str
    description: str


def bare_sheet(
    draw: Callable[[float], Drawing],
    words: Words,
    style: Style,
    page: Page | None = None,
    scale: float | None = None,
    date: str | None = None,
    notes: Sequence[str] = (),
    stop: str = "",
    enough: float = SMALLEST_COMFORTABLE,
) -> Picture:
    """The drawing on the sheet and at the scale that suit it.

    Parameters
    ----------
    draw : callable
        From wall mm for one paper mm to what is drawn then.
    words : Words
    style : Style
    page : Page or None
        None: the small sheet of the room's unit, or a larger one where that would force too small a scale.
    scale : float or None
        Wall mm for one paper mm; None: the largest standard one that fits.
    date : str or None
    notes : sequence of str
        Beside the scale bar.
    stop : str
        What stands across a sheet that must not be built from; empty for none.
    enough : float
        A larger sheet is taken where this one forces a scale smaller than 1 to this.

    Raises
    ------
    BadInput
        The scale that was asked for does not fit.
    """
    scales = (scale,) if scale is not None else (*scales_for(style.unit), *BEYOND)
    pages = (page,) if page is not None else (*pages_for(style.unit), last_page_for(style.unit))
    band = furniture.STOP_HEIGHT + 2.0 if stop else 0.0
    best: tuple[Page, float, Drawing] | None = None
    for sheet in pages:
        found = _largest(draw, sheet, scales, band)
        if found is not None and (best is None or found[0] < best[1]):
            best = (sheet, *found)
        if best is not None and (scale is not None or best[1] <= enough):
            break
    if best is None:
        wanted = said("1:{scale}", scale=scale) if scale is not None else said("the drawing")
        raise BadInput(
            said("scale"),
            "",
            said("{wanted} does not fit on {choices}", wanted=wanted, choices=pages[-1].name),
            said("choose a smaller scale or a larger sheet"),
        )
    return _sheet(*best, words, style, sheet_date() if date is None else date, notes, stop, band)


def _room(page: Page, band: float) -> furniture.Inside:
    inner = furniture.inside(page)
    bottom = inner.bottom + furniture.TITLE_HEIGHT + _PAD
    return furniture.Inside(inner.left + _PAD, bottom, inner.right - _PAD, inner.top - _PAD - band)


def _largest(
    draw: Callable[[float], Drawing], page: Page, scales: Sequence[float], band: float
) -> tuple[float, Drawing] | None:
    room = _room(page, band)
    for scale in scales:
        drawing = draw(scale)
        left, bottom, right, top = (edge / scale for edge in drawing.extent)
        if right - left <= room.right - room.left and top - bottom <= room.top - room.bottom:
            return scale, drawing
    return None


def _sheet(
    page: Page,
    scale: float,
    drawing: Drawing,
    words: Words,
    style: Style,
    date: str,
    notes: Sequence[str],
    stop: str,
    band: float,
) -> Picture:
    inner, room = furniture.inside(page), _room(page, band)
    left, bottom, right, top = (edge / scale for edge in drawing.extent)
    origin = (
        round((room.left + room.right) / 2 - (left + right) / 2, 3),
        round((room.bottom + room.top) / 2 - (bottom + top) / 2, 3),
    )
    scale_text = say(scale_name(scale, style.unit), style)
    title = furniture.Title(words.room, words.wall, words.scheme, words.document, scale_text, date, words.sheet)
    line = inner.bottom + furniture.TITLE_HEIGHT
    split = inner.right - _TITLE_WIDTH
    pen = Pen(Ink.THIN, NARROW)
    bar, wide = furniture.scale_bar(scale, inner.left + 8.0, inner.bottom + 12.0, style)
    unit = msg("dimensions in inches") if style.unit == "in" else msg("dimensions in millimetres")
    beside = inner.left + 8.0 + wide + 7.0
    records = [
        *furniture.title_block(title, split, inner.bottom, _TITLE_WIDTH, style),
        *bar,
        *furniture.notes([say(unit, style), *notes], "", beside, inner.bottom + 12.0, split - beside - 4.0),
    ]
    if stop:
        records += furniture.stop_band(stop, room.left, inner.top - _PAD, room.right - room.left)
    sheet = (
        *furniture.frame(page),
        Line((inner.left, line), (inner.right, line), pen),
        Line((split, inner.bottom), (split, line), pen),
    )
    groups = (
        Group((), "sheet", say(msg("Sheet"), style), sheet, "paper"),
        *drawing.groups,
        Group((), "title", say(msg("Title block"), style), tuple(records), "paper"),
    )
    name = " · ".join(part for part in (words.room, words.wall, words.scheme, words.document) if part)
    return Picture(groups, scale, origin, page, name, words.description)
