"""How a wall ends, as rows of a form: corner or open, which wall stands there, at what angle."""

from __future__ import annotations

from functools import partial
from math import isfinite
from typing import Any, Literal

from elevation.errors import BadInput, said
from elevation.room import joining
from elevation.room.find import wall_of
from elevation.room.model import Ref, Room, Wall
from elevation.room.validate import check_room
from elevation.window.fact_form import Fact
from elevation.window.texts import tr
from elevation.words import Message, msg

Side = Literal["left", "right"]
KINDS = {"corner": msg("a corner"), "open": msg("open")}
_NAMES: dict[Side, tuple[Message, Message, Message]] = {
    "left": (msg("left end"), msg("wall round the left corner"), msg("left corner, inside degrees")),
    "right": (msg("right end"), msg("wall round the right corner"), msg("right corner, inside degrees")),
}


def end_facts(room: Room, wall: Wall) -> tuple[Fact, ...]:
    """The rows of both ends; what only a corner has is asked only there."""
    return (*_end(room, wall, "left"), *_end(room, wall, "right"))


def _end(room: Room, wall: Wall, side: Side) -> tuple[Fact, ...]:
    ref: Ref = (wall.id,)
    kind, neighbour, angle = _NAMES[side]
    kinds = tuple((key, tr(text)) for key, text in KINDS.items())
    facts = [Fact(ref, f"{side}.kind", kind, "choice", kinds)]
    if getattr(wall, side).kind != "corner":
        return tuple(facts)
    others = tuple(
        (other.id, tr(msg("{number}  {name}", number=number, name=other.name or tr(msg("Wall")))))
        for number, other in enumerate(room.walls, 1)
        if other.id != wall.id
    )
    if others:
        options = (("", tr(msg("not drawn here"))), *others)
        put = partial(put_neighbour, ref, side)
        facts.append(Fact(ref, f"{side}.neighbour", neighbour, "choice", options, edit=put))
    facts.append(
        Fact(ref, f"{side}.angle", angle, "count", edit=partial(put_angle, ref, side), read=partial(angle_of, ref, side))
    )
    return tuple(facts)


def put_neighbour(ref: Ref, side: Side, room: Room, key: Any) -> Room:
    """A room in which another wall, or none, stands round that corner."""
    return _checked(joining.put_neighbour(room, ref[0], side, key or None))


def angle_of(ref: Ref, side: Side, room: Room) -> str:
    """The inside angle in degrees, as it is written."""
    return f"{getattr(wall_of(room, ref[0]), side).angle:g}"


def put_angle(ref: Ref, side: Side, room: Room, text: Any) -> Room:
    """A room with another inside angle at that corner, in degrees.

    Raises
    ------
    BadInput
        The text is no number, or no corner can have it.
    """
    try:
        angle = float(str(text).strip().rstrip("°").replace(",", "."))
    except ValueError:
        angle = float("nan")
    if not isfinite(angle):
        raise BadInput("", "", said('"{text}" is not an angle', text=text), said("write for example 90"))
    return _checked(joining.put_angle(room, ref[0], side, angle))


def _checked(room: Room) -> Room:
    check_room(room, "")
    return room
