"""What may not be loaded before the first picture stands: each takes longer to load than a frame."""

from __future__ import annotations

import os
import subprocess
import sys
from importlib.metadata import packages_distributions

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
    "elevation.window.glass_panel", "elevation.window.curve_kinds", "elevation.planning.curves",
    "elevation.planning.remedies",
    "elevation.window.canvas_menu", "elevation.window.holding", "elevation.handles.hold_instead",
    "elevation.window.holds_facts", "elevation.window.fact_form", "difflib",
    "elevation.window.plan_canvas", "elevation.window.section_canvas", "elevation.sheet.plan", "elevation.sheet.section",
    "elevation.window.tables_dialog", "elevation.window.shelf_dialog", "elevation.window.go_to",
    "elevation.sheet.elevation",
    "elevation.handles.guide_places", "elevation.handles.proposing", "elevation.room.first", "elevation.sheet.bay",
)  # fmt: skip

EARLY = {
    "PySide6.Qt": ["Core", "Gui", "Svg", "Widgets"],
    "elevation.planning.": ["copies", "one_height"],
    "elevation.output.": ["dimension_lines", "painters", "painters.fonts", "painters.replay"],
    "elevation.commands.": ["arguments", "choosing", "crash", "main", "open_window", "screen", "speaking"],
    "elevation.sheet.work.": ["moved"],
}
"""Beginnings of which the first picture needs nothing but these: what is new there waits until it is asked for."""

LIBRARIES = {"PySide6", "shiboken6", "msgspec", "platformdirs", "typing_extensions"}
"""Of everything that is installed, what the first picture needs."""

STARTED = """
import builtins, enum, os, sys
enumerations = set()
made = enum.EnumType.__new__
def make(kind, name, *args, **more):
    enumerations.add(name)
    return made(kind, name, *args, **more)
enum.EnumType.__new__ = make
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
            print(builtins.__import__.__name__, *sorted(enumerations), flush=True)
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


DEAR = {"StandardPixmap": "QStyle", "StandardButton": "QMessageBox"}
"""Enumerations that only come with the class beside them, of those that are dear to build."""


@pytest.fixture(scope="module")
def started(tmp_path_factory: pytest.TempPathFactory) -> tuple[list[str], list[str]]:
    """What was there when the first picture of the first demo room stood, all panels filled: modules; then the import
    function's name and all enumerations."""
    home = str(tmp_path_factory.mktemp("home"))
    environ = os.environ | {
        "QT_QPA_PLATFORM": "offscreen", "HOME": home, "XDG_STATE_HOME": home, "XDG_CONFIG_HOME": home,
    }  # fmt: skip
    done = subprocess.run(
        [sys.executable, "-c", STARTED], env=environ, check=True, capture_output=True, text=True, timeout=60
    )
    modules, others = done.stdout.splitlines()
    return modules.split(), others.split()


def test_the_window_really_stood(started: tuple[list[str], list[str]]) -> None:
    modules, enumerations = started
    assert {"PySide6.QtWidgets", "elevation.window.canvas_picture", "elevation.sheet.annotation.whole"} <= {*modules}
    assert "AlignmentFlag" in enumerations


@pytest.mark.parametrize("name", LATER)
def test_is_not_loaded_before_the_first_picture(started: tuple[list[str], list[str]], name: str) -> None:
    assert name not in started[0]


@pytest.mark.parametrize("beginning", EARLY)
def test_nothing_else_of_it_is_loaded_before_the_first_picture(
    started: tuple[list[str], list[str]], beginning: str
) -> None:
    assert sorted(name.removeprefix(beginning) for name in started[0] if name.startswith(beginning)) == EARLY[beginning]


def test_no_other_library_is_loaded_before_the_first_picture(started: tuple[list[str], list[str]]) -> None:
    # Names with a line before them are helpers of installers, which the interpreter loads by itself.
    installed = {name for name in packages_distributions() if not name.startswith("_")} - {"elevation"}
    assert {name.partition(".")[0] for name in started[0]} & installed <= LIBRARIES


def test_the_import_is_python_s_own(started: tuple[list[str], list[str]]) -> None:
    # The binding's reads the source of every module: a tenth of a millisecond for each.
    assert started[1][0] == "__import__"


@pytest.mark.parametrize("name", DEAR)
def test_no_dear_enumeration_is_built_before_the_first_picture(started: tuple[list[str], list[str]], name: str) -> None:
    # A widget that Qt made itself, once handed out, has all of them built: its wrapper looks for the kind it is of.
    assert name not in started[1], f"something asked for {DEAR[name]}"
