"""A scripted person in a process of her own, who edits and saves until she is killed.

Run as ``python -m tests.faults.person FILE STATE LOG``; reads seeds, one a line. For each it forks a person who writes
what she is about to do and what is done into LOG, one line each, and prints her process number. The log is written
without a buffer: what it says has happened. Forking from a process that has loaded everything makes a person in
milliseconds, so that hundreds of kills take a minute.
"""

from __future__ import annotations

import hashlib
import os
import random
import sys
from pathlib import Path

from elevation.room.edits import rename_wall
from elevation.room.file import dump_room, load_room
from elevation.room.model import Room
from elevation.session.session import Session
from elevation.trade.model import Trade
from elevation.trade.tables import load_trade
from elevation.words import msg


def mark(room: Room) -> str:
    """A short name for what a room says."""
    return hashlib.sha256(dump_room(room)).hexdigest()[:16]


class Person:
    """Works on ``file`` as the window does, and tells the log.

    Parameters
    ----------
    file, state : Path
    log : int
        Descriptor.
    seed : int
    """

    def __init__(self, file: Path, state: Path, log: int, seed: int, trade: Trade) -> None:
        self._log = log
        self._rng = random.Random(seed)
        self._seed = seed
        self._steps = 0
        self.session = Session(load_room(file), trade, file, state=state)
        left = self.session.orphans()
        if left:
            self.session.recover(left[0])
        self._tell("began")

    def work(self) -> None:
        """One thing that people do."""
        self._steps += 1
        what = self._rng.randrange(10)
        if what < 3:
            now = self.session.committed
            room = rename_wall(now, now.walls[0].id, f"{self._seed} {self._steps}")
            self._tell("editing", room)
            self.session.commit(room, msg("Rename"))
            self._tell("edited")
        elif what < 5:
            self._tell("dragging")
            self._drag()
            self._tell("edited")
        elif what < 6:
            before = self.session._history.before
            self._tell("editing", None if before is None else before.room)
            self.session.undo()
            self._tell("edited")
        elif what < 8:
            self.session.worker.wait()
            self._tell("kept" if self.session.storage.trouble is None else "trouble")
        else:
            self._tell("saving")
            self.session.save()
            self._tell("saved")

    def _drag(self) -> None:
        handles = self.session.handles()
        gesture = self.session.press(self._rng.choice(handles[:6]))
        gesture.move(gesture.handle.value_mm + self._rng.uniform(-200.0, 200.0), 3.0, free=True)
        gesture.release()

    def _tell(self, what: str, room: Room | None = None) -> None:
        os.write(self._log, f"{what} {mark(self.session.committed if room is None else room)}\n".encode())


def main() -> None:
    file, state, log = (Path(given) for given in sys.argv[1:])
    trade = load_trade()
    warm = Session(load_room(file), trade)
    warm.handles()
    warm.findings()
    warm.close()
    for line in sys.stdin:
        child = os.fork()
        if child == 0:
            out = os.open(log, os.O_WRONLY | os.O_APPEND | os.O_CREAT)
            person = Person(file, state, out, int(line), trade)
            while True:
                person.work()
        print(child, flush=True)
        os.waitpid(child, 0)
        print("gone", flush=True)


if __name__ == "__main__":
    main()
