"""A part of a side panel that folds away under its own name."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QAbstractScrollArea, QComboBox, QScrollArea, QSizePolicy, QToolButton, QVBoxLayout, QWidget


class Drawer(QWidget):
    """A heading that opens and closes what stands under it; long contents scroll on their own.

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
        self.head.setChecked(is_open)
        self.head.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.head.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.head.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.area = content if isinstance(content, QAbstractScrollArea) else _scrolling(content)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(0)
        box.addWidget(self.head)
        box.addWidget(self.area, 1)
        self._show_state()
        self.head.toggled.connect(self._on_toggled)

    @property
    def is_open(self) -> bool:
        """Whether the content is shown."""
        return self.head.isChecked()

    def set_open(self, is_open: bool) -> None:
        """Open or close."""
        self.head.setChecked(is_open)

    def _on_toggled(self, is_open: bool) -> None:
        self._show_state()
        self.toggled.emit(is_open)

    def _show_state(self) -> None:
        self.head.setArrowType(Qt.ArrowType.DownArrow if self.is_open else Qt.ArrowType.RightArrow)
        self.area.setVisible(self.is_open)

    def reveal(self, widget: QWidget) -> None:
        """Scroll until ``widget`` is in sight."""
        if isinstance(self.area, QScrollArea):
            self.area.ensureWidgetVisible(widget)

    def set_title(self, title: str) -> None:
        """Another heading ("Findings 3")."""
        if self.head.text() != title:
            self.head.setText(title)
            self.head.setAccessibleName(title)


def _scrolling(content: QWidget) -> QScrollArea:
    scroll = QScrollArea()
    scroll.setWidgetResizable(True)
    scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    scroll.setWidget(content)
    return scroll


class Side(QWidget):
    """A column of drawers whose headings never scroll out of sight; open ones share the height.

    Parameters
    ----------
    name : str
    drawers : tuple of Drawer
    is_single : bool
        Opening one closes the others.
    """

    def __init__(self, name: str, drawers: tuple[Drawer, ...], *, is_single: bool) -> None:
        super().__init__()
        self.setObjectName(name)
        self.drawers = drawers
        self._is_single = is_single
        self._box = QVBoxLayout(self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(0)
        for drawer in drawers:
            self._box.addWidget(drawer)
            drawer.toggled.connect(self._share)
        self._box.addStretch(0)
        self._before: Drawer | None = None
        self._share()

    def _share(self) -> None:
        opened = [drawer for drawer in self.drawers if drawer.is_open]
        if self._is_single and len(opened) > 1:
            # The one opened last stays.
            keep = next((drawer for drawer in opened if drawer is not self._before), opened[0])
            self._before = keep
            for drawer in opened:
                if drawer is not keep:
                    drawer.set_open(False)
            opened = [keep]
        elif self._is_single and opened:
            self._before = opened[0]
        for index, drawer in enumerate(self.drawers):
            self._box.setStretch(index, 1 if drawer.is_open else 0)
        self._box.setStretch(len(self.drawers), 0 if opened else 1)


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
