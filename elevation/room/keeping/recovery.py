"""Recovery files: the last committed edit of every open window, offered again after a crash.

Each window keeps ``autosave/ID.room.json`` (the room's own bytes, which can be opened like any room),
``autosave/ID.about.json`` (which file it belongs to) and the lock ``autosave/ID.lock`` in the state folder.
What a living window owns is locked and never offered.
"""

from __future__ import annotations

import contextlib
import json
import uuid
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from msgspec import Struct

from elevation.errors import BadInput
from elevation.room.file import dump_room, load_room
from elevation.room.keeping.atomic import sweep_temporaries, write_atomically
from elevation.room.keeping.lock import Lock, take_lock
from elevation.room.keeping.reading import read_bytes
from elevation.room.model import Room

_FOLDER = "autosave"
_ROOM = ".room.json"
_ABOUT = ".about.json"
_LOCK = ".lock"
_MOST_ABOUT = 64 * 1024


class Recovery:
    """The recovery file of one open window.

    Parameters
    ----------
    folder : Path
        The folder that holds the recoveries.
    key : str
        This one's id.
    lock : Lock
        Its lock, held.
    """

    def __init__(self, folder: Path, key: str, lock: Lock) -> None:
        self._folder = folder
        self._lock = lock
        self.key = key

    @property
    def room_path(self) -> Path:
        """Where the room's bytes are."""
        return self._folder / f"{self.key}{_ROOM}"

    @property
    def about_path(self) -> Path:
        """Where it is said what they belong to."""
        return self._folder / f"{self.key}{_ABOUT}"

    def is_there(self) -> bool:
        """Whether its lock still stands in the state folder; not where somebody has cleaned that out."""
        return self._lock.is_in_place()

    def keep(self, room: Room, path: Path | str | None, before: str | None = None) -> None:
        """Store a committed edit.

        Parameters
        ----------
        room : Room
        path : Path, str or None
            The file it belongs to; None for a room that was never saved.
        before : str or None
            Fingerprint of that file as it was last read or written.

        Raises
        ------
        BadOutput
            It cannot be stored; the one stored before is still there.
        """
        about = {
            "format": "elevation-recovery",
            "version": 1,
            "path": None if path is None else str(Path(path).absolute()),
            "fingerprint": before,
            "kept": datetime.now(UTC).isoformat(timespec="seconds"),
        }
        # First what it belongs to: a room without that would have lost its name in a crash between the two.
        write_atomically(self.about_path, (json.dumps(about, indent=2) + "\n").encode())
        write_atomically(self.room_path, dump_room(room))

    def clear(self) -> None:
        """Forget what was kept: it is saved, or given up. The window may keep more later."""
        _remove(self.room_path, self.about_path)

    def close(self) -> None:
        """The window closes in good order: forget everything and let go."""
        self.clear()
        self._lock.release()

    def abandon(self) -> None:
        """Let go but leave what was kept, as a crash would: it is offered at the next start."""
        self._lock.release()


def begin_recovery(state: Path) -> Recovery:
    """A recovery for a window that opens.

    Raises
    ------
    OSError
        The state folder cannot be written.
    """
    folder = state / _FOLDER
    sweep_temporaries(folder)
    while True:
        key = uuid.uuid4().hex
        lock = take_lock(folder / f"{key}{_LOCK}")
        if lock is not None:
            return Recovery(folder, key, lock)


class Orphan(Struct, frozen=True):
    """What a window that crashed left behind.

    Attributes
    ----------
    folder : Path
    key : str
    path : str or None
        The file it belongs to; None for a room that was never saved, or where that is not known.
    fingerprint : str or None
        Of that file when the window last read or wrote it.
    kept : str
        When, in ISO 8601 (UTC); empty where that is not known.
    """

    folder: Path
    key: str
    path: str | None
    fingerprint: str | None
    kept: str

    @property
    def room_path(self) -> Path:
        """Where the room's bytes are."""
        return self.folder / f"{self.key}{_ROOM}"

    def load(self) -> Room:
        """The room that was kept.

        Raises
        ------
        BadInput
            It is damaged or gone.
        """
        return load_room(self.room_path)

    def take(self) -> Recovery | None:
        """Own it from now on, so that no other window offers it; None if another one was faster."""
        lock = take_lock(self.folder / f"{self.key}{_LOCK}")
        if lock is None:
            return None
        if not self.room_path.exists():
            lock.release()
            return None
        return Recovery(self.folder, self.key, lock)

    def discard(self) -> None:
        """Give it up for good (unless another window has taken it)."""
        taken = self.take()
        if taken is not None:
            taken.close()


def orphans(state: Path) -> tuple[Orphan, ...]:
    """What can be offered: recoveries whose window is gone, newest first.

    What says the same as its file is no loss (the crash came between saving and forgetting) and is forgotten here.

    Parameters
    ----------
    state : Path
        The state folder.
    """
    folder = state / _FOLDER
    found = []
    try:
        rooms = sorted(folder.glob(f"*{_ROOM}"))
    except OSError:
        return ()
    for room in rooms:
        key = room.name.removesuffix(_ROOM)
        if _is_free(folder / f"{key}{_LOCK}"):
            about = _about(folder / f"{key}{_ABOUT}")
            path, mark, kept = about.get("path"), about.get("fingerprint"), about.get("kept")
            orphan = Orphan(
                folder,
                key,
                path if isinstance(path, str) else None,
                mark if isinstance(mark, str) else None,
                kept if isinstance(kept, str) else "",
            )
            if _is_saved(orphan):
                orphan.discard()
            else:
                found.append(orphan)
    return tuple(sorted(found, key=lambda orphan: orphan.kept, reverse=True))


def _is_saved(orphan: Orphan) -> bool:
    if orphan.path is None:
        return False
    try:
        return orphan.load() == load_room(orphan.path)
    except BadInput:
        return False


def _is_free(lock_path: Path) -> bool:
    try:
        lock = take_lock(lock_path)
    except OSError:
        return False
    if lock is None:
        return False
    lock.release()
    return True


def _about(path: Path) -> dict[str, Any]:
    """What is said about a recovery; nothing where that is damaged: the room itself may still be whole."""
    try:
        value = json.loads(read_bytes(path, _MOST_ABOUT))
    except (BadInput, ValueError, RecursionError):
        return {}
    return value if isinstance(value, dict) else {}


def _remove(*paths: Path) -> None:
    for path in paths:
        with contextlib.suppress(OSError):
            path.unlink()
