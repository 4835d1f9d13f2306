"""What the first picture does without: panels of closed drawers, and what only cut or broken texts need of the style."""

from __future__ import annotations

import pytest

from elevation.session.session import Session
from elevation.window.choice import Choice
from elevation.window.flag import Flag
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
