"""The left side of the sheets dialog: which sheet, whose, on what paper."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QComboBox, QFormLayout, QLabel, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from elevation.sheet.every import SheetKind, every_sheet
from elevation.sheet.post_figures import USUAL
from elevation.window.post_choice import PostChoice
from elevation.window.sheets_pages import Whose
from elevation.window.texts import tr
from elevation.window.theme import make_quiet
from elevation.words import Message, msg

_WHOSE: tuple[tuple[Whose, Message], ...] = (
    ("wall", msg("this wall")),
    ("room", msg("this room")),
    ("house", msg("this house: all rooms of the folder")),
)
_PAPERS: dict[str, Message] = {
    "": msg("what suits"),
    "a4": msg("A4"),
    "a3": msg("A3"),
    "letter": msg("Letter"),
    "tabloid": msg("Tabloid"),
    "4:5": msg("4:5, to post"),
    "1:1": msg("1:1, to post"),
    "16:9": msg("16:9, to post"),
}
_WIDTH = 290


class SheetsChoice(QWidget):
    """The list of sheets and what else is to be chosen.

    Attributes
    ----------
    changed : Signal()
        Something else is chosen.
    """

    changed = Signal()

    def __init__(self, figures: Sequence[str] = USUAL, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.kinds = every_sheet()
        self.sheets = QListWidget(self)
        self.sheets.setAccessibleName(tr(msg("Sheets")))
        self.sheets.setUniformItemSizes(True)
        self.sheets.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.sheets.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for kind in self.kinds:
            item = QListWidgetItem(tr(kind.title))
            purpose = tr(kind.purpose)
            item.setToolTip(purpose)
            item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{tr(kind.title)}: {purpose}")
            self.sheets.addItem(item)
        height = self.fontMetrics().height() + 8
        for row in range(self.sheets.count()):
            self.sheets.item(row).setSizeHint(QSize(_WIDTH - 20, height))
        self.purpose = QLabel(self)
        self.purpose.setWordWrap(True)
        self.purpose.setTextFormat(Qt.TextFormat.PlainText)
        self.purpose.setMinimumHeight(2 * self.fontMetrics().height() + 4)
        self.purpose.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        make_quiet(self.purpose)
        self.whose_box, self.paper_box = QComboBox(self), QComboBox(self)
        for whose, text in _WHOSE:
            self.whose_box.addItem(tr(text), whose)
        for name, text in _PAPERS.items():
            self.paper_box.addItem(tr(text), name)
        self.whose_box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(8)
        box.addWidget(self.sheets, 1)
        box.addWidget(self.purpose)
        self.form = QFormLayout()
        self.form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self.form.addRow(tr(msg("&Of")), self.whose_box)
        self.form.addRow(tr(msg("P&aper")), self.paper_box)
        box.addLayout(self.form)
        self.post = PostChoice(figures, self)
        self.post.changed.connect(self._change)
        box.addWidget(self.post)
        self.setFixedWidth(_WIDTH)
        self.sheets.setCurrentRow(0)
        self._say()
        self.sheets.currentRowChanged.connect(self._change)
        self.whose_box.currentIndexChanged.connect(self._change)
        self.paper_box.currentIndexChanged.connect(self._change)

    @property
    def kind(self) -> SheetKind:
        """The sheet that is chosen."""
        return self.kinds[max(self.sheets.currentRow(), 0)]

    @property
    def whose(self) -> Whose:
        """Whose sheets are wanted."""
        whose: Whose = self.whose_box.currentData()
        return whose

    @property
    def paper(self) -> str:
        """The paper's name; empty for what suits."""
        return str(self.paper_box.currentData())

    def choose(self, name: str) -> None:
        """Choose the sheet of that name."""
        names = [kind.name for kind in self.kinds]
        self.sheets.setCurrentRow(names.index(name))

    def _change(self) -> None:
        self._say()
        self.changed.emit()

    def _say(self) -> None:
        purpose = tr(self.kind.purpose)
        self.purpose.setText(purpose[:1].upper() + purpose[1:] + ".")
        self.post.setVisible(self.kind.name == "picture")
