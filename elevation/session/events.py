"""Plain listeners: who wants to know is called, in the order in which they asked."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

Event = Literal["room", "selection", "view", "path"]
"""What has changed: the room shown; what is selected; the wall or scheme shown; file, lock or modified flag."""

Listener = Callable[[Event], None]


class Listeners:
    """A list of callables that are told of events.

    Listeners are held until they are disconnected; whoever connects, disconnects.
    """

    def __init__(self) -> None:
        self._listeners: list[Listener] = []

    def connect(self, listener: Listener) -> None:
        """Call ``listener(event)`` from now on; connecting it twice is the same as once."""
        if listener not in self._listeners:
            self._listeners.append(listener)

    def disconnect(self, listener: Listener) -> None:
        """Stop calling ``listener``; one that was never connected is ignored."""
        if listener in self._listeners:
            self._listeners.remove(listener)

    def emit(self, event: Event) -> None:
        """Tell everyone who was connected when the event happened."""
        # A copy, because a listener may disconnect itself while it is being told.
        for listener in tuple(self._listeners):
            listener(event)

    def __len__(self) -> int:
        return len(self._listeners)
