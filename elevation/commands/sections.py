"""The sections of a wall as sheets: one through each treatment, or one at a place that was asked for."""

from __future__ import annotations

from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.room.model import Room, Scheme, Wall
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.paper import page_named, scale_of
from elevation.sheet.records import Picture
from elevation.sheet.section_cut import treatment_at
from elevation.sheet.section_sheet import section_sheet
from elevation.trade.model import Trade
from elevation.units import parse_length


def section_pictures(
    room: Room,
    wall: Wall,
    scheme: Scheme | None,
    trade: Trade,
    *,
    paper: str | None = None,
    scale: str | None = None,
    at: str | None = None,
) -> list[Picture]:
    """The sections of one wall, left to right.

    Parameters
    ----------
    room : Room
    wall : Wall
    scheme : Scheme or None
    trade : Trade
    paper, scale : str or None
        As on the command line; None for what fits.
    at : str or None
        Where to cut, from the wall's left end; None: through each treatment, or the bare wall's first opening.

    Raises
    ------
    BadInput
        The place is no length or beyond the wall, or the scale does not fit.
    """
    style = style_for(room)
    page = None if paper is None else page_named(paper)
    ratio = None if scale is None else scale_of(scale)
    laid = set_out(room, wall.id, None if scheme is None else scheme.id, trade)
    findings = find(Scene(room, laid, trade))
    if at is not None:
        station = parse_length(at, room.unit).mm
        shown = treatment_at(laid, station)
        return [section_sheet(room, laid, findings, trade, style, shown, page, ratio, station)]
    treatments = laid.treatments or (None,)
    return [section_sheet(room, laid, findings, trade, style, treatment, page, ratio) for treatment in treatments]
