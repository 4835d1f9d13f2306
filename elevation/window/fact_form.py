"""A form made of single facts: each row shows one fact of the room and commits one edit."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any, Literal

from msgspec import Struct
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QCheckBox, QGridLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from elevation.errors import ElevationError, said
from elevation.room.model import Ref, Room
from elevation.session.session import Session
from elevation.window.choice import Choice
from elevation.window.facts import fact, with_fact
from elevation.window.flag import Flag
from elevation.window.go_to import Place
from elevation.window.length_field import FIELD_WIDTH, FieldRow
from elevation.window.measurements import error_sentence, sentence
from elevation.window.passing import pass_on
from elevation.window.plain_words import kind_at, plain_words
from elevation.window.swatch import SwatchButton
from elevation.window.text_field import TextField
from elevation.window.texts import tr
from elevation.window.theme import grown, make_quiet
from elevation.words import Message, msg

Kind = Literal["title", "note", "length", "choice", "text", "flag", "count", "colour", "told"]
Edit = Callable[[Room, Any], Room]


class Fact(Struct, frozen=True):
    """One row of a form.

    Attributes
    ----------
    ref : Ref
    field : str
        Dotted path (see ``facts``).
    name : Message
    kind : str
        ``title`` is a heading only, ``note`` a sentence to read, ``told`` one that changes with the room.
    options : tuple of (key, text)
        For choices.
    needed : bool
        A length that cannot be left blank.
    edit : callable or None
        ``(room, value) -> Room`` where setting the fact is more than putting it in its place.
    read : callable or None
        ``room -> value`` where the fact is not simply the field.
    hint : str
        What stands faint in an empty length field: what holds without it.
    more : tuple of (key, text)
        Options that are seldom wanted: a step away.
    """

    ref: Ref
    field: str
    name: Message
    kind: Kind = "length"
    options: tuple[tuple[str, str], ...] = ()
    needed: bool = False
    edit: Edit | None = None
    read: Callable[[Room], Any] | None = None
    hint: str = ""
    more: tuple[tuple[str, str], ...] = ()

    @property
    def key(self) -> tuple[object, ...]:
        """What makes it another row; its edit may be a new function each time."""
        return self.ref, self.field, self.name, self.kind, self.options, self.more


class _Row(QWidget):
    """A fact that is no length: name before, editor after."""

    entered = Signal(object, object)

    def __init__(self, fact: Fact, editor: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tag: object = fact
        self.editor = editor
        self._swatch: SwatchButton | None = None
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 2)
        grid.setHorizontalSpacing(8)
        if not isinstance(editor, QCheckBox):
            label = QLabel(sentence(tr(fact.name)), self)
            label.setWordWrap(True)
            label.setBuddy(editor)
            grid.addWidget(label, 0, 0)
            grid.addWidget(editor, 0, 1)
            if fact.kind == "colour":
                self._swatch = SwatchButton(self)
                self._swatch.picked.connect(self._tell)
                grid.addWidget(self._swatch, 0, 2)
            grid.setColumnStretch(0, 5)
            grid.setColumnStretch(1, 9)
        else:
            grid.addWidget(editor, 0, 0)
        if isinstance(editor, Choice):
            editor.chosen.connect(self._tell)
        elif isinstance(editor, QCheckBox):
            editor.clicked.connect(self._tell)
        elif isinstance(editor, QLineEdit):
            editor.editingFinished.connect(self._tell_text)

    def _tell(self, value: object) -> None:
        self.entered.emit(self.tag, value)

    def _tell_text(self) -> None:
        if isinstance(self.editor, QLineEdit) and self.editor.isModified():
            self.editor.setModified(False)
            self.entered.emit(self.tag, self.editor.text().strip())

    def show_value(self, value: Any) -> None:
        """Show a value, telling nobody."""
        editor = self.editor
        if isinstance(editor, Choice) and isinstance(self.tag, Fact):
            editor.offer(list(self.tag.options), "" if value is None else str(value), list(self.tag.more))
        elif isinstance(editor, QCheckBox):
            editor.setChecked(bool(value))
        elif isinstance(editor, QLineEdit) and not (editor.hasFocus() and editor.isModified()):
            text = "" if value is None else str(value)
            if editor.text() != text:
                editor.setText(text)
                editor.setCursorPosition(0)
            if self._swatch is not None:
                self._swatch.show_colour(text)


class FactForm(QWidget):
    """Rows of facts.

    Attributes
    ----------
    lit : Signal(object, str)
        Ref and field that has the keyboard; an empty field when none has.
    refused : Signal(str)
        Why an edit that has no field of its own for the sentence was not taken.
    """

    lit = Signal(object, str)
    refused = Signal(str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._facts: tuple[Fact, ...] = ()
        self.rows: dict[tuple[Ref, str], FieldRow | _Row] = {}
        self._told: dict[tuple[Ref, str], QLabel] = {}
        self._titles: list[tuple[QLabel, int]] = []
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(2)

    def show_facts(self, facts: tuple[Fact, ...]) -> None:
        """Show these facts as they are in the room now."""
        if [fact.key for fact in facts] != [fact.key for fact in self._facts]:
            self._build(facts)
        room = self._session.room
        for one in facts:
            told = self._told.get((one.ref, one.field))
            if told is not None and one.read is not None:
                told.setText(one.read(room))
                continue
            row = self.rows.get((one.ref, one.field))
            if row is None:
                continue
            row.tag = one
            value = one.read(room) if one.read is not None else fact(room, one.ref, one.field)
            if isinstance(row, FieldRow):
                row.field.set_length(value, room.unit)
                row.field.set_worked_out(one.hint)
            else:
                row.show_value(value)
        self._facts = facts

    def _build(self, facts: tuple[Fact, ...]) -> None:
        while (item := self._box.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.rows = {}
        self._told = {}
        self._titles = []
        for one in facts:
            if one.kind == "title":
                title = QLabel(sentence(tr(one.name)), self)
                font = title.font()
                font.setWeight(QFont.Weight.DemiBold)
                title.setFont(font)
                title.setContentsMargins(0, 10, 0, 2)
                self._titles.append((title, len(self.rows)))
                self._box.addWidget(title)
                continue
            if one.kind in ("note", "told"):
                note = self._note(one)
                if one.kind == "told":
                    self._told[one.ref, one.field] = note
                self._box.addWidget(note)
                continue
            row = self._row(one)
            self._explain(row, one)
            self.rows[one.ref, one.field] = row
            self._box.addWidget(row)

    def _note(self, one: Fact) -> QLabel:
        note = QLabel(sentence(tr(one.name)), self)
        note.setWordWrap(True)
        note.setTextFormat(Qt.TextFormat.PlainText)
        note.setContentsMargins(0, 0, 0, 3)
        make_quiet(note)
        return note

    def _explain(self, row: FieldRow | _Row, one: Fact) -> None:
        """What the row means, in plain words, for the pointer and for who listens to the screen."""
        words = plain_words(one.field, kind_at(self._session.room, one.ref))
        if words is None:
            return
        text = tr(words)
        row.setToolTip(text)
        if not isinstance(row, FieldRow):
            # A length's field says so itself while it has the keyboard, and describes what was refused.
            row.editor.setAccessibleDescription(text)

    def _row(self, one: Fact) -> FieldRow | _Row:
        name = sentence(tr(one.name))
        if one.kind == "length":
            row = FieldRow(name, self, may_be_empty=not one.needed)
            row.entered.connect(self.enter)
            row.lit.connect(self._light)
            row.field.passed.connect(partial(self._pass_on, row.field))
            row.tag = one
            return row
        editor: QWidget
        if one.kind == "choice":
            editor = Choice(name)
        elif one.kind == "flag":
            editor = Flag(name)
        else:
            editor = TextField()
            if one.kind != "text":
                editor.setMaximumWidth(grown(self, FIELD_WIDTH))
        editor.setAccessibleName(name)
        other = _Row(one, editor, self)
        other.entered.connect(self.enter)
        if isinstance(editor, TextField):
            editor.passed.connect(partial(self._pass_on, editor))
        return other

    def _pass_on(self, editor: QWidget, forward: bool) -> None:
        # A choice or a flag has another use for Enter: the keyboard goes from text to text.
        editors = [row.field if isinstance(row, FieldRow) else row.editor for row in self.rows.values()]
        texts = [one for one in editors if isinstance(one, TextField)]
        if editor in texts:
            pass_on(texts, editor, forward=forward)

    def enter(self, one: Fact, value: Any) -> None:
        """Commit a fact; a sentence says what cannot be."""
        row = self.rows.get((one.ref, one.field))
        room = self._session.committed
        try:
            value = value if one.edit is not None else _read(one, value)
            made = one.edit(room, value) if one.edit is not None else with_fact(room, one.ref, one.field, value)
        except ElevationError as error:
            if isinstance(row, FieldRow):
                row.field.refuse(error_sentence(error, room))
            else:
                self.refused.emit(error_sentence(error, room))
                self.show_facts(self._facts)
            return
        self.refused.emit("")
        self._session.commit(made, msg("Change {what}", what=one.name), one.ref)

    def _light(self, one: Fact, is_on: bool) -> None:
        self.lit.emit(one.ref, one.field if is_on else "")

    def places(self) -> tuple[Place, ...]:
        """The headings in order, each with the first editor under it."""
        editors = [row.field if isinstance(row, FieldRow) else row.editor for row in self.rows.values()]
        return tuple(
            (title.text(), title, editors[first] if first < len(editors) else None) for title, first in self._titles
        )

    def show_field(self, ref: Ref, field: str) -> bool:
        """Put the keyboard on a fact; False where there is none."""
        row = self.rows.get((ref, field))
        if row is None:
            return False
        editor = row.field if isinstance(row, FieldRow) else row.editor
        editor.setFocus(Qt.FocusReason.ShortcutFocusReason)
        return True


def _read(one: Fact, value: Any) -> Any:
    """What was entered as the room keeps it."""
    if one.kind != "count":
        return value
    try:
        return int(str(value))
    except ValueError:
        raise _no_count(one, value) from None


def _no_count(one: Fact, value: Any) -> ElevationError:
    return ElevationError(
        tr(one.name), "", said('"{value}" is not a whole number', value=value), said("write for example 2")
    )
