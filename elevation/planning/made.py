"""Layers that are sewn, and how many rings, eyelets, tabs, glides or hooks their panels take."""

from __future__ import annotations

from elevation.room.model import Layer, Ref, Room
from elevation.setting_out.cloth import cloth_of_layer
from elevation.setting_out.model import LayerOut
from elevation.trade.model import Trade


def is_made(mine: Layer) -> bool:
    """Whether the layer's panels are sewn: none of them has a label, and none was measured as it lies there."""
    return bool(mine.panels) and all(
        panel.label_length is None and panel.measured_length is None and panel.hung_length is None for panel in mine.panels
    )


def runners_of(room: Room, mine: Layer, layer: LayerOut, trade: Trade) -> dict[Ref, int]:
    """How many rings, eyelets, tabs, glides or hooks each panel of a layer takes.

    As many as it is drawn with; a panel that is sewn with pleats takes one for each and one at either edge (a retailer's
    guide counts 14 hooks for a pair of 10 pleats and 18 for 14: bedbathstore.com/pinch.html).

    Parameters
    ----------
    room : Room
    mine : Layer
    layer : LayerOut
    trade : Trade
    """
    found = {panel.ref: panel.rings for panel in layer.panels}
    cloth = cloth_of_layer(room, mine, layer, trade) if is_made(mine) else None
    if cloth is not None:
        found.update({panel.ref: panel.pleats.count + 2 for panel in cloth.panels if panel.pleats is not None})
    return found
