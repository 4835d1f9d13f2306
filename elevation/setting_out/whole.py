"""A whole wall dressed in one scheme, set out; only what changed is set out again."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from typing import TypeVar

from elevation.errors import NoSuch, said
from elevation.room.model import Room, Scheme, Wall
from elevation.setting_out.keeper import Keeper
from elevation.setting_out.model import SetOut
from elevation.trade.model import Trade

Part = TypeVar("Part", Wall, Scheme)

MOST_WALLS = 32
"""Walls whose last results are kept."""

_keepers: dict[str, Keeper] = {}


def keeper_of(wall_id: str) -> Keeper:
    """The keeper of one wall's results."""
    keeper = _keepers.get(wall_id)
    if keeper is None:
        if len(_keepers) >= MOST_WALLS:
            _keepers.clear()
        keeper = _keepers[wall_id] = Keeper()
    return keeper


def set_out(room: Room, wall_id: str, scheme_id: str | None, trade: Trade) -> SetOut:
    """Where everything of one wall lands.

    Parameters
    ----------
    room : Room
    wall_id : str
    scheme_id : str or None
        None: the bare wall.
    trade : Trade

    Returns
    -------
    SetOut
        In mm, wall coordinates. Parts that depend on nothing that changed since the last two calls are the very same
        objects as then.

    Raises
    ------
    NoSuch
        The wall, the scheme or a row of the trade's tables does not exist.
    """
    wall = _by_id(room.walls, wall_id, "wall")
    scheme = None if scheme_id is None else _by_id(wall.schemes, scheme_id, "scheme")
    return keeper_of(wall_id).set_out(room, wall, scheme, trade, keeper_of)


def set_out_afresh(room: Room, wall_id: str, scheme_id: str | None, trade: Trade) -> SetOut:
    """The same without anything remembered, for benches and tests."""
    return set_out_apart()(room, wall_id, scheme_id, trade)


def set_out_apart() -> Callable[[Room, str, str | None, Trade], SetOut]:
    """A ``set_out`` that remembers its own calls alone, for what is only tried: the room at hand stays remembered."""
    fresh: defaultdict[str, Keeper] = defaultdict(Keeper)

    def tried(room: Room, wall_id: str, scheme_id: str | None, trade: Trade) -> SetOut:
        wall = _by_id(room.walls, wall_id, "wall")
        scheme = None if scheme_id is None else _by_id(wall.schemes, scheme_id, "scheme")
        return fresh[wall_id].set_out(room, wall, scheme, trade, fresh.__getitem__)

    return tried


def _by_id(items: tuple[Part, ...], wanted: str, what: str) -> Part:
    for item in items:
        if item.id == wanted:
            return item
    known = ", ".join(item.id for item in items)
    raise NoSuch(
        what,
        "",
        said('there is no "{wanted}"', wanted=wanted),
        said("it may be {known}", known=known) if known else said("there is none yet"),
    )
