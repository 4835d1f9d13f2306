"""Findings in the window: shown by weight, pointed out, tried and applied."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from elevation.findings.model import Weight
from elevation.room.edits import replace_rod
from elevation.room.model import Held
from elevation.units import Length
from tests.window.conftest import demo


@pytest.fixture
def low(window):
    """The window with its rod an inch over the casing: the 3 in of the trade are broken."""
    ref = window.hang.layer_ref
    room = replace_rod(window.session.committed, ref, height=Held("above-casing", Length(25.4, "1 in")))
    from elevation.words import msg

    window.session.commit(room, msg("Lower the rod"), ref)
    window.refresher.now()
    return window


def row_of(window, rule):
    return next(row for row in window.findings.rows if row.finding is not None and row.finding.rule == rule)


def test_a_finding_is_told_by_shape_word_and_number(low):
    row = row_of(low, "rod-low")
    assert row.mark.weight == Weight.BROKEN
    number, word = row.head.text().split()
    assert int(number) == [finding.rule for finding in low.session.findings()].index("rod-low") + 1
    assert word == "Broken"
    assert "3 in" in row.text.text()
    assert row.authority.text()
    assert row.text.text() in row.head.accessibleName()


def test_the_heaviest_come_first(low):
    order = [Weight.STOP, Weight.BROKEN, Weight.CONSIDER]
    weights = [row.finding.weight for row in low.findings.rows if row.finding is not None]
    assert weights == sorted(weights, key=order.index)


def test_opening_a_finding_works_its_remedies_out_and_one_click_applies_one(low):
    row = row_of(low, "rod-low")
    assert row.buttons == []
    row.head.click()
    assert row.buttons
    before = low.session.committed
    row.buttons[0].click()
    assert low.session.committed is not before
    assert "rod-low" not in {finding.rule for finding in low.session.findings()}
    low.session.undo()
    assert low.session.committed is before


def test_hovering_a_remedy_shows_it_on_the_wall_and_changes_nothing(low):
    row = row_of(low, "rod-low")
    row.head.click()
    shown = low.canvas.grab().toImage()
    before = low.session.committed
    QTest.qWait(0)
    button = row.buttons[0]
    button.setFocus()
    assert low.canvas._preview is not None
    assert low.canvas.grab().toImage() != shown
    assert low.session.committed is before
    low.canvas.setFocus()
    assert low.canvas._preview is None


def test_hovering_a_finding_rings_it(low):
    row = row_of(low, "rod-low")
    row.entered.emit(row.finding)
    assert low.canvas.pointed is row.finding
    row.entered.emit(None)
    assert low.canvas.pointed is None


def test_clicking_a_mark_on_the_wall_opens_its_finding(low, mouse_on):
    finding = low.session.findings()[0]
    low.canvas.finding_clicked.emit(finding)
    row = next(row for row in low.findings.rows if row.finding is finding)
    assert row.head.isChecked()


def test_remedies_are_never_worked_out_during_a_drag(low, mouse_on, monkeypatch):
    row_of(low, "rod-low").head.click()
    asked = []
    monkeypatch.setattr("elevation.planning.remedies.remedies", lambda *args: asked.append(args))
    handle = next(handle for handle in low.canvas.handles() if handle.axis == "rod-height")
    hand = mouse_on(low)
    hand.press(*handle.at)
    hand.move(handle.at[0], handle.at[1] + 5)
    QTest.qWait(400)
    assert asked == []
    QTest.keyClick(low.canvas, Qt.Key.Key_Escape)
    hand.release()


def test_nothing_found_is_said(window):
    rules = {finding.rule for finding in window.session.findings()}
    assert window.findings._none.isVisible() == (not rules)


def test_the_ring_goes_with_its_finding(low):
    row = row_of(low, "rod-low")
    row.entered.emit(row.finding)
    assert low.canvas._pointed_spot() == row.finding.at
    low.session.undo()
    assert low.canvas._pointed_spot() is None


def test_enter_opens_a_finding_and_tab_comes_to_its_remedies(low):
    """Without a mouse: Enter on the finding, Tab to the first remedy, Enter again."""
    row = row_of(low, "rod-low")
    row.head.setFocus()
    QTest.keyClick(row.head, Qt.Key.Key_Return)
    assert row.head.isChecked()
    QTest.keyClick(row.head, Qt.Key.Key_Tab)
    assert low.focusWidget() is row.buttons[0]
    QTest.keyClick(row.buttons[0], Qt.Key.Key_Return)
    assert "rod-low" not in {finding.rule for finding in low.session.findings()}


def test_a_remedy_goes_on_over_several_lines_where_its_column_is_narrow(low):
    row = row_of(low, "rod-low")
    row.head.click()
    button = row.buttons[0]
    one_line = button.heightForWidth(button.sizeHint().width())
    assert button.heightForWidth(button.minimumSizeHint().width()) >= 3 * one_line - 4 * 10
    assert button.minimumSizeHint().width() < button.sizeHint().width() / 2


def test_escape_puts_a_notice_away(window):
    window.commands.say_keys()
    assert window.notice.isVisible()
    window.canvas.setFocus()
    QTest.keyClick(window.canvas, Qt.Key.Key_Escape)
    assert not window.notice.isVisible()


def test_what_is_not_known_stands_under_what_was_found_and_leads_to_its_field(make_window):
    window = make_window(demo("6-hall.room.json"))
    unknown = window.findings.unknown
    (button,) = [button for button in unknown.buttons if not button.isHidden()]
    assert "fixed with is not chosen" in button.words
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    row = window.hang.form.rows[(*window.hang.layer_ref, "b1"), "fixing"]
    assert row.editor.hasFocus()
    assert window.drawers[2].is_open


@pytest.mark.parametrize("field", ["width", "ceiling", "crown", "substrate", "left", "casing", "reveal"])
def test_every_measure_that_is_not_known_has_its_field(window, field):
    """The facts of wall and opening; those of rods, packets, brackets and panels are rows of the form of what hangs."""
    wall = window.session.committed.walls[0]
    ref = (wall.id, wall.openings[0].id) if field in ("left", "casing", "reveal") else (wall.id,)
    window.show_field(ref, field)
    focused = QApplication.focusWidget()
    assert focused is not None
    assert window.left.isAncestorOf(focused)
    name = focused.accessibleName().lower()
    words = {
        "width": "left end to right", "left": "left end of the wall", "ceiling": "floor to ceiling", "crown": "crown",
        "casing": "width of its casing", "reveal": "reveal", "substrate": "made of",
    }  # fmt: skip
    assert words[field] in name


def test_nothing_stands_in_the_way_is_said_only_where_all_is_known(make_window):
    flat, rented = make_window(demo("4-flat.room.json")), make_window(demo("8-rented-room.room.json"))
    assert flat.findings._none.text() == "Nothing of what is known stands in the way."
    assert rented.findings._none.text() == "Nothing stands in the way."
    assert rented.findings.unknown.isHidden()


def test_who_says_so_stands_once_over_a_row_of_windows(make_window):
    room = demo("6-hall.room.json")
    for treatment in room.walls[0].schemes[0].treatments:
        ref = (room.walls[0].id, room.walls[0].schemes[0].id, treatment.id, treatment.layers[0].id)
        room = replace_rod(room, ref, height=Held("above-casing", Length(30.0, "30 mm")))
    window = make_window(room)
    rows = [row for row in window.findings.rows if row.finding is not None and row.finding.rule == "on-casing"]
    assert len(rows) == 4
    assert [not row.authority.isHidden() for row in rows] == [True, False, False, False]
    assert ["1978" in row.text.text() for row in rows] == [True, False, False, False]
    # Who cannot see hears each whole.
    assert all("1978" in row.head.accessibleName() for row in rows)
