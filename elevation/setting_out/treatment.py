"""One treatment set out: every layer's rod, brackets and panels, glass and clearances."""

from __future__ import annotations

from elevation.room.model import Layer, Ref, Treatment
from elevation.setting_out.as_built import as_hung, is_hung
from elevation.setting_out.board import board_of, out_by
from elevation.setting_out.brackets import brackets_of, place_of
from elevation.setting_out.clearances import clearances_of
from elevation.setting_out.facts import Defaults, WallFacts
from elevation.setting_out.glass import glass_of
from elevation.setting_out.model import LayerOut, OpeningOut, TreatmentOut
from elevation.setting_out.mounting import drop_of
from elevation.setting_out.opening import Placed
from elevation.setting_out.panels import panels_of
from elevation.setting_out.support import ends_of, support_of
from elevation.trade.model import Trade


def set_out_treatment(
    ref: Ref,
    treatment: Treatment,
    covered: tuple[Placed, ...],
    facts: WallFacts,
    defaults: Defaults,
    trade: Trade,
    joined: tuple[Ref | None, Ref | None] = (None, None),
) -> TreatmentOut:
    """Set out one treatment.

    Parameters
    ----------
    ref : Ref
        Wall, scheme and treatment.
    treatment : Treatment
        With at least one layer.
    covered : tuple of Placed
        The openings it covers, left to right; at least one.
    facts, defaults, trade
        What holds for the wall and for the trade.
    joined : (Ref or None, Ref or None)
        The legs on the walls to the left and to the right.
    """
    openings = tuple(placed.out for placed in covered)
    layers = tuple(
        _layer((*ref, layer.id), layer, treatment.mount, openings, facts, defaults, trade) for layer in treatment.layers
    )
    return TreatmentOut(
        ref=ref,
        name=treatment.name,
        mount=treatment.mount,
        openings=openings,
        layers=layers,
        glass=glass_of(covered, layers, treatment.layers),
        clearances=clearances_of(openings, layers, facts),
        joined=joined,
    )


def _layer(
    ref: Ref,
    layer: Layer,
    mount: str,
    openings: tuple[OpeningOut, ...],
    facts: WallFacts,
    defaults: Defaults,
    trade: Trade,
) -> LayerOut:
    board = layer.board if mount == "wall" else None
    if board is not None:
        layer = out_by(layer, board)
    span = ends_of(layer.rod, openings, facts.width_mm, facts.angles)
    centres = sorted(place_of(bracket, *span) for bracket in layer.brackets)
    support = support_of(
        layer.rod,
        openings,
        facts,
        trade,
        centres,
        span,
        mount,
        drop_of(layer.brackets, trade) if mount == "ceiling" else 0.0,
    )
    hung_by = () if support.kind == "tension-rod" else layer.brackets
    brackets = brackets_of(ref, hung_by, *span, support.height_mm, facts, trade, glides=support.kind == "track")
    support, brackets, facts = as_hung(layer, support, brackets, facts)
    panels = panels_of(ref, layer, openings, brackets, support, facts, defaults, trade)
    fabric = layer.fabric
    return LayerOut(
        ref,
        support,
        brackets,
        panels,
        layer.heading,
        fabric.colour,
        fabric.body,
        is_hung(layer),
        None if board is None else board_of(board, brackets),
    )
