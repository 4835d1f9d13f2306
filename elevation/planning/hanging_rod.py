"""The steps of hanging rod, rings and panels in brackets that are up (common practice, no source)."""

from __future__ import annotations

from collections.abc import Mapping

from elevation.planning.hang_step import HangStep
from elevation.room.model import Ref
from elevation.setting_out.model import LayerOut
from elevation.setting_out.tilt import axis_at
from elevation.trade.model import Trade
from elevation.trade.tables import row_of
from elevation.words import Message, Mm, msg, msg_plural


def hang(layer: LayerOut, names: Mapping[Ref, Message], runners: Mapping[Ref, int], trade: Trade) -> list[HangStep]:
    """One layer's rod, track or tension rod with its rings and panels.

    Parameters
    ----------
    layer : LayerOut
    names : mapping of Ref to Message
        Of its panels.
    runners : mapping of Ref to int
        Rings or glides of each panel.
    trade : Trade
    """
    steps: list[HangStep] = []
    support = layer.support
    if support.kind == "tension-rod":
        return [
            HangStep(
                msg("Thread the cloth on the tension rod, then set it between the jambs and turn it tight."),
                (
                    msg(
                        "{height} over the floor's datum at both ends: level it before the last turn.",
                        height=Mm(support.height_mm),
                    )
                    if support.line is None
                    else msg(
                        "{left} over the floor's datum at the left end, {right} at the right one: not level, as planned.",
                        left=Mm(axis_at(support, support.left_mm)),
                        right=Mm(axis_at(support, support.right_mm)),
                    ),
                ),
                (msg("The packet's load governs; it can fall when pulled: not over a bed or a cot."),),
            ),
            *_panels(layer, names),
        ]
    if support.kind == "track":
        steps.append(
            HangStep(
                msg("Thread the glides into the track, clip or screw the track on, and close its ends with stops."),
                _rings_of(layer, names, runners),
                (msg("One holds each end until the last clip is closed."),),
            )
        )
        return [*steps, *_panels(layer, names)]
    heading = row_of(trade.headings, layer.heading, "heading")
    inner = [bracket for bracket in layer.brackets[1:-1] if not bracket.rings_pass]
    if heading.carries == "rings":
        details = [*_rings_of(layer, names, runners)]
        if inner:
            details.append(
                msg("No ring passes a closed bracket: share them out between the brackets before the rod goes in.")
            )
        if layer.brackets:
            details.append(msg("One ring of each panel stays outside the end bracket: it parks the edge."))
        details.extend(_straps(layer, trade))
        texts = {
            "brackets": msg("Thread the rings on the rod, then lay it in its brackets and lock it."),
            "sockets": msg(
                "Thread the rings on the rod, then set one end into its socket and lower the other into the open one."
            ),
            "bent": msg(
                "Thread the rings on the rod, then hold it up, in its brackets if it has any, and screw its ends on."
            ),
        }
        steps.append(HangStep(texts[_held_by(layer, trade)], tuple(details), (_HOLD,)))
    else:
        texts = {
            "brackets": msg(
                "Thread the cloth itself on the rod, panel by panel, then lay the rod in its brackets and lock it."
            ),
            "sockets": msg(
                "Thread the cloth itself on the rod, panel by panel, then set one end into its socket and lower the other "
                "into the open one."
            ),
            "bent": msg(
                "Thread the cloth itself on the rod, panel by panel, then hold the rod up, in its brackets if it has any, "
                "and screw its ends on."
            ),
        }
        steps.append(HangStep(texts[_held_by(layer, trade)], (), (_HOLD,)))
    if all(support.carried):
        steps.append(HangStep(msg("Push the rod in both directions and pull it down lightly: it stays.")))
    else:
        steps.append(HangStep(msg("Put on the end pieces; push the rod in both directions: it stays.")))
    return [*steps, *_panels(layer, names)]


def _held_by(layer: LayerOut, trade: Trade) -> str:
    """What the rod is laid in: ``brackets`` that carry it, ``sockets`` alone, or its own ends ``bent`` back to the wall."""
    support = layer.support
    ends = (support.left_ends, support.right_ends)
    held = [trade.ends[end] for end, carries in zip(ends, support.carried, strict=True) if carries and end in trade.ends]
    if any(row.shape == "return" for row in held):
        return "bent"
    return "brackets" if layer.brackets else "sockets"


def _straps(layer: LayerOut, trade: Trade) -> tuple[Message, ...]:
    """What a closed strap asks for: the rod is laid in from above, with the rings on it, and the strap goes on last."""
    straps = [
        place
        for place in layer.brackets
        for kit in [row_of(trade.brackets, place.kit, "bracket kit")]
        if kit.holds_down and not kit.rings_pass and kit.mount == "wall" and kit.arm_wide_mm > 0
    ]
    if not straps:
        return ()
    return (
        msg("A closed strap needs room to load: take all straps off, lay the rod in from above, then screw the straps on."),
    )


_HOLD = msg("One holds each end of the rod until both are locked; nobody stands under it.")


def _rings_of(layer: LayerOut, names: Mapping[Ref, Message], runners: Mapping[Ref, int]) -> tuple[Message, ...]:
    return tuple(
        msg_plural(
            "{panel}: {count} ring or glide",
            "{panel}: {count} rings or glides",
            count=runners[panel.ref],
            panel=names[panel.ref],
        )
        for panel in layer.panels
        if panel.rings
    )


def _panels(layer: LayerOut, names: Mapping[Ref, Message]) -> list[HangStep]:
    if not layer.panels:
        return []
    details = [
        msg(
            "{panel}: finished length {length}",
            panel=names[panel.ref],
            length=Mm(panel.finished_length_mm),
        )
        for panel in layer.panels
        if panel.finished_length_mm is not None
    ]
    return [
        HangStep(
            msg("Hang the panels and let them hang a day before a hem is sewn: cloth drops."),
            tuple(details),
            (msg("Cords and loops out of reach of children; nothing that burns near a heater."),),
        )
    ]
