"""The cloth that is bought for panels which are made: face, lining, interlining, tape of the heading."""

from __future__ import annotations

from elevation.planning.buying.model import Tally
from elevation.planning.buying.parts import cloth_part
from elevation.planning.made import is_made, runners_of
from elevation.room.model import Fabric, Layer, Room
from elevation.setting_out.cloth import Bolt, bolt_mm, cloth_of_layer
from elevation.setting_out.model import LayerOut, PelmetOut
from elevation.setting_out.valance import valance_cloth
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.words import Message, Mm, msg, term

_TAPED = ("pencil", "wave")
"""Drawings of headings that a bought tape gathers or spaces."""


def add_cloth(
    tally: Tally, room: Room, mine: Layer, layer: LayerOut, window: int, placed: set[tuple[str, float, float]], trade: Trade
) -> None:
    """Add what one layer takes in cloth; nothing where its panels are bought.

    Parameters
    ----------
    tally : Tally
    room : Room
    mine : Layer
    layer : LayerOut
        Where it landed.
    window : int
    placed : set of (str, float, float)
        Cloth (part, width, repeat) whose pattern has been placed in this room already; added to.
    trade : Trade
    """
    if not is_made(mine):
        return
    cloth = cloth_of_layer(room, mine, layer, trade)
    if cloth is None:  # pragma: no cover - made cloth has panels
        return
    step = trade.allowances["sold-in" if room.unit == "in" else "sold-mm"].length_mm
    if cloth.face is None:
        name = msg("{cloth}, not known how much", cloth=name_of(mine.fabric, trade))
        unknown = (msg("How much to buy is known once the panels' length is."),)
        tally.add(f"{cloth_part(mine.fabric)}-unknown", "cloth", name, 1, window, notes=unknown)
        return
    _face(tally, mine.fabric, cloth.face, window, step, placed, trade)
    for row_id, bolt in ((mine.fabric.lining, cloth.lining), (mine.fabric.interlining, cloth.interlining)):
        if row_id is not None and bolt is not None:
            row = row_of(trade.fabrics, row_id, "cloth")
            name = _sold(term(row.name), bolt)
            tally.add(f"cloth:{row_id}", "cloth", name, bolt.total_mm, window, measure="length", step=step)
    heading = row_of(trade.headings, mine.heading, "heading")
    if heading.drawing in _TAPED:
        name = msg("heading tape for {heading}", heading=term(heading.name))
        tally.add(f"heading-tape:{heading.id}", "cloth", name, cloth.flat_mm, window, measure="length", step=step)
    elif heading.is_pleated:
        name = msg("stiffener for {heading}", heading=term(heading.name))
        tally.add("stiffener:buckram", "cloth", name, cloth.flat_mm, window, measure="length", step=step)
    if heading.drawing == "eyelets":
        count = sum(runners_of(room, mine, layer, trade).values())
        name = msg("eyelets that pass a rod of {diameter}", diameter=Mm(layer.support.diameter_mm, about=True))
        tally.add(f"eyelet:{layer.support.diameter_mm:.0f}", "rings", name, count, window)


def add_valance(
    tally: Tally,
    room: Room,
    front: Layer,
    pelmet: PelmetOut,
    window: int,
    placed: set[tuple[str, float, float]],
    trade: Trade,
) -> None:
    """Add what a valance is sewn of: cloth of the front layer's own, gathering tape, touch tape to hold it to its shelf.

    Parameters
    ----------
    tally : Tally
    room : Room
    front : Layer
    pelmet : PelmetOut
        A valance; of a board nothing is added.
    window : int
    placed : set of (str, float, float)
        As for ``add_cloth``.
    trade : Trade
    """
    cloth = valance_cloth(room, front, pelmet, trade)
    if cloth is None:
        return
    step = trade.allowances["sold-in" if room.unit == "in" else "sold-mm"].length_mm
    _face(tally, front.fabric, cloth.face, window, step, placed, trade)
    name = msg("heading tape for {heading}", heading=term(cloth.heading.name))
    tally.add(f"heading-tape:{cloth.heading.id}", "cloth", name, cloth.hemmed_mm, window, measure="length", step=step)
    name = msg("touch tape, hooks and loops, for valances")
    tally.add("touch-tape:valance", "cloth", name, cloth.finished_mm, window, measure="length", step=step)


def _face(
    tally: Tally,
    fabric: Fabric,
    bolt: Bolt,
    window: int,
    step: float,
    placed: set[tuple[str, float, float]],
    trade: Trade,
) -> None:
    part, total = cloth_part(fabric), bolt.total_mm
    notes: tuple[Message, ...] = ()
    # Cloth that runs through on its side has no widths.
    if fabric.repeat is not None and bolt.widths:
        # One repeat is lost before the first motif, once for all that is cut from the same cloth in a room.
        same = (part, bolt_mm(fabric, trade), fabric.repeat.mm)
        total += 0.0 if same in placed else fabric.repeat.mm
        placed.add(same)
        notes = (msg("one repeat of it is to place the pattern's first motif"),)
    tally.add(part, "cloth", _sold(name_of(fabric, trade), bolt), total, window, measure="length", step=step, notes=notes)


def name_of(fabric: Fabric, trade: Trade) -> Message:
    """What a layer's face cloth is called."""
    if fabric.name:
        return msg("{name}", name=fabric.name)
    if fabric.row is not None:
        return term(row_of(trade.fabrics, fabric.row, "cloth").name)
    return msg("cloth not chosen yet, {body}", body=term(trade.bodies[fabric.body].name))


def _sold(name: Message, bolt: Bolt) -> Message:
    return msg("{cloth}, {width} wide", cloth=name, width=Mm(bolt.usable_mm, about=True))
