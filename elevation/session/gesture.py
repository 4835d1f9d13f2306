"""A drag from press to release over a candidate room.

Moves only store where the pointer is; the candidate is made when someone reads it, so that however fast
the pointer moves, the pipeline runs at most once for each picture that is painted.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from elevation.errors import BadInput, said
from elevation.findings.model import Finding, Sticking, Weight
from elevation.handles.model import Handle, Stuck
from elevation.handles.saying import figure_said
from elevation.handles.sticking import landing_mm, stick
from elevation.room.model import Room
from elevation.units import Length, format_length, parse_length
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

CLICK_PX = 2.0
"""A handle stays where it is until the pointer has once been farther away than this: a click is no drag."""


class _Pointer(Struct, frozen=True, gc=False):
    """Where the pointer is, how many mm one pixel is, and whether sticking is off."""

    wanted_mm: float
    mm_per_px: float
    free: bool


class Gesture:
    """One handle being dragged.

    Parameters
    ----------
    handle : Handle
        As it was at press; its figures are measured from what stood still then.
    room : Room
        The room at press, which Esc gives back.
    candidates : tuple of Sticking
        Where it may stick, computed once at press.
    alone : bool
        Only this end moves where both would.
    find : callable
        ``room -> findings``, to say which rule a place breaks.
    changed : callable
        Told when the candidate may have changed.
    finish : callable
        Told once, with the room to commit or None, when the gesture ends.
    """

    def __init__(
        self,
        handle: Handle,
        room: Room,
        candidates: tuple[Sticking, ...],
        alone: bool,
        find: Callable[[Room], tuple[Finding, ...]],
        changed: Callable[[], None],
        finish: Callable[[Room | None], None],
    ) -> None:
        self.handle = handle
        self.alone = alone
        self.candidates = candidates
        self.is_over = False
        self._base = room
        self._find = find
        self._changed = changed
        self._finish = finish
        self._pointer: _Pointer | None = None
        self._typed: Length | None = None
        self._candidate = room
        self._moved_to_mm: float | None = None
        self._stuck = Stuck(handle.value_mm)
        self._is_stale = False
        self._is_dragged = False
        self._before: frozenset[tuple[object, ...]] | None = None

    def move(self, wanted_mm: float, mm_per_px: float, free: bool = False) -> None:
        """Remember where the pointer is.

        Parameters
        ----------
        wanted_mm : float
            Wall coordinate along the handle's axis.
        mm_per_px : float
            How many mm of wall one pixel shows, for the capture distance.
        free : bool
            The modifier that switches sticking off is down.
        """
        if self.is_over:
            return
        self._pointer = _Pointer(wanted_mm, mm_per_px, free)
        self._is_dragged = self._is_dragged or abs(wanted_mm - self.handle.value_mm) > CLICK_PX * mm_per_px
        if self._typed is None and self._is_dragged:
            self._is_stale = True
            self._changed()

    def type(self, text: str) -> None:
        """Set the handle to exactly what was typed; an empty text gives the handle back to the pointer.

        Raises
        ------
        BadInput
            The text is no length, or lies outside the handle's range; the candidate stays as it was.
        """
        if self.is_over:
            return
        typed = parse_length(text, self._base.unit) if text.strip() else None
        if typed is not None:
            check_range(self.handle, typed, self._base)
        self._typed = typed
        self._is_stale = True
        self._changed()

    @property
    def is_typed(self) -> bool:
        """Whether a typed figure holds the handle, so that moves of the pointer are not followed."""
        return self._typed is not None

    @property
    def room(self) -> Room:
        """The candidate: the room with the handle where it is now."""
        self._settle()
        return self._candidate

    @property
    def stuck(self) -> Stuck:
        """Where the handle rests, why, and a rule that is broken there."""
        self._settle()
        if self._stuck.breaks is None and self._candidate is not self._base:
            self._stuck = Stuck(self._stuck.value_mm, self._stuck.reason, self._broken())
        return self._stuck

    @property
    def shown_mm(self) -> float:
        """The figure that a person reads at the pointer."""
        self._settle()
        return self._typed.mm if self._typed is not None else self.handle.shown_mm(self._stuck.value_mm)

    @property
    def readout(self) -> Message:
        """What stands at the pointer: the figure, what it is, why it sticks."""
        figure = figure_said(self.handle, self.shown_mm)
        reason = self.stuck.reason
        return figure if reason is None else msg("{figure}: {reason}", figure=figure, reason=reason)

    def release(self) -> None:
        """End the drag; the candidate is committed if anything changed."""
        if self.is_over:
            return
        room = self.room
        self.is_over = True
        # Compared by value: a drag out and back again makes equal rooms that are not the same object.
        self._finish(None if room is self._base or room == self._base else room)

    def cancel(self) -> None:
        """End the drag and leave everything as it was at press."""
        if self.is_over:
            return
        self.is_over = True
        self._candidate = self._base
        self._is_stale = False
        self._finish(None)

    def _settle(self) -> None:
        if not self._is_stale:
            return
        self._is_stale = False
        if self._typed is not None:
            self._moved_to_mm = None
            self._candidate = self.handle.hold(self._base, self._typed, self.alone)
            self._stuck = Stuck(self.handle.from_shown(self._typed.mm))
        elif self._pointer is not None and self._is_dragged:
            at = self._pointer
            self._stuck = stick(
                self.handle, at.wanted_mm, self.candidates, self._base.graduation_mm, at.mm_per_px, self._stuck, at.free
            )
            if self._stuck.value_mm != self._moved_to_mm:
                # Most moves stay within a graduation: the candidate is then the very same room, and nothing is done.
                self._candidate = self.handle.move(self._base, self._stuck.value_mm, self.alone)
                self._moved_to_mm = self._stuck.value_mm
        else:
            self._moved_to_mm = None
            self._candidate = self._base
            self._stuck = Stuck(self.handle.value_mm)

    def _broken(self) -> str | None:
        """The first rule broken here that was not broken in the same way at press."""
        if self._before is None:
            # Worked out once: a long drag would otherwise push the room at press out of every memo.
            self._before = frozenset(map(_measure, self._find(self._base)))
        for finding in self._find(self._candidate):
            if finding.weight is not Weight.CONSIDER and _measure(finding) not in self._before:
                return finding.rule
        return None


def _measure(finding: Finding) -> tuple[object, ...]:
    return (finding.rule, finding.subject, finding.measured_mm, finding.limit_mm)


def check_range(handle: Handle, typed: Length, room: Room) -> None:
    """Refuse a typed figure that the handle cannot reach.

    Raises
    ------
    BadInput
        With the figures between which it can move.
    """
    if handle.low_mm - TOUCH_MM <= handle.from_shown(typed.mm) <= handle.high_mm + TOUCH_MM:
        return
    marks = (landing_mm(handle, end_mm, room.graduation_mm) for end_mm in (handle.low_mm, handle.high_mm))
    ends = sorted(handle.shown_mm(mark_mm) for mark_mm in marks)
    low, high = (format_length(end, room.unit, room.graduation_mm, with_unit=True, plain=True) for end in ends)
    raise BadInput(
        typed.text, "", said("is out of reach here"), said("write something from {low} to {high}", low=low, high=high)
    )
