"""Head and sill of each opening; the other edge stays where it is."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.findings.naming import opening_name
from elevation.findings.shapes import extremes
from elevation.handles.context import Context, Family, HoldFigure, Scale, ceiling_over_mm, make, shifted
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR
from elevation.room.edits import replace_at
from elevation.room.find import opening_of
from elevation.room.model import Ref, Room
from elevation.setting_out.model import OpeningOut
from elevation.units import Length
from elevation.words import msg

HEAD, SILL = "opening-head", "opening-sill"

LEAST_GLASS_MM = 25.0
"""What stays of the glass at least when head or sill is moved."""


def _hold_head(ref: Ref) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        return _raise_head(replace_at(room, ref, height=figure), ref, figure.mm - opening_of(room, ref).height.mm)

    return write


def _raise_head(room: Room, ref: Ref, by_mm: float) -> Room:
    """A raked head keeps its slope: its right side goes with its left."""
    head = opening_of(room, ref).head
    if head.right_height is None:
        return room
    return replace_at(room, (*ref,), head=type(head)(head.kind, head.rise, shifted(room, head.right_height, by_mm)))


def _hold_sill(ref: Ref) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        opening = opening_of(room, ref)
        up_mm = figure.mm - opening.sill.mm
        room = replace_at(room, ref, sill=figure, height=shifted(room, opening.height, -up_mm))
        return _raise_head(room, ref, -up_mm)

    return write


def _least_mm(opening: OpeningOut) -> float:
    """How far the head has to stand above the sill: its rise, its frame and some glass."""
    slope_mm = opening.top_mm - opening.right_top_mm if opening.head == "raked" else 0.0
    return opening.rise_mm + max(slope_mm, 0.0) + 2 * opening.frame_mm + LEAST_GLASS_MM


def _ceiling_mm(context: Context, opening: OpeningOut) -> float:
    """The ceiling that the head may rise to."""
    set_out = context.set_out
    if opening.head == "flat" or not set_out.ceiling.known:
        return ceiling_over_mm(set_out, opening.left_mm, opening.right_mm)
    # An arc or a slope may follow a raked ceiling: only trying tells (``handles.possible``).
    return extremes(set_out.ceiling, opening.left_mm, opening.right_mm)[1]


def _handles(context: Context) -> Iterable[Handle]:
    measured = {opening.id: opening for opening in context.wall.openings}
    for opening in context.set_out.openings:
        own = measured[opening.ref[1]]
        name = opening_name(opening)
        # A raked head is dragged at its left side, whose height is the one that is written.
        x_mm = opening.left_mm if opening.head == "raked" else (opening.left_mm + opening.right_mm) / 2
        top_mm = opening.bottom_mm + own.height.mm
        above_mm = max(opening.casing_top_mm - top_mm, 0.0)
        _, floor_mm = extremes(context.set_out.floor, opening.left_mm, opening.right_mm)
        yield make(
            HEAD,
            opening.ref,
            (x_mm, top_mm),
            "y",
            top_mm,
            (opening.bottom_mm + _least_mm(opening), _ceiling_mm(context, opening) - above_mm),
            Scale(opening.bottom_mm, 1),
            own.height,
            _hold_head(opening.ref),
            msg("head, {opening}", opening=name),
            msg("above the sill") if opening.kind == "window" else msg("high"),
            low_why=msg("the sill") if opening.kind == "window" else msg("the floor"),
            high_why=msg("the ceiling"),
        )
        if opening.kind != "window":
            continue  # a door stands on the floor
        yield make(
            SILL,
            opening.ref,
            ((opening.left_mm + opening.right_mm) / 2, opening.bottom_mm),
            "y",
            opening.bottom_mm,
            (floor_mm, top_mm - _least_mm(opening)),
            Scale(opening.bottom_mm - own.sill.mm, 1),
            own.sill,
            _hold_sill(opening.ref),
            msg("sill, {opening}", opening=name),
            msg("above the floor"),
            low_why=msg("the floor"),
            high_why=msg("the head"),
        )


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    for other in context.set_out.openings:
        if other.ref == handle.ref:
            continue
        name = opening_name(other)
        if handle.axis == HEAD:
            reason = msg("level with the head of {opening}", opening=name)
            yield Sticking(handle.axis, handle.ref, other.top_mm, reason, NEIGHBOUR)
        elif other.kind == "window":
            reason = msg("level with the sill of {opening}", opening=name)
            yield Sticking(handle.axis, handle.ref, other.bottom_mm, reason, NEIGHBOUR)


FAMILY = Family(frozenset({HEAD, SILL}), _handles, _places)
