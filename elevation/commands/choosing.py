"""Rooms, walls and schemes by what a person calls them."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from elevation import places
from elevation.errors import NoSuch, said
from elevation.room.file import load_room
from elevation.room.find import by_name
from elevation.room.lent import trade_of
from elevation.room.model import Room, Scheme, Wall
from elevation.room.validate import check_rows
from elevation.trade.model import Trade


def load(path: Path, trade: Trade) -> tuple[Room, Trade]:
    """The room in ``path``, its table rows checked, and the trade with those that it carries; raises BadInput."""
    if _is_folder(path):
        raise NoSuch(str(path), "", "holds no room file (*.room.json)", "name a room, or a folder with rooms")
    room = load_room(path)
    whole = trade_of(room, trade)
    check_rows(room, whole, path.name)
    return room, whole


def rooms_of(given: Sequence[Path]) -> tuple[Path, ...]:
    """The room files that were named; a folder stands for all rooms in it, in order.

    A folder without any stays as it is: whoever loads it says so, and goes on with the others.
    """
    found: list[Path] = []
    for path in given:
        if not _is_folder(path):
            found.append(path)
            continue
        found += sorted(path.glob("*.room.json"), key=places.in_order) or [path]
    return tuple(found)


def _is_folder(path: Path) -> bool:
    try:
        return path.is_dir()
    except (OSError, ValueError):
        # A name that no file can have: reading says so.
        return False


def first_demo() -> Path:
    """The demo room that opens where none was named."""
    rooms = places.demo_room_files()
    if not rooms:
        raise NoSuch(str(places.demo_rooms()), "", "holds no demo room", "install the program again")
    return rooms[0]


def walls(room: Room, wanted: str | None, where: str) -> tuple[Wall, ...]:
    """The wall that ``wanted`` names (id or unambiguous name), or all; raises NoSuch."""
    if wanted is None:
        return room.walls
    return (by_name(room.walls, wanted, what=where, kind=said("wall")),)


def schemes(wall: Wall, wanted: str | None, every: bool, where: str) -> tuple[Scheme | None, ...]:
    """The scheme that ``wanted`` names, every one, or the first; (None,) for a wall without a scheme."""
    if wanted is not None:
        return (by_name(wall.schemes, wanted, what=where, kind=said("scheme")),)
    if not wall.schemes:
        return (None,)
    return wall.schemes if every else wall.schemes[:1]
