"""What a process opens, runs or fetches while a file is read, by the interpreter's own audit events (PEP 578)."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_NEVER = ("socket.", "subprocess.", "os.system", "os.exec", "os.posix_spawn", "os.fork", "os.spawn", "urllib.", "ftplib.")
"""Beginnings of events that reading a file must never cause."""

_LOOKS = ("open", "os.listdir", "os.scandir")
"""Events whose first argument is a path that is looked into."""


class Guard:
    """Notes everything that is not the program's own and not in the folder that is being read from.

    An audit hook cannot be taken away again, so a process makes one guard and lives with it.

    Attributes
    ----------
    trespasses : list of str
        What was opened, run or fetched although it must not be.
    """

    def __init__(self) -> None:
        self.trespasses: list[str] = []
        self._folder: str | None = None
        # Modules and tables that are loaded late belong to the program, not to the file.
        here = Path(__file__).resolve().parents[2]
        own = {os.path.realpath(path) for path in (*sys.path, sys.prefix, sys.base_prefix, here) if path}
        self._own = tuple(sorted(path for path in own if path != "/"))
        sys.addaudithook(self._hear)

    @contextmanager
    def watching(self, folder: Path) -> Iterator[None]:
        """Note what happens here; only ``folder`` may be looked into."""
        self._folder = os.path.realpath(folder)
        try:
            yield
        finally:
            self._folder = None

    def _hear(self, event: str, args: tuple[object, ...]) -> None:
        if self._folder is None:
            return
        if event.startswith(_NEVER):
            self.trespasses.append(f"{event} {args!r}"[:300])
        elif event in _LOOKS and isinstance(args[0], (str, bytes, os.PathLike)):
            allowed, self._folder = (self._folder, *self._own), None
            path = os.path.realpath(os.fsdecode(args[0]))
            self._folder = allowed[0]
            if not any(path == root or path.startswith(root + os.sep) for root in allowed):
                self.trespasses.append(f"{event} {path}"[:300])
