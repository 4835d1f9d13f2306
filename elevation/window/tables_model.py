"""The rows of one table, the program's and a person's own, as a model that Qt's views show."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QFont

from elevation.errors import ElevationError
from elevation.trade.own import Cells, Table, check_cell, free_id, usual_cells
from elevation.window.table_titles import title_of
from elevation.window.texts import tr, tr_error
from elevation.words import msg, term

Index = QModelIndex | QPersistentModelIndex


class TableModel(QAbstractTableModel):
    """One table: first what is her own, then the program's; only her own can be typed in.

    Attributes
    ----------
    own : list of Cells
        Her rows as they are written.
    is_changed : bool
        Something is not kept yet.
    """

    def __init__(self, table: Table, shipped: tuple[Cells, ...], own: tuple[Cells, ...]) -> None:
        super().__init__()
        self.table = table
        self.own: list[Cells] = list(own)
        self.is_changed = False
        self._shipped = shipped

    @property
    def shipped(self) -> list[Cells]:
        """The program's rows that no own row stands for."""
        mine = {row[0] for row in self.own}
        return [row for row in self._shipped if row[0] not in mine]

    @property
    def names_parts(self) -> bool:
        """Whether an id is the name of a part of the buying list, which nobody but she can give."""
        return self.table.name == "prices"

    def cells(self, row: int) -> Cells:
        """The cells of a row as they are written."""
        return self.own[row] if row < len(self.own) else self.shipped[row - len(self.own)]

    def is_own(self, row: int) -> bool:
        """Whether a row is her own."""
        return 0 <= row < len(self.own)

    # -- what a view asks -----------------------------------------------------------

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  (Qt's own signature)
        """Rows of both kinds."""
        return 0 if parent.isValid() else len(self.own) + len(self.shipped)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        """A column a cell."""
        return 0 if parent.isValid() else len(self.table.titles)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Titles above, whose row it is at the left."""
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        if orientation == Qt.Orientation.Horizontal:
            return title_of(self.table.titles[section])
        return tr(msg("mine")) if self.is_own(section) else ""

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The cell as it is written; what is wrong with it as a tip."""
        cell = self.cells(index.row())[index.column()]
        if role == Qt.ItemDataRole.EditRole:
            return cell
        if role == Qt.ItemDataRole.DisplayRole:
            title = self.table.titles[index.column()]
            return tr(term(cell)) if cell and title in ("name", "source", "sure") and not self.is_own(index.row()) else cell
        if role == Qt.ItemDataRole.ToolTipRole:
            return self.wrong(index.row(), index.column()) or cell
        if role == Qt.ItemDataRole.FontRole and self.is_own(index.row()):
            font = QFont()
            font.setWeight(QFont.Weight.DemiBold)
            return font
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Her own rows can be typed in."""
        usual = super().flags(index)
        return usual | Qt.ItemFlag.ItemIsEditable if self.is_own(index.row()) else usual

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Take what was typed, right or wrong: what is wrong is said, and kept only once it is right."""
        if role != Qt.ItemDataRole.EditRole or not self.is_own(index.row()):
            return False
        row = list(self.own[index.row()])
        text = str(value).strip()
        if row[index.column()] == text:
            return False
        row[index.column()] = text
        self.own[index.row()] = tuple(row)
        self.is_changed = True
        self.dataChanged.emit(index, index)
        return True

    def wrong(self, row: int, column: int) -> str:
        """What is wrong with a cell of hers, as one sentence; empty where nothing is."""
        if not self.is_own(row):
            return ""
        trouble = check_cell(self.table.columns[column], self.cells(row)[column])
        if trouble is None:
            return ""
        return f"{title_of(self.table.titles[column])}: {tr_error(trouble)}"

    def first_wrong(self) -> tuple[int, int, str] | None:
        """The first wrong cell among her rows: row, column, sentence."""
        for row in range(len(self.own)):
            for column in range(len(self.table.columns)):
                said = self.wrong(row, column)
                if said:
                    return row, column, said
        return None

    # -- edits -------------------------------------------------------------------------

    def add(self) -> int:
        """Add an empty row of her own; returns where it stands."""
        usual = usual_cells(self.table)
        if not self.names_parts:
            usual["id"] = self._free("row")
        if "name" in usual:
            usual["name"] = tr(msg("my own"))
        return self._put(tuple(usual[title] for title in self.table.titles))

    def copy(self, row: int) -> int:
        """Copy a row into one of her own under another id."""
        cells = list(self.cells(row))
        # Its figures are no longer what the source says once they are changed: the source says where they began.
        titles = self.table.titles
        if "source" in titles:
            source = titles.index("source")
            cells[source] = tr(msg("begun from {row}: {source}", row=cells[0], source=term(cells[source])))
        cells[0] = "" if self.names_parts else self._free(cells[0])
        if "name" in titles:
            cells[1] = tr(msg("{name}, my own", name=term(cells[1])))
        return self._put(tuple(cells))

    def correct(self, row: int) -> int:
        """Let an own row stand for one of the program's, to be corrected."""
        return self._put(self.cells(row))

    def remove(self, row: int) -> None:
        """Give one of her rows up; a row of the program's that it stood for comes back."""
        if self.is_own(row):
            self.beginResetModel()
            del self.own[row]
            self.is_changed = True
            self.endResetModel()

    def _free(self, wanted: str) -> str:
        return free_id(wanted, [row[0] for row in (*self.own, *self._shipped)])

    def _put(self, cells: Cells) -> int:
        self.beginResetModel()
        self.own.append(cells)
        self.is_changed = True
        self.endResetModel()
        return len(self.own) - 1

    def row_value(self, row: int) -> Any:
        """The typed row; None while a cell of it is wrong."""
        values: dict[str, Any] = {}
        for column, cell in zip(self.table.columns, self.cells(row), strict=True):
            try:
                values[column.field] = column.read(cell)
            except ElevationError:
                return None
        return (self.table.make or self.table.row)(**values)
