"""A room file says the same after any number of loads and saves, and lengths keep the text they were typed with."""

from __future__ import annotations

import json
import time
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation import places
from elevation.room.edits import replace_at, replace_rod
from elevation.room.file import dump_room, load_bytes, load_room, save_room
from elevation.room.model import Held, Opening, Room, Wall
from elevation.units import Length, parse_length
from tests.strategies import random_room, rooms

BY_HAND = """{
  "version": 1, "format": "elevation-room",
  "walls": [{
    "width": "10' 6\\"", "id": "a",
    "ceiling": [{"x": "0in", "height": "8 ft"}],
    "openings": [{
      "id": "o", "height": "4' 2 3/8\\"", "width": "36 in + 1/2 in", "gap": "1,28 m",
      "sill": "0 mm", "casing": "3½ in"
    }]
  }]
}
"""


def demo_files() -> list[Path]:
    return sorted(places.demo_rooms().glob("*.room.json"))


@given(rooms())
def test_every_room_comes_back_equal_and_byte_for_byte(room: Room) -> None:
    data = dump_room(room)
    again = load_bytes(data, "room")
    assert again == room
    assert dump_room(again) == data


@pytest.mark.parametrize("seed", range(40))
def test_fixed_rooms_come_back_equal_and_byte_for_byte(seed: int) -> None:
    room = random_room(seed)
    data = dump_room(room)
    assert load_bytes(data, "room") == room
    assert dump_room(load_bytes(data, "room")) == data


@pytest.mark.parametrize("path", demo_files(), ids=lambda path: path.name)
def test_demo_rooms_are_saved_byte_for_byte(path: Path) -> None:
    assert dump_room(load_room(path)) == path.read_bytes()


def test_files_are_utf8_with_two_spaces_and_defaults_left_out() -> None:
    wall = Wall("w", "Südwand", openings=(Opening("o", Length(914.4, "36 in"), Length(1524.0, "60 in")),))
    data = dump_room(Room(name="Küche", walls=(wall,)))
    text = data.decode("utf-8")
    assert "Küche" in text
    assert "Südwand" in text
    assert '\n  "walls": [\n    {\n      "id": "w"' in text
    assert text.endswith("}\n")
    assert "null" not in text
    # The schema's promise, read by another JSON reader: only what differs from its default stands there.
    plain = json.loads(text)
    assert list(plain) == ["format", "version", "name", "walls"]
    assert list(plain["walls"][0]["openings"][0]) == ["id", "width", "height"]


def test_key_order_does_not_depend_on_the_order_in_the_file() -> None:
    swapped = b'{"walls": [{"width": "3000 mm", "id": "w"}], "unit": "mm", "version": 1, "format": "elevation-room"}'
    usual = b'{"format": "elevation-room", "version": 1, "unit": "mm", "walls": [{"id": "w", "width": "3000 mm"}]}'
    assert dump_room(load_bytes(swapped, "x")) == dump_room(load_bytes(usual, "x"))


def test_limits_are_written_in_order() -> None:
    one = {"rod-low": Length(50.0, "50 mm"), "hem-low": Length(5.0, "5 mm")}
    other = dict(reversed(one.items()))
    wall = (Wall("w"),)
    assert dump_room(Room(limits=one, walls=wall)) == dump_room(Room(limits=other, walls=wall))


def test_a_hand_written_file_means_what_it_says() -> None:
    wall = load_bytes(BY_HAND.encode(), "x").walls[0]
    opening = wall.openings[0]
    # 1 in is 25.4 mm and 1 ft is 304.8 mm exactly: NIST Handbook 44, appendix C.
    assert wall.width is not None
    assert wall.width.mm == pytest.approx(10.5 * 304.8, abs=1e-9)
    assert opening.height.mm == pytest.approx((50 + 3 / 8) * 25.4, abs=1e-9)
    assert opening.width.mm == pytest.approx(36.5 * 25.4, abs=1e-9)
    assert opening.gap is not None
    assert opening.gap.mm == pytest.approx(1280.0, abs=1e-9)


def test_an_edit_never_changes_the_text_of_another_length() -> None:
    room = load_bytes(BY_HAND.encode(), "x")
    edited = replace_at(room, ("a", "o"), height=parse_length("51 in"))
    text = dump_room(edited).decode()
    for typed in ("10' 6\\\"", "0in", "8 ft", "36 in + 1/2 in", "1,28 m", "3½ in"):
        assert f'"{typed}"' in text, typed
    assert '"51 in"' in text
    assert "4' 2 3/8" not in text


@given(st.integers(0, 10_000), st.integers(0, 400))
def test_an_edit_of_a_random_room_keeps_every_other_text(seed: int, mm: int) -> None:
    room = random_room(seed)
    wall = room.walls[0]
    layer = wall.schemes[0].treatments[0].layers[0]
    ref = (wall.id, wall.schemes[0].id, wall.schemes[0].treatments[0].id, layer.id)
    new = Held("above-casing", Length(float(mm), f"{mm} mm"))
    before = _texts(json.loads(dump_room(room)))
    after = _texts(json.loads(dump_room(replace_rod(room, ref, height=new))))
    differing = [path for path in before.keys() | after.keys() if before.get(path) != after.get(path)]
    # What was read of the rod where it hung before goes with it.
    assert all("rod.height" in path or ".built." in path for path in differing)


def _texts(value: object, path: str = "") -> dict[str, object]:
    if isinstance(value, dict):
        return {key: text for name, inner in value.items() for key, text in _texts(inner, f"{path}.{name}").items()}
    if isinstance(value, list):
        return {key: text for at, inner in enumerate(value) for key, text in _texts(inner, f"{path}.{at}").items()}
    return {path: value}


def test_a_byte_order_mark_is_skipped() -> None:
    assert load_bytes(b"\xef\xbb\xbf" + BY_HAND.encode(), "x") == load_bytes(BY_HAND.encode(), "x")


def test_saving_an_unchanged_room_leaves_a_hand_written_file_alone(tmp_path: Path) -> None:
    path = tmp_path / "hand.room.json"
    path.write_text(BY_HAND, encoding="utf-8")
    before = path.stat()
    save_room(load_room(path), path)
    assert path.read_text(encoding="utf-8") == BY_HAND
    assert path.stat().st_ino == before.st_ino
    assert path.stat().st_mtime_ns == before.st_mtime_ns


def test_saving_a_changed_room_writes_it(tmp_path: Path) -> None:
    path = tmp_path / "hand.room.json"
    path.write_text(BY_HAND, encoding="utf-8")
    room = replace_at(load_room(path), (), name="Hall")
    save_room(room, path)
    assert load_room(path) == room
    assert path.read_bytes() == dump_room(room)


def test_null_means_not_measured() -> None:
    room = load_bytes(b'{"format": "elevation-room", "version": 1, "walls": [{"id": "w", "width": null}]}', "x")
    assert room.walls[0].width is None


def test_a_large_room_loads_within_a_second() -> None:
    # Not a benchmark: a guard against work that grows with the square of the file.
    wall = random_room(11).walls[0]
    room = Room(walls=tuple(replace_at(Room(walls=(wall,)), (wall.id,), id=f"w{n}").walls[0] for n in range(60)))
    room = replace_at(room, (), walls=tuple(_alone(wall) for wall in room.walls))
    data = dump_room(room)
    start = time.perf_counter()
    load_bytes(data, "x")
    assert time.perf_counter() - start < 5


def _alone(wall: Wall) -> Wall:
    from msgspec.structs import replace

    return replace(wall, left=replace(wall.left, neighbour=None), right=replace(wall.right, neighbour=None))
