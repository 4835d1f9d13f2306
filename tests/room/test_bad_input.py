"""Whatever a file holds, one sentence says where it is wrong and what would be right; never a traceback."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from elevation.errors import BadInput
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.room.nearest import nearest
from elevation.room.raw_json import MOST_BYTES
from elevation.room.validate import check_rows
from elevation.trade import load_trade
from tests.strategies import random_room

START = '{"format": "elevation-room", "version": 1, '
WALL = START + '"walls": [{"id": "w", "width": "3000 mm", %s}]}'
OPENING = WALL % '"openings": [{"id": "o", "width": "900 mm", "height": "1200 mm", "left": "500 mm", %s}]'
LAYER = WALL % (
    '"openings": [{"id": "o", "width": "900 mm", "height": "1200 mm", "left": "500 mm"}], "schemes": [{"id": "s", '
    '"treatments": [{"id": "t", "openings": ["o"], "layers": [{"id": "l", "rod": {"height": {"hold": "above-casing", '
    '"at": "90 mm"}, "left": {"hold": "beyond-opening", "at": "200 mm"}, "right": {"hold": "beyond-opening", '
    '"at": "200 mm"}}, %s}]}]}]'
)
HERE = "walls[0].schemes[0].treatments[0].layers[0]"


def sentence(data: bytes | str) -> str:
    raw = data.encode() if isinstance(data, str) else data
    with pytest.raises(BadInput) as caught:
        load_bytes(raw, "my.room.json")
    text = str(caught.value)
    assert text.startswith("my.room.json: ")
    assert "\n" not in text
    assert len(text) < 400
    return text


WHOLE = [
    (b"", "is empty"),
    (b"  \n ", "is empty"),
    (b"\x00\x01\x02\xff\xfe", "not UTF-8"),
    (b"\x89PNG\r\n\x1a\n\x00\x00", "not UTF-8"),
    ("{}".encode("utf-16"), "not UTF-8"),
    (b"\x00\x00\x00\x00", "not JSON"),
    (b"hello", "line 1, column 1"),
    (b"{", "not JSON"),
    (b'{"format": "elevation-room", "version": 1, "walls": [{"id": "w"', "not JSON"),
    (b'{"a": 1,}', "not JSON"),
    (b'{"a": 1} x', "line 1, column 10"),
    (b"[]", "not a room"),
    (b'"elevation-room"', "not a room"),
    (b"null", "not a room"),
    (b"3", "not a room"),
    (b"{}", 'has no "format"'),
    (b'{"format": "drawing", "version": 1}', 'is "drawing"'),
    (b'{"format": ["elevation-room"], "version": 1}', "format: is a list"),
    (b'{"format": "elevation-room"}', "version: is null"),
    (b'{"format": "elevation-room", "version": "1"}', 'version: is "1"'),
    (b'{"format": "elevation-room", "version": true}', "version: is true"),
    (b'{"format": "elevation-room", "version": 1.0}', "version: is 1.0"),
    (b'{"format": "elevation-room", "version": 0}', "version: is 0"),
    (b'{"format": "elevation-room", "version": 2}', "newer Elevation"),
    (b"[" * 100_000, "nested too deeply"),
    (b'{"a":' * 100_000, "nested too deeply"),
    (b"[" * 500 + b"]" * 500, "nested too deeply"),
    (b'{"a": NaN}', "a: is NaN where a number should be; write a plain number"),
    (b'{"a": [1, {"b c": -Infinity}]}', 'a[1]."b c": is -Infinity'),
    (b"9" * 6000, "far too long"),
    (b'{"a": ' + b"9" * 6000 + b"}", "a: is a number that is far too long"),
    (b" " * (MOST_BYTES + 1), "larger than 4 MB"),
]


@pytest.mark.parametrize(("data", "part"), WHOLE, ids=range(len(WHOLE)))
def test_bytes_that_are_no_room(data: bytes, part: str) -> None:
    assert part in sentence(data)


@pytest.mark.parametrize(("unit", "by"), [("in", "3 15/16 in"), ("mm", "100 mm")])
def test_what_is_worked_out_is_said_in_the_rooms_own_unit(unit: str, by: str) -> None:
    # 2200 + 900 mm of a wall of 3000 mm: 100 mm too much, which is 3.937 in, at sixteenths 3 15/16.
    told = sentence(
        START + f'"unit": "{unit}", ' + (OPENING % '"casing": "0 mm"')[len(START) :].replace('"500 mm"', '"2200 mm"')
    )
    assert f"reaches {by} past the wall's right end at 3000 mm" in told


INSIDE = [
    (START + '"walls": []}', "walls: is empty"),
    (START[:-2] + "}", "walls: is empty"),
    (START + '"wall": []}', 'wall: is not a key that belongs here; did you mean "walls"?'),
    (START + '"format": "elevation-room", "walls": []}', "format: is given twice"),
    (WALL % '"width": "2 m"', "walls[0].width: is given twice"),
    (OPENING % '"casing": "1 in", "casing": "2 in"', "walls[0].openings[0].casing: is given twice"),
    (OPENING % '"with": "3 mm"', 'walls[0].openings[0].with: is not a key that belongs here; did you mean "width"?'),
    (OPENING % '"kind": "windo"', 'walls[0].openings[0].kind: is "windo", which it cannot be; did you mean "window"?'),
    (OPENING % '"kind": 3', "walls[0].openings[0].kind: is 3"),
    (OPENING % '"kind": null', "walls[0].openings[0].kind: is null"),
    (OPENING % '"casing": 75', 'write "75 in" or "75 mm"'),
    (OPENING % '"casing": true', "casing: is true, not a length"),
    (OPENING % '"casing": "75"', 'is "75", without a unit'),
    (OPENING % '"casing": "wide"', "walls[0].openings[0].casing: "),
    (OPENING % '"casing": "NaN mm"', "walls[0].openings[0].casing: "),
    (OPENING % '"casing": "1e400 mm"', "walls[0].openings[0].casing: "),
    (OPENING % '"casing": ""', "walls[0].openings[0].casing: "),
    (OPENING % '"casing": "-1 in"', "casing: is -1 in; it must be at least zero"),
    (OPENING % '"columns": 2.5', "columns: is 2.5, not a whole number"),
    (OPENING % '"columns": true', "columns: is true, not a whole number"),
    (OPENING % '"columns": 0', "columns: is 0; it must be from 1 to 40"),
    (OPENING % ('"columns": ' + "9" * 400), "columns: is "),
    (OPENING % '"escape": 1', "escape: is 1, not true or false"),
    (OPENING % '"escape": "yes"', 'escape: is "yes", not true or false'),
    (OPENING % '"head": "flat"', 'head: is "flat", not an object'),
    (OPENING % '"stool": {"thickness": "1 in"}', 'stool: has no "horn"'),
    (OPENING % '"head": {"kind": "segmental"}', 'head: is segmental but has no "rise"'),
    (OPENING % '"head": {"rise": "1 in"}', "head.rise: stands beside a flat head"),
    (OPENING % '"head": {"kind": "segmental", "rise": "451 mm"}', "head.rise: is 451 mm, more than half the width"),
    (OPENING % '"head": {"kind": "raked"}', 'head: is raked but has no "right_height"'),
    (OPENING % '"head": {"kind": "half-round", "right_height": "1 m"}', "only a raked head has one"),
    (OPENING % '"frame": "450 mm"', "frame: is 450 mm, so no glass is left"),
    (WALL % '"openings": [{"id": "o"}]', 'walls[0].openings[0]: has no "width"'),
    (WALL % '"openings": {}', "walls[0].openings: is an object, not a list"),
    (WALL % '"openings": [7]', "walls[0].openings[0]: is 7, not an object"),
    (WALL % '"name": 5', "walls[0].name: is 5, not a text"),
    (WALL % ('"name": "' + "x" * 201 + '"'), "walls[0].name: is longer than 200 characters"),
    (WALL % '"name": "a\\u0000b"', "walls[0].name: holds a sign that cannot be shown"),
    (WALL % '"name": "\\ud800"', "walls[0].name: holds a sign that cannot be shown"),
    (WALL % '"name": "\\uffff"', "walls[0].name: holds a sign that cannot be shown"),
    (WALL % '"left": {"angle": 1e999}', "left.angle: is too large a number"),
    (WALL % ('"left": {"angle": 1' + "0" * 400 + "}"), "left.angle: is too large a number"),
    (WALL % '"left": {"angle": "90"}', 'left.angle: is "90", not a number'),
    (WALL % '"left": {"angle": 5}', "left.angle: is 5 degrees"),
    (WALL % '"left": {"neighbour": "x"}', 'left.neighbour: is "x", but no wall has that id'),
    (WALL % '"left": {"neighbour": "w"}', "left.neighbour: is this wall itself"),
    (WALL % '"left": {"kind": "open", "neighbour": "w"}', "stands beside an open end"),
    (START + '"walls": [{"id": "w"}, {"id": "w"}]}', 'walls[1].id: is "w", which walls[0] has already'),
    (START + '"walls": [{"id": ""}]}', 'walls[0].id: is ""'),
    (START + '"walls": [{"id": "a/b"}]}', 'walls[0].id: is "a/b"'),
    (START + '"walls": [{"id": "w", "width": "0 mm"}]}', "width: is 0 mm; it must be more than zero"),
    (START + '"walls": [{"id": "w", "width": "100.1 m"}]}', "width: is 100.1 m; it must be at most 100 m"),
    (START + '"limits": {"rod-low": "-1 mm"}, "walls": [{"id": "w"}]}', "limits.rod-low: is -1 mm"),
    (START + '"graduation": "0 mm", "walls": [{"id": "w"}]}', "graduation: is 0 mm"),
    (WALL % '"schemes": [{"id": "s", "treatments": [{"id": "t", "openings": [], "layers": []}]}]', "openings: is empty"),
    (LAYER.replace('["o"]', '["p"]') % '"brackets": []', 'openings[0]: is "p", but no opening has that id; write "o"'),
    (LAYER.replace('["o"]', '["o", "o"]') % '"brackets": []', 'openings[1]: is "o" a second time'),
    (LAYER % '"panels": [{"id": "p", "flat_width": "1 m", "parks": "middle"}]', f"{HERE}.panels[0].parks: "),
    (LAYER % '"panels": [{"id": "p", "flat_width": "1 m", "parks": "left-of:b9"}]', "no bracket of this layer"),
    (LAYER % '"panels": [{"id": "p", "flat_width": "0 m"}]', f"{HERE}.panels[0].flat_width: is 0 m"),
    (LAYER % '"fabric": {"colour": "red"}', f'{HERE}.fabric.colour: is "red"'),
    (LAYER % '"hem": {"target": "length"}', f'{HERE}.hem: is a "length" but has no "at"'),
    (LAYER.replace('"above-casing"', '"from-corner"') % '"panels": []', f'{HERE}.rod.height.hold: is "from-corner"'),
    (LAYER.replace('"beyond-opening"', '"rod-length"') % '"panels": []', f'{HERE}.rod.right.hold: is "rod-length"'),
    (
        LAYER % '"brackets": [{"id": "b", "place": {"hold": "from-center", "at": "0 mm"}}]',
        f'{HERE}.brackets[0].place.hold: is "from-center", which it cannot be; did you mean "from-centre"?',
    ),
    (
        LAYER % '"brackets": [{"id": "b", "place": {"hold": "from-left-end", "at": "0 mm"}}], "panels": [{"id": "b", '
        '"flat_width": "1 m"}]',
        'panels[0].id: is "b", which brackets[0] has already',
    ),
]


@pytest.mark.parametrize(("text", "part"), INSIDE, ids=range(len(INSIDE)))
def test_faults_inside_are_located(text: str, part: str) -> None:
    assert part in sentence(text)


def test_a_file_is_cut_off_anywhere() -> None:
    data = dump_room(random_room(3)).rstrip()
    for end in range(0, len(data) - 1, max(1, len(data) // 150)):
        sentence(data[:end])


@given(st.binary(max_size=200))
def test_any_bytes_give_a_sentence(data: bytes) -> None:
    sentence(data)


@given(st.integers(0, 200), st.data())
def test_a_damaged_byte_gives_a_sentence_or_a_room(seed: int, data: st.DataObject) -> None:
    whole = bytearray(dump_room(random_room(seed)))
    at = data.draw(st.integers(0, len(whole) - 1))
    whole[at] = data.draw(st.integers(0, 255))
    assert_room_or_sentence(bytes(whole))


def assert_room_or_sentence(data: bytes) -> None:
    text = ""
    try:
        room = load_bytes(data, "my.room.json")
    except BadInput as error:
        text = str(error)
    if text:
        assert text.startswith("my.room.json: ")
        assert "\n" not in text
        return
    assert load_bytes(dump_room(room), "again") == room


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(["id", "walls", "x"]), inner, max_size=3),
    max_leaves=8,
)


@given(st.sampled_from(["name", "unit", "graduation", "limits", "walls", "sleeping", "language", "odd"]), JSON)
def test_any_value_at_any_key_gives_a_sentence_or_a_room(key: str, value: object) -> None:
    plain = {"format": "elevation-room", "version": 1, "walls": [{"id": "w"}], key: value}
    assert_room_or_sentence(json.dumps(plain).encode())


KIT = '"brackets": [{"id": "b", "place": {"hold": "from-centre", "at": "0 mm"}, "kit": "open-arn"}]'
ROWS = [
    (
        LAYER.replace('"rod": {', '"rod": {"section": "conduit-3/5", ') % '"panels": []',
        "rod.section",
        "rod section",
        "conduit-3/4",
    ),
    (LAYER.replace('"rod": {', '"rod": {"ends": "ball-finals", ') % '"panels": []', "rod.ends", "rod end", "ball-finial"),
    (LAYER % '"heading": "clip-ring"', "heading", "heading", "clip-rings"),
    (LAYER % KIT, "brackets[0].kit", "bracket", "open-arm"),
]


@pytest.mark.parametrize(("text", "path", "kind", "right"), ROWS)
def test_unknown_rows_name_the_nearest(text: str, path: str, kind: str, right: str) -> None:
    with pytest.raises(BadInput) as caught:
        check_rows(load_bytes(text.encode(), "x"), load_trade(), "x")
    assert f"x: {HERE}.{path}: is " in str(caught.value)
    assert f'the tables hold no such {kind}; did you mean "{right}"?' in str(caught.value)


def test_a_word_as_long_as_a_book_is_likened_by_its_beginning() -> None:
    # Letter by letter it would take seconds, and a file may hold thousands of them.
    assert nearest("from-right" + "[" * 1_000_000, ("from-left-end", "from-right-end")) == "from-right-end"
    assert nearest("x" * 199 + "y", ("a", "y")) == "y"
    assert nearest("x" * 200 + "y", ("a", "y")) == "a"


def test_an_unknown_limit_names_the_nearest() -> None:
    text = START + '"limits": {"rod-lo": "3 in"}, "walls": [{"id": "w"}]}'
    with pytest.raises(BadInput, match='no such limit; did you mean "rod-low"'):
        check_rows(load_bytes(text.encode(), "x"), load_trade(), "x")


@pytest.mark.parametrize(("limit", "kind"), [("fullness-low", "a ratio"), ("escape-area", "an area")])
def test_only_a_limit_that_is_a_length_can_be_the_rooms_own(limit: str, kind: str) -> None:
    text = START + f'"limits": {{"{limit}": "3 in"}}, "walls": [{{"id": "w"}}]}}'
    with pytest.raises(BadInput, match=f"limits.{limit}: is a length, but this limit is {kind}"):
        check_rows(load_bytes(text.encode(), "x"), load_trade(), "x")


def test_paths_that_cannot_be_read(tmp_path: Path) -> None:
    loop = tmp_path / "loop.room.json"
    loop.symlink_to(loop)
    pipe = tmp_path / "pipe.room.json"
    os.mkfifo(pipe)
    cases: list[tuple[Path | str, str]] = [
        (tmp_path / "none.room.json", "does not exist"),
        (tmp_path, "is a folder"),
        (tmp_path / "x" / "y.room.json", "does not exist"),
        (loop, "cannot be read"),
        (pipe, "is not a plain file"),
        ("bad\0name", "cannot be read"),
        (tmp_path / ("long" * 200), "cannot be read"),
    ]
    for path, part in cases:
        with pytest.raises(BadInput) as caught:
            load_room(path)
        assert part in str(caught.value)


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_a_file_that_may_not_be_read(tmp_path: Path) -> None:
    path = tmp_path / "mine.room.json"
    path.write_bytes(b"{}")
    path.chmod(0)
    with pytest.raises(BadInput, match="may not be read"):
        load_room(path)


def test_a_huge_file_is_not_read_whole(tmp_path: Path) -> None:
    path = tmp_path / "huge.room.json"
    with path.open("wb") as stream:
        stream.truncate(20 * 2**30)  # sparse: it takes no room on the disk, and would take 20 GB of memory
    with pytest.raises(BadInput, match="larger than 4 MB"):
        load_room(path)
