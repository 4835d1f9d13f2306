"""A sketch of a wall with the numbers of the new room's form on it: what the tape goes along for each of them."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

_WIDTH, _HEIGHT = 236, 210
_WALL = QRectF(34, 12, 192, 164)
_CASING = QRectF(110, 40, 74, 92)
_TRIM = 9.0
_OPENING = _CASING.adjusted(_TRIM, _TRIM, -_TRIM, -_TRIM)

LINES: dict[str, tuple[QLineF, QPointF]] = {
    "width": (QLineF(_WALL.left(), 190, _WALL.right(), 190), QPointF(150, 200)),
    "ceiling": (QLineF(20, _WALL.top(), 20, _WALL.bottom()), QPointF(10, 94)),
    "left": (QLineF(_WALL.left(), 64, _OPENING.left(), 64), QPointF(72, 54)),
    "opening_width": (QLineF(_OPENING.left(), 62, _OPENING.right(), 62), QPointF(160, 72)),
    "sill": (QLineF(134, _OPENING.bottom(), 134, _WALL.bottom()), QPointF(144, 154)),
    "opening_height": (QLineF(134, _OPENING.top(), 134, _OPENING.bottom()), QPointF(144, 98)),
    "casing": (QLineF(_OPENING.right(), 112, _CASING.right(), 112), QPointF(196, 112)),
}
"""Where the tape lies for each fact, and the middle of its number; px of the sketch."""


class NewRoomSketch(QWidget):
    """The wall in outline; the fact that has the keyboard is lit."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.lit = ""
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setFixedSize(_WIDTH, _HEIGHT)

    def sizeHint(self) -> QSize:
        """As drawn."""
        return QSize(_WIDTH, _HEIGHT)

    def light(self, key: str) -> None:
        """Light one fact's line; an empty key lights none."""
        if key != self.lit:
            self.lit = key
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Wall, trim and glass, then a line and a number for each fact."""
        del event
        palette = self.palette()
        ink = palette.color(QPalette.ColorRole.WindowText)
        quiet = palette.color(QPalette.ColorRole.PlaceholderText)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(ink, 1.6))
        painter.setBrush(palette.color(QPalette.ColorRole.Base))
        painter.drawRect(_WALL)
        painter.setPen(QPen(ink, 1.0))
        painter.drawRect(_CASING)
        painter.setBrush(palette.color(QPalette.ColorRole.AlternateBase))
        painter.drawRect(_OPENING)
        for number, key in enumerate(LINES, 1):
            is_lit = key == self.lit
            colour = palette.color(QPalette.ColorRole.Highlight) if is_lit else quiet
            self._tape(painter, key, QPen(colour, 2.6 if is_lit else 1.2))
            font = QFont(self.font())
            font.setBold(is_lit)
            painter.setFont(font)
            painter.setPen(colour if is_lit else ink)
            middle = LINES[key][1]
            place = QRectF(middle.x() - 12, middle.y() - 10, 24, 20)
            painter.drawText(place, int(Qt.AlignmentFlag.AlignCenter), str(number))
        painter.end()

    def _tape(self, painter: QPainter, key: str, pen: QPen) -> None:
        line = LINES[key][0]
        painter.setPen(pen)
        painter.drawLine(line)
        for end in (line.p1(), line.p2()):
            # An oblique stroke where the tape begins and ends, as on the drawing.
            painter.drawLine(end + QPointF(-3, 3), end + QPointF(3, -3))
