"""Which walls stand beside each other, and which treatments go on round a corner.

Walls are seen from inside the room: a wall's right end is the left end of the neighbour on its right. A corner may be
named at either of its two ends; where only one of them names the other wall, that is enough.
"""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from elevation.room.model import Ref, Room, Treatment, Wall
from elevation.room.stand import height_at

Side = Literal["left", "right"]
SIDES: tuple[Side, Side] = ("left", "right")

AROUND = "around-corner"
"""What a rod's end holds that meets the rod of the neighbour wall in the corner."""


SHARED = ("height", "projection", "section", "diameter", "stock", "kind", "packet", "bend")
"""What the rods of all legs have in common, by field of the rod: that of the leftmost leg counts."""


class Beside(Struct, frozen=True, gc=False):
    """The wall beside another one, and the inside angle between the two in degrees."""

    wall: Wall
    angle: float


def beside(room: Room, wall: Wall, side: Side) -> Beside | None:
    """The wall in the corner at one end of ``wall``; None where the end is open or nothing is known of it."""
    end = wall.left if side == "left" else wall.right
    if end.kind != "corner":
        return None
    if end.neighbour is not None:
        named = next((other for other in room.walls if other.id == end.neighbour), None)
        return None if named is None or named is wall else Beside(named, end.angle)
    for other in room.walls:
        back = other.right if side == "left" else other.left
        if back.neighbour == wall.id and other is not wall:
            return Beside(other, back.angle)
    return None


def angles_of(room: Room, wall: Wall) -> tuple[float, float]:
    """The inside angles at a wall's left and right end, in degrees."""
    found = [beside(room, wall, side) for side in SIDES]
    return (
        wall.left.angle if found[0] is None else found[0].angle,
        wall.right.angle if found[1] is None else found[1].angle,
    )


def _treatment(wall: Wall, scheme_id: str, wanted: str) -> Treatment | None:
    for scheme in wall.schemes:
        if scheme.id == scheme_id:
            return next((one for one in scheme.treatments if one.id == wanted), None)
    return None


def before_corner(room: Room, ref: Ref) -> Ref | None:
    """The treatment on the left-hand neighbour that goes on as the one at ``ref``; None where it begins here."""
    wall = next(one for one in room.walls if one.id == ref[0])
    own = _treatment(wall, ref[1], ref[2])
    if own is None or own.continues is None:
        return None
    there = beside(room, wall, "left")
    if there is None or _treatment(there.wall, ref[1], own.continues) is None:
        return None
    return (there.wall.id, ref[1], own.continues)


def after_corner(room: Room, ref: Ref) -> Ref | None:
    """The treatment on the right-hand neighbour as which the one at ``ref`` goes on; None where it ends here."""
    wall = next(one for one in room.walls if one.id == ref[0])
    there = beside(room, wall, "right")
    if there is None:
        return None
    for scheme in there.wall.schemes:
        if scheme.id == ref[1]:
            for one in scheme.treatments:
                if one.continues == ref[2]:
                    follower = (there.wall.id, ref[1], one.id)
                    return follower if before_corner(room, follower) == ref[:3] else None
    return None


def run_of(room: Room, ref: Ref) -> tuple[Ref, ...]:
    """All legs of the treatment that the one at ``ref`` belongs to, from the leftmost wall on; at least itself."""
    legs = [ref[:3]]
    while (ahead := before_corner(room, legs[0])) is not None and ahead not in legs:
        legs.insert(0, ahead)
    while (follower := after_corner(room, legs[-1])) is not None and follower not in legs:
        legs.append(follower)
    return tuple(legs)


def lead_ref(room: Room, ref: Ref) -> Ref:
    """Where what all legs have in common is decided, for anything in a treatment: the same thing of the leftmost leg.

    Legs have their rods' height, projection and section in common. A layer that the first leg has not is its own lead.
    """
    first = run_of(room, ref)[0]
    if first == ref[:3]:
        return ref
    wall = next(one for one in room.walls if one.id == first[0])
    treatment = _treatment(wall, first[1], first[2])
    has_layer = treatment is not None and len(ref) > 3 and any(layer.id == ref[3] for layer in treatment.layers)
    return (*first, *ref[3:]) if has_layer else ref


def datum_steps(room: Room, wall_id: str) -> dict[str, float]:
    """How far the datum of each wall lies over that of ``wall_id``, in mm, for the walls that corners lead to.

    In a corner the neighbour's datum lies on the floor of the wall to the left of it.
    """
    walls = {wall.id: wall for wall in room.walls}
    steps = {wall_id: 0.0}
    waiting = [wall_id]
    while waiting:
        wall = walls[waiting.pop()]
        right, left = beside(room, wall, "right"), beside(room, wall, "left")
        if right is not None and right.wall.id not in steps:
            steps[right.wall.id] = steps[wall.id] + _floor_at_right(wall)
            waiting.append(right.wall.id)
        if left is not None and left.wall.id not in steps:
            steps[left.wall.id] = steps[wall.id] - _floor_at_right(left.wall)
            waiting.append(left.wall.id)
    return steps


def _floor_at_right(wall: Wall) -> float:
    """The floor at a wall's right end over its datum; the last station's where its width was not measured."""
    if not wall.floor:
        return 0.0
    x_mm = wall.width.mm if wall.width is not None else wall.floor[-1].x.mm
    return height_at(wall.floor, x_mm) or 0.0


def goes_round(treatment: Treatment) -> bool:
    """Whether a treatment goes round a corner: its rods then meet others, and hang level."""
    ends = [held.hold for layer in treatment.layers for held in (layer.rod.left, layer.rod.right)]
    return treatment.continues is not None or any(hold == AROUND for hold in ends)
