"""A canvas that keeps in line with the elevation: what the section beside it and the plan under it have in common."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Collection

from PySide6.QtCore import QPointF
from PySide6.QtGui import QHideEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QWidget

from elevation.handles.model import Handle
from elevation.handles.remembered import Key
from elevation.session.events import Event
from elevation.setting_out.model import Point
from elevation.window import picking
from elevation.window.canvas import Canvas
from elevation.window.canvas_picture import CanvasPicture
from elevation.window.viewport import Viewport

WHEEL_STEP = 1.15


class FollowingCanvas(Canvas):
    """Another view of the wall, at the elevation's scale. Nothing is worked out while it is hidden.

    Parameters
    ----------
    elevation : Canvas
        The canvas that decides scale and place.
    picture : CanvasPicture
        What it shows.
    name : str
        Said to screen readers.
    """

    def __init__(self, elevation: Canvas, picture: CanvasPicture, name: str, parent: QWidget | None = None) -> None:
        self._elevation = elevation
        super().__init__(elevation.session, parent)
        self.picture = picture
        self.setAccessibleName(name)
        self.theme = elevation.theme
        elevation.view_changed.connect(self.follow)
        self._shown = elevation.shown

    def follow(self) -> None:
        """Stand at the elevation's scale and in line with it."""
        if not self.isVisible() or not self.session.wall_id:
            return
        if self._shown != self._elevation.shown:
            self._shown = self._elevation.shown
            self.update()
        viewport = self._in_line(self._elevation.viewport)
        if viewport != self.viewport:
            self.viewport = viewport
            self.update()
            self.view_changed.emit()

    @abstractmethod
    def _in_line(self, lead: Viewport) -> Viewport:
        """Where it stands while the elevation stands at ``lead``."""

    @abstractmethod
    def _placed(self, handles: tuple[Handle, ...]) -> tuple[Handle, ...]:
        """Those of the handles that it shows, where it shows them."""

    def handles(self) -> tuple[Handle, ...]:
        """The handles that belong here, where this view shows them."""
        return self._placed(self.session.handles())

    def some_handles(self, keys: Collection[Key]) -> dict[Key, Handle]:
        """The same of those that are asked for."""
        return {handle.key: handle for handle in self._placed(tuple(self.session.some_handles(keys).values()))}

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stay where it stands."""
        super().resizeEvent(event)
        self.follow()

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with the room."""
        super().showEvent(event)
        self.follow()

    def hideEvent(self, event: QHideEvent) -> None:
        """A handle that is held is given up."""
        self.hand.cancel()
        super().hideEvent(event)

    def _on_changed(self, event: Event) -> None:
        if not self.isVisible():
            return
        if event in ("view", "selection"):
            self.hot = None
        if event != "room" or self.session.gesture is None:
            self.follow()
        self.update()

    def _size(self) -> tuple[object, ...]:
        return ()

    def _takeable(self, x: float, y: float) -> Handle | None:
        return picking.handle_at(self.handles(), self.viewport, x, y)

    def _pull(self, at: Point, place: QPointF) -> None:
        self._pan_from = QPointF(*(self._pressed_at or at))
        self._pan(place)

    def _pointed_spot(self) -> Point | None:
        return None
