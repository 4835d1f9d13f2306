"""The tape's form: every measurement of the wall, in the order and with the numbers of the measuring sheet."""

from __future__ import annotations

import re
from functools import partial
from math import ceil

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from elevation.errors import ElevationError
from elevation.room.find import item_at, wall_of
from elevation.room.model import Ref, Room, Wall
from elevation.room.readings import with_used
from elevation.room.style import style_for
from elevation.room.validate import check_room
from elevation.session.session import Session
from elevation.setting_out.model import ChainOut, LinkOut
from elevation.sheet.tape_order import TapeField, fields
from elevation.units import Length, format_length
from elevation.window.facts import fact_in, with_fact
from elevation.window.flag import Flag
from elevation.window.length_field import FIELD_WIDTH, FieldRow
from elevation.window.passing import pass_on
from elevation.window.reading_rows import LAST, counts, has_readings, side_of, with_readings
from elevation.window.texts import tr, tr_error
from elevation.window.theme import make_quiet, make_wrong
from elevation.words import Message, Mm, msg

LEAST_ROW_PX, USUAL_ROW_PX = 28, 38
"""No row of the form is less high than the first, most are about as high as the second."""

_Key = tuple[Ref, str]
_PART = re.compile(r"(openings|obstacles|studs|ceiling|floor)\[(\d+)\]")
_WHOLE = re.compile(_PART.pattern + r"(\.x|\.height)?\Z")
_UP = ("ceiling", "floor", "crown", "baseboard", "sill", "height", "head")
_ALONG = ("width", "gap", "left", "casing", "gap_right")


def section_of(field: TapeField, room: Room) -> str:
    """Which part of the form a field stands in: ``along``, ``up``, ``detail`` or ``before``."""
    first = side_of(field.field).partition(".")[0]
    if len(field.ref) == 2 and any(obstacle.id == field.ref[1] for obstacle in wall_of(room, field.ref[0]).obstacles):
        return "before"
    if first in _ALONG:
        return "along"
    return "up" if first in _UP else "detail"


def sentence(text: str) -> str:
    """The text with a capital at its head."""
    return text[:1].upper() + text[1:]


