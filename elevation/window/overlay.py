"""What lies over the picture on the canvas: handles, the readout at the pointer, marks of what is pointed out."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from msgspec import Struct
from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen, QPolygonF

from elevation.handles.model import Handle
from elevation.setting_out.model import Point
from elevation.window.theme import Theme

RADIUS = 5.5
WIDEST_PX = 330.0
"""A readout line breaks where it would be longer."""


class Said(Struct, frozen=True, gc=False):
    """One line of the readout: text, and how it is told (``figure``, ``plain``, ``broken``)."""

    text: str
    kind: str = "plain"


def paint_handle(painter: QPainter, handle: Handle, place: Point, *, is_hot: bool, is_focused: bool) -> None:
    """A handle: a disc with two arrow heads along its axis.

    Parameters
    ----------
    painter : QPainter
        In widget pixels.
    handle : Handle
    place : Point
        Pixels.
    is_hot : bool
        Under the pointer or held.
    is_focused : bool
        The keyboard's handle.
    """
    # The paper is always light, so the marks on it keep the light theme's dark teal.
    held, paper = QColor("#0f5a63"), QColor("#fdfbf7")
    painter.save()
    painter.translate(*place)
    if handle.along == "y":
        painter.rotate(90)
    radius = RADIUS + 1.5 if is_hot else RADIUS
    if is_focused:
        painter.setPen(QPen(paper, 5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(QPointF(), radius + 5, radius + 5)
        painter.setPen(QPen(held, 2))
        painter.drawEllipse(QPointF(), radius + 5, radius + 5)
    painter.setPen(QPen(paper, 1.2))
    painter.setBrush(held)
    for way in (-1, 1):
        tip, foot = way * (radius + 6), way * (radius + 1)
        painter.drawPolygon(QPolygonF([QPointF(tip, 0), QPointF(foot, -4.5), QPointF(foot, 4.5)]))
    painter.setPen(QPen(held, 2))
    painter.setBrush(held if is_hot else paper)
    painter.drawEllipse(QPointF(), radius, radius)
    painter.restore()


def paint_readout(painter: QPainter, lines: Sequence[Said], at: Point, size: QSizeF, theme: Theme, font: QFont) -> QRectF:
    """The readout beside a place, always inside the canvas.

    Parameters
    ----------
    painter : QPainter
    lines : sequence of Said
    at : Point
        The pointer or the handle, pixels.
    size : QSizeF
        Of the canvas.
    theme : Theme
    font : QFont

    Returns
    -------
    QRectF
        Where it stands.
    """
    strong = QFont(font)
    strong.setWeight(QFont.Weight.DemiBold)
    fonts = {"figure": strong, "plain": font, "broken": font}
    widest = min(max(size.width() * 0.6, 160.0), WIDEST_PX)
    room, height = 0.0, 0.0
    rows: list[tuple[Said, float, float]] = []
    for line in lines:
        metrics = QFontMetricsF(fonts[line.kind])
        indent = 18.0 if line.kind == "broken" else 0.0
        box = metrics.boundingRect(QRectF(0, 0, widest - indent, 1000), Qt.TextFlag.TextWordWrap, line.text)
        room = max(room, ceil(box.width()) + indent)
        rows.append((line, indent, box.height()))
        height += box.height()
    frame = QRectF(at[0] + 18, at[1] + 18, room + 18, height + 10)
    if frame.right() > size.width() - 4:
        frame.moveRight(at[0] - 18)
    if frame.bottom() > size.height() - 4:
        frame.moveBottom(at[1] - 18)
    frame.moveLeft(max(frame.left(), 4.0))
    frame.moveTop(max(frame.top(), 4.0))
    painter.setPen(QPen(QColor(theme.line), 1))
    painter.setBrush(QColor(theme.field))
    painter.drawRoundedRect(frame, 3, 3)
    top = frame.top() + 5
    for line, indent, tall in rows:
        painter.setFont(fonts[line.kind])
        painter.setPen(QColor(theme.accent if line.kind == "broken" else theme.ink))
        place = QRectF(frame.left() + 9 + indent, top, room - indent + 2, tall)
        painter.drawText(place, int(Qt.TextFlag.TextWordWrap), line.text)
        if line.kind == "broken":
            paint_mark(painter, "broken", QPointF(frame.left() + 15, top + 9), 6.0, QColor(theme.accent))
        top += tall
    return frame


def mark_path(weight: str, centre: QPointF, radius: float) -> QPainterPath:
    """The shape that tells a finding's weight: eight corners stop, three broken, none advice."""
    path = QPainterPath()
    x, y = centre.x(), centre.y()
    if weight == "stop":
        cut = radius * 0.414
        corners = [(-cut, -1), (cut, -1), (1, -cut), (1, cut), (cut, 1), (-cut, 1), (-1, cut), (-1, -cut)]
        corners = [(a if abs(a) == 1 else a / radius, b if abs(b) == 1 else b / radius) for a, b in corners]
        path.addPolygon(QPolygonF([QPointF(x + a * radius, y + b * radius) for a, b in corners]))
        path.closeSubpath()
    elif weight == "broken":
        corners = [(0, -1.05), (1.1, 0.85), (-1.1, 0.85)]
        path.addPolygon(QPolygonF([QPointF(x + a * radius, y + b * radius) for a, b in corners]))
        path.closeSubpath()
    else:
        path.addEllipse(centre, radius * 0.95, radius * 0.95)
    return path


def paint_mark(painter: QPainter, weight: str, centre: QPointF, radius: float, colour: QColor) -> None:
    """A finding's mark: a stop is filled, the others are outlines."""
    painter.setPen(QPen(colour, 1.6))
    painter.setBrush(colour if weight == "stop" else Qt.BrushStyle.NoBrush)
    painter.drawPath(mark_path(weight, centre, radius))


def paint_pointed(painter: QPainter, place: Point) -> None:
    """A ring around what a finding is about."""
    for colour, width in (("#fdfbf7", 5.0), ("#ab3218", 2.2)):
        painter.setPen(QPen(QColor(colour), width))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(QPointF(*place), 19.0, 19.0)
