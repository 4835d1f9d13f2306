"""What was asked for on the command line, as small values.

argparse does the reading; its usage block is replaced by one sentence.
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from textwrap import fill
from typing import NoReturn

from msgspec import Struct

from elevation import __version__
from elevation.errors import BadInput


class Help(Struct, frozen=True):
    """Text to print, and nothing else to do."""

    text: str


class Window(Struct, frozen=True):
    """Open the window on a room, or on the first demo room."""

    room: Path | None = None


class Check(Struct, frozen=True):
    """Check rooms: one wall or all, one scheme or all."""

    rooms: tuple[Path, ...]
    wall: str | None = None
    scheme: str | None = None
    all_schemes: bool = False
    json: bool = False


class Draw(Struct, frozen=True):
    """Draw a room to a file; its ending picks the format."""

    room: Path
    out: Path
    wall: str | None = None
    scheme: str | None = None
    sheet: str = "elevation"
    paper: str | None = None
    scale: str | None = None
    dpi: int = 200
    page: int = 1
    at: str | None = None
    figures: str | None = None
    before: bool = False
    light: str | None = None


class Sheets(Struct, frozen=True):
    """Every sheet of every room into a folder, or ``only`` one kind."""

    rooms: tuple[Path, ...]
    out: Path
    replace: bool = False
    only: str | None = None


class Desktop(Struct, frozen=True):
    """Put the program into this person's menu (``put``), or take it out."""

    put: bool


Given = Help | Window | Check | Draw | Sheets | Desktop

SHEETS = (
    "elevation",
    "section",
    "plan",
    "unfolded",
    "schemes",
    "picture",
    "measuring",
    "measurements",
    "house",
    "trial",
    "order",
    "buying",
    "bench",
    "sewing",
    "drilling",
    "tiles",
    "plate",
    "stick",
    "hanging",
    "labels",
)
FIGURES = (
    "rod-height",
    "rod-length",
    "glass-open",
    "glass-closed",
    "under-ceiling",
    "reach",
    "panel-length",
    "fullness",
    "hem",
    "opening",
    "wall",
)
LIGHTS = ("day", "evening")
LIT = ("elevation", "picture")
"""The sheets that are drawn by day or in the evening as well."""
PAPERS = ("a4", "a3", "letter", "tabloid", "4:5", "1:1", "16:9")

_HELP = f"""\
Elevation draws a window wall to scale with its curtain rod and panels.

  elevation [ROOM]                      open the window
  elevation check ROOM... [--wall W] [--scheme S | --all-schemes] [--json]
  elevation draw ROOM --out FILE [--wall W] [--scheme S] [--paper a4|a3|letter|tabloid]
                 [--sheet SHEET] [--page N] [--scale 1:20] [--dpi N] [--at PLACE] [--light day|evening]
  elevation sheets ROOM... --out DIR [--sheet SHEET] [--replace]
                                        every sheet of every room, and the lists over all of them; or of one kind
  elevation desktop put|remove          into your menu, room files open by a double click; or out of it
  elevation --version
  elevation --help

SHEET is one of {", ".join(SHEETS)};
a picture has --paper 4:5, 1:1 or 16:9, with --before the bare wall beside it, and --figures: one to three of
{", ".join(FIGURES)}.
FILE's ending picks the format: .svg, .pdf or .png, for house, buying, sewing and labels .csv and .txt, for plate
.dxf too; N is the page of a sheet that has several.
W and S are ids or unambiguous names.
An elevation or a picture with --light shows what is kept of the daylight, or the evening with the lamps lit.
PLACE is where a section cuts the wall, from its left end ("54 in"); without it there is one through each treatment.
Where a sheet is made for several rooms a folder stands for all rooms in it.
A room file named like a command is given as ./check. Without ROOM a demo room opens.
Exit codes: 0 fine, 1 check found a stop or something broken, 2 bad use or bad input, 70 a bug.
"""

_HELP_WIDTH = 96


