"""The edit that lets a treatment go on round a corner, or end before it again."""

from __future__ import annotations

from typing import Literal

from msgspec.structs import replace

from elevation.room.corners import AROUND, beside
from elevation.room.edits import edit_at, replace_at
from elevation.room.find import treatment_of, wall_of
from elevation.room.model import Held, Ref, Room, Treatment
from elevation.units import Length, length_of

_LET_GO = 152.4
"""An end that no longer goes round the corner reaches 6 in beyond its opening (common practice, no source)."""


def choices(room: Room, ref: Ref) -> tuple[Treatment, ...]:
    """The treatments on the wall to the left that the one at ``ref`` could be the continuation of."""
    there = beside(room, wall_of(room, ref[0]), "left")
    if there is None:
        return ()
    outside = ("wall", "ceiling")
    scheme = next((one for one in there.wall.schemes if one.id == ref[1]), None)
    return () if scheme is None else tuple(one for one in scheme.treatments if one.mount in outside)


def go_on(room: Room, ref: Ref, before: str | None) -> Room:
    """A room in which the treatment at ``ref`` is the continuation of one on the wall to the left.

    Parameters
    ----------
    room : Room
    ref : Ref
        The treatment on the wall to the right of the corner.
    before : str or None
        Id of the treatment on the left-hand neighbour, in the scheme of the same id; None: of none any more.

    Returns
    -------
    Room
        Both rods end where their axes meet; where they no longer go on, each reaches beyond its opening.
    """
    own = treatment_of(room, ref)
    if own.continues == before:
        return room
    wall = wall_of(room, ref[0])
    there = beside(room, wall, "left")
    if there is not None and own.continues is not None and any(one.id == own.continues for one in choices(room, ref)):
        room = _ended(room, (there.wall.id, ref[1], own.continues), "right", None)
    room = replace_at(room, ref, continues=before)
    if there is None or before is None:
        return _ended(room, ref, "left", None)
    at = length_of(0.0, room.unit, room.graduation_mm)
    room = _ended(room, ref, "left", at)
    return _ended(room, (there.wall.id, ref[1], before), "right", at)


def end_here(room: Room, ref: Ref, side: Literal["left", "right"]) -> Room:
    """A treatment whose rods no longer go round the corner at one end: each reaches beyond its opening."""
    return _ended(room, ref, side, None)


def _ended(room: Room, ref: Ref, side: str, at: Length | None) -> Room:
    """Every rod of a treatment with one end round the corner, or back beyond its opening (None)."""
    held = (
        Held("beyond-opening", length_of(_LET_GO, room.unit, room.graduation_mm))
        if at is None
        else Held("around-corner", at)
    )

    def put(treatment: Treatment) -> Treatment:
        layers = tuple(
            replace(layer, rod=replace(layer.rod, **{side: held}, **({} if at is None else {"tilt": "level"})))
            if at is not None or getattr(layer.rod, side).hold == AROUND
            else layer
            for layer in treatment.layers
        )
        return replace(treatment, layers=layers)

    return edit_at(room, ref, put)
