"""What stopped people who saw the window for the first time, each fault with the test that keeps it away."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from elevation.room.edits import replace_at
from elevation.room.find import wall_of
from elevation.room.first import FirstFacts, first_room
from elevation.sheet.records import Text
from elevation.units import Length, parse_length
from elevation.window.new_room import NewRoom
from elevation.window.picking import CROWD_PX, MOST_NEAR, NEAR_PX, handles_near
from elevation.window.viewport import Viewport
from elevation.words import msg


def type_into(field, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def wall(window):
    return wall_of(window.session.committed, window.session.wall_id)


def test_esc_after_a_refused_figure_gives_back_the_measured_one_and_keeps_it(window):
    row = window.measurements.row((window.session.wall_id,), "width")
    before, text = wall(window).width, row.field.text()
    type_into(row.field, "50")
    assert row.error.isVisible()
    QTest.keyClick(row.field, Qt.Key.Key_Escape)
    assert row.field.text() == text
    window.canvas.setFocus()
    assert wall(window).width == before


def test_a_figure_refused_twice_is_refused_twice(window):
    row = window.measurements.row((window.session.wall_id,), "width")
    before = wall(window).width
    for _ in range(2):
        type_into(row.field, "50")
        assert row.error.isVisible()
    assert wall(window).width == before


def plain_room(trade):
    said = {"width": "148 1/2", "ceiling": "96", "opening_width": "38", "opening_height": "60", "sill": "30"}
    return first_room(FirstFacts(**{key: parse_length(text) for key, text in said.items()}), trade)


def test_a_refusal_names_the_opening_and_speaks_inches_in_a_room_of_inches(make_window, trade):
    window = make_window(plain_room(trade))
    row = window.measurements.row((window.session.wall_id,), "width")
    type_into(row.field, "50")
    said = row.error.text()
    assert said.startswith("Opening 1 ")
    assert " mm" not in said
    assert " in" in said


def test_clearances_follow_the_wall_s_end(window):
    def figures() -> list[str]:
        groups = window.canvas.picture.groups(window.canvas.viewport, window.canvas.shown)
        return [record.text for group in groups if group.layer == "clearance" for record in group.records
                if isinstance(record, Text)]  # fmt: skip

    before = figures()
    session = window.session
    wider = parse_length("150 in")
    session.commit(replace_at(session.committed, (session.wall_id,), width=wider), msg("Measure again"), ())
    assert figures() != before


def test_another_unit_keeps_the_figures_that_were_typed(qtbot, trade):
    dialog = NewRoom(trade, "in")
    qtbot.addWidget(dialog)
    type_into(dialog.rows["width"].field, "4200 mm")
    type_into(dialog.rows["ceiling"].field, "8'")
    dialog.unit.choose("mm")
    assert dialog.rows["width"].field.text() == "4200 mm"
    assert dialog.rows["ceiling"].field.text() == "8'"


@pytest.mark.parametrize(
    ("places", "shown"),
    [
        pytest.param([0, 100], 2, id="two from afar"),
        pytest.param([NEAR_PX + 1], 0, id="too far"),
        pytest.param([10 * step for step in range(11)], MOST_NEAR, id="a crowd"),
        pytest.param([CROWD_PX + 10 + step for step in range(8)], 1, id="a crowd at a distance shows its nearest"),
    ],
)
def test_a_crowd_of_handles_does_not_hide_the_wall(places, shown):
    viewport = Viewport(px_per_mm=1.0)
    handles = [SimpleNamespace(at=(float(x), 0.0)) for x in places]
    x, y = viewport.to_px((0.0, 0.0))
    near = handles_near(handles, viewport, x, y)
    assert len(near) == shown
    distances = [handle.at[0] for handle in near]
    assert distances == sorted(distances)
    if near:
        assert distances[0] == min(places)


def test_a_length_is_read_in_the_unit_that_was_chosen_last(qtbot, trade):
    dialog = NewRoom(trade, "in")
    qtbot.addWidget(dialog)
    dialog.unit.choose("mm")
    taken: list[Length] = []
    dialog.rows["width"].field.entered.connect(taken.append)
    type_into(dialog.rows["width"].field, "4200")
    assert [length.mm for length in taken] == [4200.0]
