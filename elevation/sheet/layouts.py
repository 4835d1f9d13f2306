"""Where drawing, margin and title block stand on a sheet, and the largest scale at which everything fits."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import islice

from msgspec import Struct

from elevation.errors import BadInput, said
from elevation.setting_out.model import Point, SetOut
from elevation.sheet.annotation import Annotation
from elevation.sheet.blocks import Block, Column, Placed, flow
from elevation.sheet.furniture import STOP_HEIGHT, TITLE_HEIGHT, Inside, inside
from elevation.sheet.paper import SMALLEST_COMFORTABLE, last_page_for, pages_for, scales_for
from elevation.sheet.records import Page

BEYOND = (500.0, 1000.0, 2000.0)
"""Scales of ISO 5455 for a wall that no usual scale can hold."""
FOOT = 13.0
"""Height kept under the drawing for scale bar and notes."""
_PAD = 3.5
_NOTHING_LEFT_OUT = 2
"""So many of the margin's wishes say everything, at length or in brief."""


class Layout(Struct, frozen=True):
    """One way to divide a sheet.

    Attributes
    ----------
    name : str
        ``side`` (a margin column at the right), ``narrow`` (a narrower one: only where nothing has to be left out for it)
        or ``foot`` (a strip under the drawing).
    drawing : Inside
        Where the drawing may stand.
    foot : Point
        Left end and base of the scale bar.
    foot_width : float
        Room for the notes line.
    columns : tuple of Column
        For the blocks.
    title_left, title_width : float
    rules : tuple
        Lines that divide the sheet: (x1, y1, x2, y2).
    """

    name: str
    drawing: Inside
    foot: Point
    foot_width: float
    columns: tuple[Column, ...]
    title_left: float
    title_width: float
    rules: tuple[tuple[float, float, float, float], ...]


class Arranged(Struct, frozen=True):
    """A sheet decided: page, layout, scale, where the wall's origin stands, annotation and the margin's blocks."""

    page: Page
    layout: Layout
    scale: float
    origin: Point
    annotation: Annotation
    placed: tuple[Placed, ...]


def layouts(page: Page, has_stop: bool) -> tuple[Layout, ...]:
    """The ways to divide a sheet, the first wish first."""
    room = inside(page)
    large = page.width_mm > 350.0
    band = STOP_HEIGHT + 2.0 if has_stop else 0.0
    return (
        _side("side", room, 78.0 if large else 68.0, band),
        _side("narrow", room, 62.0 if large else 52.0, band),
        _foot(room, large, band),
    )


def _side(name: str, room: Inside, width: float, band: float) -> Layout:
    split = room.right - width
    base = room.bottom + TITLE_HEIGHT
    column = Column(split + _PAD, room.top - _PAD, width - 2 * _PAD, room.top - base - 2 * _PAD)
    drawing = Inside(room.left + _PAD, room.bottom + FOOT, split - _PAD, room.top - _PAD - band)
    return Layout(
        name,
        drawing,
        (room.left + 8.0, room.bottom + 4.0),
        split - room.left - 12.0,
        (column,),
        split,
        width,
        ((split, room.bottom, split, room.top),),
    )


def _foot(room: Inside, large: bool, band: float) -> Layout:
    height = 84.0 if large else 62.0
    title_width = 78.0 if large else 68.0
    split = room.right - title_width
    top = room.bottom + height
    count = 3 if large else 2
    step = (split - room.left) / count
    columns = [
        Column(room.left + index * step + _PAD, top - _PAD, step - 2 * _PAD, height - 2 * _PAD) for index in range(count)
    ]
    # The space over the title block takes blocks as well.
    columns.append(Column(split + _PAD, top - _PAD, title_width - 2 * _PAD, height - TITLE_HEIGHT - 2 * _PAD))
    drawing = Inside(room.left + _PAD, top + FOOT, room.right - _PAD, room.top - _PAD - band)
    return Layout(
        "foot",
        drawing,
        (room.left + 8.0, top + 4.0),
        room.right - room.left - 12.0,
        tuple(columns),
        split,
        title_width,
        ((room.left, top, room.right, top), (split, room.bottom, split, top)),
    )


Lay = Callable[[float], Annotation]
"""Lays the annotation for a scale."""
Fill = Callable[[Annotation, Layout], Iterable[Sequence[Block]]]
"""The margin's blocks for a layout: the fullest wish first, the least that must stand last."""


def arrange(
    set_out: SetOut, page: Page | None, scale: float | None, unit: str, lay: Lay, fill: Fill, *, has_stop: bool
) -> Arranged:
    """Choose sheet, layout and scale.

    Parameters
    ----------
    set_out : SetOut
    page : Page or None
        None: the small sheet of the room's unit; the large one where the small would force a scale under 1:24; one
        larger still where neither holds the wall.
    scale : float or None
        None: the largest that fits.
    unit : str
    lay, fill : callable
    has_stop : bool
        A band across the sheet takes room.

    Raises
    ------
    BadInput
        The scale that was asked for does not fit.
    """
    scales = (scale,) if scale is not None else (*scales_for(unit), *BEYOND)
    pages = pages_for(unit) if page is None else (page,)
    kept: dict[float, Annotation] = {}

    def laid(at: float) -> Annotation:
        if at not in kept:
            kept[at] = lay(at)
        return kept[at]

    best: Arranged | None = None
    for candidate in pages:
        found = _largest(set_out, candidate, scales, laid, fill, has_stop)
        if found is not None and (best is None or found.scale < best.scale):
            best = found
        if best is not None and (scale is not None or best.scale <= SMALLEST_COMFORTABLE):
            break
    if best is None and page is None and scale is None:
        best = _largest(set_out, last_page_for(unit), scales, laid, fill, has_stop)
    if best is None:
        wanted = f"1:{scale:g}" if scale is not None else "the wall"
        raise BadInput(
            said("scale"),
            "",
            said("{wanted} does not fit on {choices}", wanted=wanted, choices=" or ".join(page.name for page in pages)),
            said("choose a smaller scale or a larger sheet"),
        )
    return best


def _largest(
    set_out: SetOut, page: Page, scales: Sequence[float], laid: Lay, fill: Fill, has_stop: bool
) -> Arranged | None:
    width = set_out.width_mm
    height = max(y for _, y in set_out.ceiling.points)
    for scale in scales:
        for layout in layouts(page, has_stop):
            room = layout.drawing
            # A quick look first: annotation takes at least this much around the wall.
            if width / scale + 25.0 > room.right - room.left or height / scale + 30.0 > room.top - room.bottom:
                continue
            annotation = laid(scale)
            left, bottom, right, top = annotation.extent
            if right - left > room.right - room.left or top - bottom > room.top - room.bottom:
                continue
            wishes = fill(annotation, layout)
            for blocks in islice(wishes, _NOTHING_LEFT_OUT if layout.name == "narrow" else None):
                placed = flow(blocks, layout.columns)
                if placed is not None:
                    return Arranged(page, layout, scale, _origin(room, annotation), annotation, placed)
    return None


def _origin(room: Inside, annotation: Annotation) -> Point:
    left, bottom, right, top = annotation.extent
    x = (room.left + room.right) / 2 - (left + right) / 2
    y = (room.bottom + room.top) / 2 - (bottom + top) / 2
    return round(x, 3), round(y, 3)
