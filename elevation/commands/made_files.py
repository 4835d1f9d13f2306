"""What was made in a folder: a list with a digest of each file, so that nobody else's file is replaced."""

from __future__ import annotations

import hashlib
from pathlib import Path

import msgspec

from elevation.errors import BadOutput
from elevation.room.keeping.atomic import write_atomically

LIST = ".elevation-sheets.json"


class Made:
    """The list of one folder.

    Parameters
    ----------
    folder : Path
    replaces : bool
        Files of others are replaced too: it was asked for.
    """

    def __init__(self, folder: Path, *, replaces: bool = False) -> None:
        self._folder = folder
        self._replaces = replaces
        self._digests = _read(folder / LIST)

    def refuse_a_strangers(self, name: str) -> None:
        """Raise BadOutput where ``name`` is there and is not, or no longer, what was made here."""
        path = self._folder / name
        if self._replaces or not path.exists():
            return
        if self._digests.get(name) != _digest(path):
            raise BadOutput(
                str(path),
                "",
                "is there and was not made by this program, or was changed since",
                "move it, or give --replace",
            )

    def note(self, name: str) -> None:
        """Put a file that was just written on the list."""
        self._digests[name] = _digest(self._folder / name)
        write_atomically(self._folder / LIST, msgspec.json.format(msgspec.json.encode(self._digests), indent=2))


def _read(path: Path) -> dict[str, str]:
    try:
        return msgspec.json.decode(path.read_bytes(), type=dict[str, str])
    except (OSError, msgspec.DecodeError, UnicodeDecodeError):
        # No list, or one that somebody else wrote: then nothing is known to be ours.
        return {}


def _digest(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return ""
