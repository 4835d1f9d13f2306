"""What stopped people who saw the window for the first time, each fault with the test that keeps it away."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from PySide6.QtCore import QLocale, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QStyleOptionComboBox

from elevation.errors import BadInput
from elevation.room.edits import replace_at
from elevation.room.find import wall_of
from elevation.room.first import FirstFacts, first_room
from elevation.room.validate import check_room
from elevation.sheet.records import Text
from elevation.sheet.tape_order import fields
from elevation.units import Length, parse_length
from elevation.window.choice import Choice
from elevation.window.fact_form import FactForm
from elevation.window.flag import Flag
from elevation.window.length_field import FieldRow
from elevation.window.new_room import NewRoom, usual_unit
from elevation.window.new_room_sketch import LINES
from elevation.window.picking import CROWD_PX, MOST_NEAR, NEAR_PX, handles_near
from elevation.window.plain_words import kind_at, plain_words
from elevation.window.texts import tr, use_language
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


def test_figures_typed_without_a_unit_follow_the_unit_that_is_chosen_after_them(qtbot, trade):
    dialog = NewRoom(trade, "in")
    qtbot.addWidget(dialog)
    type_into(dialog.rows["width"].field, "4200")
    assert dialog.rows["width"].field.text() == "4200 in"
    dialog.unit.choose("mm")
    assert dialog.rows["width"].field.text() == "4200 mm"


@pytest.mark.parametrize(("name", "unit"), [("en_US", "in"), ("de_DE", "mm"), ("en_AU", "mm"), ("C", "in")])
def test_a_first_room_begins_in_the_unit_of_the_country(name, unit):
    # Unicode CLDR, supplemental measurementData: US is the US system, DE and AU are metric.
    assert usual_unit(QLocale(name)) == unit


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


def test_a_new_room_names_its_wall_and_scheme_in_words(qtbot, trade):
    dialog = NewRoom(trade, "in")
    qtbot.addWidget(dialog)
    for key, text in {"width": "150", "ceiling": "96", "opening_width": "38", "sill": "30", "opening_height": "48"}.items():
        dialog.rows[key].field.setText(text)
    dialog.make()
    made = dialog.room.walls[0]
    assert (made.name, made.schemes[0].name) == ("Wall 1", "First idea")


def test_a_rod_is_taken_anywhere_along_it(window, mouse):
    support = window.session.set_out().treatments[0].layers[0].support
    before = support.height_mm
    x = support.left_mm + 0.3 * (support.right_mm - support.left_mm)
    mouse.press(x, before)
    assert window.canvas.hand.handle.axis == "rod-height"
    mouse.move(x, before + 30)
    mouse.release()
    after = window.session.set_out().treatments[0].layers[0].support.height_mm
    assert after == pytest.approx(before + 30, abs=8)
    assert window.session.undo_label is not None


def test_a_click_on_a_rod_selects_it_and_edits_nothing(window, mouse):
    layer = window.session.set_out().treatments[0].layers[0]
    x = layer.support.left_mm + 0.3 * (layer.support.right_mm - layer.support.left_mm)
    mouse.press(x, layer.support.height_mm)
    mouse.release()
    assert window.session.selection == layer.ref
    assert not window.session.is_modified


def test_new_findings_are_announced_once_the_hand_is_still(window, mouse):
    said: list[str] = []
    window.findings.announcer.said.connect(said.append)
    handle = next(one for one in window.session.handles() if one.axis == "rod-height")
    mouse.press(*handle.at)
    mouse.move(handle.at[0], handle.at[1] - 40)
    window.findings.refresh()
    assert said == []
    mouse.release()
    window.findings.refresh()
    heavy = [one for one in window.session.findings() if one.weight != "consider"]
    assert heavy
    assert len(said) == 1
    window.session.undo()
    window.findings.refresh()
    assert len(said) == 2
    assert said[1] == "Nothing is broken any more."


def test_remedies_of_an_opened_finding_are_in_sight(make_window, trade):
    window = make_window(plain_room(trade))
    QTest.qWait(250)
    row = window.findings.rows[0]
    row.head.setChecked(True)
    QTest.qWait(50)
    drawer = window.drawers[3]
    last = row.more
    bottom = last.mapTo(drawer.area.viewport(), last.rect().bottomLeft()).y()
    top = row.mapTo(drawer.area.viewport(), row.rect().topLeft()).y()
    assert bottom <= drawer.area.viewport().height() or top >= 0


def test_a_short_drawer_leaves_its_height_to_the_others(make_window, demo_room):
    window = make_window(demo_room("4-flat.room.json"))
    QTest.qWait(400)
    findings = window.drawers[3]
    assert not window.session.findings()
    assert findings.height() < window.drawers[4].height()
    assert findings.area.height() >= 64


def test_what_is_too_long_for_a_choice_ends_in_an_ellipsis(qtbot):
    choice = Choice("hold")
    qtbot.addWidget(choice)
    choice.resize(110, 26)
    choice.offer([("a", "in from the right end of the rod")], "a")
    choice.show()
    option = QStyleOptionComboBox()
    choice.initStyleOption(option)
    assert choice._elided(option).endswith("…")


def test_a_limit_of_the_room_is_typed_and_given_back(window):
    window.standing.which.choose("/limits")
    row = window.standing.form.rows[(), "limits.rod-low"]
    assert row.field.placeholderText() == "= 3"
    type_into(row.field, "2 1/2")
    assert window.session.committed.limits["rod-low"].mm == pytest.approx(63.5)
    row = window.standing.form.rows[(), "limits.rod-low"]
    row.field.setFocus()
    row.field.selectAll()
    QTest.keyClick(row.field, Qt.Key.Key_Delete)
    QTest.keyClick(row.field, Qt.Key.Key_Return)
    assert "rod-low" not in window.session.committed.limits
    assert not window.standing.drop.isEnabled()


def test_a_corner_has_its_neighbour_and_its_angle(make_window, demo_room):
    window = make_window(demo_room("2-living-room.room.json"))
    here = (window.session.wall_id,)
    form = window.standing.form
    angle = form.rows[here, "left.angle"].editor
    angle.setFocus()
    angle.selectAll()
    QTest.keyClicks(angle, "135")
    QTest.keyClick(angle, Qt.Key.Key_Return)
    assert wall(window).left.angle == 135
    other = next(one.id for one in window.session.committed.walls if one.id != here[0])
    form.rows[here, "left.neighbour"].editor.choose(other)
    assert wall(window).left.neighbour == other
    form.rows[here, "left.neighbour"].editor.choose("")
    assert wall(window).left.neighbour is None
    form.rows[here, "left.kind"].editor.choose("open")
    window.standing.refresh()
    assert (here, "left.angle") not in form.rows


def test_an_angle_that_cannot_be_is_refused(make_window, demo_room):
    window = make_window(demo_room("2-living-room.room.json"))
    before = wall(window).left.angle
    refused: list[str] = []
    window.standing.refused.connect(refused.append)
    angle = window.standing.form.rows[(window.session.wall_id,), "left.angle"].editor
    for text in ("square", "400"):
        angle.setFocus()
        angle.selectAll()
        QTest.keyClicks(angle, text)
        QTest.keyClick(angle, Qt.Key.Key_Return)
        assert wall(window).left.angle == before
    assert [bool(sentence) for sentence in refused] == [True, True]


def test_a_long_flag_breaks_its_text_and_never_pushes_fields_out_of_the_panel(qtbot):
    flag = Flag("Breiten und Höhen an drei Stellen gemessen, oben, in der Mitte und unten")
    qtbot.addWidget(flag)
    assert flag.minimumSizeHint().width() <= 100
    flag.resize(200, flag.heightForWidth(200))
    assert flag.heightForWidth(200) > flag.heightForWidth(800)
    flag.show()
    QTest.mouseClick(flag, Qt.MouseButton.LeftButton, pos=QPoint(120, flag.height() - 8))
    assert flag.isChecked()


def test_no_form_is_wider_than_its_panel(make_window, demo_room):
    window = make_window(demo_room("6-hall.room.json"))
    for drawer in window.drawers[:3]:
        drawer.set_open(True)
        QTest.qWait(10)
        assert drawer.content.minimumSizeHint().width() <= drawer.area.viewport().width(), drawer.objectName()


def test_a_field_says_in_plain_words_what_it_means_while_it_has_the_keyboard(window):
    opening = wall(window).openings[0]
    bar = window.statusBar()
    window.measurements.row((window.session.wall_id, opening.id), "reveal").field.setFocus()
    assert bar.currentMessage().startswith("The reveal is ")
    window.measurements.row((window.session.wall_id,), "ceiling.0.height").field.setFocus()
    assert "floor" in bar.currentMessage()
    window.canvas.setFocus()
    assert bar.currentMessage() == ""
    window.tell("Saved to den.room.json.")
    window.measurements.lit.emit((), "")
    assert bar.currentMessage() == "Saved to den.room.json."


def test_every_measurement_of_the_tape_is_explained(window):
    unexplained = {field.field for field in fields(wall(window)) if plain_words(field.field) is None}
    assert unexplained <= {"sash.handle_out", "bottom"}


SPEAK_FOR_THEMSELVES = {
    "name", "unit", "language", "kind", "head.kind", "sash.kind", "sash.hinge", "stool", "wall", "colour", "place.hold",
    "fabric.name", "fabric.colour", "fabric.ink", "rod.height.hold", "rod.left.hold", "rod.right.hold",
}  # fmt: skip


def test_every_row_of_the_forms_is_explained_to_the_pointer_and_to_who_listens(make_window, demo_room):
    for name in ("1-bedroom", "7-guest-room"):
        window = make_window(demo_room(f"{name}.room.json"))
        for drawer in window.drawers[:3]:
            drawer.set_open(True)
        bare = set()
        for form in window.findChildren(FactForm):
            for (ref, field), row in form.rows.items():
                words = plain_words(field, kind_at(window.session.room, ref))
                if words is None and not field.startswith("covers "):
                    bare.add(field)
                if words is None:
                    continue
                assert row.toolTip() == tr(words)
                if not isinstance(row, FieldRow):
                    assert row.editor.accessibleDescription() == tr(words)
        assert bare <= SPEAK_FOR_THEMSELVES, bare - SPEAK_FOR_THEMSELVES


def test_a_bracket_s_height_is_not_explained_as_an_opening_s():
    assert plain_words("height", "Opening") != plain_words("height", "Bracket")
    assert plain_words("height", "Obstacle") not in (plain_words("height", "Opening"), None)
    assert plain_words("tie.hold") == plain_words("tie")


@pytest.mark.parametrize(("by", "field"), [((60.0, 8.0), "left"), ((8.0, 60.0), "bottom")])
def test_an_obstacle_is_taken_anywhere_on_it_and_goes_the_way_it_is_pulled(window, mouse, by, field):
    picture = next(one for one in wall(window).obstacles if one.kind == "picture")
    x = picture.left.mm + picture.width.mm * 0.4
    y = picture.bottom.mm + picture.height.mm * 0.6
    mouse.press(x, y)
    mouse.move(x + by[0], y + by[1])
    mouse.release()
    after = next(one for one in wall(window).obstacles if one.id == picture.id)
    other = "bottom" if field == "left" else "left"
    assert getattr(after, field).mm == pytest.approx(getattr(picture, field).mm + 60, abs=12)
    assert getattr(after, other) == getattr(picture, other)


def test_the_bare_wall_still_shifts_the_paper(window, mouse):
    before, room = window.canvas.viewport, window.session.committed
    mouse.press(300.0, 2000.0)
    mouse.move(400.0, 1900.0)
    mouse.release()
    assert window.canvas.viewport != before
    assert window.session.committed is room


def test_a_wall_that_grows_stays_in_sight_until_somebody_zooms(window):
    def right_px() -> float:
        return window.canvas.viewport.to_px((window.session.set_out().width_mm, 0.0))[0]

    row = window.measurements.row((window.session.wall_id,), "width")
    type_into(row.field, "250")
    assert right_px() < window.canvas.width()
    window.canvas.zoom(1.01)
    seen = window.canvas.viewport
    type_into(row.field, "260")
    assert window.canvas.viewport == seen


def test_what_cannot_be_read_is_said_in_the_reader_s_language(window):
    row = window.measurements.row((window.session.wall_id,), "width")
    use_language("de")
    try:
        type_into(row.field, "12x")
        assert "der Text endet" in row.error.text()
        assert "number" not in row.error.text()
    finally:
        use_language("en")
    type_into(row.field, "12y")
    assert "character" in row.error.text()
    assert "Wall, left end" not in row.error.text()


def test_what_cannot_be_is_said_in_the_reader_s_language_and_unit(make_window, trade):
    window = make_window(plain_room(trade))
    row = window.measurements.row((window.session.wall_id,), "width")
    use_language("de")
    try:
        type_into(row.field, "50")
        # 148 1/2 in wall, opening 38 in wide in its middle: 55 1/4 + 38 - 50 = 43 1/4 in past the end, by hand.
        assert (
            row.error.text()
            == "Öffnung 1 reicht 43¹⁄₄ in über das rechte Wandende bei 50 in hinaus; beide noch einmal messen"
        )
        type_into(row.field, "0")
        assert row.error.text() == "Ist 0 in; es muss mehr als null sein"
    finally:
        use_language("en")


def test_a_refusal_nobody_reads_in_a_window_stays_metric_and_english(trade):
    room = plain_room(trade)
    narrow = replace_at(room, (room.walls[0].id,), width=parse_length("1270 mm"))
    with pytest.raises(
        BadInput, match=r"openings\[0\]: reaches 1\.099 m past the wall's right end at 1270 mm; measure both"
    ):
        check_room(narrow, "den")


def test_the_new_rooms_form_shows_where_the_tape_goes(qtbot, trade):
    dialog = NewRoom(trade, "in")
    qtbot.addWidget(dialog)
    with qtbot.waitActive(dialog):
        dialog.show()
    assert list(LINES) == list(dialog.rows)
    before = dialog.sketch.grab().toImage()
    dialog.rows["casing"].field.setFocus()
    assert dialog.sketch.lit == "casing"
    assert "trim" in dialog.hint.text()
    assert dialog.sketch.grab().toImage() != before
    dialog.name.setFocus()
    assert (dialog.sketch.lit, dialog.hint.text()) == ("", "")


def test_a_new_rooms_sheets_speak_the_language_of_the_window(qtbot, trade):
    use_language("de")
    try:
        dialog = NewRoom(trade, "mm")
        qtbot.addWidget(dialog)
        facts = {"width": "4000", "ceiling": "2500", "opening_width": "1200", "sill": "900", "opening_height": "1300"}
        for key, text in facts.items():
            dialog.rows[key].field.setText(text)
        dialog.make()
    finally:
        use_language("en")
    assert (dialog.room.language, dialog.room.walls[0].name) == ("de", "Wand 1")


def test_a_first_window_says_whose_room_it_shows_and_how_to_begin_and_no_later_one_does(make_window, monkeypatch):
    window = make_window()
    assert window.settings.is_first
    window.notices.say_start(None, is_greeted=True)
    assert "demo room" in window.notice.text.text()
    begun = []
    window.actions_by_name["new"].triggered.disconnect()
    window.actions_by_name["new"].triggered.connect(lambda: begun.append(1))
    window.notice.buttons["new"].click()
    assert begun == [1]
    assert window.notice.isHidden()
    window.close()
    assert not make_window().settings.is_first
