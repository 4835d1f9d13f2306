"""Which stretch of the rod each panel has to cover when it is closed."""

from __future__ import annotations

from elevation.room.model import Ref
from elevation.setting_out.model import LayerOut, PanelOut
from elevation.units.tolerance import TOUCH_MM


def faces_of(layer: LayerOut) -> dict[Ref, float]:
    """The stretch of each panel that draws, in mm along the rod.

    From where it parks to the next thing that keeps it: the rod's end, a panel that parks there, a bracket in its way;
    two panels that come toward each other share what lies between them. Stationary panels cover nothing and have none.
    """
    movers = sorted((panel for panel in layer.panels if not panel.stationary), key=_edge)
    return {panel.ref: _face(panel, movers, layer) for panel in movers}


def _edge(panel: PanelOut) -> float:
    return panel.parks_at_mm


def _face(panel: PanelOut, movers: list[PanelOut], layer: LayerOut) -> float:
    is_left = panel.side == "left"
    support = layer.support
    here = panel.parks_at_mm
    far = support.right_mm if is_left else support.left_mm
    # The rod's own end counts, not the ring parked a little outside or inside of it.
    near = support.left_mm if is_left else support.right_mm
    is_first = all((other.parks_at_mm >= here) if is_left else (other.parks_at_mm <= here) for other in movers)
    start = near if is_first else here
    face = abs(far - start)
    stop = _blocked(panel, layer)
    if stop is not None:
        face = min(face, abs(stop - start))
    for other in movers:
        away = other.parks_at_mm - here if is_left else here - other.parks_at_mm
        if other is panel or away <= TOUCH_MM:
            continue
        if other.side == panel.side:
            face = min(face, away)
        else:
            end = far if _is_last(other, movers, is_left) else other.parks_at_mm
            face = min(face, abs(end - start) / 2)
    return max(face, 0.0)


def _is_last(panel: PanelOut, movers: list[PanelOut], is_left: bool) -> bool:
    if is_left:
        return all(other.parks_at_mm <= panel.parks_at_mm for other in movers)
    return all(other.parks_at_mm >= panel.parks_at_mm for other in movers)


def _blocked(panel: PanelOut, layer: LayerOut) -> float | None:
    """The first bracket that the panel cannot pass, if one stands in its way."""
    places = {bracket.ref: bracket.x_mm for bracket in layer.brackets}
    return next((places[ref] for ref in panel.cannot_pass if ref in places), None)
