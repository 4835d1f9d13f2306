"""One finding as a row: its mark, its sentence, and the remedies that can be tried."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QEnterEvent, QFocusEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from elevation.findings.model import Finding, Weight
from elevation.window.breakable import breakable
from elevation.window.overlay import paint_mark
from elevation.window.texts import tr
from elevation.window.theme import LIGHT, Theme, make_quiet
from elevation.window.wrapping_button import WrappingButton
from elevation.words import Style, msg

if TYPE_CHECKING:
    from elevation.planning.remedies import Remedy


def weight_word(weight: Weight) -> str:
    """The word for a weight."""
    words = {
        Weight.STOP: msg("Stop"),
        Weight.BROKEN: msg("Broken"),
        Weight.CONSIDER: msg("Consider"),
    }
    return tr(words[weight])


class Mark(QWidget):
    """A finding's shape."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.weight = Weight.CONSIDER
        self.theme: Theme = LIGHT
        self.setFixedSize(22, 22)

    def sizeHint(self) -> QSize:
        """As fixed."""
        return QSize(22, 22)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The shape of the weight."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colour = self.theme.ink if self.weight == Weight.CONSIDER else self.theme.accent
        paint_mark(painter, self.weight, QRectF(self.rect()).center() + QPointF(0, 1), 8.0, QColor(colour))
        painter.end()


class RemedyButton(WrappingButton):
    """One remedy: shown on the wall while the pointer or the keyboard is on it, applied by a click."""

    tried = Signal(object)
    applied = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._remedy: Remedy | None = None
        self.clicked.connect(self._apply)

    def offer(self, remedy: Remedy, style: Style) -> None:
        """Offer a remedy."""
        self._remedy = remedy
        self.set_words(tr(remedy.label, style))

    def _apply(self) -> None:
        if self._remedy is not None:
            self.applied.emit(self._remedy)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Try it."""
        super().enterEvent(event)
        self.tried.emit(self._remedy)

    def leaveEvent(self, event: QEvent) -> None:
        """Take the trial back."""
        super().leaveEvent(event)
        self.tried.emit(None)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keyboard tries it as the pointer does."""
        super().focusInEvent(event)
        self.tried.emit(self._remedy)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The keyboard has gone on."""
        super().focusOutEvent(event)
        self.tried.emit(None)


class FindingRow(QWidget):
    """One finding; a click opens its remedies."""

    entered = Signal(object)
    opened = Signal(object)
    tried = Signal(object)
    applied = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.finding: Finding | None = None
        self._is_brief = False
        self.mark = Mark(self)
        self.head = QToolButton(self)
        self.head.setCheckable(True)
        self.head.setAutoRaise(True)
        self.head.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.head.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        self.text = QLabel(self)
        self.text.setWordWrap(True)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self.authority = QLabel(self)
        self.authority.setWordWrap(True)
        make_quiet(self.authority)
        self.authority.setTextFormat(Qt.TextFormat.PlainText)
        self.more = QWidget(self)
        self.more_box = QVBoxLayout(self.more)
        self.more_box.setContentsMargins(0, 2, 0, 4)
        self.more_box.setSpacing(3)
        self.more.hide()
        grid = QGridLayout(self)
        grid.setContentsMargins(6, 3, 6, 3)
        grid.setHorizontalSpacing(6)
        grid.setVerticalSpacing(0)
        grid.addWidget(self.mark, 0, 0)
        grid.addWidget(self.head, 0, 1, Qt.AlignmentFlag.AlignLeft)
        grid.addWidget(self.text, 1, 1)
        grid.addWidget(self.authority, 2, 1)
        grid.addWidget(self.more, 3, 1)
        grid.setColumnStretch(1, 1)
        self.head.toggled.connect(self._open)

    def show_finding(self, finding: Finding, number: int, style: Style, theme: Theme, *, is_brief: bool = False) -> None:
        """Show a finding; what did not change is left alone.

        ``is_brief``: who says so and what to beware of stood with the one before; the eye is spared them, the ear is not.
        """
        same = finding is self.finding and theme is self.mark.theme and is_brief == self._is_brief
        self.finding, self._is_brief = finding, is_brief
        head = tr(msg("{number}  {weight}", number=number, weight=weight_word(finding.weight)))
        if self.head.text() != head:
            self.head.setText(head)
        if same:
            return
        self.mark.weight, self.mark.theme = finding.weight, theme
        self.mark.update()
        text = full = tr(finding.text, style)
        if finding.caution is not None:
            full = tr(msg("{finding} {caution}", finding=text, caution=tr(finding.caution, style)))
        shown = breakable(text if is_brief else full)
        if self.text.text() != shown:
            self.text.setText(shown)
        name = f"{head}: {full}"
        if self.head.accessibleName() != name:
            self.head.setAccessibleName(name)
        self.authority.setVisible(not is_brief)
        authority = tr(finding.authority, style)
        if self.authority.text() != authority:
            self.authority.setText(authority)

    def show_remedies(self, offered: tuple[Remedy, ...], none_because: str, style: Style) -> None:
        """Offer remedies, or say why there is none."""
        self.clear_remedies()
        before: QWidget = self.head
        for remedy in offered:
            button = RemedyButton(self.more)
            button.offer(remedy, style)
            button.tried.connect(self.tried)
            button.applied.connect(self.applied)
            self.more_box.addWidget(button)
            button.show()
            # A button made now stands last in Qt's own order: Tab would miss the remedies of the finding it opened.
            QWidget.setTabOrder(before, button)
            before = button
        if not offered:
            label = QLabel(none_because, self.more)
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
            self.more_box.addWidget(label)

    def clear_remedies(self) -> None:
        """Forget the remedies of another room."""
        while (item := self.more_box.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.setParent(None)
                widget.deleteLater()

    @property
    def buttons(self) -> list[RemedyButton]:
        """The remedies offered now."""
        items = (self.more_box.itemAt(index) for index in range(self.more_box.count()))
        widgets = [item.widget() for item in items if item is not None]
        return [widget for widget in widgets if isinstance(widget, RemedyButton)]

    def _open(self, is_open: bool) -> None:
        self.more.setVisible(is_open)
        self.opened.emit(self if is_open else None)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click anywhere on the finding opens it, or closes it."""
        if event.button() == Qt.MouseButton.LeftButton and self.rect().contains(event.position().toPoint()):
            self.head.toggle()
        super().mouseReleaseEvent(event)

    def enterEvent(self, event: QEnterEvent) -> None:
        """Point it out on the wall."""
        super().enterEvent(event)
        self.entered.emit(self.finding)

    def leaveEvent(self, event: QEvent) -> None:
        """Stop pointing."""
        super().leaveEvent(event)
        self.entered.emit(None)
