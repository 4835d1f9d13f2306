"""The one module that knows the plotting library: loaded only after the first picture stands."""

from __future__ import annotations

from collections.abc import Sequence

import pyqtgraph as pg
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from elevation.window.theme import Theme


class CurvePlot(QWidget):
    """A curve over lengths, with a line at the present one that can be dragged.

    Attributes
    ----------
    moved : Signal(float)
        The line is being dragged: the length in mm.
    dropped : Signal()
        It was let go.
    """

    moved = Signal(float)
    dropped = Signal()

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
        self._plot.setMinimumHeight(120)
        self._plot.setYRange(0.0, 100.0, padding=0.04)
        self._plot.getViewBox().setLimits(yMin=-5.0, yMax=105.0)
        self._curve = self._plot.plot([], [], antialias=True)
        self._line = pg.InfiniteLine(movable=True, angle=90)
        self._plot.addItem(self._line)
        self._line.sigDragged.connect(self._on_dragged)
        self._line.sigPositionChangeFinished.connect(self._on_finished)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(self._plot)

    @property
    def is_dragged(self) -> bool:
        """Whether the line is under the pointer's hold."""
        return bool(self._line.moving)

    def show_curve(self, lengths_mm: Sequence[float], percents: Sequence[float], per_unit: float) -> None:
        """Show a curve.

        Parameters
        ----------
        lengths_mm : sequence of float
        percents : sequence of float
            0 to 100.
        per_unit : float
            mm for one unit of the axis.
        """
        self._per_unit = per_unit
        xs = [length / per_unit for length in lengths_mm]
        self._curve.setData(xs, list(percents))
        if xs:
            self._plot.setXRange(xs[0], xs[-1], padding=0.02)
            self._line.setBounds((xs[0], xs[-1]))

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
