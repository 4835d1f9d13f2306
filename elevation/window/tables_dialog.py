"""The trade's tables: looked at with their sources, and one's own rows added, copied, corrected."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace
from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtGui import QKeySequence, QPainter, QPaintEvent, QShortcut
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QDialog,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from elevation.errors import ElevationError
from elevation.output.painters.replay import Placing, Replay
from elevation.room.keeping.atomic import write_atomically
from elevation.sheet.bracket_drawing import bracket_group, extent
from elevation.sheet.inks import colour
from elevation.sheet.records import Ink
from elevation.trade.model import BracketRow
from elevation.trade.own import EVERY, check_shelf, own_cells, read_rows, shipped_cells, with_own, written
from elevation.trade.tables import load_trade
from elevation.window.on_screen import resize_on_screen
from elevation.window.tables_model import TableModel
from elevation.window.texts import tr, tr_error
from elevation.window.theme import make_quiet, make_wrong
from elevation.words import Message, msg

_TITLES: dict[str, Message] = {
    "headings": msg("Headings"),
    "fabrics": msg("Fabrics"),
    "ready_made": msg("Ready-made lengths"),
    "ready_widths": msg("Ready-made widths"),
    "sections": msg("Rod sections"),
    "materials": msg("Materials of rods"),
    "brackets": msg("Brackets"),
    "ends": msg("Rod ends"),
    "fixings": msg("Fixings"),
    "bodies": msg("Bodies of cloth"),
    "allowances": msg("Allowances"),
    "saws": msg("Saws"),
    "drills": msg("Drills"),
    "shelf": msg("Stock on the shelf"),
    "prices": msg("Prices"),
}
_PX_PER_PAPER_MM = 96 / 25.4


_ALL_HERS = msg(
    "All of this is your own. A part is named as in the buying list's table: ring:ring-1, rod:conduit-3/4. For the parts "
    "of the room at hand, “Shelf and prices” names them for you."
)


class BracketView(QWidget):
    """A bracket kit drawn by its figures."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._row: BracketRow | None = None
        self.setMinimumHeight(150)
        self.setAccessibleName(tr(msg("The bracket, drawn by its figures")))

    def show_row(self, row: BracketRow | None) -> None:
        """Draw another kit; None draws nothing."""
        self._row = row
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Front and side, as large as they go."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), colour(Ink.PAPER))
        if self._row is not None:
            left, bottom, right, top = extent(self._row)
            scale = min((self.width() - 24) / max(right - left, 1.0), (self.height() - 24) / max(top - bottom, 1.0), 3.0)
            x = self.width() / 2 - (left + right) / 2 * scale
            y = self.height() / 2 + (bottom + top) / 2 * scale
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            Replay().paint((bracket_group(self._row),), painter, Placing(_PX_PER_PAPER_MM, scale, x, y, x, y))
        painter.end()


