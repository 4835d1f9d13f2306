"""A line edit whose edge can be seen in any theme."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QKeyEvent, QKeySequence, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QLineEdit

from elevation.window.passing import ENTER

_EDGE = 0.54
"""Share of the text's ink in the edge's: 3 to 1 against the panel (WCAG 2.2, 1.4.11)."""


def edge_colour(palette: QPalette) -> QColor:
    """The colour of a field's edge."""
    ground, ink = palette.color(QPalette.ColorRole.Window), palette.color(QPalette.ColorRole.WindowText)
    return QColor(
        *(
            round(low + (high - low) * _EDGE)
            for low, high in ((ground.red(), ink.red()), (ground.green(), ink.green()), (ground.blue(), ink.blue()))
        )
    )


class TextField(QLineEdit):
    """Fusion draws edges darker than the panel, which vanish in the dark; this one mixes panel and ink.

    Attributes
    ----------
    passed : Signal(bool)
        Enter was pressed on what could be taken: True onward, False (with Shift) back.
    """

    passed = Signal(bool)

    is_wrong = False
    """Whether what stands there was refused: then Enter does not leave it."""

    def focusInEvent(self, event: QFocusEvent) -> None:
        """While the field has the keyboard it looks at its own events: a form has many fields, and one keyboard."""
        super().focusInEvent(event)
        self.installEventFilter(self)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Nothing is looked at any more."""
        self.removeEventFilter(self)
        super().focusOutEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Undo and redo are the field's own while something is typed into it, and the room's before and after.

        Qt's line edit claims both keys always, so that undo would do nothing in the field that Enter went on to.
        """
        if (
            watched is self
            and isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.ShortcutOverride
            and not self.isModified()
            and (event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo))
        ):
            event.ignore()
            return True
        return super().eventFilter(watched, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter takes what was typed and goes on, with Shift back."""
        super().keyPressEvent(event)
        if event.key() in ENTER and not self.is_wrong:
            self.passed.emit(not event.modifiers() & Qt.KeyboardModifier.ShiftModifier)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The style's own field, then the edge."""
        super().paintEvent(event)
        if self.hasFocus():
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(edge_colour(self.palette()), 1))
        painter.drawRoundedRect(self.rect().toRectF().adjusted(0.5, 0.5, -0.5, -0.5), 2, 2)
        painter.end()
