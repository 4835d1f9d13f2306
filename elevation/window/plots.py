"""The one module that knows the plotting library: loaded only after the first picture stands."""

from __future__ import annotations

from collections.abc import Sequence

import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QVBoxLayout, QWidget

from elevation.window.theme import LIGHT, Theme


class CurvePlot(QWidget):
    """A curve over lengths, with a line at the present one that can be dragged.

    Attributes
    ----------
    moved : Signal(float)
        The line is being dragged: the length in mm.
    dropped : Signal()
        It was let go.
    stepped : Signal(int)
        An arrow key: graduations to the right.
    """

    moved = Signal(float)
    dropped = Signal()
    stepped = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._per_unit = 1.0
        self._plot = pg.PlotWidget(self, enableMenu=False)
        self._plot.hideButtons()
        # The library makes a menu that nobody owns, even where none is wanted: it must go when we go.
        menu = self._plot.getPlotItem().ctrlMenu
        if menu is not None:
            menu.setParent(self, menu.windowFlags())
        self._plot.setMouseEnabled(False, False)
        self._plot.setMinimumHeight(150)
        self._plot.setYRange(0.0, 100.0, padding=0.04)
        self._plot.getViewBox().setLimits(yMin=-5.0, yMax=105.0)
        for side in ("left", "bottom"):
            # Figures are said in the room's unit, not in thousandths of it.
            self._plot.getAxis(side).enableAutoSIPrefix(False)
        self._curve = self._plot.plot([], [], antialias=True)
        self._marks: list[pg.GraphicsObject] = []
        self._theme: Theme = LIGHT
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._line = pg.InfiniteLine(movable=True, angle=90)
        self._plot.addItem(self._line)
        self._line.sigDragged.connect(self._on_dragged)
        self._line.sigPositionChangeFinished.connect(self._on_finished)
        box = QVBoxLayout(self)
        box.setContentsMargins(2, 2, 2, 2)
        box.addWidget(self._plot)

    @property
    def is_dragged(self) -> bool:
        """Whether the line is under the pointer's hold."""
        return bool(self._line.moving)

    def show_curve(
        self,
        lengths_mm: Sequence[float],
        values: Sequence[float],
        per_unit: float,
        marks: Sequence[tuple[float, float, str]] = (),
        *,
        limits: Sequence[tuple[float, float, float]] = (),
        is_length: bool = False,
    ) -> None:
        """Show a curve.

        Parameters
        ----------
        lengths_mm : sequence of float
        values : sequence of float
            Percent, or mm where ``is_length``.
        per_unit : float
            mm for one unit of the axis.
        marks : sequence of (float, float, str)
            Places with a name: length and value as above, and what is written there.
        limits : sequence of (float, float, float)
            Lines that should not be passed: from, to and value.
        is_length : bool
        """
        self._per_unit = per_unit
        xs = [length / per_unit for length in lengths_mm]
        scale = per_unit if is_length else 1.0
        ys = [value / scale for value in values]
        self._curve.setData(xs, ys)
        self._show_range([*ys, *(value / scale for _, _, value in limits)] if ys else [], is_length=is_length)
        if xs:
            self._plot.setXRange(xs[0], xs[-1], padding=0.02)
        self._show_marks([(at / per_unit, value / scale, text) for at, value, text in marks])
        for left, right, value in limits:
            pen = pg.mkPen(self._theme.accent, width=1.2, style=Qt.PenStyle.DashLine)
            item = pg.PlotDataItem([left / per_unit, right / per_unit], [value / scale] * 2, pen=pen)
            self._plot.addItem(item)
            self._marks.append(item)
        if xs:
            self._line.setBounds((xs[0], xs[-1]))

    def _show_range(self, ys: Sequence[float], *, is_length: bool) -> None:
        box = self._plot.getViewBox()
        if is_length and ys:
            spread = max(max(ys) - min(ys), 1e-6)
            box.setLimits(yMin=min(ys) - spread, yMax=max(ys) + spread)
            self._plot.setYRange(min(ys), max(ys), padding=0.08)
        else:
            box.setLimits(yMin=-5.0, yMax=105.0)
            self._plot.setYRange(0.0, 100.0, padding=0.04)

    def _show_marks(self, marks: Sequence[tuple[float, float, str]]) -> None:
        for old in self._marks:
            self._plot.removeItem(old)
        self._marks = []
        (left, right), (low, high) = self._plot.getViewBox().viewRange()
        for x, y, text in marks:
            dot = pg.ScatterPlotItem([x], [y], size=8, pen=pg.mkPen(self._theme.ink), brush=pg.mkBrush(self._theme.field))
            # Upright beside the line, away from the nearer edge: marks may stand closer together than texts are wide.
            is_low = (y - low) * 2 <= high - low
            beside = 1.05 if (x - left) * 8 >= right - left else -0.05
            anchor = (-0.12 if is_low else 1.12, beside)
            label = pg.TextItem(text, color=self._theme.ink, anchor=anchor, angle=90)
            label.setPos(x, y)
            for item in (dot, label):
                self._plot.addItem(item)
                self._marks.append(item)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the line by a graduation, with Shift by ten."""
        way = {Qt.Key.Key_Left: -1, Qt.Key.Key_Down: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Up: 1}.get(Qt.Key(event.key()))
        if way is None:
            super().keyPressEvent(event)
            return
        self.stepped.emit(way * (10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1))

    def paintEvent(self, event: QPaintEvent) -> None:
        """A ring in the ink of what is held shows that the keyboard is here."""
        super().paintEvent(event)
        if self.hasFocus():
            painter = QPainter(self)
            painter.setPen(QPen(QColor(self._theme.held), 2))
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
            painter.end()

    def show_present(self, length_mm: float) -> None:
        """Put the line where the room has it; a line under the hand is left to the hand."""
        if not self.is_dragged:
            self._line.setPos(length_mm / self._per_unit)

    def set_labels(self, below: str, beside: str) -> None:
        """Say what the axes are, with their units."""
        self._plot.setLabel("bottom", below)
        self._plot.setLabel("left", beside)

    def set_theme(self, theme: Theme) -> None:
        """The library does not follow the palette by itself."""
        self._theme = theme
        self._plot.setBackground(theme.field)
        for side in ("left", "bottom"):
            axis = self._plot.getAxis(side)
            axis.setPen(pg.mkPen(theme.quiet))
            axis.setTextPen(pg.mkPen(theme.quiet))
        self._curve.setPen(pg.mkPen(theme.ink, width=1.6))
        self._line.setPen(pg.mkPen(theme.held, width=2))
        self._line.setHoverPen(pg.mkPen(theme.accent, width=2))

    def _on_dragged(self, line: pg.InfiniteLine) -> None:
        self.moved.emit(float(line.value()) * self._per_unit)

    def _on_finished(self, line: pg.InfiniteLine) -> None:
        del line
        self.dropped.emit()