class TablesDialog(QDialog):
    """All tables, one at a time.

    Parameters
    ----------
    folder : Path
        Where a person's own tables are kept.
    parent : QWidget or None

    Attributes
    ----------
    kept : Signal()
        Own rows were written; whoever works with the tables reads them again.
    """

    kept = Signal()

    def __init__(self, folder: Path, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._folder = folder
        self.setWindowTitle(tr(msg("The trade's tables")))
        resize_on_screen(self, 900, 560)
        self.choice = QComboBox(self)
        self.choice.setAccessibleName(tr(msg("Table")))
        for table in EVERY:
            self.choice.addItem(tr(_TITLES[table.name]))
        self.view = QTableView(self)
        self.view.setAccessibleName(tr(msg("Rows of the table")))
        self.view.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.view.setTabKeyNavigation(False)
        self.view.setAlternatingRowColors(True)
        self.view.setWordWrap(False)
        self.view.horizontalHeader().setStretchLastSection(False)
        self.source = QLabel(self)
        self.source.setWordWrap(True)
        self.source.setTextFormat(Qt.TextFormat.PlainText)
        make_quiet(self.source)
        self.trouble = QLabel(self)
        self.trouble.setWordWrap(True)
        self.trouble.setTextFormat(Qt.TextFormat.PlainText)
        make_wrong(self.trouble)
        self.drawing = BracketView(self)
        self.add = QPushButton(tr(msg("&Add a row")), self)
        self.copy = QPushButton(tr(msg("&Copy the row")), self)
        self.correct = QPushButton(tr(msg("C&orrect the row")), self)
        self.remove = QPushButton(tr(msg("&Remove my row")), self)
        self.keep = QPushButton(tr(msg("&Keep")), self)
        self.keep.setDefault(True)
        self.model = self._open(0)
        self._lay_out()
        self.choice.activated.connect(self._choose)
        for button, slot in (
            (self.add, self._add), (self.copy, self._copy), (self.correct, self._correct), (self.remove, self._remove),
            (self.keep, self.save),
        ):  # fmt: skip
            button.setAutoDefault(False)
            button.clicked.connect(slot)
        QShortcut(QKeySequence.StandardKey.Save, self, self.save)
        self._show(0)

    def _lay_out(self) -> None:
        top = QHBoxLayout()
        top.addWidget(self.choice)
        top.addStretch(1)
        for button in (self.add, self.copy, self.correct, self.remove, self.keep):
            top.addWidget(button)
        box = QVBoxLayout(self)
        box.addLayout(top)
        box.addWidget(self.view, 1)
        box.addWidget(self.drawing)
        box.addWidget(self.source)
        box.addWidget(self.trouble)

    # -- which table ---------------------------------------------------------------------

    def _open(self, index: int) -> TableModel:
        table = EVERY[index]
        try:
            own = own_cells(table, self._folder)
        except ElevationError as error:
            own = ()
            self.trouble.setText(tr_error(error))
        return TableModel(table, shipped_cells(table), own)

    def _choose(self, index: int) -> None:
        if self.model.is_changed and not self.save():
            # What is typed is not thrown away for a look at another table.
            self.choice.setCurrentIndex(EVERY.index(self.model.table))
            return
        self.trouble.setText("")
        self.model = self._open(index)
        self._show(0)

    def _show(self, row: int) -> None:
        self.view.setModel(self.model)
        self.view.resizeColumnsToContents()
        for column in range(self.model.columnCount()):
            self.view.setColumnWidth(column, min(self.view.columnWidth(column), 260))
        self.view.selectRow(row)
        self.view.selectionModel().currentRowChanged.connect(self._on_row)
        self.model.dataChanged.connect(self._on_typed)
        self.drawing.setVisible(self.model.table.name == "brackets")
        self._on_row()

    # -- what is said -------------------------------------------------------------------------

    def _row(self) -> int:
        return max(self.view.currentIndex().row(), 0)

    def _on_row(self) -> None:
        row = self._row()
        is_own = self.model.is_own(row)
        self.correct.setEnabled(not is_own and self.model.rowCount() > 0)
        self.copy.setEnabled(self.model.rowCount() > 0)
        self.remove.setEnabled(is_own)
        self.source.setText(self._said_source(row))
        if self.model.table.name == "brackets":
            self.drawing.show_row(self.model.row_value(row))

    def _said_source(self, row: int) -> str:
        """Where a row comes from; of what is all her own, what to write there."""
        titles = self.model.table.titles
        if "source" not in titles:
            return tr(_ALL_HERS)
        if not self.model.rowCount():
            return ""
        source, sure = (str(self.model.data(self.model.index(row, titles.index(title)))) for title in ("source", "sure"))
        return tr(msg("Source: {source} ({sure})", source=source, sure=sure))

    def _on_typed(self, index: QModelIndex) -> None:
        self.trouble.setText(self.model.wrong(index.row(), index.column()))
        self._on_row()

    # -- edits ---------------------------------------------------------------------------------

    def _add(self) -> None:
        self._begin(self.model.add())

    def _copy(self) -> None:
        self._begin(self.model.copy(self._row()))

    def _correct(self) -> None:
        self._begin(self.model.correct(self._row()))

    def _remove(self) -> None:
        self.model.remove(self._row())
        self._show(0)

    def _begin(self, row: int) -> None:
        self._show(row)
        index = self.model.index(row, 0 if self.model.names_parts else 1)
        self.view.setCurrentIndex(index)
        self.view.edit(index)

    def _check_whole(self, content: str) -> None:
        """Refuse a shelf that names sections which nobody knows, before anything is written."""
        table = self.model.table
        if table.name == "shelf":
            trade = with_own(load_trade(), self._folder)
            check_shelf(replace(trade, shelf=read_rows(table, content, table.file)), table.file)

    def save(self) -> bool:
        """Write her rows of this table; a wrong cell is said and shown, and nothing is written."""
        wrong = self.model.first_wrong()
        if wrong is not None:
            row, column, text = wrong
            self.view.setCurrentIndex(self.model.index(row, column))
            self.trouble.setText(text)
            return False
        try:
            content = written(self.model.table, self.model.own)
            self._check_whole(content)
            self._folder.mkdir(parents=True, exist_ok=True)
            write_atomically(self._folder / self.model.table.file, content.encode())
        except ElevationError as error:
            self.trouble.setText(tr_error(error))
            return False
        except OSError as error:
            self.trouble.setText(
                tr(msg("{folder} cannot be made: {why}", folder=str(self._folder), why=error.strerror or ""))
            )
            return False
        self.model.is_changed = False
        self.trouble.setText("")
        self.kept.emit()
        return True
