"""Print where on the screen a handle of a room stands, in a window of the size given, at the screen's corner."""

import sys
from pathlib import Path

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QApplication

from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from elevation.window.start import make_app, make_window


def main() -> None:
    """``where.py ROOM AXIS WIDTH HEIGHT`` prints ``X Y``."""
    room, axis, width, height = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
    make_app()
    window = make_window(load_room(Path(room)), load_trade())
    window.show()
    window.move(0, 0)
    window.resize(width, height)
    for _ in range(20):
        QApplication.processEvents()
    canvas = window.canvas
    handle = next(handle for handle in canvas.handles() if handle.axis == axis)
    x, y = canvas.viewport.to_px(handle.at)
    corner = canvas.mapTo(window, QPoint(0, 0))
    print(round(x) + corner.x(), round(y) + corner.y())
    window.close()


main()