class Measurements(QWidget):
    """The form.

    Attributes
    ----------
    sight : QSize or None
        What can be seen of the form in the window's first picture: rows farther down are left to ``finish``. None: no
        row is left.
    lit : Signal(object, str)
        Ref and field of the field that has the keyboard; an empty field when none has.
    """

    lit = Signal(object, str)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._rows: dict[_Key, FieldRow] = {}
        self._order: tuple[TapeField, ...] = ()
        self.sight: QSize | None = None
        self._to_make: list[TapeField] = []
        self._section = ""
        self._seen: tuple[object, ...] = ()
        self._shape: tuple[object, ...] = ()
        self._items: dict[Ref, object] = {}
        self._worked: dict[_Key, str] = {}
        self._counts: dict[_Key, QLabel] = {}
        self.thrice = Flag(tr(msg("Read in three places")), self)
        self.thrice.setObjectName("thrice")
        self.thrice.toggled.connect(self._on_thrice)
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(8, 6, 8, 8)
        self._box.setSpacing(3)
        self._closing = QLabel(self)
        self._closing.setWordWrap(True)
        self._closing.setTextFormat(Qt.TextFormat.PlainText)
        make_wrong(self._closing)
        self._box.addWidget(self._closing)
        self._box.addWidget(self.thrice)

    def _on_thrice(self) -> None:
        self._seen = ()
        self.refresh()

    def refresh(self) -> None:
        """Show the room as it is now; rows are made anew only where other things are to be measured."""
        room = self._session.room
        if not self._session.wall_id:
            return
        wall = wall_of(room, self._session.wall_id)
        seen = (
            room.unit, room.graduation, wall.id, wall.width, wall.ceiling, wall.floor, wall.crown, wall.baseboard,
            wall.gap_right, wall.openings, wall.obstacles,
        )  # fmt: skip
        if len(seen) == len(self._seen) and all(a is b for a, b in zip(seen, self._seen, strict=True)):
            # Dragging a rod leaves every measurement the same object.
            return
        if not self._seen or self._seen[0] != room.unit:
            # Bare figures mean another unit from now on, in every field.
            self._items = {}
        self._seen = seen
        is_thrice = self.thrice.isChecked() or has_readings(wall)
        # Once something was read there is nothing to switch.
        self.thrice.setVisible(bool(wall.openings) and not has_readings(wall))
        shape = (is_thrice, *_shape_of(wall))
        if shape != self._shape:
            self._shape = shape
            order = with_readings(wall) if is_thrice else fields(wall)
            if [(one.ref, one.field, one.name) for one in order] != [(one.ref, one.field, one.name) for one in self._order]:
                self._build(order)
                self._items, self._worked = {}, {}
        on_wall: dict[Ref, object] = {(wall.id, opening.id): opening for opening in wall.openings}
        on_wall.update({(wall.id, obstacle.id): obstacle for obstacle in wall.obstacles})
        items: dict[Ref, object] = {
            ref: on_wall.get(ref) or item_at(room, ref) for ref in dict.fromkeys(field.ref for field in self._order)
        }
        changed = {ref for ref, item in items.items() if self._items.get(ref) is not item}
        for field in self._order[: len(self._rows)]:
            if field.ref in changed:
                self._rows[field.ref, field.field].field.set_length(fact_in(items[field.ref], field.field), room.unit)
        self._items = items
        for (ref, side), note in self._counts.items():
            opening = next(one for one in wall.openings if one.id == ref[1])
            note.setText(counts(room, wall, opening, "width" if side == "width" else "height"))
            note.setVisible(bool(note.text()))
        chain = self._session.set_out().chain
        self._show_worked_out(chain, room)
        self._show_closing(chain, room)

    def _build(self, order: tuple[TapeField, ...]) -> None:
        held = next((key for key, row in self._rows.items() if row.field.hasFocus()), None)
        while (item := self._box.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None and widget not in (self._closing, self.thrice):
                widget.hide()
                widget.deleteLater()
        self._order = order
        self._rows = {}
        self._counts = {}
        self._box.addWidget(self.thrice)
        self._section = ""
        self._to_make = list(order)
        self._make(self._in_sight(order))
        if held in self._rows:
            self._rows[held].field.setFocus()

    def _in_sight(self, order: tuple[TapeField, ...]) -> int:
        """How many rows can be seen at most: none is less high than the lines of its name."""
        if self.sight is None:
            return len(order)
        metrics, below = self.fontMetrics(), self.sight.height()
        for count, field in enumerate(order):
            if below < 0:
                return count
            lines = ceil(metrics.horizontalAdvance(self._name(field)) / max(self.sight.width() - FIELD_WIDTH, 1))
            below -= max(lines * metrics.lineSpacing(), LEAST_ROW_PX)
        return len(order)

    def _name(self, field: TapeField) -> str:
        return tr(msg("{number}  {what}", number=field.label, what=sentence(tr(field.name))))

    def _make(self, count: int) -> None:
        """Make the next ``count`` rows, and leave room for those that are still to come."""
        titles = {
            "along": msg("Along the wall"),
            "up": msg("Up the wall"),
            "detail": msg("Openings in detail"),
            "before": msg("On and before the wall"),
        }
        for field in self._to_make[:count]:
            section = section_of(field, self._session.room)
            if section != self._section:
                if self._section == "along":
                    self._box.addWidget(self._closing)
                self._section = section
                self._box.addWidget(_heading(titles[section]))
            self._box.addWidget(self._row(field))
            if field.field in LAST:
                note = _note()
                self._counts[field.ref, LAST[field.field]] = note
                self._box.addWidget(note)
        del self._to_make[:count]
        # What is out of sight already has its part of the scroll bar.
        self._box.addSpacing(len(self._to_make) * USUAL_ROW_PX)
        self._box.addStretch(1)
        # Rows made anew would come last of all: Tab follows the tape too.
        before: QWidget = self.thrice
        for row in self._rows.values():
            QWidget.setTabOrder(before, row.field)
            before = row.field

    @property
    def is_whole(self) -> bool:
        """Whether every row is there."""
        return not self._to_make

    def finish(self) -> None:
        """Make the rows that were out of sight."""
        self.sight = None
        if self.is_whole:
            return
        for _ in ("stretch", "spacing"):
            self._box.takeAt(self._box.count() - 1)
        made = self._box.count()
        self._make(len(self._to_make))
        for place in range(made, self._box.count()):
            item = self._box.itemAt(place)
            widget = item.widget() if item is not None else None
            if widget is not None and widget not in (self._closing, *self._counts.values()):
                # Now, and not when Qt next looks: the form would shrink and grow again under a person's eyes.
                widget.show()
        self._seen, self._items, self._worked = (), {}, {}
        self.refresh()

    def _row(self, field: TapeField) -> FieldRow:
        section = section_of(field, self._session.room)
        # A stool's and a station's figures belong to the thing: without them it is not there.
        needed = (
            field.field.startswith(("stool.", "floor."))
            or (section == "before" and field.field != "clearance")
            or (len(field.ref) == 2 and field.field in ("width", "height", "sill"))
        )
        row = FieldRow(self._name(field), self, may_be_empty=not needed)
        row.field.setObjectName(f"tape-{'-'.join(field.ref)}-{field.field}")
        row.tag = field
        row.entered.connect(self.enter)
        row.lit.connect(self._light)
        row.field.passed.connect(partial(self._pass_on, row))
        self._rows[field.ref, field.field] = row
        return row

    def _pass_on(self, row: FieldRow, forward: bool) -> None:
        self.finish()
        pass_on([one.field for one in self._rows.values()], row.field, forward=forward)

    def enter(self, field: TapeField, length: Length | None) -> None:
        """Take a typed measurement; what cannot be is said under its field."""
        room = self._session.committed
        try:
            made = with_fact(room, field.ref, field.field, length)
            if field.field.startswith("taken."):
                # The reading that counts is the opening's figure.
                made = with_used(made, field.ref)
                check_room(made, "")
        except ElevationError as error:
            self._rows[field.ref, field.field].field.refuse(error_sentence(error, room))
            return
        self._session.commit(made, msg("Measure {what}", what=field.name), field.ref)

    def _light(self, field: TapeField, is_on: bool) -> None:
        self.lit.emit(field.ref, side_of(field.field) if is_on else "")

    def show_field(self, ref: Ref, field: str) -> bool:
        """Put the keyboard on a field; False where there is none."""
        self.finish()
        for key in ((ref, field), (ref, f"{field}.0.height"), (ref, "gap"), (ref, "left")):
            row = self._rows.get(key)
            if row is not None and (key[1].startswith(field) or field in ("gap", "left")):
                row.field.setFocus(Qt.FocusReason.ShortcutFocusReason)
                return True
        return False

    def row(self, ref: Ref, field: str) -> FieldRow:
        """The row of a measurement."""
        self.finish()
        return self._rows[ref, field]

    def _show_worked_out(self, chain: ChainOut, room: Room) -> None:
        worked = {
            _key_of(link, room): format_length(link.right_mm - link.left_mm, room.unit, room.graduation_mm, plain=True)
            for link in chain.links
            if not link.typed
        }
        for key in self._worked.keys() | worked.keys():
            row = self._rows.get(key)
            if row is not None and self._worked.get(key) != worked.get(key):
                text = tr(msg("= {figure}", figure=worked[key])) if key in worked else ""
                row.field.set_worked_out(text)
        self._worked = worked

    def _show_closing(self, chain: ChainOut, room: Room) -> None:
        error = chain.closing_error_mm
        if self._to_make and self._box.indexOf(self._closing) < 0:
            return  # Its place is out of sight still.
        if error is None or abs(error) < room.graduation_mm / 2:
            self._closing.hide()
            return
        numbers = {(field.ref, field.field): field.number for field in self._order}
        again = [numbers.get(_key_of(link, room)) for key in chain.again for link in chain.links if link.key == key]
        which = ", ".join(str(number) for number in again if number is not None)
        longer = msg("The parts are {error} longer than the wall. Measure again: {which}.", error=Mm(error), which=which)
        shorter = msg("The parts are {error} shorter than the wall. Measure again: {which}.", error=Mm(-error), which=which)
        self._closing.setText(tr(longer if error > 0 else shorter, style_for(room)))
        self._closing.show()


def _note() -> QLabel:
    """A quiet sentence under a row."""
    note = QLabel()
    note.setWordWrap(True)
    note.setTextFormat(Qt.TextFormat.PlainText)
    make_quiet(note)
    note.hide()
    return note


def _shape_of(wall: Wall) -> tuple[object, ...]:
    """What decides which measurements a wall has, and how they are called."""
    return (
        wall.id,
        max(1, len(wall.ceiling)),
        len(wall.floor),
        tuple(
            (one.id, one.kind, one.head.kind, one.stool is None, one.gap is None, one.left is None) for one in wall.openings
        ),
        tuple((one.id, one.kind, one.name) for one in wall.obstacles),
    )


def error_sentence(error: ElevationError, room: Room | None = None) -> str:
    """An error as said beside the field that caused it: what it is about, what is wrong, what would be right.

    Parameters
    ----------
    error : ElevationError
    room : Room or None
        Whose unit its bounds and amounts are said in.
    """
    said = _PART.sub(_said_part, tr_error(error, style_for(room) if room is not None else None))
    whole = _WHOLE.search(error.where)
    return sentence(f"{_said_part(whole)} {said}" if whole is not None and said else said)


def _said_part(match: re.Match[str]) -> str:
    """``openings[0]`` as it is numbered on the wall."""
    number = int(match.group(2)) + 1
    name = {
        "openings": msg("opening {number}", number=number),
        "obstacles": msg("obstacle {number}", number=number),
        "studs": msg("stud {number}", number=number),
        "ceiling": msg("ceiling point {number}", number=number),
        "floor": msg("floor point {number}", number=number),
    }[match.group(1)]
    return tr(name)


def _key_of(link: LinkOut, room: Room) -> _Key:
    """The form field of a chain link."""
    del room
    kind = link.key.partition(":")[0]
    field = {"gap-right": "gap_right", "casing-left": "casing", "casing-right": "casing"}.get(kind, kind)
    return link.ref, field


def _heading(title: Message) -> QLabel:
    label = QLabel(tr(title))
    make_quiet(label)
    label.setContentsMargins(0, 6, 0, 0)
    return label
