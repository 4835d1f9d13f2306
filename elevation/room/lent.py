"""Rows of her own tables that a room names: it carries them, so that it opens wherever it is sent.

A row that the reader's own tables hold under the same id wins over the one that was sent: she may have corrected it.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from msgspec.structs import replace

from elevation.errors import BadInput, said
from elevation.room.bounds import Place
from elevation.room.model import Layer, Room
from elevation.trade.model import Trade
from elevation.trade.own import TABLES, table_named
from elevation.trade.tables import OWN_PREFIX
from elevation.trade.writing import cells_of, row_of_cells

MOST_ROWS = 200
"""More rows of one table than this are a damaged file, not a workshop."""

Sent = dict[str, dict[str, dict[str, str]]]


def trade_of(room: Room, trade: Trade) -> Trade:
    """The trade with the rows that a room carries and it lacks; the very same where it lacks none.

    Raises
    ------
    BadInput
        A row that the room carries cannot be read; a room that ``check_room`` passed has none.
    """
    lacking = {
        name: {key: given for key, given in rows.items() if key not in getattr(trade, name)}
        for name, rows in room.rows.items()
    }
    found = {
        name: {**getattr(trade, name), **{key: row_of_cells(table_named(name), key, given) for key, given in rows.items()}}
        for name, rows in lacking.items()
        if rows
    }
    return replace(trade, **found) if found else trade


def packed(room: Room, trade: Trade) -> Room:
    """A room that carries every row of somebody's own that it names; the same object where it does already.

    What it was sent with stays, named or not: a room that is opened and saved unchanged is the very same file.

    Parameters
    ----------
    room : Room
    trade : Trade
        Holds those rows: ``trade_of`` of the room.
    """
    if not room.rows and not _has_own(trade):
        return room
    rows: Sent = {name: dict(sent) for name, sent in room.rows.items()}
    for name, key in sorted(_with_their_own(set(_named(room)), trade)):
        rows.setdefault(name, {})[key] = cells_of(table_named(name), getattr(trade, name)[key])
    return room if rows == room.rows else replace(room, rows=rows)


def check_sent(room: Room, place: Place) -> None:
    """Refuse rows that cannot be read.

    Raises
    ------
    BadInput
        With the place of the cell and what would be right.
    """
    here = place.at("rows")
    names = {table.name for table in TABLES}
    for name, rows in room.rows.items():
        if name not in names:
            raise here.at(name).bad(said("is no table"), said("use {names}", names=", ".join(sorted(names))))
        if len(rows) > MOST_ROWS:
            raise here.at(name).bad(
                said("has {count} rows", count=len(rows)), said("a room carries at most {most}", most=MOST_ROWS)
            )
        for key, given in rows.items():
            if not key.startswith(OWN_PREFIX):
                raise (
                    here.at(name)
                    .at(key)
                    .bad(said("is no row of somebody's own"), said("such ids begin with {prefix}", prefix=OWN_PREFIX))
                )
            try:
                row_of_cells(table_named(name), key, given)
            except BadInput as trouble:
                raise here.at(name).at(key).at(trouble.where or "").bad(trouble.wrong, trouble.right) from None


@lru_cache(8)
def _own_of(ids: tuple[tuple[str, ...], ...]) -> bool:
    return any(key.startswith(OWN_PREFIX) for keys in ids for key in keys)


def _has_own(trade: Trade) -> bool:
    return _own_of(tuple(tuple(getattr(trade, table.name)) for table in TABLES))


def _named(room: Room) -> Iterator[tuple[str, str]]:
    for wall in room.walls:
        for scheme in wall.schemes:
            for treatment in scheme.treatments:
                for layer in treatment.layers:
                    for name, key in _of_layer(layer):
                        if key is not None and key.startswith(OWN_PREFIX):
                            yield name, key


def _of_layer(layer: Layer) -> Iterator[tuple[str, str | None]]:
    rod, fabric = layer.rod, layer.fabric
    yield "sections", rod.section
    yield "materials", rod.material
    yield from (("ends", key) for key in (rod.ends, rod.left_ends, rod.right_ends))
    yield from (("fixings", key) for key in (rod.left_fixing, rod.right_fixing))
    yield "headings", layer.heading
    yield "bodies", fabric.body
    yield from (("fabrics", key) for key in (fabric.row, fabric.lining, fabric.interlining))
    for bracket in layer.brackets:
        yield "brackets", bracket.kit
        yield "fixings", bracket.fixing


def _with_their_own(named: set[tuple[str, str]], trade: Trade) -> set[tuple[str, str]]:
    """With the rows that those rows name themselves: a section's material, the body that a cloth stacks like."""
    found = set(named)
    for name, key in named:
        row = getattr(trade, name)[key]
        other = ("materials", row.material) if name == "sections" else ("bodies", row.body) if name == "fabrics" else None
        if other is not None and other[1].startswith(OWN_PREFIX):
            found.add(other)
    return found
