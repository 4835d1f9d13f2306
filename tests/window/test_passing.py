"""Enter takes a measurement and goes on to the next one, as the tape does; a refused one keeps the keyboard."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from elevation.room.find import wall_of
from elevation.sheet.tape_order import fields
from elevation.window.length_field import FieldRow
from elevation.window.text_field import TextField
from tests.window.conftest import demo


def rows(window) -> list[FieldRow]:
    order = fields(wall_of(window.session.committed, window.session.wall_id))
    return [window.measurements.row(field.ref, field.field) for field in order]


def press(window, *, shift=False) -> None:
    modifier = Qt.KeyboardModifier.ShiftModifier if shift else Qt.KeyboardModifier.NoModifier
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return, modifier)
    window.refresh()


def test_enter_walks_all_measurements_in_tape_order_and_shift_enter_back(window):
    every = [row.field for row in rows(window)]
    every[0].setFocus()
    walked = [QApplication.focusWidget()]
    for _ in every[1:]:
        press(window)
        walked.append(QApplication.focusWidget())
    assert walked == every
    press(window)
    assert QApplication.focusWidget() is every[-1]  # the last one keeps it
    press(window, shift=True)
    assert QApplication.focusWidget() is every[-2]
    assert window.session.undo_label is None  # walking through changes nothing


def test_what_was_typed_is_taken_before_the_next_field_gets_the_keyboard(window):
    width, following = rows(window)[:2]
    width.field.setFocus()
    QTest.keyClicks(width.field, "150")
    press(window)
    assert wall_of(window.session.committed, window.session.wall_id).width.mm == pytest.approx(150 * 25.4)
    assert following.field.hasFocus()
    assert following.field.selectedText() == following.field.text()  # ready to be typed over


@pytest.mark.parametrize("text", ["12 feet and a bit", "1 in"])
def test_what_cannot_be_keeps_the_keyboard(window, text):
    row = rows(window)[0]
    row.field.setFocus()
    QTest.keyClicks(row.field, text)
    press(window)
    assert row.field.hasFocus()
    assert row.error.isVisible()


def test_the_next_field_is_scrolled_into_sight(window):
    every = rows(window)
    every[0].field.setFocus()
    for _ in every[1:]:
        press(window)
    assert not every[-1].field.visibleRegion().isEmpty()


def test_other_forms_go_on_too(window):
    window.drawers[1].set_open(True)
    window.refresh()
    editors = [one for one in window.standing.findChildren(TextField) if one.isVisible() and one.isEnabled()]
    editors[0].setFocus()
    press(window)
    assert not editors[0].hasFocus()
    assert window.standing.isAncestorOf(QApplication.focusWidget())
    press(window, shift=True)
    assert editors[0].hasFocus()


@pytest.mark.parametrize(
    ("name", "by_ceiling", "part"),
    [("3-attic.room.json", True, "Ceiling point"), ("5-kitchen.room.json", False, "past the wall's right end")],
)
def test_a_wall_narrower_than_what_is_on_it_says_how_wide_it_must_be(make_window, name, by_ceiling, part):
    window = make_window(demo(name))
    wall = wall_of(window.session.committed, window.session.wall_id)
    assert wall.width is not None
    row = window.measurements.row((wall.id,), "width")
    row.field.setFocus()
    # Wide enough for every opening that stands from the left, too narrow for the last point or obstacle.
    at = wall.ceiling[-1].x.mm if by_ceiling else max(one.left.mm + one.width.mm for one in wall.obstacles)
    QTest.keyClicks(row.field, f"{at - 2:.1f} mm")
    press(window)
    assert part in row.error.text()
    assert "make the wall at least" in row.error.text()


def test_tab_goes_from_a_heading_into_its_drawer(window):
    window.drawers[0].head.setFocus()
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is window.measurements.thrice
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is rows(window)[0].field
