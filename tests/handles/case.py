"""One cell of the table of handles and reasons."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from elevation.room.find import item_at
from elevation.room.model import Ref, Room

Fact = Callable[[Room], Any]


def fact(path: str, *ref: str) -> Fact:
    """Reads ``path`` from what stands at ``ref``: ``rod.left.at`` of a layer."""

    def read(now: Room) -> Any:
        found: Any = item_at(now, ref)
        for name in path.split("."):
            found = found[int(name)] if name.isdigit() else getattr(found, name)
        return found

    return read


class Case(NamedTuple):
    """A drag, where it comes to rest, and what is then in the file.

    ``at_in`` is the place in inches along the axis; None: far beyond the hard limit that ``words`` names.
    ``words`` stand in the readout (one of them where several are given with a bar between).
    ``read`` takes the fact from the room that was read back; ``text`` is its text, or the fact itself.
    """

    id: str
    start: Room
    axis: str
    ref: Ref
    at_in: float | None
    words: str
    read: Fact | None
    text: object
    alone: bool = False
