"""Proposals beside a wall's schemes, looked for on the worker: each is shown as soon as it is found, put in at the end."""

from __future__ import annotations

from collections.abc import Sequence
from threading import Event
from typing import TYPE_CHECKING

from msgspec import Struct
from PySide6.QtCore import QObject, Signal

from elevation.planning.comparing import MOST
from elevation.room.style import style_for
from elevation.session.worker import Done
from elevation.window.schemes_made import Made, made_of
from elevation.window.texts import tr
from elevation.words import Message, msg, msg_plural

if TYPE_CHECKING:
    from elevation.handles.proposing import Proposal
    from elevation.room.model import Room
    from elevation.session.session import Session
    from elevation.sheet.drawing import View

KIND = "proposals"
_WANTED = 3


class Proposed(Struct, frozen=True):
    """What was proposed so far.

    Attributes
    ----------
    base : Room
        The room that was looked at.
    room : Room
        The same with the proposals as further schemes of the wall.
    wall : str
    ids : tuple of str
        Of the schemes that were added.
    shown : tuple of str or None
        Which schemes are shown beside each other then.
    made : Made or None
        Those compared and drawn.
    """

    base: Room
    room: Room
    wall: str
    ids: tuple[str, ...] = ()
    shown: tuple[str | None, ...] = ()
    made: Made | None = None


class Proposing(QObject):
    """Looks for schemes that differ in kind.

    Attributes
    ----------
    better : Signal(Proposed)
        One more was found; nothing is put into the room yet.
    done : Signal(Done)
        The search is over: its result is a Proposed with all of them.
    """

    better = Signal(object)
    done = Signal(object)
    _found = Signal(int, object)
    _ended = Signal(object)

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self._generation = -1
        self._search = 0
        self._found.connect(self._take)
        self._ended.connect(self._end)

    @property
    def is_running(self) -> bool:
        """Whether something is looked for."""
        return self._generation >= 0

    def begin(self, wall: str, scheme: str, picked: Sequence[str | None], view: View) -> None:
        """Look for schemes from that one; ``picked`` are shown beside them as far as there is room."""
        room, trade = self._session.committed, self._session.trade
        self._search += 1
        search, beside = self._search, [key for key in picked if key is not None]

        def job(cancelled: Event) -> object:
            from elevation.handles.proposing import proposals

            so_far = Proposed(room, room, wall)
            found: list[Proposal] = []
            for one in proposals(room, wall, scheme, trade, cancelled.is_set):
                found.append(one)
                so_far = _put(room, wall, found, beside)
                made = made_of(so_far.room, wall, so_far.shown, trade, view, cancelled.is_set)
                self._found.emit(search, Proposed(room, so_far.room, wall, so_far.ids, so_far.shown, made))
            return so_far

        self._generation = self._session.worker.submit(KIND, job, self._ended.emit)

    def cancel(self) -> None:
        """Look no further, and forget what was found."""
        self._session.worker.cancel(KIND)
        self._generation = -1
        self._search += 1

    def _take(self, search: int, found: Proposed) -> None:
        # What is found of a room that is no more is not shown.
        if search == self._search and self.is_running and found.base is self._session.committed:
            self.better.emit(found)

    def _end(self, done: Done) -> None:
        if done.generation == self._generation:
            self._generation = -1
            self.done.emit(done)


def _put(room: Room, wall: str, found: Sequence[Proposal], beside: Sequence[str | None]) -> Proposed:
    from elevation.handles.proposing import put_proposals

    style = style_for(room)
    made, ids = put_proposals(room, wall, [(tr(one.name, style), one.scheme) for one in found])
    return Proposed(room, made, wall, ids, (*beside[: MOST - len(ids)], *ids))


def proposed_said(count: int) -> Message:
    """How many were found, and what to do where there are none."""
    if not count:
        return msg("No other place of the rod was found that breaks nothing: see the findings for what stands in the way.")
    if count < _WANTED:
        return msg_plural(
            "Only {count} scheme that differs in kind breaks nothing here; undo takes it away.",
            "Only {count} schemes that differ in kind break nothing here; undo takes them away.",
            count=count,
        )
    return msg("Three schemes are proposed, and none breaks a rule; undo takes them away.")


def so_far_said(count: int) -> Message:
    """What is said while more is looked for."""
    return msg_plural("{count} found so far, looking for more…", "{count} found so far, looking for more…", count=count)
