"""Rooms, walls and schemes by what a person calls them."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from elevation import places
from elevation.errors import BadInput, NoSuch
from elevation.room.file import load_room
from elevation.room.model import Room, Scheme, Wall
from elevation.room.validate import check_rows
from elevation.trade.model import Trade


def load(path: Path, trade: Trade) -> Room:
    """The room in ``path``, its table rows checked; raises BadInput."""
    room = load_room(path)
    check_rows(room, trade, path.name)
    return room


def first_demo() -> Path:
    """The demo room that opens where none was named."""
    rooms = sorted(places.demo_rooms().glob("*.room.json"))
    if not rooms:
        raise NoSuch(str(places.demo_rooms()), "", "holds no demo room", "install the program again")
    return rooms[0]


def _choose(kind: str, wanted: str, items: Iterable[tuple[str, str]], where: str) -> str:
    items = list(items)
    if any(wanted == ident for ident, _name in items):
        return wanted
    named = [ident for ident, name in items if name.casefold() == wanted.casefold()]
    if len(named) == 1:
        return named[0]
    if named:
        raise BadInput(where, "", f"has {len(named)} {kind}s named “{wanted}”", f"give one of the ids {', '.join(named)}")
    have = ", ".join(f"{ident} ({name})" if name else ident for ident, name in items) or "none"
    raise NoSuch(where, "", f"has no {kind} “{wanted}”", f"it has {have}")


def walls(room: Room, wanted: str | None, where: str) -> tuple[Wall, ...]:
    """The wall that ``wanted`` names (id or unambiguous name), or all; raises NoSuch or BadInput."""
    if wanted is None:
        return room.walls
    ident = _choose("wall", wanted, ((wall.id, wall.name) for wall in room.walls), where)
    return tuple(wall for wall in room.walls if wall.id == ident)


def schemes(wall: Wall, wanted: str | None, every: bool, where: str) -> tuple[Scheme | None, ...]:
    """The scheme that ``wanted`` names, every one, or the first; (None,) for a wall without a scheme."""
    if wanted is not None:
        ident = _choose("scheme", wanted, ((scheme.id, scheme.name) for scheme in wall.schemes), where)
        return tuple(scheme for scheme in wall.schemes if scheme.id == ident)
    if not wall.schemes:
        return (None,)
    return wall.schemes if every else wall.schemes[:1]