def _folded(text: str) -> str:
    """The text with its long lines broken between words: a terminal would break them inside one."""
    return "\n".join(
        line if len(line) <= _HELP_WIDTH else fill(line, _HELP_WIDTH, break_long_words=False, break_on_hyphens=False)
        for line in text.split("\n")
    )


class _Reader(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise BadInput("command line", "", message, "try elevation --help")


def read(words: Sequence[str]) -> Given:
    """What ``words`` (the arguments without the program's name) ask for; raises BadInput."""
    if "--help" in words or "-h" in words:
        return Help(_folded(_HELP))
    if "--version" in words:
        return Help(f"elevation {__version__}\n")
    command = words[0] if words else ""
    if command == "check":
        return _check(words[1:])
    if command == "draw":
        return _draw(words[1:])
    if command == "sheets":
        return _sheets(words[1:])
    if command == "desktop":
        return _desktop(words[1:])
    return _window(words)


def _reader() -> _Reader:
    return _Reader(prog="elevation", add_help=False, allow_abbrev=False)


def _window(words: Sequence[str]) -> Window:
    if not any(word.startswith("-") for word in words) and len(words) < 2:
        # The window's first picture waits for this: a reader takes longer to make than it has to read here.
        return Window(Path(words[0]) if words else None)
    reader = _reader()
    reader.add_argument("room", nargs="?", type=Path)
    return Window(room=reader.parse_args(list(words)).room)


def _check(words: Sequence[str]) -> Check:
    reader = _reader()
    reader.add_argument("rooms", nargs="+", type=Path, metavar="ROOM")
    reader.add_argument("--wall")
    schemes = reader.add_mutually_exclusive_group()
    schemes.add_argument("--scheme")
    schemes.add_argument("--all-schemes", action="store_true")
    reader.add_argument("--json", action="store_true")
    got = reader.parse_args(list(words))
    return Check(tuple(got.rooms), got.wall, got.scheme, got.all_schemes, got.json)


def _draw(words: Sequence[str]) -> Draw:
    reader = _reader()
    reader.add_argument("room", type=Path, metavar="ROOM")
    reader.add_argument("--out", type=Path, required=True)
    reader.add_argument("--wall")
    reader.add_argument("--scheme")
    reader.add_argument("--sheet", choices=SHEETS, default="elevation")
    reader.add_argument("--paper", choices=PAPERS)
    reader.add_argument("--scale")
    reader.add_argument("--dpi", type=int, default=200)
    reader.add_argument("--page", type=int, default=1)
    reader.add_argument("--at")
    reader.add_argument("--figures")
    reader.add_argument("--before", action="store_true")
    reader.add_argument("--light", choices=LIGHTS)
    got = reader.parse_args(list(words))
    if not 20 <= got.dpi <= 1200:
        raise BadInput("command line", "--dpi", f"is {got.dpi}", "give a number from 20 to 1200")
    if got.sheet != "picture" and (got.figures is not None or got.before):
        raise BadInput(
            "command line", "--figures" if got.figures else "--before", "is for a picture", "add --sheet picture"
        )
    if got.light is not None and got.sheet not in LIT:
        raise BadInput("command line", "--light", f"is not drawn on a sheet of {got.sheet}", f"add --sheet {LIT[-1]}")
    return Draw(
        got.room, got.out, got.wall, got.scheme, got.sheet, got.paper, got.scale, got.dpi, got.page, got.at, got.figures,
        got.before, got.light,
    )  # fmt: skip


def _sheets(words: Sequence[str]) -> Sheets:
    reader = _reader()
    reader.add_argument("rooms", nargs="+", type=Path, metavar="ROOM")
    reader.add_argument("--out", type=Path, required=True)
    reader.add_argument("--replace", action="store_true")
    reader.add_argument("--sheet", choices=SHEETS)
    got = reader.parse_args(list(words))
    return Sheets(tuple(got.rooms), got.out, got.replace, got.sheet)


def _desktop(words: Sequence[str]) -> Desktop:
    reader = _reader()
    reader.add_argument("what", choices=("put", "remove"))
    return Desktop(reader.parse_args(list(words)).what == "put")
