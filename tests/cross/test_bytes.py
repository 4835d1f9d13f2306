"""The same bytes in every locale, time zone and process; and the same geometry from the same wall said otherwise."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ET

import pytest

from elevation import places

DEMOS = [places.demo_rooms() / name for name in ("1-bedroom.room.json", "4-flat.room.json")]

SURROUNDINGS = {
    "plain": {},
    "another hash seed": {"PYTHONHASHSEED": "4711"},
    "C": {"LANG": "C", "LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
    "POSIX": {"LC_ALL": "POSIX", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"},
    # Decimal comma; and i that is no lower case of I.
    "German": {"LANG": "de_DE.UTF-8", "LC_ALL": "de_DE.UTF-8", "LANGUAGE": "de"},
    "Turkish": {"LANG": "tr_TR.UTF-8", "LC_ALL": "tr_TR.UTF-8", "LANGUAGE": "tr"},
    "a locale that is not there": {"LC_ALL": "xx_YY.UTF-8"},
    "far east": {"TZ": "Pacific/Kiritimati"},
    "far west": {"TZ": "Etc/GMT+12"},
}
_CLEARED = ("LANG", "LANGUAGE", "TZ", "SOURCE_DATE_EPOCH", "PYTHONUTF8")


def outputs(folder, demo, extra):
    """Check's JSON and text, and two drawings, made by a process of its own."""
    code = (
        "import sys; from elevation.commands.main import main; demo, out = sys.argv[1:];"
        "main(['check', demo, '--json', '--all-schemes']); main(['check', demo, '--all-schemes']);"
        "assert main(['draw', demo, '--out', out + '/e.svg']) == 0;"
        "assert main(['draw', demo, '--out', out + '/m.svg', '--sheet', 'measuring']) == 0"
    )
    environ = {name: value for name, value in os.environ.items() if not name.startswith("LC_") and name not in _CLEARED}
    done = subprocess.run(
        [sys.executable, "-c", code, str(demo), str(folder)],
        # 2023-11-14 22:13:20 UTC: already the next day in the east.
        env=environ | {"PYTHONHASHSEED": "1", "SOURCE_DATE_EPOCH": "1700000000"} | extra,
        capture_output=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr.decode()
    assert done.stderr == b""
    return done.stdout, (folder / "e.svg").read_bytes(), (folder / "m.svg").read_bytes()


def _name(path):
    return path.name[:-10]


@pytest.mark.parametrize("demo", [DEMOS[0], *(pytest.param(demo, marks=pytest.mark.slow) for demo in DEMOS[1:])], ids=_name)
def test_nothing_around_a_process_changes_a_byte(demo, tmp_path):
    made = {}
    for number, (name, extra) in enumerate(SURROUNDINGS.items()):
        folder = tmp_path / str(number)
        folder.mkdir()
        made[name] = outputs(folder, demo, extra)
    assert b"2023-11-14" in made["plain"][1]
    for name, got in made.items():
        assert got == made["plain"], f"differs under “{name}”"


def test_json_and_svg_say_numbers_with_a_point_and_no_exponent(tmp_path):
    told, svg, _ = outputs(tmp_path, DEMOS[1], SURROUNDINGS["German"])
    end = told.index(b"\n}\n") + 2
    json.loads(told[:end])
    for element in ET.fromstring(svg).iter():
        for key in ("x", "y", "x1", "y1", "x2", "y2", "font-size", "stroke-width", "textLength"):
            assert re.fullmatch(r"-?\d+(\.\d{1,3})?", element.get(key, "0")), (key, element.get(key))
        for key in ("d", "points"):
            assert re.fullmatch(r"[MLCZ\d\s.,-]*", element.get(key, ""))
