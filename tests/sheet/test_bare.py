"""Sheets of nothing, or of less than usual: each says so in one sentence, or draws what there is."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.commands.sections import section_pictures
from elevation.errors import Missing
from elevation.output.cutting_files import to_dxf
from elevation.planning.buying.model import BuyingList
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import cut_list
from elevation.planning.cutting.model import CutPlan
from elevation.planning.dressed import dress
from elevation.planning.piece_names import panel_names
from elevation.planning.plate import plate_of
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.find import layer_of
from elevation.room.model import Obstacle, Room, WallEnd
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.every import every_sheet, paper_for
from elevation.sheet.records import Page
from elevation.sheet.section_cut import station_of, treatment_shown
from elevation.sheet.unfolded import row_of, unfold
from elevation.sheet.work.bench import _summary, bench_sheet
from elevation.sheet.work.buying import buying_sheet
from elevation.sheet.work.lists import plates_to_cut
from elevation.sheet.work.page import Sheet
from elevation.sheet.work.whole import drilling_pages, hanging_pages, trial_pages
from elevation.trade.tables import load_trade
from elevation.words import say
from tests.findings.rooms import INCH, INCHES, LAYER, at, good_room, inch, obstacle, with_obstacle
from tests.planning.test_shelf import shelved
from tests.sheet.pages import check_inside, texts

TRADE = load_trade()
BARE = good_room(schemes=())


def on_paper(pages: object) -> str:
    return " ".join(text.text for text in texts(pages))


@pytest.mark.parametrize("make", [drilling_pages, hanging_pages, trial_pages], ids=lambda make: make.__name__)
def test_a_room_where_nothing_hangs_has_no_page_to_hang_by(make) -> None:
    with pytest.raises(Missing, match=r"nothing|no bracket"):
        make((dress(BARE, TRADE),), TRADE)


def test_nothing_hangs_so_nothing_is_cut_or_bought() -> None:
    with pytest.raises(Missing):
        plates_to_cut((dress(BARE, TRADE),), TRADE)
    pages = buying_sheet(BuyingList((), ()), Sheet("", style_for(BARE)))
    check_inside(pages)
    assert "Nothing has to be bought." in on_paper(pages)


def test_what_lies_on_the_shelf_is_at_hand_and_its_bar_on_the_bench_says_so() -> None:
    room = good_room()
    section = layer_of(room, LAYER).rod.section
    trade = shelved((f"rod:{section}", 2000.0, 1), ("end:ball-finial", 0.0, 2))
    dressed = (dress(room, trade),)
    cuts = cut_list(rod_pieces(dressed, trade), trade.saws["hacksaw"], trade, seconds=0.0)
    bought = on_paper(buying_sheet(buying_list(dressed, cuts, trade), Sheet("", style_for(room))))
    assert "at hand" in bought
    bench = on_paper(bench_sheet(cuts, trade.saws["hacksaw"], Sheet("", style_for(room))))
    assert "lies on your shelf" in bench


@pytest.mark.parametrize(("bound", "told"), [(3, "0 bars, proven the fewest"), (1, "at most 2 more than the fewest")])
def test_how_good_a_cut_list_is(bound: int, told: str) -> None:
    assert told in say(_summary(CutPlan((), (), 3, bound)), INCHES)


def test_sheets_to_work_by_stand_upright_and_drawings_lie() -> None:
    paper = Page("a4", 297.0, 210.0)
    kinds = {kind.is_upright: kind for kind in every_sheet()}
    assert paper_for(kinds[False], paper) is paper
    assert paper_for(kinds[True], paper) == Page("a4", 210.0, 297.0)
    assert paper_for(kinds[True], None) is None


def test_a_ring_of_walls_is_cut_open_at_the_one_that_is_looked_at() -> None:
    names = "abcd"
    ends = [(WallEnd("corner", names[at - 1]), WallEnd("corner", names[(at + 1) % 4])) for at in range(4)]
    walls = tuple(
        replace(BARE.walls[0], id=name, left=left, right=right) for name, (left, right) in zip(names, ends, strict=True)
    )
    ring = Room(walls=walls)
    assert [wall.id for wall in row_of(ring, walls[2])] == ["c", "d", "a", "b"]


def test_a_wall_without_the_scheme_unfolds_in_its_first() -> None:
    (wall,) = good_room().walls
    other = replace(wall, id="w2", left=WallEnd("corner", "w1"), schemes=(replace(wall.schemes[0], id="s9", name="Rich"),))
    room = Room(walls=(replace(wall, right=WallEnd("corner", "w2")), other))
    assert [one.set_out.scheme for one in unfold(room, room.walls[0], "s1", TRADE)] == ["s1", "s9"]


def test_a_bare_wall_is_cut_through_its_opening_or_its_middle() -> None:
    bare = set_out_afresh(BARE, "w1", None, TRADE)
    assert treatment_shown(bare, None) is None
    assert station_of(bare, None) == pytest.approx(72 * INCH)  # the window from 54 to 90 in
    blank = set_out_afresh(good_room(schemes=(), openings=(), width=inch(100)), "w1", None, TRADE)
    assert station_of(blank, None) == pytest.approx(50 * INCH)
    hung = set_out_afresh(good_room(), "w1", "s1", TRADE)
    assert treatment_shown(hung, ("w1", "elsewhere")) is hung.treatments[0]


@pytest.mark.parametrize(
    "thing",
    [
        obstacle("pipe", 70 * INCH, 200, 40, 900, 60),
        obstacle("pipe", 60 * INCH, 200, 500, 40, 60),
        obstacle("shelf", 60 * INCH, 300, 500, 25, 200),
        obstacle("shelf", 60 * INCH, 300, 500, 300, 200),
    ],
)
def test_what_stands_before_the_wall_is_cut(thing: Obstacle) -> None:
    room = with_obstacle(good_room(), thing)
    plain = section_pictures(good_room(), good_room().walls[0], good_room().walls[0].schemes[0], TRADE)[0]
    (picture,) = section_pictures(room, room.walls[0], room.walls[0].schemes[0], TRADE)
    count = sum(len(group.records) for group in picture.groups)
    assert count > sum(len(group.records) for group in plain.groups)


def test_the_middle_one_of_three_layers_is_named_by_its_number() -> None:
    front = layer_of(good_room(), LAYER)
    room = at(good_room(), LAYER[:3], layers=(front, replace(front, id="l2"), replace(front, id="l3")))
    names = [say(name.name, INCHES) for name in panel_names(dress(room, TRADE)).values()]
    assert names[::2] == ["left panel, front", "left panel, middle layer 1", "left panel, back"]


@pytest.mark.parametrize("is_set", [True, False])
def test_the_folder_for_caches_is_as_it_was_after_a_dxf(is_set: bool, monkeypatch: pytest.MonkeyPatch, tmp_path) -> None:
    import os

    if is_set:
        monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    else:
        monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    kit = next(row for row in TRADE.brackets.values() if row.holes_mm)
    assert to_dxf([plate_of(kit, kit.mount)])
    assert os.environ.get("XDG_CACHE_HOME") == (str(tmp_path) if is_set else None)
