"""A crash leaves a readable report in the state folder; the next start says where, kindly."""

from __future__ import annotations

import platform
import sys
import traceback
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType

from elevation import __version__, places

_UNREAD = "last-crash"


def write_report(error: BaseException | None = None, trace: TracebackType | None = None, note: str = "") -> Path | None:
    """Write a report on ``error`` (default: the one being handled) and return its path; None where nothing can be written.

    The report holds the program's version, the machine's, and the trace; nothing of the room.
    """
    if error is None:
        error, trace = sys.exc_info()[1], sys.exc_info()[2]
    now = datetime.now(UTC)
    lines = [
        f"Elevation {__version__}, {now:%Y-%m-%d %H:%M:%S} UTC",
        f"Python {platform.python_version()} on {platform.platform()}",
        note,
        "",
    ]
    if error is not None:
        lines += traceback.format_exception(type(error), error, trace or error.__traceback__)
    try:
        folder = places.state_folder() / "crashes"
        folder.mkdir(parents=True, exist_ok=True)
        report = folder / f"crash-{now:%Y%m%d-%H%M%S-%f}.txt"
        report.write_text("\n".join(line.rstrip("\n") for line in lines) + "\n", encoding="utf-8")
        (folder / _UNREAD).write_text(report.name, encoding="utf-8")
    except OSError:
        return None
    return report


def take_unread() -> Path | None:
    """The report that the last crash left, once; None where there is none."""
    folder = places.state_folder() / "crashes"
    mark = folder / _UNREAD
    try:
        name = mark.read_text(encoding="utf-8")
        mark.unlink()
    except OSError:
        return None
    report = folder / Path(name).name
    return report if report.is_file() else None
