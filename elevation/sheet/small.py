"""A small elevation: the wall alone, as large as a tile lets it be, without dimensions."""

from __future__ import annotations

from elevation.setting_out.model import SetOut
from elevation.sheet.drawing import View, draw_wall
from elevation.sheet.records import Page, Picture
from elevation.trade.model import Trade

_MARGIN = 2.0


def small_elevation(set_out: SetOut, trade: Trade, width_mm: float, height_mm: float) -> Picture:
    """The wall drawn to fit a tile.

    Parameters
    ----------
    set_out : SetOut
    trade : Trade
    width_mm, height_mm : float
        Size of the tile in paper mm.

    Returns
    -------
    Picture
        Its page is the tile; the wall stands in its middle.
    """
    top_mm = max(y for _, y in set_out.ceiling.points)
    low_mm = min(0.0, *(y for _, y in set_out.floor.points))
    wide_mm, high_mm = max(set_out.width_mm, 1.0), max(top_mm - low_mm, 1.0)
    scale = max(wide_mm / (width_mm - 2 * _MARGIN), high_mm / (height_mm - 2 * _MARGIN))
    origin = ((width_mm - wide_mm / scale) / 2, (height_mm - high_mm / scale) / 2 - low_mm / scale)
    groups = draw_wall(set_out, trade, View())
    return Picture(groups, scale, origin, Page("tile", width_mm, height_mm), set_out.wall_name or set_out.wall)
