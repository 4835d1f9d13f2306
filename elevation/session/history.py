"""What was done: a list of rooms with what made each, and where we stand in it."""

from __future__ import annotations

from msgspec import Struct

from elevation.room.model import Ref, Room
from elevation.words import Message, msg


class Entry(Struct, frozen=True):
    """A room, the name of the edit that made it, and what that edit was about."""

    room: Room
    label: Message
    ref: Ref = ()


class History:
    """Rooms in the order in which they came to be, and an index into them.

    There is no second truth: the present room is the entry at the index.
    """

    def __init__(self, room: Room) -> None:
        self._entries = [Entry(room, msg("Open"))]
        self._index = 0

    @property
    def room(self) -> Room:
        """The room as it stands now."""
        return self._entries[self._index].room

    @property
    def entry(self) -> Entry:
        """The entry we stand at."""
        return self._entries[self._index]

    @property
    def before(self) -> Entry | None:
        """The entry that one step back leads to; None at the start."""
        return self._entries[self._index - 1] if self._index else None

    @property
    def after(self) -> Entry | None:
        """The entry that one step forward leads to; None at the end."""
        following = self._index + 1
        return self._entries[following] if following < len(self._entries) else None

    def __len__(self) -> int:
        return len(self._entries)

    def push(self, room: Room, label: Message, ref: Ref = ()) -> None:
        """Stand at a new entry; what could have been redone is gone."""
        del self._entries[self._index + 1 :]
        self._entries.append(Entry(room, label, ref))
        self._index += 1

    def replace(self, room: Room) -> None:
        """Let the present entry lead to another room: the same edit, gone on with."""
        del self._entries[self._index + 1 :]
        entry = self._entries[self._index]
        self._entries[self._index] = Entry(room, entry.label, entry.ref)

    def drop(self) -> None:
        """Forget the present entry, because its edit came back to where it started."""
        if self._index:
            del self._entries[self._index :]
            self._index -= 1

    def back(self) -> Entry | None:
        """Step back; returns the entry that was undone, None at the start."""
        if not self._index:
            return None
        undone = self._entries[self._index]
        self._index -= 1
        return undone

    def forward(self) -> Entry | None:
        """Step forward; returns the entry that was redone, None at the end."""
        redone = self.after
        if redone is not None:
            self._index += 1
        return redone
