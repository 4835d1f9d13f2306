"""A house is a folder of rooms, looked at wall by wall; one bad room hides none of the others."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.findings.all_rules import find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Scene, Weight
from elevation.places import demo_rooms
from elevation.planning.house import look, rooms_in
from elevation.room.edits import replace_at, replace_rod
from elevation.room.file import load_room, save_room
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.records import Polyline
from elevation.sheet.small import small_elevation
from tests.findings.rooms import LAYER, good_room, held, inch, trade


def test_rooms_come_by_name_and_other_files_are_left_alone(tmp_path: Path) -> None:
    for name in ("b.room.json", "a.room.json", "notes.json", "a.room.json.bak"):
        (tmp_path / name).write_text("{}", encoding="utf-8")
    (tmp_path / "c.room.json").mkdir()
    assert [path.name for path in rooms_in(tmp_path)] == ["a.room.json", "b.room.json"]


def test_a_folder_without_rooms_and_one_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="holds no room"):
        rooms_in(tmp_path)
    with pytest.raises(BadInput, match="cannot be read"):
        rooms_in(tmp_path / "nowhere")


def test_a_wall_is_counted_as_the_rules_find_it(tmp_path: Path) -> None:
    # One thing broken (2 in over the casing), and casing and crown not measured.
    room = replace_rod(good_room(), LAYER, height=held("above-head", inch(2)))
    room = replace_at(room, ("w1", "o1"), casing=None)
    save_room(room, tmp_path / "one.room.json")
    (wall,) = look(tmp_path / "one.room.json", trade())
    out = set_out_afresh(room, "w1", "s1", trade())
    findings = find(Scene(room, out, trade()), TreatmentMemo(find_afresh))
    assert wall.broken == sum(one.weight is Weight.BROKEN for one in findings) >= 1
    assert wall.stops == sum(one.weight is Weight.STOP for one in findings)
    assert wall.advice == sum(one.weight is Weight.CONSIDER for one in findings)
    assert wall.missing == len(out.missing) >= 2


def test_a_room_that_cannot_be_read_says_why(tmp_path: Path) -> None:
    (tmp_path / "bad.room.json").write_text("{", encoding="utf-8")
    (wall,) = look(tmp_path / "bad.room.json", trade())
    assert wall.set_out is None
    assert "bad.room.json" in str(wall.error)
    assert wall.room_name == "bad"


def test_a_room_goes_by_its_name_else_by_its_file_s(tmp_path: Path) -> None:
    path = tmp_path / "attic.room.json"
    save_room(good_room(), path)
    assert [wall.room_name for wall in look(path, trade())] == ["attic"]
    save_room(replace_at(good_room(), (), name="Loft"), path)
    assert [wall.room_name for wall in look(path, trade())] == ["Loft"]


def test_the_first_scheme_of_a_wall_is_looked_at_and_a_bare_wall_as_well(tmp_path: Path) -> None:
    low = replace_rod(good_room(), LAYER, height=held("above-casing", inch(2)))
    good, broken = good_room().walls[0].schemes[0], low.walls[0].schemes[0]
    path = tmp_path / "one.room.json"
    for schemes, count in (((good, replace(broken, id="s2")), 0), ((broken, replace(good, id="s2")), 1), ((), 0)):
        save_room(good_room(schemes=schemes), path)
        (wall,) = look(path, trade())
        assert wall.error is None
        assert wall.broken == count


@pytest.mark.parametrize("path", sorted(demo_rooms().glob("*.room.json")), ids=lambda path: path.name)
def test_every_small_wall_stays_inside_its_tile(path: Path) -> None:
    room = load_room(path)
    for wall in look(path, trade()):
        assert wall.set_out is not None
        picture = small_elevation(wall.set_out, trade(), 70.0, 44.0)
        points = [
            point
            for group in picture.groups
            if group.layer == "wall"
            for record in group.records
            if isinstance(record, Polyline)
            for point in record.points
        ]
        assert points
        for x, y in points:
            assert -1e-6 <= float(x) / picture.scale + picture.origin[0] <= 70.0 + 1e-6
            assert -1e-6 <= float(y) / picture.scale + picture.origin[1] <= 44.0 + 1e-6
    assert len(list(look(path, trade()))) == len(room.walls)
