"""Forces as a person knows them: the mass that weighs as much."""

from __future__ import annotations

from elevation.findings.model import Scene
from elevation.trade.section import GRAVITY
from elevation.units.mass import KG_A_LB
from elevation.words import Message, Ratio, msg


def weight(scene: Scene, force_n: float) -> Message:
    """A force in N as the room's unit has it."""
    return weight_in(scene.room.unit, force_n)


def weight_in(unit: str, force_n: float) -> Message:
    """A force in N as pounds in a room of inches, else as kilograms."""
    kg = force_n / GRAVITY
    if unit == "in":
        return msg("{mass} lb", mass=Ratio(kg / KG_A_LB, 1))
    return msg("{mass} kg", mass=Ratio(kg, 1))
