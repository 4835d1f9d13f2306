"""Which part of the wall the canvas shows, and how large."""

from __future__ import annotations

from msgspec import Struct

from elevation.output.painters.replay import Placing
from elevation.setting_out.model import Point

PX_PER_PAPER_MM = 96 / 25.4
"""Pixels for one paper mm on the screen."""

NEAREST = 4.0
"""Most pixels for one wall mm."""
FARTHEST = 0.01
"""Fewest pixels for one wall mm."""


class Viewport(Struct, frozen=True, gc=False):
    """Wall mm to widget pixels (y down).

    Attributes
    ----------
    px_per_mm : float
    x, y : float
        Pixel place of the wall's origin.
    """

    px_per_mm: float = 0.2
    x: float = 0.0
    y: float = 0.0

    @property
    def mm_per_px(self) -> float:
        """Wall mm that one pixel shows."""
        return 1.0 / self.px_per_mm

    @property
    def mm_per_paper(self) -> float:
        """Wall mm for one paper mm: what annotation is laid for."""
        return PX_PER_PAPER_MM / self.px_per_mm

    @property
    def placing(self) -> Placing:
        """For the painter that replays."""
        return Placing(PX_PER_PAPER_MM, self.px_per_mm, self.x, self.y, self.x, self.y)

    def to_px(self, point: Point) -> Point:
        """A wall point in pixels."""
        return self.x + point[0] * self.px_per_mm, self.y - point[1] * self.px_per_mm

    def to_wall(self, x: float, y: float) -> Point:
        """A pixel place on the wall, mm."""
        return (x - self.x) / self.px_per_mm, (self.y - y) / self.px_per_mm

    def zoomed(self, factor: float, x: float, y: float) -> Viewport:
        """Larger by ``factor``; what stands at pixel (x, y) stays there."""
        scale = min(max(self.px_per_mm * factor, FARTHEST), NEAREST)
        real = scale / self.px_per_mm
        return Viewport(scale, x + (self.x - x) * real, y + (self.y - y) * real)

    def panned(self, dx: float, dy: float) -> Viewport:
        """Shifted by pixels."""
        return Viewport(self.px_per_mm, self.x + dx, self.y + dy)


def fitted(low: Point, high: Point, size: tuple[float, float], border: tuple[float, float, float, float]) -> Viewport:
    """The viewport that shows a part of the wall as large as it goes.

    Parameters
    ----------
    low, high : Point
        Lower left and upper right corner, wall mm.
    size : tuple of float
        Width and height of the widget in pixels.
    border : tuple of float
        Pixels to keep free left, top, right, bottom.

    Returns
    -------
    Viewport
    """
    left, top, right, bottom = border
    room = max(size[0] - left - right, 20.0), max(size[1] - top - bottom, 20.0)
    extent = max(high[0] - low[0], 1.0), max(high[1] - low[1], 1.0)
    scale = min(max(min(room[0] / extent[0], room[1] / extent[1]), FARTHEST), NEAREST)
    x = left + (room[0] - extent[0] * scale) / 2 - low[0] * scale
    y = top + (room[1] - extent[1] * scale) / 2 + high[1] * scale
    return Viewport(scale, x, y)
