"""A window's first size: what it would like, but never more than the screen has."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

_FRAME_PX = 40
"""Height that a window manager's frame takes, generously; a frame that is not known yet cannot be asked."""


def resize_on_screen(window: QWidget, width: int, height: int) -> None:
    """Give ``window`` this size in px, or as much of it as fits on its screen with a frame round it."""
    room = window.screen().availableSize()
    window.resize(min(width, room.width()), min(height, room.height() - _FRAME_PX))
