"""What the first picture does without: panels of closed drawers, and what only cut or broken texts need of the style."""

from __future__ import annotations

import pytest
from PySide6.QtTest import QTest

from elevation.session.session import Session
from elevation.sheet.tape_order import fields
from elevation.window.choice import Choice
from elevation.window.flag import Flag
from elevation.window.length_field import FieldRow
from elevation.window.main_window import MainWindow
from elevation.window.settings import Settings
from tests.window.conftest import demo


def test_panels_of_closed_drawers_are_made_in_the_first_quiet_moment(qtbot, trade, tmp_path) -> None:
    window = MainWindow(Session(demo(), trade), Settings(tmp_path / "window.ini"))
    qtbot.addWidget(window)
    assert not window._hang.is_made
    assert not window._standing.is_made
    with qtbot.waitExposed(window):
        window.show()
    qtbot.waitUntil(lambda: window._hang.is_made and window._standing.is_made, timeout=3000)


@pytest.mark.parametrize("name", ["standing", "hang"])
def test_a_drawer_that_opens_has_its_panel_filled_at_once(make_window, name: str) -> None:
    window = make_window()
    drawer = next(one for one in window.drawers if one.objectName() == name)
    drawer.set_open(True)
    panel = getattr(window, name)
    assert panel.isVisible()
    assert panel.which.count() > 0
    assert drawer.content.isAncestorOf(panel)


@pytest.fixture
def first(qtbot, trade, tmp_path, monkeypatch) -> MainWindow:
    """A window that keeps its first picture."""
    monkeypatch.setattr("elevation.window.canvas.FRAME_MS", 10_000)
    window = MainWindow(Session(demo(), trade), Settings(tmp_path / "window.ini"))
    qtbot.addWidget(window)
    window.resize(1366, 768)
    with qtbot.waitExposed(window):
        window.show()
    QTest.qWait(0)
    return window


def made(window: MainWindow) -> list[FieldRow]:
    return window.measurements.findChildren(FieldRow)


def test_rows_of_the_form_that_are_out_of_sight_are_made_after_the_first_picture(first) -> None:
    form, area = first.measurements, first.drawers[0].area
    order = fields(first.session.room.walls[0])
    assert 0 < len(made(first)) < len(order)
    lowest = max(row.geometry().bottom() for row in made(first))
    assert lowest > area.viewport().height(), "a row that can be seen is there"
    assert [row.tag for row in made(first)] == list(order[: len(made(first))])
    before = area.verticalScrollBar().maximum()
    places = {id(row): row.geometry() for row in made(first)}
    form.finish()
    QTest.qWait(0)
    assert [row.tag for row in made(first)] == list(order)
    assert all(row.isVisible() for row in made(first))
    # Nothing jumps: what stands stays, and the bar was about right.
    assert all(places.get(id(row), row.geometry()) == row.geometry() for row in made(first))
    assert area.verticalScrollBar().maximum() == pytest.approx(before, rel=0.1)
    texts = {row.tag.field: row.field.text() for row in made(first)}
    assert texts["width"]
    assert made(first)[-1].field.text()


def test_a_row_out_of_sight_that_is_asked_for_is_there_at_once(first) -> None:
    last = fields(first.session.room.walls[0])[-1]
    assert len(made(first)) < len(fields(first.session.room.walls[0]))
    first.show_field(last.ref, last.field)
    assert first.focusWidget() is first.measurements.row(last.ref, last.field).field


def test_rows_are_finished_by_themselves(qtbot, trade, tmp_path) -> None:
    window = MainWindow(Session(demo(), trade), Settings(tmp_path / "window.ini"))
    qtbot.addWidget(window)
    with qtbot.waitExposed(window):
        window.show()
    qtbot.waitUntil(lambda: len(made(window)) == len(fields(window.session.room.walls[0])), timeout=3000)


def test_a_late_panel_still_refuses_and_lights(make_window) -> None:
    window = make_window()
    window.hang.refused.emit("That cannot be.")
    assert window.statusBar().currentMessage() == "That cannot be."


@pytest.mark.parametrize("text", ["rod", "a pair of panels on rings", "x" * 40])
@pytest.mark.parametrize("width", [70, 110, 160, 200, 240, 400])
def test_a_choice_that_fits_looks_as_if_it_had_been_measured(qtbot, monkeypatch, text: str, width: int) -> None:
    choice = Choice("what")
    qtbot.addWidget(choice)
    choice.offer([("a", text)], "a")
    choice.resize(width, 26)
    quick = choice.grab().toImage()
    monkeypatch.setattr(choice, "_surely_fits", lambda: False)
    assert quick == choice.grab().toImage()


@pytest.mark.parametrize("text", ["thrice", "Read in three places", "Widths and heights read at three places of every one"])
@pytest.mark.parametrize("width", [80, 150, 200, 276, 500])
def test_a_flag_of_one_line_is_as_high_as_one_that_was_measured(qtbot, monkeypatch, text: str, width: int) -> None:
    flag = Flag(text)
    qtbot.addWidget(flag)
    quick = flag.heightForWidth(width)
    monkeypatch.setattr(flag, "_fits", lambda _: False)
    assert quick == flag.heightForWidth(width)
