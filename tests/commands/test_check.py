"""The ``check`` contract, on the demo rooms and on bad input."""

import json
import math

import jsonschema
import pytest

from elevation import places
from elevation.commands.main import main
from elevation.room.edits import replace_at
from elevation.room.file import dump_room, load_room, save_room
from elevation.room.model import Length, Pelmet
from tests.findings import test_limits as limits
from tests.findings.rooms import INCH

DEMOS = sorted(places.demo_rooms().glob("*.room.json"))


def _json(capsys, *words):
    code = main(["check", *map(str, words), "--json"])
    told = capsys.readouterr()
    return code, json.loads(told.out), told.err


@pytest.fixture(scope="module")
def schema():
    return json.loads((places.resources() / "schemas" / "check.schema.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.name)
def test_every_demo_keeps_the_published_schema(demo, schema, capsys):
    code, got, err = _json(capsys, demo, "--all-schemes")
    assert code in (0, 1)
    assert err == ""
    jsonschema.validate(got, schema)
    assert all(wall["treatments"] or wall["scheme"] == "" for room in got["rooms"] for wall in room["walls"])


def test_the_cloth_of_a_valance_is_told_with_its_front_layer(tmp_path, schema, capsys):
    room = load_room(places.demo_rooms() / "1-bedroom.room.json")
    ref = (room.walls[0].id, room.walls[0].schemes[0].id, room.walls[0].schemes[0].treatments[0].id)
    sizes = (Length(mm, f"{mm:g} mm") for mm in (350.0, 80.0, 100.0, 100.0, 150.0))
    save_room(replace_at(room, ref, pelmet=Pelmet(*sizes, "valance")), tmp_path / "v.room.json")
    _, got, _ = _json(capsys, tmp_path / "v.room.json")
    jsonschema.validate(got, schema)
    (layer,) = got["rooms"][0]["walls"][0]["treatments"][0]["layers"]
    # A rod of 60 in, 100 mm beyond each end, 150 mm of return at each, gathered 2.5 times from widths of 54 in.
    assert layer["valance"]["finished_mm"] == 1524 + 200 + 300
    assert layer["valance"]["flat_mm"] == 2.5 * 2024
    assert layer["valance"]["face"]["widths"] == 4


def _weights(got):
    return {f["weight"] for room in got["rooms"] for wall in room["walls"] for f in wall["findings"]}


@pytest.mark.parametrize("demo", DEMOS, ids=lambda path: path.name)
def test_the_exit_code_says_whether_something_is_broken(demo, capsys):
    code, got, _ = _json(capsys, demo)
    assert code == (1 if _weights(got) & {"stop", "broken"} else 0)


def test_no_number_is_nan_or_infinite(capsys):
    _, got, _ = _json(capsys, *DEMOS)

    def walk(value):
        if isinstance(value, float):
            assert math.isfinite(value)
        elif isinstance(value, dict):
            for part in value.values():
                walk(part)
        elif isinstance(value, list):
            for part in value:
                walk(part)

    walk(got)


def test_a_bad_room_is_one_sentence_and_good_rooms_are_still_reported(tmp_path, capsys):
    bad = tmp_path / "bad.room.json"
    bad.write_text("{", encoding="utf-8")
    code, got, err = _json(capsys, bad, DEMOS[0])
    assert code == 2
    assert err.count("\n") == 1
    assert "bad.room.json" in err
    assert len(got["errors"]) == 1
    assert len(got["rooms"]) == 1


def test_an_unknown_wall_is_named_with_those_there_are(capsys):
    code = main(["check", str(DEMOS[0]), "--wall", "the moon"])
    told = capsys.readouterr()
    assert code == 2
    assert "the moon" in told.err
    assert told.err.count("\n") == 1


def test_an_unknown_scheme_is_named_with_those_there_are(capsys):
    assert main(["check", str(DEMOS[0]), "--scheme", "the moon"]) == 2
    assert "the moon" in capsys.readouterr().err


def test_text_says_weight_rule_and_authority(capsys):
    for demo in DEMOS:
        main(["check", str(demo)])
    out = capsys.readouterr().out
    assert "[" in out
    assert "common practice" in out


def test_a_finding_without_remedies_says_why(tmp_path, schema, capsys):
    # Ready-made panels hang level over a floor that is not: no change to rod, brackets or cloth helps.
    room = tmp_path / "uneven.room.json"
    room.write_bytes(dump_room(limits.floor_varies(INCH)))
    why = "No single change to rod, brackets or cloth puts this right."
    _, got, _ = _json(capsys, room)
    jsonschema.validate(got, schema)
    (finding,) = [one for one in got["rooms"][0]["walls"][0]["findings"] if one["rule"] == "hem-varies"]
    assert finding["remedies"] == []
    assert finding["none_because"] == why
    main(["check", str(room)])
    lines = capsys.readouterr().out.splitlines()
    at = next(index for index, line in enumerate(lines) if line.endswith("[hem-varies]"))
    assert lines[at + 1 : at + 3] == ["           common practice", f"           no remedy: {why}"]


def test_a_finding_with_remedies_says_no_such_thing(tmp_path, schema, capsys):
    room = tmp_path / "low.room.json"
    room.write_bytes(dump_room(limits.rod_above_casing(2 * INCH)))
    _, got, _ = _json(capsys, room)
    findings = got["rooms"][0]["walls"][0]["findings"]
    assert [one["rule"] for one in findings] == ["rod-low"]
    assert findings[0]["remedies"][0] == "Set the rod 3 in above the casing"
    assert findings[0]["none_because"] is None
    main(["check", str(room)])
    assert "no remedy" not in capsys.readouterr().out
