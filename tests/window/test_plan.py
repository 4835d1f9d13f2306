"""The plan under the elevation: in line with it, live in the same frame, nothing while hidden, its own handles."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

LAYER = ("middle", "s1", "t1", "l1")


@pytest.fixture
def window(make_window, demo_room):
    made = make_window(demo_room("9-bay.room.json"))
    made.session.switch_wall("middle")
    made.actions_by_name["plan"].trigger()
    QApplication.processEvents()
    return made


def plan(window):
    return window.under.canvas


def walls(window):
    return {wall.id: wall for wall in window.session.committed.walls}


def test_places_along_the_wall_stand_in_line_with_the_elevation(window):
    canvas, under = window.canvas, plan(window)
    for x in (0.0, 1000.0, 2336.8):
        here = canvas.mapToGlobal(QPoint(0, 0)).x() + canvas.viewport.to_px((x, 0.0))[0]
        there = under.mapToGlobal(QPoint(0, 0)).x() + under.viewport.to_px((x, 0.0))[0]
        assert here == pytest.approx(there)
    canvas.zoom(1.4)
    assert under.viewport.px_per_mm == canvas.viewport.px_per_mm
    canvas.shift(25.0, 0.0)
    assert under.viewport.x == pytest.approx(canvas.viewport.x)


def test_what_stands_out_is_drawn_lower(window):
    viewport = plan(window).viewport
    assert viewport.to_px((0.0, 100.0))[1] > viewport.to_px((0.0, 0.0))[1]
    assert viewport.to_wall(*viewport.to_px((300.0, 88.9))) == (pytest.approx(300.0), pytest.approx(88.9))


def test_the_projection_is_dragged_downwards_and_all_legs_follow(window, drag):
    canvas = plan(window)
    end = drag(canvas, "projection", 0, 14)
    QTest.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=end)
    # It is held where the treatment begins: on the left wall.
    held = walls(window)["left"].schemes[0].treatments[0].layers[0].rod.projection
    assert held.mm > 88.9
    out = window.session.set_out().treatments[0].layers[0].support
    assert out.projection_mm == pytest.approx(held.mm)
    window.session.undo()
    assert walls(window)["left"].schemes[0].treatments[0].layers[0].rod.projection.text == "3 1/2 in"


def test_a_corner_is_dragged_and_both_walls_say_the_same(window, drag):
    canvas = plan(window)
    end = drag(canvas, "corner-right", -12, 0)
    QTest.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=end)
    angle = walls(window)["middle"].right.angle
    assert angle < 135.0
    assert walls(window)["right"].left.angle == angle


def test_a_drag_draws_one_treatment_and_not_the_walls_again(window, drag):
    canvas = plan(window)
    canvas.repaint()
    known = dict(canvas.plan.kept._known)
    end = drag(canvas, "lead", 6, 0)
    assert canvas.plan.kept._known["ground"] is known["ground"]
    QTest.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=end)


def test_nothing_is_worked_out_while_it_is_hidden(window):
    canvas = plan(window)
    window.actions_by_name["plan"].trigger()
    drawn = canvas.plan.kept.drawn
    window.session.nudge(window.session.handle("rod-height", LAYER), 4)
    QApplication.processEvents()
    assert canvas.plan.kept.drawn == drawn


def test_a_bay_deeper_than_the_strip_is_drawn_smaller_and_all_of_it_is_seen(window):
    window.session.switch_wall("left")
    QApplication.processEvents()
    canvas, under = window.canvas, plan(window)
    window.under.setSizes([window.under.height() - 110, 110])
    QApplication.processEvents()
    scale = under.viewport.px_per_mm
    assert scale < canvas.viewport.px_per_mm
    left, bottom, right, top = under.plan.extent(under.viewport.mm_per_paper)
    for x, y in ((left, top), (right, bottom)):
        at = under.viewport.x + x * scale, under.viewport.y - y * scale
        assert -1 <= at[0] <= under.width() + 1
        assert -1 <= at[1] <= under.height() + 1
    # Zoomed, the plan is zoomed with it and stays under its wall; whole again, it is seen whole.
    canvas.zoom(2.0)
    assert under.viewport.px_per_mm == pytest.approx(2 * scale)
    canvas.fit()
    assert under.viewport.px_per_mm == pytest.approx(scale, rel=0.02)


def test_the_strip_of_a_bay_is_made_higher_when_it_is_first_shown(make_window, demo_room):
    heights = []
    for room in ("9-bay.room.json", "1-bedroom.room.json"):
        made = make_window(demo_room(room))
        made.actions_by_name["plan"].trigger()
        QApplication.processEvents()
        heights.append(made.under.canvas.height())
        assert made.under.canvas.height() < made.under.height() / 3
    assert heights[0] > heights[1] + 20


# --- unfolded ------------------------------------------------------------------------------------------------------------


@pytest.fixture
def flat(make_window, demo_room):
    made = make_window(demo_room("9-bay.room.json"))
    made.session.switch_wall("middle")
    made.actions_by_name["unfolded"].trigger()
    QApplication.processEvents()
    return made


def drawn(window):
    return {(group.layer, group.ref): group for group in window.canvas.picture._last}


def test_the_walls_round_the_corners_stand_beside_the_one_shown(flat):
    canvas = flat.canvas
    rods = {ref[0] for layer, ref in drawn(flat) if layer == "rod"}
    assert rods == {"left", "middle", "right"}
    # All of the row is in sight: 50 in to the left of the wall shown, 142 in to the right of its left end.
    assert canvas.viewport.to_px((-50 * 25.4, 0.0))[0] > 0
    assert canvas.viewport.to_px((142 * 25.4, 0.0))[0] < canvas.width()


def test_one_rod_raised_raises_all_of_its_legs_in_the_same_frame(flat):
    before = drawn(flat)
    flat.session.nudge(flat.session.handle("rod-height", LAYER), 8)
    QApplication.processEvents()
    now = drawn(flat)
    rods = [key for key in now if key[0] == "rod"]
    assert len(rods) == 3
    assert all(now[key] is not before[key] for key in rods)
    # What did not move is not drawn again.
    walls = [key for key in now if key[0] == "wall"]
    assert all(now[key] is before[key] for key in walls)


def test_folded_again_it_is_one_wall_with_its_dimensions(flat):
    flat.actions_by_name["unfolded"].trigger()
    QApplication.processEvents()
    assert {ref[0] for layer, ref in drawn(flat) if layer == "rod"} == {"middle"}
    assert any(layer == "dimension" for layer, _ in drawn(flat))
