"""Our own icons, one ink, drawn in the colour of the text beside them and only when they are seen."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QIcon, QIconEngine, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from elevation import places


def _renderer(name: str, colour: str) -> QSvgRenderer:
    text = (places.resources() / "icons" / f"{name}.svg").read_text(encoding="utf-8")
    return QSvgRenderer(QByteArray(text.replace("currentColor", colour).encode()))


def picture(name: str, colour: str, side: int, ratio: float = 1.0) -> QPixmap:
    """An icon as pixels.

    Parameters
    ----------
    name : str
        A file of ``resources/icons`` without its ending.
    colour : str
        ``#rrggbb``.
    side : int
        Side in device-independent pixels.
    ratio : float
        Device pixels for one of those.

    Returns
    -------
    QPixmap
    """
    pixels = QPixmap(round(side * ratio), round(side * ratio))
    pixels.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixels)
    _renderer(name, colour).render(painter, QRectF(0, 0, side * ratio, side * ratio))
    painter.end()
    pixels.setDevicePixelRatio(ratio)
    return pixels


class _Engine(QIconEngine):
    """Draws the file when it is asked to, at whatever size."""

    def __init__(self, name: str, colour: str, faded: str) -> None:
        super().__init__()
        self._name, self._colour, self._faded = name, colour, faded
        self._made: dict[str, QSvgRenderer] = {}

    def paint(self, painter: QPainter, rect: QRect, mode: QIcon.Mode, state: QIcon.State) -> None:
        """Draw into ``rect``."""
        del state
        colour = self._faded if mode == QIcon.Mode.Disabled else self._colour
        if colour not in self._made:
            self._made[colour] = _renderer(self._name, colour)
        self._made[colour].render(painter, QRectF(rect))

    def pixmap(self, size: QSize, mode: QIcon.Mode, state: QIcon.State) -> QPixmap:
        """The same as pixels."""
        pixels = QPixmap(size)
        pixels.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixels)
        self.paint(painter, QRect(0, 0, size.width(), size.height()), mode, state)
        painter.end()
        return pixels

    def clone(self) -> QIconEngine:
        """Another of the same."""
        return _Engine(self._name, self._colour, self._faded)


def icon(name: str, colour: str, faded: str = "") -> QIcon:
    """An icon for menus and buttons, sharp at any size.

    Parameters
    ----------
    name : str
    colour : str
        Ink.
    faded : str
        Ink of the disabled form; empty: the same.

    Returns
    -------
    QIcon
    """
    return QIcon(_Engine(name, colour, faded or colour))
