"""Colours of cloth to choose from."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QAction, QColor, QIcon, QPainter, QPen, QPixmap
from PySide6.QtWidgets import QMenu, QToolButton, QWidget

from elevation.window.texts import tr
from elevation.words import msg

CLOTHS = (
    ("#b9704a", msg("terracotta")),
    ("#7d2f2f", msg("oxblood")),
    ("#c99a2e", msg("ochre")),
    ("#cdb892", msg("oat")),
    ("#efe6d2", msg("unbleached")),
    ("#f6f3ec", msg("white")),
    ("#9aa58a", msg("sage")),
    ("#4f6b57", msg("bottle green")),
    ("#6f8ea6", msg("dusk blue")),
    ("#2f4257", msg("indigo")),
    ("#8d7b8f", msg("heather")),
    ("#8b8378", msg("stone")),
    ("#4b4a4d", msg("slate")),
)
_SIDE = 18


def swatch(colour: str) -> QIcon:
    """A square of a colour."""
    pixels = QPixmap(2 * _SIDE, 2 * _SIDE)
    pixels.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixels)
    painter.setPen(QPen(QColor("#5b6772"), 2))
    painter.setBrush(QColor(colour))
    painter.drawRect(2, 2, 2 * _SIDE - 4, 2 * _SIDE - 4)
    painter.end()
    pixels.setDevicePixelRatio(2.0)
    return QIcon(pixels)


class SwatchButton(QToolButton):
    """Shows a cloth's colour and offers others by name.

    Attributes
    ----------
    picked : Signal(str)
        ``#rrggbb``.
    """

    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._colour = ""
        name = tr(msg("Colours of cloth"))
        self.setToolTip(name)
        self.setAccessibleName(name)
        self.setIconSize(QSize(_SIDE, _SIDE))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        # Filled when it opens: a dozen icons are not worth the start's time.
        self._menu = QMenu(self)
        self._menu.aboutToShow.connect(self._fill)
        self._menu.triggered.connect(self._pick)
        self.setMenu(self._menu)

    def show_colour(self, colour: str) -> None:
        """Show the present colour."""
        if colour != self._colour and QColor.isValidColorName(colour):
            self._colour = colour
            self.setIcon(swatch(colour))

    def _fill(self) -> None:
        if not self._menu.isEmpty():
            return
        for colour, name in CLOTHS:
            action = self._menu.addAction(swatch(colour), tr(name))
            action.setData(colour)

    def _pick(self, action: QAction) -> None:
        self.picked.emit(str(action.data()))
