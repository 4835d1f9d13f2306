"""The section beside the elevation: the same canvas over another picture, its heights level with the elevation's."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace
from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from elevation.handles.model import Handle
from elevation.window import picking
from elevation.window.canvas import Canvas
from elevation.window.following_canvas import WHEEL_STEP, FollowingCanvas
from elevation.window.section_picture import SectionPicture
from elevation.window.texts import tr
from elevation.window.viewport import PX_PER_PAPER_MM, Viewport
from elevation.words import msg

if TYPE_CHECKING:
    from elevation.sheet.records import Dimension

WIDTH_PX = 232
_AXES = ("rod-height", "hem", "projection")


class SectionCanvas(FollowingCanvas):
    """The wall cut through what is selected.

    Nothing is worked out while it is hidden. Zooming and panning upwards are the elevation's, so that heights stay level.

    Parameters
    ----------
    elevation : Canvas
        The canvas beside which it stands.
    """

    def __init__(self, elevation: Canvas, parent: QWidget | None = None) -> None:
        self._aside_px = 0.0
        self.section = SectionPicture(elevation.session, elevation.picture)
        super().__init__(elevation, self.section, tr(msg("The wall in section, drawn to scale")), parent)
        self.setMinimumSize(170, 240)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:
        """Room for a wall, its cloth and two columns of heights."""
        return QSize(WIDTH_PX, 480)

    # -- where it stands -------------------------------------------------------------

    def _in_line(self, lead: Viewport) -> Viewport:
        extent = self.section.extent(lead)
        middle = (extent[0] + extent[2]) / 2 * PX_PER_PAPER_MM
        top = self._elevation.mapToGlobal(QPointF(0, 0)).y() - self.mapToGlobal(QPointF(0, 0)).y()
        return Viewport(lead.px_per_mm, self.width() / 2 - middle + self._aside_px, lead.y + top)

    def fit(self) -> None:
        """The elevation decides what is seen; sideways it stands in the middle."""
        self._aside_px = 0.0
        self.follow()

    def zoom(self, factor: float, x: float | None = None, y: float | None = None) -> None:
        """Zoom both, about the height of a pixel."""
        self._elevation.zoom(factor, None, y)
        del x

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer's height; with Shift, or sideways, shift the section."""
        delta = event.angleDelta()
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier or abs(delta.x()) > abs(delta.y()):
            self._aside_px += delta.x() / 2 or delta.y() / 2
            self.follow()
        else:
            self.zoom(WHEEL_STEP ** (delta.y() / 120.0), None, event.position().y())
        event.accept()

    def _pan(self, place: QPointF) -> None:
        if self._pan_from is not None:
            self._aside_px += place.x() - self._pan_from.x()
            self._elevation.shift(0.0, place.y() - self._pan_from.y())
            self._pan_from = place
            self.follow()
            self._settle_cursor()

    # -- handles -----------------------------------------------------------------------

    def _placed(self, handles: tuple[Handle, ...]) -> tuple[Handle, ...]:
        if not self.session.wall_id:
            return ()
        hangings = {hanging.layer.ref: hanging for hanging in self.section.cut(self.session.room).hangings}
        placed = []
        for handle in handles:
            hanging = hangings.get(handle.ref)
            if hanging is None or handle.axis not in _AXES:
                continue
            height = hanging.layer.support.height_mm
            hem = hanging.hem_mm if hanging.hem_mm is not None else height - 400.0
            at = {
                "rod-height": (hanging.centre_mm, height),
                "hem": (hanging.centre_mm, hem),
                # Under the rod, on the cloth itself: at the rod the two would lie on each other.
                "projection": (hanging.front_mm, height - (height - hem) * 0.3),
            }[handle.axis]
            placed.append(replace(handle, at=at))
        return tuple(placed)

    def _click(self, x: float, y: float) -> None:
        groups = self.picture.groups(self.viewport, self._shown)
        dimension: Dimension | None = picking.dimension_at(groups, self.viewport, x, y)
        if dimension is not None and dimension.field:
            self.dimension_clicked.emit(dimension.ref, dimension.field)
