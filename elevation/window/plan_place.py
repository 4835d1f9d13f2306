"""Where the plan stands: under the elevation, made when it is first asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget

from elevation.window.canvas import Canvas
from elevation.window.theme import Theme

if TYPE_CHECKING:
    from elevation.window.plan_canvas import PlanCanvas

_MOST = 0.28
"""The part of the height that the plan takes at most until somebody asks for more."""

NAME = "plan"
"""Its name among the settings, beside the drawers."""


class PlanPlace(QSplitter):
    """What stands over the plan, and the plan when that is switched on.

    Parameters
    ----------
    above : QWidget
        The elevation with what stands beside it.
    elevation : Canvas
        The elevation, which the plan is kept in line with.

    Attributes
    ----------
    canvas : PlanCanvas or None
        None until it was first shown.
    """

    def __init__(self, above: QWidget, elevation: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)
        self._elevation = elevation
        self.canvas: PlanCanvas | None = None
        self.addWidget(above)
        self.setChildrenCollapsible(False)
        self.setHandleWidth(1)
        self.setStretchFactor(0, 1)

    def show_plan(self, is_shown: bool) -> None:
        """Show or hide the plan."""
        if not is_shown:
            if self.canvas is not None:
                self.canvas.hide()
            return
        if self.canvas is None:
            # Loaded with its first showing: nobody waits for it at the start.
            from elevation.window.plan_canvas import HEIGHT_PX, PlanCanvas

            self.canvas = PlanCanvas(self._elevation)
            self.addWidget(self.canvas)
            self.setStretchFactor(1, 0)
            # A bay takes more than a flat wall, but never most of the window.
            high = min(self.canvas.wanted_px(), max(round(self.height() * _MOST), HEIGHT_PX))
            self.setSizes([max(self.height() - high, HEIGHT_PX), high])
        self.canvas.set_theme(self._elevation.theme)
        self.canvas.show()

    def set_theme(self, theme: Theme) -> None:
        """Another desk around the paper."""
        if self.canvas is not None:
            self.canvas.set_theme(theme)

    def release_session(self) -> None:
        """Stop listening to the session."""
        if self.canvas is not None:
            self.canvas.release_session()
