"""What the window has to say by itself: a crash before, work that a crash left, a file that changed underneath."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from elevation.errors import BadOutput, ElevationError
from elevation.room.keeping.reasons import reason_of
from elevation.room.keeping.recovery import Orphan
from elevation.window.texts import tr, tr_error
from elevation.words import msg

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow


def _name(orphan: Orphan) -> str:
    """Which room was left: its file, else the name it has, so that nobody takes another room's edits for this one's."""
    if orphan.path is not None:
        return Path(orphan.path).name
    try:
        return orphan.load().name or tr(msg("a room without a file"))
    except ElevationError:
        return tr(msg("a room without a file"))


class Notices:
    """Says it in the strip over the canvas and does what the person answers."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._session = window.session
        self._orphans: tuple[Orphan, ...] = ()
        self._asked_about: object = None
        self._is_trouble_said = False
        self._crash_report: Path | None = None

    def say_start(self, crash_report: Path | None, *, is_greeted: bool = False) -> None:
        """What has to be said at the start, one after the other: work that a crash left, then where its report is.

        ``is_greeted``: where nothing else is, whose room this is and how to begin with one's own.
        """
        self._crash_report = crash_report
        if self._offer():
            return
        if self._session.storage.is_read_only and self._session.path is not None:
            name = self._session.path.name
            self._window.notice.say(
                tr(msg("{name} is open in another window: here it can be looked at and saved as another.", name=name))
            )
            return
        self._say_report()
        if is_greeted and crash_report is None:
            self._window.notice.say(
                tr(
                    msg(
                        "This is a demo room: drag its rod and see what answers. Seven figures from the tape draw your own."
                    )
                ),
                {"new": tr(msg("&Measure my wall")), "open": tr(msg("&Open a room"))},
            )

    def _say_report(self) -> None:
        """Say once where the report of the last run's crash is."""
        report, self._crash_report = self._crash_report, None
        if report is not None:
            self._window.notice.say(
                tr(msg("The last run ended by a fault of ours. A report is in {path}.", path=str(report)))
            )

    def _offer(self) -> bool:
        """Offer the newest of what was left; False where nothing is."""
        self._orphans = self._session.storage.orphans()
        if self._orphans:
            self._window.notice.say(
                tr(
                    msg(
                        "{name}: the last run ended before everything was saved. The edits are kept.",
                        name=_name(self._orphans[0]),
                    )
                ),
                {"recover": tr(msg("&Go on with them")), "drop": tr(msg("&Drop them"))},
            )
        return bool(self._orphans)

    def look_at_keeping(self) -> None:
        """Say once that edits cannot be kept for the case of a crash, and again when that comes back."""
        trouble = self._session.storage.trouble
        if trouble is not None and not self._is_trouble_said:
            said = trouble if isinstance(trouble, ElevationError) else BadOutput("", "", reason_of(trouble))
            self._window.notice.say(
                tr(msg("Edits cannot be kept for the case of a crash: save now and then. ({why})", why=tr_error(said)))
            )
        self._is_trouble_said = trouble is not None

    def look_at_disk(self) -> None:
        """Ask once about a file that another program has changed."""
        storage = self._session.storage
        if self._session.path is None or not storage.is_changed_on_disk():
            return
        mark = self._session.path.stat().st_mtime_ns if self._session.path.exists() else 0
        if mark != self._asked_about:
            self._asked_about = mark
            self._window.notice.say(
                tr(msg("{name} was changed by another program.", name=self._session.path.name)),
                {"reread": tr(msg("&Read it again")), "keep": tr(msg("&Keep mine"))},
            )

    def on_notice(self, key: str) -> None:
        """A button of the notice was pressed."""
        if key == "recover":
            if self._window.files.may_leave():
                self._session.recover(self._orphans[0])
                self._window.canvas.fit()
            else:
                self._offer()
        elif key == "drop":
            # Only the one that was named: another crash may have left another room.
            self._orphans[0].discard()
            self._offer()
        elif key in ("new", "open"):
            self._window.actions_by_name[key].trigger()
        elif key == "reread":
            self._window.files.revert(is_asked=False)
        if self._window.notice.isHidden():
            self._say_report()

    def say_crash(self, report: Path | None) -> None:
        """A bug: say where its report is, and that the room is safe."""
        where = str(report) if report is not None else tr(msg("the terminal"))
        self._window.notice.say(
            tr(msg("Something went wrong in the program; your room is kept. A report is in {path}.", path=where))
        )
