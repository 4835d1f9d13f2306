"""Runs mutated files through the program and counts what became of them."""

from __future__ import annotations

import contextlib
import json
import random
import resource
import signal
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType
from typing import TypeVar

from elevation import places
from elevation.room.file import dump_room, load_bytes
from elevation.trade.model import Trade
from elevation.trade.own import TABLES
from elevation.trade.tables import load_trade
from tests.fuzz.drive import drive, read, read_tables
from tests.fuzz.guard import Guard
from tests.fuzz.mutate import Pool, mutate_bytes, mutate_room, mutate_table
from tests.fuzz.mutate_rows import Carried
from tests.strategies import random_room

Read = TypeVar("Read")

MOST_READ_S = 1.0
"""Time of the processor to read or refuse one file."""

MOST_DRIVE_S = 20.0
"""Time of the processor to set out and draw one: a room that the file may say can be as large as a house."""

MOST_MB = 300.0
"""Peak memory of the process while one file is read, set out and drawn."""


class TooLong(Exception):
    """A file took longer than anything may."""


class Tally:
    """What became of the files.

    Attributes
    ----------
    counts : Counter
        By kind of mutation and outcome.
    faults : dict
        First example of each fault, by where it was raised.
    slowest_read_s, slowest_drive_s : float
        Time of the processor.
    most_mb : float
        Largest memory while one file was worked on.
    heaviest : bytes
        That file.
    """

    def __init__(self) -> None:
        self.counts: Counter[str] = Counter()
        self.faults: dict[str, tuple[int, bytes, str]] = {}
        self.slowest_read_s = 0.0
        self.slowest_drive_s = 0.0
        self.most_mb = 0.0
        self.heaviest = b""

    def fault(self, data: bytes, error: BaseException) -> None:
        """Count an error, and keep the file that was first to raise it there."""
        frames = [frame for frame in traceback.extract_tb(error.__traceback__) if "elevation" in frame.filename]
        last = frames[-1] if frames else None
        key = f"{type(error).__name__} at {Path(last.filename).name}:{last.lineno}" if last else type(error).__name__
        if key not in self.faults:
            print(f"FAULT {key}: {error}"[:300], flush=True)
        count, first, text = self.faults.get(key, (0, data, "".join(traceback.format_exception(error))[-3000:]))
        self.faults[key] = (count + 1, first, text)

    def lines(self) -> Iterator[str]:
        """The counts, one a line."""
        for kind, count in sorted(self.counts.items()):
            yield f"{kind}: {count}"
        yield f"slowest to read {self.slowest_read_s:.3f} s, to set out and draw {self.slowest_drive_s:.2f} s"
        yield f"peak {self.most_mb:.0f} MB, now {held_mb():.0f} MB"
        for key, (count, _, _) in self.faults.items():
            yield f"FAULT {key}: {count}"


def _of_the_process(name: str) -> float | None:
    """A figure of this process in MB as Linux tells it; None elsewhere."""
    with contextlib.suppress(OSError, ValueError), Path("/proc/self/status").open(encoding="ascii") as stream:
        for line in stream:
            if line.startswith(name + ":"):
                return int(line.split()[1]) / 2**10
    return None


def held_mb() -> float:
    """Memory of this process at this moment, or its largest where the system does not tell."""
    held = _of_the_process("VmRSS")
    return peak_mb() if held is None else held


def forget_peak() -> None:
    """Begin the peak anew, where the system can: the next one belongs to the next file alone."""
    with contextlib.suppress(OSError):
        Path("/proc/self/clear_refs").write_text("5", encoding="ascii")


def peak_mb() -> float:
    """Largest memory of this process since ``forget_peak``, or ever where that does nothing."""
    peak = _of_the_process("VmHWM")
    if peak is not None:
        return peak
    held = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return held / (2**20 if sys.platform == "darwin" else 2**10)


