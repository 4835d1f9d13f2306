"""``elevation sheets``: every sheet of every room into a folder."""

from __future__ import annotations

from pathlib import Path

from elevation.commands import choosing
from elevation.commands.arguments import Sheets
from elevation.commands.draw import picture_of, refuse_a_room, write
from elevation.commands.main import EXIT_BAD, EXIT_FINE, complain
from elevation.commands.sections import section_pictures
from elevation.errors import BadOutput, ElevationError
from elevation.room.model import Room
from elevation.trade.model import Trade
from elevation.trade.tables import load_trade


def run_sheets(given: Sheets) -> int:
    """Write elevations (a page a wall and scheme), sections (a page a treatment), measuring sheets; returns the code."""
    trade = load_trade()
    try:
        given.out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise BadOutput(str(given.out), "", f"cannot be made ({error.strerror})", "name a folder you may write") from error
    failed = False
    stems: set[str] = set()
    for path in given.rooms:
        stem = _fresh(path, stems)
        try:
            room = choosing.load(path, trade)
            _room(room, stem, path, given, trade)
        except ElevationError as error:
            complain(error)
            failed = True
    return EXIT_BAD if failed else EXIT_FINE


def _fresh(path: Path, taken: set[str]) -> str:
    # Rooms of two folders may have one name; the second must not replace the first's sheets.
    stem = path.name.removesuffix(".json").removesuffix(".room")
    fresh, number = stem, 1
    while fresh.casefold() in taken:
        number += 1
        fresh = f"{stem}-{number}"
    taken.add(fresh.casefold())
    return fresh


def _room(room: Room, stem: str, path: Path, given: Sheets, trade: Trade) -> None:
    elevations = [
        picture_of(room, wall, scheme, trade)
        for wall in room.walls
        for scheme in choosing.schemes(wall, None, True, path.name)
    ]
    measuring = [picture_of(room, wall, None, trade, sheet="measuring") for wall in room.walls]
    sections = [
        picture
        for wall in room.walls
        for scheme in choosing.schemes(wall, None, True, path.name)
        if scheme is not None and scheme.treatments
        for picture in section_pictures(room, wall, scheme, trade)
    ]
    for pictures, name in ((elevations, "elevation"), (sections, "section"), (measuring, "measuring")):
        if pictures:
            out = given.out / f"{stem}-{name}.pdf"
            refuse_a_room(out, given.rooms)
            write(pictures, out, 200)
