"""The words for cloth too near a heater, whichever wall the heater stands on."""

from __future__ import annotations

from elevation.findings.model import Weight
from elevation.findings.naming import side_name, where
from elevation.setting_out.model import PanelOut, TreatmentOut
from elevation.words import Message, Mm, msg


def too_near(
    treatment: TreatmentOut,
    panel: PanelOut,
    heater: Message,
    limit: Message,
    free_mm: float,
    asked_mm: float,
    *,
    touches: bool,
) -> tuple[Weight, Message]:
    """How grave it is and the sentence: a stop where the cloth can touch, else broken by what is missing.

    Parameters
    ----------
    treatment : TreatmentOut
    panel : PanelOut
    heater : Message
        Its name.
    limit : Message
        What has to be kept, as it is said.
    free_mm, asked_mm : float
        What there is and what has to be kept.
    touches : bool
        Whether the cloth hangs right before it.
    """
    params = {"where": where(treatment), "side": side_name(panel.side), "obstacle": heater, "limit": limit}
    if touches:
        return Weight.STOP, msg(
            "{where}: the {side} panel hangs before {obstacle} and can touch it; it has to keep {limit} away.", **params
        )
    return Weight.BROKEN, msg(
        "{where}: the {side} panel comes within {free} of {obstacle}, {short} less than the {limit} to keep.",
        free=Mm(free_mm),
        short=Mm(asked_mm - free_mm),
        **params,
    )
