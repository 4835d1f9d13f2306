"""A mounting board on the wall: its face with a little grain and the shadow of its thickness."""

from __future__ import annotations

from elevation.room.model import Ref
from elevation.setting_out.model import BoardOut, TreatmentOut
from elevation.sheet import inks
from elevation.sheet.draw_titles import board_title
from elevation.sheet.paths import rectangle, segment
from elevation.sheet.records import NARROW, Fill, Group, Ink, Path, Pen, Polyline, Record
from elevation.words import Style

_GRAIN = Pen(inks.WOOD_DARK, 0.13)
_EDGE = Pen(Ink.OUTLINE, NARROW)


def board_group(ref: Ref, board: BoardOut, treatment: TreatmentOut, style: Style) -> Group:
    """The board of a layer as one group of layer ``board``, wall coordinates in mm."""
    left, bottom, right, top = board.left_mm, board.bottom_mm, board.right_mm, board.top_mm
    shade = min(board.thick_mm, (top - bottom) / 2)
    grain = (
        *segment(left, bottom + (top - bottom) * 0.34, right, bottom + (top - bottom) * 0.34),
        *segment(left, bottom + (top - bottom) * 0.71, right, bottom + (top - bottom) * 0.71),
    )
    records: tuple[Record, ...] = (
        Fill(rectangle(left + shade * 0.4, bottom - shade * 0.4, right + shade * 0.4, bottom), inks.SHADE),
        Fill(rectangle(left, bottom, right, top), inks.WOOD),
        Path(grain, _GRAIN),
        Polyline(((left, bottom), (right, bottom), (right, top), (left, top)), _EDGE, closed=True),
    )
    return Group(ref, "board", board_title(treatment, style), records)
