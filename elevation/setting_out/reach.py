"""From where to where a treatment reaches along its wall."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.setting_out.model import LayerOut, PanelOut, Span, TreatmentOut, ZoneOut
from elevation.units.tolerance import TOUCH_MM


def reach_of(treatment: TreatmentOut) -> Span:
    """All that belongs to a treatment: its openings with their casings, metal, cloth in any position, hooks, boxes."""
    places = [x for span in _spans(treatment) for x in span]
    return min(places), max(places)


def zones_near(treatment: TreatmentOut, zones: tuple[ZoneOut, ...]) -> tuple[ZoneOut, ...]:
    """What stands inside the wall within a treatment's reach."""
    if not zones:
        return zones
    left, right = reach_of(treatment)
    return tuple(zone for zone in zones if zone.left_mm <= right + TOUCH_MM and zone.right_mm >= left - TOUCH_MM)


def _spans(treatment: TreatmentOut) -> Iterator[Span]:
    for opening in treatment.openings:
        yield opening.left_mm - opening.casing_mm, opening.right_mm + opening.casing_mm
    for layer in treatment.layers:
        yield from _of_layer(layer)
    for blind in treatment.blinds:
        yield blind.left_mm, blind.right_mm
    if treatment.pelmet is not None:
        yield treatment.pelmet.left_mm, treatment.pelmet.right_mm


def _of_layer(layer: LayerOut) -> Iterator[Span]:
    support = layer.support
    # A reading that moves an end or a bracket was taken where that was planned as well.
    yield support.left_mm, support.right_mm
    yield support.cut_left_mm, support.cut_right_mm
    yield support.metal_left_mm, support.metal_right_mm
    for bracket in layer.brackets:
        half = max(bracket.half_width_mm, abs(bracket.shift_mm))
        yield bracket.x_mm - half, bracket.x_mm + half
        yield bracket.plate[0], bracket.plate[2]
    if layer.board is not None:
        yield layer.board.left_mm, layer.board.right_mm
    for panel in (*layer.panels, *layer.guests):
        yield from _of_panel(panel)


def _of_panel(panel: PanelOut) -> Iterator[Span]:
    yield panel.travel
    yield panel.open
    yield panel.closed
    yield panel.drawn
    if panel.tie is not None:
        yield panel.tie.hook[0], panel.tie.hook[0]
        yield panel.tie.waist
        yield panel.tie.foot
