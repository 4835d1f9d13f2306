"""Rooms in and out of the window."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QMimeData, QPoint, Qt, QUrl
from PySide6.QtGui import QDropEvent

from elevation import places
from elevation.room.edits import rename_wall
from elevation.room.file import load_room, save_room
from elevation.window.new_room import NewRoom
from elevation.words import msg


def edit(window, name="Other"):
    room = rename_wall(window.session.committed, window.session.wall_id, name)
    window.session.commit(room, msg("Name the wall"), (window.session.wall_id,))
    window.refresher.now()


def test_saving_a_new_room_asks_where(window, tmp_path):
    window.files.dialogs.path = tmp_path / "mine.room.json"
    edit(window)
    assert window.isWindowModified()
    window.actions_by_name["save"].trigger()
    assert load_room(tmp_path / "mine.room.json") == window.session.committed
    window.refresher.now()
    assert not window.isWindowModified()
    assert window.settings.recent == [tmp_path / "mine.room.json"]


def test_an_ending_is_added(window, tmp_path):
    window.files.dialogs.path = tmp_path / "mine"
    window.actions_by_name["save-as"].trigger()
    assert (tmp_path / "mine.room.json").is_file()


def test_saving_again_asks_nothing(make_window, demo_room, tmp_path):
    path = tmp_path / "a.room.json"
    save_room(demo_room(), path)
    window = make_window(load_room(path), path)
    edit(window)
    window.actions_by_name["save"].trigger()
    assert window.files.dialogs.asked == []
    assert load_room(path).walls[0].name == "Other"


@pytest.mark.parametrize(("answer", "leaves"), [("save", True), ("discard", True), ("cancel", False)])
def test_edits_are_asked_about_before_another_room_opens(make_window, demo_room, tmp_path, answer, leaves):
    path = tmp_path / "a.room.json"
    save_room(demo_room(), path)
    window = make_window(load_room(path), path)
    window.files.dialogs.unsaved_answer = answer
    edit(window)
    window.files.open(places.demo_rooms() / "4-flat.room.json")
    assert window.files.dialogs.asked == ["unsaved"]
    assert (window.session.committed.unit == "mm") == leaves
    assert (load_room(path).walls[0].name == "Other") == (answer == "save")


def test_closing_asks_too_and_can_be_stopped(window):
    edit(window)
    window.files.dialogs.unsaved_answer = "cancel"
    assert not window.close()
    assert window.isVisible()
    window.files.dialogs.unsaved_answer = "discard"
    assert window.close()


def test_a_damaged_file_is_a_quiet_sentence_and_loses_nothing(window, tmp_path):
    path = tmp_path / "bad.room.json"
    path.write_text('{"format": "elevation-room"', encoding="utf-8")
    before = window.session.committed
    window.files.open(path)
    assert window.session.committed is before
    assert "bad.room.json" in window.statusBar().currentMessage()


def test_a_file_changed_on_disk_is_asked_about_before_it_is_written_over(make_window, demo_room, tmp_path):
    path = tmp_path / "a.room.json"
    save_room(demo_room(), path)
    window = make_window(load_room(path), path)
    save_room(demo_room("4-flat.room.json"), path)
    window.notices.look_at_disk()
    assert window.notice.isVisible()
    edit(window)
    window.files.dialogs.disk_answer = "cancel"
    assert not window.files.save()
    assert load_room(path).unit == "mm"
    window.files.dialogs.disk_answer = "overwrite"
    assert window.files.save()
    assert load_room(path).walls[0].name == "Other"


def test_revert_goes_back_to_the_file(make_window, demo_room, tmp_path):
    path = tmp_path / "a.room.json"
    save_room(demo_room(), path)
    window = make_window(load_room(path), path)
    before = window.session.committed
    edit(window)
    window.actions_by_name["revert"].trigger()
    assert window.session.committed == before
    assert window.files.dialogs.asked == ["sure"]


def test_a_dropped_file_opens(window, tmp_path):
    path = tmp_path / "dropped.room.json"
    save_room(load_room(places.demo_rooms() / "3-attic.room.json"), path)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    event = QDropEvent(
        QPoint(50, 50), Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    )
    window.dropEvent(event)
    assert window.session.path == path
    assert len(window.session.committed.walls[0].openings) == 3


def test_demo_rooms_are_listed_and_open_as_new(window):
    window.commands._fill_demo()
    actions = window.commands._menus["demo>"].actions()
    assert len(actions) >= 6
    window.commands.open_listed(places.demo_rooms() / "5-kitchen.room.json")
    assert window.session.path is None
    assert window.canvas.picture.groups(window.canvas.viewport, window.canvas.shown)


@pytest.mark.parametrize(("ending", "start"), [("svg", b"<?xml"), ("png", b"\x89PNG"), ("pdf", b"%PDF")])
def test_the_drawing_is_written_in_three_formats(window, tmp_path, ending, start):
    path = tmp_path / f"wall.{ending}"
    window.files.dialogs.path = path
    window.actions_by_name["export"].trigger()
    assert path.read_bytes().startswith(start)


def test_the_measuring_sheet_is_written(window, tmp_path):
    path = tmp_path / "blank.svg"
    window.files.dialogs.path = path
    window.actions_by_name["measuring"].trigger()
    assert b"<svg" in path.read_bytes()


def test_an_unknown_ending_is_a_sentence(window, tmp_path):
    window.files.dialogs.path = tmp_path / "wall.doc"
    window.actions_by_name["export"].trigger()
    assert not (tmp_path / "wall.doc").exists()
    assert "wall.doc" in window.statusBar().currentMessage()


def test_a_new_room_stands_from_seven_typed_facts(qtbot, trade):
    dialog = NewRoom(trade, "in")
    qtbot.addWidget(dialog)
    facts = {
        "width": "12'",
        "ceiling": "96",
        "opening_width": "36",
        "sill": "30",
        "opening_height": "48",
        "casing": "3 1/2",
    }
    for key, text in facts.items():
        dialog.rows[key].field.setText(text)
    dialog.make()
    room = dialog.room
    assert room is not None
    wall = room.walls[0]
    assert wall.width.mm == pytest.approx(144 * 25.4)
    assert wall.openings[0].left.mm == pytest.approx(54 * 25.4)
    assert wall.schemes[0].treatments


def test_a_missing_fact_is_named(qtbot, trade):
    dialog = NewRoom(trade, "mm")
    qtbot.addWidget(dialog)
    dialog.rows["width"].field.setText("3000")
    dialog.make()
    assert dialog.room is None
    assert "ceiling" in dialog.error.text().lower()


def test_a_figure_that_cannot_be_read_is_told_at_its_field_and_the_dialog_grows(qtbot, trade):
    dialog = NewRoom(trade, "in")
    qtbot.addWidget(dialog)
    with qtbot.waitExposed(dialog):
        dialog.show()
    height = dialog.height()
    dialog.rows["width"].field.setText("twelve feet")
    dialog.make()
    row = dialog.rows["width"]
    assert dialog.room is None
    assert row.error.isVisible()
    assert "twelve" in row.error.text()
    assert dialog.height() > height
    assert row.field.height() >= row.field.sizeHint().height()


def test_schemes_are_duplicated_named_switched_and_deleted(window):
    wall_id = window.session.wall_id
    count = len(window.session.committed.walls[0].schemes)
    first = window.session.scheme_id
    window.actions_by_name["duplicate-scheme"].trigger()
    second = window.session.scheme_id
    assert second != first
    assert len(window.session.committed.walls[0].schemes) == count + 1
    window.files.dialogs.text_answer = "Lower & wider"
    window.actions_by_name["name-scheme"].trigger()
    assert "Lower & wider" in {scheme.name for scheme in window.session.committed.walls[0].schemes}
    window.refresher.now()
    window.switchers.scheme.choose(first)
    assert window.session.scheme_id == first
    window.switchers.scheme.choose(second)
    window.actions_by_name["delete-scheme"].trigger()
    assert second not in {scheme.id for scheme in window.session.committed.walls[0].schemes}
    window.actions_by_name["undo"].trigger()
    assert second in {scheme.id for scheme in window.session.committed.walls[0].schemes}
    assert window.session.wall_id == wall_id


def test_walls_are_added_and_switched(window):
    first = window.session.wall_id
    count = len(window.session.committed.walls)
    window.actions_by_name["add-wall"].trigger()
    assert len(window.session.committed.walls) == count + 1
    assert window.session.wall_id != first
    window.refresher.now()
    window.actions_by_name["next-wall"].trigger()
    assert window.session.wall_id == first
    window.switchers.wall.choose(window.session.committed.walls[-1].id)
    assert window.session.wall_id == window.session.committed.walls[-1].id


def test_a_wall_is_deleted_and_comes_back(make_window, demo_room):
    window = make_window(demo_room("9-bay.room.json"))
    before = window.session.committed
    window.session.switch_wall("middle")
    window.actions_by_name["delete-wall"].trigger()
    assert [wall.id for wall in window.session.committed.walls] == ["left", "right"]
    assert window.session.wall_id == "left"
    window.refresher.now()
    window.actions_by_name["undo"].trigger()
    assert window.session.committed == before
    assert window.session.wall_id == "middle"
    for _ in range(3):
        window.actions_by_name["delete-wall"].trigger()
    # The last one stays, and it is said why.
    assert [wall.id for wall in window.session.committed.walls] == ["right"]
    assert "only wall of the room" in window.statusBar().currentMessage()
