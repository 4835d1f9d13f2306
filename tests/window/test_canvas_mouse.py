"""True mouse work on the canvas: press, move, release, and what the room says afterwards."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

FAMILIES = {
    "1-bedroom.room.json": [
        "rod-height", "rod-left", "rod-right", "bracket", "hem", "lead", "opening-left", "opening-right", "opening-head",
        "opening-sill", "obstacle-x", "obstacle-y", "ceiling", "wall-end",
    ],
    "3-attic.room.json": ["ceiling", "rod-height"],
    "4-flat.room.json": ["floor", "rod-left"],
}  # fmt: skip
CASES = [(room, axis) for room, axes in FAMILIES.items() for axis in axes]


def some(window, axis):
    return next(handle for handle in window.canvas.handles() if handle.axis == axis)


@pytest.mark.parametrize(("name", "axis"), CASES)
def test_every_handle_family_can_be_dragged(make_window, mouse_on, demo_room, name, axis):
    window = make_window(demo_room(name))
    handle = some(window, axis)
    before, edits = window.session.committed, window.session.edits
    # Into the roomier half of its range, far enough to leave where it sticks.
    room = handle.bound(False)
    way = 1 if room.high_mm - room.value_mm > room.value_mm - room.low_mm else -1
    by = way * min(12.5 * 25.4, max(abs(room.high_mm - room.value_mm), abs(room.value_mm - room.low_mm)) * 0.6)
    mouse_on(window).drag(handle, by)
    assert window.session.edits == edits + 1
    assert window.session.committed is not before
    after = window.session.handle(*handle.key)
    # The pointer's pixels and the sticking places leave a little play.
    assert (after.value_mm - handle.value_mm) * way > 0
    assert after.value_mm - handle.value_mm == pytest.approx(by, abs=14 * window.canvas.viewport.mm_per_px)


def test_a_drag_is_one_edit_with_a_name_and_undo_takes_it_back(window, mouse):
    before = window.session.committed
    mouse.drag(some(window, "rod-height"), -50)
    assert window.session.edits == 1
    window.refresher.now()
    undo = window.actions_by_name["undo"]
    assert "rod height" in undo.text().lower()
    undo.trigger()
    assert window.session.committed == before
    window.refresher.now()
    assert window.actions_by_name["redo"].isEnabled()


def test_a_click_without_a_move_changes_nothing(window, mouse):
    handle = some(window, "rod-height")
    mouse.press(*handle.at)
    mouse.release()
    assert window.session.edits == 0


def test_both_ends_move_and_shift_moves_one(window, mouse):
    def ends():
        support = window.session.set_out().treatments[0].layers[0].support
        return support.left_mm, support.right_mm

    left, right = ends()
    mouse.drag(some(window, "rod-right"), 60)
    moved_left, moved_right = ends()
    assert moved_right - right == pytest.approx(left - moved_left)
    assert moved_right > right + 20
    left, right = moved_left, moved_right
    mouse.drag(some(window, "rod-right"), 60, modifier=Qt.KeyboardModifier.ShiftModifier)
    assert ends()[0] == pytest.approx(left)
    assert ends()[1] > right + 20


def test_esc_gives_everything_back(window, mouse):
    before = window.session.committed
    handle = some(window, "rod-height")
    mouse.press(*handle.at)
    mouse.move(handle.at[0], handle.at[1] - 150)
    assert window.session.room != before
    QTest.keyClick(window.canvas, Qt.Key.Key_Escape)
    assert window.session.room is before
    mouse.release()
    assert window.session.committed is before
    assert window.session.edits == 0


def test_typed_figures_during_a_drag_set_the_exact_value(window, mouse):
    handle = some(window, "rod-height")
    mouse.press(*handle.at)
    mouse.move(handle.at[0], handle.at[1] - 40)
    QTest.keyClicks(window.canvas, "4 3/8")
    assert window.canvas.hand.typed == "4 3/8"
    mouse.move(handle.at[0], handle.at[1] - 90)
    QTest.keyClick(window.canvas, Qt.Key.Key_Return)
    mouse.release()
    treatment = window.session.set_out().treatments[0]
    assert window.session.edits == 1
    rod = window.session.committed.walls[0].schemes[0].treatments[0].layers[0].rod
    assert rod.height.at.mm == pytest.approx(4.375 * 25.4)
    assert treatment.clearances.above_casing_mm == pytest.approx(4.375 * 25.4) or rod.height.hold != "above-casing"


def test_half_a_figure_is_not_taken_by_accident(window, mouse):
    before = window.session.committed
    handle = some(window, "rod-height")
    mouse.press(*handle.at)
    mouse.move(handle.at[0], handle.at[1] - 40)
    QTest.keyClicks(window.canvas, "4 3/")
    assert window.canvas.hand.wrong
    mouse.release()
    assert window.session.committed is before


def test_the_handle_does_not_jump_to_the_pointer(window, mouse):
    handle = some(window, "rod-height")
    off = 6 * window.canvas.viewport.mm_per_px
    mouse.press(handle.at[0], handle.at[1] + off)
    mouse.move(handle.at[0], handle.at[1] + off - 60)
    gesture = window.canvas.hand.gesture
    assert gesture is not None
    assert gesture.stuck.value_mm - handle.value_mm == pytest.approx(-60, abs=10 * window.canvas.viewport.mm_per_px)
    mouse.release()


def test_the_wheel_zooms_at_the_pointer(window):
    canvas = window.canvas
    spot = QPointF(300, 220)
    before = canvas.viewport.to_wall(spot.x(), spot.y())
    scale = canvas.viewport.px_per_mm
    event = QWheelEvent(
        spot, canvas.mapToGlobal(spot), QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(canvas, event)
    assert canvas.viewport.px_per_mm > scale
    assert canvas.viewport.to_wall(spot.x(), spot.y()) == pytest.approx(before)


def test_dragging_the_paper_shifts_it_and_fit_brings_it_back(window):
    canvas = window.canvas
    before = canvas.viewport
    start = QPoint(5, 5)
    QTest.mousePress(canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    QTest.mouseMove(canvas, start + QPoint(20, 10))
    QTest.mouseMove(canvas, start + QPoint(40, 30))
    QTest.mouseRelease(canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start + QPoint(40, 30))
    assert canvas.viewport.x - before.x == pytest.approx(40)
    assert canvas.viewport.y - before.y == pytest.approx(30)
    assert window.session.edits == 0
    window.actions_by_name["fit"].trigger()
    assert canvas.viewport.x == pytest.approx(before.x)


def test_the_whole_sheet_fits_the_canvas(make_window, demo_room):
    for name in FAMILIES:
        canvas = make_window(demo_room(name)).canvas
        annotation = canvas.picture._annotated[1]
        left, bottom, right, top = annotation.extent
        unit = canvas.viewport.placing.px_per_paper_mm
        assert canvas.viewport.x + left * unit >= 0
        assert canvas.viewport.x + right * unit <= canvas.width()
        assert canvas.viewport.y - top * unit >= 0
        assert canvas.viewport.y - bottom * unit <= canvas.height()


def test_a_clicked_dimension_opens_its_field(window, mouse):
    from elevation.sheet.records import Dimension

    canvas = window.canvas
    groups = canvas.picture.groups(canvas.viewport, canvas.shown)
    wall = (window.session.wall_id,)
    width = next(
        record for group in groups for record in group.records
        if isinstance(record, Dimension) and record.ref == wall and record.field == "width"
    )  # fmt: skip
    mouse.press(width.text_at[0], width.text_at[1] + canvas.viewport.mm_per_paper)
    mouse.release()
    assert QApplication.focusWidget() is window.measurements.row(wall, "width").field


def test_handles_answer_with_a_cursor_and_a_name(window, mouse):
    handle = some(window, "rod-height")
    QTest.mouseMove(window.canvas, QPointF(*window.canvas.viewport.to_px(handle.at)).toPoint())
    assert window.canvas.hot is not None
    assert window.canvas.hot.key == handle.key
    assert window.canvas.cursor().shape() == Qt.CursorShape.SizeVerCursor


def test_one_pipeline_run_for_each_paint(window, mouse):
    handle = some(window, "rod-height")
    mouse.press(*handle.at)
    mouse.move(handle.at[0], handle.at[1] - 20)
    window.canvas.repaint()
    window.refresher.now()
    calls = window.session.pipeline.set_out.calls
    # Nine moves before the next paint: one run.
    for step in range(1, 10):
        QTest.mouseMove(
            window.canvas, QPointF(*window.canvas.viewport.to_px((handle.at[0], handle.at[1] - 30 - 5 * step))).toPoint()
        )
    drawn = window.session.pipeline.set_out.calls
    window.canvas.repaint()
    window.refresher.now()
    assert window.session.pipeline.set_out.calls - drawn <= 1
    assert window.session.pipeline.set_out.calls - calls <= 2
    mouse.release()
