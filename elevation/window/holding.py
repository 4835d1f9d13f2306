"""Holding something else: the rod stays where it is, another figure is kept from now on."""

from __future__ import annotations

from elevation.handles.hold_instead import hold_instead, holds_for, refuse_leg, short_of_corner
from elevation.room.edits import replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Held, Ref, Room
from elevation.setting_out.model import SetOut
from elevation.setting_out.tilt import over_tops, under_line
from elevation.units import length_of
from elevation.words import Message, msg

HEIGHT_HOLDS: dict[str, Message] = {
    "above-head": msg("above the head"),
    "above-casing": msg("above the casing"),
    "below-ceiling": msg("below the ceiling"),
    "above-floor": msg("above the floor"),
    "bracket-drop": msg("below where its brackets hold it"),
    "below-head": msg("below the head"),
    "above-sill": msg("above the sill"),
    "share-of-opening": msg("above a share of the opening"),
}
END_HOLDS: dict[str, Message] = {
    "beyond-opening": msg("beyond the opening"),
    "beyond-casing": msg("beyond the casing"),
    "from-corner": msg("from the wall's end"),
    "around-corner": msg("round the corner"),
    "rod-length": msg("length of the rod"),
    "inside-opening": msg("inside the jamb"),
}


def height_holds(mount: str, now: str) -> dict[str, Message]:
    """What a rod's height may be held by on a mount, as it is said."""
    return {hold: HEIGHT_HOLDS[hold] for hold in holds_for("height", mount, now)}


def end_holds(mount: str, now: str) -> dict[str, Message]:
    """What a rod's end may be held by on a mount, as it is said."""
    return {hold: END_HOLDS[hold] for hold in holds_for("left", mount, now)}


_EXACT = frozenset({"bracket-drop", "below-head", "above-sill", "share-of-opening"})


def hold_height(room: Room, set_out: SetOut, ref: Ref, hold: str) -> Room:
    """A room in which the height of the rod at ``ref`` (a layer) is held by ``hold``; it stays within half a graduation."""
    refuse_leg(room, ref)
    if hold in _EXACT:
        return hold_instead(room, set_out, ref, "height", hold)
    treatment = next(treatment for treatment in set_out.treatments if treatment.ref == ref[:3])
    support = next(layer for layer in treatment.layers if layer.ref == ref).support
    height = support.height_mm
    if hold == "above-head":
        figure = over_tops(support, treatment.openings, with_casing=False)
    elif hold == "above-casing":
        figure = over_tops(support, treatment.openings, with_casing=True)
    elif hold == "below-ceiling":
        figure = under_line(support, set_out.ceiling)
        figure -= 0.0 if treatment.mount == "ceiling" else set_out.crown_mm
    else:
        figure = height
    return replace_rod(room, ref, height=_held(room, hold, figure))


def hold_end(room: Room, set_out: SetOut, ref: Ref, side: str, hold: str) -> Room:
    """A room in which an end (``left`` or ``right``) of the rod at ``ref`` is held by ``hold``."""
    treatment = next(treatment for treatment in set_out.treatments if treatment.ref == ref[:3])
    support = next(layer for layer in treatment.layers if layer.ref == ref).support
    opening = treatment.openings[0 if side == "left" else -1]
    reach = opening.left_mm - support.left_mm if side == "left" else support.right_mm - opening.right_mm
    figures = {
        "beyond-opening": reach,
        "beyond-casing": reach - opening.casing_mm,
        "from-corner": support.left_mm if side == "left" else set_out.width_mm - support.right_mm,
        "around-corner": short_of_corner(room, set_out, next(one for one in treatment.layers if one.ref == ref), side),
        "rod-length": support.length_mm,
        "inside-opening": -reach,
    }
    fields: dict[str, object] = {side: _held(room, hold, figures[hold])}
    other = "right" if side == "left" else "left"
    if hold == "rod-length" and getattr(layer_of(room, ref).rod, other).hold == "rod-length":
        # Only one end may hold the length; the other goes back to what it reaches past.
        opening = treatment.openings[0 if other == "left" else -1]
        far = opening.left_mm - support.left_mm if other == "left" else support.right_mm - opening.right_mm
        fields[other] = _held(room, "beyond-opening", far)
    return replace_rod(room, ref, **fields)


def _held(room: Room, hold: str, figure_mm: float) -> Held:
    return Held(hold, length_of(figure_mm, room.unit, room.graduation_mm))  # type: ignore[arg-type]
