"""The two ends of a rod: both move by default, mirrored; one with a modifier.

A rod that is held by its length at one end does not mirror: its length is a decision of its own.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from elevation.findings.model import INSIDE, Sticking
from elevation.findings.naming import opening_name, where
from elevation.handles.context import (
    Context,
    Dressed,
    Family,
    HoldFigure,
    Scale,
    dressed_layers,
    dressed_of,
    exact,
    make,
    place_of,
    right_end_mm,
)
from elevation.handles.model import Handle
from elevation.handles.neat_span import neat_places
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.handles.support_names import end_name
from elevation.room.edits import replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Held, Ref, Room
from elevation.setting_out.model import OpeningOut, Span
from elevation.setting_out.tilt import axis_at
from elevation.units import Length
from elevation.words import Message, Mm, msg

Side = Literal["left", "right"]
LEFT, RIGHT = "rod-left", "rod-right"

LEAST_ROD_MM = 100.0
"""No rod is shorter; two ends never pass each other."""

PAST_OPEN_MM = 300.0
"""A rod may stand out this far past an open end of the wall; its brackets cannot."""

_SHOWN_AS: dict[tuple[str, str], Message] = {
    ("beyond-opening", "left"): msg("beyond the opening, left"),
    ("beyond-opening", "right"): msg("beyond the opening, right"),
    ("beyond-casing", "left"): msg("beyond the casing, left"),
    ("beyond-casing", "right"): msg("beyond the casing, right"),
    ("from-corner", "left"): msg("from the left corner"),
    ("from-corner", "right"): msg("from the right corner"),
    ("inside-opening", "left"): msg("inside the left jamb"),
    ("inside-opening", "right"): msg("inside the right jamb"),
    ("around-corner", "left"): msg("short of the rod round the left corner"),
    ("around-corner", "right"): msg("short of the rod round the right corner"),
    ("rod-length", "left"): msg("long, held at the right end"),
    ("rod-length", "right"): msg("long, held at the left end"),
}


def sign_of(hold: str, side: str) -> int:
    """Whether the figure grows to the right (1) or to the left (-1)."""
    grows_outward = hold not in ("from-corner", "inside-opening", "around-corner")
    return 1 if grows_outward == (side == "right") else -1


def scale_of(dressed: Dressed, side: Side) -> Scale:
    """How the held figure of one end stands on the wall, from where it landed."""
    rod, support = dressed.layer.rod, dressed.landed.support
    held, x_mm = (rod.left, support.left_mm) if side == "left" else (rod.right, support.right_mm)
    sign = sign_of(held.hold, side)
    return Scale(x_mm - sign * held.at.mm, sign)


def is_mirrored(dressed: Dressed) -> bool:
    """Whether both ends are held by their own reach, so that one can follow the other."""
    rod = dressed.layer.rod
    return not {"rod-length", "around-corner"} & {rod.left.hold, rod.right.hold}


def hold_end(ref: Ref, side: Side) -> HoldFigure:
    """Writes the held figure of one end, and of the other one unless it moves alone."""
    other_side: Side = "right" if side == "left" else "left"

    def write(room: Room, figure: Length, alone: bool) -> Room:
        rod = layer_of(room, ref).rod
        own, other = (rod.left, rod.right) if side == "left" else (rod.right, rod.left)
        fields = {side: Held(own.hold, figure)}
        if not alone and not {"rod-length", "around-corner"} & {own.hold, other.hold}:
            fields[other_side] = Held(other.hold, _mirrored(room, own, other, figure, side, other_side))
        return replace_rod(room, ref, **fields)

    return write


def _mirrored(room: Room, own: Held, other: Held, figure: Length, side: Side, other_side: Side) -> Length:
    if own.hold == other.hold and own.at.mm == other.at.mm:
        return figure if figure.mm != other.at.mm else other.at
    right_mm = (figure.mm - own.at.mm) * sign_of(own.hold, side)
    return exact(room, other.at.mm - right_mm * sign_of(other.hold, other_side), other.at)


def _ranges(context: Context, dressed: Dressed) -> tuple[Span, Span]:
    """Where either end can be: on the wall, and on its own side of the other end."""
    support, rod = dressed.landed.support, dressed.layer.rod
    inside = dressed.treatment.mount in INSIDE
    low_mm, high_mm = _jamb_span(dressed) if inside else _wall_span(context)
    left, right = (low_mm, support.right_mm - LEAST_ROD_MM), (support.left_mm + LEAST_ROD_MM, high_mm)
    length_mm = support.right_mm - support.left_mm
    # An end that carries a rod of held length takes the other end with it.
    if rod.right.hold == "rod-length":
        left = (low_mm, max(high_mm - length_mm, low_mm))
    if rod.left.hold == "rod-length":
        right = (min(low_mm + length_mm, high_mm), high_mm)
    return left, right


def _wall_span(context: Context) -> Span:
    """From where to where a rod can run: corner to corner, and a little past an open end."""
    left, right = context.set_out.ends
    high_mm = right_end_mm(context.set_out)
    return -PAST_OPEN_MM if left == "open" else 0.0, high_mm + PAST_OPEN_MM if right == "open" else high_mm


def _jamb_span(dressed: Dressed) -> Span:
    """From jamb to jamb, less what ends the rod."""
    opening, support = dressed.landed_treatment.openings[0], dressed.landed.support
    return (
        opening.left_mm + support.left_mm - support.metal_left_mm,
        opening.right_mm - support.metal_right_mm + support.right_mm,
    )


def _end_why(dressed: Dressed, kind: str) -> Message:
    if dressed.treatment.mount in INSIDE:
        return msg("the jamb")
    return msg("the corner") if kind == "corner" else msg("far enough past the wall's open end")


def _both(own_mm: float, own: Span, other_mm: float, other: Span, length_mm: float, is_left: bool) -> Span:
    """The range of one end where the other one mirrors it, never narrower than where it stands."""
    low_mm = max(own[0], own_mm - max(other[1] - other_mm, 0.0))
    high_mm = min(own[1], own_mm + max(other_mm - other[0], 0.0))
    inward_mm = max((length_mm - LEAST_ROD_MM) / 2, 0.0)
    if is_left:
        high_mm = min(high_mm, own_mm + inward_mm)
    else:
        low_mm = max(low_mm, own_mm - inward_mm)
    return min(low_mm, own_mm), max(high_mm, own_mm)


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        support, rod = dressed.landed.support, dressed.layer.rod
        left, right = _ranges(context, dressed)
        length_mm = support.right_mm - support.left_mm
        both_left = both_right = None
        if is_mirrored(dressed):
            both_left = _both(support.left_mm, left, support.right_mm, right, length_mm, True)
            both_right = _both(support.right_mm, right, support.left_mm, left, length_mm, False)
        name = place_of(dressed)
        yield make(
            LEFT,
            dressed.landed.ref,
            (support.left_mm, axis_at(support, support.left_mm)),
            "x",
            support.left_mm,
            left,
            scale_of(dressed, "left"),
            rod.left.at,
            hold_end(dressed.landed.ref, "left"),
            end_name(support.kind, "left", name),
            _SHOWN_AS[(rod.left.hold, "left")],
            both_mm=both_left,
            low_why=_end_why(dressed, context.set_out.ends[0]),
            high_why=msg("the other end"),
        )
        yield make(
            RIGHT,
            dressed.landed.ref,
            (support.right_mm, axis_at(support, support.right_mm)),
            "x",
            support.right_mm,
            right,
            scale_of(dressed, "right"),
            rod.right.at,
            hold_end(dressed.landed.ref, "right"),
            end_name(support.kind, "right", name),
            _SHOWN_AS[(rod.right.hold, "right")],
            both_mm=both_right,
            low_why=msg("the other end"),
            high_why=_end_why(dressed, context.set_out.ends[1]),
        )


def _places(handle: Handle, context: Context, alone: bool) -> Iterable[Sticking]:
    dressed = dressed_of(context, handle)
    side: Side = "left" if handle.axis == LEFT else "right"
    mirrored = is_mirrored(dressed) and not alone
    for value_mm, reason, rank in (
        *_neighbours(context, dressed, side),
        *_shop(context, dressed, side, mirrored),
        *_symmetries(context, dressed, side, mirrored),
    ):
        yield Sticking(handle.axis, handle.ref, value_mm, reason, rank)
    yield from neat_places(handle, context, dressed, alone)


Place = tuple[float, Message, int]


def _neighbours(context: Context, dressed: Dressed, side: Side) -> Iterable[Place]:
    for other in dressed_layers(context):
        if other.landed.ref != dressed.landed.ref and other.landed.ref[:3] == dressed.landed.ref[:3]:
            support = other.landed.support
            value_mm = support.left_mm if side == "left" else support.right_mm
            yield value_mm, msg("in line with the other rod of {where}", where=where(other.landed_treatment)), NEIGHBOUR


def _shop(context: Context, dressed: Dressed, side: Side, mirrored: bool) -> Iterable[Place]:
    """Where the rod is one whole piece of stock."""
    rod, support = dressed.layer.rod, dressed.landed.support
    if _carries(dressed, side):
        return  # it moves the rod and leaves its length
    section = context.trade.sections[rod.section]
    stock_mm = rod.stock.mm if rod.stock is not None else section.stock_mm
    length_mm = stock_mm - (support.cut_length_mm - support.length_mm)
    longer_mm = (length_mm - support.length_mm) / (2 if mirrored else 1)
    value_mm = support.left_mm - longer_mm if side == "left" else support.right_mm + longer_mm
    yield value_mm, msg("one whole piece of stock, {length}", length=Mm(stock_mm)), NEIGHBOUR


def _symmetries(context: Context, dressed: Dressed, side: Side, mirrored: bool) -> Iterable[Place]:
    openings = dressed.landed_treatment.openings
    if openings:
        first, last = openings[0], openings[-1]
        inside = dressed.treatment.mount in INSIDE
        if not mirrored:
            # The two reaches cannot become equal while both ends move alike.
            value_mm = _evened_mm(dressed, side, first.left_mm + last.right_mm)
            yield value_mm, msg("equal reach on both sides"), PROPORTION
        beside = None if inside else _beside(context, first, last, side)
        if beside is not None:
            edge_mm = first.left_mm if side == "left" else last.right_mm
            next_mm = beside.right_mm if side == "left" else beside.left_mm
            yield (edge_mm + next_mm) / 2, msg("half way to {opening}", opening=opening_name(beside)), PROPORTION
    if not mirrored and context.set_out.known_width:
        yield _evened_mm(dressed, side, context.set_out.width_mm), msg("centred on the wall"), PROPORTION


def _carries(dressed: Dressed, side: Side) -> bool:
    """Whether this end carries a rod whose length is held at the other one."""
    rod = dressed.layer.rod
    return (rod.right if side == "left" else rod.left).hold == "rod-length"


def _evened_mm(dressed: Dressed, side: Side, sum_mm: float) -> float:
    """Where this end stands when both ends' coordinates come to ``sum_mm`` together."""
    support = dressed.landed.support
    own_mm, other_mm = support.left_mm, support.right_mm
    if side == "right":
        own_mm, other_mm = other_mm, own_mm
    return own_mm + (sum_mm - own_mm - other_mm) / 2 if _carries(dressed, side) else sum_mm - other_mm


def _beside(context: Context, first: OpeningOut, last: OpeningOut, side: Side) -> OpeningOut | None:
    openings = context.set_out.openings
    if side == "left":
        return next((opening for opening in reversed(openings) if opening.right_mm < first.left_mm), None)
    return next((opening for opening in openings if opening.left_mm > last.right_mm), None)


FAMILY = Family(frozenset({LEFT, RIGHT}), _handles, _places)
