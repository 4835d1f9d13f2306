"""Memory of the largest demo room with its curves open, against a bare window's."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from elevation import places
from elevation.room.file import load_room
from tests.bench.timing import Row

_REPORT = """
def report():
    # What the process really holds, without pages that it only mapped.
    import re
    rss = int(re.search(r"VmRSS:\\s+(\\d+)", open("/proc/self/status").read())[1])
    print("resident", rss / 1024, flush=True)
    os._exit(0)
"""

_BARE = (
    """
import os, sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QGraphicsScene, QGraphicsView, QMainWindow
"""
    + _REPORT
    + """
app = QApplication(sys.argv)
window = QMainWindow()
scene = QGraphicsScene()
window.setCentralWidget(QGraphicsView(scene))
window.resize(1400, 900)
window.show()
QTimer.singleShot(1500, report)
app.exec()
"""
)

_OURS = (
    """
import os, sys
from pathlib import Path
from PySide6.QtCore import QTimer
from elevation.room.file import load_room
from elevation.trade.tables import load_trade
from elevation.window.settings import Settings
from elevation.window.start import make_app, make_window
"""
    + _REPORT
    + """
app = make_app()
window = make_window(load_room(Path(sys.argv[1])), load_trade(), settings=Settings(Path(sys.argv[2])))
window.resize(1400, 900)
window.show()
for drawer in window.drawers:
    drawer.set_open(True)
QTimer.singleShot(2500, report)
app.exec()
"""
)


def _resident(code: str, *words: str) -> float:
    environ = os.environ | {"QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, "-c", code, *words], env=environ, check=True, capture_output=True, text=True, timeout=60
    )
    return float(done.stdout.split("resident")[1])


def largest_demo() -> Path:
    """The demo room with the most openings."""
    rooms = {path: load_room(path) for path in sorted(places.demo_rooms().glob("*.room.json"))}
    return max(rooms, key=lambda path: sum(len(wall.openings) for wall in rooms[path].walls))


def memory(folder: Path) -> Row:
    """MB of both; Linux only, where the kernel tells it."""
    path = largest_demo()
    ours, theirs = _resident(_OURS, str(path), str(folder / "memory.ini")), _resident(_BARE)
    return Row("memory", ours, theirs, 3, None, f"{path.name}, every drawer opened once; MB, not ms")
