"""Whether a room can be: numbers, ids, references; and whether its table rows exist.

``check_room`` holds for every room file and for every edit: a room that passes can be saved and read again.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from elevation.errors import said
from elevation.room.bounds import FAR_MM, Place, check_length
from elevation.room.check_corners import check_corners
from elevation.room.check_scheme import MOST_FIXING_KG, check_scheme
from elevation.room.check_wall import check_wall
from elevation.room.find import Item, children
from elevation.room.lent import check_sent
from elevation.room.model import Layer, Room, WallEnd
from elevation.room.nearest import advice, quoted
from elevation.trade.model import Trade
from elevation.trade.tables import OWN_PREFIX

MOST_WALLS = 200
MOST_ON_A_WALL = 500
"""More openings, obstacles or schemes than this on one wall are a damaged file, not a house."""

_KINDS = {"area": said("an area"), "ratio": said("a ratio"), "force": said("a force"), "mass": said("a mass")}
_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9_.-]{0,63}\Z")


def check_room(room: Room, name: str) -> None:
    """Refuse a room that cannot be.

    Parameters
    ----------
    room : Room
    name : str
        The file's name (or the room's), for sentences.

    Raises
    ------
    BadInput
        With the place of the first fault and what would be right.
    """
    place = Place(name)
    check_length(room.graduation, place.at("graduation"), 0.01, 100)
    check_length(room.floor_to_come, place.at("floor_to_come"), 0, 1000)
    if room.tug_kg is not None and not 0 <= room.tug_kg <= MOST_FIXING_KG:
        raise place.at("tug_kg").bad(
            said("is {holds_kg} kg", holds_kg=room.tug_kg), said("it must be 0 to {most}", most=MOST_FIXING_KG)
        )
    for key, value in room.limits.items():
        check_length(value, place.at("limits").at(key), 0, FAR_MM)
    if room.rows:
        check_sent(room, place)
    if not room.walls:
        raise place.at("walls").bad(said("is empty"), said("a room has at least one wall"))
    if len(room.walls) > MOST_WALLS:
        raise place.at("walls").bad(
            said("has {count} walls", count=len(room.walls)), said("a room has at most {most}", most=MOST_WALLS)
        )
    _check_ids((("walls", room.walls),), place)
    check_corners(room, place)
    for index, wall in enumerate(room.walls):
        here = place.item("walls", index)
        if len(children(wall)) > MOST_ON_A_WALL:
            raise here.bad(
                said("has {count} things on it", count=len(children(wall))),
                said("a wall has at most {most}", most=MOST_ON_A_WALL),
            )
        _check_ids(
            (("openings", wall.openings), ("obstacles", wall.obstacles), ("schemes", wall.schemes)),
            here,
        )
        check_wall(wall, here)
        _check_neighbour(wall.left, wall.id, room, here.at("left").at("neighbour"))
        _check_neighbour(wall.right, wall.id, room, here.at("right").at("neighbour"))
        for at, scheme in enumerate(wall.schemes):
            there = here.item("schemes", at)
            _check_ids((("treatments", scheme.treatments),), there)
            for nth, treatment in enumerate(scheme.treatments):
                deep = there.item("treatments", nth)
                _check_ids((("layers", treatment.layers),), deep)
                for layer_at, layer in enumerate(treatment.layers):
                    parts = (("brackets", layer.brackets), ("panels", layer.panels))
                    _check_ids(parts, deep.item("layers", layer_at))
            check_scheme(scheme, wall, there)


def _check_ids(groups: Iterable[tuple[str, tuple[Item, ...]]], place: Place) -> None:
    """Ids are plain words, unique among everything with the same parent."""
    seen: dict[str, str] = {}
    for key, items in groups:
        for index, item in enumerate(items):
            here = f"{key}[{index}]"
            if not _ID.match(item.id):
                raise (
                    place.at(here)
                    .at("id")
                    .bad(
                        said("is {value}", value=quoted(item.id)),
                        said("an id is a word of letters, figures, - and _, like w1, that starts with neither sign"),
                    )
                )
            if item.id in seen:
                raise (
                    place.at(here)
                    .at("id")
                    .bad(
                        said("is {value}, which {seen} has already", value=quoted(item.id), seen=seen[item.id]),
                        said("ids beside each other must differ"),
                    )
                )
            seen[item.id] = here


def _check_neighbour(end: WallEnd, own: str, room: Room, place: Place) -> None:
    if end.neighbour is None:
        return
    others = tuple(wall.id for wall in room.walls if wall.id != own)
    if end.neighbour not in others:
        wrong = (
            said("is this wall itself")
            if end.neighbour == own
            else said("is {value}, but no wall has that id", value=quoted(end.neighbour))
        )
        raise place.bad(wrong, advice(end.neighbour, others))


def check_rows(room: Room, trade: Trade, name: str) -> None:
    """Refuse a room that names a table row or a limit which the trade's tables do not hold.

    Parameters
    ----------
    room : Room
    trade : Trade
    name : str
        The file's name, for sentences.

    Raises
    ------
    BadInput
        With the place, and the nearest row's id.
    """
    place = Place(name)
    for key in room.limits:
        _check_row(key, trade.limits, place.at("limits"), said("limit"))
        if trade.limits[key].kind != "length":
            raise (
                place.at("limits")
                .at(key)
                .bad(
                    said("is a length, but this limit is {kind}", kind=_KINDS[trade.limits[key].kind]),
                    said("take it away; only lengths can be a room's own"),
                )
            )
    for key in room.rows.get("sections", ()):
        there = place.at("rows").at("sections").at(key).at("material")
        _check_row(trade.sections[key].material, trade.materials, there, said("material of the rod"))
    for index, wall in enumerate(room.walls):
        for at, scheme in enumerate(wall.schemes):
            for nth, treatment in enumerate(scheme.treatments):
                here = place.item("walls", index).item("schemes", at).item("treatments", nth)
                for layer_at, layer in enumerate(treatment.layers):
                    _check_layer_rows(layer, trade, here.item("layers", layer_at))


def _check_layer_rows(layer: Layer, trade: Trade, place: Place) -> None:
    rod = place.at("rod")
    _check_row(layer.rod.section, trade.sections, rod.at("section"), said("rod section"))
    if layer.rod.material is not None:
        _check_row(layer.rod.material, trade.materials, rod.at("material"), said("material of the rod"))
    for key in ("ends", "left_ends", "right_ends"):
        row = getattr(layer.rod, key)
        if row is not None:
            _check_row(row, trade.ends, rod.at(key), said("rod end"))
    for key in ("left_fixing", "right_fixing"):
        row = getattr(layer.rod, key)
        if row is not None:
            _check_row(row, trade.fixings, rod.at(key), said("fixing"))
    _check_row(layer.heading, trade.headings, place.at("heading"), said("heading"))
    for key, kind, name in (
        ("row", "face", said("cloth")),
        ("lining", "lining", said("lining")),
        ("interlining", "interlining", said("interlining")),
    ):
        row = getattr(layer.fabric, key)
        if row is not None:
            rows = {one.id: one for one in trade.fabrics.values() if one.kind == kind}
            _check_row(row, rows, place.at("fabric").at(key), name)
    for index, bracket in enumerate(layer.brackets):
        here = place.item("brackets", index)
        _check_row(bracket.kit, trade.brackets, here.at("kit"), said("bracket"))
        if bracket.fixing is not None:
            _check_row(bracket.fixing, trade.fixings, here.at("fixing"), said("fixing"))


def _check_row(key: str, rows: Mapping[str, object], place: Place, kind: str) -> None:
    if key not in rows and key.startswith(OWN_PREFIX):
        # Somebody's own row: only her tables hold it, and no other row here comes near.
        raise place.bad(
            said("is {key}, a row of somebody's own table of {kind}s", key=quoted(key), kind=kind),
            said("ask whoever made this room to save it again, or write another row's id"),
        )
    if key not in rows:
        raise place.bad(said("is {key}, but the tables hold no such {kind}", key=quoted(key), kind=kind), advice(key, rows))
