"""The canvas as it was looked at and kept: light, dark and in the evening."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtWidgets import QApplication

from tests.painters import golden


@pytest.mark.parametrize(("name", "actions"), [
    ("canvas-light", ("theme-light",)),
    ("canvas-dark", ("theme-dark", "guides")),
])  # fmt: skip
def test_it_is_as_it_was_when_it_was_looked_at(name, actions, window, tmp_path):
    for action in actions:
        window.actions_by_name[action].trigger()
    # By itself its size is the same on every screen.
    window.canvas.setFixedSize(640, 480)
    QApplication.processEvents()
    window.actions_by_name["fit"].trigger()
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    assert window.canvas.grab().toImage().save(buffer, "PNG")
    buffer.close()
    golden.check(name, bytes(data.data()), tmp_path)
