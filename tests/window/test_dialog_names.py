"""Every control of every dialog is named for screen readers, by itself or by the label that leads to it."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QComboBox, QDialog, QHeaderView, QLineEdit, QWidget

from elevation import places
from elevation.window.house import House
from elevation.window.new_room import NewRoom
from elevation.window.same_as import SameAs
from elevation.window.schemes_dialog import Schemes
from elevation.window.sheets_dialog import Sheets
from elevation.window.shelf_dialog import ShelfDialog
from elevation.window.tables_dialog import TablesDialog

DIALOGS = {
    "new room": lambda window, _: NewRoom(window.session.trade, "in", window),
    "schemes": lambda window, _: Schemes(window),
    "sheets": lambda window, _: Sheets(window),
    "tables": lambda window, folder: TablesDialog(folder, window),
    "shelf": lambda window, folder: ShelfDialog(window.session, folder, window),
    "same as": lambda window, _: SameAs(window.session.room, window.session.set_out().treatments[0], window),
    "house": lambda window, _: House(places.demo_rooms(), window),
}
_CONTROLS = (QAbstractButton, QComboBox, QLineEdit, QAbstractItemView)


def controls(dialog: QDialog) -> list[QWidget]:
    """What a person works with; Qt's own parts of it (a combo box's list, a table's heads) have their owner's name."""
    found = [widget for kind in _CONTROLS for widget in dialog.findChildren(kind)]
    inner = (QComboBox, QAbstractItemView)
    return [
        one for one in found
        if not isinstance(one, QHeaderView) and not isinstance(one.parent(), inner)
        and not one.objectName().startswith("qt_") and "QComboBoxPrivateContainer" not in type(one.parent()).__name__
        and one.focusPolicy() != Qt.FocusPolicy.NoFocus
    ]  # fmt: skip


@pytest.mark.parametrize("name", DIALOGS)
def test_every_control_of_a_dialog_has_a_name(name, window, tmp_path):
    dialog = DIALOGS[name](window, tmp_path)
    ours = [one for one in controls(dialog) if one.window() is dialog]
    nameless = []
    for one in ours:
        spoken = QAccessible.queryAccessibleInterface(one)
        if not (spoken and spoken.text(QAccessible.Text.Name)) and not one.accessibleName() and not one.toolTip():
            nameless.append(f"{type(one).__name__} {one.objectName()}")
    assert nameless == []
    assert len(ours) >= 2
    dialog.deleteLater()
