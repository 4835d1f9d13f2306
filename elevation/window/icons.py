"""Our own icons, one ink, drawn in the colour of the text beside them."""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from elevation import places

SIZE = 20
"""Side of an icon in pixels before scaling."""


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
    text = (places.resources() / "icons" / f"{name}.svg").read_text(encoding="utf-8")
    renderer = QSvgRenderer(QByteArray(text.replace("currentColor", colour).encode()))
    pixels = QPixmap(round(side * ratio), round(side * ratio))
    pixels.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixels)
    renderer.render(painter, QRectF(0, 0, side * ratio, side * ratio))
    painter.end()
    pixels.setDevicePixelRatio(ratio)
    return pixels


def icon(name: str, colour: str, faded: str = "") -> QIcon:
    """An icon for menus and buttons, sharp at one and two device pixels.

    Parameters
    ----------
    name : str
    colour : str
        Ink.
    faded : str
        Ink of the disabled form; empty leaves it to Qt.

    Returns
    -------
    QIcon
    """
    made = QIcon()
    for ratio in (1.0, 2.0):
        made.addPixmap(picture(name, colour, SIZE, ratio))
        if faded:
            made.addPixmap(picture(name, faded, SIZE, ratio), QIcon.Mode.Disabled)
    return made


def mark_colour(weight: str, ink: str, accent: str) -> QColor:
    """The colour of a finding's mark: advice is drawn in ink, the others in the accent."""
    return QColor(ink if weight == "consider" else accent)
