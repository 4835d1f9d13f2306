"""The one mutable thing: the room as it is, how it came to be, where it is kept and what is looked at."""

from __future__ import annotations

import time
from collections.abc import Callable, Collection
from pathlib import Path

from elevation.errors import NoSuch, said
from elevation.findings.model import Finding, Scene
from elevation.handles.model import Handle
from elevation.handles.possible import within_possible
from elevation.handles.remembered import Key
from elevation.handles.sticking import candidates
from elevation.room.find import has, scheme_of, wall_of
from elevation.room.keeping.recovery import Orphan
from elevation.room.lent import trade_of
from elevation.room.model import Ref, Room
from elevation.room.validate import check_room, check_rows
from elevation.session.events import Event, Listeners
from elevation.session.gesture import Gesture
from elevation.session.history import History
from elevation.session.nudging import Nudging
from elevation.session.pipeline import Pipeline
from elevation.session.storage import Storage
from elevation.session.view import View
from elevation.session.worker import Worker
from elevation.setting_out.model import SetOut
from elevation.trade.model import Trade
from elevation.words import Message, msg

_EVENTS: tuple[Event, ...] = ("path", "view", "room", "selection")


class Session:
    """One room being worked on.

    Parameters
    ----------
    room : Room
    trade : Trade
    path : Path or None
        The file that ``room`` was read from; None for a room that is in no file yet.
    state : Path or None
        The folder for locks and recovery files; None keeps neither.
    clock : callable
        Seconds that only rise; nudges within a second of each other are one edit.

    Attributes
    ----------
    worker : Worker
        For what may take longer than a frame.
    is_guided : bool
        The lines of proportion are shown: handles stick to them too.
    changed : Listeners
        Told ``"room"``, ``"selection"``, ``"view"`` or ``"path"``.
    """

    def __init__(
        self,
        room: Room,
        trade: Trade,
        path: Path | None = None,
        *,
        state: Path | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self.changed = Listeners()
        self.is_guided = False
        self.worker = Worker()
        self._tables = trade
        self.pipeline = Pipeline(trade_of(room, trade))
        self.storage = Storage(room, path, state, self.worker, trade)
        self._history = History(room)
        self._gesture: Gesture | None = None
        self._nudging = Nudging(clock)
        self._selection: Ref | None = None
        self._view = View(room)

    # -- what is looked at -------------------------------------------------

    @property
    def trade(self) -> Trade:
        """The trade's tables, with the rows that the room carries."""
        return self.pipeline.trade

    @property
    def room(self) -> Room:
        """The room as shown: the candidate during a gesture, else the committed one."""
        return self._gesture.room if self._gesture is not None else self._history.room

    @property
    def committed(self) -> Room:
        """The room as it stands in the history."""
        return self._history.room

    @property
    def gesture(self) -> Gesture | None:
        """The drag that is going on."""
        return self._gesture

    @property
    def wall_id(self) -> str:
        """Id of the wall shown; empty in a room without walls."""
        return self._view.wall_id

    @property
    def scheme_id(self) -> str | None:
        """Id of the scheme shown; None for a bare wall."""
        return self._view.scheme_id

    @property
    def selection(self) -> Ref | None:
        """What is selected."""
        return self._selection

    @selection.setter
    def selection(self, ref: Ref | None) -> None:
        if ref != self._selection:
            self._selection = ref
            self.changed.emit("selection")

    def take_trade(self, trade: Trade) -> None:
        """Work with other tables: everything is set out anew.

        Raises
        ------
        BadInput
            The room names a row that they do not hold; the tables then stay as they were.
        """
        whole = trade_of(self.committed, trade)
        check_rows(self.committed, whole, self.committed.name or "room")
        self._end_gesture()
        self._tables = trade
        self.pipeline = Pipeline(whole)
        self.storage.take_trade(trade)
        self.changed.emit("view")
        self.changed.emit("room")

    def set_out(self) -> SetOut:
        """Where everything lands on the wall shown."""
        return self.pipeline.set_out_of(self.room, self.wall_id, self.scheme_id)

    def scene(self) -> Scene:
        """What the rules look at."""
        return self.pipeline.scene_of(self.room, self.wall_id, self.scheme_id)

    def findings(self) -> tuple[Finding, ...]:
        """What the rules find on the wall shown, sorted by weight."""
        return self.pipeline.findings_of(self.room, self.wall_id, self.scheme_id)

    def handles(self) -> tuple[Handle, ...]:
        """What can be dragged on the wall shown."""
        return self.pipeline.handles_of(self.room, self.wall_id, self.scheme_id)

    def some_handles(self, keys: Collection[Key]) -> dict[Key, Handle]:
        """Those of ``handles()`` that have one of ``keys`` (axis, ref): all that a frame of a drag has to know."""
        return self.pipeline.some_handles_of(self.room, self.wall_id, self.scheme_id, keys)

    def handle(self, axis: str, ref: Ref) -> Handle:
        """The handle of that axis and ref as it is now.

        Raises
        ------
        NoSuch
            There is none on the wall shown.
        """
        for handle in self.handles():
            if handle.axis == axis and handle.ref == ref:
                return handle
        raise NoSuch("/".join(ref), axis, said("cannot be dragged on this wall"))

    def switch_wall(self, wall_id: str) -> None:
        """Show another wall, in its first scheme.

        Raises
        ------
        NoSuch
            There is no such wall.
        """
        wall_of(self.committed, wall_id)
        self._look_at(wall_id, None)

    def switch_scheme(self, scheme_id: str | None) -> None:
        """Show the wall in another scheme; None takes its first.

        Raises
        ------
        NoSuch
            The wall has no such scheme.
        """
        scheme_of(self.committed, self.wall_id, scheme_id)
        self._look_at(self.wall_id, scheme_id)

    # -- edits ---------------------------------------------------------------

    def commit(self, room: Room, label: Message, ref: Ref = ()) -> None:
        """Make ``room`` the present one; an equal room is no edit.

        Parameters
        ----------
        room : Room
        label : Message
            Name of the edit, for undo.
        ref : Ref
            What it was about; it is selected again when the edit is undone or redone.

        Raises
        ------
        BadInput
            The room could not be saved and read again; everything stays as it was.
        """
        self._end_gesture()
        self._nudging.forget()
        if room is self.committed or room == self.committed:
            return
        check_room(room, room.name or "room")
        self._history.push(room, label, ref)
        self._after_edit()

    def undo(self) -> None:
        """Take back the last edit and select what it was about; nothing at the start."""
        self._end_gesture()
        self._nudging.forget()
        entry = self._history.back()
        if entry is not None:
            self._after_edit(entry.ref)

    def redo(self) -> None:
        """Do again what was undone last and select what it was about; nothing at the end."""
        self._end_gesture()
        self._nudging.forget()
        entry = self._history.forward()
        if entry is not None:
            self._after_edit(entry.ref)

    @property
    def undo_label(self) -> Message | None:
        """Name of the edit that undo would take back; None when there is none."""
        return self._history.entry.label if self._history.before is not None else None

    @property
    def redo_label(self) -> Message | None:
        """Name of the edit that redo would do again; None when there is none."""
        return self._history.after.label if self._history.after is not None else None

    @property
    def edits(self) -> int:
        """How many edits the history holds, done or undone."""
        return len(self._history) - 1

    # -- gestures --------------------------------------------------------------

    def press(self, handle: Handle, alone: bool = False) -> Gesture:
        """Begin to drag ``handle``.

        Parameters
        ----------
        handle : Handle
            One of ``handles()``.
        alone : bool
            Only this end moves where both would.
        """
        self._end_gesture()
        self._nudging.forget()
        handle = self._reachable(handle, alone)
        gesture = Gesture(
            handle,
            self.committed,
            candidates(handle, self.scene(), alone=alone, guided=self.is_guided),
            alone,
            lambda room: self.pipeline.findings_of(room, self.wall_id, self.scheme_id),
            lambda: self.changed.emit("room"),
            lambda room: self._finish(handle, room),
        )
        self._gesture = gesture
        self.selection = handle.subject
        return gesture

    def nudge(self, handle: Handle, steps: int, alone: bool = False) -> None:
        """Move ``handle`` by whole graduations, right or up where ``steps`` is positive.

        Nudges of one handle that follow each other within a second are one edit in the history.
        """
        self._end_gesture()
        current = self._reachable(handle, alone)
        room = self._nudging.step(current, self.committed, steps, alone)
        if room is self.committed or room == self.committed:
            return
        if not self._nudging.goes_on(current.key):
            self._history.push(room, moved(current), current.subject)
        elif self._history.before is not None and room == self._history.before.room:
            self._history.drop()
            self._nudging.forget()
        else:
            self._history.replace(room)
        self.selection = current.subject
        self._after_edit()

    def _reachable(self, handle: Handle, alone: bool) -> Handle:
        """The handle as it is now, with the range that it has in this gesture."""
        return within_possible(self.handle(*handle.key).bound(alone), self.committed, alone)

    def _finish(self, handle: Handle, room: Room | None) -> None:
        self._gesture = None
        if room is None:
            self.changed.emit("room")
        else:
            self.commit(room, moved(handle), handle.subject)

    def _end_gesture(self) -> None:
        if self._gesture is not None:
            self._gesture.cancel()

    # -- the file --------------------------------------------------------------

    @property
    def path(self) -> Path | None:
        """The file that the room is saved to; None before it has one."""
        return self.storage.path

    @property
    def is_modified(self) -> bool:
        """Whether the room differs from what is saved."""
        return self.storage.differs(self.committed)

    def open(self, path: Path) -> None:
        """Work on the room in another file; on bad input everything stays as it was.

        Raises
        ------
        BadInput
            The file cannot be read or is no room.
        """
        room = self.storage.open(path)
        self._begin(room)

    def revert(self) -> None:
        """Read the file again and forget all edits; a room without a file goes back to its start."""
        self._begin(self.storage.reread())

    def begin(self, room: Room) -> None:
        """Work on a new room that is in no file yet."""
        self.storage.begin(room)
        self._begin(room)

    def save(self, path: Path | None = None, *, overwrite: bool = False) -> None:
        """Write the room to its file, or to ``path``, which becomes its file.

        Parameters
        ----------
        path : Path or None
        overwrite : bool
            Write although the file has been changed by someone else since it was read.

        Raises
        ------
        ChangedOnDisk
            Somebody else changed the file, and ``overwrite`` was not given.
        BadOutput
            There is no path, the file cannot be written, or another window works on it.
        """
        self._end_gesture()
        self.storage.save(self.committed, path, overwrite=overwrite)
        self.changed.emit("path")

    @property
    def is_read_only(self) -> bool:
        """Whether another window works on the same file."""
        return self.storage.is_read_only

    def is_changed_on_disk(self) -> bool:
        """Whether somebody else has changed the file since it was read or written here."""
        return self.storage.is_changed_on_disk()

    def orphans(self) -> tuple[Orphan, ...]:
        """What windows that crashed have left to be recovered, newest first."""
        return self.storage.orphans()

    def recover(self, orphan: Orphan) -> None:
        """Go on with what a crashed window left.

        Raises
        ------
        BadInput
            It is damaged or gone.
        BadOutput
            Another window has taken it.
        """
        self._begin(self.storage.recover(orphan))

    def close(self) -> None:
        """Let go of file and recovery, and end the worker; what is not saved is given up."""
        self._end_gesture()
        self.storage.close()
        self.worker.close()

    def _begin(self, room: Room) -> None:
        self._end_gesture()
        self._nudging.forget()
        whole = trade_of(room, self._tables)
        if whole is not self.pipeline.trade:
            self.pipeline = Pipeline(whole)
        self._history = History(room)
        self._selection = None
        self._view = View(room)
        for event in _EVENTS:
            self.changed.emit(event)

    def _after_edit(self, ref: Ref = ()) -> None:
        self.storage.autosave(self.committed)
        if self._view.turn_to(self.committed, ref):
            self.changed.emit("view")
        self.changed.emit("room")
        self.changed.emit("path")
        if ref and has(self.committed, ref):
            self.selection = ref
        elif self._selection is not None and not has(self.committed, self._selection):
            self.selection = None

    def _look_at(self, wall_id: str, scheme_id: str | None) -> None:
        self._end_gesture()
        self._nudging.forget()
        if self._view.look_at(self.committed, wall_id, scheme_id):
            self.selection = None
            self.changed.emit("view")


def moved(handle: Handle) -> Message:
    """Name of the edit that moves ``handle``."""
    return msg("Move {what}", what=handle.name)
