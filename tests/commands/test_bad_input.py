"""Bad files and bad paths, each as a process of its own: one sentence, exit 2, nothing written, nothing lost."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from elevation import places
from elevation.commands.main import main

DEMO = places.demo_rooms() / "1-bedroom.room.json"


def run(*words: str | Path, cwd: Path, **environ: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "elevation", *map(str, words)],
        cwd=cwd,
        env=os.environ | environ,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )


def _edited(**at: object) -> bytes:
    """The demo room with keys of the room, or of its first wall (``wall_...``), set; None takes a key away."""
    room = json.loads(DEMO.read_text(encoding="utf-8"))
    for key, value in at.items():
        place = room["walls"][0] if key.startswith("wall_") else room
        key = key.removeprefix("wall_")
        if value is None:
            del place[key]
        else:
            place[key] = value
    return json.dumps(room).encode()


WHOLE = DEMO.read_bytes()

BAD_FILES = {
    "empty": b"",
    "white space": b" \n\t\n",
    "truncated": WHOLE[: len(WHOLE) // 2],
    "last byte gone": WHOLE.rstrip()[:-1],
    "two documents": WHOLE + WHOLE,
    "binary": bytes(range(256)) * 64,
    "picture": b"\x89PNG\r\n\x1a\n" + bytes(200),
    "not UTF-8": WHOLE.replace(b"Bedroom", b"Bedr\xf6\xf6m"),
    "UTF-16": WHOLE.decode().encode("utf-16"),
    "huge": b" " * (5 * 2**20) + WHOLE,
    "deep": b"[" * 200_000 + b"]" * 200_000,
    "deep objects": b'{"a":' * 50_000 + b"1" + b"}" * 50_000,
    "a list": b"[]",
    "a number": b"7",
    "null": b"null",
    "no format": _edited(format=None),
    "another format": _edited(format="elevation-check"),
    "newer version": _edited(version=99),
    "version as text": _edited(version="1"),
    "version true": _edited(version=True),
    "version 0": _edited(version=0),
    "unknown key": _edited(colour="red"),
    "unknown key inside": _edited(wall_widht="144 in"),
    "doubled key": WHOLE.replace(b'"version": 1,', b'"version": 1, "version": 1,'),
    "NaN": WHOLE.replace(b'"144 in"', b"NaN"),
    "Infinity": WHOLE.replace(b'"144 in"', b"-Infinity"),
    "1e999": WHOLE.replace(b'"144 in"', b"1e999"),
    "huge integer": WHOLE.replace(b'"144 in"', b"9" * 5000),
    "number for a length": WHOLE.replace(b'"144 in"', b"144"),
    "nan as text": WHOLE.replace(b'"144 in"', b'"nan in"'),
    "divided by nothing": WHOLE.replace(b'"144 in"', b'"144/0 in"'),
    "huge length": WHOLE.replace(b'"144 in"', b'"1e30 in"'),
    "huge power": WHOLE.replace(b'"144 in"', b'"9**9**9 in"'),
    "negative width": WHOLE.replace(b'"144 in"', b'"-144 in"'),
    "list for a wall": _edited(walls=[[]]),
    "text for walls": _edited(walls="north"),
    "null for a name": WHOLE.replace(b'"Bedroom"', b"null"),
    "two walls of one id": _edited(walls=[json.loads(WHOLE)["walls"][0]] * 2),
    "unknown table row": _edited(wall_substrate="cheese"),
    "unknown opening covered": WHOLE.replace(b'"w1"\n', b'"w9"\n'),
    "lone surrogate": WHOLE.replace(b'"Bedroom"', b'"\\ud800"'),
    "NUL in a name": WHOLE.replace(b'"Bedroom"', b'"a\\u0000b"'),
    "comment": b"// a room\n" + WHOLE,
}


def files_under(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def assert_one_sentence(done: subprocess.CompletedProcess[str], names: str = "") -> None:
    assert done.returncode == 2, done.stderr
    assert "Traceback" not in done.stderr
    assert "went wrong inside" not in done.stderr
    assert done.stderr.startswith("elevation: ")
    assert done.stderr.endswith("\n")
    assert done.stderr.count("\n") == 1, done.stderr
    assert names in done.stderr
    assert len(done.stderr) < 600


def test_each_bad_file_is_one_sentence_that_names_it(tmp_path, own_places):
    # One process for all of them, which must live through each; some on their own below.
    names = {f"{name.replace(' ', '-')}.room.json": data for name, data in BAD_FILES.items()}
    for name, data in names.items():
        (tmp_path / name).write_bytes(data)
    done = run("check", *names, cwd=tmp_path)
    assert done.returncode == 2
    assert done.stdout == ""
    lines = done.stderr.splitlines()
    assert [line.split(":")[1].strip() for line in lines] == list(names), done.stderr
    assert all(line.startswith("elevation: ") and 30 < len(line) < 600 for line in lines)
    assert "Traceback" not in done.stderr
    assert files_under(tmp_path) == names
    assert not (own_places / "state" / "elevation" / "crashes").exists(), "no report of a bug either"


@pytest.mark.parametrize("name", ["deep", "unknown table row"])
@pytest.mark.parametrize("command", ["draw", "sheets", "window"])
def test_every_command_says_the_same_of_a_bad_file(name, command, tmp_path):
    bad = tmp_path / "bad.room.json"
    bad.write_bytes(BAD_FILES[name])
    words = {"draw": ["draw", bad, "--out", "x.svg"], "sheets": ["sheets", bad, "--out", "s"], "window": [bad]}[command]
    done = run(*words, cwd=tmp_path, QT_QPA_PLATFORM="offscreen")
    assert_one_sentence(done, "bad.room.json")
    assert done.stderr == run("check", bad, cwd=tmp_path).stderr
    assert files_under(tmp_path) == {"bad.room.json": BAD_FILES[name]}


PATHS_TO_NOTHING = (".", "missing.room.json", "missing/room.json", "a\nb.json", "x" * 300, "/dev/null", "")


def test_paths_that_are_no_files_are_one_sentence_each(tmp_path):
    done = run("check", *PATHS_TO_NOTHING, cwd=tmp_path)
    assert done.returncode == 2
    assert done.stderr.count("\n") == len(PATHS_TO_NOTHING)
    assert all(line.startswith("elevation: ") for line in done.stderr.splitlines())
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("path", [".", "missing.room.json"])
@pytest.mark.parametrize("command", ["draw", "window"])
def test_every_command_says_that_a_path_is_no_file(command, path, tmp_path):
    words = {"draw": ["draw", path, "--out", "x.svg"], "window": [path]}[command]
    assert_one_sentence(run(*words, cwd=tmp_path, QT_QPA_PLATFORM="offscreen"))
    assert files_under(tmp_path) == {}


def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "pipe.json")
    done = run("check", "pipe.json", cwd=tmp_path)
    assert done.returncode == 2
    assert "not a plain file" in done.stderr


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_a_file_that_may_not_be_read_is_one_sentence(tmp_path):
    locked = tmp_path / "locked.room.json"
    locked.write_bytes(WHOLE)
    locked.chmod(0)
    assert_one_sentence(run("check", locked, cwd=tmp_path), "may not be read")


def test_good_rooms_are_reported_beside_bad_ones_in_order(tmp_path):
    (tmp_path / "bad.room.json").write_bytes(BAD_FILES["truncated"])
    (tmp_path / "worse.room.json").write_bytes(BAD_FILES["binary"])
    (tmp_path / "good.room.json").write_bytes(WHOLE)
    words = ["check", "bad.room.json", "good.room.json", "worse.room.json", "missing.room.json"]
    done = run(*words, cwd=tmp_path)
    assert done.returncode == 2
    lines = done.stderr.splitlines()
    assert [line.split(":")[1].strip() for line in lines] == ["bad.room.json", "worse.room.json", "missing.room.json"]
    assert "Bedroom (good.room.json)" in done.stdout
    got = json.loads(run(*words, "--json", cwd=tmp_path).stdout)
    assert [f"elevation: {error}" for error in got["errors"]] == lines
    assert [room["file"] for room in got["rooms"]] == ["good.room.json"]


@pytest.mark.parametrize("ending", ["svg", "png", "pdf"])
@pytest.mark.parametrize("way", ["same", "dotted", "link", "hard link"])
def test_a_drawing_never_replaces_the_room_it_is_drawn_from(ending, way, tmp_path):
    room = tmp_path / f"room.{ending}"
    room.write_bytes(WHOLE)
    out = tmp_path / f"other.{ending}"
    if way == "link":
        out.symlink_to(room)
    elif way == "hard link":
        out.hardlink_to(room)
    else:
        out = room if way == "same" else Path("..") / tmp_path.name / room.name
    assert_one_sentence(run("draw", room, "--out", out, cwd=tmp_path), "room file itself")
    assert room.read_bytes() == WHOLE


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--out", "x.gif"], "x.gif"),
        (["--out", "x"], "ending"),
        (["--out", "x.svg", "--wall", "nowhere"], "nowhere"),
        (["--out", "x.svg", "--scheme", "none such"], "none such"),
        (["--out", "x.svg", "--scale", "1:0"], "not a scale"),
        (["--out", "x.svg", "--scale", "1:-20"], "not a scale"),
        (["--out", "x.svg", "--scale", "nan"], "not a scale"),
        (["--out", "x.svg", "--scale", "1:1e999"], "not a scale"),
        (["--out", "x.svg", "--scale", "1:1"], "does not fit"),
        (["--out", "x.svg", "--scale", "100:1"], "scale"),
        (["--out", "x.svg", "--paper", "a0"], "a0"),
        (["--out", "x.svg", "--sheet", "roof"], "roof"),
        (["--out", "x.png", "--dpi", "1e9"], "1e9"),
        (["--out", "x.png", "--dpi", "5000"], "--dpi"),
        (["--out", "no/folder/x.svg"], "folder"),
        (["--out", "no/folder/x.png"], "folder"),
        (["--out", "no/folder/x.pdf"], "folder"),
        (["--out", "taken.svg"], "folder"),
        (["--out", "file.txt/x.svg"], "x.svg"),
        (["--out", "x" * 300 + ".svg"], "cannot be written"),
        (["--out", "/dev/null/x.svg"], "x.svg"),
        (["--out", "/proc/x.svg"], "x.svg"),  # not even root may
        ([], "--out"),
        (["--out"], "--out"),
        (["--out", "x.svg", "another.json"], "another.json"),
        (["--out", "x.svg", "--wall", ""], "wall"),
    ],
)
def test_what_cannot_be_drawn_is_one_sentence(words, says, tmp_path, monkeypatch, capsys):
    (tmp_path / "taken.svg").mkdir()
    (tmp_path / "file.txt").write_bytes(b"kept")
    monkeypatch.chdir(tmp_path)
    code = main(["draw", str(DEMO), *words])
    assert_one_sentence(subprocess.CompletedProcess([], code, *capsys.readouterr()), says)
    assert files_under(tmp_path) == {"file.txt": b"kept"}


def test_only_the_named_file_is_written_and_an_older_one_is_kept_until_then(tmp_path):
    (tmp_path / "beside.txt").write_bytes(b"kept")
    out = tmp_path / "x.svg"
    out.write_bytes(b"an older drawing")
    assert run("draw", DEMO, "--out", out, "--wall", "nowhere", cwd=tmp_path).returncode == 2
    assert out.read_bytes() == b"an older drawing"
    done = run("draw", DEMO, "--out", out, cwd=tmp_path)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
    assert set(files_under(tmp_path)) == {"beside.txt", "x.svg"}
    assert out.read_bytes().startswith(b"<?xml")


def test_a_reader_that_goes_away_is_no_fault(tmp_path):
    command = f'"{sys.executable}" -m elevation check "{DEMO}" --json | head -c 1'
    done = subprocess.run(["sh", "-c", command], cwd=tmp_path, capture_output=True, text=True, timeout=60, check=False)
    assert done.stderr == ""
