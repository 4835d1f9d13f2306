"""Pieces on the bolt: every cloth of a room laid out from its square end, strip by strip, until it is used up.

All pieces lie the same way up, their tops towards the square end. Where a pattern repeats, one repeat is kept at the
beginning to find the first motif, once for the room; every piece then starts at the same place of the pattern, and with a
half drop at half a repeat from its neighbour (workroom practice: one repeat to place the motif, fayefortune.blogspot.com
2012-03; half drop: livingstonetextiles.com 2011).
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.planning.buying.cloth import name_of
from elevation.planning.buying.parts import cloth_part
from elevation.planning.dressed import Dressed
from elevation.planning.made import is_made
from elevation.planning.piece_names import PanelName, hung_layers, names_of_layer
from elevation.planning.sewing.cells import Cell, cells_of
from elevation.planning.sewing.linings import lining_strips
from elevation.planning.sewing.model import Along, Area, BoltPlan, CutPiece, Strip
from elevation.planning.sewing.valances import HungValance, valances_of
from elevation.room.find import layer_of
from elevation.room.model import Layer
from elevation.setting_out.cloth import Bolt, LayerCloth, PanelCloth, bolt_mm, cloth_of_layer, shrinks_of
from elevation.setting_out.model import LayerOut
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.trade.yardage import sold
from elevation.units.tolerance import TOUCH_MM
from elevation.words import term


class MadeLayer(Struct, frozen=True):
    """A layer that is sewn: the room's own layer, where it landed, its cloth, the names of its panels in their order."""

    mine: Layer
    out: LayerOut
    cloth: LayerCloth
    names: tuple[PanelName, ...]


class _Order(Struct, frozen=True):
    """Pieces that are cut together from one cloth: a layer's panels, or a valance."""

    mine: Layer
    face: Bolt
    panels: tuple[PanelCloth, ...]
    names: tuple[PanelName, ...]
    sides: tuple[str, ...]
    runs_through: bool
    shrinks: float


class _Key(Struct, frozen=True):
    """Cloth that is cut from one bolt."""

    part: str
    use: str
    width_mm: float
    repeat_mm: float = 0.0
    half_drop: bool = False
    washed: float = 0.0


def made_layers(dressed: Dressed, trade: Trade) -> tuple[MadeLayer, ...]:
    """Every layer of a room that is sewn and whose cloth can be reckoned at all."""
    found = []
    for hung in hung_layers(dressed):
        mine = layer_of(dressed.room, hung.layer.ref)
        cloth = cloth_of_layer(dressed.room, mine, hung.layer, trade) if is_made(mine) else None
        if cloth is not None:
            names = names_of_layer(hung.laid, hung.layer, hung.window)
            found.append(MadeLayer(mine, hung.layer, cloth, tuple(names[panel.ref] for panel in hung.layer.panels)))
    return tuple(found)


def bolts_of(dressed: Dressed, trade: Trade) -> tuple[BoltPlan, ...]:
    """Every bolt of a room, faces first, each laid out whole.

    Parameters
    ----------
    dressed : Dressed
    trade : Trade

    Returns
    -------
    tuple of BoltPlan
        Layers whose length is not known yet are in none.
    """
    faces: dict[_Key, list[_Order]] = {}
    others: dict[_Key, list[MadeLayer]] = {}
    for one in made_layers(dressed, trade):
        if one.cloth.face is None:
            continue
        faces.setdefault(_face_key(one.mine, trade), []).append(_order_of(one, one.cloth.face))
        for use, row_id in (("lining", one.mine.fabric.lining), ("interlining", one.mine.fabric.interlining)):
            bolt = one.cloth.lining if use == "lining" else one.cloth.interlining
            if bolt is not None and row_id is not None:
                others.setdefault(_Key(f"cloth:{row_id}", use, bolt.usable_mm), []).append(one)
    for valance in valances_of(dressed, trade):
        faces.setdefault(_face_key(valance.mine, trade), []).append(_valance_order(valance, trade))
    step = trade.allowances["sold-in" if dressed.room.unit == "in" else "sold-mm"].length_mm
    found = [_face_bolt(key, own, step, trade) for key, own in faces.items()]
    found.extend(_other_bolt(key, own, step, trade) for key, own in others.items())
    return tuple(found)


def _order_of(one: MadeLayer, face: Bolt) -> _Order:
    sides = tuple(panel.side for panel in one.out.panels)
    return _Order(one.mine, face, one.cloth.panels, one.names, sides, one.cloth.railroaded, one.cloth.shrinks)


def _valance_order(one: HungValance, trade: Trade) -> _Order:
    cloth = one.cloth
    panel = PanelCloth(one.name.ref, cloth.finished_mm, cloth.flat_mm, cloth.widths, None, cloth.hemmed_mm)
    shrinks = shrinks_of(one.mine.fabric, trade)
    return _Order(one.mine, cloth.face, (panel,), (one.name,), ("right",), not cloth.widths, shrinks)


def _face_key(mine: Layer, trade: Trade) -> _Key:
    fabric = mine.fabric
    repeat = fabric.repeat.mm if fabric.repeat is not None else 0.0
    washed = shrinks_of(fabric, trade) if mine.making.washed_first else 0.0
    return _Key(cloth_part(fabric), "face", bolt_mm(fabric, trade), repeat, fabric.half_drop and repeat > 0, washed)


