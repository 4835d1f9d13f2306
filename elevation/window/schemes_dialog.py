"""Schemes of the wall side by side: compare, look before and after, keep one, draw the sheet. Worked out on the worker."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from threading import Event
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from elevation.errors import ElevationError
from elevation.planning.comparing import MOST, Comparison, choices
from elevation.room.edits import keep_scheme
from elevation.room.find import wall_of
from elevation.room.style import style_for
from elevation.session.worker import Done
from elevation.sheet.drawing import View
from elevation.sheet.schemes import NONE, alike_said, scheme_sheet
from elevation.window.choice import Choice
from elevation.window.on_screen import resize_on_screen
from elevation.window.schemes_made import Made, made_of
from elevation.window.schemes_picks import SchemesPicks
from elevation.window.schemes_picture import SchemesPicture
from elevation.window.schemes_proposing import Proposed, Proposing, proposed_said, so_far_said
from elevation.window.sheets_pages import write_pages
from elevation.window.texts import tr, tr_whole_error
from elevation.window.theme import make_quiet
from elevation.words import Message, msg

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow

_KIND = "schemes"
_SETTLED_MS = 120
"""While a handle is dragged nothing is compared; this long after the last change everything is."""
_FILTERS = msg("PDF to print (*.pdf);;Drawing for editing (*.svg);;Picture (*.png)")


class Schemes(QDialog):
    """The view of a wall's schemes; it follows the room while it is open.

    Attributes
    ----------
    compared : Comparison or None
        What is shown; None before it is worked out.
    ready : Signal()
        It is shown, or could not be.
    """

    ready = Signal()
    _done = Signal(object)

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._session = window.session
        self._generation = -1
        self._news = ""
        self._wall = ""
        self._picked: list[str | None] = []
        self.compared: Comparison | None = None
        self.setWindowTitle(tr(msg("Schemes side by side")))
        self.picks = SchemesPicks(self)
        self.picks.changed.connect(self._on_picked)
        self.proposing = Proposing(self._session, self)
        self.proposing.better.connect(self._show_better)
        self.proposing.done.connect(self._take_proposals)
        self.cloth = Choice(tr(msg("Cloth")), self)
        self.cloth.offer(
            [("drawn", tr(msg("as drawn"))), ("open", tr(msg("open"))), ("closed", tr(msg("closed")))], "drawn"
        )
        self.cloth.chosen.connect(self.begin)
        self.before = QPushButton(tr(msg("&Before and after")), self)
        self.before.setCheckable(True)
        self.before.setAutoDefault(False)
        self.before.toggled.connect(self._turn_before)
        self.picture = SchemesPicture(window.theme, self)
        self.picture.chosen.connect(self._choose)
        self.table = QTableWidget(self)
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.table.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.table.setWordWrap(True)
        self.table.setAccessibleName(tr(msg("What differs between the schemes")))
        header = self.table.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        header.setTextElideMode(Qt.TextElideMode.ElideRight)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.alike = QLabel(self)
        self.alike.setTextFormat(Qt.TextFormat.PlainText)
        self.alike.setWordWrap(True)
        make_quiet(self.alike)
        self.show_button = self._button(msg("&Go on with this one"), self.show_one)
        self.keep_button = self._button(msg("&Keep only this one"), self.keep_one)
        self.propose_button = self._button(msg("&Propose others"), self.propose)
        self.propose_button.setToolTip(
            tr(msg("tries every place that handles stick to, and adds schemes that differ in kind and break nothing"))
        )
        self.export_button = self._button(msg("&Export…"), self.ask_export)
        self.close_button = self._button(msg("&Close"), self.reject)
        self._lay()
        self._wait = QTimer(self, singleShot=True)
        self._wait.setInterval(_SETTLED_MS)
        self._wait.timeout.connect(self.begin)
        self._done.connect(self._take)
        resize_on_screen(self, 1080, 680)

    def _button(self, text: Message, act: Callable[[], object]) -> QPushButton:
        button = QPushButton(tr(text), self)
        button.setAutoDefault(False)
        button.clicked.connect(act)
        return button

    def _lay(self) -> None:
        top = QHBoxLayout()
        top.addWidget(self.picks, 1)
        label = QLabel(tr(msg("C&loth")), self)
        label.setBuddy(self.cloth)
        top.addWidget(label)
        top.addWidget(self.cloth)
        top.addWidget(self.before)
        foot = QHBoxLayout()
        foot.addWidget(self.show_button)
        foot.addWidget(self.keep_button)
        foot.addWidget(self.propose_button)
        foot.addStretch(1)
        foot.addWidget(self.export_button)
        foot.addWidget(self.close_button)
        box = QVBoxLayout(self)
        box.setSpacing(8)
        box.addLayout(top)
        box.addWidget(self.picture, 4)
        box.addWidget(self.table, 3)
        box.addWidget(self.alike)
        box.addLayout(foot)

    # -- Qt's calls --------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        """Follow the room from now on."""
        super().showEvent(event)
        self.picture.theme = self._window.theme
        self._session.changed.connect(self._on_changed)
        self.begin()
        self.picture.setFocus()

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing is compared for a dialog that nobody sees."""
        self._wait.stop()
        self._session.changed.disconnect(self._on_changed)
        self._session.worker.cancel(_KIND)
        self.proposing.cancel()
        self.propose_button.setEnabled(True)
        super().hideEvent(event)

    def _on_changed(self, event: str) -> None:
        if event in ("room", "view") and self._session.gesture is None:
            self._news = ""
            self._wait.start()

    # -- which -------------------------------------------------------------------------

    @property
    def picked(self) -> tuple[str | None, ...]:
        """Ids of the schemes compared, None for the bare wall, in the wall's order."""
        return tuple(self._picked)

    def pick(self, ids: tuple[str | None, ...]) -> None:
        """Compare these."""
        self._picked = list(ids)
        self.begin()

    def _offer(self) -> None:
        """A box to tick for each scheme; the first that fit are ticked where another wall is shown."""
        room, wall = self._session.committed, self._session.wall_id
        options = choices(room, wall)
        ids = [key for key, _ in options]
        if wall != self._wall:
            self._wall, self._picked = wall, []
        kept = [key for key in ids if key in self._picked]
        if not kept:
            # With one scheme alone the bare wall stands beside it.
            kept = ids[1:][:MOST] if len(ids) > 2 else ids
        self._picked = kept
        self.picks.offer(options, kept, self.picture.width() * 2 // 3)

    def _on_picked(self) -> None:
        self._news = ""
        self._picked = self.picks.ticked
        self.begin()

    # -- working out -------------------------------------------------------------------

    def begin(self, _cloth: str = "") -> None:
        """Compare what is ticked, of the room as it is now."""
        self._wait.stop()
        if not self._session.wall_id:
            return
        self._offer()
        room, wall, ids, trade = self._session.committed, self._session.wall_id, self.picked, self._session.trade
        view = self._view()

        def job(cancelled: Event) -> object:
            return made_of(room, wall, ids, trade, view, cancelled.is_set)

        self._generation = self._session.worker.submit(_KIND, job, self._done.emit)

    def _view(self) -> View:
        cloth = self.cloth.key
        return View(panels="open" if cloth == "open" else "closed" if cloth == "closed" else "drawn", stack=False)

    def _take(self, done: Done) -> None:
        if done.generation != self._generation:
            return
        if isinstance(done.error, ElevationError):
            self.alike.setText(tr_whole_error(done.error))
        elif done.error is not None:
            raise done.error
        elif isinstance(done.result, Made):
            self._show(done.result)
        elif isinstance(done.result, Path):
            self._window.tell(tr(msg("Drawn to {name}.", name=str(done.result))))
        self.ready.emit()

    def _show(self, made: Made) -> None:
        self.compared = made.compared
        ids = [one.id for one in made.compared.schemes]
        here = self._session.scheme_id
        current = ids.index(here) if here in ids else len(ids) - 1
        self.picture.show_schemes(made.drawn, current)
        self._fill(made.compared)
        self._settle_buttons()

    def _fill(self, compared: Comparison) -> None:
        style = style_for(compared.room)
        rows = compared.differing
        self.table.setColumnCount(len(compared.schemes))
        self.table.setRowCount(len(rows))
        for column, one in enumerate(compared.schemes):
            head = QTableWidgetItem(tr(one.name))
            head.setToolTip(tr(one.name))
            self.table.setHorizontalHeaderItem(column, head)
        self.table.setVerticalHeaderLabels([tr(row.label) for row in rows])
        for at, row in enumerate(rows):
            for column, value in enumerate(row.values):
                self.table.setItem(at, column, QTableWidgetItem(NONE if value is None else tr(value, style)))
        self.table.resizeRowsToContents()
        self.alike.setText(" ".join(part for part in (self._news, tr(alike_said(compared), style)) if part))

    # -- acts --------------------------------------------------------------------------

    def current_id(self) -> str | None:
        """Id of the framed scheme; None for the bare wall."""
        if self.compared is None or not self.compared.schemes:
            return None
        return self.compared.schemes[self.picture.current].id

    def _choose(self, index: int) -> None:
        del index
        self._settle_buttons()

    def _settle_buttons(self) -> None:
        schemes = [scheme.id for scheme in wall_of(self._session.committed, self._session.wall_id).schemes]
        # What is proposed is no scheme of the wall before the search is over.
        is_there = self.current_id() in schemes and not self.picture.is_before_after
        self.show_button.setEnabled(is_there)
        self.keep_button.setEnabled(is_there and len(schemes) > 1)
        self.export_button.setEnabled(self.compared is not None)

    def _turn_before(self, is_on: bool) -> None:
        self.picture.show_before_after(is_on)
        self._settle_buttons()

    def show_one(self) -> None:
        """Turn the window to the framed scheme."""
        key = self.current_id()
        if key is not None:
            self._session.switch_scheme(key)

    def keep_one(self) -> None:
        """Take the wall's other schemes away; undo brings them back."""
        key = self.current_id()
        if key is None:
            return
        wall = self._session.wall_id
        room = keep_scheme(self._session.committed, wall, key)
        self._session.commit(room, msg("Keep one scheme"), (wall, key))
        self._session.switch_scheme(key)
        self._window.tell(tr(msg("The other schemes of this wall are gone; undo brings them back.")))

    def propose(self) -> None:
        """Look for schemes that differ in kind, on the worker, from the framed one."""
        key = self.current_id() or self._session.scheme_id
        if key is None:
            return
        self.propose_button.setEnabled(False)
        self.alike.setText(tr(msg("Trying the places that handles stick to…")))
        self.proposing.begin(self._session.wall_id, key, self._picked, self._view())

    def _show_better(self, found: Proposed) -> None:
        """What was found so far, beside what was there: looked at, not put in yet."""
        if found.made is not None:
            self._show(found.made)
            self.alike.setText(tr(so_far_said(len(found.ids))))

    def _take_proposals(self, done: Done) -> None:
        self.propose_button.setEnabled(True)
        if done.error is not None:
            raise done.error
        found = done.result
        if not isinstance(found, Proposed) or found.base is not self._session.committed:
            # The room went on in the meantime: what was found is of a room that is no more.
            self.begin()
            return
        if found.ids:
            self._picked = list(found.shown)
            self._session.commit(found.room, msg("Propose schemes"), (found.wall, found.ids[0]))
        # Said where she looks: the window's own line may be behind this one.
        self._news = tr(proposed_said(len(found.ids)))
        self._window.tell(self._news)
        self.begin()

    def ask_export(self) -> None:
        """Ask where, and draw the sheet there."""
        name = wall_of(self._session.committed, self._session.wall_id).name
        proposal = self._window.files.propose([self._window.files.name, name, tr(msg("Schemes side by side"))], ".pdf")
        path = self._window.files.dialogs.save_as(tr(msg("Export")), proposal, tr(_FILTERS))
        if path is not None:
            self.export(path if path.suffix else path.with_name(f"{path.name}.pdf"))

    def export(self, path: Path) -> None:
        """Draw what is shown to a file, on the worker."""
        compared, trade = self.compared, self._session.trade
        if compared is None:
            return

        def job(cancelled: Event) -> object:
            write_pages(path, (scheme_sheet(compared, trade),), 0, cancelled, lambda _done, _of: None)
            return path

        self._generation = self._session.worker.submit(_KIND, job, self._done.emit)


def open_schemes(window: MainWindow) -> Schemes:
    """The one view of schemes of a window, shown."""
    found = window.findChild(QWidget, _KIND)
    schemes = found if isinstance(found, Schemes) else Schemes(window)
    schemes.setObjectName(_KIND)
    schemes.show()
    schemes.raise_()
    return schemes
