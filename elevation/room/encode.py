"""The room's frozen data to plain JSON values: fields in the model's order, defaults left out."""

from __future__ import annotations

from functools import cache
from typing import Any

from msgspec import NODEFAULT, Struct
from msgspec.structs import fields

from elevation.room.model import Room
from elevation.units import Length


def encode_room(room: Room) -> dict[str, Any]:
    """``room`` as plain JSON values, without ``format`` and ``version``."""
    return _struct(room)


@cache
def _fields(kind: type[Struct]) -> tuple[tuple[str, object], ...]:
    """Names and defaults (``NODEFAULT`` for what must be there), in the order in which they are written."""
    made = []
    for field in fields(kind):
        default = field.default
        if field.default_factory is not NODEFAULT:
            default = field.default_factory()
        made.append((field.name, default))
    return tuple(made)


def _struct(value: Struct) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for name, default in _fields(type(value)):
        inner = getattr(value, name)
        if default is NODEFAULT or inner != default:
            made[name] = _plain(inner)
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
