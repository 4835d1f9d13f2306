"""One treatment set out: every layer's rod, brackets and panels, glass and clearances."""

from __future__ import annotations

from elevation.room.model import Fabric, Layer, Ref, Treatment
from elevation.room.mounting import INSIDE
from elevation.setting_out.as_built import as_hung, is_hung
from elevation.setting_out.board import board_of
from elevation.setting_out.clearances import clearances_of
from elevation.setting_out.cloth import shrinks_of
from elevation.setting_out.dress import blind_of, boxes_of, dropped_of, pelmet_of
from elevation.setting_out.facts import Defaults, Overhead, WallFacts
from elevation.setting_out.hems import target_of
from elevation.setting_out.loads import with_loads
from elevation.setting_out.model import LayerOut, OpeningOut, PanelOut, PatternOut, TreatmentOut, WishOut
from elevation.setting_out.opening import Placed
from elevation.setting_out.panels import panels_of
from elevation.setting_out.parts import LayerParts, Parts
from elevation.setting_out.passing import NOBODY, Passing, along_all, closed_on, guests_of
from elevation.trade.model import Trade
from elevation.trade.tables import limit_of


def set_out_treatment(
    ref: Ref,
    treatment: Treatment,
    covered: tuple[Placed, ...],
    facts: WallFacts,
    overhead: Overhead,
    defaults: Defaults,
    trade: Trade,
    joined: tuple[Ref | None, Ref | None] = (None, None),
    passing: tuple[Passing, ...] = NOBODY,
    *,
    parts: Parts,
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
    facts, overhead, defaults, trade
        What holds for the wall and for the trade.
    joined : (Ref or None, Ref or None)
        The legs on the walls to the left and to the right.
    passing : tuple of Passing
        What passes the corners of its layers on bent tracks.
    parts : Parts
        What is remembered of its layers.
    """
    openings = tuple(placed.out for placed in covered)
    layers = tuple(
        _layer(
            (*ref, layer.id),
            layer,
            treatment.mount,
            covered,
            facts,
            overhead,
            defaults,
            trade,
            parts.of((*ref, layer.id)),
            next((one for one in passing if one.layer == layer.id), None),
        )
        for layer in treatment.layers
    )
    pelmet = (
        None
        if treatment.pelmet is None or treatment.mount in INSIDE
        else pelmet_of(treatment.pelmet, layers, defaults.pelmet_irons_mm)
    )
    blinds = () if treatment.blind is None else tuple(blind_of(treatment.blind, opening) for opening in openings)
    return TreatmentOut(
        ref=ref,
        name=treatment.name,
        mount=treatment.mount,
        openings=openings,
        layers=layers,
        glass=parts.glass(covered, layers, treatment.layers, boxes_of(pelmet, blinds), dropped_of(blinds)),
        clearances=clearances_of(openings, layers, facts),
        joined=joined,
        pelmet=pelmet,
        blinds=blinds,
    )


def _layer(
    ref: Ref,
    layer: Layer,
    mount: str,
    covered: tuple[Placed, ...],
    facts: WallFacts,
    overhead: Overhead,
    defaults: Defaults,
    trade: Trade,
    parts: LayerParts,
    passing: Passing | None,
) -> LayerOut:
    board = layer.board if mount == "wall" else None
    planned = parts.planned(layer, mount, covered, overhead, trade)
    layer = planned.layer
    support, brackets, facts = as_hung(layer, planned.support, planned.brackets, facts)
    making = parts.making(layer, covered, brackets, support, defaults, trade)
    if making is not None and passing is not None:
        making = along_all(making, passing)
    panels = () if making is None else panels_of(ref, layer, making, support, facts, defaults)
    guests: tuple[PanelOut, ...] = ()
    if passing is not None:
        panels = closed_on(panels, passing)
        guests = guests_of(passing, covered, brackets, support, facts, defaults, trade)
    # A leg without cloth of its own shows that of its guests.
    heading, fabric = layer.heading, layer.fabric
    if guests and passing is not None and not panels:
        heading, fabric = passing.guests[0].layer.heading, passing.guests[0].layer.fabric
    made = LayerOut(
        ref,
        support,
        brackets,
        panels,
        heading,
        fabric.colour,
        fabric.body,
        is_hung(layer),
        None if board is None else board_of(board, brackets),
        wish=_wish(layer, tuple(placed.out for placed in covered), defaults, trade),
        pattern=_pattern(fabric, trade),
        guests=guests,
        is_lined=fabric.lining is not None or fabric.body in ("lined", "interlined"),
    )
    return with_loads(made, layer, defaults, trade, parts.under)


def _pattern(fabric: Fabric, trade: Trade) -> PatternOut | None:
    """The pattern of a cloth, None where it is plain; a repeat that is not known is the other way's, or a usual one."""
    if fabric.pattern == "plain":
        return None
    known = fabric.repeat_across or fabric.repeat
    usual = limit_of(trade, "assumed-pattern-repeat") if known is None else known.mm
    up = usual if fabric.repeat is None else fabric.repeat.mm
    across = usual if fabric.repeat_across is None else fabric.repeat_across.mm
    return PatternOut(fabric.pattern, fabric.ink, across, up, fabric.half_drop)


def _wish(layer: Layer, openings: tuple[OpeningOut, ...], defaults: Defaults, trade: Trade) -> WishOut:
    target = target_of(layer.hem, openings, defaults)
    making = layer.making
    return WishOut(
        None if layer.ring is None else layer.ring.mm,
        0.0 if making.washed_first else shrinks_of(layer.fabric, trade),
        making.fullness,
        making.returns,
        target.height_mm,
        target.length_mm,
    )
