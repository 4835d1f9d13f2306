"""Takes a file all the way: read it, and where it is a room set it out, look for findings and draw a sheet."""

from __future__ import annotations

import random
from pathlib import Path
from xml.etree import ElementTree

from elevation.errors import BadInput, Missing
from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.handles.all_handles import handles
from elevation.output.svg import to_svg
from elevation.planning.dressed import dress
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.room.lent import trade_of
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.room.validate import check_rows
from elevation.session.session import Session
from elevation.setting_out.whole import set_out
from elevation.sheet.elevation import elevation_sheet
from elevation.sheet.every import every_sheet
from elevation.trade.model import Trade
from elevation.trade.own import TABLES, own_cells, with_own

LONGEST_SENTENCE = 700
"""Characters of a sentence about a file, its name included: more is no sentence."""


def read(path: Path, trade: Trade) -> Room | str:
    """The room in a file, or the sentence that refuses it."""
    try:
        room = load_room(path)
        check_rows(room, trade_of(room, trade), path.name)
    except BadInput as error:
        return one_sentence(str(error), path.name)
    return room


def read_tables(folder: Path, trade: Trade) -> Trade | str:
    """The trade with the tables in a folder laid over it, or the sentence that refuses them."""
    for table in TABLES:
        try:
            own_cells(table, folder)
        except (BadInput, Missing) as error:
            one_sentence(str(error), table.file)
    try:
        return with_own(trade, folder)
    except (BadInput, Missing) as error:
        return one_sentence(str(error), ".csv")


def one_sentence(text: str, name: str) -> str:
    """``text``, which must be one line that names the file."""
    assert text, "a refusal without words"
    assert "\n" not in text, text
    assert name in text, text
    assert len(text) <= LONGEST_SENTENCE, text
    return text


def drive(room: Room, trade: Trade, rng: random.Random, *, every: bool) -> None:
    """Set the room out, look for findings, make its handles and draw a sheet of it.

    Parameters
    ----------
    room : Room
    trade : Trade
    rng : Random
        Chooses the wall whose elevation is drawn.
    every : bool
        Write the sheet and draw one of the others as well, which takes longer.
    """
    trade = trade_of(room, trade)
    again = load_bytes(dump_room(room), "again")
    assert again == room, "written and read again it is another room"
    drawn = []
    for wall in room.walls:
        for scheme in wall.schemes or (None,):
            scheme_id = None if scheme is None else scheme.id
            laid = set_out(room, wall.id, scheme_id, trade)
            found = find(Scene(room, laid, trade))
            handles(room, laid, trade)
            drawn.append((laid, found))
    if not drawn:
        return
    laid, found = rng.choice(drawn)
    _drag(room, laid.wall, laid.scheme or None, trade, rng)
    if rng.random() < 0.5:
        return
    sheet = elevation_sheet(room, laid, found, trade, style_for(room))
    if every:
        # A reader of XML that is not ours finds what no viewer would open.
        ElementTree.fromstring(to_svg(sheet))
        kind = rng.choice(every_sheet())
        try:
            kind.make([dress(room, trade)], trade, None)
        except Missing:
            return  # nothing to draw on such a sheet, which is said


def _drag(room: Room, wall_id: str, scheme_id: str | None, trade: Trade, rng: random.Random) -> None:
    """Drag one handle somewhere: the room that comes of it can be saved and read again."""
    session = Session(room, trade)
    session.switch_wall(wall_id)
    session.switch_scheme(scheme_id)
    choice = session.handles()
    if choice:
        gesture = session.press(rng.choice(choice))
        low_mm, high_mm = max(gesture.handle.low_mm, -1e4), min(gesture.handle.high_mm, 1e4)
        gesture.move(low_mm + rng.random() * (high_mm - low_mm), 3.0)
        gesture.release()
        assert load_bytes(dump_room(session.committed), "dragged") == session.committed
        session.findings()
        session.undo()
        assert session.committed == room
    session.close()
