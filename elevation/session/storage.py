"""Where the room is kept: its file, the lock on it, what was last saved, and the recovery after a crash."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path
from threading import Event

from elevation.errors import BadOutput, ElevationError, said
from elevation.room.file import dump_room, load_bytes, save_room
from elevation.room.keeping.fingerprint import fingerprint, has_changed, of_bytes
from elevation.room.keeping.lock import Lock, lock_room
from elevation.room.keeping.reading import read_bytes
from elevation.room.keeping.recovery import Orphan, Recovery, begin_recovery, orphans
from elevation.room.lent import packed, trade_of
from elevation.room.model import Room
from elevation.room.raw_json import MOST_BYTES
from elevation.room.validate import check_rows
from elevation.session.worker import Done, Worker
from elevation.trade.model import Trade

_AUTOSAVE = "autosave"


class ChangedOnDisk(BadOutput):
    """The file was changed by someone else since it was read: ask before writing over it."""


class Storage:
    """The file side of a session.

    Parameters
    ----------
    room : Room
    path : Path or None
        The file that ``room`` was just read from.
    state : Path or None
        The state folder, for locks and recovery files; None keeps neither.
    worker : Worker
        Writes the recovery files.
    trade : Trade
        Its tables hold the rows that a room may name.

    Attributes
    ----------
    path : Path or None
    is_read_only : bool
        Another window works on the same file, so that this one may only look (or save under another name).
    trouble : ElevationError or OSError or None
        Why the last edit could not be kept for recovery.
    """

    def __init__(self, room: Room, path: Path | None, state: Path | None, worker: Worker, trade: Trade) -> None:
        self.path: Path | None = None
        self.is_read_only = False
        self.trouble: ElevationError | OSError | None = None
        self._state = state
        self._worker = worker
        self._trade = trade
        self._recovery: Recovery | None = None
        self._lock: Lock | None = None
        self._start = room
        self._saved: Room | None = room
        self._fingerprint: str | None = None
        self._compared: tuple[Room, bool] | None = None
        if path is not None:
            self._settle(path, *self._locked(path), fingerprint(path))

    def differs(self, room: Room) -> bool:
        """Whether the bytes of ``room`` differ from what is saved; a new room that was never saved does."""
        if room is self._saved:
            return False
        if self._saved is None:
            return True
        if self._compared is None or self._compared[0] is not room:
            self._compared = (room, self._dumped(room) != self._dumped(self._saved))
        return self._compared[1]

    def is_changed_on_disk(self) -> bool:
        """Whether the file no longer says what it said when it was read or written here."""
        return self.path is not None and has_changed(self.path, self._fingerprint)

    def take_trade(self, trade: Trade) -> None:
        """Check rooms that are read against other tables."""
        self._trade = trade

    def open(self, path: Path) -> Room:
        """Read another file and make it this session's.

        Raises
        ------
        BadInput
            It cannot be read, is no room or names what the tables do not hold; the old file stays this session's.
        """
        data = read_bytes(path, MOST_BYTES)
        room = load_bytes(data, str(path))
        check_rows(room, trade_of(room, self._trade), str(path))
        lock, is_read_only = self._locked(path)
        self._forget_recovery()
        self._settle(path, lock, is_read_only, of_bytes(data))
        self._become(room, room)
        return room

    def reread(self) -> Room:
        """The room as its file has it now; without a file, as it was at the start.

        Raises
        ------
        BadInput
            The file cannot be read any more.
        """
        if self.path is not None:
            return self.open(self.path)
        self._forget_recovery()
        return self._start

    def begin(self, room: Room) -> None:
        """Let go of the file: ``room`` is new and saved nowhere."""
        self._forget_recovery()
        self._release()
        self.path, self.is_read_only, self._fingerprint = None, False, None
        self._become(room, None)
        self.autosave(room)

    def save(self, room: Room, path: Path | None = None, *, overwrite: bool = False) -> None:
        """Write ``room``, wholly or not at all; an unchanged one leaves its file alone.

        Raises
        ------
        ChangedOnDisk
            Somebody else changed the file, and ``overwrite`` was not given.
        BadOutput
            There is no path, it cannot be written, or another window works on it.
        """
        target = path if path is not None else self.path
        if target is None:
            raise BadOutput(said("this room"), "", said("is in no file yet"), said("choose a name for it"))
        self._keep_before_saving(room, target)
        written = self._packed(room)
        try:
            held = self._save_own(written, target, overwrite) if self._is_own(target) else self._save_as(written, target)
        except ElevationError:
            # The recovery speaks of the file it was to be saved in: say again where it belongs.
            self.autosave(room)
            raise
        # Of what was written, not of what is there by now: somebody else's change in between must be seen.
        self._fingerprint = of_bytes(held)
        self._become(room, room)
        # Not left to the worker: once this returns, a crash must offer nothing older than the file.
        self._worker.settle(_AUTOSAVE)
        if self._recovery is not None:
            self._recovery.clear()

    def autosave(self, room: Room) -> None:
        """Keep ``room`` for recovery on the worker's thread; forget what was kept if it is saved anyway."""
        if self._state is None:
            return
        if not self.differs(room):
            self._forget_recovery()
            return
        path, mark = self.path, self._fingerprint

        def keep(cancelled: Event) -> None:
            if not cancelled.is_set():
                self._own_recovery().keep(self._packed(room), path, mark)

        self._worker.submit(_AUTOSAVE, keep, self._kept)

    def orphans(self) -> tuple[Orphan, ...]:
        """What windows that crashed have left, newest first."""
        return () if self._state is None else orphans(self._state)

    def recover(self, orphan: Orphan) -> Room:
        """Go on with what a crashed window left; it counts as not saved.

        Raises
        ------
        BadInput
            It is damaged or gone.
        BadOutput
            Another window has taken it.
        """
        room = orphan.load()
        check_rows(room, trade_of(room, self._trade), room.name or "this recovery")
        taken = orphan.take()
        if taken is None:
            raise BadOutput(said("this recovery"), "", said("has been taken by another window"), said("go on there"))
        path = None if orphan.path is None else Path(orphan.path)
        lock, is_read_only = (None, False) if path is None else self._locked(path)
        self._close_recovery()
        self._recovery = taken
        self._settle(path, lock, is_read_only, orphan.fingerprint)
        self._become(room, self._read_quietly(path))
        return room

    def close(self) -> None:
        """The window closes in good order: forget the recovery and let go of the file."""
        self._close_recovery()
        self._release()

    def _packed(self, room: Room) -> Room:
        """The room as it is written: with the rows of somebody's own that it names."""
        return packed(room, trade_of(room, self._trade))

    def _dumped(self, room: Room) -> bytes:
        return dump_room(self._packed(room))

    # -- parts -------------------------------------------------------------------

    def _keep_before_saving(self, room: Room, target: Path) -> None:
        """Let the recovery hold what is about to be saved.

        Else a crash after the file is written and before the recovery is forgotten would offer an edit that is older
        than the file. What the recovery holds and the file says already is never offered.
        """
        if self._state is None or not self.differs(room):
            return
        self._worker.settle(_AUTOSAVE)
        # A full state folder is no reason not to save.
        with contextlib.suppress(ElevationError, OSError):
            self._own_recovery().keep(
                self._packed(room), target, self._fingerprint if self._is_own(target) else fingerprint(target)
            )

    def _save_own(self, room: Room, target: Path, overwrite: bool) -> bytes:
        if self.is_read_only:
            raise BadOutput(str(target), "", said("is open in another window"), said("save under another name"))
        if not overwrite and self._fingerprint is not None and self.is_changed_on_disk():
            raise ChangedOnDisk(str(target), "", "was changed by another program", "read it again, or write over it")
        return save_room(room, target)

    def _save_as(self, room: Room, target: Path) -> bytes:
        lock, is_taken = self._locked(target)
        if is_taken:
            raise BadOutput(str(target), "", said("is open in another window"), said("choose another name"))
        try:
            held = save_room(room, target)
        except ElevationError:
            if lock is not None:
                lock.release()
            raise
        self._settle(target, lock, False, None)
        return held

    def _locked(self, path: Path) -> tuple[Lock | None, bool]:
        """The lock on ``path``, and whether somebody else has it.

        Also asked for a file that is shown read-only: the other window may be gone by now.
        """
        if self._lock is not None and self._is_own(path):
            return self._lock, False
        if self._state is None:
            return None, False
        try:
            lock = lock_room(path, self._state)
        except OSError:
            # No state folder to write in: work goes on without the guard rather than not at all.
            return None, False
        return lock, lock is None

    def _settle(self, path: Path | None, lock: Lock | None, is_read_only: bool, mark: str | None) -> None:
        if lock is not self._lock:
            self._release()
        self.path, self._lock, self.is_read_only, self._fingerprint = path, lock, is_read_only, mark

    def _become(self, room: Room, saved: Room | None) -> None:
        self._start, self._saved, self._compared = room, saved, None

    def _is_own(self, path: Path) -> bool:
        return self.path is not None and os.path.realpath(path) == os.path.realpath(self.path)

    def _release(self) -> None:
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def _read_quietly(self, path: Path | None) -> Room | None:
        if path is None:
            return None
        with contextlib.suppress(ElevationError):
            return load_bytes(read_bytes(path, MOST_BYTES), str(path))
        return None

    # -- recovery, on the worker's thread or while no job of its kind runs ------------

    def _own_recovery(self) -> Recovery:
        if self._recovery is not None and not self._recovery.is_there():
            # The state folder was cleaned out under us: begin anew rather than keep nothing from now on.
            self._recovery.abandon()
            self._recovery = None
        if self._recovery is None:
            assert self._state is not None  # asked for only where there is a state folder
            self._recovery = begin_recovery(self._state)
        return self._recovery

    def _forget_recovery(self) -> None:
        if self._state is None:
            return

        def clear(_cancelled: Event) -> None:
            if self._recovery is not None:
                self._recovery.clear()

        # The same kind as keeping, so that an older keep is forgotten and never comes after this.
        self._worker.submit(_AUTOSAVE, clear, self._kept)

    def _close_recovery(self) -> None:
        self._worker.cancel(_AUTOSAVE)
        self._worker.wait()
        if self._recovery is not None:
            self._recovery.close()
            self._recovery = None

    def _kept(self, done: Done) -> None:
        self.trouble = done.error if isinstance(done.error, ElevationError | OSError) else None
