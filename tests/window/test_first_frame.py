"""What may not be loaded before the first picture stands: each takes longer to load than a frame."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

LATER = (
    "pyqtgraph", "pint", "shapely", "numpy", "ezdxf", "fontTools",  # libraries of other drawers, sheets and files
    "PySide6.QtOpenGL", "PySide6.QtPrintSupport", "PySide6.QtNetwork",
    "socket", "ssl", "email", "http", "asyncio", "multiprocessing", "unittest", "sqlite3",
    "elevation.window.hang_panel", "elevation.window.standing_panel", "elevation.window.new_room", "elevation.window.plots",
    "elevation.window.sheets_dialog", "elevation.window.sheets_choice", "elevation.sheet.every",
    "elevation.sheet.work.whole", "elevation.window.schemes_dialog", "elevation.planning.comparing",
    "elevation.output.painters.pdf", "elevation.output.painters.png",
    "elevation.sheet.measuring", "elevation.words.collect",
)  # fmt: skip

STARTED = """
import os, sys
class Painted:
    def find_spec(self, name, path, target=None):
        if name != "elevation.window.start":
            return None
        sys.meta_path.remove(self)
        from PySide6.QtCore import QTimer
        from elevation.window import canvas
        painted = canvas.Canvas.paintEvent
        def end():
            print(*sorted(sys.modules), flush=True)
            os._exit(0)
        def paint(self, event):
            painted(self, event)
            QTimer.singleShot(0, end)
        canvas.Canvas.paintEvent = paint
        return None
sys.meta_path.insert(0, Painted())
from elevation.commands.main import main
main([])
"""


@pytest.fixture(scope="module")
def loaded(tmp_path_factory: pytest.TempPathFactory) -> frozenset[str]:
    """The modules that are loaded when the first picture of the first demo room stands, all panels filled."""
    home = str(tmp_path_factory.mktemp("home"))
    environ = os.environ | {
        "QT_QPA_PLATFORM": "offscreen", "HOME": home, "XDG_STATE_HOME": home, "XDG_CONFIG_HOME": home,
    }  # fmt: skip
    done = subprocess.run(
        [sys.executable, "-c", STARTED], env=environ, check=True, capture_output=True, text=True, timeout=60
    )
    return frozenset(done.stdout.split())


def test_the_window_really_stood(loaded: frozenset[str]) -> None:
    assert {"PySide6.QtWidgets", "elevation.window.canvas_picture", "elevation.sheet.annotation.whole"} <= loaded


@pytest.mark.parametrize("name", LATER)
def test_is_not_loaded_before_the_first_picture(loaded: frozenset[str], name: str) -> None:
    assert name not in loaded


def test_what_needs_no_qt_is_loaded_before_it() -> None:
    # Qt's binding reads the source of each module that is loaded after it: 0.1 ms for every one.
    script = "from elevation.commands.open_window import _load_all_but_qt as load; load(); import sys; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], check=True, capture_output=True, text=True, timeout=60)
    before = set(done.stdout.split())
    assert not any(name.startswith(("PySide6", "shiboken6")) for name in before)
    assert {"elevation.session.session", "elevation.planning.remedies", "elevation.sheet.annotation.whole"} <= before
