"""Ready-made panels: what they need so that their hems hang as wished over the real floor.

Nothing is reckoned from a label: only a measured panel is marked. A cut is level; where the floor falls, the fold follows
it and the hem is deeper on one side. How deep is folded and from where on a fold is worth sewing is common practice, no
source.
"""

from __future__ import annotations

from elevation.planning.dressed import Dressed
from elevation.planning.made import is_made
from elevation.planning.piece_names import Hung, PanelName, names_of_layer
from elevation.planning.sewing.model import Alteration, Edge, Marks, Remedy
from elevation.planning.sewing.positions import marks_of
from elevation.room.find import layer_of
from elevation.room.model import Layer, Room
from elevation.setting_out.cloth import hem_mm, shrinks_of
from elevation.setting_out.model import LayerOut, PanelOut, SetOut
from elevation.setting_out.profile import height_at
from elevation.trade.model import Trade
from elevation.trade.tables import limit_of, row_of
from elevation.units.rounding import quantise
from elevation.units.tolerance import exceeds, falls_short


def alterations(dressed: Dressed, hung: Hung, trade: Trade) -> tuple[Alteration, ...]:
    """What the ready-made panels of a layer need; none where its panels are sewn.

    Parameters
    ----------
    dressed : Dressed
    hung : Hung
    trade : Trade
    """
    mine = layer_of(dressed.room, hung.layer.ref)
    if not hung.layer.panels or is_made(mine):
        return ()
    names = names_of_layer(hung.laid, hung.layer, hung.window)
    return tuple(
        _panel(dressed.room, mine, hung.layer, panel, hung.wall, names[panel.ref], trade) for panel in hung.layer.panels
    )


def _panel(
    room: Room, mine: Layer, layer: LayerOut, panel: PanelOut, wall: SetOut, name: PanelName, trade: Trade
) -> Alteration:
    has, by = panel.finished_length_mm, panel.length_by
    wished = _wished(room, mine, layer, panel, wall, trade)
    if wished is not None:
        wished = quantise(wished[0], room.graduation_mm), quantise(wished[1], room.graduation_mm)
    left = right = None
    cut = None
    by_mm = 0.0
    what: Remedy = "unknown"
    if by in ("", "label"):
        what = "measure"
    elif wished is None:
        what = "as-it-is"
    elif has is not None:
        what, cut, by_mm = _solved(room, mine, has, wished, trade)
        if what in ("shorten", "turn-up"):
            end = has if cut is None else cut
            left, right = Edge(wished[0], end - wished[0]), Edge(wished[1], end - wished[1])
        elif what == "short":
            left, right = Edge(wished[0], 0.0), Edge(wished[1], 0.0)
    width = panel.flat_width_mm / panel.count
    return Alteration(
        ref=panel.ref,
        name=name,
        side=panel.side,
        count=panel.count,
        width_mm=width,
        has_mm=has if by else None,
        by=by,
        off_mm=_limit(room, trade, "label-off") if by == "label" else 0.0,
        left=left,
        right=right,
        cut_mm=cut,
        what=what,
        by_mm=by_mm,
        gap_low_mm=panel.gap_low_mm if by else None,
        gap_high_mm=panel.gap_high_mm if by else None,
        marks=_clips(layer, panel, width, trade),
        wash=0.0 if mine.making.washed_first or by == "hung" else shrinks_of(mine.fabric, trade),
    )


def _limit(room: Room, trade: Trade, limit_id: str) -> float:
    own = room.limits.get(limit_id)
    return limit_of(trade, limit_id) if own is None else own.mm


def _wished(
    room: Room, mine: Layer, layer: LayerOut, panel: PanelOut, wall: SetOut, trade: Trade
) -> tuple[float, float] | None:
    """The finished length that is wished at the left and at the right edge; None where the panel hangs as it is.

    A panel that is to hang as long as it is, but would lie on the floor, is brought clear of it by the usual gap.
    """
    if layer.wish.length_mm is not None:
        return layer.wish.length_mm, layer.wish.length_mm
    if layer.wish.hem_mm is not None:
        level = panel.top_mm - layer.wish.hem_mm
        return level, level
    gap = panel.target_gap_mm
    if gap is None:
        if mine.hem.target == "panel" and (panel.gap_low_mm is None or panel.gap_low_mm >= 0):
            return None
        gap = _limit(room, trade, "hem-clear-default")
    left, right = panel.closed
    return panel.top_mm - height_at(wall.floor, left) - gap, panel.top_mm - height_at(wall.floor, right) - gap


def _solved(
    room: Room, mine: Layer, has_mm: float, wished: tuple[float, float], trade: Trade
) -> tuple[Remedy, float | None, float]:
    """What to do, where to cut, by how much it is off."""
    longest, shortest = max(wished), min(wished)
    over, under = has_mm - shortest, longest - has_mm
    half = room.graduation_mm / 2
    if exceeds(under, _limit(room, trade, "hem-high"), half):
        return "short", None, under
    if not exceeds(over, _limit(room, trade, "hem-low"), half):
        return "fine", None, 0.0
    hem = quantise(hem_mm(mine, longest, trade), room.graduation_mm)
    if not falls_short(has_mm, longest + hem, half):
        return "shorten", longest + hem, 0.0
    # A fold at the end that is less deep than this does not lie flat.
    if falls_short(has_mm - longest, trade.allowances["fold-least"].length_mm, half):
        return "lift", None, over
    return "turn-up", None, 0.0


def _clips(layer: LayerOut, panel: PanelOut, width_mm: float, trade: Trade) -> Marks | None:
    """Where clips or rings go on one piece; eyelets, tabs and pleats are there already."""
    heading = row_of(trade.headings, layer.heading, "heading")
    if heading.drawing != "rings":
        return None
    return marks_of(heading, width_mm, width_mm, panel.rings // panel.count, None, trade)
