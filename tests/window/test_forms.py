"""Forms and canvas show one room: what is typed on one side stands on the other at once."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from elevation.room.find import wall_of
from elevation.sheet.records import Dimension
from elevation.sheet.tape_order import fields
from elevation.window.length_field import FieldRow, LengthField


def type_into(field: LengthField, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def wall(window):
    return wall_of(window.session.committed, window.session.wall_id)


def test_the_form_has_every_measurement_in_tape_order_with_its_number(window):
    order = fields(wall(window))
    labels = [window.measurements.row(field.ref, field.field).label.text() for field in order]
    assert [int(label.split()[0]) for label in labels] == list(range(1, len(order) + 1))


def test_a_typed_measurement_moves_the_wall(window):
    here = (window.session.wall_id,)
    row = window.measurements.row(here, "width")
    type_into(row.field, "12' 6 1/2\"")
    assert wall(window).width.mm == pytest.approx(150.5 * 25.4)
    assert window.session.set_out().width_mm == pytest.approx(150.5 * 25.4)
    assert "wall" in str(window.session.undo_label.params["what"].template)


@pytest.mark.parametrize("text", ["1,28 m", "36 + 2*3 1/2", "4 ft 2.5 in", "1279mm", '50-3/8"'])
def test_a_field_takes_everything_that_a_length_may_be(qtbot, text):
    from elevation.units import parse_length

    field = LengthField()
    qtbot.addWidget(field)
    taken = []
    field.entered.connect(taken.append)
    field.setText(text)
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert [length.mm for length in taken] == [parse_length(text, "in").mm]


def test_a_located_sentence_stands_under_the_field(window):
    row = window.measurements.row((window.session.wall_id,), "width")
    before = window.session.committed
    type_into(row.field, "12 feet and a bit")
    assert window.session.committed is before
    assert row.error.isVisible()
    assert row.error.text()
    assert row.field.accessibleDescription() == row.error.text()
    type_into(row.field, "150")
    assert not row.error.isVisible()
    assert wall(window).width.mm == pytest.approx(150 * 25.4)


def test_what_cannot_be_is_refused_under_its_field(window):
    opening = wall(window).openings[0]
    row = window.measurements.row((window.session.wall_id, opening.id), "width")
    before = window.session.committed
    type_into(row.field, "900")
    assert window.session.committed is before
    assert row.error.isVisible()


def test_esc_in_a_field_gives_back_what_stood_there(window):
    row = window.measurements.row((window.session.wall_id,), "width")
    text = row.field.text()
    row.field.setFocus()
    QTest.keyClicks(row.field, "99")
    QTest.keyClick(row.field, Qt.Key.Key_Escape)
    assert row.field.text() == text


def test_the_focused_field_lights_its_dimension(window):
    here = (window.session.wall_id,)
    canvas = window.canvas
    plain = canvas.grab().toImage()
    window.measurements.row(here, "width").field.setFocus()
    assert canvas._lit == (here, "width")
    lit = canvas.grab().toImage()
    groups = canvas.picture.groups(canvas.viewport, canvas.shown)
    line = next(
        record for group in groups for record in group.records
        if isinstance(record, Dimension) and record.ref == here and record.field == "width"
    )  # fmt: skip
    x, y = canvas.viewport.to_px(((line.a[0] + line.b[0]) / 4, line.line))
    rows = range(round(y) - 1, round(y) + 2)
    assert [plain.pixel(round(x), row) for row in rows] != [lit.pixel(round(x), row) for row in rows]
    canvas.setFocus()
    assert canvas._lit is None


def test_a_drag_is_read_in_the_form_at_once(window, mouse):
    handle = next(handle for handle in window.canvas.handles() if handle.axis == "wall-end")
    row = window.measurements.row((window.session.wall_id,), "width")
    text = row.field.text()
    mouse.press(*handle.at)
    mouse.move(handle.at[0] + 200, handle.at[1])
    window.refresher.now()
    assert row.field.text() != text
    mouse.release()


def test_a_blank_link_is_worked_out_and_shown_faintly(window):
    opening = wall(window).openings[0]
    key = (window.session.wall_id, opening.id)
    field = "gap" if opening.gap is not None else "left"
    row = window.measurements.row(key, field)
    text = row.field.text()
    type_into(row.field, "")
    window.refresher.now()
    window.measurements.refresh()
    row = window.measurements.row(key, "gap")
    assert row.field.text() == ""
    # The others are full, so the blank one must come out as what it was.
    if field == "gap":
        assert row.field.placeholderText() == f"= {text.removesuffix(' in')}"


def test_a_full_chain_that_does_not_close_says_so(window):
    type_into(window.measurements.row((window.session.wall_id,), "gap_right").field, "55")
    window.measurements.refresh()
    assert window.measurements._closing.isVisible()
    assert "in" in window.measurements._closing.text()


def test_hang_form_changes_cloth_rod_and_panels(window):
    ref = window.hang.layer_ref
    window.drawers[2].set_open(True)
    rows = window.hang.form.rows
    rows[ref, "heading"].editor.choose(
        "rod-pocket" if "rod-pocket" in window.session.trade.headings else next(iter(window.session.trade.headings))
    )
    colour = rows[ref, "fabric.colour"].editor
    colour.setFocus()
    colour.selectAll()
    QTest.keyClicks(colour, "#336699")
    QTest.keyClick(colour, Qt.Key.Key_Return)
    layer = window.session.committed.walls[0].schemes[0].treatments[0].layers[0]
    assert layer.fabric.colour == "#336699"
    window.hang.refresh()
    panel = (*ref, layer.panels[0].id)
    width = window.hang.form.rows[panel, "flat_width"]
    assert isinstance(width, FieldRow)
    type_into(width.field, "60")
    layer = window.session.committed.walls[0].schemes[0].treatments[0].layers[0]
    assert layer.panels[0].flat_width.mm == pytest.approx(60 * 25.4)


@pytest.mark.parametrize("hold", ["above-head", "above-casing", "below-ceiling", "above-floor"])
def test_holding_something_else_leaves_the_rod_where_it_is(window, hold):
    ref = window.hang.layer_ref
    before = window.session.set_out().treatments[0].layers[0].support.height_mm
    window.hang.form.rows[ref, "rod.height.hold"].editor.choose(hold)
    layer = window.session.committed.walls[0].schemes[0].treatments[0].layers[0]
    assert layer.rod.height.hold == hold
    after = window.session.set_out().treatments[0].layers[0].support.height_mm
    assert after == pytest.approx(before, abs=25.4 / 32)


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("hold", ["beyond-opening", "beyond-casing", "from-corner", "rod-length"])
def test_holding_an_end_by_something_else_leaves_it_there(window, side, hold):
    ref = window.hang.layer_ref
    before = window.session.set_out().treatments[0].layers[0].support
    window.hang.form.rows[ref, f"rod.{side}.hold"].editor.choose(hold)
    after = window.session.set_out().treatments[0].layers[0].support
    assert after.left_mm == pytest.approx(before.left_mm, abs=25.4 / 16)
    assert after.right_mm == pytest.approx(before.right_mm, abs=25.4 / 16)


def test_brackets_and_panels_come_and_go(window):
    def layer():
        return window.session.committed.walls[0].schemes[0].treatments[0].layers[0]

    brackets, panels = len(layer().brackets), len(layer().panels)
    window.hang.add_bracket.click()
    assert len(layer().brackets) == brackets + 1
    window.hang.refresh()
    window.hang.drop_bracket.click()
    assert len(layer().brackets) == brackets
    window.hang.add_panel.click()
    assert len(layer().panels) == panels + 1
    window.hang.refresh()
    window.hang.drop_panel.click()
    assert len(layer().panels) == panels


def test_things_are_added_to_the_wall_and_taken_away(window):
    window.drawers[1].set_open(True)
    openings, obstacles = len(wall(window).openings), len(wall(window).obstacles)
    window.standing.add_opening.click()
    assert len(wall(window).openings) == openings + 1
    window.refresher.now()
    assert len(window.standing.ref) == 2
    window.standing.drop.click()
    assert len(wall(window).openings) == openings
    window.standing.add_obstacle.click()
    assert len(wall(window).obstacles) == obstacles + 1
    window.standing.add_floor.click()
    assert len(wall(window).floor) >= 2


@pytest.mark.parametrize("head", ["segmental", "half-round", "raked", "flat"])
def test_every_head_can_be_chosen(window, head):
    window.drawers[1].set_open(True)
    opening = wall(window).openings[0]
    window.session.selection = (window.session.wall_id, opening.id)
    window.standing.refresh()
    ref = (window.session.wall_id, opening.id)
    window.standing.form.rows[ref, "head.kind"].editor.choose(head)
    assert wall(window).openings[0].head.kind == head
    assert window.session.set_out().openings[0].head == head


def test_the_table_of_handles_is_two_way(window, mouse):
    model = window.handles.handles
    window.handles.refresh()
    row = next(i for i, handle in enumerate(model.order) if handle.axis == "rod-height")
    cell = model.index(row, 1)
    assert model.setData(cell, "6 1/2")
    handle = window.session.handle(*model.order[row].key)
    assert handle.shown_mm(handle.value_mm) == pytest.approx(6.5 * 25.4)
    window.handles.refresh()
    before = model.data(model.index(row, 1))
    mouse.drag(handle, -60)
    window.refresher.now()
    assert model.data(model.index(row, 1)) != before
    refused = []
    model.refused.connect(refused.append)
    assert not model.setData(cell, "six")
    assert refused
    assert refused[-1]


def test_the_table_passes_qts_own_model_test(window, qtmodeltester):
    window.handles.refresh()
    qtmodeltester.check(window.handles.handles, force_py=True)


def test_bare_figures_take_the_rooms_unit_once_it_changes(window):
    from elevation.room.edits import replace_at
    from elevation.words import msg

    window.session.commit(replace_at(window.session.committed, (), unit="mm"), msg("Change the unit"))
    window.refresher.now()
    type_into(window.measurements.row((window.session.wall_id,), "width").field, "3900")
    assert wall(window).width.mm == 3900


def test_a_bare_opening_is_dressed_and_undressed(make_window, demo_room):
    window = make_window(demo_room("3-attic.room.json"))
    scheme = window.session.committed.walls[0].schemes[0]
    count = len(scheme.treatments)
    assert count < len(window.session.committed.walls[0].openings)
    window.hang.add_treatment.click()
    now = window.session.committed.walls[0].schemes[0].treatments
    assert len(now) == count + 1
    assert window.session.selection[2] == now[-1].id
    covered = set(now[-1].openings)
    assert not covered & {key for treatment in now[:-1] for key in treatment.openings}
    window.hang.refresh()
    assert window.hang.layer_ref[2] == now[-1].id
    window.hang.drop_treatment.click()
    assert len(window.session.committed.walls[0].schemes[0].treatments) == count


def test_a_dressed_wall_takes_no_more(window):
    said = []
    window.hang.refused.connect(said.append)
    window.hang.add_treatment.click()
    assert said
    assert "dressed" in said[-1]


def test_a_wall_without_any_treatment_can_be_dressed(window):
    window.hang.drop_treatment.click()
    assert window.session.set_out().treatments == ()
    window.hang.refresh()
    assert not window.hang.form.isVisibleTo(window.hang)
    window.hang.add_treatment.click()
    assert len(window.session.set_out().treatments) == 1


def test_a_treatment_covers_what_is_ticked(make_window, demo_room):
    window = make_window(demo_room("2-living-room.room.json"))
    ref = window.hang.layer_ref[:3]
    opening = window.session.committed.walls[0].openings[0]
    box = window.hang.form.rows[ref, f"covers {opening.id}"].editor
    assert box.isChecked()
    box.click()
    treatment = window.session.committed.walls[0].schemes[0].treatments[0]
    assert opening.id not in treatment.openings
    assert len(window.session.set_out().treatments[0].openings) == len(treatment.openings)


def test_undo_is_the_rooms_in_a_field_where_nothing_is_being_typed(window, qtbot):
    """Enter leaves the keyboard in the next field: undo pressed there takes back what was just entered."""
    here = (window.session.wall_id,)
    row = window.measurements.row(here, "width")
    before = window.session.committed
    type_into(row.field, "150")
    after = window.session.committed
    assert after is not before
    focused = window.focusWidget()
    assert isinstance(focused, LengthField)
    # The command is told what can be undone when the window is painted next.
    qtbot.waitUntil(window.actions_by_name["undo"].isEnabled)
    QTest.keyClick(focused, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.session.committed is before
    qtbot.waitUntil(window.actions_by_name["redo"].isEnabled)
    QTest.keyClick(focused, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
    assert window.session.committed is after
    text = focused.text()
    QTest.keyClicks(focused, "7")
    QTest.keyClick(focused, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert focused.text() == text
    assert window.session.committed is after
