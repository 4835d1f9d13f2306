"""Every test has places of its own, and leaves nothing running behind.

Nothing here imports Qt: the same file serves the run with Qt uninstalled.
"""

from __future__ import annotations

import gc
import importlib.util
import itertools
import os
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from elevation.commands.screen import FOR_QT, missing_packages

# pytest-qt stops the whole run where Qt or one of its system libraries is missing, so it is loaded only
# where it can work (pyproject.toml switches its automatic loading off).
HAS_QT = (
    importlib.util.find_spec("PySide6") is not None
    and importlib.util.find_spec("pytestqt") is not None
    and not missing_packages(FOR_QT)
)
pytest_plugins = ["pytestqt.plugin"] if HAS_QT else []

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# The same examples on every run: a suite that fails must fail again.
settings.register_profile(
    "elevation",
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.large_base_example],
    max_examples=60,
)
settings.load_profile("elevation")

collect_ignore = [] if HAS_QT else ["window", "painters"]


_searches = itertools.count(1)
SEARCHES = 50
"""So many searches for what tests left behind until one goes through everything."""


def pytest_addoption(parser: pytest.Parser) -> None:
    # Without pytest-qt its settings in pyproject.toml would be unknown, and unknown settings are errors.
    if not HAS_QT:
        parser.addini("qt_api", "unused without pytest-qt")
        parser.addini("qt_log_level_fail", "unused without pytest-qt")


def pytest_report_header() -> str:
    """Say where the Qt tests are left out, so that a short run is never mistaken for a whole one."""
    if HAS_QT:
        return "Qt: found, all tests run"
    packages = " ".join(missing_packages(FOR_QT)) or "PySide6 and pytest-qt"
    return f"Qt: tests/window and tests/painters are left out; they need {packages}"


def pytest_collection_finish() -> None:
    # What was loaded and collected stays to the end: no search for what a test left behind goes through it again.
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="session")
def homes(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """New folders, one after the other; a numbered one of pytest's own is sought among thousands each time."""
    folder = tmp_path_factory.mktemp("homes")
    return (folder / str(number) for number in itertools.count())


@pytest.fixture(autouse=True)
def own_places(homes: Iterator[Path], monkeypatch: pytest.MonkeyPatch) -> Path:
    """Home and XDG folders that no other test sees."""
    home = next(homes)
    home.mkdir()
    monkeypatch.setenv("HOME", str(home))
    for name in ("CONFIG", "DATA", "STATE", "CACHE"):
        monkeypatch.setenv(f"XDG_{name}_HOME", str(home / name.lower()))
    return home


@pytest.hookimpl(wrapper=True, tryfirst=True)
def pytest_runtest_teardown(item: pytest.Item) -> Iterator[None]:
    """After all of a test's own clean-up, look for what it left running."""
    result = yield
    left = [thread.name for thread in threading.enumerate() if _is_ours(thread)]
    if {"qtbot", "qapp"} & set(getattr(item, "fixturenames", ())):
        left += _left_by_qt()
    if left:
        pytest.fail(f"{item.nodeid} left behind: {', '.join(left)}", pytrace=False)
    return result


def _is_ours(thread: threading.Thread) -> bool:
    return thread.name.startswith("elevation") and thread.is_alive()


def _left_by_qt() -> list[str]:
    widgets = sys.modules.get("PySide6.QtWidgets")
    core = sys.modules.get("PySide6.QtCore")
    if widgets is None or core is None or widgets.QApplication.instance() is None:
        return []
    gc.collect()
    core.QCoreApplication.sendPostedEvents(None, core.QEvent.Type.DeferredDelete)
    core.QCoreApplication.processEvents()
    left = [
        f"{type(widget).__name__} “{widget.windowTitle()}”"
        for widget in widgets.QApplication.topLevelWidgets()
        # Qt keeps a hidden helper of its own for tool tips.
        if type(widget).__name__ not in {"QTipLabel", "QFrame"} and not widget.parent()
    ]
    shiboken = sys.modules.get("shiboken6")
    for thing in gc.get_objects():
        if not isinstance(thing, (core.QTimer, core.QThread)) or shiboken is None or not shiboken.isValid(thing):
            continue
        if isinstance(thing, core.QTimer):
            if thing.isActive():
                left.append(f"a running timer of {thing.interval()} ms")
        elif thing.isRunning() and thing is not core.QThread.currentThread():
            left.append("a running thread")
    # What is still there was looked at: the next searches need not go through it again. Now and then all of it is, so that
    # what was let go since does not pile up.
    if next(_searches) % SEARCHES == 0:
        gc.unfreeze()
        gc.collect()
    gc.freeze()
    return left
