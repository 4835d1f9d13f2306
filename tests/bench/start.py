"""From process start to the end of the first paint, against a bare window."""

from __future__ import annotations

import os
import subprocess
import sys
import time

from tests.bench.timing import Row, row

BARE = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QGraphicsScene, QGraphicsView, QMainWindow
class View(QGraphicsView):
    def paintEvent(self, event):
        super().paintEvent(event)
        QTimer.singleShot(0, QApplication.quit)
app = QApplication(sys.argv)
window = QMainWindow()
scene = QGraphicsScene()
view = View(scene)
window.setCentralWidget(view)
window.resize(1400, 900)
window.show()
app.exec()
"""

OURS = """
from PySide6.QtCore import QTimer
from elevation.window import canvas
from PySide6.QtWidgets import QApplication
painted = canvas.Canvas.paintEvent
def paint(self, event):
    painted(self, event)
    QTimer.singleShot(0, QApplication.quit)
canvas.Canvas.paintEvent = paint
from elevation.commands.main import main
main([])
"""


def _run(code: str) -> float:
    environ = os.environ | {"QT_QPA_PLATFORM": "offscreen"}
    begun = time.perf_counter()
    subprocess.run([sys.executable, "-c", code], env=environ, check=True, stdout=subprocess.DEVNULL, timeout=60)
    return (time.perf_counter() - begun) * 1000


def start(runs: int) -> Row:
    """The first demo room with its panels filled."""
    for _ in range(2):
        _run(OURS), _run(BARE)
    ours, theirs = [], []
    for _ in range(runs):
        ours.append(_run(OURS))
        theirs.append(_run(BARE))
    return row("start", ours, theirs, 2.5)
