"""Everything that is sewn for one room: bolts, panels, alterations, window by window."""

from __future__ import annotations

from msgspec import Struct

from elevation.planning.dressed import Dressed
from elevation.planning.piece_names import Hung, hung_layers
from elevation.planning.sewing.altering import alterations
from elevation.planning.sewing.bolts import MadeLayer, bolts_of, made_layers
from elevation.planning.sewing.model import Alteration, BoltPlan, SewnPanel
from elevation.planning.sewing.panels import sewn_panels
from elevation.planning.sewing.valances import HungValance, valances_of
from elevation.trade.model import Trade


class SewnLayer(Struct, frozen=True):
    """One layer: its panels to be made, or the alterations of its ready-made ones.

    ``made`` is None where it is ready-made; a layer to be made whose length is not known yet has no ``panels``.
    """

    hung: Hung
    made: MadeLayer | None
    panels: tuple[SewnPanel, ...]
    alterations: tuple[Alteration, ...]


class Sewing(Struct, frozen=True):
    """A room's sewing: its bolts, its layers that hang any cloth, and its valances."""

    bolts: tuple[BoltPlan, ...]
    layers: tuple[SewnLayer, ...]
    valances: tuple[HungValance, ...] = ()


def sewing_of(dressed: Dressed, trade: Trade) -> Sewing:
    """Everything that is sewn for one room.

    Parameters
    ----------
    dressed : Dressed
    trade : Trade
    """
    bolts = bolts_of(dressed, trade)
    made = {one.out.ref: one for one in made_layers(dressed, trade)}
    layers = []
    for hung in hung_layers(dressed):
        own = made.get(hung.layer.ref)
        panels = () if own is None else sewn_panels(dressed, own, bolts, trade)
        layers.append(SewnLayer(hung, own, panels, alterations(dressed, hung, trade)))
    hanging = tuple(layer for layer in layers if layer.made is not None or layer.alterations)
    return Sewing(bolts, hanging, tuple(valances_of(dressed, trade)))
