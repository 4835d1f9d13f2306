"""The height of a rod."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.limits import limit_mm
from elevation.findings.model import INSIDE, Scene, Sticking
from elevation.findings.naming import opening_name, where
from elevation.findings.rules.past_jamb import room_over
from elevation.findings.shapes import extremes, way
from elevation.handles.context import (
    Context,
    Dressed,
    Family,
    HoldFigure,
    Scale,
    ceiling_over_mm,
    dressed_layers,
    dressed_of,
    make,
    place_of,
    uncovered,
)
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION, RULE
from elevation.handles.support_names import height_name
from elevation.room.edits import replace_at, replace_rod
from elevation.room.model import Built, Held, Ref, Room
from elevation.setting_out.hems import length_in_hand
from elevation.setting_out.model import OpeningOut, SetOut, Span
from elevation.setting_out.room_rods import rods_elsewhere
from elevation.units import Length
from elevation.words import Message, Mm, msg

AXIS = "rod-height"

SHOWN_AS: dict[str, Message] = {
    "above-head": msg("above the head"),
    "above-casing": msg("above the casing"),
    "below-ceiling": msg("below the ceiling"),
    "above-floor": msg("above the floor"),
    "bracket-drop": msg("below where its brackets hold it"),
    "below-head": msg("below the head"),
    "above-sill": msg("above the sill"),
    "share-of-opening": msg("above that share of the opening"),
}

DOWN = frozenset({"below-ceiling", "bracket-drop", "below-head"})
"""Holds whose figure grows downwards."""


def sign_of(hold: str) -> int:
    """Whether the figure grows upwards (1) or downwards (-1)."""
    return -1 if hold in DOWN else 1


def scale_of(dressed: Dressed) -> Scale:
    """How the held height stands on the wall, from where it landed."""
    held = dressed.layer.rod.height
    sign = sign_of(held.hold)
    return Scale(dressed.landed.support.plan_mm - sign * held.at.mm, sign)


def range_of(set_out: SetOut, dressed: Dressed) -> Span:
    """Where the rod's centre line can be: from the floor to the ceiling, clear of both by its own radius.

    Inside an opening from its sill to its head; under brackets of the ceiling no higher than they hold it.
    """
    support = dressed.landed.support
    radius_mm = support.diameter_mm / 2
    if dressed.treatment.mount in INSIDE:
        opening = dressed.landed_treatment.openings[0]
        return opening.bottom_mm + radius_mm, support.height_mm + max(room_over(opening, support), 0.0)
    _, floor_mm = extremes(set_out.floor, support.left_mm, support.right_mm)
    ceiling_mm = ceiling_over_mm(set_out, support.left_mm, support.right_mm)
    held = dressed.layer.rod.height
    if held.hold == "bracket-drop":
        return floor_mm + radius_mm, support.plan_mm + held.at.mm
    return floor_mm + radius_mm, ceiling_mm - radius_mm


def _whys(dressed: Dressed) -> tuple[Message, Message]:
    """What stops the rod below and above."""
    if dressed.treatment.mount in INSIDE:
        return msg("the sill"), msg("the head")
    if dressed.layer.rod.height.hold == "bracket-drop":
        return msg("the floor"), msg("as high as its brackets hold it")
    return msg("the floor"), msg("the ceiling")


def hold_height(ref: Ref, held: Held) -> HoldFigure:
    """Writes the height of the rod of the layer at ``ref``, held as it is now."""

    def write(room: Room, figure: Length, _alone: bool) -> Room:
        made = replace_rod(room, ref, height=Held(held.hold, figure, held.share))
        # Where it was read to hang is over, even if it comes to where it was planned.
        return replace_at(made, ref, built=Built())

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        support, held = dressed.landed.support, dressed.layer.rod.height
        whys = _whys(dressed)
        yield make(
            AXIS,
            dressed.landed.ref,
            ((support.left_mm + support.right_mm) / 2, support.height_mm),
            "y",
            support.height_mm,
            range_of(context.set_out, dressed),
            scale_of(dressed),
            held.at,
            hold_height(dressed.landed.ref, held),
            height_name(support.kind, place_of(dressed)),
            SHOWN_AS[held.hold],
            low_why=whys[0],
            high_why=whys[1],
        )


def height_places(axis: str, ref: Ref, context: Context, dressed: Dressed) -> Iterable[Sticking]:
    """Rod heights that mean something beside the rules' own limits."""
    set_out, support = context.set_out, dressed.landed.support
    for other in dressed_layers(context):
        if other.landed.ref != dressed.landed.ref:
            reason = msg("level with the rod of {where}", where=where(other.landed_treatment))
            yield Sticking(axis, ref, other.landed.support.height_mm, reason, NEIGHBOUR)
    for rod in rods_elsewhere(context.room, set_out.wall, set_out.scheme, context.trade):
        reason = msg("level with the rod of {where}, wall {wall}", where=where(rod.treatment), wall=rod.wall_name)
        yield Sticking(axis, ref, rod.height_mm, reason, NEIGHBOUR)
    for opening in uncovered(context, dressed.landed_treatment):
        reason = msg("level with the head of {opening}", opening=opening_name(opening))
        yield Sticking(axis, ref, opening.top_mm, reason, NEIGHBOUR)
    yield from _panel_places(axis, ref, context, dressed)
    if dressed.treatment.mount in INSIDE:
        yield from _inside_places(axis, ref, dressed.landed_treatment.openings[0])
        return
    if set_out.ceiling.known and dressed.landed_treatment.openings:
        low_mm = max(opening.casing_top_mm for opening in dressed.landed_treatment.openings)
        ceiling_mm, _ = extremes(set_out.ceiling, support.left_mm, support.right_mm)
        high_mm = ceiling_mm - set_out.crown_mm
        if high_mm > low_mm:
            two_thirds = context.trade.limits["rod-two-thirds"].value
            yield Sticking(
                axis, ref, low_mm + (high_mm - low_mm) * two_thirds, msg("two thirds up from head to ceiling"), PROPORTION
            )
            yield Sticking(axis, ref, (low_mm + high_mm) / 2, msg("half way from head to ceiling"), PROPORTION)


