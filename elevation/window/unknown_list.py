"""What is not known yet: each a button that leads to the field where it is told."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from elevation.findings.unknowns import Unknown
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.window.wrapping_button import WrappingButton
from elevation.words import Style, msg

_SIDE = 22


class _Open(QWidget):
    """A dashed ring: a place that is still empty, unlike the shapes of what was found."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFixedSize(_SIDE, _SIDE)

    def sizeHint(self) -> QSize:
        """As fixed."""
        return QSize(_SIDE, _SIDE)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The ring, in the ink of the text beside it."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = QPen(self.palette().windowText().color(), 1.4)
        pen.setDashPattern([2.2, 1.6])
        painter.setPen(pen)
        painter.drawEllipse(QRectF(self.rect()).adjusted(5, 5, -5, -5))
        painter.end()


class UnknownList(QWidget):
    """A heading and what is not known under it; hidden while all is known.

    Attributes
    ----------
    wanted : Signal(object, str)
        Ref and field that would tell it.
    """

    wanted = Signal(object, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buttons: list[WrappingButton] = []
        self._marks: list[_Open] = []
        self._shown: tuple[Unknown, ...] = ()
        self._heading = QLabel(tr(msg("Not known yet")), self)
        make_quiet(self._heading)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(6, 4, 6, 4)
        self._grid.setHorizontalSpacing(0)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnStretch(1, 1)
        self._grid.addWidget(self._heading, 0, 0, 1, 2)
        self.hide()

    def show_unknowns(self, found: tuple[Unknown, ...], style: Style) -> None:
        """Show these, in place of those before; rows are used again."""
        self._shown = found
        while len(self.buttons) < len(found):
            self._add()
        for number, (button, mark) in enumerate(zip(self.buttons, self._marks, strict=True)):
            is_used = number < len(found)
            if is_used:
                button.set_words(tr(found[number].text, style))
            button.setVisible(is_used)
            mark.setVisible(is_used)
        self.setVisible(bool(found))

    def _add(self) -> None:
        row = len(self.buttons)
        mark, button = _Open(self), WrappingButton(self)
        button.setFlat(True)
        button.setToolTip(tr(msg("Go to the field that tells it")))
        button.clicked.connect(partial(self._go, row))
        self._grid.addWidget(mark, row + 1, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(button, row + 1, 1)
        self.buttons.append(button)
        self._marks.append(mark)

    def _go(self, row: int) -> None:
        unknown = self._shown[row]
        self.wanted.emit(unknown.ref, unknown.field)
