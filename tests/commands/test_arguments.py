from pathlib import Path

import pytest

from elevation import __version__
from elevation.commands import arguments
from elevation.commands.main import main
from elevation.errors import BadInput


def test_no_words_open_the_window_on_a_demo():
    assert arguments.read([]) == arguments.Window(None)


def test_one_word_is_a_room():
    assert arguments.read(["bedroom.room.json"]) == arguments.Window(Path("bedroom.room.json"))


def test_a_room_named_like_a_command_is_given_with_its_folder():
    assert arguments.read(["./check"]) == arguments.Window(Path("./check"))


def test_check_takes_many_rooms_and_its_options():
    got = arguments.read(["check", "a", "b", "--wall", "north", "--all-schemes", "--json"])
    assert got == arguments.Check((Path("a"), Path("b")), wall="north", all_schemes=True, json=True)


def test_draw_takes_everything():
    words = ["draw", "a", "--out", "b.pdf", "--wall", "w", "--scheme", "s"]
    got = arguments.read([*words, "--sheet", "measuring", "--paper", "a3", "--scale", "1:20", "--dpi", "300"])
    assert got == arguments.Draw(Path("a"), Path("b.pdf"), "w", "s", "measuring", "a3", "1:20", 300)


@pytest.mark.parametrize(
    "words",
    [
        ["check"],
        ["draw", "a"],
        ["draw", "a", "--out", "b.svg", "--sheet", "roof"],
        ["draw", "a", "--out", "b.svg", "--paper", "a9"],
        ["draw", "a", "--out", "b.svg", "--dpi", "x"],
        ["draw", "a", "--out", "b.svg", "--dpi", "19"],
        ["draw", "a", "--out", "b.svg", "--dpi", "1201"],
        ["check", "a", "--scheme", "s", "--all-schemes"],
        ["check", "a", "--nonsense"],
        ["a", "b"],
        ["sheets", "a"],
    ],
)
def test_bad_use_is_one_sentence_and_exit_2(words, capsys):
    with pytest.raises(BadInput):
        arguments.read(words)
    assert main(words) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.count("\n") == 1
    assert "usage" not in told.err.lower()


@pytest.mark.parametrize("dpi", ["20", "1200"])
def test_dpi_at_its_limits_is_taken(dpi):
    got = arguments.read(["draw", "a", "--out", "b.svg", "--dpi", dpi])
    assert isinstance(got, arguments.Draw)
    assert got.dpi == int(dpi)


def test_version_and_help_print_and_leave(capsys):
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"elevation {__version__}\n"
    assert main(["--help"]) == 0
    assert "elevation check ROOM" in capsys.readouterr().out
