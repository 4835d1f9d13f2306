"""From a path to a window."""

from __future__ import annotations

import gc
import sys
from pathlib import Path

from PySide6.QtCore import QLibraryInfo, QLocale, QTranslator
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from elevation import places
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.session.session import Session
from elevation.trade import load_trade
from elevation.trade.model import Trade
from elevation.window.guard import Guard, WriteReport
from elevation.window.icons import icon
from elevation.window.main_window import MainWindow
from elevation.window.settings import Settings
from elevation.window.texts import use_language
from elevation.window.theme import STYLE, STYLED
from elevation.words.languages import languages

APP_ID = "elevation"
_YOUNG = 10_000
"""Containers made since the last look for garbage at which the collector looks again."""


def make_app() -> QApplication:
    """The application, in the person's language."""
    present = QApplication.instance()
    if isinstance(present, QApplication):
        return present
    QGuiApplication.setDesktopFileName(APP_ID)
    # Named at the start, not set later: setting a style hands it out, and Qt's wrapper then builds all its enumerations.
    app = QApplication([*sys.argv[:1], "-style", STYLE])
    app.setProperty(STYLED, True)
    app.setApplicationName(APP_ID)
    app.setApplicationDisplayName("Elevation")
    code = QLocale.system().name().partition("_")[0]
    use_language(code if code in languages() else "en")
    translator = QTranslator(app)
    if translator.load(QLocale.system(), "qtbase", "_", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
        app.installTranslator(translator)
    app.setWindowIcon(icon("elevation", "#17656e"))
    return app


def make_window(
    room: Room, trade: Trade, path: Path | None = None, *, settings: Settings | None = None, state: Path | None = None
) -> MainWindow:
    """A window on a room, not shown yet.

    Parameters
    ----------
    room : Room
    trade : Trade
    path : Path or None
        The room's own file; None for one that is in no file yet.
    settings : Settings or None
    state : Path or None
        Folder for locks and recovery; None keeps neither.
    """
    session = Session(room, trade, path, state=state)
    return MainWindow(session, settings or Settings())


def run(
    path: Path,
    *,
    is_demo: bool = False,
    trade: Trade | None = None,
    crash_report: Path | None = None,
    write_report: WriteReport | None = None,
) -> int:
    """Open the window on a room and stay until it is closed.

    Parameters
    ----------
    path : Path
        The room's file.
    is_demo : bool
        The room is looked at, not written to.
    trade : Trade or None
        The trade's tables; None loads them.
    crash_report : Path or None
        What the last run left, to be said.
    write_report : callable or None
        Writes a crash report and gives its path.

    Returns
    -------
    int
        The process's exit code.
    """
    tables = load_trade() if trade is None else trade
    room = load_room(path)
    app = make_app()
    settings = Settings()
    window = make_window(room, tables, None if is_demo else path, settings=settings, state=places.state_folder())
    if not is_demo:
        settings.remember(path)
    guard = Guard(window.tell, window.notices.say_crash, write_report)
    guard.stand()
    window.shown_first.connect(collect_again)
    # Said before the window is shown, so that the wall is laid for the room it leaves, once.
    window.notices.say_start(crash_report, is_greeted=is_demo and settings.is_first)
    window.show()
    try:
        return app.exec()
    finally:
        guard.stand_down()


def collect_again() -> None:
    """Have the collector of garbage as it is from the first picture to the end."""
    # What stands at the first picture stands to the end: it is never looked through again, and no drag waits for that.
    gc.freeze()
    # A frame of many windows makes thousands of tuples that its memos hold on to: looking for cycles seven times in each
    # frame found none and took a tenth of it.
    gc.set_threshold(_YOUNG, *gc.get_threshold()[1:])
    gc.enable()
