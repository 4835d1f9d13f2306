"""The keyboard on the canvas."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from elevation.window.picking import reading_order


def on(window, axis):
    """Tab until the keyboard is on a handle of that axis."""
    canvas = window.canvas
    canvas.setFocus(Qt.FocusReason.TabFocusReason)
    for _ in range(len(canvas.handles()) + 1):
        handle = canvas.keys.current()
        if handle is not None and handle.axis == axis:
            return handle
        QTest.keyClick(canvas, Qt.Key.Key_Tab)
    raise AssertionError(axis)


def test_tab_goes_through_every_handle_in_reading_order_and_then_on(window):
    canvas = window.canvas
    window.switchers.wall.setFocus()
    canvas.setFocus(Qt.FocusReason.TabFocusReason)
    order = [handle.key for handle in reading_order(canvas.handles())]
    visited = []
    while canvas.hasFocus() and len(visited) <= len(order):
        current = canvas.keys.current()
        assert current is not None
        visited.append(current.key)
        QTest.keyClick(canvas, Qt.Key.Key_Tab)
    assert visited == order
    assert not canvas.hasFocus()


def test_backtab_goes_the_other_way(window):
    canvas = window.canvas
    window.switchers.wall.setFocus()
    canvas.setFocus(Qt.FocusReason.BacktabFocusReason)
    order = [handle.key for handle in reading_order(canvas.handles())]
    assert canvas.keys.current().key == order[-1]
    QTest.keyClick(canvas, Qt.Key.Key_Backtab)
    assert canvas.keys.current().key == order[-2]


def test_reading_order_is_what_hangs_and_then_the_wall_each_from_the_top_and_from_the_left(window):
    handles = reading_order(window.canvas.handles())
    # A treatment is named by its wall, its scheme and itself.
    hung = [len(handle.ref) >= 3 for handle in handles]
    assert hung[0]
    assert not hung[-1]
    assert hung == sorted(hung, reverse=True)
    for one, other in pairwise(handles):
        if (len(one.ref) >= 3) != (len(other.ref) >= 3):
            continue
        assert other.at[1] <= one.at[1] + 50
        if abs(one.at[1] - other.at[1]) < 1:
            assert one.at[0] <= other.at[0]


@pytest.mark.parametrize(
    ("key", "modifier", "marks"),
    [
        (Qt.Key.Key_Down, Qt.KeyboardModifier.NoModifier, -1),
        (Qt.Key.Key_Up, Qt.KeyboardModifier.NoModifier, 1),
        (Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier, -10),
    ],
)
def test_arrows_move_a_handle_by_marks_of_the_tape(window, key, modifier, marks):
    handle = on(window, "rod-height")
    QTest.keyClick(window.canvas, key, modifier)
    after = window.session.handle(*handle.key)
    # The room's tape is read to 1/16 in (the file names no other).
    assert after.value_mm - handle.value_mm == pytest.approx(marks * 25.4 / 16)


def test_arrows_across_the_axis_do_nothing(window):
    on(window, "rod-height")
    QTest.keyClick(window.canvas, Qt.Key.Key_Left)
    assert window.session.edits == 0


def test_a_burst_of_arrows_is_one_edit(window):
    on(window, "rod-height")
    for _ in range(5):
        QTest.keyClick(window.canvas, Qt.Key.Key_Down)
    assert window.session.edits == 1


def test_a_figure_sets_the_keyboards_handle(window):
    handle = on(window, "rod-height")
    QTest.keyClicks(window.canvas, "5 1/4")
    assert window.canvas.hand.is_holding
    QTest.keyClick(window.canvas, Qt.Key.Key_Return)
    after = window.session.handle(*handle.key)
    assert after.shown_mm(after.value_mm) == pytest.approx(5.25 * 25.4)
    assert window.session.edits == 1


def test_backspace_takes_a_figure_back_and_esc_all_of_it(window):
    before = window.session.committed
    on(window, "rod-height")
    QTest.keyClicks(window.canvas, "51")
    QTest.keyClick(window.canvas, Qt.Key.Key_Backspace)
    assert window.canvas.hand.typed == "5"
    QTest.keyClick(window.canvas, Qt.Key.Key_Escape)
    assert not window.canvas.hand.is_holding
    assert window.session.committed is before


def test_a_wrong_figure_is_not_taken_by_enter(window):
    on(window, "rod-height")
    QTest.keyClicks(window.canvas, "5 1/0")
    QTest.keyClick(window.canvas, Qt.Key.Key_Return)
    assert window.canvas.hand.is_holding
    assert window.canvas.hand.wrong
    QTest.keyClick(window.canvas, Qt.Key.Key_Escape)
    assert window.session.edits == 0


def test_leaving_the_canvas_drops_a_half_typed_figure(window):
    before = window.session.committed
    on(window, "rod-height")
    QTest.keyClicks(window.canvas, "4")
    window.measurements.row((window.session.wall_id,), "width").field.setFocus()
    assert window.session.committed is before
    assert not window.canvas.hand.is_holding


def test_f6_goes_round_the_window(window):
    window.canvas.setFocus()
    seen = []
    for _ in range(3):
        window.actions_by_name["next-pane"].trigger()
        focus = window.focusWidget()
        seen.append("canvas" if focus is window.canvas else "left" if window.left.isAncestorOf(focus) else "right")
    assert seen == ["right", "left", "canvas"]
