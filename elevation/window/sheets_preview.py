"""One page as it will be printed, as large as there is room for, by the painters that print it."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPixmap, QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from elevation.output.painters.replay import replay
from elevation.sheet.inks import colour
from elevation.sheet.records import Ink, Picture
from elevation.window.texts import tr
from elevation.window.theme import Theme
from elevation.words import msg

_BORDER = 14
_WHEEL = 120
_TURNS = {
    Qt.Key.Key_PageDown: 1, Qt.Key.Key_PageUp: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1,
    Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1,
}  # fmt: skip


class SheetPreview(QWidget):
    """A page on the desk.

    Attributes
    ----------
    turned : Signal(int)
        Somebody turns pages: by this many.
    """

    turned = Signal(int)

    def __init__(self, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.theme = theme
        self._picture: Picture | None = None
        self._message = ""
        self._kept: tuple[Picture, QSize, float, QPixmap] | None = None
        self._rolled = 0
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(300, 220)
        self.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        self.setAccessibleName(tr(msg("Page as it will be printed")))

    def show_page(self, picture: Picture) -> None:
        """Show a page."""
        self._picture, self._message = picture, ""
        self.setAccessibleDescription(picture.description or picture.title)
        self.update()

    def say(self, text: str) -> None:
        """Show a sentence where the page would be."""
        self._picture, self._message = None, text
        self.setAccessibleDescription(text)
        self.update()

    def page_rect(self) -> QRect:
        """Where the page lies in the widget; empty where none is shown."""
        page = None if self._picture is None else self._picture.page
        if page is None:
            return QRect()
        wide, high = max(self.width() - 2 * _BORDER, 1), max(self.height() - 2 * _BORDER, 1)
        unit = min(wide / page.width_mm, high / page.height_mm)
        size = QSize(round(page.width_mm * unit), round(page.height_mm * unit))
        return QRect((self.width() - size.width()) // 2, (self.height() - size.height()) // 2, size.width(), size.height())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Desk, page, and the line of whoever has the keyboard."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self.theme.desk))
        place = self.page_rect()
        if self._picture is not None and not place.isEmpty():
            painter.fillRect(place.adjusted(-1, -1, 1, 1), QColor(0, 0, 0, 60))
            painter.drawPixmap(place.topLeft(), self._pixmap(self._picture, place.size()))
        elif self._message:
            painter.setPen(QColor(self.theme.ink))
            room = self.rect().adjusted(40, 20, -40, -20)
            painter.drawText(room, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, self._message)
        if self.hasFocus():
            painter.setPen(QColor(self.theme.held))
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
        painter.end()

    def _pixmap(self, picture: Picture, size: QSize) -> QPixmap:
        ratio = self.devicePixelRatioF()
        if self._kept is not None and self._kept[0] is picture and self._kept[1:3] == (size, ratio):
            return self._kept[3]
        pixmap = QPixmap(size * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(QColor(colour(Ink.PAPER)))
        page = picture.page
        if page is not None:
            painter = QPainter(pixmap)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            replay(picture, painter, size.width() / page.width_mm)
            painter.end()
        self._kept = (picture, size, ratio, pixmap)
        return pixmap

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows and the page keys turn pages."""
        way = _TURNS.get(Qt.Key(event.key()))
        if way is None:
            super().keyPressEvent(event)
        else:
            self.turned.emit(way)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """A notch of the wheel turns a page."""
        self._rolled += event.angleDelta().y()
        while abs(self._rolled) >= _WHEEL:
            way = 1 if self._rolled < 0 else -1
            self._rolled += way * _WHEEL
            self.turned.emit(way)
        event.accept()
