"""A push button whose words go on over several lines where its column is narrow, instead of being cut off."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QPaintEvent, QPalette
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

PAD_X, PAD_Y = 8, 5
"""Room in px between the words and the button's edges."""


class WrappingButton(QPushButton):
    """A push button that grows in height for its words."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = ""
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def set_words(self, words: str) -> None:
        """Show ``words``, which hold no mnemonic."""
        self.words = words
        self.setText(words.replace("&", "&&"))
        self.setAccessibleName(words)
        self.updateGeometry()

    def hasHeightForWidth(self) -> bool:
        """Its height depends on how many lines its words need."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height in px that the words need at ``width``."""
        lines = self.fontMetrics().boundingRect(
            QRect(0, 0, max(width - 2 * PAD_X, 1), 10_000), int(Qt.TextFlag.TextWordWrap), self.words
        )
        return lines.height() + 2 * PAD_Y

    def sizeHint(self) -> QSize:
        """All words on one line."""
        metrics = self.fontMetrics()
        return QSize(metrics.horizontalAdvance(self.words) + 2 * PAD_X + 2, metrics.height() + 2 * PAD_Y)

    def minimumSizeHint(self) -> QSize:
        """The longest word: a column may be as narrow as that."""
        metrics = self.fontMetrics()
        longest = max((metrics.horizontalAdvance(word) for word in self.words.split()), default=0)
        return QSize(longest + 2 * PAD_X + 2, metrics.height() + 2 * PAD_Y)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The style's button, our words on it."""
        del event
        # A style's enumerations are built when a remedy is first shown, not for the first picture.
        from PySide6.QtWidgets import QStyle, QStyleOptionButton, QStylePainter

        option = QStyleOptionButton()
        self.initStyleOption(option)
        option.text = ""
        painter = QStylePainter(self)
        painter.drawControl(QStyle.ControlElement.CE_PushButton, option)
        painter.setPen(self.palette().color(QPalette.ColorRole.ButtonText))
        place = self.rect().adjusted(PAD_X, PAD_Y, -PAD_X, -PAD_Y)
        flags = Qt.AlignmentFlag.AlignVCenter.value | Qt.AlignmentFlag.AlignLeft.value | Qt.TextFlag.TextWordWrap.value
        painter.drawText(place, flags, self.words)
        painter.end()
