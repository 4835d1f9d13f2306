"""The room's frozen data to plain JSON values: fields in the model's order, defaults left out."""

from __future__ import annotations

from typing import Any

from msgspec import NODEFAULT, Struct
from msgspec.structs import fields

from elevation.room.model import Room
from elevation.units import Length


def encode_room(room: Room) -> dict[str, Any]:
    """``room`` as plain JSON values, without ``format`` and ``version``."""
    return _struct(room)


def _struct(value: Struct) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for field in fields(value):
        inner = getattr(value, field.name)
        if field.default is not NODEFAULT and inner == field.default:
            continue
        if field.default_factory is not NODEFAULT and inner == field.default_factory():
            continue
        made[field.name] = _plain(inner)
    return made


def _plain(value: Any) -> Any:
    if isinstance(value, Length):
        return value.text
    if isinstance(value, Struct):
        return _struct(value)
    if isinstance(value, tuple):
        return [_plain(item) for item in value]
    if isinstance(value, dict):
        return {key: _plain(value[key]) for key in sorted(value)}
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return int(value)  # 90 reads better than 90.0 and means the same
    return value
