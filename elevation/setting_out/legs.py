"""Treatments that go on round a corner: every leg takes its rod's height, projection and section from the first one."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from elevation.room.corners import AROUND, after_corner, before_corner
from elevation.room.model import Held, Packet, Ref, Room, Treatment
from elevation.setting_out.model import TreatmentOut
from elevation.units import Length

Legs = tuple[Ref | None, Ref | None]
"""The legs on the walls to the left and to the right."""

ALONE: Legs = (None, None)


class LedRod(Struct, frozen=True, gc=False):
    """What a layer of the first leg says for that layer of all legs; ``height_mm`` over the follower's datum."""

    layer: str
    height_mm: float
    projection: Length
    section: str
    diameter: Length | None
    stock: Length | None
    kind: Literal["rod", "track", "tension-rod"]
    packet: Packet
    bend: Length | None = None


def legs_of(room: Room, ref: Ref, treatment: Treatment) -> Legs:
    """The legs beside a treatment; only one that says it goes on, or is gone on with, has any."""
    left = before_corner(room, ref) if treatment.continues is not None else None
    goes_on = any(layer.rod.right.hold == AROUND for layer in treatment.layers)
    return left, after_corner(room, ref) if goes_on else None


def led_by(first: Treatment, landed: TreatmentOut, step_mm: float) -> tuple[LedRod, ...]:
    """What the first leg decides for the others.

    Parameters
    ----------
    first : Treatment
        As it was decided.
    landed : TreatmentOut
        As it landed.
    step_mm : float
        How far its wall's datum lies over the follower's.
    """
    heights = {out.ref[-1]: out.support.height_mm + step_mm for out in landed.layers}
    return tuple(
        LedRod(
            layer.id,
            heights[layer.id],
            layer.rod.projection,
            layer.rod.section,
            layer.rod.diameter,
            layer.rod.stock,
            layer.rod.kind,
            layer.rod.packet,
            layer.rod.bend,
        )
        for layer in first.layers
    )


def led(treatment: Treatment, rods: tuple[LedRod, ...]) -> Treatment:
    """A leg with its rods as the first one says; a layer that the first one has not keeps its own."""
    found = {rod.layer: rod for rod in rods}
    layers = []
    for layer in treatment.layers:
        lead = found.get(layer.id)
        if lead is None:
            layers.append(layer)
            continue
        rod = replace(
            layer.rod,
            height=Held("above-floor", Length(lead.height_mm, "")),
            projection=lead.projection,
            section=lead.section,
            diameter=lead.diameter,
            stock=lead.stock,
            kind=lead.kind,
            packet=lead.packet,
            bend=lead.bend,
        )
        layers.append(replace(layer, rod=rod))
    return replace(treatment, layers=tuple(layers))
