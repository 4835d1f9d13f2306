"""A part of a side panel that folds away under its own name."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QScrollArea, QSizePolicy, QToolButton, QVBoxLayout, QWidget


class Drawer(QWidget):
    """A heading that opens and closes what stands under it.

    Parameters
    ----------
    name : str
        Settings and tests know it by this.
    title : str
        What people read.
    content : QWidget
    is_open : bool
    """

    toggled = Signal(bool)

    def __init__(self, name: str, title: str, content: QWidget, *, is_open: bool = True) -> None:
        super().__init__()
        self.setObjectName(name)
        self.content = content
        self.head = QToolButton(self)
        self.head.setObjectName("drawerHead")
        self.head.setText(title)
        self.head.setAccessibleName(title)
        self.head.setCheckable(True)
        self.head.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.head.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.head.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.head)
        box.addWidget(content)
        self.head.toggled.connect(self.set_open)
        self.set_open(is_open)

    @property
    def is_open(self) -> bool:
        """Whether the content is shown."""
        return self.head.isChecked()

    def set_open(self, is_open: bool) -> None:
        """Open or close."""
        self.head.setChecked(is_open)
        self.head.setArrowType(Qt.ArrowType.DownArrow if is_open else Qt.ArrowType.RightArrow)
        if self.content.isHidden() == is_open:
            self.content.setVisible(is_open)
            self.toggled.emit(is_open)

    def set_title(self, title: str) -> None:
        """Another heading ("Findings 3")."""
        if self.head.text() != title:
            self.head.setText(title)
            self.head.setAccessibleName(title)


class Side(QScrollArea):
    """A column of drawers that scrolls when they do not all fit."""

    def __init__(self, name: str, drawers: tuple[Drawer, ...]) -> None:
        super().__init__()
        self.setObjectName(name)
        self.drawers = drawers
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        inner = QWidget()
        box = QVBoxLayout(inner)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        for drawer in drawers:
            box.addWidget(drawer)
        box.addStretch(1)
        self.setWidget(inner)


class Choice(QComboBox):
    """A choice among a few words; told only when a person chose."""

    chosen = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._keys: list[str] = []
        self._texts: list[str] = []
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(8)
        self.activated.connect(self._tell)

    def offer(self, options: list[tuple[str, str]], key: str) -> None:
        """Offer (key, text) pairs, with ``key`` chosen; tells nobody."""
        keys, texts = [option[0] for option in options], [option[1] for option in options]
        if keys != self._keys or texts != self._texts:
            self._keys, self._texts = keys, texts
            self.clear()
            self.addItems(texts)
        index = keys.index(key) if key in keys else -1
        if index != self.currentIndex():
            self.setCurrentIndex(index)

    @property
    def key(self) -> str:
        """Key of what is chosen; empty for nothing."""
        index = self.currentIndex()
        return self._keys[index] if 0 <= index < len(self._keys) else ""

    def choose(self, key: str) -> None:
        """Choose as a person would."""
        self.setCurrentIndex(self._keys.index(key))
        self.chosen.emit(key)

    def _tell(self, index: int) -> None:
        if 0 <= index < len(self._keys):
            self.chosen.emit(self._keys[index])

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the panel: a choice is not changed in passing."""
        event.ignore()
