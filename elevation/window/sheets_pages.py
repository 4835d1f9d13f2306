"""What the sheets dialog asks for, and how the worker makes it: rooms, then pages, looking now and then whether to stop."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from pathlib import Path
from threading import Event
from typing import Literal

from msgspec import Struct

from elevation.errors import BadOutput, ElevationError, Missing, said
from elevation.output.svg import to_svg
from elevation.planning.dressed import Dressed, dress
from elevation.room.file import load_room
from elevation.room.keeping.atomic import write_atomically
from elevation.room.lent import trade_of
from elevation.room.model import Room
from elevation.room.validate import check_rows
from elevation.sheet.draw_light import Mode
from elevation.sheet.every import SheetKind, paper_for
from elevation.sheet.paper import page_named
from elevation.sheet.post import post_pages
from elevation.sheet.records import Picture
from elevation.trade.model import Trade
from elevation.window.sheets_files import Writer, other_writers

Whose = Literal["wall", "room", "house"]
Tell = Callable[[int, int], None]
PNG_DPI = 200
_NONE: Mapping[str, Writer] = {}


class Stopped(Exception):
    """The work was given up because somebody asked for it."""


class Wanted(Struct, frozen=True):
    """The pages that are wanted.

    Attributes
    ----------
    kind : SheetKind
    room : Room
        The room that is open, as it is now.
    wall, scheme : str or None
        The wall shown and the scheme it is shown in.
    whose : str
        ``wall``, ``room`` or ``house``.
    paper : str
        Name of a sheet; empty for what suits.
    path : Path or None
        The file of the room that is open.
    others : tuple of Path
        The room files of the house; the open room is not read but taken as it is.
    figures : tuple of str
        Those that a picture to post carries; empty for the usual ones, and for every other sheet.
    before : bool
        A picture to post shows the bare wall as well.
    light : str or None
        A picture to post by ``day`` or in the ``evening``; None: as it is drawn.
    """

    kind: SheetKind
    room: Room
    wall: str
    scheme: str | None
    whose: Whose
    paper: str
    path: Path | None = None
    others: tuple[Path, ...] = ()
    figures: tuple[str, ...] = ()
    before: bool = False
    light: Mode | None = None


class Made(Struct, frozen=True):
    """The pages, why rooms of the house are not on them, and what makes other files of the same, by their endings."""

    pages: tuple[Picture, ...]
    unread: tuple[ElevationError, ...] = ()
    others: Mapping[str, Writer] = {}


def pages_of(wanted: Wanted, trade: Trade, cancelled: Event, tell: Tell) -> Made:
    """The pages, made room by room; a room of the house that cannot be read is named and passed over.

    Parameters
    ----------
    wanted : Wanted
    trade : Trade
    cancelled : Event
    tell : callable
        ``(done, of)`` after each step.

    Raises
    ------
    Stopped
        ``cancelled`` was set.
    ElevationError
        No room can be read, or there is nothing to draw.
    """
    kind = wanted.kind
    make = kind.make
    if wanted.figures:
        make = partial(post_pages, figures=wanted.figures, before=wanted.before, light=wanted.light)
    paper = paper_for(kind, page_named(wanted.paper) if wanted.paper else None)
    sources = _sources(wanted)
    dressed: list[Dressed] = []
    pages: list[Picture] = []
    nothing: Missing | None = None
    unread: list[ElevationError] = []
    for number, source in enumerate(sources):
        _look(cancelled)
        tell(number, len(sources))
        try:
            # What one room carries is there for all: they share what is cut and bought.
            one, trade = _dressed(source, wanted, trade)
            dressed.append(one)
        except ElevationError as error:
            if source is wanted.room:
                raise
            if isinstance(source, Path) and error.what == str(source):
                error.what = source.name  # all lie in one folder
            unread.append(error)
            continue
        if not kind.is_over_all:
            try:
                pages.extend(make(dressed[-1:], trade, paper))
            except Missing as error:
                # A room without brackets has no drilling sheet: the others have theirs.
                nothing = nothing or error
    _look(cancelled)
    if kind.is_over_all and dressed:
        pages.extend(make(dressed, trade, paper))
    elif not pages and nothing is not None:
        raise nothing
    tell(len(sources), len(sources))
    return Made(tuple(pages), tuple(unread), other_writers(kind.name, dressed, trade) if dressed else {})


def _sources(wanted: Wanted) -> Sequence[Path | Room]:
    if wanted.whose != "house" or not wanted.others:
        return (wanted.room,)
    own = wanted.path.resolve() if wanted.path is not None else None
    found: list[Path | Room] = [wanted.room if path.resolve() == own else path for path in wanted.others]
    return found if wanted.room in found else [wanted.room, *found]


def _dressed(source: Path | Room, wanted: Wanted, trade: Trade) -> tuple[Dressed, Trade]:
    if isinstance(source, Path):
        room = load_room(source)
        trade = trade_of(room, trade)
        check_rows(room, trade, source.name)
        return dress(room, trade), trade
    if wanted.whose == "wall":
        return dress(source, trade, wanted.wall, wanted.scheme), trade
    # The wall on the screen in the scheme it is shown in, the others in their first.
    parts = [dress(source, trade, one.id, wanted.scheme if one.id == wanted.wall else None) for one in source.walls]
    whole = Dressed(
        source,
        tuple(wall for part in parts for wall in part.walls),
        tuple(findings for part in parts for findings in part.findings),
    )
    return whole, trade


def write_pages(
    path: Path, pages: Sequence[Picture], shown: int, cancelled: Event, tell: Tell, others: Mapping[str, Writer] = _NONE
) -> int:
    """Write pages to a file: all into a PDF, the one that is shown where the format holds one.

    ``others`` make what is no picture of pages: tables, files for a cutting machine.

    Returns
    -------
    int
        How many pages were written.

    Raises
    ------
    Stopped
        ``cancelled`` was set; nothing was written then.
    BadOutput
        The file cannot be written, or its ending is not known.
    """
    ending = path.suffix.lower()
    if ending == ".pdf":
        from elevation.output.painters.pdf import to_pdf

        def before_page(number: int) -> None:
            _look(cancelled)
            tell(number, len(pages))

        data, count = to_pdf(pages, before_page), len(pages)
    elif ending in others:
        data, count = others[ending](), len(pages)
    elif ending == ".svg":
        data, count = to_svg(pages[shown]), 1
    elif ending == ".png":
        from elevation.output.painters.png import to_png

        data, count = to_png(pages[shown], PNG_DPI), 1
    else:
        choices = ", ".join(dict.fromkeys((".pdf", ".svg", ".png", *others)))
        raise BadOutput(path.name, "", said("has no known ending"), said("use {choices}", choices=choices))
    _look(cancelled)
    write_atomically(path, data)
    return count


def _look(cancelled: Event) -> None:
    if cancelled.is_set():
        raise Stopped
