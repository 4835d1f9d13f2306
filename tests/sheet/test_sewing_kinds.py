"""The sewing sheet and its table of every kind of cloth and of panels that are altered: each says what it is."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.planning.buying.whole import buying_list
from elevation.planning.cloth_words import cloth_lines
from elevation.planning.dressed import dress
from elevation.planning.sewing.whole import sewing_of
from elevation.room.find import layer_of
from elevation.room.model import Fabric, Hem, Making, Room, Station
from elevation.setting_out.cloth import cloth_of_layer
from elevation.sheet.work.whole import sewing_pages, sewing_rows
from elevation.trade.tables import load_trade
from elevation.words import say
from tests.findings.rooms import INCHES, LAYER, at, good_room, inch, panels
from tests.planning.test_sewing import t21
from tests.sheet.pages import check_inside, texts

TRADE = load_trade()
WASHED = Making(2.0, returns=True, heading=inch(7), hem=inch(8), washed_first=True)


def fabric(**fields: object) -> Room:
    return at(t21(), LAYER, fabric=Fabric(**{"width": inch(54), **fields}))  # type: ignore[arg-type]


def falling(room: Room, by: float) -> Room:
    """The same over a floor that falls ``by`` inches over the wall's 144."""
    return at(room, LAYER[:1], floor=(Station(inch(0), inch(0)), Station(inch(144), inch(-by))))


def on_paper(room: Room) -> str:
    pages = sewing_pages((dress(room, TRADE),), TRADE)
    check_inside(pages)
    return " ".join(text.text for text in texts(pages))


def in_table(room: Room) -> str:
    return "\n".join("; ".join(row) for row in sewing_rows((dress(room, TRADE),), TRADE))


def in_words(room: Room) -> str:
    out = dress(room, TRADE).walls[0].treatments[0].layers[0]
    cloth = cloth_of_layer(room, layer_of(room, LAYER), out, TRADE)
    assert cloth is not None
    return " ".join(say(line, INCHES) for line in cloth_lines(cloth, room.unit, room.graduation_mm))


@pytest.mark.parametrize(
    ("room", "paper", "table"),
    [
        (fabric(width=inch(90), railroaded=True), "Turned on its side", "its top lies along the cloth's edge"),
        (at(fabric(shrinks=0.04), LAYER, making=WASHED), "Drawn as it is after the wash", "cut"),
        # A cut of 79 in repeats of 11 is 88: every other width begins half a repeat lower.
        (fabric(repeat=inch(11), half_drop=True), "Sewing sheet", "trim 5 1/2 in off the top"),
        (replace(t21(), fullness_rule="narrower"), "54 in", "selvedge"),
        (panels(good_room(), measured_length=inch(95)), "Fold line 82 in", "fold, cut, hem"),
        (panels(good_room(), measured_length=inch(82.5)), "too little to fold", "too little to fold"),
        (panels(good_room(), measured_length=inch(80)), "too short", "2 in too short"),
    ],
)
def test_what_is_told_of_it(room: Room, paper: str, table: str) -> None:
    assert paper in on_paper(room)
    assert table in in_table(room)


def test_cloth_on_its_side_that_is_washed_first_is_bought_longer_and_comes_out_as_wide() -> None:
    room = at(fabric(width=inch(90), railroaded=True, shrinks=0.04), LAYER, making=WASHED)
    (bolt,) = sewing_of(dress(room, TRADE), TRADE).bolts
    (dry,) = sewing_of(dress(fabric(width=inch(90), railroaded=True), TRADE), TRADE).bolts
    assert bolt.turned
    # The wash takes 4 percent along the bolt, which is across the panel: that much more is bought.
    assert [one.width_mm for one in bolt.pieces] == pytest.approx([one.width_mm for one in dry.pieces])
    assert bolt.bought_mm * 0.96 >= sum(one.width_mm for one in bolt.pieces) - 1e-6


@pytest.mark.parametrize(
    ("room", "told"),
    [
        (fabric(width=inch(90), railroaded=True), "turned on its side"),
        (fabric(width=inch(150)), "Each panel gets half a width."),
        (fabric(repeat=inch(8), half_drop=True), "for the half drop"),
    ],
)
def test_what_is_said_of_the_cloth(room: Room, told: str) -> None:
    assert told in in_words(room)


def test_a_half_drop_that_no_width_needs_is_left_over() -> None:
    # One width a panel: no seam, so nothing begins half a repeat lower, though the shop sold the repeat.
    room = fabric(width=inch(150), repeat=inch(8), half_drop=True)
    (bolt,) = sewing_of(dress(room, TRADE), TRADE).bolts
    assert {piece.trim_top_mm for piece in bolt.pieces} == {0.0}
    assert sum(strip.to_mm - strip.from_mm for strip in bolt.strips) == pytest.approx(bolt.bought_mm)


def test_of_cloth_whose_length_is_not_known_nothing_is_laid_out_and_the_list_says_so() -> None:
    room = at(t21(), LAYER, hem=Hem("panel"))
    dressed = dress(room, TRADE)
    sewing = sewing_of(dressed, TRADE)
    assert (sewing.bolts, [layer.panels for layer in sewing.layers]) == ((), [()])
    names = [say(line.name, INCHES) for line in buying_list((dressed,), frozenset(), TRADE).lines]
    assert any("not known how much" in name for name in names)


def test_a_panel_that_stays_as_it_is_hangs_unlike_over_a_floor_that_falls() -> None:
    # 1 in over 144; the panel's own width of floor falls by a part of it.
    room = falling(at(good_room(), LAYER, hem=Hem("panel")), 3)
    assert " to " in on_paper(panels(room, measured_length=inch(80))).split("its hem hangs", 1)[1][:40]


def test_a_shallow_hem_is_told() -> None:
    assert "shallow at one edge" not in on_paper(t21())
    assert "shallow at one edge" in on_paper(at(t21(), LAYER, making=Making(2.0, returns=True, hem=inch(0.5))))
