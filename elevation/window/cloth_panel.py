"""What hangs in numbers to buy by: cloth made to measure, live, for the layer that is selected."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from elevation.findings.naming import where
from elevation.planning.cloth_words import cloth_lines, ring_lines, valance_line
from elevation.planning.ready_words import ready_for, ready_lines
from elevation.room.find import layer_of
from elevation.room.model import Ref
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.cloth import cloth_of_layer
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.setting_out.valance import valance_cloth
from elevation.window.measurements import sentence
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.words import Message, msg


class ClothPanel(QWidget):
    """Cloth to buy for one layer: the one that is selected, else the one shown before, else the first.

    Attributes
    ----------
    title : QLabel
        Whose cloth it is.
    """

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._ref: Ref = ()
        self._seen: tuple[object, ...] = ()
        self.title = QLabel(self)
        make_quiet(self.title)
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setWordWrap(True)
        self._lines: list[QLabel] = []
        box = QVBoxLayout(self)
        box.setContentsMargins(8, 4, 8, 8)
        box.setSpacing(5)
        box.addWidget(self.title)
        self._box = QVBoxLayout()
        self._box.setSpacing(5)
        box.addLayout(self._box)
        box.addStretch(1)

    def text(self) -> str:
        """What it says now, line by line."""
        return "\n".join(label.text() for label in self._lines if not label.isHidden())

    def refresh(self) -> None:
        """Follow the room; nothing is reckoned again where nothing changed that it depends on."""
        session = self._session
        hung = [(treatment, layer) for treatment in session.set_out().treatments for layer in treatment.layers]
        if not hung:
            self._show(msg("Nothing hangs on this wall in this scheme."), ())
            self._seen = ()
            return
        refs = [layer.ref for _, layer in hung]
        picked = session.selection
        if picked is not None and len(picked) > 2 and self._ref[: len(picked)] != picked[:4]:
            of_it = [ref for ref in refs if ref[: len(picked)] == picked[: len(ref)]]
            self._ref = of_it[0] if of_it else self._ref
        if self._ref not in refs:
            self._ref = refs[0]
        treatment, out = hung[refs.index(self._ref)]
        room = session.room
        layer = layer_of(room, self._ref)
        seen = (out, layer, treatment.pelmet, room.limits, room.fullness_rule, room.unit, room.graduation, session.trade)
        if len(seen) == len(self._seen) and all(a is b for a, b in zip(seen, self._seen, strict=True)):
            return
        self._seen = seen
        cloth = cloth_of_layer(room, layer, out, session.trade)
        lines = () if cloth is None else cloth_lines(cloth, room.unit, room.graduation_mm)
        if lines:
            lines = (*lines, *ring_lines(out, session.trade))
        if treatment.pelmet is not None and out is treatment.layers[0]:
            valance = valance_cloth(room, layer, treatment.pelmet, session.trade)
            if valance is not None:
                lines = (*lines, valance_line(valance, room.unit, room.graduation_mm))
        ready = ready_for(room, out, session.trade)
        if ready is not None:
            lines = (*lines, *ready_lines(ready, out))
        self._show(_named(treatment, out), lines or (msg("No panel hangs there."),))

    def _show(self, title: Message, lines: tuple[Message, ...]) -> None:
        style = style_for(self._session.room)
        self.title.setText(sentence(tr(title, style)))
        while len(self._lines) < len(lines):
            label = QLabel(self)
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            self._box.addWidget(label)
            self._lines.append(label)
        for index, label in enumerate(self._lines):
            label.setVisible(index < len(lines))
            if index < len(lines):
                label.setText(tr(lines[index], style))


def _named(treatment: TreatmentOut, out: LayerOut) -> Message:
    """Whose cloth it is."""
    if len(treatment.layers) == 1:
        return msg("{where}, made to measure", where=where(treatment))
    if out is treatment.layers[0]:
        return msg("{where}, front layer, made to measure", where=where(treatment))
    return msg("{where}, back layer, made to measure", where=where(treatment))
