"""The headings of a long form as a choice: choosing one brings it to the top and puts the keyboard under it."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QScrollArea, QWidget

from elevation.window.choice import Choice
from elevation.window.texts import tr
from elevation.words import msg

Place = tuple[str, QWidget, QWidget | None]
"""A heading's text, the widget to bring to the top, and what then gets the keyboard."""


class GoTo(Choice):
    """A choice that names nothing chosen: only where to go in the form under it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(tr(msg("Go to")), parent)
        self._places: tuple[Place, ...] = ()
        self.setPlaceholderText(tr(msg("Go to …")))
        self.setMaxVisibleItems(30)
        self.chosen.connect(self._go)

    def show_places(self, places: tuple[Place, ...]) -> None:
        """Offer these headings, in the order of the form."""
        self._places = places
        self.offer([(str(index), text) for index, (text, _, _) in enumerate(places)], "")

    def _go(self, key: str) -> None:
        _, top, keyboard = self._places[int(key)]
        self.setCurrentIndex(-1)
        if keyboard is not None:
            keyboard.setFocus(Qt.FocusReason.ShortcutFocusReason)
        # A form that was never scrolled has yet to be laid out.
        QApplication.sendPostedEvents()
        around = top.parentWidget()
        while around is not None and not isinstance(around, QScrollArea):
            around = around.parentWidget()
        content = around.widget() if around is not None else None
        if around is not None and content is not None:
            around.verticalScrollBar().setValue(top.mapTo(content, QPoint(0, 0)).y())
