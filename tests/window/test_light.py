"""Day and evening in the window: off by default and then no work; glass left clear stays bright by day, dark by night."""

from __future__ import annotations

import pytest

from elevation.planning import daylight
from elevation.sheet import draw_light


def lit(window):
    groups = window.canvas.picture.groups(window.canvas.viewport, window.canvas.seen())
    return [group for group in groups if group.layer == "light"]


def test_off_by_default_and_no_work_when_off(window, mouse, monkeypatch):
    def fail(*_given):
        raise AssertionError("worked out while nobody looks")

    monkeypatch.setattr(draw_light, "light_group", fail)
    monkeypatch.setattr(daylight, "daylight_of", fail)
    assert lit(window) == []
    handle = next(one for one in window.canvas.handles() if one.axis == "rod-height")
    mouse.drag(handle, 40.0)
    assert window.session.undo_label is not None


def test_the_same_group_stays_while_nothing_changes(window):
    window.actions_by_name["light-day"].trigger()
    (before,) = lit(window)
    assert lit(window)[0] is before
    assert "Daylight kept" in window.stands.text()
    assert window.stands.toolTip()
    window.actions_by_name["light-drawn"].trigger()
    assert lit(window) == []
    assert window.stands.text() == ""


def pixel(window):
    """The lightness of the canvas in the middle of the first window's glass, beside its bars, and of the bare wall."""
    opening = window.session.set_out().openings[0]
    x = opening.glass_left_mm + (opening.glass_right_mm - opening.glass_left_mm) * 0.4
    y = opening.glass_bottom_mm + (opening.glass_top_mm - opening.glass_bottom_mm) * 0.4
    image = window.canvas.grab().toImage()
    ratio = image.devicePixelRatio()

    def at(place):
        px, py = window.canvas.viewport.to_px(place)
        return image.pixelColor(round(px * ratio), round(py * ratio)).lightnessF()

    return at((x, y)), at((300.0, 1500.0))


def test_glass_left_clear_stays_bright_by_day_and_is_dark_in_the_evening(window):
    glass, wall = pixel(window)
    window.actions_by_name["light-day"].trigger()
    assert pixel(window) == pytest.approx((glass, wall), abs=0.02)
    window.actions_by_name["light-evening"].trigger()
    assert pixel(window)[0] < 0.35
    window.actions_by_name["light-day"].trigger()
    window.actions_by_name["cloth-closed"].trigger()
    # The room is darker with the cloth closed.
    assert pixel(window)[1] < wall - 0.1


def test_walls_unfolded_beside_it_have_the_same_light(make_window, demo_room):
    window = make_window(demo_room("9-bay.room.json"))
    window.actions_by_name["unfolded"].trigger()
    window.actions_by_name["light-evening"].trigger()
    groups = lit(window)
    assert {group.ref[0] for group in groups} == {wall.id for wall in window.session.room.walls}
    assert all(one is other for one, other in zip(groups, lit(window), strict=True))


def test_a_clearance_lies_on_a_pale_edge_where_the_wall_may_be_dark(window):
    def pens():
        groups = window.canvas.picture.groups(window.canvas.viewport, window.canvas.seen())
        return [record for group in groups if group.layer == "clearance" for record in group.records]

    plain = len(pens())
    window.actions_by_name["light-day"].trigger()
    assert len(pens()) > plain


def test_what_is_drawn_to_a_file_has_the_light_that_is_shown(window):
    assert all(group.layer != "light" for group in window.files.elevation().groups)
    window.actions_by_name["light-evening"].trigger()
    (group,) = (group for group in window.files.elevation().groups if group.layer == "light")
    assert group.title == "In the evening"
