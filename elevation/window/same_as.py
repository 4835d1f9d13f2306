"""Asks what is carried from one treatment, and to which windows."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from elevation.findings.naming import where
from elevation.room.carrying import Part
from elevation.room.model import Opening, Ref, Room
from elevation.setting_out.model import TreatmentOut
from elevation.window.flag import Flag
from elevation.window.measurements import sentence
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.words import Message, msg, msg_plural

_PARTS: dict[Part, Message] = {
    "height": msg("height of the rod"),
    "reach": msg("reach of the rod"),
    "rod": msg("rod section and distance from the wall"),
    "ends": msg("what ends the rod"),
    "brackets": msg("brackets and their places"),
    "heading": msg("heading and drop"),
    "fabric": msg("cloth"),
    "hem": msg("hem"),
    "panels": msg("panels"),
}

_PARTS_PX = 230
"""Width of the column of parts."""


class SameAs(QDialog):
    """Two columns of boxes to tick: windows, wall by wall, and parts."""

    def __init__(self, room: Room, source: TreatmentOut, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.openings: dict[Ref, Flag] = {}
        self.boxes: dict[Part, Flag] = {}
        self.setWindowTitle(tr(msg("Same as {where}", where=where(source))))
        intro = QLabel(tr(msg("What is held there is carried, not where it landed: every rod finds its own window.")), self)
        intro.setWordWrap(True)
        columns = QHBoxLayout()
        columns.setSpacing(18)
        columns.addWidget(self._windows(room, source), 3)
        columns.addLayout(self._parts(), 2)
        self.count = QLabel(self)
        make_quiet(self.count)
        buttons = QDialogButtonBox(self)
        self.act = buttons.addButton(tr(msg("&Carry it there")), QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton(tr(msg("&Not now")), QDialogButtonBox.ButtonRole.RejectRole)
        self.act.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        box = QVBoxLayout(self)
        box.setSpacing(10)
        box.addWidget(intro)
        box.addLayout(columns, 1)
        foot = QHBoxLayout()
        foot.addWidget(self.count, 1)
        foot.addWidget(buttons)
        box.addLayout(foot)
        self.setMinimumSize(560, 420)
        self._say()

    def _windows(self, room: Room, source: TreatmentOut) -> QWidget:
        inner = QWidget()
        box = QVBoxLayout(inner)
        box.setContentsMargins(8, 4, 8, 4)
        box.setSpacing(3)
        own = {opening.ref for opening in source.openings}
        for wall in room.walls:
            others = [(number, one) for number, one in enumerate(wall.openings, 1) if (wall.id, one.id) not in own]
            if not others:
                continue
            title = QLabel(wall.name or wall.id, inner)
            title.setTextFormat(Qt.TextFormat.PlainText)
            make_quiet(title)
            box.addWidget(title)
            for number, opening in others:
                tick = Flag(_name(number, opening), inner)
                tick.toggled.connect(self._say)
                self.openings[wall.id, opening.id] = tick
                box.addWidget(tick)
        box.addStretch(1)
        area = QScrollArea(self)
        area.setWidgetResizable(True)
        area.setAccessibleName(tr(msg("Windows to carry to")))
        area.setWidget(inner)
        return area

    def _parts(self) -> QVBoxLayout:
        box = QVBoxLayout()
        box.setSpacing(3)
        for part, text in _PARTS.items():
            tick = Flag(sentence(tr(text)), self)
            tick.setChecked(True)
            tick.toggled.connect(self._say)
            # The list beside it takes all the width that this column does not insist on.
            tick.setMinimumWidth(_PARTS_PX)
            self.boxes[part] = tick
            box.addWidget(tick)
        box.addStretch(1)
        for text, slot in ((msg("All windows"), self.take_all), (msg("No window"), self.take_none)):
            button = QToolButton(self)
            button.setText(tr(text))
            button.clicked.connect(slot)
            box.addWidget(button)
        return box

    def take_all(self) -> None:
        """Tick every window."""
        for tick in self.openings.values():
            tick.setChecked(True)

    def take_none(self) -> None:
        """Tick none."""
        for tick in self.openings.values():
            tick.setChecked(False)

    def targets(self) -> tuple[Ref, ...]:
        """The windows that were chosen: wall and opening of each."""
        return tuple(ref for ref, tick in self.openings.items() if tick.isChecked())

    def parts(self) -> tuple[Part, ...]:
        """The parts that were chosen."""
        return tuple(part for part, tick in self.boxes.items() if tick.isChecked())

    def _say(self) -> None:
        count = len(self.targets())
        self.count.setText(tr(msg_plural("{count} window chosen", "{count} windows chosen", count=count)))
        self.act.setEnabled(count > 0 and bool(self.parts()))


def _name(number: int, opening: Opening) -> str:
    if opening.kind == "door":
        return tr(msg("Door {number}", number=number))
    if opening.kind == "sliding-door":
        return tr(msg("Sliding door {number}", number=number))
    return tr(msg("Window {number}", number=number))
