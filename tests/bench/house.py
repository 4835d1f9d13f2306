"""A house of random rooms in one process, against each of those rooms in a process of its own.

``python -m tests.bench.house COUNT`` is the process that both are forked from: everything loaded and one other room
made, so that loading counts in neither.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import msgspec

from elevation.commands import choosing
from elevation.commands.draw import picture_of
from elevation.commands.sections import section_pictures
from elevation.errors import ElevationError
from elevation.planning.dressed import dress
from elevation.room.model import Room
from elevation.sheet.records import Picture
from elevation.sheet.work.whole import WORK_SHEETS
from elevation.trade.model import Trade
from elevation.trade.tables import load_trade
from tests.bench.timing import Row
from tests.strategies import random_room

ROOMS = 100
CUTS = "bench"
"""The sheet with the cut list: it has a row of its own."""
_WARM_SEED = 100_000


def pages_of(room: Room, trade: Trade) -> int:
    """Make every page of a room; how many there are."""
    return sum(_count(make) for make in _makers(room, trade))


def _count(make: Callable[[], tuple[Picture, ...]]) -> int:
    try:
        return len(make())
    except ElevationError:
        # A room without brackets has no drilling sheet; a random room may hold what no sheet can show.
        return 0


def _makers(room: Room, trade: Trade) -> Iterator[Callable[[], tuple[Picture, ...]]]:
    for wall in room.walls:
        yield lambda wall=wall: (picture_of(room, wall, None, trade, sheet="measuring"),)
        for scheme in choosing.schemes(wall, None, True, "a random room"):
            yield lambda wall=wall, scheme=scheme: (picture_of(room, wall, scheme, trade),)
            if scheme is not None and scheme.treatments:
                yield lambda wall=wall, scheme=scheme: tuple(section_pictures(room, wall, scheme, trade))
    dressed = dress(room, trade)
    for name, (_, maker) in WORK_SHEETS.items():
        if name != CUTS:
            yield lambda maker=maker: maker((dressed,), trade, None)


def _apart(seeds: range, trade: Trade) -> tuple[float, float, int]:
    """Make these rooms in a process forked for them: ms of the processor, its peak in MB, pages."""
    out, into = os.pipe()
    child = os.fork()
    if child == 0:
        begun = time.process_time()
        pages = sum(pages_of(random_room(seed), trade) for seed in seeds)
        took = (time.process_time() - begun) * 1000
        peak = re.search(r"VmHWM:\s+(\d+)", Path("/proc/self/status").read_text())
        os.write(into, msgspec.json.encode((took, int(peak[1]) / 1024 if peak else 0.0, pages)))
        os._exit(0)
    os.close(into)
    with os.fdopen(out, "rb") as report:
        said = report.read()
    os.waitpid(child, 0)
    return msgspec.json.decode(said, type=tuple[float, float, int])


def house(rooms: int = ROOMS) -> list[Row]:
    """Two rows: the time a room and the peak of memory; Linux only, where the kernel tells it."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.bench.house", str(rooms)], check=True, capture_output=True, text=True, timeout=1800
    )
    return msgspec.json.decode(done.stdout, type=list[Row])


def _measure(rooms: int) -> list[Row]:
    trade = load_trade()
    pages_of(random_room(_WARM_SEED), trade)
    alone = [_apart(range(seed, seed + 1), trade) for seed in range(rooms)]
    took, peak, pages = _apart(range(rooms), trade)
    if pages != sum(one[2] for one in alone):
        raise RuntimeError("the house has other pages than its rooms one by one")
    note = f"{rooms} rooms, {pages} pages, of the processor's time"
    mean = sum(one[0] for one in alone) / rooms
    return [
        Row("house: a room", took / rooms, mean, 1.1, None, note),
        Row(
            "house: memory", peak, max(one[1] for one in alone), 1.5, None, "peak in MB, not ms; of the largest room alone"
        ),
    ]


if __name__ == "__main__":
    sys.stdout.write(msgspec.json.encode(_measure(int(sys.argv[1]))).decode())
