"""The sheet of schemes: one scale for all, measured again in what was drawn, and nothing beyond the frame."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation import places
from elevation.commands.main import main
from elevation.errors import Missing
from elevation.planning.comparing import compare, pages_of
from elevation.planning.dressed import Dressed, dress
from elevation.room.edits import duplicate_scheme
from elevation.room.file import load_room
from elevation.sheet.paper import page_named
from elevation.sheet.records import Fill, Line, Path, Picture, Polyline, Text
from elevation.sheet.schemes import scheme_pages, scheme_sheet
from elevation.sheet.type_metrics import text_width
from elevation.trade import load_trade
from tests.sheet.pages import texts

TRADE = load_trade()
BEDROOM = places.demo_rooms() / "1-bedroom.room.json"


def xs_of(picture: Picture, layer: str, ref: tuple[str, ...]) -> tuple[float, float]:
    """Left and right of what stands in groups of that layer and ref, wall mm."""
    found: list[float] = []
    for group in picture.groups:
        if group.layer != layer or group.ref[: len(ref)] != ref:
            continue
        for record in group.records:
            if isinstance(record, Line):
                found += [record.a[0], record.b[0]]
            elif isinstance(record, Polyline):
                found += [x for x, _ in record.points]
            elif isinstance(record, (Path, Fill)):
                found += [float(x) for step in record.steps for x in step[1::2]]
    return min(found), max(found)


def check_in_frame(picture: Picture) -> None:
    """Assert that every text stands inside the frame: 20 mm at the left, 10 mm elsewhere (ISO 5457)."""
    assert picture.page is not None
    for group in picture.groups:
        for record in group.records:
            if not isinstance(record, Text):
                continue
            x, y = record.at
            if group.frame == "wall":
                x, y = picture.origin[0] + x / picture.scale, picture.origin[1] + y / picture.scale
            wide = text_width(record.text, record.height, record.weight)
            left = x - {"left": 0.0, "middle": wide / 2, "right": wide}[record.align]
            assert 20.0 <= left <= left + wide <= picture.page.width_mm - 10.0, record.text
            assert 10.0 <= y <= y + 0.8 * record.height <= picture.page.height_mm - 10.0, record.text


@pytest.mark.parametrize("name", [path.name for path in sorted(places.demo_rooms().glob("*.room.json"))])
def test_every_demo_room_has_its_sheet_inside_the_frame(name: str) -> None:
    room = load_room(places.demo_rooms() / name)
    for wall in room.walls:
        for ids in pages_of(room, wall.id):
            picture = scheme_sheet(compare(room, wall.id, ids, TRADE), TRADE, date="2026-01-02")
            check_in_frame(picture)
            written = {text.text for text in texts([picture])}
            assert {"Schemes side by side", "Entwürfe nebeneinander"} & written


def test_all_schemes_stand_at_one_scale_beside_each_other() -> None:
    room = load_room(BEDROOM)
    room, third = duplicate_scheme(room, "north", "s2", "A third way, with a name so long that it must be broken in two")
    compared = compare(room, "north", ("s1", third[1], "s2"), TRADE)
    picture = scheme_sheet(compared, TRADE, date="2026-01-02")
    check_in_frame(picture)
    spans = [xs_of(picture, "rod", ("north", str(one.id))) for one in compared.schemes]
    assert spans[0][1] < spans[1][0] < spans[1][1] < spans[2][0]
    # The second and third are alike, one step further; the first stands as far to their left, by its own place on the wall.
    step = spans[2][0] - spans[1][0]
    assert spans[2][1] - spans[1][1] == pytest.approx(step)
    metal = [one.set_out.treatments[0].layers[0].support.metal_left_mm for one in compared.schemes]
    assert spans[1][0] - spans[0][0] == pytest.approx(step + metal[1] - metal[0], abs=15.0)
    assert picture.scale in (24.0, 32.0, 48.0)


def test_a_larger_sheet_is_taken_only_where_the_schemes_would_be_too_small() -> None:
    room = load_room(BEDROOM)
    compared = compare(room, "north", ("s1", "s2"), TRADE)
    assert scheme_sheet(compared, TRADE).page == page_named("letter")
    small = scheme_sheet(compared, TRADE, page_named("letter"), 48.0)
    assert small.scale == 48.0


def test_a_stop_is_said_across_the_sheet_by_its_scheme() -> None:
    room = load_room(places.demo_rooms() / "4-flat.room.json")
    picture = scheme_sheet(compare(room, "sued", ("s1", "s2"), TRADE), TRADE, date="2026-01-02")
    bands = [text.text for text in texts([picture]) if text.text.startswith("Halt: ")]
    assert len(bands) == 1
    assert bands[0].endswith("Einseitig nach rechts")


def test_a_room_without_schemes_says_so() -> None:
    room = load_room(BEDROOM)
    bare = replace(room, walls=(replace(room.walls[0], schemes=()),))
    with pytest.raises(Missing, match="no scheme"):
        scheme_pages((dress(bare, TRADE),), TRADE)
    assert len(scheme_pages((Dressed(room, dress(room, TRADE).walls),), TRADE)) == 1


def test_drawn_from_the_command_line(tmp_path, capsys) -> None:
    out = tmp_path / "a.svg"
    assert main(["draw", str(BEDROOM), "--sheet", "schemes", "--out", str(out)]) == 0
    both = out.read_text()
    assert "Higher and wider" in both
    assert main(["draw", str(BEDROOM), "--sheet", "schemes", "--scheme", "s1", "--out", str(out)]) == 0
    alone = out.read_text()
    assert "Bare wall" in alone
    assert "Higher and wider" not in alone
    assert main(["draw", str(BEDROOM), "--sheet", "schemes", "--page", "2", "--out", str(out)]) == 2
    assert "--page" in capsys.readouterr().err
