"""Live proportions: how the wall is parted, in numbers and as small bars."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QMoveEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QVBoxLayout, QWidget

from elevation.findings.naming import where
from elevation.room.model import Ref
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.model import ProportionOut, SetOut, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.window.breakable import breakable
from elevation.window.measurements import sentence
from elevation.window.texts import tr
from elevation.window.theme import LIGHT, Theme, make_quiet
from elevation.words import Message, Mm, Percent, Ratio, Style, msg

MOST_PARTS = 5
"""More parts than this are drawn but not told in figures."""


class PartsBar(QWidget):
    """One whole in its parts, to scale, with oblique strokes between them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._parts: tuple[float, ...] = ()
        self.theme: Theme = LIGHT
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(16)

    def sizeHint(self) -> QSize:
        """A strip."""
        return QSize(120, 16)

    def show_parts(self, parts: tuple[float, ...]) -> None:
        """Show these lengths."""
        if parts != self._parts:
            self._parts = parts
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Every second part is filled."""
        del event
        total = sum(max(part, 0.0) for part in self._parts)
        if total <= 0:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        left, width = 4.0, self.width() - 8.0
        for index, part in enumerate(self._parts):
            run = max(part, 0.0) / total * width
            box = QRectF(left, 4.5, run, 7)
            painter.setPen(QPen(QColor(self.theme.quiet), 1))
            painter.setBrush(QColor(self.theme.held) if index % 2 else QColor(self.theme.field))
            painter.drawRect(box)
            left += run
        painter.end()


class _Row(QWidget):
    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.shows: tuple[ProportionOut, Style] | None = None
        self.name = QLabel(self)
        self.name.setTextFormat(Qt.TextFormat.PlainText)
        self.name.setWordWrap(True)
        self.bar = PartsBar(self)
        self.figures = QLabel(self)
        self.figures.setTextFormat(Qt.TextFormat.PlainText)
        self.figures.setWordWrap(True)
        make_quiet(self.figures)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 2, 0, 4)
        box.setSpacing(0)
        for widget in (self.name, self.bar, self.figures):
            box.addWidget(widget)


class ProportionsPanel(QWidget):
    """Glass figures and every proportion of the wall shown."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._set_out: SetOut | None = None
        self._is_behind = False
        self._lines: dict[Ref, tuple[TreatmentOut, Style, str]] = {}
        self.theme: Theme = LIGHT
        self.rows: list[_Row] = []
        self.glass = QLabel(self)
        self.glass.setTextFormat(Qt.TextFormat.PlainText)
        self.glass.setWordWrap(True)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(8, 4, 8, 8)
        self._box.setSpacing(2)
        self._box.addWidget(self.glass)
        self._box.addStretch(1)

    def refresh(self) -> None:
        """Show the wall as it is now; while a handle is held, rows out of sight wait until it is let go."""
        if not self._session.wall_id:
            return
        set_out, is_held = self._session.set_out(), self._session.gesture is not None
        if set_out is self._set_out and (is_held or not self._is_behind):
            return
        self._set_out = set_out
        self._show_glass(set_out)
        while len(self.rows) < len(set_out.proportions):
            row = _Row(self)
            row.bar.theme = self.theme
            self.rows.append(row)
            self._box.insertWidget(self._box.count() - 1, row)
        for row in self.rows[: len(set_out.proportions)]:
            if row.isHidden():
                row.show()
        for row in self.rows[len(set_out.proportions) :]:
            row.hide()
        self._show_rows(set_out, only_in_sight=is_held)

    def _show_rows(self, set_out: SetOut, *, only_in_sight: bool) -> None:
        style = style_for(self._session.room)
        sight = self.visibleRegion().boundingRect() if only_in_sight else None
        self._is_behind = False
        for row, proportion in zip(self.rows, set_out.proportions, strict=False):
            # A row that is laid out anew has the whole column laid out anew: that is worth it where somebody looks.
            if sight is not None and not sight.intersects(row.geometry()):
                self._is_behind = True
            elif row.shows != (proportion, style):
                row.shows = (proportion, style)
                self._show_row(row, proportion, style)

    def _catch_up(self) -> None:
        if self._is_behind and self._set_out is not None:
            self._show_rows(self._set_out, only_in_sight=True)

    def moveEvent(self, event: QMoveEvent) -> None:
        """Other rows come into sight."""
        super().moveEvent(event)
        self._catch_up()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Other rows may come into sight."""
        super().resizeEvent(event)
        self._catch_up()

    def _show_glass(self, set_out: SetOut) -> None:
        style = style_for(self._session.room)
        before, self._lines = self._lines, {}
        for treatment in set_out.treatments:
            line = before.get(treatment.ref)
            if line is None or line[0] is not treatment or line[1] != style:
                line = (treatment, style, tr(_glass_text(treatment), style))
            self._lines[treatment.ref] = line
        _set(self.glass, "\n".join(text for _, _, text in self._lines.values()))

    def _show_row(self, row: _Row, proportion: ProportionOut, style: Style) -> None:
        name = msg("{name}: {ratio}", name=proportion.name, ratio=Ratio(proportion.ratio))
        _set(row.name, sentence(tr(name, style)))
        row.bar.show_parts(tuple(round(value, 2) for _, value in proportion.parts))
        parts = [tr(msg("{part}: {length}", part=label, length=Mm(value)), style) for label, value in proportion.parts]
        # A wall of many parts would say its figures twice over: the form and the drawing have them.
        _set(row.figures, " · ".join(parts) if len(parts) <= MOST_PARTS else "")
        row.figures.setVisible(len(parts) <= MOST_PARTS)
        row.bar.setToolTip(" · ".join(parts))

    def set_theme(self, theme: Theme) -> None:
        """Bars in other inks."""
        self.theme = theme
        for row in self.rows:
            row.bar.theme = theme
            row.bar.update()


def _glass_text(treatment: TreatmentOut) -> Message:
    glass = treatment.glass
    # Never a bare number before a colon: it would read as a numbered list.
    name: Message | str = treatment.name or where(treatment)
    if glass.clear_open >= 0.9995:
        return msg("{name}: all of the glass is clear when open.", name=name)
    if treatment.mount in INSIDE:
        # No rod between the jambs is long enough to clear it.
        return msg("{name}: {clear} of the glass clear when open.", name=name, clear=Percent(glass.clear_open))
    return msg(
        "{name}: {clear} of the glass clear when open; a rod of {length} would clear it.",
        name=name,
        clear=Percent(glass.clear_open),
        length=Mm(glass.support_to_clear_mm),
    )


def _set(label: QLabel, text: str) -> None:
    text = breakable(text)
    if label.text() != text:
        label.setText(text)
