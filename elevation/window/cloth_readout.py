"""What the layer shown takes in cloth, live: it follows every drag."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from elevation.planning.cloth_words import cloth_lines
from elevation.room.model import Layer, Ref
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.setting_out.cloth import cloth_of_layer
from elevation.setting_out.model import LayerOut
from elevation.window.measurements import sentence
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.words import msg


class ClothReadout(QWidget):
    """Cloth to buy for one layer, made to measure.

    Attributes
    ----------
    text : QLabel
        The lines.
    """

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._seen: tuple[object, ...] = ()
        title = QLabel(sentence(tr(msg("Cloth to buy, made to measure"))), self)
        make_quiet(title)
        title.setContentsMargins(0, 6, 0, 0)
        self.text = QLabel(self)
        self.text.setWordWrap(True)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self.text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(2)
        box.addWidget(title)
        box.addWidget(self.text)

    def show_layer(self, ref: Ref | None, layer: Layer | None) -> None:
        """Show what the layer at ``ref`` takes; nothing where none hangs."""
        out = None if ref is None else _landed(self._session, ref)
        room = self._session.room
        seen = (out, layer, room.fullness_rule, room.unit, room.graduation)
        if len(seen) == len(self._seen) and all(a is b for a, b in zip(seen, self._seen, strict=True)):
            return
        self._seen = seen
        cloth = None if out is None or layer is None else cloth_of_layer(room, layer, out, self._session.trade)
        self.setVisible(cloth is not None)
        if cloth is not None:
            style = style_for(room)
            self.text.setText("\n".join(tr(line, style) for line in cloth_lines(cloth, room.unit, room.graduation_mm)))


def _landed(session: Session, ref: Ref) -> LayerOut | None:
    for treatment in session.set_out().treatments:
        for layer in treatment.layers:
            if layer.ref == ref:
                return layer
    return None
