"""What drilling waits for: where a panel is known by its packet alone, the rod's height rests on a label."""

from __future__ import annotations

from elevation.setting_out.model import TreatmentOut
from elevation.words import Message, Mm, msg


def waits_for(laid: TreatmentOut) -> tuple[Message, ...]:
    """Panels to be measured before the brackets of a treatment are drilled for; empty where nothing waits.

    A packet's length is a name: panels are sold longer and shorter than it says (common practice, no source). Made to
    measure the hem follows the rod; a panel in hand cannot, so the rod follows it.

    Parameters
    ----------
    laid : TreatmentOut
    """
    return tuple(
        msg(
            "a panel {width} wide is known by its packet alone: {length} long. "
            "Measure it from top edge to hem and type that.",
            width=Mm(panel.flat_width_mm),
            length=Mm(panel.finished_length_mm),
        )
        for layer in laid.layers
        if any(not bracket.is_there for bracket in layer.brackets)
        for panel in layer.panels
        if panel.length_by == "label" and panel.finished_length_mm is not None
    )
