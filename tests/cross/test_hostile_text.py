"""Names that try to break out of SVG, terminal text and JSON."""

import json
import unicodedata
import xml.etree.ElementTree as ET

import pytest

from elevation.commands.main import main
from elevation.commands.speaking import shown, shown_json
from tests.cross.hostile import BIDI, DRAWN, LONG, MARKUP, REFUSED, TERMINAL, write_hostile

SVG = "{http://www.w3.org/2000/svg}"
# What our drawings consist of; anything else came out of a name.
OURS = {"svg", "title", "desc", "defs", "style", "g", "path", "polygon", "polyline", "text", "linearGradient", "stop"}
_IDS = ["markup", "bidi", "emoji", "long"]


def _steering(text: str) -> set[str]:
    """Characters of a text that would steer a terminal, from the Unicode database and UAX 9's list of marks."""
    marks = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
    return {sign for sign in text if (unicodedata.category(sign) == "Cc" and sign != "\n") or sign in marks}


@pytest.mark.parametrize("sheet", ["elevation", "measuring"])
@pytest.mark.parametrize("name", DRAWN, ids=_IDS)
def test_a_hostile_name_stays_text_in_svg(name, sheet, tmp_path):
    out = tmp_path / "x.svg"
    assert main(["draw", str(write_hostile(tmp_path, name)), "--out", str(out), "--sheet", sheet]) == 0
    root = ET.fromstring(out.read_bytes())
    assert {element.tag.removeprefix(SVG) for element in root.iter()} <= OURS
    for element in root.iter():
        assert not any(key.lower().startswith("on") or key.lower().endswith("href") for key in element.attrib)
        if element.tag != f"{SVG}style":
            assert all("url(" not in value or value.startswith("url(#") for value in element.attrib.values())
    title = root.find(f"{SVG}title")
    assert title is not None
    assert name[:20] in (title.text or "")


def test_markup_in_a_name_is_read_back_as_it_was_written(tmp_path):
    out = tmp_path / "x.svg"
    assert main(["draw", str(write_hostile(tmp_path, MARKUP)), "--out", str(out)]) == 0
    raw = out.read_text(encoding="utf-8")
    assert "<script" not in raw
    assert "</svg>" in raw
    assert raw.count("</svg>") == 1
    # Long names are shortened where they must fit; the title of a group is not.
    titles = [element.text or "" for element in ET.fromstring(raw).iter(f"{SVG}title")]
    assert any(MARKUP in title for title in titles)


def test_a_long_name_leaves_no_text_outside_the_sheet(tmp_path):
    out = tmp_path / "x.svg"
    assert main(["draw", str(write_hostile(tmp_path, LONG)), "--out", str(out)]) == 0
    root = ET.fromstring(out.read_bytes())
    width = float(root.get("viewBox", "").split()[2])
    for text in root.iter(f"{SVG}text"):
        if text.get("transform") is None:
            x, length = float(text.get("x", "")), float(text.get("textLength", ""))
            left = x - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.get("text-anchor", "start")] * length
            assert left >= 0
            assert left + length <= width, text.text


@pytest.mark.parametrize("name", DRAWN, ids=_IDS)
@pytest.mark.parametrize("as_json", [False, True], ids=["text", "json"])
def test_check_sends_nothing_to_the_terminal_that_steers_it(name, as_json, tmp_path, capsys):
    room = write_hostile(tmp_path, name)
    assert main(["check", str(room), *(["--json"] if as_json else [])]) == 1
    told = capsys.readouterr()
    assert not _steering(told.out)
    assert told.err == ""
    if as_json:
        assert json.loads(told.out)["rooms"][0]["room"] == name
    else:
        assert shown(name) in told.out


@pytest.mark.parametrize("name", REFUSED, ids=["escapes", "line ends", "too long"])
def test_a_name_that_no_sheet_can_show_is_refused_in_one_line(name, tmp_path, capsys):
    room = write_hostile(tmp_path, name)
    assert main(["check", str(room)]) == 2
    told = capsys.readouterr()
    assert told.err.count("\n") == 1
    assert not _steering(told.err)
    assert "name" in told.err


@pytest.mark.parametrize(
    "words",
    [
        ["check", f"{TERMINAL[:-4]}.json"],
        ["check", "DEMO", "--wall", TERMINAL],
        ["check", "DEMO", "--scheme", BIDI],
        ["draw", "DEMO", "--out", f"x.{TERMINAL}"],
        ["draw", "DEMO", "--out", "x.svg", "--scale", TERMINAL],
        ["draw", "DEMO", "--out", f"{TERMINAL[:12]}/x.svg"],
        [f"--{TERMINAL}"],
    ],
)
def test_what_was_typed_is_said_again_without_its_escapes(words, capsys):
    from elevation.commands.choosing import first_demo

    assert main([str(first_demo()) if word == "DEMO" else word for word in words]) == 2
    told = capsys.readouterr()
    assert not _steering(told.err)
    assert told.err.count("\n") == 1


def test_what_is_shown_and_what_is_not():
    # ECMA-48: ESC [ and the one-character CSI (9B) both start a control sequence.
    assert shown("a\x1b[2Jb\x9b2Jc\x07") == "a\\x1b[2Jb\\x9b2Jc\\x07"
    assert shown("two\nlines") == "two\nlines"
    assert shown("\u202eabc\u2028") == "\\u202eabc\\u2028"
    assert shown("½ ä שלום 🏠 窓") == "½ ä שלום 🏠 窓"
    assert json.loads(shown_json('"a\x9b\u202e"')) == "a\x9b\u202e"
    assert shown_json('"½"') == '"½"'


def test_a_file_whose_name_is_no_text_is_still_checked(tmp_path, capsys):
    room = tmp_path / "bad\udcff.room.json"
    try:
        room.write_bytes(write_hostile(tmp_path, "plain").read_bytes())
    except (OSError, UnicodeError):
        pytest.skip("this file system takes only names that are text")
    assert main(["check", str(room), "--json"]) == 1
    assert json.loads(capsys.readouterr().out)["rooms"][0]["file"].endswith("bad\N{REPLACEMENT CHARACTER}.room.json")
