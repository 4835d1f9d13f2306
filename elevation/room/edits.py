"""Named edits: each takes a room and gives a new one that shares all that did not change.

Identity is the cache key further up, so an edit that changes nothing gives back the very same room,
and an edit deep inside makes new values only along its own path.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any, TypeVar, cast

from msgspec import Struct
from msgspec.structs import replace

from elevation.errors import NoSuch, said
from elevation.room.corners import SHARED, goes_round, lead_ref
from elevation.room.find import Item, children, layer_of, scheme_of, treatment_of, wall_of
from elevation.room.keep_places import keep_places
from elevation.room.model import (
    Bracket,
    Built,
    Held,
    Layer,
    Obstacle,
    Opening,
    Panel,
    Ref,
    Rod,
    Room,
    Scheme,
    Treatment,
    Wall,
)
from elevation.room.stand import stands
from elevation.units import Length

_S = TypeVar("_S", bound=Struct)
_NUMBER = re.compile(r"\d+$")

_FIELDS: dict[type, tuple[str, ...]] = {
    Room: ("walls",),
    Wall: ("openings", "obstacles", "schemes"),
    Scheme: ("treatments",),
    Treatment: ("layers",),
    Layer: ("brackets", "panels"),
}


def new_id(siblings: Iterable[object], prefix: str) -> str:
    """An id that none of ``siblings`` has, and none of them that are still there ever had.

    The number is one more than the greatest that any sibling's id ends with, whatever its prefix, so that
    an id is not given out twice while anything younger than its first owner stands.

    Parameters
    ----------
    siblings : iterable
        Everything with the same parent, or their ids.
    prefix : str
        What the id starts with ("w", "b").
    """
    greatest = 0
    for sibling in siblings:
        key = sibling if isinstance(sibling, str) else cast("Item", sibling).id
        found = _NUMBER.search(key)
        if found:
            greatest = max(greatest, int(found.group()))
    return f"{prefix}{greatest + 1}"


def changed(item: _S, **fields: object) -> _S:
    """``item`` with ``fields`` set; the same object where they hold those values already."""
    if all(getattr(item, name) == value for name, value in fields.items()):
        return item
    return replace(item, **cast("dict[str, Any]", fields))


def _within(parent: _S, ref: Ref, edit: Callable[[Any], Any], whole: Ref) -> _S:
    """``parent`` with the descendant at ``ref`` edited; None from ``edit`` takes it away."""
    for field in _FIELDS.get(type(parent), ()):
        items = getattr(parent, field)
        for index, item in enumerate(items):
            if item.id == ref[0]:
                new = edit(item) if len(ref) == 1 else _within(item, ref[1:], edit, whole)
                if new is item:
                    return parent
                middle = () if new is None else (new,)
                return replace(parent, **{field: (*items[:index], *middle, *items[index + 1 :])})
    raise NoSuch(said("room"), "/".join(whole), said('nothing here has the id "{id}"', id=ref[0]))


def edit_at(room: Room, ref: Ref, edit: Callable[[Any], Any]) -> Room:
    """A room in which what stands at ``ref`` is replaced by ``edit`` of it.

    Parameters
    ----------
    room : Room
    ref : Ref
        Ids from the wall down; an empty one means the room itself.
    edit : callable
        From the old value to the new one; the same object means no change, None takes it away.

    Raises
    ------
    NoSuch
        Nothing stands there.
    """
    if not ref:
        return cast("Room", edit(room))
    return _within(room, ref, edit, ref)


def replace_at(room: Room, ref: Ref, **fields: object) -> Room:
    """A room in which what stands at ``ref`` has ``fields`` set.

    Parameters
    ----------
    room : Room
    ref : Ref
        Ids from the wall down; an empty one means the room itself.
    **fields
        New values by field name.

    Raises
    ------
    NoSuch
        Nothing stands there.
    """
    return edit_at(room, ref, lambda item: changed(item, **fields))


def _stands(rod: Rod) -> tuple[object, ...]:
    return rod.height, rod.left, rod.right, rod.tilt


def replace_rod(room: Room, ref: Ref, **fields: object) -> Room:
    """A room in which the rod of the layer at ``ref`` has ``fields`` set.

    A rod that is held at another height, end or slope is a plan again: what was read of it once it was hung goes. What all
    legs of a treatment that goes round corners have in common is written at the first of them.

    Raises
    ------
    NoSuch
        There is no such layer.
    """
    layer_of(room, ref)
    lead = lead_ref(room, ref[:4])
    if lead != ref[:4]:
        shared = {name: value for name, value in fields.items() if name in SHARED}
        fields = {name: value for name, value in fields.items() if name not in SHARED}
        room = replace_rod(room, lead, **shared) if shared else room

    def put(layer: Layer) -> Layer:
        rod = changed(layer.rod, **fields)
        is_moved = _stands(rod) != _stands(layer.rod)
        return changed(layer, rod=rod, built=Built() if is_moved else layer.built)

    room = edit_at(room, ref[:4], put)
    treatment = treatment_of(room, ref[:3])
    if not goes_round(treatment) or all(one.rod.tilt == "level" for one in treatment.layers):
        return room
    # Only level rods meet at a corner.
    level = tuple(changed(one, rod=changed(one.rod, tilt="level")) for one in treatment.layers)
    return replace_at(room, ref[:3], layers=level)


def move_bracket(room: Room, ref: Ref, place: Held, *, is_end: bool) -> Room:
    """A room in which the bracket at ``ref`` is held at ``place``.

    The reading from end bracket to end bracket goes with a move of either, also where it is just what was planned: kept, it
    would share the move out between both.

    Parameters
    ----------
    room : Room
    ref : Ref
    place : Held
    is_end : bool
        Whether it is the first or the last bracket of its rod as they stand.

    Raises
    ------
    NoSuch
        There is no such bracket.
    """
    made = replace_at(room, ref, place=place)
    if not is_end:
        return made
    return edit_at(made, ref[:4], lambda layer: changed(layer, built=changed(layer.built, bracket_to_bracket=None)))


def put_opening(room: Room, wall_id: str, opening: Opening, at: int | None = None) -> tuple[Room, Ref]:
    """Add an opening to a wall.

    Openings stand in order from the left: without ``at``, a ``left`` that was typed finds its own place,
    otherwise it comes last. Its neighbours stay where they are. An id that is empty or taken is replaced by a new one.

    Returns
    -------
    room, ref : Room, Ref
        The new room and where the opening stands.
    """
    wall = wall_of(room, wall_id)
    opening = _with_free_id(opening, wall, "o")
    index = _order(wall, opening) if at is None else max(0, min(at, len(wall.openings)))
    new = replace(wall, openings=(*wall.openings[:index], opening, *wall.openings[index:]))
    return edit_at(room, (wall_id,), lambda _wall: _kept(room, wall, new)), (wall_id, opening.id)


def _order(wall: Wall, opening: Opening) -> int:
    if opening.left is not None:
        for index, left in enumerate(stands(wall)):
            if left is not None and left > opening.left.mm:
                return index
    return len(wall.openings)


def _kept(room: Room, before: Wall, after: Wall) -> Wall:
    return keep_places(before, after, room.unit, room.graduation_mm)


def put_obstacle(room: Room, wall_id: str, obstacle: Obstacle) -> tuple[Room, Ref]:
    """Add an obstacle to a wall, last; an id that is empty or taken is replaced by a new one."""
    wall = wall_of(room, wall_id)
    obstacle = _with_free_id(obstacle, wall, "x")
    return replace_at(room, (wall_id,), obstacles=(*wall.obstacles, obstacle)), (wall_id, obstacle.id)


def put_scheme(room: Room, wall_id: str, scheme: Scheme) -> tuple[Room, Ref]:
    """Add a scheme to a wall, last; an id that is empty or taken is replaced by a new one."""
    wall = wall_of(room, wall_id)
    scheme = _with_free_id(scheme, wall, "s")
    return replace_at(room, (wall_id,), schemes=(*wall.schemes, scheme)), (wall_id, scheme.id)


def put_treatment(room: Room, ref: Ref, treatment: Treatment) -> tuple[Room, Ref]:
    """Add a treatment to the scheme at ``ref``, last; an id that is empty or taken is replaced by a new one."""
    scheme = scheme_of(room, ref[0], ref[1])
    assert scheme is not None  # an id was given: it is there, or NoSuch was raised
    treatment = _with_free_id(treatment, scheme, "t")
    return replace_at(room, ref[:2], treatments=(*scheme.treatments, treatment)), (*ref[:2], treatment.id)


def put_layer(room: Room, ref: Ref, layer: Layer) -> tuple[Room, Ref]:
    """Add a layer behind those of the treatment at ``ref``; an id that is empty or taken is replaced by a new one."""
    treatment = treatment_of(room, ref)
    layer = _with_free_id(layer, treatment, "l")
    return replace_at(room, ref[:3], layers=(*treatment.layers, layer)), (*ref[:3], layer.id)


def put_bracket(room: Room, ref: Ref, bracket: Bracket) -> tuple[Room, Ref]:
    """Add a bracket to the layer at ``ref``, last; an id that is empty or taken is replaced by a new one."""
    layer = layer_of(room, ref)
    bracket = _with_free_id(bracket, layer, "b")
    return replace_at(room, ref[:4], brackets=(*layer.brackets, bracket)), (*ref[:4], bracket.id)


def put_panel(room: Room, ref: Ref, panel: Panel) -> tuple[Room, Ref]:
    """Add a panel to the layer at ``ref``, last; an id that is empty or taken is replaced by a new one."""
    layer = layer_of(room, ref)
    panel = _with_free_id(panel, layer, "p")
    return replace_at(room, ref[:4], panels=(*layer.panels, panel)), (*ref[:4], panel.id)


def put_wall(room: Room, wall: Wall) -> tuple[Room, Ref]:
    """Add a wall, last; an id that is empty or taken is replaced by a new one."""
    wall = _with_free_id(wall, room, "wall-")
    return replace_at(room, (), walls=(*room.walls, wall)), (wall.id,)


def _with_free_id(item: _S, parent: Room | Item, prefix: str) -> _S:
    taken = {child.id for child in children(parent)}
    key = cast("Item", item).id
    if key and key not in taken:
        return item
    return changed(item, id=new_id(taken, prefix))


def add_opening(
    room: Room,
    wall_id: str,
    *,
    width: Length,
    height: Length,
    at: int | None = None,
    **fields: Any,  # the many optional facts of an opening, checked by the struct's own names
) -> tuple[Room, Ref]:
    """Add an opening with a new id; ``fields`` are further fields of ``Opening``.

    Returns
    -------
    room, ref : Room, Ref
        The new room and where the opening stands.
    """
    return put_opening(room, wall_id, Opening(id="", width=width, height=height, **fields), at)


def remove(room: Room, ref: Ref) -> Room:
    """A room without what stands at ``ref``, and without any reference to it.

    The openings beside a removed one stay where they are: gaps that were measured from it are set anew. A treatment
    that covered only the removed opening goes with it; a panel that parked at the removed bracket parks at that
    end of the rod; a neighbour wall that is gone is no longer named.

    Raises
    ------
    NoSuch
        Nothing stands there.
    """
    old = room
    room = edit_at(room, ref, lambda _item: None)
    if len(ref) == 1:
        return _forget_wall(room, ref[0])
    if len(ref) == 2:
        before = wall_of(old, ref[0])
        return edit_at(room, ref[:1], lambda wall: _forget_opening(_kept(old, before, wall), ref[1]))
    if len(ref) == 5:
        return edit_at(room, ref[:4], lambda layer: _forget_bracket(layer, ref[4]))
    return room


def _forget_wall(room: Room, key: str) -> Room:
    walls = tuple(
        changed(
            wall,
            left=changed(wall.left, neighbour=None) if wall.left.neighbour == key else wall.left,
            right=changed(wall.right, neighbour=None) if wall.right.neighbour == key else wall.right,
        )
        for wall in room.walls
    )
    return changed(room, walls=walls)


def _forget_opening(wall: Wall, key: str) -> Wall:
    schemes = []
    for scheme in wall.schemes:
        kept = []
        for treatment in scheme.treatments:
            if key not in treatment.openings:
                kept.append(treatment)
                continue
            left = tuple(opening for opening in treatment.openings if opening != key)
            if left:
                kept.append(replace(treatment, openings=left))
        schemes.append(changed(scheme, treatments=tuple(kept)))
    return changed(wall, schemes=tuple(schemes))


def _forget_bracket(layer: Layer, key: str) -> Layer:
    parks = {f"left-of:{key}": "left", f"right-of:{key}": "right"}
    return changed(layer, panels=tuple(changed(panel, parks=parks.get(panel.parks, panel.parks)) for panel in layer.panels))


def duplicate_scheme(room: Room, wall_id: str, scheme_id: str, name: str) -> tuple[Room, Ref]:
    """Add a copy of a scheme under a new id and ``name``, right after the original.

    The copy shares the original's treatments until one of them is edited.

    Returns
    -------
    room, ref : Room, Ref
        The new room and where the copy stands.
    """
    wall = wall_of(room, wall_id)
    scheme = scheme_of(room, wall_id, scheme_id)
    assert scheme is not None  # an id was given
    copy = replace(scheme, id=new_id(children(wall), "s"), name=name)
    index = wall.schemes.index(scheme) + 1
    schemes = (*wall.schemes[:index], copy, *wall.schemes[index:])
    return replace_at(room, (wall_id,), schemes=schemes), (wall_id, copy.id)


def keep_scheme(room: Room, wall_id: str, scheme_id: str) -> Room:
    """A room in which that scheme is the only one of its wall; the same room where it is already.

    Raises
    ------
    NoSuch
        There is no such wall or scheme.
    """
    scheme = scheme_of(room, wall_id, scheme_id)
    return replace_at(room, (wall_id,), schemes=(scheme,))


def rename_scheme(room: Room, wall_id: str, scheme_id: str, name: str) -> Room:
    """A room in which that scheme is called ``name``; its id stays."""
    return replace_at(room, (wall_id, scheme_id), name=name)


def rename_wall(room: Room, wall_id: str, name: str) -> Room:
    """A room in which that wall is called ``name``; its id stays."""
    return replace_at(room, (wall_id,), name=name)
