"""``elevation sheets``: every sheet of every room into a folder."""

from __future__ import annotations

from pathlib import Path

from elevation.commands import choosing
from elevation.commands.arguments import Sheets
from elevation.commands.draw import picture_of, write
from elevation.commands.main import EXIT_BAD, EXIT_FINE, complain
from elevation.errors import BadOutput, ElevationError
from elevation.room.model import Room
from elevation.trade.model import Trade
from elevation.trade.tables import load_trade


def run_sheets(given: Sheets) -> int:
    """Write an elevation (a page a wall and scheme) and the measuring sheets of each room; returns the exit code."""
    trade = load_trade()
    try:
        given.out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise BadOutput(str(given.out), "", f"cannot be made ({error.strerror})", "name a folder you may write") from error
    failed = False
    for path in given.rooms:
        try:
            _room(choosing.load(path, trade), path, given.out, trade)
        except ElevationError as error:
            complain(error)
            failed = True
    return EXIT_BAD if failed else EXIT_FINE


def _room(room: Room, path: Path, folder: Path, trade: Trade) -> None:
    stem = path.name.removesuffix(".json").removesuffix(".room")
    elevations = [
        picture_of(room, wall, scheme, trade)
        for wall in room.walls
        for scheme in choosing.schemes(wall, None, True, path.name)
    ]
    measuring = [picture_of(room, wall, None, trade, sheet="measuring") for wall in room.walls]
    for pictures, name in ((elevations, "elevation"), (measuring, "measuring")):
        if pictures:
            write(pictures, folder / f"{stem}-{name}.pdf", 200)
