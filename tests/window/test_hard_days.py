"""The window on a hard day: every demo room, bugs, crashes before, files that go away."""

from __future__ import annotations

import errno
import sys

import pytest
from PySide6.QtCore import QCoreApplication
from PySide6.QtTest import QTest

from elevation import places
from elevation.errors import BadInput, BadOutput
from elevation.room.edits import rename_wall
from elevation.room.file import save_room
from elevation.room.model import Room, Wall
from elevation.session.session import Session
from elevation.window.guard import Guard
from elevation.window.main_window import MainWindow
from elevation.window.refresher import Refresher
from elevation.window.settings import Settings
from elevation.words import msg

ROOMS = sorted(path.name for path in places.demo_rooms().glob("*.room.json"))


@pytest.mark.parametrize("name", ROOMS)
def test_every_demo_room_shows_with_every_switch(make_window, demo_room, name):
    window = make_window(demo_room(name))
    for drawer in window.drawers[:5]:
        drawer.set_open(True)
    for action in (
        "cloth-closed",
        "stack",
        "clearances",
        "dimensions",
        "cloth-drawn",
        "theme-dark",
        "cloth-open",
        "theme-light",
    ):
        window.actions_by_name[action].trigger()
        assert not window.canvas.grab().isNull()
    for wall in window.session.committed.walls:
        window.session.switch_wall(wall.id)
        window.refresher.now()
        for scheme in wall.schemes:
            window.session.switch_scheme(scheme.id)
            window.refresher.now()
            assert not window.canvas.grab().isNull()
    for factor in (0.05, 40.0):
        window.canvas.zoom(factor)
        assert not window.canvas.grab().isNull()


def test_a_bare_unmeasured_wall_shows(make_window):
    window = make_window(Room(walls=(Wall("w1"),)))
    assert not window.canvas.grab().isNull()
    assert not window.hang.form.isVisible()
    assert window.findings.rows == [] or window.session.findings()


def test_what_a_person_can_put_right_is_said_quietly_and_a_bug_is_reported(tmp_path):
    said, crashed, reports = [], [], []

    def report(error, trace):
        reports.append(error)
        return tmp_path / "crash.txt"

    guard = Guard(said.append, crashed.append, report)
    before = sys.excepthook
    guard.stand()
    assert sys.excepthook == guard.catch
    error = BadInput("a.room.json", "walls", "is empty", "add a wall")
    sys.excepthook(BadInput, error, None)
    assert said == ["a.room.json: walls: is empty; add a wall"]
    assert reports == []
    bug = ZeroDivisionError()
    sys.excepthook(ZeroDivisionError, bug, None)
    assert reports == [bug]
    assert crashed == [tmp_path / "crash.txt"]
    guard.stand_down()
    assert sys.excepthook is before


def test_a_sentence_too_long_for_the_foot_stands_whole_over_the_canvas(window):
    long = "far.room.json: " + "a sentence that names every key that might belong there, " * 6
    window.tell(long)
    assert window.notice.text.text() == long
    assert window.statusBar().currentMessage() == ""
    window.tell("Saved.")
    assert window.statusBar().currentMessage() == "Saved."
    # An offer is not swallowed by it.
    window.notice.say("Edits are kept.", {"recover": "Go on with them"})
    window.tell(long)
    assert window.notice.text.text() == "Edits are kept."
    assert window.statusBar().currentMessage() == long
    window.notice.put_away()


def test_a_crash_before_is_said_kindly(window, tmp_path):
    window.notices.say_start(tmp_path / "crash.txt")
    assert window.notice.isVisible()
    assert "crash.txt" in window.notice.text.text()
    window.notice.put_away()
    assert not window.notice.isVisible()


def crashed(path, state, trade, demo_room, name):
    """A window that named a wall and then died: the process is gone, its locks with it, its recovery file not."""
    save_room(demo_room(), path)
    lost = Session(demo_room(), trade, path, state=state)
    lost.commit(rename_wall(lost.committed, lost.wall_id, name), msg("Name the wall"))
    assert lost.worker.wait(5)
    lost.storage._recovery.abandon()
    lost.storage._release()
    lost.worker.close()


def test_work_that_a_crash_left_can_be_gone_on_with(qtbot, trade, demo_room, tmp_path):
    path, state = tmp_path / "a.room.json", tmp_path / "state"
    crashed(path, state, trade, demo_room, "Nearly lost")
    session = Session(demo_room("4-flat.room.json"), trade, None, state=state)
    window = MainWindow(session, Settings(tmp_path / "window.ini"))
    qtbot.addWidget(window)
    window.notices.say_start(None)
    assert set(window.notice.buttons) == {"recover", "drop"}
    # What she has done meanwhile is asked about first.
    session.commit(rename_wall(session.committed, session.wall_id, "Meanwhile"), msg("Name the wall"))
    window.files.may_leave = lambda: False
    window.notice.buttons["recover"].click()
    assert session.committed.walls[0].name == "Meanwhile"
    window.files.may_leave = lambda: True
    window.notice.buttons["recover"].click()
    assert session.committed.walls[0].name == "Nearly lost"
    assert session.is_modified
    assert session.path == path
    window.close()


