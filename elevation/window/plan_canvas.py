"""The plan under the elevation: the same canvas over the wall seen from above, standing right under it.

A bay that is deeper or wider than the strip is drawn smaller, so that all of it is seen; all else stands in line.
"""

from __future__ import annotations

from math import ceil

from msgspec.structs import replace
from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from elevation.handles.model import Handle
from elevation.setting_out.model import Point
from elevation.sheet.plan_hung import figure_x
from elevation.window.canvas import Canvas
from elevation.window.canvas_picture import MARGIN_MM
from elevation.window.following_canvas import WHEEL_STEP, FollowingCanvas
from elevation.window.plan_picture import PlanPicture
from elevation.window.texts import tr
from elevation.window.viewport import PX_PER_PAPER_MM, Viewport
from elevation.words import msg

HEIGHT_PX = 124
BORDER_PX = 9.0
_EDGE_PX = 6.0
"""What is kept free around a plan that fills its strip."""

_LEAST = 0.2
"""Smaller beside the elevation nothing of it could be read."""

_ASIDE = 0.999
"""As good as the elevation's scale: it is only shifted."""

_AXES = frozenset({"rod-left", "rod-right", "bracket", "lead", "projection", "corner-left", "corner-right"})


class PlanViewport(Viewport, frozen=True, gc=False):
    """Plan mm (along the wall, out from its face) to widget pixels: what stands farther out is drawn lower."""

    def to_px(self, point: Point) -> Point:
        """A point of the plan in pixels."""
        return self.x + point[0] * self.px_per_mm, self.y + point[1] * self.px_per_mm

    def to_wall(self, x: float, y: float) -> Point:
        """A pixel place in the plan, mm."""
        return (x - self.x) / self.px_per_mm, (y - self.y) / self.px_per_mm


class PlanCanvas(FollowingCanvas):
    """The wall seen from above.

    Nothing is worked out while it is hidden. Zooming and panning sideways are the elevation's, so that both stay in line.

    Parameters
    ----------
    elevation : Canvas
        The canvas under which it stands.
    """

    def __init__(self, elevation: Canvas, parent: QWidget | None = None) -> None:
        self._down_px = 0.0
        self._share = 1.0
        self.plan = PlanPicture(elevation.session)
        super().__init__(elevation, self.plan, tr(msg("The wall seen from above, drawn to scale")), parent)
        self.setMinimumSize(240, 90)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def sizeHint(self) -> QSize:
        """Room for a wall and what stands out from it."""
        return QSize(640, HEIGHT_PX)

    # -- where it stands -------------------------------------------------------------

    def wanted_px(self) -> int:
        """How high the strip has to be that all of the plan is seen at the elevation's scale."""
        if not self.session.wall_id:
            return HEIGHT_PX
        lead = self._elevation.viewport
        _, bottom, _, top = self.plan.extent(lead.mm_per_paper)
        return max(HEIGHT_PX, ceil((top - bottom) * lead.px_per_mm + 2 * _EDGE_PX))

    def _in_line(self, lead: Viewport) -> Viewport:
        aside = self._elevation.mapToGlobal(QPointF(0, 0)).x() - self.mapToGlobal(QPointF(0, 0)).x()
        lead = PlanViewport(lead.px_per_mm, lead.x + aside, 0.0)
        if self._elevation.is_whole:
            self._share = self._share_of(lead)
        scale = lead.px_per_mm * self._share
        left, bottom, right, top = self.plan.extent(PX_PER_PAPER_MM / scale)
        # Right under the elevation; a strip that is higher than it needs to be leaves the rest of itself free.
        free = max(self.height() - (top - bottom) * scale, 0.0)
        start = min(BORDER_PX + MARGIN_MM / 2 * PX_PER_PAPER_MM, free / 2) + top * scale
        x = lead.x
        if self._share < 1.0:
            # The wall's middle under its middle above, as far as the others of the bay leave room for that.
            middle = self.plan.set_out().width_mm / 2
            x += middle * (lead.px_per_mm - scale)
            if self._elevation.is_whole:
                x = max(min(x, self.width() - _EDGE_PX - right * scale), _EDGE_PX - left * scale)
        return PlanViewport(scale, x, start + self._down_px)

    def _share_of(self, lead: Viewport) -> float:
        """How large the plan stands beside the elevation, 1 at most, that all of it is in the strip."""
        left, bottom, right, top = self.plan.extent(lead.mm_per_paper)
        wide, high = (right - left) * lead.px_per_mm, (top - bottom) * lead.px_per_mm
        room = self.width() - 2 * _EDGE_PX, self.height() - 2 * _EDGE_PX
        out = lead.x + left * lead.px_per_mm < 0.0 or lead.x + right * lead.px_per_mm > self.width()
        share = min(1.0, room[1] / max(high, 1.0))
        if out:
            # Beside the elevation there is less room than under all of the desk.
            share = min(share, room[0] / max(wide, 1.0), _ASIDE)
        return max(share, _LEAST)

    def fit(self) -> None:
        """The elevation decides what is seen; downwards the plan stands right under it."""
        self._down_px = 0.0
        self.follow()

    def zoom(self, factor: float, x: float | None = None, y: float | None = None) -> None:
        """Zoom both, about the place of a pixel along the wall."""
        self._elevation.zoom(factor, x, None)
        del y

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer's place along the wall; with Shift, or sideways, shift both."""
        delta = event.angleDelta()
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier or abs(delta.x()) > abs(delta.y()):
            self._elevation.shift(delta.x() / 2 or delta.y() / 2, 0.0)
        else:
            self.zoom(WHEEL_STEP ** (delta.y() / 120.0), event.position().x(), None)
        event.accept()

    def _pan(self, place: QPointF) -> None:
        if self._pan_from is not None:
            self._down_px += place.y() - self._pan_from.y()
            self._elevation.shift(place.x() - self._pan_from.x(), 0.0)
            self._pan_from = place
            self.follow()
            self._settle_cursor()

    # -- handles -----------------------------------------------------------------------

    def _placed(self, handles: tuple[Handle, ...]) -> tuple[Handle, ...]:
        if not self.session.wall_id:
            return ()
        set_out = self.plan.set_out()
        layers = {layer.ref: (one, layer) for one in set_out.treatments for layer in one.layers}
        placed: list[Handle] = []
        for handle in handles:
            if handle.axis not in _AXES:
                continue
            if handle.sheet == "plan":
                placed.append(handle)
                continue
            found = layers.get(handle.ref[:4])
            if found is None or found[1].support.projection_mm <= 0:
                continue
            treatment, layer = found
            out = layer.support.projection_mm
            if handle.axis == "projection":
                x = figure_x(treatment, layer, self._shown.cloth)
                placed.append(replace(handle, at=(x, out), along="y"))
            elif handle.axis == "bracket":
                placed.append(replace(handle, at=(handle.at[0], out / 2)))
            else:
                placed.append(replace(handle, at=(handle.at[0], out)))
        return tuple(placed)

    def _click(self, x: float, y: float) -> None:
        at, out = self.viewport.to_wall(x, y)
        for treatment in self.plan.set_out().treatments:
            for layer in treatment.layers:
                support = layer.support
                if support.left_mm <= at <= support.right_mm and abs(out - support.projection_mm) <= 40.0:
                    self.session.selection = layer.ref
                    return
        self.session.selection = None
