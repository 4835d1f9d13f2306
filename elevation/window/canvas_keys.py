"""The keyboard on the canvas: Tab, arrows, figures, Enter and Esc."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from elevation.handles.model import Handle
from elevation.room.model import Ref
from elevation.window import picking

if TYPE_CHECKING:
    from elevation.window.canvas import Canvas

_ARROWS = {
    Qt.Key.Key_Left: ("x", -1),
    Qt.Key.Key_Right: ("x", 1),
    Qt.Key.Key_Down: ("y", -1),
    Qt.Key.Key_Up: ("y", 1),
}
_STARTS = "0123456789.,½¼¾⅛⅜⅝⅞⅓⅔-−"


class CanvasKeys:
    """Keeps the handle that the keyboard is on.

    Attributes
    ----------
    is_shown : bool
        Whether it is ringed.
    """

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._on: tuple[str, Ref] | None = None
        self.is_shown = False

    def current(self) -> Handle | None:
        """The keyboard's handle as it is now."""
        return next((handle for handle in self._canvas.handles() if handle.key == self._on), None)

    def focus_on(self, handle: Handle | None, *, is_shown: bool = True) -> None:
        """Put the keyboard on a handle; one that a mouse left it on is not ringed until a key is used."""
        self._on = handle.key if handle is not None else None
        self.is_shown = is_shown

    def enter(self, *, from_end: bool) -> None:
        """Tab came in from another widget."""
        order = picking.reading_order(self._canvas.handles())
        self.focus_on((order[-1] if from_end else order[0]) if order else None)

    def step(self, way: int) -> bool:
        """Go to the next handle; False past the last or before the first."""
        canvas = self._canvas
        if canvas.hand.is_holding:
            return True
        order = [handle.key for handle in picking.reading_order(canvas.handles())]
        place = order.index(self._on) + way if self._on in order else (0 if way > 0 else len(order) - 1)
        if not 0 <= place < len(order):
            self._on = None
            return False
        self._on = order[place]
        self.is_shown = True
        canvas.session.selection = self._on[1]
        canvas.update()
        return True

    def press(self, event: QKeyEvent) -> bool:
        """Take a key; False leaves it to others."""
        canvas, hand = self._canvas, self._canvas.hand
        key, text = event.key(), event.text()
        if hand.is_holding:
            return self._press_holding(key, text)
        handle = self.current()
        if key == Qt.Key.Key_Escape:
            canvas.session.selection = None
            self._on = None
            canvas.update()
            # The window puts its notice away with the same key.
            return False
        if handle is None:
            return False
        self.is_shown = True
        plain = not event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier)
        if key in _ARROWS:
            along, way = _ARROWS[Qt.Key(key)]
            if along == handle.along:
                steps = 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
                canvas.session.nudge(handle, way * steps)
            return True
        if plain and text and text in _STARTS:
            hand.take(handle)
            hand.type(text)
            canvas.update()
            return True
        return False

    def _press_holding(self, key: int, text: str) -> bool:
        canvas, hand = self._canvas, self._canvas.hand
        if key == Qt.Key.Key_Escape:
            hand.cancel()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if hand.wrong:
                canvas.update()
                return True
            hand.release()
        elif key == Qt.Key.Key_Backspace:
            hand.type(hand.typed[:-1])
        elif text and text.isprintable():
            hand.type(hand.typed + text)
        else:
            return False
        canvas.update()
        return True
