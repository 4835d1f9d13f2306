"""Rows of somebody's own that a room carries: made from the program's tables, mutated, and named in the room."""

from __future__ import annotations

import copy
import json
import random
from typing import Any

from elevation.trade.model import Trade
from elevation.trade.own import TABLES
from elevation.trade.tables import OWN_PREFIX
from elevation.trade.writing import cells_of
from tests.fuzz.mutate import Pool, odd_or_other, spots

NAMED_AT = {
    "headings": ("heading",), "fabrics": ("row", "lining", "interlining"), "sections": ("section",),
    "materials": ("material",), "brackets": ("kit",), "ends": ("ends", "left_ends", "right_ends"),
    "fixings": ("fixing", "left_fixing", "right_fixing"),
}  # fmt: skip
"""Keys of a room's layers and brackets that name a row of each table."""

NAMED_BY = {"materials": ("sections", "material")}
"""Tables whose rows are named by rows of another one, and the column that does it."""


class Carried:
    """Good rows of every table as cells, to be mutated and sent with a room.

    Parameters
    ----------
    trade : Trade
    """

    def __init__(self, trade: Trade) -> None:
        self.cells = {table.name: [cells_of(table, row) for row in getattr(trade, table.name).values()] for table in TABLES}
        self.pool = Pool([{"rows": rows} for rows in self.cells.values()])

    def mutate(self, data: bytes, rng: random.Random, changes: int) -> bytes:
        """``data`` with rows that it carries and names, of whose cells so many are changed."""
        room = json.loads(data)
        sent = room.get("rows")
        sent = room["rows"] = sent if isinstance(sent, dict) else {}
        for number in range(rng.choice((1, 1, 2, 5))):
            table = rng.choice(TABLES)
            key = f"{OWN_PREFIX}{number}"
            self._send(room, sent, table.name, key, rng)
            if table.name in NAMED_BY:
                other, title = NAMED_BY[table.name]
                self._send(room, sent, other, f"{key}-by", rng)
                sent[other][f"{key}-by"][title] = key
        if rng.random() < 0.02:
            # More than a workshop has: the cap on rows of one table.
            table = rng.choice(TABLES)
            rows = sent.setdefault(table.name, {})
            rows.update({f"{OWN_PREFIX}many{count}": self._row(table.name, rng) for count in range(rng.choice((190, 400)))})
        for _ in range(changes):
            places = [(holder, key) for holder, key in spots(sent) if holder]
            holder, key = rng.choice(places)
            odd_or_other(holder, key, self.pool, rng)
            if not isinstance(sent, dict) or not sent:
                break
        return json.dumps(room).encode("utf-8", "surrogatepass")

    def _row(self, name: str, rng: random.Random) -> dict[str, str]:
        """One row, or a child of two: each cell from either."""
        first, second = rng.choice(self.cells[name]), rng.choice(self.cells[name])
        if rng.random() < 0.5:
            return copy.deepcopy(first)
        return {title: rng.choice((first, second))[title] for title in first}

    def _send(self, room: Any, sent: Any, name: str, key: str, rng: random.Random) -> None:
        """One more row under that key, named in the room."""
        sent.setdefault(name, {})[key] = self._row(name, rng)
        self._name(room, name, key, rng)

    def _name(self, room: Any, name: str, key: str, rng: random.Random) -> None:
        """Let the room name the row wherever it names one of that table, and where it could."""
        for holder, at in list(spots(room.get("walls", []))):
            if (
                isinstance(holder, dict)
                and at in NAMED_AT.get(name, ())
                and isinstance(holder[at], str)
                and rng.random() < 0.8
            ):
                holder[at] = key
