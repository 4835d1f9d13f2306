"""Many windows from the window itself: same as, duplicates, one height, readings, as built, the house."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from elevation import places
from elevation.room.edits import replace_at
from elevation.room.file import load_room, save_room
from elevation.room.find import layer_of, opening_of, wall_of
from elevation.room.model import Built, Room
from elevation.units import parse_length
from elevation.window.house import show_house
from elevation.window.same_as import SameAs
from elevation.words import msg
from tests.window.conftest import demo

LIVING = "2-living-room.room.json"


def first_layer(room: Room) -> tuple[str, ...]:
    wall = room.walls[0]
    scheme = wall.schemes[0]
    return (wall.id, scheme.id, scheme.treatments[0].id, scheme.treatments[0].layers[0].id)


@pytest.fixture
def living(make_window):
    return make_window(demo(LIVING))


def test_same_as_carries_what_was_ticked_with_one_undo(living) -> None:
    session = living.session
    source = living.commands.copying.treatment()
    dialog = SameAs(session.committed, source, living)
    assert not dialog.act.isEnabled()
    dialog.take_all()
    assert dialog.act.isEnabled()
    for part, box in dialog.boxes.items():
        box.setChecked(part in ("height", "hem"))
    before = session.committed
    living.commands.copying.carry(source, dialog)
    made = session.committed
    assert made is not before
    height = layer_of(made, first_layer(made)).rod.height
    for wall_id, opening in dialog.targets():
        scheme = wall_of(made, wall_id).schemes[0]
        there = next(one for one in scheme.treatments if opening in one.openings)
        assert there.layers[0].rod.height == height
    session.undo()
    assert session.committed is before


def test_every_part_that_may_be_carried_is_read_whole(living) -> None:
    dialog = SameAs(living.session.committed, living.commands.copying.treatment(), living)
    dialog.show()
    QApplication.processEvents()
    for box in dialog.boxes.values():
        assert box.height() >= box.heightForWidth(box.width()), box.text()
        assert box.width() >= 200, box.text()


def test_an_opening_is_duplicated_and_selected(make_window) -> None:
    window = make_window()
    session = window.session
    count = len(session.set_out().openings)
    window.actions_by_name["duplicate-wall"].trigger()
    assert session.wall_id == session.committed.walls[1].id
    window.actions_by_name["duplicate-opening"].trigger()
    if len(session.set_out().openings) == count:
        assert window.statusBar().currentMessage()
    else:
        assert session.selection is not None


def test_all_rods_stand_at_one_height(living) -> None:
    session = living.session
    living.actions_by_name["level-rods"].trigger()
    assert session.committed.one_height
    heights = {round(one.layers[0].support.height_mm) for one in session.set_out().treatments}
    assert len(heights) == 1


def test_three_readings_have_fields_and_the_largest_counts(window) -> None:
    form, session = window.measurements, window.session
    wall = session.committed.walls[0]
    ref = (wall.id, wall.openings[0].id)
    form.thrice.setChecked(True)
    row = form.row(ref, "taken.width_middle")
    # The letter of the paper stands on the screen.
    assert row.label.text().split()[0].endswith("b")
    field = next(one for one in form._order if one.ref == ref and one.field == "taken.width_middle")
    wide = parse_length("40 in")
    form.enter(field, wide)
    assert opening_of(session.committed, ref).width == wide
    top = next(one for one in form._order if one.ref == ref and one.field == "taken.width_top")
    form.enter(top, parse_length("39 3/4 in"))
    assert opening_of(session.committed, ref).width == wide
    form.refresh()
    assert "40" in form._counts[ref, "width"].text()


def test_readings_after_hanging_say_as_built(window) -> None:
    session = window.session
    window.refresh()
    assert window.state.text() == "PLANNED"
    ref = first_layer(session.committed)
    window.hang.refresh()
    fact = next(one for one in window.hang.form._facts if one.field == "built.floor_left")
    window.hang.form.enter(fact, parse_length("84 in"))
    window.refresh()
    assert layer_of(session.committed, ref).built.floor_left == parse_length("84 in")
    assert window.state.text() == "AS BUILT" or window.state.text() == "PARTLY AS BUILT"


def test_a_house_shows_every_wall_and_walks_to_one(make_window, tmp_path, qtbot) -> None:
    for name in ("1-bedroom.room.json", LIVING):
        save_room(demo(name), tmp_path / name)
    (tmp_path / "3-broken.room.json").write_text("{", encoding="utf-8")
    window = make_window()
    house = show_house(window, tmp_path)
    assert house is not None
    house.finish()
    walls = sum(len(demo(name).walls) for name in ("1-bedroom.room.json", LIVING))
    assert house.tiles.count() == walls + 1
    assert "cannot be read" in house.tiles.item(walls).text()
    last = house.tiles.item(walls - 1)
    house.tiles.scrollToItem(last)
    QTest.mouseClick(house.tiles.viewport(), Qt.MouseButton.LeftButton, pos=house.tiles.visualItemRect(last).center())
    assert window.session.path == tmp_path / LIVING
    assert window.session.wall_id == demo(LIVING).walls[-1].id
    house.close()


def test_a_folder_without_rooms_says_so(window, tmp_path) -> None:
    assert show_house(window, tmp_path) is None
    assert "holds no room" in window.statusBar().currentMessage()


def test_demo_rooms_are_a_house(window) -> None:
    house = show_house(window, places.demo_rooms())
    assert house is not None
    house.finish()
    assert all(wall.set_out is not None for wall in house.walls)
    house.close()


def test_a_house_is_shown_in_every_scheme_and_a_tile_opens_its_own(make_window):
    window = make_window()
    house = show_house(window, places.demo_rooms())
    assert house is not None
    house.finish()
    first = len(house.walls)
    house.every.setChecked(True)
    house.finish()
    rooms = [load_room(path) for path in sorted(places.demo_rooms().glob("*.room.json"))]
    assert len(house.walls) == sum(max(len(wall.schemes), 1) for room in rooms for wall in room.walls) > first
    second = next(one for one in house.walls if one.set_out.scheme not in (None, "s1") and one.set_out.scheme_name)
    assert second.set_out.scheme_name in house.tiles.item(house.walls.index(second)).text()
    house._choose(house.tiles.item(house.walls.index(second)))
    assert (window.session.wall_id, window.session.scheme_id) == (second.set_out.wall, second.set_out.scheme)
    house.close()


@pytest.mark.parametrize("number", [0, -1])
def test_a_bracket_stands_where_its_place_is_typed_also_after_it_was_read(window, number) -> None:
    """The reading from bracket to bracket is of another place then: kept, it would halve the move."""
    session, ref = window.session, window.hang.layer_ref
    session.commit(
        replace_at(session.committed, ref, built=Built(bracket_to_bracket=parse_length("56 in"))), msg("Read"), ref
    )
    window.refresher.now()

    def brackets():
        return session.set_out().treatments[0].layers[0].brackets

    before = brackets()[number].x_mm
    fact = next(one for one in window.hang.form._facts if one.ref == brackets()[number].ref and one.field == "place.at")
    window.hang.form.enter(fact, parse_length("4 in"))
    assert layer_of(session.committed, ref).built.bracket_to_bracket is None
    support = session.set_out().treatments[0].layers[0].support
    inward = {0: support.left_mm + 4 * 25.4, -1: support.right_mm - 4 * 25.4}[number]
    assert brackets()[number].x_mm == pytest.approx(inward)
    assert brackets()[number].x_mm != pytest.approx(before)
