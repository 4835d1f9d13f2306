"""The window's three parts: forms, wall, findings; in a narrow window findings move under the forms."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QApplication, QSplitter, QWidget

from elevation.window.drawer import Side

SIDE_WIDTH = 276
LEAST_SIDE = 240
NARROW_PX = 880
"""Below this width two sides would leave the wall less room than either of them."""
LEAST_WIDTH = LEAST_SIDE + 330
"""The narrowest window: one side, and the wall at its least."""
_FORM_SHARE = 0.64
"""How much of the height the forms keep where findings stand under them."""


class Panes(QSplitter):
    """Side, wall and side beside each other; narrow: one side over the other, then the wall.

    Parameters
    ----------
    left : Side
        The forms.
    middle : QWidget
        The wall.
    right : Side
        What comes of it. Under the forms only one of its drawers is open at a time.
    """

    def __init__(self, left: Side, middle: QWidget, right: Side) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self._left, self._right = left, right
        self._wide_sizes = [0, SIDE_WIDTH, 1366 - 2 * SIDE_WIDTH, SIDE_WIDTH]
        self.is_narrow = False
        self.column = QSplitter(Qt.Orientation.Vertical, self)
        for part in (left, middle, right):
            self.addWidget(part)
        for splitter in (self, self.column):
            splitter.setHandleWidth(1)
            splitter.setChildrenCollapsible(False)
        self.setStretchFactor(self.indexOf(middle), 1)
        for side in (left, right):
            side.setMinimumWidth(LEAST_SIDE)
            side.installEventFilter(self)
        self.column.hide()
        # Else the handle before the forms keeps its pixel until the window is shown, and everything is laid twice.
        self.handle(self.indexOf(left)).hide()
        self.setSizes(self._wide_sizes)
        self.splitterMoved.connect(self._remember)

    def settle(self, width: int) -> None:
        """Lay the parts for a window ``width`` pixels wide."""
        if (width < NARROW_PX) == self.is_narrow:
            return
        self.is_narrow = not self.is_narrow
        focused = QApplication.focusWidget()
        is_inside = focused is not None and (self._left.isAncestorOf(focused) or self._right.isAncestorOf(focused))
        if self.is_narrow:
            self._right.be_single()
            height = max(self.height(), 1)
            self._move(self._left, self.column, 0)
            self._move(self._right, self.column, 1)
            self._show_column()
            self.setSizes([LEAST_SIDE, max(width - LEAST_SIDE, 1)])
            # Only a splitter that has its height shares it as told.
            self.column.resize(LEAST_SIDE, height)
            self.column.setSizes([round(height * _FORM_SHARE), round(height * (1 - _FORM_SHARE))])
        else:
            self._right.be_plural()
            self._move(self._left, self, 1)
            self._move(self._right, self, 3)
            self.column.hide()
            # Only a splitter that has its width shares it as told.
            self.resize(width, self.height())
            self.setSizes(self._shared(width))
        if is_inside and focused is not None:
            # Another parent takes the keyboard away.
            focused.setFocus(Qt.FocusReason.OtherFocusReason)

    def _remember(self) -> None:
        # As a hand left them: a window that is just getting narrow squeezes the sides first.
        sizes = self.sizes()
        if not self.is_narrow and len(sizes) == 4 and min(sizes[1:]) > 0:
            self._wide_sizes = sizes

    def _shared(self, width: int) -> list[int]:
        sides = [self._wide_sizes[1], self._wide_sizes[3]]
        return [0, sides[0], max(width - sum(sides) - 2 * self.handleWidth(), 1), sides[1]]

    def _move(self, side: Side, splitter: QSplitter, at: int) -> None:
        # Another parent hides what it gets.
        is_hidden = side.isHidden()
        splitter.insertWidget(at, side)
        side.setHidden(is_hidden)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A side was hidden or shown: an empty column leaves its room to the wall."""
        if event.type() in (QEvent.Type.HideToParent, QEvent.Type.ShowToParent):
            self._show_column()
        return super().eventFilter(watched, event)

    def _show_column(self) -> None:
        if self.is_narrow:
            self.column.setVisible(not (self._left.isHidden() and self._right.isHidden()))

    @property
    def form_width(self) -> int:
        """Width that the forms have beside the wall, or will have once the window is shown."""
        return self._wide_sizes[1]

    def widths(self) -> list[int]:
        """Widths of forms, wall and findings worth remembering for the next start; none while a part is hidden."""
        sizes = self._wide_sizes if self.is_narrow else self.sizes()
        return sizes[1:] if len(sizes) == 4 and min(sizes[1:]) > 0 else []

    def set_widths(self, widths: list[int]) -> None:
        """Widths of forms, wall and findings, as they were remembered."""
        if len(widths) == 3 and min(widths) > 0:
            self._wide_sizes = [0, *widths]
            if not self.is_narrow:
                self.setSizes(self._wide_sizes)
