"""What a hand gets hold of on the canvas: cloth near its leading edge, marks of findings beside handles."""

from __future__ import annotations

from math import hypot

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest

from elevation.room.edits import replace_rod
from elevation.units import parse_length
from elevation.window.picking import cloth_handle_at
from tests.window.conftest import demo


def panel(window, side="left"):
    panels = window.session.set_out().treatments[0].layers[0].panels
    return next(one for one in panels if one.side == side)


def inside(one, wall_in: float, share: float) -> tuple[float, float]:
    """A point ``wall_in`` mm inside the cloth from its leading edge, ``share`` of its height over the hem."""
    x = one.drawn[1] - wall_in if one.side == "left" else one.drawn[0] + wall_in
    return x, one.hem_low_mm + (one.top_mm - one.hem_low_mm) * share


@pytest.fixture
def as_drawn(window):
    window.actions_by_name["cloth-drawn"].trigger()
    return window


@pytest.mark.usefixtures("as_drawn")
@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("share", [0.2, 0.8])
def test_a_panel_is_drawn_by_its_cloth_near_the_leading_edge(window, mouse, side, share):
    before = panel(window, side)
    inwards = 200.0 if side == "left" else -200.0
    x, y = inside(before, 10 * window.canvas.viewport.mm_per_px / 2, share)
    mouse.press(x, y)
    mouse.move(x + inwards, y)
    mouse.release()
    after = panel(window, side)
    edge = (after.drawn[1] - before.drawn[1]) if side == "left" else (after.drawn[0] - before.drawn[0])
    assert edge == pytest.approx(inwards, abs=40.0)  # it may stick to a place that means something
    assert window.session.undo_label is not None


def test_cloth_that_is_shown_open_goes_along_from_where_it_is_shown(window, mouse):
    one = panel(window)
    assert one.open != one.drawn
    assert window.canvas.shown.cloth == "open"
    x, y = one.open[1] - 5.0, (one.top_mm + one.hem_low_mm) / 2 + 300
    mouse.press(x, y)
    mouse.move(x + 150.0, y)
    mouse.release()
    # From the shown edge, not from where it had been drawn to; and the cloth stays to be seen where the hand left it.
    assert panel(window).drawn[1] == pytest.approx(one.open[1] + 150.0, abs=40.0)
    assert window.canvas.shown.cloth == "drawn"


def test_the_rest_of_the_cloth_and_the_wall_beside_it_are_not_taken(window):
    one, viewport = panel(window), window.canvas.viewport
    handles, set_out = window.session.handles(), window.session.set_out()
    middle = (one.top_mm + one.hem_low_mm) / 2
    wide = one.drawn[1] - one.drawn[0]
    for x, is_taken in [
        (one.drawn[1] - 1, True), (one.drawn[1] + 3, False), (one.drawn[0] + wide * 0.4, False), (one.drawn[0] - 3, False),
    ]:  # fmt: skip
        found = cloth_handle_at(handles, set_out, viewport, *viewport.to_px((x, middle)))
        assert (found is not None and found.axis == "lead") == is_taken
    for y in (one.top_mm + 3, one.hem_low_mm - 3):
        assert cloth_handle_at(handles, set_out, viewport, *viewport.to_px((one.drawn[1] - 1, y))) is None


@pytest.mark.usefixtures("as_drawn")
def test_a_click_on_the_cloth_still_selects_its_layer(window, mouse):
    one = panel(window)
    mouse.press(*inside(one, 1.0, 0.3))
    mouse.release()
    assert window.session.selection == one.ref[:4]
    assert window.session.undo_label is None


@pytest.fixture
def low(make_window):
    """A rod lower than it should be, so that a finding points at its middle."""
    room = demo()
    treatment = room.walls[0].schemes[0].treatments[0]
    ref = (room.walls[0].id, room.walls[0].schemes[0].id, treatment.id, treatment.layers[0].id)
    rod = treatment.layers[0].rod
    return make_window(replace_rod(room, ref, height=replace(rod.height, hold="above-casing", at=parse_length("1 in"))))


def marks(window):
    canvas = window.canvas
    canvas.repaint()
    labels = canvas.picture._annotated[1].labels
    unit = canvas.viewport.mm_per_paper
    return [
        canvas.viewport.to_px(((box[0] + box[2]) / 2 * unit, (box[1] + box[3]) / 2 * unit))
        for box, _, rung in labels
        if rung == "mark"
    ]


def test_no_mark_stands_on_the_rod_s_height_handle(low):
    found = marks(low)
    assert found
    handle = next(one for one in low.session.handles() if one.axis == "rod-height")
    place = low.canvas.viewport.to_px(handle.at)
    # The handle with its arrow heads reaches 13 px, a mark 10.
    assert min(hypot(x - place[0], y - place[1]) for x, y in found) > 20.0


def test_a_click_on_a_mark_opens_its_finding(low, qtbot):
    place = marks(low)[0]
    with qtbot.waitSignal(low.canvas.finding_clicked) as told:
        QTest.mouseClick(low.canvas, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QPointF(*place).toPoint())
    assert told.args[0] is low.session.findings()[0]


def test_every_name_in_the_table_of_handles_is_whole(make_window, qtbot):
    window = make_window(demo("6-hall.room.json"))
    table = window.handles
    qtbot.wait(20)
    bar = table.verticalScrollBar()
    looked = 0
    for place in range(0, bar.maximum() + 1, 5):
        bar.setValue(place)
        qtbot.wait(5)
        for row in range(table.rowAt(0), max(table.rowAt(table.viewport().height() - 1), table.rowAt(0)) + 1):
            assert table.rowHeight(row) >= table.sizeHintForRow(row)
            looked += 1
    assert looked > 20
