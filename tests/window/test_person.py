"""Somebody beside the window: off by default, switched on in View, remembered, standing where it stood."""

from __future__ import annotations

from PySide6.QtWidgets import QApplication


def person(window):
    groups = window.canvas.picture.groups(window.canvas.viewport, window.canvas.seen())
    return [group for group in groups if group.layer == "person"]


def test_it_is_shown_and_hidden_and_does_not_walk_in_a_drag(window, mouse):
    assert person(window) == []
    window.actions_by_name["person"].trigger()
    (before,) = person(window)
    height = next(one for one in window.canvas.handles() if one.axis == "rod-height")
    mouse.drag(height, 40.0)
    (after,) = person(window)
    assert after is before
    window.actions_by_name["person"].trigger()
    assert person(window) == []


def test_it_is_remembered(make_window):
    first = make_window()
    first.actions_by_name["person"].trigger()
    first.close()
    again = make_window()
    again.show()
    QApplication.processEvents()
    assert again.actions_by_name["person"].isChecked()
    assert len(person(again)) == 1
