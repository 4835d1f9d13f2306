"""Shelf and prices: what she has already, what things cost where she lives, what she cuts with and can carry."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec.structs import replace
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QComboBox, QDialog, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from elevation.errors import ElevationError
from elevation.planning.buying.hers import (
    FIELDS,
    HerPart,
    Hers,
    allowance_rows,
    check_typed,
    price_rows,
    read_hers,
    saw_rows,
    saws,
    shelf_rows,
)
from elevation.planning.buying.shelf import saw_of
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import dress
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.keeping.atomic import write_atomically
from elevation.room.style import style_for
from elevation.trade.own import own_cells, table_named, written
from elevation.units import parse_length
from elevation.window.announcer import announce
from elevation.window.shelf_bars import ShelfBars, cell_text, push_button, put_cell, typed_table
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
_TYPED = len(_HEADS) - len(FIELDS)
_LEAST, _MOST = 74, 170
"""Widths of the columns of figures, px."""


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
        self.resize(980, 660)
        self.trouble = QLabel(self)
        self.trouble.setWordWrap(True)
        self.trouble.setTextFormat(Qt.TextFormat.PlainText)
        make_wrong(self.trouble)
        self.state = QLabel(self)
        make_quiet(self.state)
        self.parts = typed_table(_HEADS, msg("Parts"), self)
        self.bars = ShelfBars(session.trade.sections, self._unit, self)
        self.carry, self.kerf = TextField(self), TextField(self)
        self.carry.setMaximumWidth(140)
        self.kerf.setMaximumWidth(90)
        self.saw = QComboBox(self)
        for row in saws():
            self.saw.addItem(tr(term(row[1])), row[0])
        self.keep = push_button(msg("&Keep"), self.save, self)
        self.keep.setDefault(True)
        self.hers = self._read()
        self._lay_out()
        self._fill()
        self.parts.cellChanged.connect(self._on_part)
        self.bars.told.connect(self._say)
        self.saw.activated.connect(self._on_saw)
        QShortcut(QKeySequence.StandardKey.Save, self, self.save)

    # -- building ------------------------------------------------------------------------

    def _lay_out(self) -> None:
        text = msg(
            "For every room: the cut list takes bars from the shelf first, the buying list leaves out what is there."
        )
        told = QLabel(tr(text), self)
        told.setWordWrap(True)
        make_quiet(told)
        cutting = QHBoxLayout()
        self._named(cutting, msg("Cut &with"), self.saw)
        self._named(cutting, msg("A cut &takes"), self.kerf)
        cutting.addStretch(1)
        self._named(cutting, msg("&Longest piece that you carry home (empty: any length)"), self.carry)
        foot = QHBoxLayout()
        foot.addWidget(self.trouble, 1)
        foot.addWidget(self.state)
        foot.addWidget(self.keep)
        foot.addWidget(push_button(msg("&Close"), self.reject, self))
        box = QVBoxLayout(self)
        box.setSpacing(8)
        box.addWidget(told)
        box.addWidget(self.parts, 1)
        box.addWidget(self.bars)
        box.addLayout(cutting)
        box.addLayout(foot)

    def _named(self, row: QHBoxLayout, name: Message, field: QWidget) -> None:
        label = QLabel(tr(name), self)
        label.setBuddy(field)
        row.addWidget(label)
        row.addWidget(field)

    def _read(self) -> Hers:
        trade = self._session.trade
        rooms = (dress(self._session.committed, trade),)
        # Which parts there are does not hang on the best cut: the first one found at once will do.
        cuts = cut_list(rod_pieces(rooms, trade), saw_of(trade), trade, seconds=0.0)
        bought = buying_list(rooms, cuts, trade)
        try:
            return read_hers(bought, self._folder, self._unit)
        except ElevationError as error:
            # What cannot be read must not be written over.
            self._say(tr_error(error))
            self.keep.setEnabled(False)
            return Hers((), ())

    def _fill(self) -> None:
        style = style_for(self._session.committed)
        self._is_filling = True
        self.parts.setRowCount(len(self.hers.parts))
        for row, one in enumerate(self.hers.parts):
            put_cell(self.parts, row, 0, tr(one.name, style), can_type=False)
            put_cell(self.parts, row, 1, tr(one.needed, style), can_type=False)
            for column, field in enumerate(FIELDS, start=_TYPED):
                # A bar has a length: it is typed below.
                can_type = not (field == "there" and one.part.startswith("rod:"))
                put_cell(self.parts, row, column, getattr(one, field) if can_type else "", can_type=can_type)
        for column in range(1, self.parts.columnCount()):
            self.parts.resizeColumnToContents(column)
            self.parts.setColumnWidth(column, min(max(self.parts.columnWidth(column) + 10, _LEAST), _MOST))
        self.parts.setColumnWidth(self.parts.columnCount() - 1, self.fontMetrics().horizontalAdvance("2026-12-31") + 18)
        self.bars.show_bars(self.hers.bars)
        self.carry.setText(self.hers.carry)
        self.saw.setCurrentIndex(max(self.saw.findData(self.hers.saw), 0))
        self.kerf.setText(self.hers.kerf)
        self._is_filling = False

    # -- typing --------------------------------------------------------------------------

    def _on_part(self, row: int, column: int) -> None:
        if self._is_filling or column < _TYPED:
            return
        field = FIELDS[column - _TYPED]
        one = replace(self.hers.parts[row], **{field: cell_text(self.parts, row, column)})
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

    def _on_saw(self, index: int) -> None:
        # What another saw takes is its own; it can be typed over.
        self.kerf.setText(saws()[index][2])

    def _say(self, text: str) -> None:
        self.trouble.setText(text)
        self.state.setText("")
        if text:
            announce(self, text)

    # -- keeping -------------------------------------------------------------------------

    def save(self) -> bool:
        """Write her tables; what is wrong is said and shown, and nothing is written."""
        if not self.keep.isEnabled():
            return False
        self.hers = replace(
            self.hers,
            bars=self.bars.bars,
            carry=self.carry.text().strip(),
            saw=str(self.saw.currentData()),
            kerf=self.kerf.text().strip(),
        )
        wrong = self._show_wrong()
        self._say(wrong)
        if wrong:
            return False
        try:
            self._write()
        except ElevationError as error:
            self._say(tr_error(error))
            return False
        except OSError as error:
            self._say(tr(msg("{folder} cannot be made: {why}", folder=str(self._folder), why=error.strerror or "")))
            return False
        self.kept.emit()
        self.state.setText(tr(msg("Kept.")))
        announce(self, self.state.text())
        return True

    def _write(self) -> None:
        """All tables that changed, checked before the first of them is written."""
        unit = self._unit
        before = {name: list(own_cells(table_named(name), self._folder)) for name in ("allowances", "saws")}
        rows = {
            "shelf": shelf_rows(self.hers, unit),
            "prices": price_rows(self.hers, unit),
            "allowances": allowance_rows(before["allowances"], self.hers.carry, unit),
            "saws": saw_rows(before["saws"], self.hers.saw, self.hers.kerf, unit),
        }
        texts = {
            table_named(name).file: written(table_named(name), own)
            for name, own in rows.items()
            if name not in before or own != before[name]
        }
        self._folder.mkdir(parents=True, exist_ok=True)
        for file, text in texts.items():
            write_atomically(self._folder / file, text.encode())

    def _show_wrong(self) -> str:
        """Put the keyboard on the first thing that is wrong; what is wrong with it, empty where nothing is."""
        for row, one in enumerate(self.hers.parts):
            for column, field in enumerate(FIELDS, start=_TYPED):
                trouble = check_typed(one, field, self._unit)
                if trouble is not None:
                    self.parts.setCurrentCell(row, column)
                    return tr_error(trouble)
        text = self.bars.show_wrong()
        if text:
            return text
        for editor in (self.carry, self.kerf):
            if not editor.text().strip() and editor is self.carry:
                continue
            try:
                parse_length(editor.text().strip(), self._unit)
            except ElevationError as error:
                editor.setFocus(Qt.FocusReason.OtherFocusReason)
                return tr_error(error)
        return ""
