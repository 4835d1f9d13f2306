"""Shelf and prices: what she has already, what things cost where she lives, and how long a piece fits her car."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
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
from elevation.planning.buying.hers import (
    FIELDS,
    HerBar,
    HerPart,
    Hers,
    allowance_rows,
    check_typed,
    price_rows,
    read_hers,
    shelf_rows,
)
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import dress
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.keeping.atomic import write_atomically
from elevation.room.style import style_for
from elevation.trade import cells
from elevation.trade.own import own_cells, table_named, written
from elevation.trade.tables import row_of
from elevation.units import parse_length
from elevation.window.announcer import announce
from elevation.window.on_screen import resize_on_screen
from elevation.window.text_field import TextField
from elevation.window.texts import tr, tr_error
from elevation.window.theme import make_quiet, make_wrong
from elevation.words import Message, msg, term

if TYPE_CHECKING:
    from elevation.session.session import Session

_HEADS: tuple[Message, ...] = (
    msg("What"), msg("Needed here"), msg("On the shelf"), msg("Price"), msg("Currency"), msg("Buys"), msg("Shop"),
    msg("Day"),
)  # fmt: skip
_BAR_HEADS: tuple[Message, ...] = (msg("Bar of"), msg("Length"), msg("How many"))
_TYPED = len(_HEADS) - len(FIELDS)
_SAW = "hacksaw"


class ShelfDialog(QDialog):
    """The dialog.

    Parameters
    ----------
    session : Session
        Its room says which parts there are; what is typed holds for every room.
    folder : Path
        Where her own tables are kept.
    parent : QWidget or None

    Attributes
    ----------
    kept : Signal()
        Her tables were written; whoever works with them reads them again.
    """

    kept = Signal()

    def __init__(self, session: Session, folder: Path, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._folder = session, folder
        self._unit = session.committed.unit
        self._is_filling = True
        self.setWindowTitle(tr(msg("Shelf and prices")))
        resize_on_screen(self, 980, 640)
        self.trouble = QLabel(self)
        self.trouble.setWordWrap(True)
        self.trouble.setTextFormat(Qt.TextFormat.PlainText)
        make_wrong(self.trouble)
        self.parts = self._table(_HEADS, msg("Parts"))
        self.bars = self._table(_BAR_HEADS, msg("Bars on the shelf"))
        self.bars.setMaximumHeight(150)
        self.section = QComboBox(self)
        self.section.setAccessibleName(tr(msg("Section of the bar")))
        for row in session.trade.sections.values():
            self.section.addItem(tr(term(row.name)), row.id)
        self.add = self._button(msg("&Add a bar"), self._add_bar)
        self.remove = self._button(msg("&Remove the bar"), self._remove_bar)
        self.carry = TextField(self)
        self.carry.setMaximumWidth(140)
        self.keep = self._button(msg("&Keep"), self.save)
        self.keep.setDefault(True)
        self.hers = self._read()
        self._lay_out()
        self._fill()
        self.parts.cellChanged.connect(self._on_part)
        self.bars.cellChanged.connect(self._on_bar)
        QShortcut(QKeySequence.StandardKey.Save, self, self.save)

    # -- building ------------------------------------------------------------------------

    def _table(self, heads: Sequence[Message], name: Message) -> QTableWidget:
        table = QTableWidget(0, len(heads), self)
        table.setHorizontalHeaderLabels([tr(head) for head in heads])
        table.verticalHeader().setVisible(False)
        table.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 9)
        table.setAccessibleName(tr(name))
        table.setAlternatingRowColors(True)
        table.setTabKeyNavigation(False)
        table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        table.horizontalHeader().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        return table

    def _button(self, text: Message, act: Callable[[], object]) -> QPushButton:
        button = QPushButton(tr(text), self)
        button.setAutoDefault(False)
        button.clicked.connect(act)
        return button

    def _lay_out(self) -> None:
        told = QLabel(
            tr(
                msg(
                    "For every room: the cut list takes bars from the shelf first, "
                    "the buying list leaves out what is there."
                )
            ),
            self,
        )
        told.setWordWrap(True)
        make_quiet(told)
        carry = QLabel(tr(msg("&Longest piece that you carry home (empty: any length)")), self)
        carry.setBuddy(self.carry)
        under = QHBoxLayout()
        for widget in (self.section, self.add, self.remove):
            under.addWidget(widget)
        under.addStretch(1)
        under.addWidget(carry)
        under.addWidget(self.carry)
        foot = QHBoxLayout()
        foot.addWidget(self.trouble, 1)
        foot.addWidget(self.keep)
        close = self._button(msg("&Close"), self.reject)
        foot.addWidget(close)
        box = QVBoxLayout(self)
        box.setSpacing(8)
        box.addWidget(told)
        box.addWidget(self.parts, 1)
        box.addWidget(self.bars)
        box.addLayout(under)
        box.addLayout(foot)

    def _read(self) -> Hers:
        rooms = (dress(self._session.committed, self._session.trade),)
        trade = self._session.trade
        # Which parts there are does not hang on the best cut: the first one found at once will do.
        pieces = rod_pieces(rooms, trade)
        cuts = cut_list(pieces, row_of(trade.saws, _SAW, "saw"), trade, seconds=0.0)
        bought = buying_list(rooms, cuts, trade)
        try:
            return read_hers(bought, self._folder, self._unit)
        except ElevationError as error:
            # What cannot be read must not be written over.
            self._say(tr_error(error))
            self.keep.setEnabled(False)
            return Hers((), ())

    def _fill(self) -> None:
        self._is_filling = True
        style = style_for(self._session.committed)
        self.parts.setRowCount(len(self.hers.parts))
        for row, one in enumerate(self.hers.parts):
            self._put(self.parts, row, 0, tr(one.name, style), can_type=False)
            self._put(self.parts, row, 1, tr(one.needed, style), can_type=False)
            for column, field in enumerate(FIELDS, start=_TYPED):
                # A bar has a length: it is typed below.
                can_type = not (field == "there" and one.part.startswith("rod:"))
                self._put(self.parts, row, column, getattr(one, field) if can_type else "", can_type=can_type)
        for column in range(1, self.parts.columnCount()):
            self.parts.resizeColumnToContents(column)
            self.parts.setColumnWidth(column, min(max(self.parts.columnWidth(column), 74), 170))
        self.parts.setColumnWidth(self.parts.columnCount() - 1, self.fontMetrics().horizontalAdvance("2026-12-31") + 18)
        self._fill_bars()
        self.carry.setText(self.hers.carry)
        self._is_filling = False

    def _fill_bars(self) -> None:
        was, self._is_filling = self._is_filling, True
        self.bars.setRowCount(len(self.hers.bars))
        for row, bar in enumerate(self.hers.bars):
            section = self._session.trade.sections.get(bar.section)
            name = bar.section if section is None else tr(term(section.name))
            self._put(self.bars, row, 0, name, can_type=False)
            self._put(self.bars, row, 1, bar.length, can_type=True)
            self._put(self.bars, row, 2, bar.count, can_type=True)
        self.remove.setEnabled(bool(self.hers.bars))
        self._is_filling = was

    def _put(self, table: QTableWidget, row: int, column: int, text: str, *, can_type: bool) -> None:
        item = QTableWidgetItem(text)
        item.setToolTip(text)
        if not can_type:
            item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsEditable)
        table.setItem(row, column, item)

    # -- typing --------------------------------------------------------------------------

    def _on_part(self, row: int, column: int) -> None:
        if self._is_filling or column < _TYPED:
            return
        field = FIELDS[column - _TYPED]
        one = replace(self.hers.parts[row], **{field: self._text(self.parts, row, column)})
        if field == "price" and one.price:
            one = self._with_usual(one)
        self.hers = replace(self.hers, parts=(*self.hers.parts[:row], one, *self.hers.parts[row + 1 :]))
        self._is_filling = True
        for at, name in enumerate(FIELDS, start=_TYPED):
            item = self.parts.item(row, at)
            if item is not None and item.flags() & Qt.ItemFlag.ItemIsEditable:
                item.setText(getattr(one, name))
        self._is_filling = False
        wrong = check_typed(one, field, self._unit)
        self._say("" if wrong is None else tr_error(wrong))

    def _with_usual(self, one: HerPart) -> HerPart:
        """A price with what she typed last for the others, today's date, and one piece."""
        last = next((other for other in reversed(self.hers.parts) if other.price and other.part != one.part), None)
        pack = "1" if one.measure == "piece" else "1 yd" if self._unit == "in" else "1 m"
        return replace(
            one,
            currency=one.currency or (last.currency if last else ""),
            place=one.place or (last.place if last else ""),
            pack=one.pack or pack,
            date=one.date or date.today().isoformat(),
        )

    def _on_bar(self, row: int, column: int) -> None:
        if self._is_filling or column == 0:
            return
        text = self._text(self.bars, row, column)
        bar = replace(self.hers.bars[row], **{"length" if column == 1 else "count": text})
        self.hers = replace(self.hers, bars=(*self.hers.bars[:row], bar, *self.hers.bars[row + 1 :]))
        self._say(self._wrong_bar(bar)[1])

    def _wrong_bar(self, bar: HerBar) -> tuple[int, str]:
        """The column of what is wrong with a bar, and the sentence; empty where nothing is."""
        try:
            parse_length(bar.length, self._unit)
        except ElevationError as error:
            return 1, tr_error(error)
        try:
            cells.whole(bar.count)
        except ElevationError as error:
            return 2, tr_error(error)
        return 0, ""

    def _text(self, table: QTableWidget, row: int, column: int) -> str:
        item = table.item(row, column)
        return "" if item is None else item.text().strip()

    def _add_bar(self) -> None:
        length = "60 in" if self._unit == "in" else "1500 mm"
        bar = HerBar(str(self.section.currentData()), length, "1")
        self.hers = replace(self.hers, bars=(*self.hers.bars, bar))
        self._fill_bars()
        row = len(self.hers.bars) - 1
        self.bars.setCurrentCell(row, 1)
        item = self.bars.item(row, 1)
        if item is not None:
            self.bars.editItem(item)

    def _remove_bar(self) -> None:
        row = self.bars.currentRow()
        row = row if row >= 0 else len(self.hers.bars) - 1
        self.hers = replace(self.hers, bars=(*self.hers.bars[:row], *self.hers.bars[row + 1 :]))
        self._fill_bars()

    def _say(self, text: str) -> None:
        self.trouble.setText(text)
        if text:
            announce(self, text)

    # -- keeping -------------------------------------------------------------------------

    def save(self) -> bool:
        """Write her tables; what is wrong is said and shown, and nothing is written."""
        if not self.keep.isEnabled():
            return False
        self.hers = replace(self.hers, carry=self.carry.text().strip())
        if not self._is_right():
            return False
        unit = self._unit
        try:
            before = own_cells(table_named("allowances"), self._folder)
            rows = {"shelf": shelf_rows(self.hers, unit), "prices": price_rows(self.hers, unit)}
            allowances = allowance_rows(before, self.hers.carry, unit)
            if allowances != list(before):
                rows["allowances"] = allowances
            texts = {table_named(name).file: written(table_named(name), own) for name, own in rows.items()}
            self._folder.mkdir(parents=True, exist_ok=True)
            for file, text in texts.items():
                write_atomically(self._folder / file, text.encode())
        except ElevationError as error:
            self._say(tr_error(error))
            return False
        except OSError as error:
            self._say(tr(msg("{folder} cannot be made: {why}", folder=str(self._folder), why=error.strerror or "")))
            return False
        self._say("")
        self.kept.emit()
        return True

    def _is_right(self) -> bool:
        for row, one in enumerate(self.hers.parts):
            for column, field in enumerate(FIELDS, start=_TYPED):
                wrong = check_typed(one, field, self._unit)
                if wrong is not None:
                    self.parts.setCurrentCell(row, column)
                    self._say(tr_error(wrong))
                    return False
        for row, bar in enumerate(self.hers.bars):
            column, text = self._wrong_bar(bar)
            if text:
                self.bars.setCurrentCell(row, column)
                self._say(text)
                return False
        if self.hers.carry:
            try:
                parse_length(self.hers.carry, self._unit)
            except ElevationError as error:
                self.carry.setFocus(Qt.FocusReason.OtherFocusReason)
                self._say(tr_error(error))
                return False
        return True
