"""A new room from a few typed facts."""

from __future__ import annotations

from msgspec.structs import replace
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from elevation.errors import BadInput, ElevationError
from elevation.room.edits import replace_at
from elevation.room.first import FirstFacts, first_room
from elevation.room.model import Room
from elevation.trade.model import Trade
from elevation.units import Length, parse_length
from elevation.window.choice import Choice
from elevation.window.length_field import FieldRow
from elevation.window.measurements import error_sentence, sentence
from elevation.window.new_room_sketch import NewRoomSketch
from elevation.window.plain_words import plain_words
from elevation.window.text_field import TextField
from elevation.window.texts import language, tr
from elevation.window.theme import make_quiet, make_wrong
from elevation.words import Message, msg

_FACTS: tuple[tuple[str, Message, bool], ...] = (
    ("width", msg("wall, left end to right end"), True),
    ("ceiling", msg("floor to ceiling"), True),
    ("left", msg("left end of the wall to the opening, inside its casing (blank: in the middle)"), False),
    ("opening_width", msg("width of the opening, inside its casing"), True),
    ("sill", msg("floor to sill"), True),
    ("opening_height", msg("sill to head"), True),
    ("casing", msg("width of the casing on one side (0 for none)"), False),
)

_EXPLAINED = {"opening_width": "width", "opening_height": "height"}
"""Facts that other forms know by another name."""


def usual_unit(locale: QLocale) -> str:
    """What tapes read where a person lives: millimetres where everything is metric, else inches."""
    is_metric = locale.measurementSystem() == QLocale.MeasurementSystem.MetricSystem
    return "mm" if is_metric and locale.language() != QLocale.Language.C else "in"


def _named(room: Room) -> Room:
    """The room with names for its wall and scheme in words, and sheets in the language that the person reads."""
    wall = room.walls[0]
    room = replace(room, language="de" if language() == "de" else "en")
    room = replace_at(room, (wall.id,), name=tr(msg("Wall {number}", number=1)))
    return replace_at(room, (wall.id, wall.schemes[0].id), name=tr(msg("First idea")))


class NewRoom(QDialog):
    """Asks for the facts in tape order and makes the room.

    Attributes
    ----------
    room : Room or None
        What was made.
    """

    def __init__(self, trade: Trade, unit: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.room: Room | None = None
        self._trade = trade
        self.setWindowTitle(tr(msg("New room")))
        intro = QLabel(tr(msg("Seven figures from the tape, and the wall stands there.")), self)
        intro.setWordWrap(True)
        self.name = TextField(self)
        self.name.setPlaceholderText(tr(msg("Name of the room")))
        self.name.setAccessibleName(tr(msg("Name of the room")))
        self.unit = Choice(tr(msg("Unit of bare figures")))
        self.unit.offer([("in", tr(msg("inches"))), ("mm", tr(msg("millimetres")))], unit)
        box = QVBoxLayout(self)
        box.addWidget(intro)
        box.addWidget(self.name)
        box.addWidget(self.unit)
        self.sketch = NewRoomSketch(self)
        self.hint = QLabel(self)
        self.hint.setWordWrap(True)
        self.hint.setTextFormat(Qt.TextFormat.PlainText)
        self.hint.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        make_quiet(self.hint)
        form, beside = QVBoxLayout(), QVBoxLayout()
        beside.addWidget(self.sketch)
        beside.addWidget(self.hint, 1)
        sides = QHBoxLayout()
        sides.setSpacing(14)
        sides.addLayout(form, 1)
        sides.addLayout(beside)
        box.addLayout(sides)
        self.rows: dict[str, FieldRow] = {}
        for number, (key, name, needed) in enumerate(_FACTS, 1):
            text = tr(msg("{number}  {what}", number=number, what=sentence(tr(name))))
            row = FieldRow(text, self, unit=unit, may_be_empty=not needed)
            row.tag = key
            row.field.refused.connect(self._fit)
            row.lit.connect(self._light)
            self.rows[key] = row
            form.addWidget(row)
        form.addStretch(1)
        self.error = QLabel(self)
        self.error.setWordWrap(True)
        make_wrong(self.error)
        self.error.setTextFormat(Qt.TextFormat.PlainText)
        self.error.hide()
        box.addWidget(self.error)
        buttons = QDialogButtonBox(self)
        make = buttons.addButton(tr(msg("&Draw it")), QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton(tr(msg("&Not now")), QDialogButtonBox.ButtonRole.RejectRole)
        make.setDefault(True)
        buttons.accepted.connect(self.make)
        buttons.rejected.connect(self.reject)
        box.addWidget(buttons)
        self.unit.chosen.connect(self._take_unit)
        self.setMinimumWidth(620)
        self.name.setFocus()

    def _light(self, key: object, is_on: bool) -> None:
        """Where the tape goes for the field that has the keyboard, in the sketch and in plain words."""
        self.sketch.light(str(key) if is_on else "")
        words = plain_words(_EXPLAINED.get(str(key), str(key))) if is_on else None
        self.hint.setText(tr(words) if words is not None else "")

    def _take_unit(self, unit: str) -> None:
        for row in self.rows.values():
            row.field.read_bare_as(unit)

    def showEvent(self, event: QShowEvent) -> None:
        """As high as its wrapped names need."""
        super().showEvent(event)
        self._fit()

    def make(self) -> None:
        """Make the room; what is missing or cannot be is said, and the first such field gets the keyboard."""
        lengths: dict[str, Length | None] = {}
        for key, name, needed in _FACTS:
            text = self.rows[key].field.text().strip()
            if not text and not needed:
                lengths[key] = None
                continue
            field = self.rows[key].field
            if not text:
                self._say(tr(msg("{what} is not filled in; write for example 120 in", what=sentence(tr(name)))))
                field.setFocus()
                return
            try:
                lengths[key] = parse_length(text, self.unit.key, what=tr(name))
            except BadInput:
                # The field itself says what is wrong.
                field.setFocus()
                field.check()
                return
        try:
            facts = FirstFacts(name=self.name.text().strip(), unit=self.unit.key, **lengths)  # type: ignore[arg-type]
            self.room = _named(first_room(facts, self._trade))
        except ElevationError as error:
            self._say(error_sentence(error, Room(unit=self.unit.key)))  # type: ignore[arg-type]
            return
        self.accept()

    def _say(self, text: str) -> None:
        self.error.setText(text)
        self.error.show()
        self._fit()

    def _fit(self) -> None:
        """Grow for sentences that appeared: texts that wrap do not make a dialog grow by themselves."""
        box = self.layout()
        if box is not None:
            box.activate()
            self.resize(self.width(), max(box.totalHeightForWidth(self.width()), box.totalSizeHint().height()))