def _inside_places(axis: str, ref: Ref, opening: OpeningOut) -> Iterable[Sticking]:
    """Rod heights inside an opening: parts of its height, and its glazing bars."""
    high_mm = opening.top_mm - opening.bottom_mm
    for part, reason in _SHARES:
        yield Sticking(axis, ref, opening.bottom_mm + high_mm * part, reason, PROPORTION)
    glass_mm = opening.glass_top_mm - opening.glass_bottom_mm
    for row in range(1, opening.rows):
        y_mm = opening.glass_bottom_mm + glass_mm * row / opening.rows
        yield Sticking(axis, ref, y_mm, msg("level with a glazing bar"), NEIGHBOUR)


_SHARES = (
    (1 / 2, msg("half of the opening")),
    (2 / 3, msg("two thirds of the opening")),
    (3 / 4, msg("three quarters of the opening")),
)


def clear_mm(context: Context, dressed: Dressed) -> float:
    """How far above the floor a hem is just clear of it: as decided for this layer, else the usual figure."""
    hem = dressed.layer.hem
    if hem.target == "clear" and hem.at is not None:
        return hem.at.mm
    return limit_mm(Scene(context.room, context.set_out, context.trade), "hem-clear-default")


def floor_under(context: Context, dressed: Dressed) -> float:
    """The highest floor under all that the layer's panels cover, in mm over the datum."""
    panels = dressed.landed.panels
    if not panels:
        support = dressed.landed.support
        return extremes(context.set_out.floor, support.left_mm, support.right_mm)[1]
    spans = [way(panel) for panel in panels]
    return extremes(context.set_out.floor, min(span[0] for span in spans), max(span[1] for span in spans))[1]


def ready_made(context: Context) -> Iterable[float]:
    """Lengths that panels are sold in where this room is, in mm."""
    return (row.length_mm for row in context.trade.ready_made.values() if row.market == context.room.unit)


def _panel_places(axis: str, ref: Ref, context: Context, dressed: Dressed) -> Iterable[Sticking]:
    """Rod heights at which a panel in hand, or one from the shop, ends where it should."""
    panels = dressed.landed.panels
    if not panels:
        return
    heading_mm = max(panel.heading_mm for panel in panels)
    over_mm = floor_under(context, dressed) + clear_mm(context, dressed) + heading_mm
    in_hand = {length_mm for panel in dressed.layer.panels if (length_mm := length_in_hand(panel)) is not None}
    for length_mm in sorted(in_hand):
        reason = msg("the {length} panel in hand just clears the floor", length=Mm(length_mm))
        # The hem rules say the same of cloth in hand, so it ranks with them.
        yield Sticking(axis, ref, over_mm + length_mm, reason, RULE)
    # With panels in hand, other lengths are no reason to hang the rod anywhere.
    if in_hand:
        return
    at_sill = dressed.layer.hem.target in ("sill", "apron")
    for length_mm in ready_made(context):
        if at_sill:
            reason = msg("{length} panel ends where the hem is wished", length=Mm(length_mm))
            yield Sticking(axis, ref, panels[0].hem_low_mm + heading_mm + length_mm, reason, NEIGHBOUR)
        else:
            reason = msg("{length} panel just clears the floor", length=Mm(length_mm))
            yield Sticking(axis, ref, over_mm + length_mm, reason, NEIGHBOUR)


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    return height_places(handle.axis, handle.ref, context, dressed_of(context, handle))


FAMILY = Family(frozenset({AXIS}), _handles, _places)
