"""Every handle as a plain table: read by screen readers, edited like any table, the same truth as the canvas."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from elevation.errors import BadInput
from elevation.handles.model import Handle
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.window.measurements import sentence
from elevation.window.picking import reading_order
from elevation.window.texts import tr, tr_error
from elevation.words import Message, Mm, Style, msg

_Row = tuple[str, str, str]
_Index = QModelIndex | QPersistentModelIndex
_NAME, _FIGURE, _WHERE = range(3)
ROW_PX = 38
"""Height of a row whose texts take at most two lines."""


class HandlesModel(QAbstractTableModel):
    """Handles in reading order: name, figure, what the figure is measured from.

    Attributes
    ----------
    refused : Signal(str)
        Why a typed figure was not taken; empty when one was.
    """

    refused = Signal(str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.order: list[Handle] = []
        self._style = Style()
        self._said: dict[int, tuple[Handle, _Row]] = {}

    def refresh(self) -> None:
        """Take over the handles as they are now; only rows that read differently are told."""
        order, before = reading_order(self._session.handles()), self.order
        style = style_for(self._session.room)
        if style != self._style or [handle.key for handle in order] != [handle.key for handle in before]:
            self.beginResetModel()
            self.order, self._style, self._said = order, style, {}
            self.endResetModel()
            return
        self.order = order
        self._tell_of(before)

    def refresh_rows(self, first: int, last: int) -> None:
        """Take over the handles of some rows only: during a drag nobody reads those that are out of sight."""
        keys = [handle.key for handle in self.order[first : last + 1]]
        now = self._session.some_handles(keys)
        if style_for(self._session.room) != self._style or len(now) != len(keys):
            self.refresh()
            return
        before = self.order
        self.order = [*before[:first], *(now[key] for key in keys), *before[last + 1 :]]
        self._tell_of(before)

    def _tell_of(self, before: list[Handle]) -> None:
        for row, (old, new) in enumerate(zip(before, self.order, strict=True)):
            # A handle that did not change is the same object; texts are made only for rows that are looked at.
            if old is not new and _figures(old) != _figures(new):
                self.dataChanged.emit(self.index(row, 0), self.index(row, 2))

    def _row(self, index: int) -> _Row:
        handle = self.order[index]
        said = self._said.get(id(handle))
        if said is None:
            if len(self._said) > 2 * len(self.order):
                self._said = {}
            figure = msg("{figure}", figure=Mm(handle.shown_mm(handle.value_mm)))
            row = sentence(tr(handle.name, self._style)), tr(figure, self._style), tr(handle.shown_as, self._style)
            # Kept beside its texts, so that its id cannot be another handle's.
            said = self._said[id(handle)] = (handle, row)
        return said[1]

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008  (Qt's own default)
        """One row a handle."""
        return 0 if parent.isValid() else len(self.order)

    def columnCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Name, figure, measured from."""
        return 0 if parent.isValid() else 3

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Titles."""
        if role != Qt.ItemDataRole.DisplayRole or orientation != Qt.Orientation.Horizontal:
            return None
        titles = (msg("Handle"), msg("Figure"), msg("Measured"))
        return tr(titles[section])

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Texts; the whole row in words for screen readers."""
        if not index.isValid() or index.row() >= len(self.order):
            return None
        row = self._row(index.row())
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return row[index.column()]
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return " ".join(row)
        return None

    def flags(self, index: _Index) -> Qt.ItemFlag:
        """Figures can be edited."""
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsEditable if index.column() == _FIGURE else flags

    def setData(self, index: _Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Set a handle to what was typed, as one gesture."""
        if role != Qt.ItemDataRole.EditRole or index.column() != _FIGURE or not index.isValid():
            return False
        if str(value) == self._row(index.row())[_FIGURE]:
            return False
        gesture = self._session.press(self.order[index.row()])
        try:
            gesture.type(str(value))
        except BadInput as error:
            gesture.cancel()
            self.refused.emit(tr_error(error))
            return False
        gesture.release()
        self.refused.emit("")
        return True


def _figures(handle: Handle) -> tuple[float, Message, Message]:
    """What the texts of a handle's row are made of."""
    return handle.shown_mm(handle.value_mm), handle.shown_as, handle.name


class HandlesTable(QTableView):
    """The table."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.handles = HandlesModel(session)
        self.handles.setParent(self)
        self.setModel(self.handles)
        self.setAccessibleName(tr(msg("All handles, with their figures")))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(ROW_PX)
        self.verticalHeader().setMinimumSectionSize(ROW_PX)
        header = self.horizontalHeader()
        header.setSectionResizeMode(_NAME, QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(_FIGURE, QHeaderView.ResizeMode.Interactive)
        header.setSectionResizeMode(_WHERE, QHeaderView.ResizeMode.Interactive)
        header.resizeSection(_FIGURE, 62)
        header.resizeSection(_WHERE, 92)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setMinimumHeight(150)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._still = QTimer(self)
        self._still.setSingleShot(True)
        self._still.setInterval(0)
        self._still.timeout.connect(self.fit_rows)
        self.handles.modelReset.connect(self._still.start)
        self.handles.dataChanged.connect(self._fit_later)
        header.sectionResized.connect(self._still.start)

    def fit_rows(self) -> None:
        """Make the rows in sight as tall as their longest text, so that no name is cut."""
        if not self.isVisible() or self._session.gesture is not None:
            return
        # Not the viewport's own height: Qt made it, so its wrapper would first build every kind of widget with all its
        # enumerations to know which it is. Across, nothing ever scrolls: this is the same.
        row, low = max(self.rowAt(0), 0), self.maximumViewportSize().height()
        while row < len(self.handles.order) and self.rowViewportPosition(row) < low:
            self.resizeRowToContents(row)
            row += 1

    def _fit_later(self) -> None:
        # Rows keep their height while a hand holds something, so that nothing jumps.
        if self._session.gesture is None:
            self._still.start()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width breaks texts elsewhere; another height brings more rows into sight."""
        super().resizeEvent(event)
        self._still.start()

    def showEvent(self, event: QShowEvent) -> None:
        """Rows are measured when there is somebody to read them."""
        super().showEvent(event)
        self._still.start()

    def refresh(self) -> None:
        """Take over the room as it is."""
        if self.state() == QAbstractItemView.State.EditingState:
            return
        if self._session.gesture is None or not self.handles.order:
            self.handles.refresh()
        else:
            first, last = self.rowAt(0), self.rowAt(self.viewport().height() - 1)
            self.handles.refresh_rows(max(first, 0), last if last >= 0 else len(self.handles.order) - 1)

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        """Other rows come into sight."""
        super().scrollContentsBy(dx, dy)
        self._still.start()
        if self._session.gesture is not None:
            self.refresh()

    def current_handle(self) -> Handle | None:
        """The handle of the current row."""
        row = self.currentIndex().row()
        return self.handles.order[row] if 0 <= row < len(self.handles.order) else None
