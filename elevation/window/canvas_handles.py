"""Which handles are painted on the canvas, and what is said beside them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSizeF
from PySide6.QtGui import QPainter

from elevation.setting_out.model import Point
from elevation.window import overlay, picking
from elevation.window.readout import readout_of, tag_of

if TYPE_CHECKING:
    from elevation.window.canvas import Canvas


def paint_handles(painter: QPainter, canvas: Canvas, pointer: Point | None, *, is_pressed: bool) -> None:
    """Paint the handle that is held with its readout; else those near the pointer, and the name of the nearest.

    Parameters
    ----------
    painter : QPainter
    canvas : Canvas
    pointer : Point or None
        Pixels; None when the pointer is elsewhere.
    is_pressed : bool
        A button is down, so the readout goes with the pointer.
    """
    viewport = canvas.viewport
    held = canvas.hand.handle
    if held is not None:
        now = canvas.some_handles((held.key,)).get(held.key, held)
        place = viewport.to_px(now.at)
        overlay.paint_handle(painter, now, place, is_hot=True, is_focused=False)
        at = pointer if is_pressed and pointer is not None else place
        _say(painter, canvas, readout_of(canvas.session, canvas.hand), at)
        return
    focused = canvas.keys.current() if canvas.hasFocus() and canvas.keys.is_shown else None
    near = picking.handles_near(canvas.handles(), viewport, *pointer) if pointer is not None else ()
    for handle in near:
        if focused is None or handle.key != focused.key:
            is_hot = canvas.hot is not None and handle.key == canvas.hot.key
            overlay.paint_handle(painter, handle, viewport.to_px(handle.at), is_hot=is_hot, is_focused=False)
    if focused is not None:
        overlay.paint_handle(painter, focused, viewport.to_px(focused.at), is_hot=True, is_focused=True)
    # The room may have changed under a still pointer: the handle is looked up again.
    hot = next((handle for handle in canvas.handles() if canvas.hot is not None and handle.key == canvas.hot.key), None)
    named = hot or focused
    if named is not None:
        # A rod that is taken far from its handle says so where the pointer is.
        is_far = hot is not None and pointer is not None and hot not in near
        _say(painter, canvas, tag_of(canvas.session, named), pointer if is_far and pointer else viewport.to_px(named.at))


def _say(painter: QPainter, canvas: Canvas, lines: tuple[overlay.Said, ...], at: Point) -> None:
    size = QSizeF(canvas.width(), canvas.height())
    overlay.paint_readout(painter, lines, at, size, canvas.theme, canvas.font())
