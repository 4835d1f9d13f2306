"""The ready-made width whose pieces come nearest to the fullness that a layer's cloth is wished."""

from __future__ import annotations

from elevation.room.find import layer_of
from elevation.room.model import Room
from elevation.setting_out.cloth import cloth_of_layer
from elevation.setting_out.model import LayerOut
from elevation.trade.model import Trade
from elevation.trade.ready import WidthFit, best_width, width_fits


def ready_width(room: Room, layer: LayerOut, trade: Trade) -> tuple[WidthFit | None, float]:
    """The ready-made width that comes nearest, for every panel of a layer that draws, and the fullness wished.

    Parameters
    ----------
    room : Room
        Its unit names the market.
    layer : LayerOut
    trade : Trade

    Returns
    -------
    (WidthFit or None, float)
        None where nothing draws, or no width stays within what is usual for the heading. Of panels that differ the one
        that takes most cloth counts.
    """
    cloth = cloth_of_layer(room, layer_of(room, layer.ref), layer, trade)
    if cloth is None or cloth.fullness <= 0:
        return None, 0.0
    heading = trade.headings[layer.heading]
    flat = max(
        (one.flat_mm for out, one in zip(layer.panels, cloth.panels, strict=True) if not out.stationary), default=0.0
    )
    found = width_fits(trade.ready_widths.values(), room.unit, flat / cloth.fullness, heading.fullness_low)
    return best_width(found, cloth.fullness, heading.fullness_high), cloth.fullness
