"""Where the section stands: at the right of the elevation, made when it is first asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget

from elevation.window.canvas import Canvas
from elevation.window.theme import Theme

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow
    from elevation.window.section_canvas import SectionCanvas

NAME = "section"
"""Its name among the settings, beside the drawers."""


class SectionPlace(QSplitter):
    """The elevation's canvas, and beside it the section when that is switched on.

    Attributes
    ----------
    canvas : SectionCanvas or None
        None until it was first shown.
    """

    def __init__(self, elevation: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._elevation = elevation
        self.canvas: SectionCanvas | None = None
        self.addWidget(elevation)
        self.setChildrenCollapsible(False)
        self.setHandleWidth(1)
        self.setStretchFactor(0, 1)

    def show_section(self, is_shown: bool, window: MainWindow) -> None:
        """Show or hide the section."""
        if not is_shown:
            if self.canvas is not None:
                self.canvas.hide()
            return
        if self.canvas is None:
            # Loaded with its first showing: nobody waits for it at the start.
            from elevation.window.section_canvas import WIDTH_PX, SectionCanvas

            self.canvas = SectionCanvas(self._elevation)
            self.canvas.dimension_clicked.connect(window.show_field)
            self.addWidget(self.canvas)
            self.setStretchFactor(1, 0)
            self.setSizes([max(self.width() - WIDTH_PX, WIDTH_PX), WIDTH_PX])
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
