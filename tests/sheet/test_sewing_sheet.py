"""The sewing sheet: published examples measured back from what is drawn, nothing off the page, in either language."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from msgspec.structs import replace

from elevation.errors import Missing
from elevation.output.svg import to_svg
from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.sewing.whole import sewing_of
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.sheet.work.page import Sheet, upright, width_of
from elevation.sheet.work.sewing import cutting_sheet
from elevation.sheet.work.sewing_bolt import scale_of
from elevation.sheet.work.whole import sewing_pages, sewing_rows
from elevation.trade.tables import load_trade
from tests.findings.rooms import INCH, good_room, inch, panels
from tests.planning.test_sewing import t02, t16, t21, t22, two_inch_side_hems
from tests.sheet.pages import check_inside, texts
from tests.strategies import random_room

TRADE = load_trade()
DEMOS = sorted(demo_rooms().glob("*.room.json"))
CLOTH, WASTE, EDGE = "#e9eef0", "#e0dbd2", "#d5d0c6"
RECTANGLE = re.compile(
    r'<path d="M([\d.]+) ([\d.]+)L([\d.]+) [\d.]+L[\d.]+ ([\d.]+)L[\d.]+ [\d.]+Z"[^>]*fill="(#[0-9a-f]{6})"/>'
)


def drawn(room, trade=TRADE):
    """Bolts, the page's SVG, and every rectangle of it: (colour, left, right, low, high) in mm on paper."""
    sewing = sewing_of(dress(room, trade), trade)
    pages = cutting_sheet(sewing.bolts, Sheet("", style_for(room), date="2026-03-01"))
    check_inside(pages)
    svg = "".join(to_svg(page).decode() for page in pages)
    found = [(colour, float(x1), float(x2), float(y1), float(y2)) for x1, y1, x2, y2, colour in RECTANGLE.findall(svg)]
    return sewing.bolts, svg, found


def lengths(room, trade=TRADE):
    """The pieces of the first bolt, measured back from the SVG: (along, across) in mm of cloth."""
    bolts, _, found = drawn(room, trade)
    scale = scale_of(bolts[0], width_of(upright(room.unit)) - 8.0)
    pieces = [one for one in found if one[0] == CLOTH][: len(bolts[0].pieces)]
    return scale, [(round((x2 - x1) * scale), round(abs(y2 - y1) * scale)) for _, x1, x2, y1, y2 in pieces]


@pytest.mark.parametrize(
    ("room", "trade", "count", "along", "across"),
    [
        # contractdecor.com/contentmgr/showdetails.php/id/8713: three cuts of 80 in, one parted.
        (t21(), TRADE, 4, 80 * INCH, 54 * INCH),
        # livingstonetextiles.com/2011/07: three cuts of 1.95 m, one parted.
        (t16(), TRADE, 4, 1950, 1370),
        # ehow.co.uk/how_6326063: five cuts of 88 in; for a pair one is parted.
        (t02(), two_inch_side_hems(), 6, 88 * INCH, 54 * INCH),
        # mycurtainstyles.com/Yardage_for%20rodpocket_curtain.html: four cuts of 95 1/2 in.
        (t22(), two_inch_side_hems(), 4, 95.5 * INCH, 54 * INCH),
    ],
    ids=["T21", "T16", "T02", "T22"],
)
def test_published_cuts_are_measured_back_from_the_drawing(room, trade, count, along, across):
    scale, pieces = lengths(room, trade)
    assert len(pieces) == count
    # The file is written to 0.001 mm of paper.
    for long, wide in pieces:
        assert long == pytest.approx(along, abs=0.002 * scale + 0.5)
        assert wide == pytest.approx(across, abs=0.002 * scale + 0.5) or wide == pytest.approx(
            across / 2, abs=0.002 * scale + 0.5
        )
    assert sum(long * wide for long, wide in pieces) == pytest.approx(
        along * across * (count - sum(wide < 0.6 * across for _, wide in pieces) / 2), rel=0.002
    )


def test_running_marks_are_the_published_sums():
    _, svg, _ = drawn(t22(), two_inch_side_hems())
    # 95 1/2, 191, 286 1/2 and 382 in; 11 yards are 396.
    for figure in ("95¹⁄₂ in", "191 in", "286¹⁄₂ in", "382 in", "396 in"):
        assert f">{figure}</text>" in svg
    _, svg, _ = drawn(t21())
    # One repeat of 8 in for the first motif, then every 80.
    for figure in ("8 in", "88 in", "168 in", "248 in", "252 in"):
        assert f">{figure}</text>" in svg


def test_pieces_and_waste_as_drawn_fill_the_bolt():
    bolts, _, found = drawn(t21())
    width = width_of(upright("in")) - 8.0
    for bolt in bolts:
        scale = scale_of(bolt, width)
        count = sum(len(strip.areas) for strip in bolt.strips)
        on_bolts = [one for one in found if one[0] in (CLOTH, WASTE, EDGE)]
        own, found = on_bolts[:count], on_bolts[count:]
        area = sum((x2 - x1) * abs(y2 - y1) for _, x1, x2, y1, y2 in own) * scale**2
        # To 1 mm of its length.
        assert area / bolt.width_mm == pytest.approx(bolt.bought_mm, abs=1.0)


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.name.split(".")[0])
def test_every_demo_room_stays_on_its_pages(path, language):
    room = replace(load_room(path), language=language)
    pages = sewing_pages((dress(room, TRADE),), TRADE)
    check_inside(pages)
    said = " ".join(text.text for text in texts(pages))
    assert ("Sewing sheet" in said) is (language == "en")
    rows = sewing_rows((dress(room, TRADE),), TRADE)
    assert {len(row) for row in rows} == {len(rows[0])}


@pytest.mark.parametrize("seed", range(12))
def test_no_text_leaves_the_page(seed):
    try:
        pages = sewing_pages((dress(random_room(seed), TRADE),), TRADE)
    except Missing:
        return
    check_inside(pages)


def test_running_marks_in_the_table_follow_each_other():
    room = load_room(demo_rooms() / "4-flat.room.json")
    rows = [row for row in sewing_rows((dress(room, TRADE),), TRADE)[1:] if not row[1]]
    for before, after in pairwise(row for row in rows if row[3] not in ("2L-2",)):
        assert before[5] == after[4]
    for row in rows:
        start, end, long = (int(cell.split()[0]) for cell in row[4:7])
        assert end - start == long


def test_a_panel_that_is_not_measured_has_blanks_and_no_fold():
    pages = sewing_pages((dress(panels(good_room(), label_length=inch(95)), TRADE),), TRADE)
    said = " ".join(text.text for text in texts(pages))
    assert "____" in said
    assert "Fold line" not in said
    assert "label's size is not a length" in said
    measured = sewing_pages((dress(panels(good_room(), measured_length=inch(95)), TRADE),), TRADE)
    said = " ".join(text.text for text in texts(measured))
    assert "Fold line 82 in under the top edge" in said
    assert "Cut line 90 in under the top edge" in said
    assert "hem 8 in deep" in said


def test_cautions_stand_where_the_act_is():
    pages = sewing_pages((dress(t21(), TRADE),), TRADE)
    said = " ".join(text.text for text in texts(pages))
    for word in ("hot iron", "shears are sharp", "washed, dried", "hem is sewn last"):
        assert word in said


def test_a_room_without_panels_has_nothing_to_sew():
    room = panels(good_room())
    bare = replace(room, walls=(replace(room.walls[0], schemes=()),))
    with pytest.raises(Missing):
        sewing_pages((dress(bare, TRADE),), TRADE)
