"""The tape trial: strips of low-tack tape where rod, ends, stacks and hem would be, to look at before anything is drilled.

Common practice, no source.
"""

from __future__ import annotations

from elevation.planning.hang_step import HangStep
from elevation.setting_out.model import LayerOut, PanelOut, SetOut, TreatmentOut
from elevation.setting_out.profile import height_at
from elevation.setting_out.tilt import axis_at
from elevation.words import Message, Mm, msg


def trial_steps(wall: SetOut, laid: TreatmentOut) -> tuple[HangStep, ...]:
    """Where the strips go for one treatment, and what to look at.

    Parameters
    ----------
    wall : SetOut
    laid : TreatmentOut
        One of the wall's treatments.
    """
    steps: list[HangStep] = []
    for layer in laid.layers:
        steps.append(_rod(wall, layer))
        steps.extend(_stacks(layer))
        steps.extend(_hems(layer))
    steps.append(
        HangStep(
            msg(
                "Look from the door, and sitting in the chair; by day and with a lamp on. Open the window, swing the door."
            ),
            (
                msg("Is the rod where you want it? Are both ends alike? How much glass is left? Does the hem please you?"),
                msg("Move a strip, look again; leave it a night."),
            ),
        )
    )
    steps.append(
        HangStep(
            msg("Type what moved; everything else follows. Buy and cut only then."),
            (
                msg("rod over the floor: ____________   left end: ____________   right end: ____________"),
                msg("left stack: ____________   right stack: ____________   hem: ____________"),
            ),
        )
    )
    return tuple(steps)


def _rod(wall: SetOut, layer: LayerOut) -> HangStep:
    support = layer.support
    ends = []
    for x, name in ((support.left_mm, msg("left end")), (support.right_mm, msg("right end"))):
        ends.append(
            msg(
                "{end}: {height} over the floor there, {along} from the wall's left end",
                end=name,
                height=Mm(axis_at(support, x) - height_at(wall.floor, x)),
                along=Mm(x),
            )
        )
    beyond = max(support.left_mm - support.metal_left_mm, support.metal_right_mm - support.right_mm)
    if beyond > 1.0:
        ends.append(msg("a short strip {length} beyond each end for what the rod ends in", length=Mm(beyond)))
    return HangStep(
        msg(
            "Stick a strip where the rod goes, its middle on the rod's centre line: {length} long.",
            length=Mm(support.length_mm),
        ),
        tuple(ends),
        (msg("Tape made for paint, and not for long: press it on lightly, pull it off flat. A ladder on all its feet."),),
    )


def _stacks(layer: LayerOut) -> list[HangStep]:
    details = [_stack(panel) for panel in layer.panels if not panel.stationary]
    if not details:
        return []
    return [
        HangStep(msg("Stick an upright strip where each open panel ends: beyond it the glass is free."), tuple(details))
    ]


def _stack(panel: PanelOut) -> Message:
    left, right = panel.open
    inner = right if panel.side == "left" else left
    return msg(
        "{side} panel: {along} from the wall's left end; its stack is {width} wide",
        side=msg("left") if panel.side == "left" else msg("right"),
        along=Mm(inner),
        width=Mm(right - left, about=True),
    )


def _hems(layer: LayerOut) -> list[HangStep]:
    details = [
        msg(
            "{side} panel: {length} down from the top of the cloth, which is {drop} below the rod's centre line",
            side=msg("left") if panel.side == "left" else msg("right"),
            length=Mm(panel.finished_length_mm),
            drop=Mm(panel.heading_mm),
        )
        if panel.heading_mm >= 0
        else msg(
            "{side} panel: {length} down from the top of the cloth, which is {drop} above the rod's centre line",
            side=msg("left") if panel.side == "left" else msg("right"),
            length=Mm(panel.finished_length_mm),
            drop=Mm(-panel.heading_mm),
        )
        for panel in layer.panels
        if panel.finished_length_mm is not None
    ]
    if not details:
        return []
    return [HangStep(msg("Stick a level strip where each hem ends."), tuple(details))]
