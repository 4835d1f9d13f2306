"""A quiet strip over the canvas that says something and offers what to do about it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from elevation.window.texts import tr
from elevation.words import msg


class Notice(QWidget):
    """One notice at a time; the newest is shown.

    Attributes
    ----------
    chosen : Signal(str)
        Key of the button that was pressed; empty when the notice was put away.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAutoFillBackground(True)
        self.text = QLabel(self)
        self.text.setWordWrap(True)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self.text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.buttons: dict[str, QPushButton] = {}
        self._away = QPushButton(tr(msg("Put away")), self)
        self._away.clicked.connect(self.put_away)
        self._box = QHBoxLayout(self)
        self._box.setContentsMargins(10, 4, 10, 4)
        self._box.addWidget(self.text, 1)
        self._box.addWidget(self._away)
        self.hide()

    def say(self, text: str, acts: dict[str, str] | None = None) -> None:
        """Show a notice.

        Parameters
        ----------
        text : str
        acts : dict of str to str, optional
            Button texts by the key that ``chosen`` will carry.
        """
        for button in self.buttons.values():
            button.hide()
            button.setParent(None)
            button.deleteLater()
        self.buttons = {}
        for place, (key, label) in enumerate((acts or {}).items(), 1):
            button = QPushButton(label, self)
            button.setProperty("act", key)
            button.clicked.connect(self._press)
            self._box.insertWidget(place, button)
            self.buttons[key] = button
        self.text.setText(text)
        self.setAccessibleName(text)
        self.show()

    @property
    def is_asking(self) -> bool:
        """Whether something stands there that waits for an answer."""
        return bool(self.buttons) and not self.isHidden()

    def _press(self) -> None:
        sender = self.sender()
        key = str(sender.property("act")) if sender is not None else ""
        self.hide()
        self.chosen.emit(key)

    def put_away(self) -> None:
        """Hide it."""
        self.hide()
        self.chosen.emit("")