def test_what_two_crashes_left_is_offered_one_by_one(qtbot, trade, demo_room, tmp_path):
    state = tmp_path / "state"
    for name in ("a", "b"):
        crashed(tmp_path / f"{name}.room.json", state, trade, demo_room, f"Wall {name}")
    window = MainWindow(Session(demo_room(), trade, None, state=state), Settings(tmp_path / "window.ini"))
    qtbot.addWidget(window)
    window.notices.say_start(None)
    first = window.notice.text.text().split(".")[0]
    window.notice.buttons["drop"].click()
    second = window.notice.text.text().split(".")[0]
    assert {first, second} == {"a", "b"}
    window.notice.buttons["recover"].click()
    assert window.session.committed.walls[0].name == f"Wall {second}"
    window.files.may_leave = lambda: True
    window.close()


def test_where_the_report_is_comes_after_the_work_that_the_same_crash_left(qtbot, trade, demo_room, tmp_path):
    """A crash in the window leaves both: the offer stands first, and its answer does not swallow the report."""
    state = tmp_path / "state"
    crashed(tmp_path / "a.room.json", state, trade, demo_room, "Nearly lost")
    window = MainWindow(Session(demo_room(), trade, None, state=state), Settings(tmp_path / "window.ini"))
    qtbot.addWidget(window)
    window.notices.say_start(tmp_path / "crash-1.txt")
    assert "crash-1.txt" not in window.notice.text.text()
    window.files.may_leave = lambda: False
    window.notice.buttons["recover"].click()
    assert set(window.notice.buttons) == {"recover", "drop"}
    window.files.may_leave = lambda: True
    window.notice.buttons["recover"].click()
    assert not window.notice.isHidden()
    assert "crash-1.txt" in window.notice.text.text()
    window.notice.put_away()
    assert window.notice.isHidden()
    window.close()


def test_it_is_said_once_that_edits_cannot_be_kept(window):
    said = []
    window.notice.say = lambda text, _acts=None: said.append(text)
    storage = window.session.storage
    for trouble in (OSError(errno.ENOSPC, "full"), BadOutput("x", "", "may not be written here"), None, OSError(5, "io")):
        storage.trouble = trouble
        window.refresh()
    assert len(said) == 2
    assert "no space left on device" in said[0]
    storage.trouble = None


def test_a_file_open_elsewhere_can_be_looked_at_only(qtbot, trade, demo_room, tmp_path):
    path, state = tmp_path / "a.room.json", tmp_path / "state"
    save_room(demo_room(), path)
    state.mkdir()
    first = Session(demo_room(), trade, path, state=state)
    second = Session(demo_room(), trade, path, state=state)
    window = MainWindow(second, Settings(tmp_path / "window.ini"))
    qtbot.addWidget(window)
    window.notices.say_start(None)
    assert window.notice.isVisibleTo(window)
    assert "a.room.json" in window.notice.text.text()
    window.files.may_leave = lambda: True
    window.close()
    first.close()


def test_panels_follow_once_however_often_the_room_changes(qtbot):
    told = []
    from PySide6.QtCore import QObject

    parent = QObject()
    refresher = Refresher(lambda: told.append(1), parent)
    for _ in range(50):
        refresher.ask()
    QCoreApplication.processEvents()
    assert told == [1]
    refresher.now()
    assert told == [1]


def test_a_file_that_went_away_is_a_sentence(make_window, demo_room, tmp_path):
    path = tmp_path / "a.room.json"
    save_room(demo_room(), path)
    window = make_window(demo_room(), path)
    path.unlink()
    window.notices.look_at_disk()
    window.files.open(tmp_path / "never.room.json")
    assert "never.room.json" in window.statusBar().currentMessage()


def test_dragging_one_rod_draws_no_other_treatment_again(make_window, mouse_on, demo_room):
    window = make_window(demo_room("6-hall.room.json"))
    handle = next(handle for handle in window.canvas.handles() if handle.axis == "rod-height")
    hand = mouse_on(window)
    hand.press(*handle.at)
    hand.move(handle.at[0], handle.at[1] - 40)
    window.canvas.repaint()
    canvas = window.canvas
    drawn, calls = canvas.picture.kept.drawn, window.session.pipeline.set_out.calls
    before = {id(group) for group in canvas.picture.groups(canvas.viewport, canvas.shown)}
    hand.move(handle.at[0], handle.at[1] - 90)
    canvas.repaint()
    after = canvas.picture.groups(canvas.viewport, canvas.shown)
    assert canvas.picture.kept.drawn - drawn == 1
    assert window.session.pipeline.set_out.calls - calls <= 2
    # Rods of one height share a column of figures, so annotation may move beside; what is drawn of things may not.
    laid = {"dimension", "held", "finding", "title"}
    made_anew = {group.ref for group in after if id(group) not in before and group.layer not in laid}
    assert made_anew
    assert all(ref[:3] == handle.ref[:3] for ref in made_anew), made_anew
    QTest.qWait(0)
    hand.release()
