"""The left and right side of each opening.

What was measured decides what a drag changes: an opening placed from the wall's end changes that measure, one placed
by the gap before it changes the gap. Everything else stays where it stands.
"""

from __future__ import annotations

from collections.abc import Iterable

from elevation.findings.model import Sticking
from elevation.findings.naming import opening_name
from elevation.handles.context import Context, Family, HoldFigure, Scale, make, right_end_mm, shifted
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR, PROPORTION
from elevation.room.edits import replace_at
from elevation.room.find import opening_of, wall_of
from elevation.room.model import Opening, Ref, Room
from elevation.setting_out.model import OpeningOut
from elevation.units import Length
from elevation.words import Message, msg

LEFT, RIGHT = "opening-left", "opening-right"

LEAST_GLASS_MM = 25.0
"""What stays of the glass at least when a side is moved."""

LeftHeld = str
_SHOWN_AS: dict[LeftHeld, Message] = {
    "left": msg("from the wall's left end"),
    "gap": msg("from what stands before it"),
    "width": msg("wide"),
}


def held_left(opening: Opening, is_placed: bool) -> LeftHeld:
    """Which measure of ``opening`` says where its left side is.

    With neither ``left`` nor ``gap`` the place is worked out from all others, and only the width can change; one
    that could not be worked out gets its first measure.
    """
    if opening.left is not None or (opening.gap is None and not is_placed):
        return "left"
    return "gap" if opening.gap is not None else "width"


def _hold_left(ref: Ref, held: LeftHeld, left_mm: float) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        opening = opening_of(room, ref)
        if held == "width":
            return replace_at(room, ref, width=figure)
        if held == "left":
            right_by_mm = figure.mm - left_mm
            fields: dict[str, object] = {"left": figure}
            if opening.gap is not None:
                fields["gap"] = shifted(room, opening.gap, right_by_mm)
        else:
            right_by_mm = figure.mm - opening.gap.mm if opening.gap is not None else 0.0
            fields = {"gap": figure}
        return replace_at(room, ref, width=shifted(room, opening.width, -right_by_mm), **fields)

    return write


def _hold_right(ref: Ref) -> HoldFigure:
    def write(room: Room, figure: Length, _alone: bool) -> Room:
        wider_mm = figure.mm - opening_of(room, ref).width.mm
        room = replace_at(room, ref, width=figure)
        return shift_gap_after(room, ref, -wider_mm)

    return write


def shift_gap_after(room: Room, ref: Ref, by_mm: float) -> Room:
    """Let the measured gap after an opening grow by ``by_mm``, so that what follows stays; a blank one needs nothing."""
    wall = wall_of(room, ref[0])
    index = next(i for i, opening in enumerate(wall.openings) if opening.id == ref[1])
    if index + 1 < len(wall.openings):
        following = wall.openings[index + 1]
        if following.gap is None:
            return room
        return replace_at(room, (wall.id, following.id), gap=shifted(room, following.gap, by_mm))
    if wall.gap_right is None:
        return room
    return replace_at(room, (wall.id,), gap_right=shifted(room, wall.gap_right, by_mm))


def _handles(context: Context) -> Iterable[Handle]:
    measured = {opening.id: opening for opening in context.wall.openings}
    landed = context.set_out.openings
    for index, opening in enumerate(landed):
        own = measured[opening.ref[1]]
        before = landed[index - 1] if index else None
        after = landed[index + 1] if index + 1 < len(landed) else None
        least_mm = 2 * opening.frame_mm + LEAST_GLASS_MM
        low_mm = (before.right_mm + before.casing_mm if before else 0.0) + opening.casing_mm
        high_mm = (after.left_mm - after.casing_mm if after else right_end_mm(context.set_out)) - opening.casing_mm
        middle_mm = (opening.bottom_mm + opening.top_mm) / 2
        held = held_left(own, opening.placed)
        yield make(
            LEFT,
            opening.ref,
            (opening.left_mm, middle_mm),
            "x",
            opening.left_mm,
            (low_mm, opening.right_mm - least_mm),
            _left_scale(own, opening, held),
            {"left": own.left, "gap": own.gap, "width": own.width}[held],
            _hold_left(opening.ref, held, opening.left_mm),
            msg("left side, {opening}", opening=opening_name(opening)),
            _SHOWN_AS[held],
            low_why=_beside(before),
            high_why=msg("the other side"),
        )
        yield make(
            RIGHT,
            opening.ref,
            (opening.right_mm, middle_mm),
            "x",
            opening.right_mm,
            (opening.left_mm + least_mm, high_mm),
            Scale(opening.left_mm, 1),
            own.width,
            _hold_right(opening.ref),
            msg("right side, {opening}", opening=opening_name(opening)),
            _SHOWN_AS["width"],
            low_why=msg("the other side"),
            high_why=_beside(after),
        )


def _beside(opening: OpeningOut | None) -> Message:
    if opening is None:
        return msg("the wall's end")
    return msg("the casing of {opening}", opening=opening_name(opening))


def _left_scale(own: Opening, opening: OpeningOut, held: LeftHeld) -> Scale:
    if held == "width":
        return Scale(opening.right_mm, -1)
    if held == "gap" and own.gap is not None:
        return Scale(opening.left_mm - own.gap.mm, 1)
    return Scale(0.0, 1)


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    opening = next(opening for opening in context.set_out.openings if opening.ref == handle.ref)
    is_left = handle.axis == LEFT
    fixed_mm = opening.right_mm if is_left else opening.left_mm
    outward = -1 if is_left else 1
    for other in context.set_out.openings:
        if other.ref != opening.ref:
            reason = msg("as wide as {opening}", opening=opening_name(other))
            wide_mm = other.right_mm - other.left_mm
            yield Sticking(handle.axis, handle.ref, fixed_mm + outward * wide_mm, reason, NEIGHBOUR)
    if context.set_out.known_width:
        centred_mm = context.set_out.width_mm - fixed_mm
        yield Sticking(handle.axis, handle.ref, centred_mm, msg("centred on the wall"), PROPORTION)


FAMILY = Family(frozenset({LEFT, RIGHT}), _handles, _places)
