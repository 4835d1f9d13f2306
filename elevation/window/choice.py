"""A choice among a few words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QHelpEvent, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox, QToolTip, QWidget

if TYPE_CHECKING:
    from PySide6.QtWidgets import QStyleOptionComboBox

# As with the check boxes of ``flag``: a style's enumerations are built where a text must be cut, not for the first picture.

from elevation.window.texts import tr
from elevation.words import msg

_UNFOLD = "\N{HORIZONTAL ELLIPSIS}"
"""Key of the entry that unfolds the seldom ones: no row has it."""


class Choice(QComboBox):
    """A choice among a few words; told only when a person chose."""

    chosen = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._keys: list[str] = []
        self._more: list[tuple[str, str]] = []
        self._is_long = False
        self._now = ""
        self._texts: list[str] = []
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(8)
        self.activated.connect(self._tell)

    def offer(self, options: list[tuple[str, str]], key: str, more: list[tuple[str, str]] | None = None) -> None:
        """Offer (key, text) pairs, with ``key`` chosen; tells nobody.

        ``more`` are seldom wanted: they stand behind one last entry that unfolds them, but for one that is chosen.
        """
        self._more = more or []
        if self._more and not self._is_long:
            chosen = [option for option in self._more if option[0] == key]
            options = [*options, *chosen, (_UNFOLD, tr(msg("more …")))]
        else:
            options = [*options, *self._more]
        self._show(options, key)

    def _show(self, options: list[tuple[str, str]], key: str) -> None:
        keys, texts = [option[0] for option in options], [option[1] for option in options]
        if keys != self._keys or texts != self._texts:
            self._keys, self._texts = keys, texts
            self.clear()
            self.addItems(texts)
        self._now = key
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
        if key not in self._keys:
            self._unfold()
        self.setCurrentIndex(self._keys.index(key))
        self.chosen.emit(key)

    def _tell(self, index: int) -> None:
        if not 0 <= index < len(self._keys):
            return
        if self._keys[index] == _UNFOLD:
            self._unfold()
            self.showPopup()
            return
        self._now = self._keys[index]
        self.chosen.emit(self._keys[index])

    def _unfold(self) -> None:
        """Offer what is seldom wanted too, from now on, with what was chosen before still chosen."""
        self._is_long = True
        short = [
            pair for pair in zip(self._keys, self._texts, strict=True) if pair not in self._more and pair[0] != _UNFOLD
        ]
        self._show([*short, *self._more], self._now)

    def paintEvent(self, event: QPaintEvent) -> None:
        """As usual, but a text that is too long ends in an ellipsis instead of half a letter."""
        if self._surely_fits():
            super().paintEvent(event)
            return
        from PySide6.QtWidgets import QStyle, QStylePainter

        painter = QStylePainter(self)
        option = self._option()
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        option.currentText = self._elided(option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()

    def _surely_fits(self) -> bool:
        """Whether the text has room beside an arrow and frame far wider than any style's; False says nothing."""
        return self.fontMetrics().horizontalAdvance(self.currentText()) + 2 * self.height() <= self.width()

    def _option(self) -> QStyleOptionComboBox:
        from PySide6.QtWidgets import QStyleOptionComboBox

        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        return option

    def _elided(self, option: QStyleOptionComboBox) -> str:
        from PySide6.QtWidgets import QStyle

        control, part = QStyle.ComplexControl.CC_ComboBox, QStyle.SubControl.SC_ComboBoxEditField
        room = self.style().subControlRect(control, option, part, self).width() - 4
        return self.fontMetrics().elidedText(self.currentText(), Qt.TextElideMode.ElideRight, room)

    def event(self, event: QEvent) -> bool:
        """The whole text at the pointer, where it is cut."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            text, option = self.currentText(), self._option()
            QToolTip.showText(event.globalPos(), text if self._elided(option) != text else self.toolTip(), self)
            return True
        return super().event(event)

    def showPopup(self) -> None:
        """Open the list as wide as its longest text."""
        view = self.view()
        view.setMinimumWidth(min(view.sizeHintForColumn(0) + 28, 480))
        super().showPopup()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel scrolls the panel: a choice is not changed in passing."""
        event.ignore()
