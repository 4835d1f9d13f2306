"""A box to tick for each scheme of a wall, and for the bare wall: which of them stand beside each other."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QWidget

from elevation.planning.comparing import MOST
from elevation.window.texts import tr
from elevation.words import Message

_BOX_PX = 34
_WIDEST_PX, _LEAST_PX = 220, 40


class SchemesPicks(QWidget):
    """The row of boxes; at most four are ticked.

    Attributes
    ----------
    changed : Signal()
        A box was ticked or unticked.
    boxes : list of QCheckBox
        In the wall's order, the bare wall first; those beyond the wall's schemes are hidden.
    """

    changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.boxes: list[QCheckBox] = []
        self._keys: list[str | None] = []
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(14)
        self._row.addStretch(1)

    @property
    def ticked(self) -> list[str | None]:
        """Ids of the schemes that are ticked, None for the bare wall."""
        return [key for key, box in zip(self._keys, self.boxes, strict=False) if box.isChecked()]

    def offer(self, options: Sequence[tuple[str | None, Message]], ticked: Sequence[str | None], wide_px: int) -> None:
        """Offer these, some of them ticked; however many there are, the row stays about as wide as it may be."""
        self._keys = [key for key, _ in options]
        while len(self.boxes) < len(options):
            box = QCheckBox(self)
            box.toggled.connect(self.changed)
            self.boxes.append(box)
            self._row.insertWidget(len(self.boxes) - 1, box)
        room_px = max(min(_WIDEST_PX, wide_px // max(len(options), 1) - _BOX_PX), _LEAST_PX)
        for box, (key, name) in zip(self.boxes, options, strict=False):
            with QSignalBlocker(box):
                box.setChecked(key in ticked)
            text = tr(name)
            box.setText(box.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, room_px).replace("&", "&&"))
            box.setToolTip(text)
            box.setAccessibleName(text)
            box.setEnabled(key in ticked or len(ticked) < MOST)
            box.show()
        for box in self.boxes[len(options) :]:
            box.hide()
