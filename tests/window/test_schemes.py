"""Schemes side by side in the window: ticked, framed, before and after, kept, drawn to a file; it follows the room."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from elevation.room.edits import rename_scheme
from elevation.window.schemes_dialog import open_schemes
from elevation.words import msg


@pytest.fixture
def schemes(window, qtbot):
    window.actions_by_name["schemes"].trigger()
    dialog = open_schemes(window)
    qtbot.waitUntil(lambda: dialog.compared is not None, timeout=20_000)
    yield dialog
    dialog.close()


def again(dialog, qtbot, act):
    with qtbot.waitSignal(dialog.ready, timeout=20_000):
        act()


def names(dialog):
    return [one.name for one in dialog.picture.schemes]


def test_opens_with_all_schemes_of_the_wall_the_shown_one_framed(schemes, window):
    assert names(schemes) == [scheme.name for scheme in window.session.committed.walls[0].schemes]
    assert schemes.current_id() == window.session.scheme_id
    assert schemes.table.columnCount() == 2
    assert schemes.table.rowCount() == len(schemes.compared.differing) > 3
    assert schemes.alike.text()


def test_all_walls_have_one_scale_and_stand_side_by_side(schemes):
    first, second = schemes.picture.tiles()
    assert first.size() == second.size()
    assert first.right() < second.left()
    assert first.bottom() <= schemes.picture.height()


def test_wide_walls_stand_over_one_another_where_they_are_larger_so(make_window, demo_room, qtbot):
    window = make_window(demo_room("6-hall.room.json"))
    dialog = open_schemes(window)
    qtbot.waitUntil(lambda: dialog.compared is not None, timeout=20_000)
    dialog.picture.resize(800, 320)
    first, second = dialog.picture.tiles()
    assert first.bottom() < second.top()
    assert first.left() == second.left()
    assert first.width() > 400
    dialog.picture._choose(0)
    QTest.keyClick(dialog.picture, Qt.Key.Key_Down)
    assert dialog.picture.current == 1
    # Where there is far more room across than up they stand side by side again.
    dialog.picture.resize(3000, 200)
    first, second = dialog.picture.tiles()
    assert first.right() < second.left()
    dialog.close()


def test_the_bare_wall_can_be_ticked_and_schemes_unticked(schemes, qtbot):
    again(schemes, qtbot, lambda: schemes.picks.boxes[0].setChecked(True))
    assert len(names(schemes)) == 3
    again(schemes, qtbot, lambda: schemes.picks.boxes[1].setChecked(False))
    assert schemes.picked == (None, "s2")
    assert schemes.table.columnCount() == 2


def test_the_keyboard_frames_and_goes_on_with_another(schemes, window):
    schemes.picture.setFocus()
    QTest.keyClick(schemes.picture, Qt.Key.Key_Right)
    assert schemes.current_id() == "s2"
    schemes.show_button.click()
    assert window.session.scheme_id == "s2"


def test_one_is_kept_and_undo_brings_the_others_back(schemes, window, qtbot):
    QTest.mouseClick(schemes.picture, Qt.MouseButton.LeftButton, pos=schemes.picture.tiles()[1].center().toPoint())
    before = window.session.committed
    again(schemes, qtbot, schemes.keep_button.click)
    assert [scheme.id for scheme in window.session.committed.walls[0].schemes] == ["s2"]
    assert window.session.scheme_id == "s2"
    # One alone is shown beside the bare wall.
    assert len(names(schemes)) in (1, 2)
    assert not schemes.keep_button.isEnabled()
    window.session.undo()
    assert window.session.committed is before


def test_before_and_after_share_one_place_and_the_line_is_pulled(schemes):
    schemes.before.setChecked(True)
    (tile,) = schemes.picture.tiles()
    QTest.mousePress(schemes.picture, Qt.MouseButton.LeftButton, pos=QPoint(int(tile.left()), int(tile.center().y())))
    QTest.mouseMove(schemes.picture, QPoint(int(tile.left() + tile.width() / 4), int(tile.center().y())))
    QTest.mouseRelease(schemes.picture, Qt.MouseButton.LeftButton)
    assert schemes.picture.share == pytest.approx(0.25, abs=0.01)
    QTest.keyClick(schemes.picture, Qt.Key.Key_Left)
    assert schemes.picture.share == pytest.approx(0.20, abs=0.01)
    image = schemes.picture.grab().toImage()
    assert not image.isNull()
    assert not schemes.keep_button.isEnabled()


def test_it_follows_the_room(schemes, window, qtbot):
    room = rename_scheme(window.session.committed, window.session.wall_id, "s1", "Renamed")
    again(schemes, qtbot, lambda: window.session.commit(room, msg("Name the scheme")))
    assert names(schemes)[0] == "Renamed"


def test_what_is_shown_is_drawn_to_a_file(schemes, window, qtbot, tmp_path):
    window.files.dialogs.path = tmp_path / "schemes.svg"
    again(schemes, qtbot, schemes.export_button.click)
    assert "Higher and wider" in (tmp_path / "schemes.svg").read_text()


def test_proposals_are_added_with_one_undo_and_stand_beside_what_was(schemes, window, qtbot):
    before = window.session.committed
    with qtbot.waitSignal(schemes.proposing.better, timeout=60_000):
        schemes.propose_button.click()
    # The first that was found is looked at while more are looked for: it is no scheme of the wall yet.
    assert len(names(schemes)) > 2
    schemes.picture._choose(len(names(schemes)) - 1)
    if window.session.committed is before:
        assert not schemes.keep_button.isEnabled()
    qtbot.waitUntil(lambda: window.session.committed is not before, timeout=60_000)
    qtbot.waitUntil(lambda: schemes.compared is not None and len(names(schemes)) > 2, timeout=20_000)
    added = window.session.committed.walls[0].schemes[2:]
    assert 1 <= len(added) <= 3
    qtbot.waitUntil(lambda: "differ" in schemes.alike.text() or "proposed" in schemes.alike.text(), timeout=20_000)
    assert all(":" in scheme.name for scheme in added)
    window.session.undo()
    assert window.session.committed is before
