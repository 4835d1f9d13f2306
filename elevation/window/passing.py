"""From one field of a form to the next: Enter goes on as the tape does, Shift and Enter go back."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QScrollArea, QWidget

ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
"""The two keys that take what was typed."""


def press_focused(key: int) -> bool:
    """Press the button that has the keyboard, where ``key`` is Enter; False where there is nothing to press."""
    focused = QApplication.focusWidget()
    if key not in ENTER or not isinstance(focused, QAbstractButton):
        return False
    focused.click()
    return True


def pass_on(editors: Sequence[QWidget], own: QWidget, *, forward: bool) -> None:
    """Give the keyboard to the editor after (or before) ``own``; at the form's end it stays where it is."""
    at = editors.index(own) + (1 if forward else -1)
    if not 0 <= at < len(editors):
        return
    reason = Qt.FocusReason.TabFocusReason if forward else Qt.FocusReason.BacktabFocusReason
    editors[at].setFocus(reason)
    show_in_area(editors[at])


def show_in_area(editor: QWidget) -> None:
    """Scroll the area around ``editor`` until it is in sight."""
    around = editor.parentWidget()
    while around is not None and not isinstance(around, QScrollArea):
        around = around.parentWidget()
    if around is not None:
        around.ensureWidgetVisible(editor)
