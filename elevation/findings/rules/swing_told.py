"""What ``swing`` says of rod or cloth that something hits as it opens: always a stop, by geometry."""

from __future__ import annotations

from elevation.findings.limits import by_geometry
from elevation.findings.model import Finding, Weight
from elevation.findings.naming import noun_of, side_name, where
from elevation.room.model import Ref
from elevation.setting_out.model import LayerOut, PanelOut, Point, TreatmentOut
from elevation.words import Message, Mm, msg


def rod_told(treatment: TreatmentOut, layer: LayerOut, thing: Message, by_mm: float, at: Point) -> Finding:
    """The finding that ``thing`` hits a layer's rod, ``by_mm`` deep, pointed at ``at`` on the wall."""
    text = msg(
        "{where}: when {thing} opens it hits the {support}, {by} deep.",
        support=noun_of(layer),
        where=where(treatment),
        thing=thing,
        by=Mm(by_mm),
    )
    return _stop(layer.ref, text, by_mm, at)


def cloth_told(
    treatment: TreatmentOut, layer: LayerOut, panel: PanelOut, thing: Message, by_mm: float, at: Point
) -> Finding:
    """The finding that ``thing`` hits a panel of a layer, or cloth that comes round the corner to it.

    That hangs in a layer of another wall, and is told of here, where it is hit.
    """
    if panel.ref[:-1] != layer.ref:
        text = msg(
            "{where}: when {thing} opens it hits the cloth that comes round the corner, {by} of it.",
            where=where(treatment),
            thing=thing,
            by=Mm(by_mm),
        )
        return _stop(layer.ref, text, by_mm, at)
    text = msg(
        "{where}: when {thing} opens it hits the {side} panel, {by} of it.",
        where=where(treatment),
        thing=thing,
        side=side_name(panel.side),
        by=Mm(by_mm),
    )
    return _stop(panel.ref, text, by_mm, at)


def _stop(subject: Ref, text: Message, by_mm: float, at: Point) -> Finding:
    return Finding("swing", Weight.STOP, subject, text, by_geometry(), measured_mm=-by_mm, limit_mm=0.0, at=at)