@contextmanager
def at_most(seconds: float) -> Iterator[None]:
    """Raise TooLong inside after so much time of the processor."""

    def stop(_number: int, _frame: FrameType | None) -> None:
        raise TooLong(f"{seconds:g} s")

    before = signal.signal(signal.SIGVTALRM, stop)
    signal.setitimer(signal.ITIMER_VIRTUAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        signal.signal(signal.SIGVTALRM, before)


class Runner:
    """Mutates, reads and drives.

    Parameters
    ----------
    folder : Path
        An empty folder: the room is read from ``folder/room``, and nothing else in ``folder`` may be looked into.
    share : float
        Of what can be read, how much is set out, dragged and drawn as well.
    """

    def __init__(self, folder: Path, share: float = 1.0) -> None:
        self.tally = Tally()
        self.share = share
        self.trade = load_trade()
        self.file = folder / "room" / "fuzzed.room.json"
        self.tables = folder / "tables"
        self.file.parent.mkdir()
        self.tables.mkdir()
        demos = [path.read_bytes() for path in sorted(places.demo_rooms().glob("*.room.json"))]
        # The sample says everything once that a room file can say, rows of somebody's own tables too.
        sample = Path(__file__).resolve().parents[1] / "room" / "samples" / "version_1.room.json"
        demos.append(sample.read_bytes())
        self.demos = len(demos)
        self.whole = demos + [dump_room(random_room(seed)) for seed in range(30)]
        self.pool = Pool([json.loads(data) for data in self.whole])
        self.carried = Carried(self.trade)
        shipped = places.resources() / "tables"
        self.contents = {table.file: (shipped / table.file).read_text(encoding="utf-8-sig") for table in TABLES}
        # Everything that is loaded late is loaded now, so that the guard sees nothing but what a file does.
        for data in self.whole[:3]:
            drive(load_bytes(data, "warm"), self.trade, random.Random(0), every=True)
        self.guard = Guard()

    def room(self, kind: str, data: bytes, rng: random.Random) -> None:
        """Read one file and, where it is a room, drive it."""
        self.file.write_bytes(data)
        forget_peak()
        try:
            found = self._read(read, self.file, self.file.parent)
            if isinstance(found, str):
                self.tally.counts[f"{kind}, refused"] += 1
                return
            self.tally.counts[f"{kind}, a room"] += 1
            if rng.random() >= self.share:
                return
            self.tally.counts[f"{kind}, set out and drawn"] += 1
            start = time.process_time()
            with at_most(MOST_DRIVE_S), self.guard.watching(self.file.parent):
                drive(found, self.trade, rng, every=rng.random() < 0.1)
            self.tally.slowest_drive_s = max(self.tally.slowest_drive_s, time.process_time() - start)
            self._clean()
        except Exception as error:
            self.tally.fault(data, error)
        finally:
            self._weigh(data)

    def table(self, rng: random.Random) -> None:
        """Lay a mutated table over the program's, and drive a demo room with it."""
        name = rng.choice(list(self.contents))
        data = mutate_table(self.contents[name], rng, rng.choice((1, 1, 2, 4)))
        path = self.tables / name
        path.write_bytes(data)
        forget_peak()
        try:
            found = self._read(read_tables, self.tables, self.tables)
            if isinstance(found, str):
                self.tally.counts["table, refused"] += 1
                return
            self.tally.counts["table, read"] += 1
            if rng.random() >= self.share:
                return
            self.tally.counts["table, used"] += 1
            with at_most(MOST_DRIVE_S), self.guard.watching(self.tables):
                room = load_bytes(rng.choice(self.whole[: self.demos]), "demo")
                drive(room, found, rng, every=rng.random() < 0.1)
            self._clean()
        except Exception as error:
            self.tally.fault(name.encode() + b"\n" + data, error)
        finally:
            path.unlink()
            self._weigh(name.encode() + b"\n" + data)

    def mutated(self, rng: random.Random) -> tuple[str, bytes]:
        """A mutated room and the kind of its mutation."""
        data = rng.choice(self.whole if rng.random() < 0.3 else self.whole[: self.demos])
        other = rng.choice(self.whole)
        if rng.random() < 0.35:
            return "bytes", mutate_bytes(data, other, rng, rng.choice((1, 1, 2, 5)))
        if rng.random() < 0.25:
            return "rows", self.carried.mutate(data, rng, rng.choice((0, 1, 1, 2, 4)))
        return "values", mutate_room(data, self.pool, rng, rng.choice((1, 1, 2, 3, 6)))

    def _read(self, reads: Callable[[Path, Trade], Read], path: Path, folder: Path) -> Read:
        """What ``reads`` makes of ``path`` in time, looking into nothing but ``folder``."""
        start = time.process_time()
        with at_most(10 * MOST_READ_S), self.guard.watching(folder):
            found = reads(path, self.trade)
        took = time.process_time() - start
        self.tally.slowest_read_s = max(self.tally.slowest_read_s, took)
        if took > MOST_READ_S:
            self.tally.counts[f"over {MOST_READ_S:g} s to read"] += 1
            raise TooLong(f"read in {took:.2f} s")
        self._clean()
        return found

    def _weigh(self, data: bytes) -> None:
        """Keep the first file that took more memory than any may."""
        peak = peak_mb()
        if peak > self.tally.most_mb:
            self.tally.most_mb = peak
            self.tally.heaviest = data
        if peak > MOST_MB:
            self.tally.counts[f"over {MOST_MB:g} MB"] += 1
            try:
                raise MemoryError(f"peak {peak:.0f} MB, {held_mb():.0f} MB after it")
            except MemoryError as error:
                self.tally.fault(data, error)

    def _clean(self) -> None:
        if self.guard.trespasses:
            told, self.guard.trespasses = "; ".join(self.guard.trespasses[:3]), []
            raise AssertionError(f"looked outside the folder, ran or fetched: {told}")


def run(rooms: int, tables: int, seed: int, keep: Path | None = None, share: float = 1.0) -> Tally:
    """Mutate so many rooms and tables.

    Parameters
    ----------
    rooms, tables : int
    seed : int
        The same seed makes the same files.
    keep : Path or None
        A folder for the first file of each fault.
    share : float
        Of what can be read, how much is set out, dragged and drawn as well.
    """
    with tempfile.TemporaryDirectory() as made:
        runner = Runner(Path(made), share)
        for number in range(rooms):
            rng = random.Random(f"{seed} room {number}")
            kind, data = runner.mutated(rng)
            runner.room(kind, data, rng)
            if number % 5000 == 4999:
                print(f"{number + 1} rooms, {len(runner.tally.faults)} faults, {held_mb():.0f} MB", flush=True)
        for number in range(tables):
            runner.table(random.Random(f"{seed} table {number}"))
    if keep is not None:
        keep.mkdir(parents=True, exist_ok=True)
        (keep / "heaviest").write_bytes(runner.tally.heaviest)
        for number, (key, (_, data, text)) in enumerate(runner.tally.faults.items()):
            (keep / f"{number}.fault").write_bytes(data)
            (keep / f"{number}.txt").write_text(f"{key}\n{text}", encoding="utf-8", errors="backslashreplace")
    return runner.tally
