"""A fixed picture of 328 primitives, never edited: the yardstick of picture and engine weight."""

from __future__ import annotations

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QImage, QLinearGradient, QPainter, QPainterPath, QPen, QPicture


def calibration_picture() -> QPicture:
    """200 lines, 40 rectangles, 48 filled curves with gradients and 40 short texts on 1400 x 900."""
    picture = QPicture()
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(QColor("#1f2d3a"), 1.0, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
    for i in range(200):
        x, y = (i * 37) % 1400, (i * 53) % 900
        painter.drawLine(QPointF(x, y), QPointF(x + 60 * math.cos(i), y + 60 * math.sin(i)))
    for i in range(40):
        painter.drawRect(QRectF((i * 71) % 1300, (i * 97) % 800, 90, 60))
    for i in range(48):
        x, y = (i % 12) * 110.0 + 20, (i // 12) * 220.0 + 10
        path = QPainterPath(QPointF(x, y))
        path.cubicTo(QPointF(x + 10, y + 60), QPointF(x - 10, y + 120), QPointF(x, y + 190))
        path.lineTo(QPointF(x + 40, y + 190))
        path.cubicTo(QPointF(x + 30, y + 120), QPointF(x + 50, y + 60), QPointF(x + 40, y))
        path.closeSubpath()
        shade = QLinearGradient(x, y, x + 40, y)
        shade.setColorAt(0, QColor("#c07a55"))
        shade.setColorAt(0.5, QColor("#8f5236"))
        shade.setColorAt(1, QColor("#c98a66"))
        painter.fillPath(path, shade)
    painter.setFont(QFont("Source Sans Pro", 10))
    for i in range(40):
        painter.drawText(QPointF((i * 83) % 1300 + 10, (i * 61) % 860 + 20), f"{i * 3} 1/2")
    painter.end()
    return picture


def replay_calibration(picture: QPicture, image: QImage) -> None:
    """Replay it once on ``image``."""
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.drawPicture(0, 0, picture)
    painter.end()
