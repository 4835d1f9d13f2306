"""What of a layer lands the same wherever the floor lies, remembered while only the floor moves."""

from __future__ import annotations

from functools import partial

from msgspec import Struct

from elevation.room.model import Layer, Ref
from elevation.setting_out.board import out_by
from elevation.setting_out.brackets import brackets_of, place_of
from elevation.setting_out.covers import Cover
from elevation.setting_out.facts import Defaults, Overhead
from elevation.setting_out.glass import glass_of
from elevation.setting_out.hanging import Place, RodUnit, under_one_newton
from elevation.setting_out.memo import Memo
from elevation.setting_out.model import BracketOut, GlassOut, LayerOut, Span, SupportOut
from elevation.setting_out.mounting import drop_of
from elevation.setting_out.opening import Placed
from elevation.setting_out.panels import Making, making_of
from elevation.setting_out.support import ends_of, support_of
from elevation.trade.beam import Beam
from elevation.trade.model import Trade


class Planned(Struct, frozen=True, gc=False):
    """The metal of a layer as planned.

    Attributes
    ----------
    layer : Layer
        Stood out by its board, where it has one.
    support : SupportOut
    brackets : tuple of BracketOut
        Left to right.
    """

    layer: Layer
    support: SupportOut
    brackets: tuple[BracketOut, ...]


def planned_of(
    ref: Ref, layer: Layer, mount: str, covered: tuple[Placed, ...], overhead: Overhead, trade: Trade
) -> Planned:
    """Rod and brackets of a layer; nothing of them depends on the floor."""
    openings = tuple(placed.out for placed in covered)
    board = layer.board if mount == "wall" else None
    if board is not None:
        layer = out_by(layer, board)
    span = ends_of(layer.rod, openings, overhead.width_mm, overhead.angles)
    centres = sorted(place_of(bracket, *span) for bracket in layer.brackets)
    drop = drop_of(layer.brackets, trade) if mount == "ceiling" else 0.0
    support = support_of(layer.rod, openings, overhead, trade, centres, span, mount, drop)
    hung_by = () if support.kind == "tension-rod" else layer.brackets
    glides = support.kind == "track"
    return Planned(layer, support, brackets_of(ref, hung_by, support, overhead, trade, glides=glides))


class LayerParts:
    """What is remembered of one layer; each part is the very same object as long as what it depends on is."""

    def __init__(self, ref: Ref) -> None:
        self.planned: Memo[[Layer, str, tuple[Placed, ...], Overhead, Trade], Planned] = Memo(partial(planned_of, ref))
        self.making: Memo[
            [Layer, tuple[Placed, ...], tuple[BracketOut, ...], SupportOut, Defaults, Trade], Making | None
        ] = Memo(making_of)
        self._under: tuple[tuple[tuple[Beam, Span, tuple[tuple[Place, ...], ...]], RodUnit | None], ...] = ()

    def under(self, beam: Beam, rod: Span, places: tuple[tuple[Place, ...], ...]) -> RodUnit | None:
        """What 1 N of the rod and of each panel does: the same while cloth only grows longer or heavier."""
        asked = (beam, rod, places)
        for known, unit in self._under:
            if known == asked:
                return unit
        unit = under_one_newton(*asked)
        self._under = ((asked, unit), *self._under[:1])
        return unit


class Parts:
    """The layers of one treatment."""

    def __init__(self) -> None:
        self._layers: dict[Ref, LayerParts] = {}
        self._glass: tuple[tuple[object, ...], GlassOut] | None = None

    def glass(
        self,
        covered: tuple[Placed, ...],
        layers: tuple[LayerOut, ...],
        asked: tuple[Layer, ...],
        boxes: tuple[Cover, ...],
        dropped: tuple[Cover, ...],
    ) -> GlassOut:
        """The glass behind the layers: how long cloth hangs tells on it only where that is tied."""
        panels = [panel for layer in layers for panel in (*layer.panels, *layer.guests)]
        if any(panel.tie is not None for panel in panels):
            return glass_of(covered, layers, asked, boxes, dropped)
        ends = [(layer.support.left_mm, layer.support.right_mm) for layer in layers]
        widths = [
            (panel.open, panel.closed, panel.drawn, panel.side, panel.stationary, panel.parks_at_mm, panel.stack_mm)
            for panel in panels
        ]
        facts = (covered, asked, ends, widths, boxes, dropped)
        if self._glass is None or self._glass[0] != facts:
            self._glass = facts, glass_of(covered, layers, asked, boxes, dropped)
        return self._glass[1]

    def of(self, ref: Ref) -> LayerParts:
        """The layer's."""
        found = self._layers.get(ref)
        if found is None:
            found = self._layers[ref] = LayerParts(ref)
        return found
