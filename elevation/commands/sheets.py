"""``elevation sheets``: every sheet of every room into a folder, and the lists over all of them.

A list of what was made lies in the folder, with a digest of each file: a file that is not on it, or was changed since, is
not replaced unless that is asked for. Each file is written wholly or not at all, so stopping leaves no half of one.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from msgspec import Struct

from elevation.commands import choosing
from elevation.commands.arguments import Sheets
from elevation.commands.draw import picture_of, refuse_a_room, write
from elevation.commands.made_files import Made
from elevation.commands.main import EXIT_BAD, EXIT_FINE, complain
from elevation.commands.sections import section_pictures
from elevation.commands.speaking import shown
from elevation.errors import BadOutput, ElevationError, Missing
from elevation.output.cutting_files import to_cutting_svg, to_dxf
from elevation.output.tables import to_csv, to_text
from elevation.planning.dressed import Dressed, dress
from elevation.planning.plate import Plate
from elevation.room.corners import beside
from elevation.room.keeping.atomic import write_atomically
from elevation.room.model import Room
from elevation.sheet.every import ON_REQUEST, OVER_ALL, every_sheet
from elevation.sheet.records import Picture
from elevation.sheet.work.whole import TO_CUT, WORK_SHEETS, WORK_TABLES
from elevation.trade.model import Trade
from elevation.trade.own import load_with_own
from elevation.trade.tables import load_trade

EXIT_STOPPED = 130


class Task(Struct, frozen=True):
    """One file to make, of which kind of sheet, and what makes its pages, or the bytes of a table."""

    name: str
    kind: str
    make: Callable[[], Sequence[Picture] | bytes]


def run_sheets(given: Sheets) -> int:
    """Write every sheet; returns the exit code."""
    trade = load_with_own(load_trade)
    try:
        given.out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise BadOutput(str(given.out), "", f"cannot be made ({error.strerror})", "name a folder you may write") from error
    failed = False
    rooms: list[tuple[str, Path, Room]] = []
    stems: set[str] = set()
    for path in choosing.rooms_of(given.rooms):
        stem = _fresh(path, stems)
        try:
            # All rooms share what is cut and bought: what one carries is there for all.
            room, trade = choosing.load(path, trade)
            rooms.append((stem, path, room))
        except ElevationError as error:
            complain(error)
            failed = True
    made = Made(given.out, replaces=given.replace)
    tasks = [task for task in _tasks(rooms, trade) if given.only in (None, task.kind)] if rooms else []
    pages = files = 0
    try:
        for number, task in enumerate(tasks, start=1):
            _progress(number, len(tasks), task.name)
            count, is_bad = _make(task, given, made)
            failed |= is_bad
            pages += count
            files += count > 0
    except KeyboardInterrupt:
        _progress(0, 0, "")
        print(shown(f"stopped: {files} of {len(tasks)} files written to {given.out}"))
        return EXIT_STOPPED
    _progress(0, 0, "")
    counted = f"{files} file{'s' * (files != 1)} with {pages} page{'s' * (pages != 1)}"
    print(shown(f"{counted} written to {given.out}"))
    return EXIT_BAD if failed else EXIT_FINE


def _make(task: Task, given: Sheets, made: Made) -> tuple[int, bool]:
    """Make one file; how many pages it has, and whether something went wrong."""
    out = given.out / task.name
    try:
        refuse_a_room(out, choosing.rooms_of(given.rooms))
        made.refuse_a_strangers(task.name)
        pages = task.make()
        if isinstance(pages, bytes):
            write_atomically(out, pages)
            made.note(task.name)
            return 1, False
        if pages:
            write(pages, out, 200)
            made.note(task.name)
    except Missing as error:
        if error.what.startswith("PNG"):
            raise
        # A room without brackets has no drilling sheet: that is no fault.
        return 0, False
    except ElevationError as error:
        complain(error)
        return 0, True
    return len(pages), False


def _tasks(rooms: Sequence[tuple[str, Path, Room]], trade: Trade) -> Iterator[Task]:
    dressed: list[Dressed] = []
    for stem, path, room in rooms:
        dressed.append(dress(room, trade))
        yield from _of_room(stem, path, room, dressed[-1], trade)
    every = tuple(dressed)
    for name in OVER_ALL:
        yield Task(f"{name}.pdf", name, _work(name, every, trade))
    for name in WORK_TABLES:
        yield Task(f"{name}.csv", name, _table(name, every, trade, to_csv))
        yield Task(f"{name}.txt", name, _table(name, every, trade, to_text))
    for name in TO_CUT:
        yield Task(f"{name}.dxf", name, _cut(name, every, trade, to_dxf))
        yield Task(f"{name}.svg", name, _cut(name, every, trade, to_cutting_svg))
    if len(every) > 1:
        # What is taken round the whole house with the tape, in one go.
        for name in _TAPE:
            yield Task(f"{name}.pdf", name, _drawn(name, every, trade))


_TAPE = ("measuring", "measurements")


def _of_room(stem: str, path: Path, room: Room, dressed: Dressed, trade: Trade) -> Iterator[Task]:
    def elevations() -> list[Picture]:
        return [
            picture_of(room, wall, scheme, trade)
            for wall in room.walls
            for scheme in choosing.schemes(wall, None, True, path.name)
        ]

    def sections() -> list[Picture]:
        return [
            picture
            for wall in room.walls
            for scheme in choosing.schemes(wall, None, True, path.name)
            if scheme is not None and scheme.treatments
            for picture in section_pictures(room, wall, scheme, trade)
        ]

    yield Task(f"{stem}-elevation.pdf", "elevation", elevations)
    yield Task(f"{stem}-section.pdf", "section", sections)
    yield Task(f"{stem}-plan.pdf", "plan", _drawn("plan", (dressed,), trade))
    if any(beside(room, wall, "right") is not None for wall in room.walls):
        yield Task(f"{stem}-unfolded.pdf", "unfolded", _drawn("unfolded", (dressed,), trade))
    for name in _TAPE:
        yield Task(f"{stem}-{name}.pdf", name, _drawn(name, (dressed,), trade))
    if any(len(wall.schemes) > 1 for wall in room.walls):
        yield Task(f"{stem}-schemes.pdf", "schemes", _drawn("schemes", (dressed,), trade))
    for name in WORK_SHEETS:
        if name not in OVER_ALL + ON_REQUEST:
            yield Task(f"{stem}-{name}.pdf", name, _work(name, (dressed,), trade))


def _drawn(name: str, rooms: tuple[Dressed, ...], trade: Trade) -> Callable[[], Sequence[Picture]]:
    kind = next(one for one in every_sheet() if one.name == name)
    return lambda: kind.make(rooms, trade, None)


def _work(name: str, rooms: tuple[Dressed, ...], trade: Trade) -> Callable[[], Sequence[Picture]]:
    _, maker = WORK_SHEETS[name]
    return lambda: maker(rooms, trade, None)


def _table(
    name: str, rooms: tuple[Dressed, ...], trade: Trade, form: Callable[[Sequence[Sequence[str]]], bytes]
) -> Callable[[], bytes]:
    return lambda: form(WORK_TABLES[name](rooms, trade))


def _cut(
    name: str, rooms: tuple[Dressed, ...], trade: Trade, form: Callable[[Sequence[Plate]], bytes]
) -> Callable[[], bytes]:
    return lambda: form(TO_CUT[name](rooms, trade))


def _progress(number: int, count: int, name: str) -> None:
    """A line that a terminal shows while it works; nothing where nobody looks. ``count`` 0 takes it away."""
    if not sys.stderr.isatty():
        return
    done = "" if not count else "#" * (20 * number // count)
    line = f"\r[{done:<20}] {number}/{count} {shown(name)[:48]:<48}" if count else "\r" + " " * 80 + "\r"
    print(line, end="", file=sys.stderr, flush=True)


def _fresh(path: Path, taken: set[str]) -> str:
    # Rooms of two folders may have one name; the second must not replace the first's sheets.
    stem = path.name.removesuffix(".json").removesuffix(".room")
    fresh, number = stem, 1
    while fresh.casefold() in taken:
        number += 1
        fresh = f"{stem}-{number}"
    taken.add(fresh.casefold())
    return fresh
