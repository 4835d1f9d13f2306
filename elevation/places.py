"""Where the program's own files are, and where a person's are."""

from __future__ import annotations

import os
import re
import tempfile
from functools import cache
from pathlib import Path

from platformdirs import PlatformDirs

from elevation.errors import Missing, said

_PACKAGE = Path(__file__).resolve().parent


@cache
def _packed_or_sibling(packed: str, sibling: str) -> Path:
    # A wheel packs the folder inside the package; an editable install leaves it beside it.
    inside = _PACKAGE / packed
    return inside if inside.is_dir() else _PACKAGE.parent / sibling


def resources() -> Path:
    """The folder of tables, catalogues, schemas and other resources."""
    return _packed_or_sibling("_resources", "resources")


def demo_rooms() -> Path:
    """The folder of demo rooms."""
    return _packed_or_sibling("_demo_rooms", "demo_rooms")


def in_order(path: Path) -> tuple[tuple[int, int, str], ...]:
    """The key that puts files in the order a person would: 2 before 10, whatever the case of letters."""
    parts = re.split(r"(\d+)", path.name.casefold())
    return tuple((0, int(part), part) if part.isdecimal() else (1, 0, part) for part in parts if part)


def demo_room_files() -> tuple[Path, ...]:
    """The demo rooms, in order."""
    return tuple(sorted(demo_rooms().glob("*.room.json"), key=in_order))


def own_tables() -> Path:
    """The folder of a person's own tables (``XDG_DATA_HOME`` is asked for each time); it need not be there."""
    return PlatformDirs("elevation", appauthor=False).user_data_path / "tables"


def state_folder() -> Path:
    """The folder for what a person need not see (recoveries, locks, crash reports), made if need be.

    ``XDG_STATE_HOME`` (or the platform's own place) is asked for each time, so that a test or a service may move it.
    Where it cannot be written, a folder of this person's own under the system's temporary folder stands in;
    ``state_is_lasting`` tells.

    Raises
    ------
    Missing
        Nothing can be written anywhere.
    """
    usual = _usual_state_folder()
    if _is_writable(usual):
        return usual
    person = os.getuid() if hasattr(os, "getuid") else os.environ.get("USERNAME", "me")
    shared = Path(tempfile.gettempdir()) / f"elevation-{person}"
    if _is_writable(shared) and _is_own(shared):
        return shared
    return _last_resort()


@cache
def _last_resort() -> Path:
    try:
        return Path(tempfile.mkdtemp(prefix="elevation-"))
    except OSError:
        raise Missing(
            said("state folder"),
            "",
            said("no folder can be written, not even a temporary one"),
            said("make room or set XDG_STATE_HOME"),
        ) from None


def state_is_lasting() -> bool:
    """Whether the state folder outlives the next start of the machine; False where a temporary one stands in."""
    return _is_writable(_usual_state_folder())


def _usual_state_folder() -> Path:
    # appauthor=False: no folder of a maker's name between on Windows.
    return PlatformDirs("elevation", appauthor=False).user_state_path


def _is_writable(folder: Path) -> bool:
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            return True
    except (OSError, RuntimeError):  # RuntimeError: no home folder at all
        return False


def _is_own(folder: Path) -> bool:
    """Whether nobody else made this folder in the shared temporary place."""
    if not hasattr(os, "getuid"):  # pragma: no cover - Windows, where the temporary place is a person's own
        return True
    return folder.lstat().st_uid == os.getuid() and not folder.is_symlink()
