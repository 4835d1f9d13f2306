"""Brackets that are made: parts by hand, against the kits' own plates, bars that hold them; and what drilling waits for."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling_waits import waits_for
from elevation.planning.shop_made import NONE, flat_cuts, kits_made, made_brackets
from elevation.room.edits import replace_at
from elevation.room.file import load_room
from elevation.sheet.work.lists import bench_pages
from elevation.sheet.work.whole import drilling_pages
from elevation.trade.tables import load_trade
from elevation.units import Length
from tests.sheet.pages import check_inside, texts
from tests.strategies import random_room

TRADE = load_trade()
SAW = TRADE.saws["hacksaw"]
BEDROOM = load_room(demo_rooms() / "1-bedroom.room.json")
DEMOS = [load_room(path) for path in sorted(demo_rooms().glob("*.room.json"))]
IN = 25.4


def test_the_bedroom_s_straps_by_hand() -> None:
    """Rod of 0.922 in, 3 1/2 in from the wall: arm 3 1/2 + 1 in; seat and strap 1 1/2 + 1.571 x 0.922 = 2.948 in."""
    (made,) = made_brackets([dress(BEDROOM, TRADE)], TRADE)
    assert (made.kit.id, made.count) == ("shop-strap", 2)
    got = {part.row.id: (part.length_mm / IN, part.count) for part in made.parts}
    assert got == {
        "strap-plate": (pytest.approx(4.0), 2),
        "strap-arm": (pytest.approx(4.5), 2),
        "strap-seat": (pytest.approx(2.948, abs=0.001), 2),
        "strap-strap": (pytest.approx(2.948, abs=0.001), 2),
        "strap-screws": (0.0, 8),
    }
    cuts = {one.flat.id: len(one.plan.bars) for one in flat_cuts([made], SAW, TRADE)}
    assert cuts == {"flat-1-1/2": 1, "flat-3/4": 1, "strap-3/4": 1}


def test_the_table_s_plates_are_as_long_as_the_kits_plates() -> None:
    assert kits_made(TRADE) <= set(TRADE.brackets)
    for kit in kits_made(TRADE):
        row = TRADE.brackets[kit]
        (plate,) = [part for part in TRADE.bracket_parts.values() if part.kit == kit and part.id.endswith("-plate")]
        assert plate.fixed_mm == pytest.approx(row.plate_above_mm + row.plate_below_mm)
        assert TRADE.flats[plate.flat].wide_mm == pytest.approx(row.plate_width_mm)
        (arm,) = [part for part in TRADE.bracket_parts.values() if part.kit == kit and part.id.endswith("-arm")]
        # The bar that the load is reckoned on: brackets.csv, arm wide and arm deep.
        assert (TRADE.flats[arm.flat].wide_mm, TRADE.flats[arm.flat].thick_mm) == (row.arm_wide_mm, row.arm_deep_mm)
    for part in TRADE.bracket_parts.values():
        assert part.flat == NONE or part.flat in TRADE.flats


def test_two_rooms_make_twice_and_one_that_hangs_there_is_not_made() -> None:
    dressed = dress(BEDROOM, TRADE)
    (one,) = made_brackets([dressed], TRADE)
    (two,) = made_brackets([dressed, dressed], TRADE)
    assert two.count == 2 * one.count
    wall = BEDROOM.walls[0]
    scheme, laid = wall.schemes[0], wall.schemes[0].treatments[0]
    layer = laid.layers[0]
    ref = (wall.id, scheme.id, laid.id, layer.id, layer.brackets[0].id)
    (rest,) = made_brackets([dress(replace_at(BEDROOM, ref, there=True), TRADE)], TRADE)
    assert rest.count == one.count - 1


@pytest.mark.parametrize("seed", range(10))
def test_every_part_is_in_a_bar_and_bars_hold_them(seed: int) -> None:
    made = made_brackets([dress(random_room(seed), TRADE), dress(random_room(seed + 300), TRADE)], TRADE)
    for one in flat_cuts(made, SAW, TRADE):
        wanted = sum(part.count for brackets in made for part in brackets.parts if part.row.flat == one.flat.id)
        assert sum(len(bar.pieces) for bar in one.plan.bars) + len(one.plan.too_long) == wanted
        for bar in one.plan.bars:
            saws = (len(bar.pieces) - 1) * SAW.kerf_mm
            assert sum(piece.length_mm for piece in bar.pieces) + saws <= one.flat.stock_mm + 1e-6


@pytest.mark.parametrize("language", ["en", "de"])
def test_the_bench_sheet_says_parts_coats_and_hours(language: str) -> None:
    pages = bench_pages([dress(replace(room, language=language), TRADE) for room in DEMOS[:4]], TRADE)
    check_inside(pages)
    said = " ".join(text.text for text in texts(pages))
    assert ("Brackets to make" in said) is (language == "en")
    assert "24" in said
    hall = " ".join(text.text for text in texts(bench_pages([dress(DEMOS[5], TRADE)], TRADE)))
    assert "Brackets to make" not in hall  # the kitchen's are bought


def labelled(**fields: Length | None):
    """The bedroom with panels of 84 in known by ``fields`` alone."""
    wall = BEDROOM.walls[0]
    scheme, laid = wall.schemes[0], wall.schemes[0].treatments[0]
    layer = laid.layers[0]
    room = BEDROOM
    for panel in layer.panels:
        ref = (wall.id, scheme.id, laid.id, layer.id, panel.id)
        own = {"label_length": None, "measured_length": None, "hung_length": None, **fields}
        room = replace_at(room, ref, **own)
    return dress(room, TRADE)


LONG = Length(84 * IN, "84 in")


@pytest.mark.parametrize(
    ("fields", "waits"),
    [
        ({"label_length": LONG}, True),
        ({"label_length": LONG, "measured_length": LONG}, False),
        ({"label_length": LONG, "hung_length": LONG}, False),
        ({"measured_length": LONG}, False),
        ({}, False),
    ],
)
def test_drilling_waits_for_a_panel_that_only_its_packet_knows(fields: dict[str, Length], waits: bool) -> None:
    dressed = labelled(**fields)
    assert bool(waits_for(dressed.walls[0].treatments[0])) is waits
    pages = drilling_pages([dressed], TRADE)
    check_inside(pages)
    said = " ".join(text.text for text in texts(pages))
    assert ("Drilling sheet waits" in said) is waits
    assert ("84 in long" in said) is waits


def test_brackets_that_hang_there_wait_for_nothing() -> None:
    dressed = labelled(label_length=LONG)
    room, ref = dressed.room, dressed.walls[0].treatments[0].layers[0].ref
    for bracket in dressed.walls[0].treatments[0].layers[0].brackets:
        room = replace_at(room, (*ref, bracket.ref[-1]), there=True)
    assert waits_for(dress(room, TRADE).walls[0].treatments[0]) == ()
