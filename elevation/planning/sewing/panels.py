"""Panels to be made: their pieces, lengths at both edges over the real floor, folds and marks."""

from __future__ import annotations

from collections.abc import Sequence

from elevation.planning.dressed import Dressed
from elevation.planning.sewing.bolts import MadeLayer
from elevation.planning.sewing.model import BoltPlan, CutPiece, Edge, SewnPanel
from elevation.planning.sewing.positions import marks_of
from elevation.room.model import Layer
from elevation.setting_out.cloth import turned_in_mm
from elevation.setting_out.model import PanelOut, SetOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.units.rounding import quantise


def sewn_panels(dressed: Dressed, one: MadeLayer, bolts: Sequence[BoltPlan], trade: Trade) -> tuple[SewnPanel, ...]:
    """The panels of one layer, in their order.

    Parameters
    ----------
    dressed : Dressed
    one : MadeLayer
    bolts : sequence of BoltPlan
        All bolts of the room.
    trade : Trade

    Returns
    -------
    tuple of SewnPanel
        None while the layer's length is not known.
    """
    if one.cloth.face is None:
        return ()
    wall = next(wall for wall in dressed.walls if wall.wall == one.out.ref[0])
    heading = row_of(trade.headings, one.mine.heading, "heading")
    graduation = dressed.room.graduation_mm
    # All lengths up a panel are on the tape's marks, so that they add up to its cut; the finished length goes first.
    turned = quantise(turned_in_mm(one.mine, heading), graduation)
    cut = one.cloth.face.plain_mm * (1.0 - (one.cloth.shrinks if one.cloth.washed_first else 0.0))
    found = []
    for cloth, panel, name in zip(one.cloth.panels, one.out.panels, one.names, strict=True):
        left, right = (quantise(length, graduation) for length in edge_lengths(panel, one.mine, wall))
        marks = marks_of(heading, cloth.hemmed_mm, cloth.finished_mm, panel.rings, cloth.pleats, trade)
        found.append(
            SewnPanel(
                ref=panel.ref,
                name=name,
                side=panel.side,
                pieces=_pieces(bolts, "face", panel),
                lining=_pieces(bolts, "lining", panel),
                interlining=_pieces(bolts, "interlining", panel),
                hemmed_mm=cloth.hemmed_mm,
                finished_mm=cloth.finished_mm,
                heading_mm=turned,
                cut_mm=cut,
                left=Edge(left, cut - turned - left),
                right=Edge(right, cut - turned - right),
                side_hem_mm=trade.allowances["side-hem"].length_mm,
                marks=marks,
                apart_mm=marks.flat[1] - marks.flat[0] if len(marks.flat) > 1 else 0.0,
                drawn_mm=panel.flat_width_mm,
            )
        )
    return tuple(found)


def _pieces(bolts: Sequence[BoltPlan], use: str, panel: PanelOut) -> tuple[CutPiece, ...]:
    own = [piece for bolt in bolts if bolt.use == use for piece in bolt.pieces if piece.panel.ref == panel.ref]
    return tuple(sorted(own, key=lambda piece: piece.number))


def edge_lengths(panel: PanelOut, mine: Layer, wall: SetOut) -> tuple[float, float]:
    """Finished length at the left and at the right edge of a panel that is made, where it hangs closed.

    A hem that is held from the floor follows it, so the edges differ over a floor that falls; others are level. What the
    cloth settles by after some weeks is taken off.
    """
    settles = mine.making.settles.mm if mine.making.settles is not None else 0.0
    long = panel.finished_length_mm or 0.0
    if panel.target_gap_mm is None or panel.length_by:
        return long - settles, long - settles
    left, right = (panel.top_mm - height_at(wall.floor, x) - panel.target_gap_mm for x in panel.closed)
    return left - settles, right - settles
