"""Sheets: choose, look at the pages, print at true size, export. Pages and files are made on the worker."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from threading import Event
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLabel, QProgressBar, QPushButton, QVBoxLayout

from elevation.errors import ElevationError
from elevation.planning.house import rooms_in
from elevation.planning.photograph import photograph_words
from elevation.room.find import scheme_of, wall_of
from elevation.room.style import style_for
from elevation.session.worker import Done
from elevation.sheet.records import Picture
from elevation.window.announcer import announce
from elevation.window.on_screen import resize_on_screen
from elevation.window.passing import press_focused
from elevation.window.sheets_choice import SheetsChoice
from elevation.window.sheets_files import Writer, filters_of
from elevation.window.sheets_pages import Made, Stopped, Wanted, pages_of, write_pages
from elevation.window.sheets_preview import SheetPreview
from elevation.window.sheets_printing import ask_and_print
from elevation.window.texts import tr, tr_whole_error
from elevation.window.theme import make_quiet
from elevation.words import Message, msg, msg_plural

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow

_PAGES, _FILE = "sheets-pages", "sheets-file"
_SETTLED_MS = 90
"""Whoever runs through the list with an arrow key waits for no page in between."""


class Sheets(QDialog):
    """The dialog.

    Attributes
    ----------
    pages : tuple of Picture
        Those that are shown; empty while they are made and where there is nothing to draw.
    index : int
        The page shown.
    ready : Signal()
        Pages are made, or a file is written, or neither could be.
    """

    ready = Signal()
    _done = Signal(object)
    _stepped = Signal(str, int, int)

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._session = window.session
        self._generation = -1
        self._busy = ""
        self._written: tuple[Path, int] | None = None
        self._unread: tuple[ElevationError, ...] = ()
        self._others: Mapping[str, Writer] = {}
        self.pages: tuple[Picture, ...] = ()
        self.index = 0
        self.setWindowTitle(tr(msg("Sheets")))
        self.setWindowModality(Qt.WindowModality.WindowModal)
        self.choice = SheetsChoice(window.settings.figures, self)
        self.preview = SheetPreview(window.theme, self)
        self.page_text = QLabel(self)
        self.state = QLabel(self)
        self.state.setWordWrap(True)
        self.state.setTextFormat(Qt.TextFormat.PlainText)
        self.state.setMinimumHeight(2 * self.fontMetrics().height() + 2)
        make_quiet(self.state)
        self.bar = QProgressBar(self)
        self.bar.setTextVisible(False)
        self.bar.setFixedWidth(120)
        self.bar.setAccessibleName(tr(msg("Progress")))
        self.before = self._button(msg("&Back"), lambda: self.turn(-1))
        self.next = self._button(msg("&Forward"), lambda: self.turn(1))
        self.stop = self._button(msg("S&top"), self.cancel)
        self.print_button = self._button(msg("&Print…"), self.print_pages)
        self.export_button = self._button(msg("&Export…"), self.ask_export)
        self.close_button = self._button(msg("&Close"), self.reject)
        self.print_button.setToolTip(tr(msg("at true size: nothing is scaled to the paper")))
        self._lay()
        self._wait = QTimer(self, singleShot=True)
        self._wait.setInterval(_SETTLED_MS)
        self._wait.timeout.connect(self.begin)
        self.choice.changed.connect(self._wait.start)
        self.preview.turned.connect(self.turn)
        self._done.connect(self._take)
        self._stepped.connect(self._step)
        for keys, way in (("Ctrl+PgDown", 1), ("Ctrl+PgUp", -1)):
            QShortcut(QKeySequence(keys), self).activated.connect(self._turn_by(way))
        resize_on_screen(self, 1080, 640)

    def _button(self, text: Message, act: Callable[[], object]) -> QPushButton:
        button = QPushButton(tr(text), self)
        button.setAutoDefault(False)
        button.clicked.connect(act)
        return button

    def _lay(self) -> None:
        turning = QHBoxLayout()
        turning.addStretch(1)
        turning.addWidget(self.before)
        turning.addWidget(self.page_text)
        turning.addWidget(self.next)
        turning.addStretch(1)
        right = QVBoxLayout()
        right.setSpacing(6)
        right.addWidget(self.preview, 1)
        right.addLayout(turning)
        middle = QHBoxLayout()
        middle.setSpacing(12)
        middle.addWidget(self.choice)
        middle.addLayout(right, 1)
        foot = QHBoxLayout()
        foot.addWidget(self.state, 1)
        foot.addWidget(self.bar)
        for button in (self.stop, self.print_button, self.export_button, self.close_button):
            foot.addWidget(button)
        box = QVBoxLayout(self)
        box.setSpacing(10)
        box.addLayout(middle, 1)
        box.addLayout(foot)

    def _turn_by(self, way: int) -> Callable[[], None]:
        return lambda: self.turn(way)

    # -- Qt's calls --------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        """Draw the room as it is now."""
        super().showEvent(event)
        self.preview.theme = self._window.theme
        self.choice.sheets.setFocus()
        self.begin()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter presses the button that has the keyboard: none of them is the dialog's usual one."""
        if not press_focused(event.key()):
            super().keyPressEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing is made for a dialog that nobody sees."""
        self._wait.stop()
        self.cancel()
        super().hideEvent(event)

    # -- pages -------------------------------------------------------------------------

    def wanted(self) -> Wanted:
        """What is chosen, of the room as it is now; raises BadInput where the house cannot be read."""
        session = self._session
        scheme = scheme_of(session.committed, session.wall_id, session.scheme_id)
        whose = self.choice.whose
        others = rooms_in(session.path.parent) if whose == "house" and session.path is not None else ()
        return Wanted(
            self.choice.kind,
            session.committed,
            session.wall_id,
            None if scheme is None else scheme.id,
            whose,
            self.choice.paper,
            session.path,
            others,
            self.choice.post.figures if self.choice.kind.name == "picture" else (),
            self.choice.post.before,
            self.choice.post.light,
        )

    def begin(self) -> None:
        """Make the pages that are chosen."""
        self._wait.stop()
        self.cancel()
        self.pages, self.index = (), 0
        self._unread, self._others = (), {}
        if not self._session.wall_id:
            self._fail(tr(msg("This room has no wall yet.")))
            return
        try:
            wanted = self.wanted()
        except ElevationError as error:
            self._fail(tr_whole_error(error))
            return
        trade = self._session.trade
        if wanted.figures:
            self._window.settings.figures = wanted.figures
            style = style_for(self._session.committed)
            self.choice.post.say(tr(photograph_words(self._session.set_out(), trade, style.unit), style))

        def job(cancelled: Event) -> object:
            return pages_of(wanted, trade, cancelled, self._teller(_PAGES))

        self._submit(_PAGES, job, tr(msg("Drawing the pages…")))

    def _submit(self, kind: str, job: Callable[[Event], object], text: str) -> None:
        self._busy = kind
        self.state.setText(text)
        self._generation = self._session.worker.submit(kind, job, self._done.emit)
        self._refresh()

    def _teller(self, kind: str) -> Callable[[int, int], None]:
        return lambda done, of: self._stepped.emit(kind, done, of)

    def _step(self, kind: str, done: int, of: int) -> None:
        if kind == self._busy:
            self.bar.setRange(0, of)
            self.bar.setValue(done)

    def _take(self, done: Done) -> None:
        if done.generation != self._generation or done.kind != self._busy:
            return
        self._busy = ""
        if done.error is not None:
            self._take_error(done)
        elif done.kind == _PAGES:
            made = done.result if isinstance(done.result, Made) else Made(())
            self.pages, self._unread, self._others = made.pages, made.unread, made.others
            self.show_page(0)
            self._say(self._told())
        else:
            self._say_written()
        self._refresh()
        self.ready.emit()

    def _take_error(self, done: Done) -> None:
        error = done.error
        if isinstance(error, ElevationError):
            text = tr_whole_error(error)
            if done.kind == _PAGES:
                self._fail(text)
            else:
                self._say(text)
        elif error is not None and not isinstance(error, Stopped):
            raise error

    def _told(self) -> str:
        count = len(self.pages)
        if self._unread:
            # The others are drawn all the same.
            first = tr_whole_error(self._unread[0])
            return tr(
                msg_plural(
                    "{count} room is not on these pages: {first}",
                    "{count} rooms are not on these pages: {first}",
                    count=len(self._unread),
                    first=first,
                )
            )
        if self._session.path is None and self.choice.whose == "house":
            return tr(msg("This room is not saved yet, so its house is this room alone."))
        return tr(
            msg(
                "{pages}. Printed and exported at true size.",
                pages=msg_plural("{count} page", "{count} pages", count=count),
            )
        )

    def _fail(self, text: str) -> None:
        self.pages = ()
        self.preview.say(text)
        self._say(text)
        self.state.setText("")
        self._refresh()

    def _say(self, text: str) -> None:
        self.state.setText(text)
        announce(self, text)

    def show_page(self, index: int) -> None:
        """Show one page."""
        if self.pages:
            self.index = min(max(index, 0), len(self.pages) - 1)
            self.preview.show_page(self.pages[self.index])
        self._refresh()

    def turn(self, way: int) -> None:
        """Turn by so many pages."""
        before = self.index
        self.show_page(self.index + way)
        if self.index != before:
            announce(self, self.page_text.text())

    def _refresh(self) -> None:
        has_pages, is_busy = bool(self.pages), bool(self._busy)
        text = msg("Page {number} of {count}", number=self.index + 1, count=len(self.pages))
        self.page_text.setText(tr(text) if has_pages else "")
        self.before.setEnabled(has_pages and self.index > 0)
        self.next.setEnabled(has_pages and self.index < len(self.pages) - 1)
        for button in (self.print_button, self.export_button):
            button.setEnabled(has_pages and not is_busy)
        self.bar.setVisible(is_busy)
        self.stop.setVisible(is_busy)

    def cancel(self) -> None:
        """Give up what is being made."""
        if not self._busy:
            return
        self._session.worker.cancel(self._busy)
        self._busy, self._generation = "", -1
        self.state.setText(tr(msg("Stopped; nothing was written.")))
        self._refresh()

    # -- out ---------------------------------------------------------------------------

    def print_pages(self) -> None:
        """Print through the system's dialog."""
        try:
            count = ask_and_print(self.pages, self)
        except ElevationError as error:
            self._say(tr_whole_error(error))
            return
        if count:
            pages = msg_plural("{count} page", "{count} pages", count=count)
            self._say(tr(msg("{pages} printed. Measure one figure on the paper before you trust it.", pages=pages)))

    def ask_export(self) -> None:
        """Ask where, and write the pages there."""
        filters = ";;".join(tr(text) for text in filters_of(self._others))
        path = self._window.files.dialogs.save_as(tr(msg("Export")), self.proposal(), filters)
        if path is not None:
            self._window.files.went_to(path)
            self.export(path)

    def proposal(self) -> Path:
        """A name for the file: whose sheets they are, and what they are."""
        session, files = self._session, self._window.files
        names = [files.name]
        if self.choice.whose == "house" and session.path is not None:
            names = [session.path.resolve().parent.name]
        elif self.choice.whose == "wall":
            names.append(wall_of(session.committed, session.wall_id).name)
        return files.propose([*names, tr(self.choice.kind.title)], ".pdf")

    def export(self, path: Path) -> None:
        """Write the pages to a file on the worker."""
        pages, index, others = self.pages, self.index, self._others
        self._written = (path, 1)

        def job(cancelled: Event) -> object:
            count = write_pages(path, pages, index, cancelled, self._teller(_FILE), others)
            self._written = (path, count)
            return count

        self._submit(_FILE, job, tr(msg("Writing {name}…", name=path.name)))

    def _say_written(self) -> None:
        if self._written is None:
            return
        path, count = self._written
        if count < len(self.pages):
            text = msg("Page {number} is drawn to {name}; a PDF holds all.", number=self.index + 1, name=str(path))
        else:
            text = msg("Drawn to {name}.", name=str(path))
        self._say(tr(text))
        self._window.tell(tr(text))


def open_sheets(window: MainWindow, name: str = "") -> Sheets:
    """The one sheets dialog of a window, shown; on the sheet of that name where one is named."""
    found = window.findChild(Sheets)
    sheets = found if isinstance(found, Sheets) else Sheets(window)
    if name:
        sheets.choice.choose(name)
    sheets.open()
    return sheets
