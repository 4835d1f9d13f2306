"""The section beside the elevation: level with it, live in the same frame, nothing while hidden, its own handles."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from elevation.sheet.records import Dimension

INCH = 25.4
LAYER = ("north", "s1", "t1", "l1")


@pytest.fixture
def window(make_window, demo_room):
    made = make_window(demo_room("1-bedroom.room.json"))
    made.actions_by_name["section"].trigger()
    QApplication.processEvents()
    return made


def section(window):
    return window.beside.canvas


def held(window):
    return window.session.committed.walls[0].schemes[0].treatments[0].layers[0]


def test_heights_stand_level_with_the_elevation(window):
    canvas, beside = window.canvas, section(window)
    for height in (0.0, 1000.0, 2438.4):
        here = canvas.mapToGlobal(QPoint(0, 0)).y() + canvas.viewport.to_px((0.0, height))[1]
        there = beside.mapToGlobal(QPoint(0, 0)).y() + beside.viewport.to_px((0.0, height))[1]
        assert here == pytest.approx(there)
    canvas.zoom(1.4)
    assert beside.viewport.px_per_mm == canvas.viewport.px_per_mm
    canvas.shift(0.0, 25.0)
    assert beside.viewport.y == pytest.approx(canvas.viewport.y)


def test_nothing_is_worked_out_while_it_is_hidden(window):
    beside = section(window)
    window.actions_by_name["section"].trigger()
    made, drawn = beside.section.made, beside.section.kept.drawn
    window.session.nudge(window.session.handle("rod-height", LAYER), 4)
    window.canvas.zoom(1.2)
    QApplication.processEvents()
    assert not beside.isVisible()
    assert (beside.section.made, beside.section.kept.drawn) == (made, drawn)


@pytest.mark.parametrize(
    ("axis", "dx", "dy", "read"),
    [
        ("projection", 14, 0, lambda layer: layer.rod.projection.mm),
        ("rod-height", 0, 14, lambda layer: layer.rod.height.at.mm),
        ("hem", 0, -12, lambda layer: layer.rod.height.at.mm),  # a panel in hand: its hem pulls the rod
    ],
)
def test_its_handles_edit_the_room_through_gestures(window, axis, dx, dy, read, drag):
    before, beside = read(held(window)), section(window)
    at = drag(beside, axis, dx, dy)
    assert window.session.gesture is not None
    assert window.session.edits == 0
    QTest.mouseRelease(beside, Qt.MouseButton.LeftButton, pos=at)
    assert read(held(window)) != before
    assert window.session.edits == 1
    window.session.undo()
    assert read(held(window)) == before


def test_escape_gives_the_projection_back(window, drag):
    beside = section(window)
    before = held(window)
    at = drag(beside, "projection", 20, 0)
    QTest.keyClick(beside, Qt.Key.Key_Escape)
    QTest.mouseRelease(beside, Qt.MouseButton.LeftButton, pos=at)
    assert held(window) is before


def test_a_drag_on_the_elevation_moves_the_section_in_the_same_frame(window, drag):
    beside = section(window)

    def rod_line():
        groups = beside.picture.groups(beside.viewport, beside.shown)
        return {
            record.b[1]
            for group in groups
            for record in group.records
            if isinstance(record, Dimension) and record.field == "rod.height"
        }

    before, standing = rod_line(), beside.section.kept.drawn
    drag(window.canvas, "rod-height", 0, 12)
    set_outs = window.session.pipeline.set_out.calls
    assert rod_line() != before
    # The section asks for what the elevation has worked out already, and draws the wall no second time.
    assert window.session.pipeline.set_out.calls == set_outs
    assert beside.section.kept.drawn - standing <= 4
    window.canvas.hand.cancel()


def test_the_keyboard_reaches_its_handles(window):
    beside = section(window)
    beside.setFocus(Qt.FocusReason.TabFocusReason)
    seen = []
    for _ in range(3):
        current = beside.keys.current()
        if current is None:
            QTest.keyClick(beside, Qt.Key.Key_Tab)
            current = beside.keys.current()
        seen.append(current.axis)
        QTest.keyClick(beside, Qt.Key.Key_Tab)
    assert set(seen) == {"rod-height", "projection", "hem"}


def test_the_elevation_shows_no_handle_of_the_section(window):
    assert not [one for one in window.canvas.handles() if one.sheet == "section"]
    assert [one for one in window.session.handles() if one.axis == "projection"]


def test_a_click_on_a_figure_opens_its_field(window):
    beside, opened = section(window), []
    beside.dimension_clicked.connect(lambda ref, field: opened.append((ref, field)))
    groups = beside.picture.groups(beside.viewport, beside.shown)
    figure = next(
        record
        for group in groups
        for record in group.records
        if isinstance(record, Dimension) and record.field == "rod.projection"
    )
    x, y = beside.viewport.to_px(figure.text_at)
    QTest.mouseClick(beside, Qt.MouseButton.LeftButton, pos=QPoint(round(x), round(y) - 3))
    assert opened == [(LAYER, "rod.projection")]


def test_it_is_there_again_next_time(window, make_window, demo_room):
    window.close()
    assert window.settings.is_open("section", usual=False)


def test_the_sections_are_drawn_to_a_file(window, tmp_path):
    window.files.dialogs.path = tmp_path / "cut.svg"
    window.actions_by_name["sections"].trigger()
    text = window.files.dialogs.path.read_text(encoding="utf-8")
    assert "Section at 72 in from the left end" in text
