"""``elevation sheets``: all files, nobody else's replaced, nothing half-written when stopped."""

from __future__ import annotations

import shutil

import pytest

from elevation import places
from elevation.commands import sheets
from elevation.commands.main import main

pytestmark = pytest.mark.usefixtures("qapp")
DEMOS = [places.demo_rooms() / f"{name}.room.json" for name in ("1-bedroom", "3-attic")]
OF_A_ROOM = ("drilling", "elevation", "hanging", "measurements", "measuring", "plan", "section", "sewing", "trial")


def visible(folder):
    return sorted(path.name for path in folder.iterdir() if not path.name.startswith("."))


def test_every_sheet_of_two_rooms_and_one_list_over_both(tmp_path, capsys):
    assert main(["sheets", str(DEMOS[0]), str(DEMOS[1]), "--out", str(tmp_path / "new")]) == 0
    wanted = [f"{stem}-{sheet}.pdf" for stem in ("1-bedroom", "3-attic") for sheet in OF_A_ROOM]
    there = visible(tmp_path / "new")
    assert {*wanted, "bench.pdf", "order.pdf"} <= set(there)
    assert f"{len(there)} files" in capsys.readouterr().out


def test_the_measuring_sheets_of_a_house_in_one_go(tmp_path, capsys):
    """A folder stands for its rooms; one kind of sheet can be asked for by itself, blank or filled in."""
    house = tmp_path / "house"
    house.mkdir()
    for number in ("10", "2"):
        (house / f"{number}.room.json").write_bytes(DEMOS[0].read_bytes())
    for sheet in ("measuring", "measurements"):
        assert main(["sheets", str(house), "--out", str(tmp_path / sheet), "--sheet", sheet]) == 0
        assert visible(tmp_path / sheet) == [f"10-{sheet}.pdf", f"2-{sheet}.pdf", f"{sheet}.pdf"]
        # A page for the one wall of each room; the file over all of them has both.
        assert "3 files with 4 pages" in capsys.readouterr().out
    assert main(["sheets", str(DEMOS[0]), "--out", str(tmp_path / "one"), "--sheet", "measuring"]) == 0
    assert "1 file with 1 page written" in capsys.readouterr().out
    (tmp_path / "empty").mkdir()
    assert main(["sheets", str(tmp_path / "empty"), "--out", str(tmp_path / "out")]) == 2
    assert "holds no room file" in capsys.readouterr().err


def test_its_own_files_are_made_anew_and_others_are_left_alone(tmp_path, capsys):
    given = ["sheets", str(DEMOS[0]), "--out", str(tmp_path)]
    stranger = tmp_path / "1-bedroom-hanging.pdf"
    stranger.write_bytes(b"a letter")
    assert main(given) == 2
    assert stranger.read_bytes() == b"a letter"
    assert "1-bedroom-hanging.pdf" in capsys.readouterr().err
    stranger.unlink()
    assert main(given) == 0
    assert main(given) == 0
    stranger.write_bytes(b"changed by hand")
    assert main(given) == 2
    assert stranger.read_bytes() == b"changed by hand"
    assert main([*given, "--replace"]) == 0
    assert stranger.read_bytes().startswith(b"%PDF")


def test_a_bad_room_is_said_and_the_good_ones_are_made(tmp_path, capsys):
    bad = tmp_path / "bad.room.json"
    bad.write_text("{")
    assert main(["sheets", str(bad), str(DEMOS[0]), "--out", str(tmp_path / "out")]) == 2
    assert "bad.room.json" in capsys.readouterr().err
    assert "1-bedroom-elevation.pdf" in visible(tmp_path / "out")


def test_stopping_leaves_whole_files_and_says_how_many(tmp_path, monkeypatch, capsys):
    real, calls = sheets.write, []

    def stop_at_third(pages, out, dpi):
        calls.append(out)
        if len(calls) == 3:
            raise KeyboardInterrupt
        real(pages, out, dpi)

    monkeypatch.setattr(sheets, "write", stop_at_third)
    assert main(["sheets", str(DEMOS[0]), "--out", str(tmp_path)]) == 130
    assert "stopped: 2 of" in capsys.readouterr().out
    assert len(visible(tmp_path)) == 2
    assert all((tmp_path / name).read_bytes().rstrip().endswith(b"%%EOF") for name in visible(tmp_path))


def test_a_room_file_is_never_replaced(tmp_path):
    room = tmp_path / "1-bedroom-elevation.pdf"
    shutil.copy(DEMOS[0], room)
    before = room.read_bytes()
    main(["sheets", str(room), str(DEMOS[0]), "--out", str(tmp_path), "--replace"])
    assert room.read_bytes() == before
