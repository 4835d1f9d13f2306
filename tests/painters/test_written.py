"""PNG, PDF and folders of sheets as files: only what was named is written, and nothing is lost."""

import os

import pytest

from tests.commands.test_bad_input import BAD_FILES, DEMO, WHOLE, assert_one_sentence, files_under, run


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")
@pytest.mark.parametrize("ending", ["png", "pdf"])
def test_where_nothing_may_be_written_one_sentence_says_so(ending, tmp_path):
    folder = tmp_path / "locked"
    folder.mkdir()
    folder.chmod(0o500)
    assert_one_sentence(run("draw", DEMO, "--out", folder / f"x.{ending}", cwd=tmp_path), f"x.{ending}")


@pytest.mark.parametrize("ending", ["png", "pdf"])
def test_only_the_named_file_is_written_and_an_older_one_is_kept_until_then(ending, tmp_path):
    (tmp_path / "beside.txt").write_bytes(b"kept")
    out = tmp_path / f"x.{ending}"
    out.write_bytes(b"an older drawing")
    assert run("draw", DEMO, "--out", out, "--wall", "nowhere", cwd=tmp_path).returncode == 2
    assert out.read_bytes() == b"an older drawing"
    done = run("draw", DEMO, "--out", out, "--dpi", "40", cwd=tmp_path)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
    assert set(files_under(tmp_path)) == {"beside.txt", out.name}
    start = {"png": b"\x89PNG", "pdf": b"%PDF"}[ending]
    assert out.read_bytes().startswith(start)


def test_sheets_never_replace_a_room_nor_each_other(tmp_path):
    room = tmp_path / "a-elevation.pdf"
    room.write_bytes(WHOLE)
    (tmp_path / "a.room.json").write_bytes(WHOLE)
    done = run("sheets", "a.room.json", "a-elevation.pdf", "--out", ".", cwd=tmp_path)
    assert done.returncode == 2
    assert "room file itself" in done.stderr
    assert room.read_bytes() == WHOLE
    for folder in ("one", "two"):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "b.room.json").write_bytes(WHOLE)
    assert run("sheets", "one/b.room.json", "two/b.room.json", "--out", "out", cwd=tmp_path).returncode == 0
    there = {path.name for path in (tmp_path / "out").iterdir()}
    assert {"b-2-elevation.pdf", "b-2-measuring.pdf", "b-elevation.pdf", "b-measuring.pdf"} <= there


def test_sheets_of_good_rooms_are_written_beside_bad_ones(tmp_path):
    (tmp_path / "bad.room.json").write_bytes(BAD_FILES["truncated"])
    (tmp_path / "good.room.json").write_bytes(WHOLE)
    done = run("sheets", "bad.room.json", "good.room.json", "--out", "new/folder", cwd=tmp_path)
    assert_one_sentence(done, "bad.room.json")
    there = {path.name for path in (tmp_path / "new/folder").iterdir()}
    assert {"good-elevation.pdf", "good-measuring.pdf"} <= there
    assert not any(name.startswith("bad") for name in there)


def test_sheets_need_a_folder(tmp_path):
    (tmp_path / "taken").write_bytes(b"kept")
    assert_one_sentence(run("sheets", DEMO, "--out", "taken", cwd=tmp_path), "taken")
    assert files_under(tmp_path) == {"taken": b"kept"}
