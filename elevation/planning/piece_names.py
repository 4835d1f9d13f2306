"""The names of pieces, the same on every sheet and label: which window, which panel, front or back."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from elevation.planning.dressed import Dressed
from elevation.room.model import Ref
from elevation.setting_out.model import LayerOut, PanelOut, SetOut, TreatmentOut
from elevation.words import Message, msg


class PanelName(Struct, frozen=True):
    """What a panel is called.

    Attributes
    ----------
    ref : Ref
    window : int
        The number of its treatment, 1, 2, 3 ... through the walls of the room.
    mark : Message
        Short, for a piece of cloth and its label: 2L, 2Rb.
    name : Message
        In words, for a sentence: left panel, right panel 2, back.
    """

    ref: Ref
    window: int
    mark: Message
    name: Message


class Hung(Struct, frozen=True):
    """One layer where it hangs, and the number of its window in the room."""

    wall: SetOut
    laid: TreatmentOut
    layer: LayerOut
    window: int


def hung_layers(dressed: Dressed) -> tuple[Hung, ...]:
    """Every layer of a room, window by window, front to back."""
    numbered = enumerate(((wall, laid) for wall in dressed.walls for laid in wall.treatments), start=1)
    return tuple(Hung(wall, laid, layer, number) for number, (wall, laid) in numbered for layer in laid.layers)


def panel_names(dressed: Dressed) -> dict[Ref, PanelName]:
    """The name of every panel of a room, by its ref."""
    found: dict[Ref, PanelName] = {}
    for hung in hung_layers(dressed):
        found.update(names_of_layer(hung.laid, hung.layer, hung.window))
    return found


def names_of_layer(laid: TreatmentOut, layer: LayerOut, window: int) -> dict[Ref, PanelName]:
    """The names of one layer's panels, by their refs."""
    depth = [other.ref for other in laid.layers].index(layer.ref)
    return {
        panel.ref: PanelName(
            panel.ref, window, _mark(panel, layer, laid.layers, depth, window), _name(panel, layer, laid.layers, depth)
        )
        for panel in layer.panels
    }


def _order(panel: PanelOut, layer: LayerOut) -> int:
    """Which of the panels that park on its side, from the left; 0 where it is the only one."""
    same = sorted((other for other in layer.panels if other.side == panel.side), key=lambda other: other.parks_at_mm)
    return 0 if len(same) == 1 else [other.ref for other in same].index(panel.ref) + 1


def _mark(panel: PanelOut, layer: LayerOut, layers: Sequence[LayerOut], depth: int, window: int) -> Message:
    order = _order(panel, layer)
    side = msg("{window}L", window=window) if panel.side == "left" else msg("{window}R", window=window)
    if order:
        side = msg("{mark}.{number}", mark=side, number=order)
    if len(layers) == 1:
        return side
    if depth == 0:
        return msg("{mark}f", mark=side)
    return msg("{mark}b", mark=side) if depth == len(layers) - 1 else msg("{mark}m{number}", mark=side, number=depth)


def _name(panel: PanelOut, layer: LayerOut, layers: Sequence[LayerOut], depth: int) -> Message:
    order = _order(panel, layer)
    if order:
        name = (
            msg("left panel {number}", number=order) if panel.side == "left" else msg("right panel {number}", number=order)
        )
    else:
        name = msg("left panel") if panel.side == "left" else msg("right panel")
    if len(layers) == 1:
        return name
    if depth == 0:
        return msg("{panel}, front", panel=name)
    if depth == len(layers) - 1:
        return msg("{panel}, back", panel=name)
    return msg("{panel}, middle layer {number}", panel=name, number=depth)
