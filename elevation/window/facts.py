"""Single facts of a room by their path: what the forms read and write."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from elevation.room.edits import edit_at
from elevation.room.find import item_at
from elevation.room.model import Ref, Room, Station
from elevation.room.validate import check_room
from elevation.units import Length

_NOTHING = Length(0.0, "0 mm")


def fact(room: Room, ref: Ref, field: str) -> Any:
    """The value at a dotted path inside the thing at ``ref``; None where any part of the path is absent.

    Parameters
    ----------
    room : Room
    ref : Ref
    field : str
        ``width``, ``head.rise``, ``ceiling.0.height``, ``rod.height.at`` ...
    """
    return fact_in(item_at(room, ref) if ref else room, field)


def fact_in(item: Any, field: str) -> Any:
    """The same inside a thing that is at hand."""
    value = item
    for part in field.split("."):
        if value is None:
            return None
        value = _item(value, int(part)) if part.isdigit() else getattr(value, part)
    return value


def _item(values: tuple[Any, ...], index: int) -> Any:
    return values[index] if index < len(values) else None


def with_fact(room: Room, ref: Ref, field: str, value: Any) -> Room:
    """A room with one fact set, checked as a file would be.

    Parameters
    ----------
    room : Room
    ref : Ref
    field : str
        As in ``fact``.
    value : object
        None takes the fact away: it is not measured.

    Raises
    ------
    BadInput
        The room cannot be so.
    """
    parts = field.split(".")
    made = edit_at(room, ref, lambda item: _put(item, parts, value))
    check_room(made, "")
    return made


def _put(item: Any, parts: list[str], value: Any) -> Any:
    first, rest = parts[0], parts[1:]
    if first.isdigit():
        return _put_station(item, int(first), rest, value)
    if not rest:
        return item if getattr(item, first) == value else replace(item, **{first: value})
    inner = getattr(item, first)
    made = _put(inner, rest, value)
    return item if made is inner else replace(item, **{first: made})


def _put_station(stations: tuple[Any, ...], index: int, rest: list[str], value: Any) -> tuple[Any, ...]:
    if index >= len(stations):
        # The first height of a ceiling that nobody had measured.
        return stations if value is None else (*stations, Station(_NOTHING, value))
    if value is None:
        return (*stations[:index], *stations[index + 1 :])
    return (*stations[:index], _put(stations[index], rest, value), *stations[index + 1 :])
