"""kill -9 at 200 random moments while a scripted person edits and saves: nothing that was kept is ever lost."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from elevation.places import demo_rooms
from elevation.room.file import load_room, save_room
from elevation.room.keeping.recovery import orphans
from tests.faults.person import mark

KILLS = 200
pytestmark = [pytest.mark.slow, pytest.mark.skipif(not hasattr(os, "fork"), reason="forks its people")]


class Watcher:
    """Reads the log and says which rooms may stand on the disk after a kill.

    Attributes
    ----------
    safe : set of str
        Marks of the rooms that a person may find: the last one that was known to be kept or saved, and every later one.
    filed : set of str
        Marks of the rooms that the file may hold: the one last known to be saved, and one that was being saved.
    """

    def __init__(self, start: str) -> None:
        self.safe = {start}
        self.filed = {start}
        self.seen = {start}
        self.is_dragging = False
        self.counts = {"edited": 0, "kept": 0, "saved": 0, "began": 0}

    def read(self, lines: list[str]) -> None:
        """Take over what the log says since the last kill."""
        for line in lines:
            what, found = line.split()
            assert what != "trouble", "an edit could not be kept"
            if what in self.counts:
                self.counts[what] += 1
            if what in ("kept", "saved"):
                self.safe = {found}
            else:
                self.safe.add(found)
            if what == "saved":
                self.filed = {found}
            elif what == "saving":
                self.filed.add(found)
            self.seen.add(found)
        self.is_dragging = bool(lines) and lines[-1].startswith("dragging")

    def may_find(self, found: str) -> bool:
        """Whether a person may find that room: a drag's that was kept before it was logged is none seen before."""
        return found in self.safe or (self.is_dragging and found not in self.seen)


def test_no_kill_loses_what_was_kept(tmp_path: Path) -> None:
    file, state, log = tmp_path / "wall.room.json", tmp_path / "state", tmp_path / "log"
    # The demo room with most bytes: its writing takes longest.
    save_room(load_room(max(demo_rooms().glob("*.room.json"), key=lambda path: path.stat().st_size)), file)
    start = mark(load_room(file))
    watcher, rng = Watcher(start), random.Random(7)
    command = [sys.executable, "-m", "tests.faults.person", str(file), str(state), str(log)]
    root = Path(__file__).resolve().parents[2]
    offered = interrupted = 0
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd=root) as people:
        assert people.stdin is not None
        assert people.stdout is not None
        for seed in range(KILLS):
            log.write_bytes(b"")
            print(seed, file=people.stdin, flush=True)
            child = int(people.stdout.readline())
            time.sleep(rng.uniform(0.0, 0.25))
            os.kill(child, signal.SIGKILL)
            assert people.stdout.readline() == "gone\n"
            lines = log.read_text().splitlines()
            watcher.read(lines)
            interrupted += bool(lines) and lines[-1].split()[0] in ("editing", "dragging", "saving")

            held = mark(load_room(file))  # whole: it can be read
            assert held in watcher.filed, f"kill {seed}: the file is neither the old nor the new one"
            left = orphans(state)
            assert len(left) <= 1
            found = mark(left[0].load()) if left else held
            assert watcher.may_find(found), f"kill {seed}: the last edit that was kept is lost; {found} {lines[-8:]}"
            offered += bool(left)
            watcher.safe, watcher.filed = {found}, {held}
            watcher.seen.add(found)
        people.stdin.close()
    assert people.returncode == 0
    # Kills that hit nothing would prove nothing.
    assert offered > KILLS / 4
    assert interrupted > KILLS / 20
    assert min(watcher.counts.values()) > KILLS / 2, watcher.counts
    print(f"{KILLS} kills, {interrupted} in the middle of something, {offered} recoveries offered, {watcher.counts}")
