"""The cut list of rooms: for each section the bars, and which piece comes from which."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from elevation.planning.buying.shelf import carry_mm, shelf_bars
from elevation.planning.cutting.model import CutPlan, Piece, Stock
from elevation.planning.cutting.whole import cut
from elevation.planning.rod_pieces import RodPiece
from elevation.trade.model import SawRow, SectionRow, Trade

GRAIN_MM = 25.4 / 64
"""Pieces are reckoned up to this: half the finest mark of an inch tape."""


class SectionCut(Struct, frozen=True):
    """One section: its bars and pieces by their marks, and the longest that is carried home (None: any length)."""

    section: SectionRow
    plan: CutPlan
    pieces: dict[str, RodPiece]
    carry_mm: float | None = None


def cut_list(
    pieces: Sequence[RodPiece],
    saw: SawRow,
    trade: Trade,
    *,
    seconds: float = 10.0,
    is_cancelled: Callable[[], bool] = lambda: False,
) -> tuple[SectionCut, ...]:
    """Cut all pieces, each section from its own stock: what lies on the shelf first.

    Parameters
    ----------
    pieces : sequence of RodPiece
    saw : SawRow
        Its kerf counts.
    trade : Trade
        Knows her shelf, and how long a piece she carries home.
    seconds : float
        How long to look for fewer bars, for each section.
    is_cancelled : callable

    Returns
    -------
    tuple of SectionCut
        In the order in which sections are first met.
    """
    found = []
    for section in dict.fromkeys(piece.section.id for piece in pieces):
        own = [piece for piece in pieces if piece.section.id == section]
        # A rod may name stock of its own length; a piece is cut from the longest that is to be had.
        lengths = sorted({piece.stock_mm for piece in own})
        stock = [*shelf_bars(section, trade), *(Stock(f"{length:g}", length) for length in lengths)]
        wanted = [Piece(piece.mark, piece.length_mm) for piece in own]
        plan = cut(wanted, stock, saw.kerf_mm, GRAIN_MM, seconds=seconds, is_cancelled=is_cancelled)
        found.append(SectionCut(own[0].section, plan, {piece.mark: piece for piece in own}, carry_mm(trade)))
    return tuple(found)
