"""From process start to the end of the first paint, against a bare window."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from pathlib import Path

from tests.bench.timing import Row, row

BARE = """
import os, sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QGraphicsScene, QGraphicsView, QMainWindow
class View(QGraphicsView):
    def paintEvent(self, event):
        super().paintEvent(event)
        QTimer.singleShot(0, lambda: os._exit(0))
app = QApplication(sys.argv)
window = QMainWindow()
scene = QGraphicsScene()
view = View(scene)
window.setCentralWidget(view)
window.resize(1400, 900)
window.show()
app.exec()
"""
"""Ends as soon as everything that was due is painted."""

OURS = """
import os, sys
class Painted:
    # Steps in when the window's own modules are about to be loaded, so that they come in the program's own order.
    def find_spec(self, name, path, target=None):
        if name != "elevation.window.start":
            return None
        sys.meta_path.remove(self)
        from PySide6.QtCore import QTimer
        from elevation.window import canvas
        painted = canvas.Canvas.paintEvent
        def paint(self, event):
            painted(self, event)
            QTimer.singleShot(0, lambda: os._exit(0))
        canvas.Canvas.paintEvent = paint
        return None
sys.meta_path.insert(0, Painted())
from elevation.__main__ import main
sys.argv[1:] = []
main()
"""
"""The same end for the program itself, started as from the command line."""


SCREEN = {"name": "laptop", "x": 0, "y": 0, "width": 1440, "height": 900, "logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1}
"""The platform's own screen is so narrow that the window would open with one side only."""


def _run(code: str, folder: Path) -> float:
    folder.mkdir(parents=True, exist_ok=True)
    screen = folder / "screen.json"
    screen.write_text(json.dumps({"screens": [SCREEN]}), encoding="utf-8")
    environ = os.environ | {"QT_QPA_PLATFORM": f"offscreen:configfile={screen}", "PYTHONPYCACHEPREFIX": str(folder)}
    # An installed program is compiled once, not at each start.
    environ.pop("PYTHONDONTWRITEBYTECODE", None)
    begun = time.perf_counter()
    done = subprocess.run([sys.executable, "-c", code], env=environ, check=True, capture_output=True, text=True, timeout=60)
    took = (time.perf_counter() - begun) * 1000
    if done.stdout:
        raise RuntimeError(f"no window opened: {done.stdout}")
    return took


def start(runs: int, folder: Path) -> Row:
    """The first demo room with its panels filled."""
    for _ in range(2):
        _run(OURS, folder), _run(BARE, folder)
    ours, theirs = [], []
    for _ in range(runs):
        ours.append(_run(OURS, folder))
        theirs.append(_run(BARE, folder))
    return row("start", ours, theirs, 2.5)
