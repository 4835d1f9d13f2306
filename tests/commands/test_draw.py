"""``draw`` and ``sheets``: formats, refusals, and nothing overwritten but what was named."""

import xml.etree.ElementTree as ET

import pytest

from elevation import places
from elevation.commands.main import main
from elevation.room.file import load_room

DEMOS = sorted(places.demo_rooms().glob("*.room.json"))
DEMO = str(DEMOS[0])


def test_svg_needs_no_qt_and_is_the_same_each_time(tmp_path, monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    one, two = tmp_path / "one.svg", tmp_path / "two.svg"
    assert main(["draw", DEMO, "--out", str(one)]) == 0
    assert main(["draw", DEMO, "--out", str(two)]) == 0
    assert one.read_bytes() == two.read_bytes()
    root = ET.fromstring(one.read_bytes())
    assert root.tag.endswith("svg")
    assert root.get("width", "").endswith("mm")


@pytest.mark.parametrize(
    "words",
    [
        ["draw", DEMO, "--out", "x.gif"],
        ["draw", DEMO, "--out", "x"],
        ["draw", "not-there.room.json", "--out", "x.svg"],
        ["draw", DEMO, "--out", "x.svg", "--wall", "nowhere"],
        ["draw", DEMO, "--out", "x.svg", "--scheme", "none such"],
        ["draw", DEMO, "--out", "x.svg", "--scale", "1:0"],
        ["draw", DEMO, "--out", "x.svg", "--scale", "big"],
        ["draw", DEMO, "--out", "no/such/folder/x.svg"],
        ["draw", DEMO, "--out", "x.svg", "--page", "2"],
    ],
)
def test_what_cannot_be_drawn_is_one_sentence_and_writes_nothing(words, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert main(words) == 2
    told = capsys.readouterr()
    assert told.err.count("\n") == 1
    assert "Traceback" not in told.err
    assert not list(tmp_path.iterdir())


def test_a_page_of_a_room_with_several_walls_is_one_of_them(tmp_path):
    """The PDF has a page for each wall in order; a file of one picture holds the page that was asked for."""
    demo, out = str(next(one for one in DEMOS if one.name.startswith("2-"))), tmp_path / "x.svg"
    titles = []
    for page in ("1", "2", "4"):
        assert main(["draw", demo, "--out", str(out), "--page", page]) == 0
        titles.append(next(one.text for one in ET.fromstring(out.read_bytes()) if one.tag.endswith("title")))
    walls = load_room(demo).walls
    assert all(walls[index].name in title for index, title in zip((0, 1, 3), titles, strict=True))
    assert main(["draw", demo, "--out", str(out), "--page", "5"]) == 2


@pytest.mark.parametrize("paper", ["a4", "a3", "letter", "tabloid"])
def test_papers_have_their_published_sizes(paper, tmp_path):
    # ISO 216 (A4 210 x 297, A3 297 x 420) and ASME Y14.1 (A 8.5 x 11 in, B 11 x 17 in), laid on their long side.
    sizes = {"a4": (297, 210), "a3": (420, 297), "letter": (279.4, 215.9), "tabloid": (431.8, 279.4)}
    out = tmp_path / "x.svg"
    assert main(["draw", DEMO, "--out", str(out), "--paper", paper]) == 0
    root = ET.fromstring(out.read_bytes())
    size = tuple(float(root.get(side, "").removesuffix("mm")) for side in ("width", "height"))
    assert size == pytest.approx(sizes[paper], abs=1e-3)


@pytest.mark.parametrize("sheet", ["elevation", "measuring"])
def test_each_sheet_of_each_demo_can_be_drawn(sheet, tmp_path):
    for demo in DEMOS:
        out = tmp_path / f"{demo.name}.svg"
        assert main(["draw", str(demo), "--out", str(out), "--sheet", sheet]) == 0
        ET.fromstring(out.read_bytes())
