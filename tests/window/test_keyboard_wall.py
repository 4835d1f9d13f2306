"""One wall entered by keyboard alone, and the same wall written by hand in a file: equal rooms."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from elevation.room.file import load_bytes
from elevation.window.new_room import NewRoom

# "The study's wall is twelve feet long under an eight-foot ceiling. Forty-two inches in stands a window, three feet
# wide and four high, thirty inches off the floor, in three-and-a-half-inch trim." Then, at the desk: the crown is
# four inches high, the baseboard five and a quarter, and the glass starts two inches in from the jambs.
BY_HAND = """{
  "format": "elevation-room",
  "version": 1,
  "name": "Study",
  "walls": [{
    "id": "wall-1",
    "width": "12 ft",
    "ceiling": [{"x": "0 in", "height": "8 ft"}],
    "crown": "4 in",
    "baseboard": "5 1/4 in",
    "openings": [
      {"id": "w1", "width": "36 in", "height": "48 in", "left": "42 in", "sill": "30 in", "casing": "3 1/2 in",
       "frame": "2 in"}
    ]
  }]
}"""


def measured(room):
    """The room without schemes, names of things and the way its lengths are written."""
    wall = room.walls[0]
    opening = wall.openings[0]
    lengths = {
        "width": wall.width, "ceiling": wall.ceiling[0].height, "crown": wall.crown, "baseboard": wall.baseboard,
        "left": opening.left, "opening": opening.width, "height": opening.height, "sill": opening.sill,
        "casing": opening.casing, "frame": opening.frame,
    }  # fmt: skip
    return room.name, room.unit, {key: round(length.mm, 6) for key, length in lengths.items()}


def test_a_wall_by_keyboard_alone_is_the_wall_by_hand(window, trade, qtbot):
    dialog = NewRoom(trade, "in", window)
    qtbot.addWidget(dialog)
    with qtbot.waitExposed(dialog):
        dialog.show()
    dialog.name.setFocus()
    QTest.keyClicks(dialog.name, "Study")
    QTest.keyClick(dialog.name, Qt.Key.Key_Tab)
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)  # past the unit
    for text in ("12'", "8 ft", "42", "36", "30", "48", "3 1/2"):
        field = QApplication.focusWidget()
        QTest.keyClicks(field, text)
        QTest.keyClick(field, Qt.Key.Key_Tab)
    dialog.make()
    assert dialog.room is not None, dialog.error.text()
    window.commands.begin(dialog.room)
    window.refresher.now()
    with qtbot.waitActive(window):
        window.activateWindow()

    # Tab goes down the form; every field says its name.
    wanted = {"crown": "4", "baseboard": "5 1/4", "frame": "2"}
    window.measurements.row((window.session.wall_id,), "width").field.setFocus()
    for _ in range(60):
        field = QApplication.focusWidget()
        key = field.objectName().rsplit("-", 1)[-1]
        if field.objectName().startswith("tape-") and key in wanted:
            QTest.keyClicks(field, wanted.pop(key))
        QTest.keyClick(field, Qt.Key.Key_Tab)
        if not wanted:
            break
    assert wanted == {}
    assert measured(window.session.committed) == measured(load_bytes(BY_HAND.encode(), "by hand"))


def test_the_whole_menu_can_be_walked_by_keyboard(window):
    for bar in window.menuBar().actions():
        assert bar.menu() is not None
        for action in bar.menu().actions():
            if not action.isSeparator() and action.menu() is None:
                assert "&" in action.text(), action.text()


def test_another_figure_is_held_from_the_handles_menu(window):
    canvas = window.canvas
    handle = next(handle for handle in canvas.handles() if handle.axis == "rod-height")
    before = window.session.set_out().treatments[0].layers[0].support.height_mm
    canvas.menu.open(handle, canvas.mapToGlobal(canvas.rect().center()))
    menu = canvas.menu.menu
    held = [action.data() for action in menu.actions() if action.isChecked()]
    assert held == ["above-casing"]
    next(action for action in menu.actions() if action.data() == "below-ceiling").trigger()
    menu.close()
    rod = window.session.committed.walls[0].schemes[0].treatments[0].layers[0].rod
    assert rod.height.hold == "below-ceiling"
    after = window.session.set_out().treatments[0].layers[0].support.height_mm
    assert abs(after - before) <= 25.4 / 32


def test_a_figure_can_be_typed_from_the_handles_menu(window):
    canvas = window.canvas
    handle = next(handle for handle in canvas.handles() if handle.axis == "rod-height")
    canvas.menu.open(handle, canvas.mapToGlobal(canvas.rect().center()))
    menu = canvas.menu.menu
    next(action for action in menu.actions() if action.data() == "type").trigger()
    menu.close()
    QTest.keyClicks(canvas, "4 1/2")
    QTest.keyClick(canvas, Qt.Key.Key_Return)
    after = window.session.handle(*handle.key)
    assert abs(after.shown_mm(after.value_mm) - 4.5 * 25.4) < 1e-6
