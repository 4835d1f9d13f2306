"""Arrow keys: a handle goes on by whole graduations, and one burst of them is one edit."""

from __future__ import annotations

from collections.abc import Callable

from elevation.handles.model import Handle
from elevation.handles.sticking import landing_mm
from elevation.room.model import Ref, Room

TOGETHER_S = 1.0
"""Nudges of one handle that follow each other within this many seconds are one edit."""


class Nudging:
    """Remembers which handle was nudged last, and when."""

    def __init__(self, clock: Callable[[], float]) -> None:
        self._clock = clock
        self._last: tuple[str, Ref] | None = None
        self._at_s = 0.0

    def forget(self) -> None:
        """Something else happened: the next nudge is an edit of its own."""
        self._last = None

    def goes_on(self, key: tuple[str, Ref]) -> bool:
        """Whether this nudge belongs to the same burst as the one before; it is remembered either way."""
        now_s = self._clock()
        same = self._last == key and now_s - self._at_s <= TOGETHER_S
        self._last, self._at_s = key, now_s
        return same

    def step(self, handle: Handle, room: Room, steps: int, alone: bool) -> Room:
        """The room with ``handle`` moved by ``steps`` graduations, kept within its range."""
        graduation_mm = room.graduation_mm
        wanted_mm = handle.value_mm + steps * graduation_mm
        return handle.move(room, landing_mm(handle, wanted_mm, graduation_mm), alone)
