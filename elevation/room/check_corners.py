"""What corners and treatments that go round them may be."""

from __future__ import annotations

from elevation.errors import said
from elevation.room.bounds import Place
from elevation.room.corners import AROUND, goes_round
from elevation.room.model import Room, Treatment

_SAME_DEGREES = 0.05
"""Two ends that say the same angle may differ by as much as nobody can measure."""

_LONGEST_ID = 64


def check_corners(room: Room, place: Place) -> None:
    """Refuse a corner whose two ends say different angles.

    Raises
    ------
    BadInput
        With the place of the second angle.
    """
    walls = {wall.id: (index, wall) for index, wall in enumerate(room.walls)}
    for wall in room.walls:
        found = walls.get(wall.right.neighbour or "")
        if found is None or found[1] is wall:
            continue
        index, other = found
        if other.left.neighbour == wall.id and abs(other.left.angle - wall.right.angle) > _SAME_DEGREES:
            raise (
                place.item("walls", index)
                .at("left")
                .at("angle")
                .bad(
                    said(
                        "is {angle} degrees, but the other wall of this corner says {other}",
                        angle=other.left.angle,
                        other=wall.right.angle,
                    ),
                    said("write the same inside angle at both ends"),
                )
            )


def check_legs(treatment: Treatment, place: Place) -> None:
    """Refuse a treatment that goes round a corner where it cannot.

    Raises
    ------
    BadInput
        With the place of the first fault.
    """
    outside = treatment.mount in ("wall", "ceiling")
    if treatment.continues is not None:
        if not 0 < len(treatment.continues) <= _LONGEST_ID:
            raise place.at("continues").bad(said("is no id"), said("name a treatment of the wall to the left"))
        if not outside:
            raise place.at("continues").bad(
                said('stands beside the mount "{mount}"', mount=treatment.mount),
                said("only rods before the wall go round a corner"),
            )
    for number, layer in enumerate(treatment.layers):
        here = place.item("layers", number).at("rod")
        if goes_round(treatment) and layer.rod.tilt != "level":
            raise here.at("tilt").bad(
                said('is "{tilt}" on a rod that goes round a corner', tilt=layer.rod.tilt),
                said("only level rods meet there: leave it out"),
            )
        for side, held in (("left", layer.rod.left), ("right", layer.rod.right)):
            if held.hold != AROUND:
                continue
            if not outside:
                raise here.at(side).bad(
                    said('is "{hold}" with the mount "{mount}"', hold=AROUND, mount=treatment.mount),
                    said("only rods before the wall go round a corner"),
                )
            if layer.rod.kind == "tension-rod":
                raise here.at(side).bad(said('is "{hold}"', hold=AROUND), said("a tension rod presses between two jambs"))
