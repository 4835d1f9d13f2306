"""A narrow window keeps the wall and the forms usable: findings move under the forms."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QApplication

from elevation.window.on_screen import resize_on_screen


def lay(window, width: int) -> None:
    # A window manager gives the least width first; what is narrower is asked for again.
    for _ in range(2):
        window.resize(width, 768)
        QApplication.processEvents()


def box(window, part):
    return part.rect().translated(part.mapTo(window, part.rect().topLeft()))


def test_at_700_wide_wall_and_forms_stand_beside_each_other(window):
    lay(window, 700)
    assert window.width() == 700
    left, right, canvas = (box(window, part) for part in (window.left, window.right, window.canvas))
    assert canvas.width() >= 450
    assert canvas.height() >= 600
    assert left.right() < canvas.left()
    assert right.left() == left.left()
    assert left.bottom() < right.top()
    assert min(left.height(), right.height()) >= 240
    for drawer in window.drawers:
        drawer.set_open(True)
        QApplication.processEvents()
        assert drawer.content.width() <= drawer.area.width()
        assert all(other.head.mapTo(window, other.head.rect().bottomLeft()).y() < 768 for other in window.drawers)


def test_widened_again_everything_is_as_it_was(window):
    lay(window, 1366)
    before = [box(window, part) for part in (window.left, window.canvas, window.right)]
    opened = [drawer.is_open for drawer in window.drawers]
    window.measurements.row((window.session.wall_id,), "width").field.setFocus()
    held = QApplication.focusWidget()
    lay(window, 700)
    assert QApplication.focusWidget() is held
    assert sum(drawer.is_open for drawer in window.right.drawers) == 1
    # What is remembered for the next start is the wide window's.
    assert [window.right.states()[drawer.objectName()] for drawer in window.right.drawers] == opened[3:]
    lay(window, 1366)
    assert [box(window, part) for part in (window.left, window.canvas, window.right)] == before
    assert [drawer.is_open for drawer in window.drawers] == opened


@pytest.mark.parametrize("width", [700, 1366])
def test_hidden_sides_leave_their_room_to_the_wall(window, width):
    lay(window, width)
    for name in ("left-side", "right-side"):
        window.actions_by_name[name].trigger()
    QApplication.processEvents()
    assert window.canvas.width() >= width - 4
    window.actions_by_name["right-side"].trigger()
    QApplication.processEvents()
    assert window.right.isVisible()
    assert window.canvas.width() <= width - 240


def test_a_dialog_is_never_larger_than_its_screen(window):
    room = window.screen().availableSize()
    resize_on_screen(window, room.width() + 500, room.height() + 500)
    assert window.width() <= room.width()
    assert window.height() < room.height()
