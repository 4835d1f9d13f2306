"""A line edit for one length: it takes everything a person may type and tells exactly what it cannot take."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPalette
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from elevation.errors import BadInput
from elevation.units import Length, parse_length
from elevation.window.text_field import TextField
from elevation.window.texts import tr, tr_error
from elevation.window.theme import grown, make_wrong
from elevation.words import msg

FIELD_WIDTH = 96
"""Width of a length field in pixels: wide enough for a sum such as 36 + 2*3 1/2."""


class LengthField(TextField):
    """A field for a length, or for nothing where a fact may be unmeasured.

    Never a spin box: those drop a decimal comma silently.

    Attributes
    ----------
    entered : Signal(object)
        A Length, or None for an emptied field; only when the text was changed and could be read.
    refused : Signal(str)
        One sentence; empty when the text is fine again.
    lit : Signal(bool)
        The field got or lost the keyboard.
    """

    entered = Signal(object)
    refused = Signal(str)
    lit = Signal(bool)

    def __init__(self, parent: QWidget | None = None, *, unit: str = "in", may_be_empty: bool = True) -> None:
        super().__init__(parent)
        self._unit = unit
        self._may_be_empty = may_be_empty
        self._shown = ""
        self._before = ""
        self._what = ""
        self._bare = ""
        self.editingFinished.connect(self._enter)

    def set_what(self, what: str) -> None:
        """Name what is measured, for the error sentence and for screen readers."""
        self._what = what
        self.setAccessibleName(what)

    def set_length(self, length: Length | None, unit: str) -> None:
        """Show a length as it was typed; does nothing to a text that is being typed."""
        self._unit = unit
        text = length.text if length is not None else ""
        if text == self._shown:
            return
        typing = self.hasFocus() and self.text() != self._shown
        self._shown = text
        if not typing:
            self.setText(text)
            self._say("")

    def read_bare_as(self, unit: str) -> None:
        """Bare figures mean another unit from now on, what was typed bare before too; a unit that was typed stays."""
        self._unit = unit
        if self._bare and self.text() == self._shown:
            self.setText(self._bare)
            self._enter()

    def set_worked_out(self, text: str) -> None:
        """Show, faint, what is worked out for an empty field."""
        if self.placeholderText() != text:
            self.setPlaceholderText(text)

    def _enter(self) -> None:
        text = self.text().strip()
        if text == self._shown:
            self.setModified(False)
            self._say("")
            return
        if not text:
            if not self._may_be_empty:
                self._say(tr(msg("{what}: a length is needed here", what=self._what)))
                return
            self._take(None, "")
            return
        try:
            length = parse_length(text, self._unit, what=self._what)
        except BadInput as error:
            # The name stands right before the field: only the place in the text needs saying.
            self._say(tr_error(error))
            return
        self._take(length, length.text)
        self._bare = text if length.text == f"{text} {self._unit}" else ""

    def check(self) -> None:
        """Read the text now, as Enter does."""
        self._enter()

    def _take(self, length: Length | None, text: str) -> None:
        self._before, self._shown = self._shown, text
        self.setText(text)
        self._say("")
        self.entered.emit(length)

    def refuse(self, sentence: str) -> None:
        """Say that the length that was entered cannot be: the text stays to be mended, Esc gives back the one before."""
        self._shown = self._before
        self._say(sentence)

    def _say(self, sentence: str) -> None:
        is_wrong = bool(sentence)
        if is_wrong != self.is_wrong:
            self.is_wrong = is_wrong
            self._ink()
        self.setAccessibleDescription(sentence)
        self.refused.emit(sentence)

    def _ink(self) -> None:
        """Wrong text stands in the accent."""
        palette = QPalette()
        if self.is_wrong:
            palette.setColor(QPalette.ColorRole.Text, self.palette().color(QPalette.ColorRole.BrightText))
        self.setPalette(palette)

    def changeEvent(self, event: QEvent) -> None:
        """Another theme: another accent."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ApplicationPaletteChange and self.is_wrong:
            self._ink()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc gives back what stood there."""
        if event.key() == Qt.Key.Key_Escape and self.text() != self._shown:
            self.setText(self._shown)
            self._say("")
            event.accept()
            return
        super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Everything is selected, so that typing replaces it."""
        super().focusInEvent(event)
        self.selectAll()
        self.lit.emit(True)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The wall's dimension goes dark again."""
        super().focusOutEvent(event)
        self.lit.emit(False)


class FieldRow(QWidget):
    """A length field with its name before it and, when it needs one, a sentence under it.

    Attributes
    ----------
    tag : object
        What its owner knows it by; it comes first in both signals.
    entered : Signal(object, object)
        Tag, and the Length or None.
    lit : Signal(object, bool)
        Tag, and whether the field has the keyboard.
    """

    entered = Signal(object, object)
    lit = Signal(object, bool)

    def __init__(self, name: str, parent: QWidget | None = None, *, unit: str = "in", may_be_empty: bool = True) -> None:
        super().__init__(parent)
        self.tag: object = None
        self.label = QLabel(name, self)
        self.label.setWordWrap(True)
        self.field = LengthField(self, unit=unit, may_be_empty=may_be_empty)
        self.field.set_what(name)
        self.label.setBuddy(self.field)
        self._error: QLabel | None = None
        self.field.setFixedWidth(grown(self, FIELD_WIDTH))
        self._box = box = QGridLayout(self)
        box.setContentsMargins(0, 0, 0, 2)
        box.setHorizontalSpacing(8)
        box.setVerticalSpacing(1)
        box.addWidget(self.label, 0, 0)
        box.addWidget(self.field, 0, 1, Qt.AlignmentFlag.AlignTop)
        box.setColumnStretch(0, 1)
        self.field.refused.connect(self._show_error)
        self.field.entered.connect(self._tell_entered)
        self.field.lit.connect(self._tell_lit)

    def changeEvent(self, event: QEvent) -> None:
        """The field is as wide as its text is large."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self.field.setFixedWidth(grown(self, FIELD_WIDTH))

    @property
    def error(self) -> QLabel:
        """The sentence under the field; made when it is first needed, because most fields never need one."""
        if self._error is None:
            self._error = QLabel(self)
            self._error.setWordWrap(True)
            make_wrong(self._error)
            self._error.setTextFormat(Qt.TextFormat.PlainText)
            self._error.hide()
            self._box.addWidget(self._error, 1, 0, 1, 2)
        return self._error

    def _tell_entered(self, length: object) -> None:
        self.entered.emit(self.tag, length)

    def _tell_lit(self, is_on: bool) -> None:
        self.lit.emit(self.tag, is_on)

    def set_name(self, name: str) -> None:
        """Rename what is measured."""
        if self.label.text() != name:
            self.label.setText(name)
            self.field.set_what(name)

    def _show_error(self, sentence: str) -> None:
        if sentence or self._error is not None:
            self.error.setText(sentence)
            self.error.setVisible(bool(sentence))
