"""The bars on her shelf as a table to type in, and whatever else is entered as one."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from elevation.errors import ElevationError
from elevation.planning.buying.hers import HerBar
from elevation.trade import cells
from elevation.trade.model import SectionRow
from elevation.units import parse_length
from elevation.window.texts import tr, tr_error
from elevation.words import Message, msg, term

_HEADS: tuple[Message, ...] = (msg("Bar of"), msg("Length"), msg("How many"))
_HIGH = 150


def typed_table(heads: Sequence[Message], name: Message, parent: QWidget) -> QTableWidget:
    """An empty table to type in: its first column takes what room is left."""
    table = QTableWidget(0, len(heads), parent)
    table.setHorizontalHeaderLabels([tr(head) for head in heads])
    table.verticalHeader().setVisible(False)
    table.verticalHeader().setDefaultSectionSize(parent.fontMetrics().height() + 9)
    table.setAccessibleName(tr(name))
    table.setAlternatingRowColors(True)
    table.setTabKeyNavigation(False)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.horizontalHeader().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
    return table


def put_cell(table: QTableWidget, row: int, column: int, text: str, *, can_type: bool) -> None:
    """Put a text into a cell."""
    item = QTableWidgetItem(text)
    item.setToolTip(text)
    if not can_type:
        item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsEditable)
    table.setItem(row, column, item)


def cell_text(table: QTableWidget, row: int, column: int) -> str:
    """What stands in a cell."""
    item = table.item(row, column)
    return "" if item is None else item.text().strip()


def push_button(text: Message, act: Callable[[], object], parent: QWidget) -> QPushButton:
    """A button that Enter does not press from elsewhere."""
    button = QPushButton(tr(text), parent)
    button.setAutoDefault(False)
    button.clicked.connect(act)
    return button


class ShelfBars(QWidget):
    """The table of bars with what adds and removes one.

    Parameters
    ----------
    sections : dict
        Rows of sections by id.
    unit : str
        Lengths may be bare in it.
    parent : QWidget

    Attributes
    ----------
    bars : tuple of HerBar
        As typed, right or wrong.
    told : Signal(str)
        What is wrong with what was just typed; empty where nothing is.
    """

    told = Signal(str)

    def __init__(self, sections: dict[str, SectionRow], unit: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._sections, self._unit = sections, unit
        self._is_filling = False
        self.bars: tuple[HerBar, ...] = ()
        self.table = typed_table(_HEADS, msg("Bars on the shelf"), self)
        self.table.setMaximumHeight(_HIGH)
        self.section = QComboBox(self)
        self.section.setAccessibleName(tr(msg("Section of the bar")))
        for row in sections.values():
            self.section.addItem(tr(term(row.name)), row.id)
        self.remove_button = push_button(msg("&Remove the bar"), self.remove_bar, self)
        under = QHBoxLayout()
        for widget in (self.section, push_button(msg("&Add a bar"), self.add_bar, self), self.remove_button):
            under.addWidget(widget)
        under.addStretch(1)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(self.table)
        box.addLayout(under)
        self.table.cellChanged.connect(self._on_cell)

    def show_bars(self, bars: tuple[HerBar, ...]) -> None:
        """Show other bars."""
        self.bars = bars
        self._is_filling = True
        self.table.setRowCount(len(bars))
        for row, bar in enumerate(bars):
            section = self._sections.get(bar.section)
            put_cell(self.table, row, 0, bar.section if section is None else tr(term(section.name)), can_type=False)
            put_cell(self.table, row, 1, bar.length, can_type=True)
            put_cell(self.table, row, 2, bar.count, can_type=True)
        self.remove_button.setEnabled(bool(bars))
        self._is_filling = False

    def add_bar(self) -> None:
        """One bar more, of the section that is chosen; its length is to be typed."""
        length = "60 in" if self._unit == "in" else "1500 mm"
        self.show_bars((*self.bars, HerBar(str(self.section.currentData()), length, "1")))
        row = len(self.bars) - 1
        self.table.setCurrentCell(row, 1)
        item = self.table.item(row, 1)
        if item is not None:
            self.table.editItem(item)

    def remove_bar(self) -> None:
        """Give up the bar that is chosen, else the last one."""
        row = self.table.currentRow()
        row = row if row >= 0 else len(self.bars) - 1
        self.show_bars((*self.bars[:row], *self.bars[row + 1 :]))

    def show_wrong(self) -> str:
        """Put the keyboard on the first bar that is wrong; what is wrong with it, empty where nothing is."""
        for row, bar in enumerate(self.bars):
            column, text = self._wrong(bar)
            if text:
                self.table.setCurrentCell(row, column)
                return text
        return ""

    def _on_cell(self, row: int, column: int) -> None:
        if self._is_filling or column == 0:
            return
        text = cell_text(self.table, row, column)
        bar = replace(self.bars[row], **{"length" if column == 1 else "count": text})
        self.bars = (*self.bars[:row], bar, *self.bars[row + 1 :])
        self.told.emit(self._wrong(bar)[1])

    def _wrong(self, bar: HerBar) -> tuple[int, str]:
        """The column of what is wrong with a bar, and the sentence."""
        try:
            parse_length(bar.length, self._unit)
        except ElevationError as error:
            return 1, tr_error(error)
        try:
            cells.whole(bar.count)
        except ElevationError as error:
            return 2, tr_error(error)
        return 0, ""
