"""The hand on the canvas: it takes a handle, moves it, types a figure instead, lets go or gives up."""

from __future__ import annotations

import gc

from elevation.errors import BadInput
from elevation.handles.model import Handle
from elevation.session.gesture import Gesture
from elevation.session.session import Session
from elevation.setting_out.model import Point
from elevation.window.texts import tr_error

START_PX = 3.0
"""A press becomes a drag when the pointer has gone this far."""


class _Quiet:
    """The collector of garbage, put aside for a while: a drag makes none, and each look for it takes a part of a frame."""

    def __init__(self) -> None:
        self._was_on = gc.isenabled()
        gc.disable()

    def end(self) -> None:
        """Have the collector as it was."""
        if self._was_on:
            gc.enable()


class Hand:
    """One hand; it holds at most one handle.

    Attributes
    ----------
    gesture : Gesture or None
        The drag that is going on.
    typed : str
        What was typed since the press.
    wrong : str
        What is wrong with it; empty if nothing.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self.gesture: Gesture | None = None
        self.typed = ""
        self.wrong = ""
        self._axis = 0
        self._offset_mm = 0.0
        self._from: Point = (0.0, 0.0)
        self._is_moving = False
        self._quiet: _Quiet | None = None

    @property
    def is_holding(self) -> bool:
        """Whether a handle is held; a gesture that something else ended is let go of."""
        if self.gesture is not None and self.gesture.is_over:
            self._forget()
        return self.gesture is not None

    @property
    def is_still(self) -> bool:
        """Whether nothing was moved or typed since the press."""
        return not self._is_moving and not self.typed

    @property
    def handle(self) -> Handle | None:
        """The handle held, as it was at press."""
        return self.gesture.handle if self.is_holding and self.gesture is not None else None

    def press(self, handle: Handle, at: Point, place_px: Point, alone: bool) -> None:
        """Take a handle.

        Parameters
        ----------
        handle : Handle
        at : Point
            Where it was taken, wall mm: it does not jump to the pointer.
        place_px : Point
            The same in pixels.
        alone : bool
            Move one end only where both would.
        """
        self._forget()
        self.gesture = self._session.press(handle, alone)
        # As it was taken: a plan draws upwards what a section draws sideways.
        self._axis = 0 if handle.along == "x" else 1
        self._offset_mm = at[self._axis] - handle.value_mm
        self._from = place_px

    def take(self, handle: Handle) -> None:
        """Take a handle from the keyboard, to type its figure."""
        self.press(handle, handle.at, (0.0, 0.0), False)

    def move(self, at: Point, place_px: Point, mm_per_px: float, free: bool) -> None:
        """Follow the pointer: only its place is stored."""
        if not self.is_holding or self.gesture is None:
            return
        if not self._is_moving:
            dx, dy = place_px[0] - self._from[0], place_px[1] - self._from[1]
            if dx * dx + dy * dy < START_PX * START_PX:
                return
            self._is_moving = True
            self._quiet = _Quiet()
        self.gesture.move(at[self._axis] - self._offset_mm, mm_per_px, free)

    def type(self, text: str) -> None:
        """Replace what was typed; a figure that can be read holds the handle at once."""
        if not self.is_holding or self.gesture is None:
            return
        self.typed, self.wrong = text, ""
        try:
            self.gesture.type(text)
        except BadInput as error:
            self.wrong = tr_error(error)

    def release(self) -> None:
        """Let go: one entry in the history, none if nothing changed."""
        gesture, wrong = self.gesture, self.wrong
        if not self.is_holding or gesture is None:
            return
        self._forget()
        if wrong:
            # What was typed last cannot be read; the handle must not keep an earlier half of it.
            gesture.cancel()
        else:
            gesture.release()

    def cancel(self) -> None:
        """Give up: everything as it was at press."""
        gesture = self.gesture
        self._forget()
        if gesture is not None and not gesture.is_over:
            gesture.cancel()

    def _forget(self) -> None:
        self.gesture = None
        self.typed = self.wrong = ""
        self._is_moving = False
        if self._quiet is not None:
            self._quiet.end()
            self._quiet = None
