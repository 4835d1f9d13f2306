"""What a picture to post carries: figures, light, the bare wall beside it; and how to take the photograph."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFormLayout, QLabel, QVBoxLayout, QWidget

from elevation.sheet.draw_light import MODES, Mode
from elevation.sheet.post_figures import FIGURES, MOST, USUAL
from elevation.window.choice import Choice
from elevation.window.flag import Flag
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.words import msg


class PostChoice(QWidget):
    """Three choices of a figure, a flag, a sentence.

    Attributes
    ----------
    changed : Signal()
    """

    changed = Signal()

    def __init__(self, figures: Sequence[str] = USUAL, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        known = [name for name in dict.fromkeys(figures) if name in FIGURES][:MOST]
        self._names = known if len(known) == MOST else list(USUAL)
        self.choices: list[Choice] = []
        form = QFormLayout()
        form.setContentsMargins(0, 0, 0, 0)
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        labels = (msg("F&irst figure"), msg("Secon&d"), msg("T&hird"))
        for label in labels:
            choice = Choice(tr(label).replace("&", ""), self)
            choice.chosen.connect(self._choose)
            self.choices.append(choice)
            form.addRow(tr(label), choice)
        self.light_choice = Choice(tr(msg("Lighting")), self)
        self.light_choice.offer(
            [("drawn", tr(msg("as drawn"))), ("day", tr(msg("by day"))), ("evening", tr(msg("in the evening")))], "drawn"
        )
        self.light_choice.chosen.connect(self.changed)
        form.addRow(tr(msg("Li&ghting")), self.light_choice)
        self.flag = Flag(tr(msg("Before and after, &with the bare wall")), self)
        self.flag.toggled.connect(self.changed)
        self.advice = QLabel(self)
        self.advice.setWordWrap(True)
        self.advice.setTextFormat(Qt.TextFormat.PlainText)
        make_quiet(self.advice)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(6)
        box.addLayout(form)
        box.addWidget(self.flag)
        box.addWidget(self.advice)
        self._offer()

    @property
    def figures(self) -> tuple[str, ...]:
        """Names of the figures that are chosen."""
        return tuple(self._names)

    @property
    def before(self) -> bool:
        """Whether the bare wall is shown as well."""
        return self.flag.isChecked()

    @property
    def light(self) -> Mode | None:
        """``day``, ``evening`` or None: as it is drawn."""
        return next((mode for mode in MODES if mode == self.light_choice.key), None)

    def say(self, text: str) -> None:
        """The sentence on the photograph."""
        if self.advice.text() != text:
            self.advice.setText(text)

    def _offer(self) -> None:
        for choice, name in zip(self.choices, self._names, strict=True):
            # One figure stands once: a choice offers what the others have not taken.
            others = set(self._names) - {name}
            options = [(key, tr(figure.label)) for key, figure in FIGURES.items() if key not in others]
            choice.offer(options, name)

    def _choose(self, _key: str) -> None:
        self._names = [choice.key for choice in self.choices]
        self._offer()
        self.changed.emit()
