"""A handle's own menu: what is held of it, and what may be held instead."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from elevation.errors import ElevationError
from elevation.handles.model import Handle
from elevation.room.find import layer_of, treatment_of
from elevation.window.holding import end_holds, height_holds, hold_end, hold_height
from elevation.window.measurements import sentence
from elevation.window.texts import tr
from elevation.words import Message, msg

if TYPE_CHECKING:
    from elevation.window.canvas import Canvas

_SIDES = {"rod-left": "left", "rod-right": "right"}


class CanvasMenu:
    """Opens over a handle (right button, or the menu key)."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._handle: Handle | None = None
        self.menu: QMenu | None = None

    def open(self, handle: Handle, at: QPoint) -> None:
        """Open the menu of a handle at a place on the screen."""
        self._handle = handle
        menu = QMenu(self._canvas)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        title = menu.addAction(sentence(tr(handle.name)).replace("&", "&&"))
        title.setEnabled(False)
        typed = menu.addAction(tr(msg("&Type a figure")))
        typed.setData("type")
        holds = self._holds(handle)
        if holds:
            menu.addSection(tr(msg("What is held")))
        now = self._held(handle)
        for key, text in holds.items():
            action = menu.addAction(sentence(tr(text)))
            action.setData(key)
            action.setCheckable(True)
            action.setChecked(key == now)
        menu.triggered.connect(self.take)
        self.menu = menu
        menu.popup(at)

    def _holds(self, handle: Handle) -> dict[str, Message]:
        if handle.axis != "rod-height" and handle.axis not in _SIDES:
            return {}
        room = self._canvas.session.committed
        rod, mount = layer_of(room, handle.ref[:4]).rod, treatment_of(room, handle.ref[:3]).mount
        if handle.axis == "rod-height":
            return height_holds(mount, rod.height.hold)
        return end_holds(mount, rod.left.hold if handle.axis == "rod-left" else rod.right.hold)

    def _held(self, handle: Handle) -> str:
        if not self._holds(handle):
            return ""
        rod = layer_of(self._canvas.session.committed, handle.ref[:4]).rod
        if handle.axis == "rod-height":
            return rod.height.hold
        return rod.left.hold if handle.axis == "rod-left" else rod.right.hold

    def take(self, action: QAction) -> None:
        """Do what was chosen."""
        handle, key = self._handle, str(action.data())
        if handle is None:
            return
        canvas, session = self._canvas, self._canvas.session
        if key == "type":
            canvas.setFocus()
            canvas.keys.focus_on(handle)
            canvas.hand.take(handle)
            canvas.update()
            return
        if key == self._held(handle):
            return
        room, ref = session.committed, handle.ref[:4]
        try:
            if handle.axis == "rod-height":
                made = hold_height(room, session.set_out(), ref, key)
            else:
                made = hold_end(room, session.set_out(), ref, _SIDES[handle.axis], key)
        except ElevationError:
            return
        held = self._holds(handle)[key]
        session.commit(made, msg("Hold {what}: {held}", what=handle.name, held=held), ref)
