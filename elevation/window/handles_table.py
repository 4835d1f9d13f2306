"""Every handle as a plain table: read by screen readers, edited like any table, the same truth as the canvas."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtWidgets import QAbstractItemView, QFrame, QHeaderView, QTableView, QWidget

from elevation.errors import BadInput
from elevation.handles.model import Handle
from elevation.room.model import Ref
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.window.measurements import sentence
from elevation.window.picking import reading_order
from elevation.window.texts import tr
from elevation.words import Message, Mm, Style, msg

_Index = QModelIndex | QPersistentModelIndex
_NAME, _FIGURE, _WHERE = range(3)


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
        self._texts: list[tuple[str, str, str]] = []
        self._style: Style | None = None
        self._said: dict[tuple[str, Ref], tuple[float, Message, Message, tuple[str, str, str]]] = {}

    def refresh(self) -> None:
        """Take over the handles as they are now; only rows that read differently are told."""
        order = reading_order(self._session.handles())
        style = style_for(self._session.room)
        if style != self._style:
            self._style, self._said = style, {}
        texts = [self._row(handle, style) for handle in order]
        if [handle.key for handle in order] != [handle.key for handle in self.order]:
            self.beginResetModel()
            self.order, self._texts = order, texts
            self.endResetModel()
            return
        self.order = order
        before, self._texts = self._texts, texts
        for row, (old, new) in enumerate(zip(before, texts, strict=True)):
            if old != new:
                self.dataChanged.emit(self.index(row, 0), self.index(row, 2))

    def _row(self, handle: Handle, style: Style) -> tuple[str, str, str]:
        shown = handle.shown_mm(handle.value_mm)
        said = self._said.get(handle.key)
        if said is None or said[0] != shown or said[1] != handle.shown_as or said[2] != handle.name:
            texts = (
                sentence(tr(handle.name, style)),
                tr(msg("{figure}", figure=Mm(shown)), style),
                tr(handle.shown_as, style),
            )
            said = (shown, handle.shown_as, handle.name, texts)
            self._said[handle.key] = said
        return said[3]

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
        if not index.isValid() or index.row() >= len(self._texts):
            return None
        row = self._texts[index.row()]
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
        if str(value) == self._texts[index.row()][_FIGURE]:
            return False
        gesture = self._session.press(self.order[index.row()])
        try:
            gesture.type(str(value))
        except BadInput as error:
            gesture.cancel()
            self.refused.emit(str(error))
            return False
        gesture.release()
        self.refused.emit("")
        return True


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
        self.verticalHeader().setDefaultSectionSize(38)
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

    def refresh(self) -> None:
        """Take over the room as it is."""
        if self.state() != QAbstractItemView.State.EditingState:
            self.handles.refresh()

    def current_handle(self) -> Handle | None:
        """The handle of the current row."""
        row = self.currentIndex().row()
        return self.handles.order[row] if 0 <= row < len(self.handles.order) else None
