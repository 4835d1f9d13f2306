"""What the rules found, each by its weight, on whose authority and with what would put it right; and what is not known."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from elevation.findings.model import Finding
from elevation.room.model import Ref, Room
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.model import MissingFact
from elevation.window.announcer import Announcer
from elevation.window.finding_row import FindingRow
from elevation.window.texts import tr
from elevation.window.theme import LIGHT, Theme, make_quiet
from elevation.words import Style, msg

if TYPE_CHECKING:
    from elevation.planning.remedies import Remedy
    from elevation.window.unknown_list import UnknownList

IDLE_MS = 250
"""Remedies are worked out when nobody has moved anything for this long."""

_Key = tuple[str, Ref]


def key_of(finding: Finding) -> _Key:
    """Rule and subject: the same finding after the room has changed a little."""
    return finding.rule, finding.subject


def _alike(one: Finding, other: Finding) -> bool:
    """Whether two findings share rule, authority and caution: of a row of windows many do."""
    return (one.rule, one.authority, one.caution) == (other.rule, other.authority, other.caution)


class FindingsPanel(QWidget):
    """All findings, the heaviest first.

    Attributes
    ----------
    pointed : Signal(object)
        The finding to ring on the wall, or None.
    previewed : Signal(object)
        A room to show while a remedy is tried, or None.
    counted : Signal(int)
        How many findings there are.
    settled : Signal()
        A remedy was applied: its button is gone, and the keyboard needs another place.
    opened : Signal(object)
        The row whose remedies are to be seen.
    wanted : Signal(object, str)
        Ref and field of something not known that is to be told.
    """

    pointed = Signal(object)
    previewed = Signal(object)
    counted = Signal(int)
    settled = Signal()
    opened = Signal(object)
    wanted = Signal(object, str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.theme: Theme = LIGHT
        self.rows: list[FindingRow] = []
        self._shown: tuple[Finding, ...] | None = None
        self._open: _Key | None = None
        self._worked_for: tuple[Room, Finding] | None = None
        self._idle = QTimer(self)
        self._idle.setSingleShot(True)
        self._idle.setInterval(IDLE_MS)
        self._idle.timeout.connect(self.work_out)
        self.announcer = Announcer(self)
        self._none = QLabel(tr(msg("Nothing stands in the way.")), self)
        self._none.setWordWrap(True)
        make_quiet(self._none)
        self._none.setContentsMargins(8, 4, 8, 8)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 2, 0, 6)
        self._box.setSpacing(2)
        self._unknown: UnknownList | None = None
        self._missing: tuple[tuple[MissingFact, ...], Style] | None = None
        self._box.addWidget(self._none)
        self._box.addStretch(1)

    def refresh(self) -> None:
        """Show what the rules find now; rows are reused, remedies wait until nothing moves."""
        findings = self._session.findings()
        if self._session.gesture is None:
            # Told when the hand is still: during a drag it would speak without end.
            self.announcer.hear(findings, style_for(self._session.room))
        if self._open is not None and self._session.gesture is None:
            self._idle.start()
        self._show_unknown()
        if findings is self._shown:
            return
        self._shown = findings
        style = style_for(self._session.room)
        while len(self.rows) < len(findings):
            self._add_row()
        for number, row in enumerate(self.rows, 1):
            if number > len(findings):
                row.hide()
                row.finding = None
                continue
            finding = findings[number - 1]
            before = findings[number - 2] if number > 1 else None
            row.show_finding(finding, number, style, self.theme, is_brief=before is not None and _alike(before, finding))
            is_open = key_of(finding) == self._open
            if row.head.isChecked() != is_open:
                row.head.blockSignals(True)
                row.head.setChecked(is_open)
                row.head.blockSignals(False)
                row.more.setVisible(is_open)
                row.clear_remedies()
                self._worked_for = None
            row.show()
        self._none.setVisible(not findings)
        self.counted.emit(len(findings))

    def _show_unknown(self) -> None:
        out, style = self._session.set_out(), style_for(self._session.room)
        if self._missing is not None and out.missing is self._missing[0] and style == self._missing[1]:
            return
        self._missing = out.missing, style
        if out.missing:
            from elevation.findings.unknowns import unknowns  # Loaded when something first is not known.

            self.unknown.show_unknowns(unknowns(out), style)
        elif self._unknown is not None:
            self._unknown.show_unknowns((), style)
        # All may be well only where all is known.
        well = msg("Nothing of what is known stands in the way.") if out.missing else msg("Nothing stands in the way.")
        self._none.setText(tr(well))

    @property
    def unknown(self) -> UnknownList:
        """What is not known; made when something first is not."""
        if self._unknown is None:
            from elevation.window.unknown_list import UnknownList

            self._unknown = UnknownList(self)
            self._unknown.wanted.connect(self.wanted)
            self._box.insertWidget(self._box.indexOf(self._none) + 1, self._unknown)
        return self._unknown

    def _add_row(self) -> None:
        row = FindingRow(self)
        row.entered.connect(self.pointed)
        row.opened.connect(self._on_opened)
        row.tried.connect(self._try)
        row.applied.connect(self._apply)
        self.rows.append(row)
        self._box.insertWidget(self._box.indexOf(self._none), row)

    def _on_opened(self, row: FindingRow | None) -> None:
        self.previewed.emit(None)
        if row is None or row.finding is None:
            self._open = None
            return
        self._open = key_of(row.finding)
        for other in self.rows:
            if other is not row and other.head.isChecked():
                other.head.blockSignals(True)
                other.head.setChecked(False)
                other.head.blockSignals(False)
                other.more.hide()
        self._session.selection = row.finding.subject
        self.work_out()
        self.opened.emit(row)

    def open_finding(self, finding: Finding) -> None:
        """Open a finding's row (its mark on the wall was clicked)."""
        for row in self.rows:
            if row.finding is not None and key_of(row.finding) == key_of(finding):
                row.head.setChecked(True)
                row.head.setFocus()

    def work_out(self) -> None:
        """Work out the remedies of the open finding, once for each room."""
        if self._session.gesture is not None:
            return
        room = self._session.committed
        for row in self.rows:
            finding = row.finding
            if finding is None or not row.head.isChecked():
                continue
            if self._worked_for is not None and self._worked_for[0] is room and self._worked_for[1] is finding:
                return
            from elevation.planning.remedies import remedies  # Loaded when a finding is first opened.

            found = remedies(room, self._session.wall_id, self._session.scheme_id, finding, self._session.trade)
            style = style_for(room)
            because = tr(found.none_because, style) if found.none_because is not None else ""
            row.show_remedies(found.offered, because, style)
            self._worked_for = (room, finding)

    def _try(self, remedy: Remedy | None) -> None:
        self.previewed.emit(remedy.room if remedy is not None else None)

    def _apply(self, remedy: Remedy) -> None:
        self.previewed.emit(None)
        self.settled.emit()
        self._session.commit(remedy.room, remedy.label, self._session.selection or ())

    def set_theme(self, theme: Theme) -> None:
        """Marks in another ink."""
        self.theme = theme
        for row in self.rows:
            row.mark.theme = theme
            row.mark.update()

    def stop(self) -> None:
        """Nothing more is worked out."""
        self._idle.stop()
