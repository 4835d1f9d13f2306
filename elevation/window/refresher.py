"""Panels follow the room once for each painted frame, however often it changed in between."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QEvent, QObject

_KIND = QEvent.Type(QEvent.registerEventType())


class Refresher(QObject):
    """Calls ``refresh`` once after any number of ``ask``; before Qt paints, because paints wait at low priority."""

    def __init__(self, refresh: Callable[[], None], parent: QObject) -> None:
        super().__init__(parent)
        self._refresh = refresh
        self._asked = False

    def ask(self) -> None:
        """Something changed."""
        if not self._asked:
            self._asked = True
            QCoreApplication.postEvent(self, QEvent(_KIND))

    def now(self) -> None:
        """Do it now, if it was asked for."""
        if self._asked:
            self._asked = False
            self._refresh()

    def event(self, event: QEvent) -> bool:
        """The posted request."""
        if event.type() == _KIND:
            self.now()
            return True
        return super().event(event)
