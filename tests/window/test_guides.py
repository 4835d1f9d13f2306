"""Lines of proportion in the window: off by default and then no work; drawn once a change; said in plain words."""

from __future__ import annotations

import pytest

from elevation.planning import guides as planning_guides
from elevation.sheet import draw_guides


def guide_layer(window):
    groups = window.canvas.picture.groups(window.canvas.viewport, window.canvas.seen())
    return [group for group in groups if group.layer == "guide"]


def test_off_by_default_and_no_work_when_off(window, mouse, monkeypatch):
    def fail(_set_out):
        raise AssertionError("worked out while nobody looks")

    monkeypatch.setattr(planning_guides, "guides_of", fail)
    monkeypatch.setattr(draw_guides, "guides_of", fail)
    assert not window.actions_by_name["guides"].isChecked()
    assert guide_layer(window) == []
    assert window.stands.text() == ""
    height = next(one for one in window.canvas.handles() if one.axis == "rod-height")
    mouse.drag(height, 40.0)
    assert window.session.undo_label is not None


def test_switched_on_the_lines_are_drawn_and_said(window):
    window.actions_by_name["guides"].trigger()
    assert len(guide_layer(window)) == 2
    assert "up to the ceiling" in window.stands.text()
    assert "reach alike" in window.stands.text()
    window.actions_by_name["guides"].trigger()
    assert guide_layer(window) == []
    assert window.stands.text() == ""


def test_drawn_once_for_each_change(window, monkeypatch):
    window.actions_by_name["guides"].trigger()
    calls = []
    real = draw_guides.guide_groups
    before = guide_layer(window)
    monkeypatch.setattr(draw_guides, "guide_groups", lambda *given: calls.append(1) or real(*given))
    for _ in range(3):
        again = guide_layer(window)
        assert all(one is other for one, other in zip(before, again, strict=True))
    assert calls == []


def test_a_drag_sticks_to_them_and_the_readout_says_how_the_rod_stands(window, mouse):
    window.actions_by_name["guides"].trigger()
    handle = next(one for one in window.canvas.handles() if one.axis == "rod-height")
    # Near enough that no other place lies within reach.
    window.canvas.zoom(6.0, *window.canvas.viewport.to_px(handle.at))
    wall = window.session.set_out()
    gap = planning_guides.gap_of(wall, wall.treatments[0])
    third = gap[0] + (gap[1] - gap[0]) / 3
    x, y = handle.at
    mouse.press(x, y)
    mouse.move(x, y + third - handle.value_mm)
    stuck = window.session.gesture.stuck
    assert stuck.value_mm == pytest.approx(third, abs=25.4 / 32 + 1e-6)
    from elevation.window.readout import readout_of

    said = [line.text for line in readout_of(window.session, window.canvas.hand)]
    assert any("up to the ceiling" in line for line in said)
    mouse.release()
