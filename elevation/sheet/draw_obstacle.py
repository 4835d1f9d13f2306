"""What stands on or before the wall: each of its kinds drawn so that it is known at a glance."""

from __future__ import annotations

from collections.abc import Callable

from elevation.setting_out.model import ObstacleOut
from elevation.sheet import draw_fitting, draw_heater
from elevation.sheet.records import Group, Record

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

_NAMES = {
    "outlet": "Outlet",
    "switch": "Switch",
    "light": "Wall light",
    "smoke-alarm": "Smoke alarm",
    "shelf": "Shelf",
    "furniture": "Furniture",
    "picture": "Picture",
    "pipe": "Pipe",
    "door-swing": "Door swing",
    "hot-water-radiator": "Hot-water radiator",
    "electric-heater": "Electric heater",
    "fan-heater": "Fan heater",
    "portable-heater": "Portable heater",
    "flame-heater": "Fireplace",
    "floor-register": "Floor register",
    "wall-register": "Wall register",
}


def draw_obstacle(obstacle: ObstacleOut) -> Group:
    """One obstacle inside its outline, as a group of layer ``obstacle``.

    Raises
    ------
    KeyError
        For a kind that the room's model does not know.
    """
    records = _DRAW[obstacle.kind](obstacle)
    return Group(obstacle.ref, "obstacle", obstacle.name or _NAMES[obstacle.kind], tuple(records))
