"""``elevation [ROOM]``: the window; where none can open, the room is drawn to an SVG and one sentence says so."""

from __future__ import annotations

import builtins
import gc
from pathlib import Path

from elevation.commands import choosing
from elevation.commands.arguments import Window
from elevation.commands.crash import take_unread, write_report
from elevation.commands.main import EXIT_FINE, complain
from elevation.commands.screen import why_no_window
from elevation.commands.speaking import shown
from elevation.errors import BadOutput, ElevationError
from elevation.trade.model import Trade
from elevation.trade.own import load_with_own
from elevation.trade.tables import load_trade


def run_window(given: Window) -> int:
    """Open the window on a room (default: the first demo room), or draw it; returns the exit code."""
    # Nothing that is made before the first picture can be let go of: looking for it would only take time. The window
    # turns the collector on again once it stands.
    gc.disable()
    try:
        return _run(given)
    finally:
        gc.enable()


def _run(given: Window) -> int:
    path = given.room or choosing.first_demo()
    trade = _tables()
    if given.room is not None:
        # Bad input must be said before a window opens.
        choosing.load(path, trade)
    reason = why_no_window()
    if reason is None:
        try:
            _load_qt()
        except ImportError as error:
            reason = f"Qt cannot be loaded ({error})"
    if reason is not None:
        return _draw_instead(path, reason)
    from elevation.window.start import run

    return run(path, is_demo=given.room is None, trade=trade, crash_report=take_unread(), write_report=write_report)


def _tables() -> Trade:
    """All tables; a person's own that cannot be read are said and left out: the window is where she mends them."""
    try:
        return load_with_own(load_trade)
    except ElevationError as error:
        complain(error)
        return load_trade()


def _load_qt() -> None:
    plain = builtins.__import__
    import PySide6.QtWidgets  # noqa: F401

    # Qt's binding puts an import of its own in the place of Python's: it reads the source of every module that is named
    # from then on, in search of another spelling of Qt's names that nothing here uses, and the first picture waits for it.
    builtins.__import__ = plain


def _draw_instead(path: Path, reason: str) -> int:
    import tempfile

    from elevation.commands.draw import picture_of, write

    trade = _tables()
    room, trade = choosing.load(path, trade)
    wall = room.walls[0]
    picture = picture_of(room, wall, wall.schemes[0] if wall.schemes else None, trade)
    out = _fresh(path)
    try:
        write([picture], out, 200)
    except BadOutput:
        out = Path(tempfile.mkdtemp(prefix="elevation-")) / out.name
        write([picture], out, 200)
    print(shown(f"No window could open: {reason}; {room.name or path.name} was drawn to {out} instead."))
    return EXIT_FINE


def _fresh(path: Path) -> Path:
    # Nothing is overwritten that was not named, so take the first name that is free.
    stem = path.name.removesuffix(".json").removesuffix(".room")
    number = 1
    while True:
        out = Path.cwd() / (f"{stem}.svg" if number == 1 else f"{stem}-{number}.svg")
        if not out.exists():
            return out
        number += 1
