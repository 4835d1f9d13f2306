"""A check box whose text goes on in the next line where it is longer than the panel is wide."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QCheckBox, QSizePolicy, QWidget

from elevation.window.theme import is_stark

if TYPE_CHECKING:
    from PySide6.QtWidgets import QStyleOptionButton

# Qt's wrapper builds all enumerations of a style when the class is first named, which a text of one line never needs:
# the first picture is there sooner without them.

_USUAL_PX = 200
"""Width that the text is broken at before the layout has said how wide it is."""


class Flag(QCheckBox):
    """A check box with wrapped text: Qt's own pushes the panel wider than its column and fields out of sight."""

    def __init__(self, text: str, parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _fits(self, width: int) -> bool:
        """Whether the text stands in one line at that width, which Qt paints itself."""
        return super().sizeHint().width() <= width

    def _option(self) -> QStyleOptionButton:
        from PySide6.QtWidgets import QStyleOptionButton

        option = QStyleOptionButton()
        self.initStyleOption(option)
        return option

    def _indicator(self, option: QStyleOptionButton) -> QRect:
        from PySide6.QtWidgets import QStyle

        return self.style().subElementRect(QStyle.SubElement.SE_CheckBoxIndicator, option, self)

    def _text_box(self, option: QStyleOptionButton, width: int) -> QRect:
        """Where the text stands in a box of that width, its height that of all its lines."""
        left = self._indicator(option).right() + 8
        space = QRect(0, 0, max(width - left, 20), 10_000)
        tall = self.fontMetrics().boundingRect(space, int(Qt.TextFlag.TextWordWrap), self.text()).height()
        return QRect(left, 0, space.width(), tall)

    def hasHeightForWidth(self) -> bool:
        """The text is as high as its lines."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height of all lines at that width."""
        lines = self.fontMetrics().height() if self._fits(width) else self._text_box(self._option(), width).height()
        return max(lines + 6, super().sizeHint().height())

    def sizeHint(self) -> QSize:
        """One column wide."""
        return QSize(_USUAL_PX, self.heightForWidth(max(self.width(), _USUAL_PX)))

    def minimumSizeHint(self) -> QSize:
        """Narrower than its text."""
        return QSize(80, super().minimumSizeHint().height())

    def hitButton(self, pos: QPoint) -> bool:
        """The text can be clicked in every line."""
        return self.rect().contains(pos)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The box beside the first line, then the text in its lines."""
        if self._fits(self.width()):
            super().paintEvent(event)
            if is_stark(self.palette()):
                option = self._option()
                self._frame(QPainter(self), self._indicator(option))
            return
        from PySide6.QtWidgets import QStyle, QStyleOptionFocusRect, QStylePainter

        painter = QStylePainter(self)
        option = self._option()
        text = self._text_box(option, self.width())
        line = self.fontMetrics().height()
        top = max((self.height() - text.height()) // 2, 0)
        indicator = self._indicator(option)
        indicator.moveTop(top + (line - indicator.height()) // 2)
        option.rect = indicator
        painter.drawPrimitive(QStyle.PrimitiveElement.PE_IndicatorCheckBox, option)
        if is_stark(self.palette()):
            self._frame(painter, indicator)
        text.moveTop(top)
        flags = int(Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap)
        if not self.style().styleHint(QStyle.StyleHint.SH_UnderlineShortcut, option, self):
            flags |= int(Qt.TextFlag.TextHideMnemonic)
        role = QPalette.ColorRole.WindowText
        painter.drawItemText(text, flags, self.palette(), self.isEnabled(), self.text(), role)
        if self.hasFocus():
            focus = QStyleOptionFocusRect()
            focus.initFrom(self)
            focus.rect = text.adjusted(-3, -1, 0, 1)
            painter.drawPrimitive(QStyle.PrimitiveElement.PE_FrameFocusRect, focus)
        painter.end()

    def _frame(self, painter: QPainter, box: QRect) -> None:
        """The box in ink: the style darkens the ground for it, which black and white have no room for."""
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        painter.drawRect(box.adjusted(0, 0, -1, -1))
