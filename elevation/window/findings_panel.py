"""What the rules found: weight by shape and word and number, on whose authority, and what would put it right."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QEnterEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QSizePolicy, QToolButton, QVBoxLayout, QWidget

from elevation.findings.model import Finding, Weight
from elevation.planning.remedies import Remedy, remedies
from elevation.room.model import Ref, Room
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.window.overlay import paint_mark
from elevation.window.texts import tr
from elevation.window.theme import LIGHT, Theme
from elevation.words import Style, msg

IDLE_MS = 250
"""Remedies are worked out when nobody has moved anything for this long."""

_Key = tuple[str, Ref]


def key_of(finding: Finding) -> _Key:
    """Rule and subject: the same finding after the room has changed a little."""
    return finding.rule, finding.subject


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


class RemedyButton(QPushButton):
    """One remedy: shown on the wall while the pointer or the keyboard is on it, applied by a click."""

    tried = Signal(object)
    applied = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._remedy: Remedy | None = None
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        self.clicked.connect(self._apply)

    def offer(self, remedy: Remedy, style: Style) -> None:
        """Offer a remedy."""
        self._remedy = remedy
        text = tr(remedy.label, style)
        self.setText(text.replace("&", "&&"))
        self.setAccessibleName(text)

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

    def focusInEvent(self, event: object) -> None:
        """The keyboard tries it as the pointer does."""
        super().focusInEvent(event)  # type: ignore[arg-type]
        self.tried.emit(self._remedy)

    def focusOutEvent(self, event: object) -> None:
        """The keyboard has gone on."""
        super().focusOutEvent(event)  # type: ignore[arg-type]
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
        self.mark = Mark(self)
        self.head = QToolButton(self)
        self.head.setCheckable(True)
        self.head.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.head.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        self.text = QLabel(self)
        self.text.setWordWrap(True)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self.authority = QLabel(self)
        self.authority.setWordWrap(True)
        self.authority.setProperty("quiet", True)
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

    def show_finding(self, finding: Finding, number: int, style: Style, theme: Theme) -> None:
        """Show a finding; what did not change is left alone."""
        same = finding is self.finding and theme is self.mark.theme
        self.finding = finding
        head = tr(msg("{number}  {weight}", number=number, weight=weight_word(finding.weight)))
        if self.head.text() != head:
            self.head.setText(head)
        if same:
            return
        self.mark.weight, self.mark.theme = finding.weight, theme
        self.mark.update()
        text = tr(finding.text, style)
        if finding.caution is not None:
            text = tr(msg("{finding} {caution}", finding=text, caution=tr(finding.caution, style)))
        if self.text.text() != text:
            self.text.setText(text)
            self.head.setAccessibleName(f"{head}: {text}")
        authority = tr(finding.authority, style)
        if self.authority.text() != authority:
            self.authority.setText(authority)

    def show_remedies(self, offered: tuple[Remedy, ...], none_because: str, style: Style) -> None:
        """Offer remedies, or say why there is none."""
        self.clear_remedies()
        for remedy in offered:
            button = RemedyButton(self.more)
            button.offer(remedy, style)
            button.tried.connect(self.tried)
            button.applied.connect(self.applied)
            self.more_box.addWidget(button)
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


class FindingsPanel(QWidget):
    """All findings, the heaviest first.

    Attributes
    ----------
    pointed : Signal(object)
        The finding to ring on the wall, or None.
    previewed : Signal(object)
        A room to show while a remedy is tried, or None.
    counted : Signal(int)
        How many findings there are.
    """

    pointed = Signal(object)
    previewed = Signal(object)
    counted = Signal(int)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.theme: Theme = LIGHT
        self.rows: list[FindingRow] = []
        self._shown: tuple[Finding, ...] | None = None
        self._open: _Key | None = None
        self._worked_for: tuple[Room, Finding] | None = None
        self._idle = QTimer(self)
        self._idle.setSingleShot(True)
        self._idle.setInterval(IDLE_MS)
        self._idle.timeout.connect(self.work_out)
        self._none = QLabel(tr(msg("Nothing stands in the way.")), self)
        self._none.setProperty("quiet", True)
        self._none.setContentsMargins(8, 4, 8, 8)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 2, 0, 6)
        self._box.setSpacing(2)
        self._box.addWidget(self._none)
        self._box.addStretch(1)
        self.refresh()

    def refresh(self) -> None:
        """Show what the rules find now; rows are reused, remedies wait until nothing moves."""
        findings = self._session.findings()
        if self._open is not None and self._session.gesture is None:
            self._idle.start()
        if findings is self._shown:
            return
        self._shown = findings
        style = style_for(self._session.room)
        while len(self.rows) < len(findings):
            self._add_row()
        for number, row in enumerate(self.rows, 1):
            if number > len(findings):
                row.hide()
                row.finding = None
                continue
            finding = findings[number - 1]
            row.show_finding(finding, number, style, self.theme)
            is_open = key_of(finding) == self._open
            if row.head.isChecked() != is_open:
                row.head.blockSignals(True)
                row.head.setChecked(is_open)
                row.head.blockSignals(False)
                row.more.setVisible(is_open)
                row.clear_remedies()
                self._worked_for = None
            row.show()
        self._none.setVisible(not findings)
        self.counted.emit(len(findings))

    def _add_row(self) -> None:
        row = FindingRow(self)
        row.entered.connect(self.pointed)
        row.opened.connect(self._on_opened)
        row.tried.connect(self._try)
        row.applied.connect(self._apply)
        self.rows.append(row)
        self._box.insertWidget(self._box.count() - 1, row)

    def _on_opened(self, row: FindingRow | None) -> None:
        self.previewed.emit(None)
        if row is None or row.finding is None:
            self._open = None
            return
        self._open = key_of(row.finding)
        for other in self.rows:
            if other is not row and other.head.isChecked():
                other.head.blockSignals(True)
                other.head.setChecked(False)
                other.head.blockSignals(False)
                other.more.hide()
        self._session.selection = row.finding.subject
        self.work_out()

    def open_finding(self, finding: Finding) -> None:
        """Open a finding's row (its mark on the wall was clicked)."""
        for row in self.rows:
            if row.finding is not None and key_of(row.finding) == key_of(finding):
                row.head.setChecked(True)
                row.head.setFocus()

    def work_out(self) -> None:
        """Work out the remedies of the open finding, once for each room."""
        if self._session.gesture is not None:
            return
        room = self._session.committed
        for row in self.rows:
            finding = row.finding
            if finding is None or not row.head.isChecked():
                continue
            if self._worked_for is not None and self._worked_for[0] is room and self._worked_for[1] is finding:
                return
            found = remedies(room, self._session.wall_id, self._session.scheme_id, finding, self._session.trade)
            style = style_for(room)
            because = tr(found.none_because, style) if found.none_because is not None else ""
            row.show_remedies(found.offered, because, style)
            self._worked_for = (room, finding)

    def _try(self, remedy: Remedy | None) -> None:
        self.previewed.emit(remedy.room if remedy is not None else None)

    def _apply(self, remedy: Remedy) -> None:
        self.previewed.emit(None)
        self._session.commit(remedy.room, remedy.label, self._session.selection or ())

    def set_theme(self, theme: Theme) -> None:
        """Marks in another ink."""
        self.theme = theme
        for row in self.rows:
            row.mark.theme = theme
            row.mark.update()

    def stop(self) -> None:
        """Nothing more is worked out."""
        self._idle.stop()
