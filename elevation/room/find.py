"""Finding things in a room by id, by ``Ref`` or by what a person calls them."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from typing import Protocol, TypeVar

from elevation.errors import NoSuch, said
from elevation.room.model import (
    Bracket,
    Layer,
    Obstacle,
    Opening,
    Panel,
    Ref,
    Room,
    Scheme,
    Treatment,
    Wall,
)
from elevation.room.nearest import advice, quoted

Item = Wall | Opening | Obstacle | Scheme | Treatment | Layer | Bracket | Panel
"""Anything that has an id."""


# Said once: the way to a layer is looked up by many rules in every frame.
_WALL, _SCHEME, _OPENING, _OBSTACLE = said("wall"), said("scheme"), said("opening"), said("obstacle")
_TREATMENT, _LAYER, _BRACKET, _PANEL = said("treatment"), said("layer"), said("bracket"), said("panel")


class _HasId(Protocol):
    @property
    def id(self) -> str: ...


class _HasName(Protocol):
    @property
    def id(self) -> str: ...

    @property
    def name(self) -> str: ...


_Has = TypeVar("_Has", bound=_HasId)
_Named = TypeVar("_Named", bound=_HasName)


def children(item: Room | Item) -> tuple[Item, ...]:
    """Everything whose ids must differ from each other because it has ``item`` as its parent."""
    if isinstance(item, Room):
        return item.walls
    if isinstance(item, Wall):
        return (*item.openings, *item.obstacles, *item.schemes)
    if isinstance(item, Scheme):
        return item.treatments
    if isinstance(item, Treatment):
        return item.layers
    if isinstance(item, Layer):
        return (*item.brackets, *item.panels)
    return ()


def with_id(items: Collection[_Has], wanted: str, kind: str, room: Room) -> _Has:
    """The item of ``items`` whose id is ``wanted``.

    Parameters
    ----------
    items : collection
        Things with ids.
    wanted : str
        The id.
    kind : str
        What is looked for, for the sentence ("wall").
    room : Room
        The room, for the sentence.

    Raises
    ------
    NoSuch
        No item has that id; the sentence names the nearest.
    """
    for item in items:
        if item.id == wanted:
            return item
    raise NoSuch(
        room.name or said("room"),
        "",
        said("there is no {kind} {wanted}", kind=kind, wanted=quoted(wanted)),
        advice(wanted, [item.id for item in items]),
    )


def wall_of(room: Room, wall_id: str) -> Wall:
    """The wall with that id.

    Raises
    ------
    NoSuch
        There is none.
    """
    return with_id(room.walls, wall_id, _WALL, room)


def scheme_of(room: Room, wall_id: str, scheme_id: str | None) -> Scheme | None:
    """The scheme with that id on that wall; the wall's first one (or None) for ``scheme_id`` None.

    Raises
    ------
    NoSuch
        There is no such wall or scheme.
    """
    wall = wall_of(room, wall_id)
    if scheme_id is None:
        return wall.schemes[0] if wall.schemes else None
    return with_id(wall.schemes, scheme_id, _SCHEME, room)


def _long_enough(room: Room, ref: Ref, length: int, kind: str) -> None:
    if len(ref) < length:
        raise NoSuch(room.name or said("room"), "/".join(ref), said("does not lead to a {kind}", kind=kind))


def _found(room: Room, ref: Ref, length: int, kind: str, siblings: Callable[[], Collection[_Has]]) -> _Has:
    """What the first ``length`` ids of ``ref`` lead to; ``siblings`` is asked only once ``ref`` is long enough.

    Raises
    ------
    NoSuch
        There is none, or ``ref`` is too short.
    """
    _long_enough(room, ref, length, kind)
    return with_id(siblings(), ref[length - 1], kind, room)


# Each of the following raises NoSuch where there is no such thing, and reads a longer ref up to there.


def opening_of(room: Room, ref: Ref) -> Opening:
    """The opening at (wall, opening)."""
    return _found(room, ref, 2, _OPENING, lambda: wall_of(room, ref[0]).openings)


def obstacle_of(room: Room, ref: Ref) -> Obstacle:
    """The obstacle at (wall, obstacle)."""
    return _found(room, ref, 2, _OBSTACLE, lambda: wall_of(room, ref[0]).obstacles)


def _scheme_at(room: Room, ref: Ref) -> Scheme:
    return _found(room, ref, 2, _SCHEME, lambda: wall_of(room, ref[0]).schemes)


def treatment_of(room: Room, ref: Ref) -> Treatment:
    """The treatment at (wall, scheme, treatment)."""
    return _found(room, ref, 3, _TREATMENT, lambda: _scheme_at(room, ref).treatments)


def layer_of(room: Room, ref: Ref) -> Layer:
    """The layer at (wall, scheme, treatment, layer)."""
    return _found(room, ref, 4, _LAYER, lambda: treatment_of(room, ref).layers)


def bracket_of(room: Room, ref: Ref) -> Bracket:
    """The bracket at (wall, scheme, treatment, layer, bracket)."""
    return _found(room, ref, 5, _BRACKET, lambda: layer_of(room, ref).brackets)


def panel_of(room: Room, ref: Ref) -> Panel:
    """The panel at (wall, scheme, treatment, layer, panel)."""
    return _found(room, ref, 5, _PANEL, lambda: layer_of(room, ref).panels)


def item_at(room: Room, ref: Ref) -> Item:
    """Whatever stands at ``ref``.

    Raises
    ------
    NoSuch
        Nothing stands there, or ``ref`` is empty.
    """
    _long_enough(room, ref, 1, _WALL)
    item: Item = wall_of(room, ref[0])
    for key in ref[1:]:
        item = with_id(children(item), key, said("thing"), room)
    return item


def has(room: Room, ref: Ref) -> bool:
    """Whether anything stands at ``ref``."""
    try:
        item_at(room, ref)
    except NoSuch:
        return False
    return True


def by_name(items: Sequence[_Named], wanted: str, *, what: str, kind: str) -> _Named:
    """The item that a person means by ``wanted``: its id, or its name where only one has it.

    An id wins over a name; an exact name over one that differs in case only.

    Parameters
    ----------
    items : sequence
        Walls, schemes, treatments or obstacles.
    wanted : str
        What was typed.
    what : str
        Name of the file, for the sentence.
    kind : str
        What is looked for, for the sentence ("wall").

    Raises
    ------
    NoSuch
        None has that id or name, or several have that name.
    """
    for item in items:
        if item.id == wanted:
            return item
    small = wanted.casefold()
    exact = [item for item in items if item.name == wanted]
    found = exact or [item for item in items if item.name.casefold() == small]
    if len(found) == 1 and wanted:
        return found[0]
    if len(found) > 1:
        ids = ", ".join(item.id for item in found)
        raise NoSuch(
            what,
            "",
            said("more than one {kind} is named {wanted}", kind=kind, wanted=quoted(wanted)),
            said("use one of the ids {ids}", ids=ids),
        )
    words = [word for item in items for word in (item.id, item.name) if word]
    raise NoSuch(
        what,
        "",
        said("there is no {kind} {wanted}", kind=kind, wanted=quoted(wanted)),
        advice(wanted, dict.fromkeys(words)),
    )