def _face_bolt(key: _Key, own: Sequence[_Order], step: float, trade: Trade) -> BoltPlan:
    strips = _Strips(key.width_mm)
    if key.repeat_mm > 0 and any(not one.runs_through for one in own):
        strips.waste(key.repeat_mm, "place")
    for one in own:
        if one.runs_through:
            _on_its_side(strips, one, trade, key.washed)
        else:
            _upright(strips, one, key)
    bought = float(sold(strips.at, step))
    strips.waste(bought - strips.at, "left")
    fabric = own[0].mine.fabric
    row = None if fabric.row is None else row_of(trade.fabrics, fabric.row, "cloth")
    left = 1.0 - key.washed
    return BoltPlan(
        name_of(fabric, trade),
        "face",
        key.width_mm,
        bought,
        key.washed,
        key.repeat_mm * left,
        key.half_drop,
        fabric.one_way or (row is not None and row.one_way),
        any(one.runs_through for one in own),
        0.0 if key.washed else max(one.shrinks for one in own),
        tuple(_washed(strip, left) for strip in strips.found),
    )


class _Strips:
    """Strips of one bolt as they are laid, each where the last one ends."""

    def __init__(self, width_mm: float) -> None:
        self.width = width_mm
        self.at = 0.0
        self.found: list[Strip] = []

    def waste(self, length_mm: float, kind: Along) -> None:
        """A stretch without a piece; none where it has no length."""
        if length_mm > TOUCH_MM:
            self.cut(length_mm, (Area(0.0, self.width, "strip"),), kind)

    def cut(self, length_mm: float, areas: tuple[Area, ...], kind: Along = "cut") -> None:
        """A stretch with what lies across it."""
        self.found.append(Strip(self.at, self.at + length_mm, kind, areas))
        self.at += length_mm


def _upright(strips: _Strips, one: _Order, key: _Key) -> None:
    """Cuts of whole widths: with a half drop those that start half a repeat higher come after the others."""
    face = one.face
    is_matched = face.extra_mm > 0
    cells = cells_of(one.panels, face, one.names, one.sides, key.repeat_mm if key.half_drop else 0.0)
    straight = [cell for cell in cells if not (is_matched and cell.is_shifted)]
    shifted = [cell for cell in cells if is_matched and cell.is_shifted]
    for cell in straight:
        strips.cut(face.cut_mm, _areas(cell, key.width_mm))
    if not is_matched:
        return
    if not shifted:
        strips.waste(face.extra_mm, "match")
        return
    strips.waste(face.extra_mm / 2, "match")
    for cell in shifted:
        strips.cut(face.cut_mm, _areas(cell, key.width_mm))
    strips.waste(face.extra_mm / 2, "match")


def _areas(cell: Cell, width_mm: float) -> tuple[Area, ...]:
    """A cell's pieces between the edges that are no use."""
    edge = (width_mm - sum(piece.width_mm for piece in cell.pieces)) / 2
    areas, at = [], 0.0
    if edge > TOUCH_MM:
        areas.append(Area(0.0, edge, "selvedge"))
        at = edge
    for piece in cell.pieces:
        areas.append(Area(at, at + piece.width_mm, "piece", piece))
        at += piece.width_mm
    if width_mm - at > TOUCH_MM:
        areas.append(Area(at, width_mm, "selvedge"))
    return tuple(areas)


def _on_its_side(strips: _Strips, one: _Order, trade: Trade, washed: float) -> None:
    """Cloth that runs through: each panel a stretch of the bolt, longer by what a wash takes of it, its drop across it."""
    face = one.face
    side = trade.allowances["side-hem"].length_mm
    for panel, name in zip(one.panels, one.names, strict=True):
        long = (panel.flat_mm + 2 * side) / (1.0 - washed)
        piece = CutPiece(name, 1, 1, face.cut_mm, long, share=0.0)
        areas = [Area(0.0, face.cut_mm, "piece", piece)]
        if strips.width - face.cut_mm > TOUCH_MM:
            areas.append(Area(face.cut_mm, strips.width, "strip"))
        strips.cut(long, tuple(areas))


def _other_bolt(key: _Key, own: Sequence[MadeLayer], step: float, trade: Trade) -> BoltPlan:
    strips = _Strips(key.width_mm)
    seam = trade.allowances["seam"].length_mm
    for one in own:
        bolt = one.cloth.lining if key.use == "lining" else one.cloth.interlining
        if bolt is None:  # pragma: no cover - only layers with that cloth are put on its bolt
            continue
        for areas in lining_strips(bolt, one.names, [panel.side for panel in one.out.panels], seam):
            strips.cut(bolt.cut_mm, areas)
    bought = float(sold(strips.at, step))
    strips.waste(bought - strips.at, "left")
    row = row_of(trade.fabrics, key.part.partition(":")[2], "cloth")
    return BoltPlan(
        term(row.name), key.use, key.width_mm, bought, 0.0, 0.0, False, row.one_way, False, row.shrinks, tuple(strips.found)
    )


def _washed(strip: Strip, left: float) -> Strip:
    """A strip as it is after the wash, which took its part of the length; the width is what is left to the tape."""
    if left == 1.0:
        return strip
    areas = tuple(
        area if area.piece is None else Area(area.from_mm, area.to_mm, area.kind, _washed_piece(area.piece, left))
        for area in strip.areas
    )
    return Strip(strip.from_mm * left, strip.to_mm * left, strip.kind, areas)


def _washed_piece(piece: CutPiece, left: float) -> CutPiece:
    if not piece.share:
        # On its side the wash takes of what becomes its width, and was given that much more.
        return CutPiece(piece.panel, piece.number, piece.count, piece.length_mm, piece.width_mm * left, share=0.0)
    return CutPiece(
        piece.panel,
        piece.number,
        piece.count,
        piece.length_mm * left,
        piece.width_mm,
        piece.trim_top_mm * left,
        piece.trim_bottom_mm * left,
        piece.share,
        piece.cut_edge,
        piece.shift_mm * left,
    )
