"""The window's one guard: what a person can put right becomes a quiet sentence, anything else a crash report."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

from elevation.errors import ElevationError
from elevation.window.texts import tr_whole_error

WriteReport = Callable[[BaseException, TracebackType | None], Path | None]


class Guard:
    """Stands in ``sys.excepthook`` while the window runs.

    Parameters
    ----------
    tell : callable
        Shows a sentence.
    crashed : callable
        Told the report's path (or None) after a bug.
    write_report : callable or None
        ``(error, trace) -> path``.
    """

    def __init__(
        self, tell: Callable[[str], None], crashed: Callable[[Path | None], None], write_report: WriteReport | None
    ) -> None:
        self._tell = tell
        self._crashed = crashed
        self._write_report = write_report
        self._before = sys.excepthook

    def stand(self) -> None:
        """Catch from now on."""
        self._before = sys.excepthook
        sys.excepthook = self.catch

    def stand_down(self) -> None:
        """As it was before."""
        sys.excepthook = self._before

    def catch(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Say what a person can put right; report the rest and go on."""
        if isinstance(error, ElevationError):
            self._tell(tr_whole_error(error))
            return
        if issubclass(kind, KeyboardInterrupt):
            self._before(kind, error, trace)
            return
        report = self._write_report(error, trace) if self._write_report is not None else None
        if report is None:
            self._before(kind, error, trace)
        self._crashed(report)
