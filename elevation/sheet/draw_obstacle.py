"""What stands on or before the wall: each of its kinds drawn so that it is known at a glance."""

from __future__ import annotations

from collections.abc import Callable

from elevation.setting_out.model import ObstacleOut
from elevation.sheet import draw_fitting, draw_heater
from elevation.sheet.draw_titles import ENGLISH, obstacle_title
from elevation.sheet.records import Group, Record
from elevation.words import Style

_DRAW: dict[str, Callable[[ObstacleOut], list[Record]]] = {
    "outlet": draw_fitting.outlet,
    "switch": draw_fitting.switch,
    "light": draw_fitting.light,
    "smoke-alarm": draw_fitting.smoke_alarm,
    "shelf": draw_fitting.shelf,
    "furniture": draw_fitting.furniture,
    "picture": draw_fitting.picture,
    "pipe": draw_fitting.pipe,
    "door-swing": draw_fitting.door_swing,
    "hot-water-radiator": draw_heater.radiator,
    "electric-heater": draw_heater.electric_heater,
    "fan-heater": draw_heater.fan_heater,
    "portable-heater": draw_heater.portable_heater,
    "flame-heater": draw_heater.flame_heater,
    "floor-register": draw_heater.register,
    "wall-register": draw_heater.register,
}


def draw_obstacle(obstacle: ObstacleOut, style: Style = ENGLISH) -> Group:
    """One obstacle inside its outline, as a group of layer ``obstacle``.

    Raises
    ------
    KeyError
        For a kind that the room's model does not know.
    """
    records = _DRAW[obstacle.kind](obstacle)
    return Group(obstacle.ref, "obstacle", obstacle_title(obstacle, style), tuple(records))
