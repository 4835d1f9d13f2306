"""Mutators: bytes of a room or a table in, other bytes out; the same seed makes the same bytes."""

from __future__ import annotations

import copy
import json
import random
from collections.abc import Callable, Iterator
from typing import Any

from tests.fuzz.odd import NUMBERS, TEXTS, TOKENS

Spot = tuple[Any, Any]
"""A dict or list, and the key or index in it."""


class Pool:
    """What stands at each key in rooms that are fine, to be planted where it does not belong.

    Parameters
    ----------
    rooms : list of dict
        JSON objects of good rooms.
    """

    def __init__(self, rooms: list[dict[str, Any]]) -> None:
        self.values: dict[str, list[Any]] = {}
        for room in rooms:
            for holder, key in spots(room):
                if isinstance(holder, dict):
                    self.values.setdefault(key, []).append(holder[key])
        self.keys = sorted(self.values)


def spots(value: Any) -> Iterator[Spot]:
    """Every place inside a JSON value."""
    if isinstance(value, dict):
        for key in list(value):
            yield value, key
            yield from spots(value[key])
    elif isinstance(value, list):
        for index in range(len(value)):
            yield value, index
            yield from spots(value[index])


def mutate_bytes(data: bytes, other: bytes, rng: random.Random, changes: int) -> bytes:
    """``data`` with some bytes flipped, cut, doubled, spliced with ``other`` or with a piece put in."""
    made = bytearray(data)
    for _ in range(changes):
        at = rng.randrange(len(made) + 1)
        far = min(len(made), at + rng.choice((1, 2, 8, 60, 600)))
        kind = rng.randrange(7)
        if kind == 0 and at < len(made):
            made[at] ^= 1 << rng.randrange(8)
        elif kind == 1 and at < len(made):
            made[at] = rng.randrange(256)
        elif kind == 2:
            del made[at:far]
        elif kind == 3:
            made[at:at] = made[at:far] * rng.choice((1, 1, 3))
        elif kind == 4:
            start = rng.randrange(len(other))
            made[at:far] = other[start : start + rng.choice((4, 40, 400))]
        elif kind == 5:
            made[at:at] = rng.choice(TOKENS)
        else:
            del made[rng.choice((at, len(made) - 1 - at % 40)) :]
    return bytes(made)


def mutate_room(data: bytes, pool: Pool, rng: random.Random, changes: int) -> bytes:
    """``data`` with values replaced, moved, scaled, doubled or left out: still JSON, often still a room."""
    room = json.loads(data)
    for _ in range(changes):
        places = list(spots(room))
        holder, key = rng.choice(places) if places else (room, "walls")
        rng.choice(_CHANGES)(holder, key, pool, rng)
    return json.dumps(room, ensure_ascii=rng.random() < 0.5).encode("utf-8", "surrogatepass")


def _odd(holder: Any, key: Any, _pool: Pool, rng: random.Random) -> None:
    kind = rng.randrange(4)
    if kind == 0:
        holder[key] = rng.choice(TEXTS)
    elif kind == 1:
        holder[key] = rng.choice(NUMBERS)
    elif kind == 2:
        holder[key] = rng.choice((None, True, False, [], {}, [[]], {"id": "x"}))
    else:
        holder[key] = [holder[key]]


def _planted(holder: Any, key: Any, pool: Pool, rng: random.Random) -> None:
    """Something that stands at the same key elsewhere, or now and then at another one."""
    wanted = key if key in pool.values and rng.random() < 0.9 else rng.choice(pool.keys)
    holder[key] = copy.deepcopy(rng.choice(pool.values[wanted]))


def _scaled(holder: Any, key: Any, _pool: Pool, rng: random.Random) -> None:
    """A length or number made longer, shorter or negative."""
    value = holder[key]
    if isinstance(value, str) and value[:1].isdigit():
        figure, _, unit = value.partition(" ")
        try:
            held = float(figure)
        except ValueError:
            return
        holder[key] = f"{held * rng.choice((0, 0.01, 0.5, 0.99, 1.01, 2, 10, 1000, -1)):.10g} {unit or 'mm'}"
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        holder[key] = value * rng.choice((0, 2, -1, 100, 1000))


def _left_out(holder: Any, key: Any, _pool: Pool, _rng: random.Random) -> None:
    del holder[key]


def _doubled(holder: Any, key: Any, _pool: Pool, rng: random.Random) -> None:
    """One more of a list's members, most often under an id of its own."""
    if not isinstance(holder, list):
        return
    made = copy.deepcopy(holder[key])
    if isinstance(made, dict) and "id" in made and rng.random() < 0.8:
        made["id"] = f"n{rng.randrange(10_000)}"
    holder.insert(rng.randrange(len(holder) + 1), made)


def _many(holder: Any, key: Any, _pool: Pool, rng: random.Random) -> None:
    if isinstance(holder, list) and rng.random() < 0.2:
        holder.extend(copy.deepcopy(holder[key]) for _ in range(rng.choice((20, 300, 3000))))


def _swapped(holder: Any, key: Any, _pool: Pool, rng: random.Random) -> None:
    other = rng.choice(list(holder) if isinstance(holder, dict) else range(len(holder)))
    holder[key], holder[other] = holder[other], holder[key]


def _added(holder: Any, _key: Any, pool: Pool, rng: random.Random) -> None:
    if isinstance(holder, dict):
        name = rng.choice(pool.keys)
        holder[name] = copy.deepcopy(rng.choice(pool.values[name]))


_CHANGES: tuple[Callable[[Any, Any, Pool, random.Random], None], ...] = (
    _odd,
    _planted,
    _planted,
    _planted,
    _scaled,
    _scaled,
    _scaled,
    _left_out,
    _doubled,
    _many,
    _swapped,
    _added,
)


def odd_or_other(holder: Any, key: Any, pool: Pool, rng: random.Random) -> None:
    """One change to what stands at a place: a cell scaled, taken from elsewhere, odd, left out or swapped."""
    rng.choice((_scaled, _scaled, _scaled, _planted, _planted, _odd, _left_out, _swapped))(holder, key, pool, rng)


def mutate_table(content: str, rng: random.Random, changes: int) -> bytes:
    """A table with cells replaced, moved between rows, scaled, left out or doubled."""
    rows = [line.split(",") for line in content.splitlines() if line.strip() and not line.startswith("#")]
    for _ in range(changes):
        row = rng.choice(rows)
        at = rng.randrange(len(row))
        other = rng.choice(rows)
        kind = rng.randrange(7)
        if kind == 0:
            row[at] = rng.choice(TEXTS)
        elif kind == 1 and at < len(other):
            row[at] = other[at]
        elif kind == 2:
            row[at] = str(rng.choice(NUMBERS))
        elif kind == 3:
            holder = {"cell": row[at].strip()}
            _scaled(holder, "cell", None, rng)  # type: ignore[arg-type]
            row[at] = str(holder["cell"])
        elif kind == 4:
            del row[at]
            row = row or [""]
        elif kind == 5:
            rows.append(["my-" + row[0], *row[1:]])
        else:
            row.insert(at, rng.choice(('"', "x", "1 in", "\x00")))
    whole = "\n".join(",".join(row) for row in rows).encode("utf-8", "surrogatepass")
    return mutate_bytes(whole, whole, rng, 1) if rng.random() < 0.2 else whole
