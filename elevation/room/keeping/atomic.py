"""Writing a file wholly or not at all.

The new bytes go to a temporary file in the same folder, are flushed to the disk and read back; only
then do they take the old file's place in one step. Whatever fails before leaves the old file as it was.
"""

from __future__ import annotations

import contextlib
import os
import re
import stat
import time
from pathlib import Path

from elevation.errors import BadOutput, said
from elevation.room.keeping.reasons import reason_of

_MOST_NAME = 200
_TEMPORARY = re.compile(r"\.(?P<name>.+)\.[0-9a-f]{12}\.tmp", re.DOTALL)
_ABANDONED_S = 3600.0


def write_atomically(path: Path | str, data: bytes) -> None:
    """Put ``data`` in the file at ``path``.

    A symbolic link is followed: the file that it leads to is replaced and the link stays. The mode of
    the old file is kept; a new file gets the usual one.

    Raises
    ------
    BadOutput
        It cannot be written; what was there is still there, and no temporary file is left.
    """
    shown = str(path)
    try:
        target = Path(path).resolve()
        mode = _mode_of(target, shown)
        folder = target.parent
        if not folder.is_dir():
            raise BadOutput(shown, "", said("cannot be written: its folder does not exist"), said("choose another folder"))
        temporary = folder / f".{_short(target.name)}.{os.urandom(6).hex()}.tmp"
        try:
            _write_whole(temporary, data, mode)
            if temporary.read_bytes() != data:
                raise BadOutput(
                    shown, "", said("was not stored as it was written"), said("the old file is kept; try another disk")
                )
            temporary.replace(target)
        except BaseException:
            with contextlib.suppress(OSError):
                temporary.unlink()
            raise
        _flush_folder(folder)
        sweep_temporaries(folder, target.name)
    except PermissionError:
        raise BadOutput(
            shown, "", said("may not be written here"), said("choose another folder or ask for permission")
        ) from None
    except (OSError, RuntimeError, ValueError) as error:
        # RuntimeError: a link that leads to itself; ValueError: a name that no file can have.
        reason = reason_of(error)
        raise BadOutput(
            shown, "", said("cannot be written ({reason})", reason=reason), said("choose another name or folder")
        ) from None


def sweep_temporaries(folder: Path, name: str | None = None) -> None:
    """Take away temporary files that a killed program left in ``folder``.

    Parameters
    ----------
    folder : Path
    name : str or None
        Only those of the file of that name; None: of every file, for a folder that is our own.
    """
    # A younger one may be another window's that is being written just now.
    oldest = time.time() - _ABANDONED_S
    with contextlib.suppress(OSError):
        with os.scandir(folder) as entries:
            left = [entry for entry in entries if _is_left(entry, name, oldest)]
        for entry in left:
            Path(entry.path).unlink(missing_ok=True)


def _is_left(entry: os.DirEntry[str], name: str | None, oldest: float) -> bool:
    found = _TEMPORARY.fullmatch(entry.name)
    if found is None or (name is not None and found["name"] != _short(name)):
        return False
    return entry.is_file(follow_symlinks=False) and entry.stat(follow_symlinks=False).st_mtime < oldest


def _short(name: str) -> str:
    """As much of a file's name as leaves room for the rest of a temporary one's: systems count bytes, 255 at most."""
    while len(os.fsencode(name)) > _MOST_NAME:
        name = name[:-1]
    return name


def _mode_of(target: Path, shown: str) -> int | None:
    """The mode to keep; None for a new file."""
    try:
        found = target.stat()
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(found.st_mode):
        raise BadOutput(shown, "", said("is a folder"), said("name a file in it"))
    if not stat.S_ISREG(found.st_mode):
        raise BadOutput(shown, "", said("is not a plain file"), said("choose another name"))
    # Replacing would get round the protection, because only the folder is asked for permission.
    if not os.access(target, os.W_OK):
        raise BadOutput(shown, "", said("is read-only"), said("save under another name"))
    return stat.S_IMODE(found.st_mode)


def _write_whole(temporary: Path, data: bytes, mode: int | None) -> None:
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    handle = os.open(temporary, flags, 0o666)
    with os.fdopen(handle, "wb") as stream:
        stream.write(data)
        stream.flush()
        os.fsync(stream.fileno())
    if mode is not None:
        temporary.chmod(mode)


def _flush_folder(folder: Path) -> None:
    """Make the new name last through a power cut, where the system lets folders be flushed."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
