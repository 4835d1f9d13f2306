"""Sentences about files, ids and places are said in the window's language and stay English where nobody reads along."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

import elevation
from elevation.errors import BadInput, ElevationError, NoSuch, Said, said
from elevation.room.file import load_bytes
from elevation.room.find import wall_of
from elevation.room.keeping.reading import read_bytes
from elevation.room.model import Room
from elevation.units.wrong import Amount
from elevation.words import say_error
from elevation.words.style import style_of

GERMAN = style_of("mm", 1.0, "de")
_SOURCE = Path(elevation.__file__).parent
_ERRORS = ("ElevationError", "BadInput", "BadOutput", "NoSuch", "Missing")
_ENGLISH = ("commands/", "trade/", "sheet/type_files.py")
"""What is only ever printed on the command line, or concerns a damaged installation."""


def _caught(call: object, *args: object) -> ElevationError:
    with pytest.raises(ElevationError) as caught:
        call(*args)  # type: ignore[operator]
    return caught.value


def test_a_filled_template_is_plain_english_text() -> None:
    text = said("is {angle} degrees beside {what}", angle=90.0, what=said("an object"))
    assert text == "is 90 degrees beside an object"
    assert text.template == "is {angle} degrees beside {what}"


def test_a_brace_in_a_value_stays_text() -> None:
    error = BadInput("den.room.json", "", said('has no "{key}"', key="{wrong}"))
    assert str(error) == 'den.room.json: has no "{wrong}"'
    assert say_error(error, GERMAN) == 'den.room.json: enthält kein "{wrong}"'


def test_a_length_inside_is_said_in_the_reader_s_unit() -> None:
    error = BadInput("", "", said("it must be at most {high}", high=Amount(254.0)))
    assert str(error) == "it must be at most 254 mm"
    assert say_error(error, style_of("in", 25.4 / 16, "de")) == "es darf höchstens 10 in sein"


@pytest.mark.parametrize(
    ("content", "german"),
    [
        ("", "den.room.json: ist leer; eine Raumdatei wählen"),
        ("[1, 2", "den.room.json: Zeile 1, Spalte 6: ist hier kein JSON (ein Komma fehlt)"),
        ("[]", "den.room.json: enthält eine Liste, keinen Raum"),
        ('{"format": "elevation-room", "version": 99}', "den.room.json: version: ist 99, aber dieses Programm liest nur"),
        (
            '{"format": "elevation-room", "version": 1, "units": "in"}',
            "den.room.json: units: ist kein Schlüssel, der hierher gehört; war „unit“ gemeint? Möglich sind",
        ),
        (
            '{"format": "elevation-room", "version": 1, "name": "", "unit": "in", "walls": []}',
            "den.room.json: walls: ist leer; ein Raum hat mindestens eine Wand",
        ),
    ],
)  # fmt: skip
def test_a_damaged_file_in_german(content: str, german: str) -> None:
    error = _caught(load_bytes, content.encode(), "den.room.json")
    assert say_error(error, GERMAN).startswith(german)
    assert " is " in str(error) or " has " in str(error) or " holds " in str(error)


def test_a_missing_file_and_an_unknown_wall_in_german(tmp_path: Path) -> None:
    gone = _caught(read_bytes, tmp_path / "gone.room.json", 1000)
    assert say_error(gone, GERMAN).endswith("gone.room.json: gibt es nicht; Namen und Ordner prüfen")
    assert str(gone).endswith("gone.room.json: does not exist; check its name and folder")
    unknown = _caught(wall_of, Room(name="Den", walls=()), "w9")
    assert isinstance(unknown, NoSuch)
    assert say_error(unknown, GERMAN).startswith('Den: Wand "w9" gibt es nicht')


def _texts(call: ast.Call) -> list[ast.expr]:
    called = call.func.id if isinstance(call.func, ast.Name) else getattr(call.func, "attr", "")
    if called in _ERRORS:
        return call.args[2:4] + [word.value for word in call.keywords if word.arg in ("wrong", "right")]
    return call.args if called == "bad" else []


def _unmarked(tree: ast.AST) -> list[int]:
    """Lines where an error gets text that no catalogue can know: it should be ``said("...", name=value)``."""
    found = []
    for call in ast.walk(tree):
        for text in _texts(call) if isinstance(call, ast.Call) else []:
            is_word = isinstance(text, ast.Constant) and bool(text.value)
            if is_word or isinstance(text, ast.JoinedStr | ast.BinOp):
                found.append(text.lineno)
    return found


def test_no_error_that_the_window_may_show_holds_bare_english() -> None:
    bare = [
        f"{path.relative_to(_SOURCE)}:{line}"
        for path in sorted(_SOURCE.rglob("*.py"))
        if not path.relative_to(_SOURCE).as_posix().startswith(_ENGLISH)
        for line in _unmarked(ast.parse(path.read_text("utf-8")))
    ]
    assert bare == []


def test_the_search_finds_bare_english() -> None:
    source = 'raise BadInput(name, "", f"is {x}", "write y")\nraise place.bad("is empty", said("add one"))\n'
    assert _unmarked(ast.parse(source)) == [1, 1, 2]
    assert not _unmarked(ast.parse('raise BadInput("a", "b", said("is {x}", x=1))'))


def test_what_carries_no_template_is_said_as_it_is() -> None:
    assert not isinstance(BadInput("a.json", "", "is odd").wrong, Said)
    assert say_error(BadInput("a.json", "", "is odd"), GERMAN) == "a.json: is odd"
