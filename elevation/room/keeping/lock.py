"""Locks between processes: one writer a file, one owner a recovery.

The operating system holds the lock for the open file and lets go of it when the process ends, however it
ends. So a lock is never stale, and no process number has to be believed.
"""

from __future__ import annotations

import contextlib
import os
import sys
from pathlib import Path
from typing import BinaryIO

if sys.platform == "win32":
    import msvcrt

    def _take(stream: BinaryIO) -> None:
        stream.seek(0)
        msvcrt.locking(stream.fileno(), msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _take(stream: BinaryIO) -> None:
        fcntl.flock(stream.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)


class Lock:
    """A lock that this process holds until ``release`` (or its end).

    Parameters
    ----------
    path : Path
        The lock's file, which stays open while the lock is held.
    stream : file
        That file, locked.
    """

    def __init__(self, path: Path, stream: BinaryIO) -> None:
        self.path = path
        self._stream: BinaryIO | None = stream

    @property
    def is_held(self) -> bool:
        """Whether it is still held."""
        return self._stream is not None

    def is_in_place(self) -> bool:
        """Whether the name still leads to the file that is locked; if not, others see no lock."""
        return self._stream is not None and _is_same(self.path, self._stream)

    def release(self) -> None:
        """Let go and take the lock's file away; a second call does nothing."""
        if self._stream is None:
            return
        # Taken away while still locked: whoever opens the name from now on opens a new file. If somebody has cleaned
        # the folder out, the name may be another window's lock by now.
        if self.is_in_place():
            with contextlib.suppress(OSError):
                self.path.unlink()
        self._stream.close()
        self._stream = None


def take_lock(path: Path) -> Lock | None:
    """The lock at ``path``; None if somebody else (or another window of this process) holds it.

    Raises
    ------
    OSError
        The lock's file cannot be made, or the disk knows no locks.
    """
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    while True:
        stream = path.open("a+b")
        try:
            _take(stream)
        except (BlockingIOError, PermissionError):
            # Held by somebody: the first on POSIX, the second on Windows.
            stream.close()
            return None
        except OSError:
            # A disk that knows no locks is not the same as a lock that somebody holds.
            stream.close()
            raise
        if _is_same(path, stream):
            return Lock(path, stream)
        # Its last holder took the name away between our opening and our locking: lock the new one.
        stream.close()


def _is_same(path: Path, stream: BinaryIO) -> bool:
    try:
        return os.path.samestat(path.stat(), os.fstat(stream.fileno()))
    except OSError:
        return False


def lock_room(room_path: Path | str, state: Path) -> Lock | None:
    """The right to write one room file; None if another window has it, which makes this one read-only.

    The lock stands in the state folder, so that nothing appears beside the room and a room in a read-only
    folder can be looked at. Windows of one person on one machine see each other's locks.

    Parameters
    ----------
    room_path : Path or str
        The room file; links are followed, so two names of one file are one lock.
    state : Path
        The state folder.

    Raises
    ------
    OSError
        The lock's file cannot be made.
    """
    import hashlib  # Loaded with the first file of one's own: a demo room is shown without it.

    real = os.path.realpath(room_path)
    key = hashlib.sha256(os.fsencode(real)).hexdigest()[:32]
    return take_lock(state / "locks" / f"{key}.lock")
