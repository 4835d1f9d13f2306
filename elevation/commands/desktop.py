"""``elevation desktop put`` and ``remove``: the program in this person's menu, and its rooms opened by a double click.

Files go where the XDG base directory specification keeps a person's own: a desktop entry, a media type, icons and metadata.
Nothing outside these is touched, and ``remove`` takes away just what ``put`` puts.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from shutil import which

from platformdirs import PlatformDirs

from elevation import places
from elevation.commands.arguments import Desktop
from elevation.errors import BadInput, BadOutput

_FILES = {
    "elevation.desktop": "applications/elevation.desktop",
    "elevation.mime.xml": "mime/packages/elevation.xml",
    "elevation.metainfo.xml": "metainfo/local.elevation.Elevation.metainfo.xml",
    "elevation.svg": "icons/hicolor/scalable/apps/elevation.svg",
    "elevation-room.svg": "icons/hicolor/scalable/mimetypes/elevation-room.svg",
}
_AFTER = (("update-desktop-database", "applications"), ("update-mime-database", "mime"))
"""What tells a running desktop; where one is not installed the next log-in finds the files by itself."""


def run_desktop(given: Desktop) -> int:
    """Put the files in place, or take them away, and say what was done.

    Raises
    ------
    BadInput
        The system keeps no such files.
    BadOutput
        A file cannot be written.
    """
    if not sys.platform.startswith(("linux", "freebsd")):
        raise BadInput(
            "command line", "desktop", "is for systems with freedesktop menus", "start elevation by its name here"
        )
    home = PlatformDirs("elevation", appauthor=False).user_data_path.parent
    done = _put(home) if given.put else _remove(home)
    for tool, folder in _AFTER:
        if done and which(tool) and (home / folder).is_dir():
            subprocess.run([tool, str(home / folder)], check=False, capture_output=True, timeout=60)
    if given.put:
        print(f"Elevation is in your menu, and room files open with it ({home}).")
    else:
        print(
            f"Elevation is no longer in your menu ({len(done)} files taken away)." if done else "It was not in your menu."
        )
    return 0


def _put(home: Path) -> list[Path]:
    done = []
    for name, where in _FILES.items():
        path = home / where
        text = (places.resources() / "desktop" / name).read_text(encoding="utf-8").replace("@EXEC@", exec_line())
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
        except OSError as trouble:
            raise BadOutput(str(path), "", trouble.strerror or "cannot be written", "make the folder writable") from None
        done.append(path)
    return done


def _remove(home: Path) -> list[Path]:
    done = []
    for where in _FILES.values():
        path = home / where
        try:
            path.unlink()
        except FileNotFoundError:
            continue
        except OSError as trouble:
            raise BadOutput(str(path), "", trouble.strerror or "cannot be taken away", "make the folder writable") from None
        done.append(path)
    return done


def exec_line(python: str = sys.executable) -> str:
    """The command that starts this very installation, quoted as the desktop entry specification asks.

    Parameters
    ----------
    python : str
        The interpreter that runs it; its script is beside it, unless it was never installed.
    """
    script = Path(python).with_name("elevation")
    return quoted(str(script)) if script.is_file() else f"{quoted(python)} -m elevation"


def quoted(word: str) -> str:
    """A word of an ``Exec`` key: always in double quotes; ``"``, `````, ``$`` and a backslash escaped, ``%`` doubled.

    A backslash of a string key is doubled once more (desktop entry specification, "The Exec key").
    """
    escaped = "".join(f"\\{letter}" if letter in '"`$\\' else letter for letter in word)
    return '"' + escaped.replace("\\", "\\\\").replace("%", "%%") + '"'
