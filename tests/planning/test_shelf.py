"""Her own shelf in cut list and buying list, and bars that are cut in the shop so that they fit the car. By hand."""

from __future__ import annotations

from itertools import pairwise

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.places import demo_rooms
from elevation.planning.buying.model import BuyingList
from elevation.planning.buying.shelf import carry_mm, shelf_bars, shelf_parts
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import SectionCut, cut_list
from elevation.planning.cutting.carrying import shop_cuts, too_long_to_carry
from elevation.planning.cutting.model import Bar, CutPlan, Piece, Stock
from elevation.planning.dressed import dress
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.file import load_room
from elevation.trade.model import ShelfRow, Trade
from elevation.trade.own import HERS, table_named, with_own, written
from elevation.trade.tables import load_trade

TRADE = load_trade()
BEDROOM = load_room(demo_rooms() / "1-bedroom.room.json")
"""Its one rod is cut 60 in long, of 3/4 in conduit in bars of 10 ft."""
IN = 25.4


def shelved(*rows: tuple[str, float, int], carry: float = 0.0) -> Trade:
    shelf = {f"s{number}": ShelfRow(f"s{number}", part, length, count) for number, (part, length, count) in enumerate(rows)}
    allowances = {**TRADE.allowances, "carry": replace(TRADE.allowances["carry"], length_mm=carry)}
    return replace(TRADE, shelf=shelf, allowances=allowances)


def made(trade: Trade) -> tuple[SectionCut, BuyingList]:
    rooms = (dress(BEDROOM, trade),)
    cuts = cut_list(rod_pieces(rooms, trade), trade.saws["hacksaw"], trade, seconds=0.0)
    return cuts[0], buying_list(rooms, cuts, trade)


def bar_lines(bought: BuyingList) -> list[tuple[str, float, float, int]]:
    return [(line.part, line.needed, line.shelf, line.packs) for line in bought.lines if line.group == "rods"]


@pytest.mark.parametrize(
    ("bar_mm", "is_enough"), [(60 * IN - 0.2, False), (60 * IN, True), (60 * IN + 0.2, True), (62 * IN, True)]
)
def test_a_bar_of_the_shelf_just_too_short_just_enough_and_longer(bar_mm: float, is_enough: bool) -> None:
    cut, bought = made(shelved(("rod:conduit-3/4", bar_mm, 1)))
    assert [bar.stock.count for bar in cut.plan.bars] == ([1] if is_enough else [None])
    if is_enough:
        assert bar_lines(bought) == [(f"rod:conduit-3/4-{bar_mm:.0f}", 1, 1, 0)]
    else:
        assert bar_lines(bought) == [("rod:conduit-3/4", 1, 0, 1)]


@pytest.mark.parametrize(("part", "count"), [("rod:conduit-3/4", 0), ("rod:conduit-1", 3)])
def test_no_bar_and_bars_of_another_section_change_nothing(part: str, count: int) -> None:
    assert bar_lines(made(shelved((part, 62 * IN, count)))[1]) == bar_lines(made(TRADE)[1])


def test_parts_of_the_shelf_are_not_bought() -> None:
    """20 rings are needed, in packs of 10: 11 at hand leave 9, which are one pack; 2 finials at hand leave none."""
    rows = (("clip-ring:ring-1-1/4", 0.0, 6), ("clip-ring:ring-1-1/4", 0.0, 5), ("end:ball-finial", 0.0, 2))
    _, bought = made(shelved(*rows))
    found = {line.part: (line.shelf, line.packs, line.left) for line in bought.lines}
    assert found["clip-ring:ring-1-1/4"] == (11, 1, 1)
    assert found["end:ball-finial"] == (2, 0, 0)
    assert found["made:strap-screws"] == (0, 8, 0)


def test_cloth_on_the_shelf_is_a_length_times_a_count() -> None:
    trade = shelved(("cloth:linen", 914.4, 2), ("cloth:linen", 100.0, 1))
    assert shelf_parts(trade) == {"cloth:linen": pytest.approx(1928.8)}
    assert shelf_bars("conduit-3/4", trade) == ()


def test_any_length_is_carried_until_one_is_said() -> None:
    assert carry_mm(TRADE) is None
    assert carry_mm(shelved(carry=96 * IN)) == pytest.approx(96 * IN)


@pytest.mark.parametrize(
    ("carry_in", "marks"),
    [(120, ()), (119, (108,)), (100, (72,)), (71, (36, 72)), (36, (36, 72, 108)), (12, (36, 72, 108))],
)
def test_where_the_shop_cuts_a_bar_of_120_in_with_three_pieces_of_36_in(carry_in: float, marks: tuple[float, ...]) -> None:
    """By hand: every part is as long as may be, and each cut is at a mark of the bar; no saw width here."""
    pieces = tuple(Piece(key, 36 * IN) for key in "ABC")
    bar = Bar(Stock("120", 120 * IN), pieces, (36 * IN, 72 * IN, 108 * IN), 12 * IN)
    assert [mark / IN for mark in shop_cuts(bar, carry_in * IN)] == pytest.approx(marks)
    plan = CutPlan((bar,), (), 1, 1)
    assert [piece.key for piece in too_long_to_carry(plan, carry_in * IN)] == ([] if carry_in >= 36 else ["A", "B", "C"])
    # What lies at home is carried nowhere.
    assert shop_cuts(replace(bar, stock=Stock("s", 120 * IN, 1, 0)), carry_in * IN) == ()


def test_what_is_left_over_is_cut_for_the_car_too() -> None:
    bar = Bar(Stock("120", 120 * IN), (Piece("A", 20 * IN),), (20 * IN,), 100 * IN)
    cuts = [0.0, *(mark / IN for mark in shop_cuts(bar, 48 * IN)), 120.0]
    assert cuts == pytest.approx([0, 20, 68, 116, 120])
    assert max(b - a for a, b in pairwise(cuts)) <= 48


def test_the_bedroom_s_bar_is_cut_in_the_shop_or_delivered() -> None:
    notes = {line.part: str(line.notes) for line in made(shelved(carry=96 * IN))[1].lines}
    assert "let the shop cut it" in notes["rod:conduit-3/4"]
    assert "must be delivered" not in notes["rod:conduit-3/4"]
    notes = {line.part: str(line.notes) for line in made(shelved(carry=59 * IN))[1].lines}
    assert "must be delivered" in notes["rod:conduit-3/4"]


@pytest.mark.parametrize(
    ("row", "wrong"),
    [
        (("a", "rod:conduit-3/5", "62 in", "1"), 'which is no section; the nearest is "conduit-3/4"'),
        (("a", "rod:conduit-3/4", "none", "1"), "is a bar without a length"),
        (("a", "ring:ring-1", "none", "1.5"), "is not a count"),
        (("a", "ring:ring-1", "none", "10001"), "is not a count"),
        (("a", "cloth:linen", "3", "1"), "has no unit"),
        (("a", "", "none", "1"), "is empty"),
    ],
)
def test_a_wrong_row_of_the_shelf_is_refused_with_a_sentence(tmp_path, row, wrong) -> None:
    table = table_named("shelf")
    (tmp_path / table.file).write_text(",".join(table.titles) + "\n" + ",".join(row) + "\n", encoding="utf-8")
    with pytest.raises(BadInput) as caught:
        with_own(TRADE, tmp_path)
    assert wrong in str(caught.value)


def test_shelf_and_prices_of_hers_are_read_back(tmp_path) -> None:
    rows = {
        "shelf": ("a", "rod:conduit-3/4", "62 in", "2"),
        "prices": ("ring:ring-1", "4.20", "USD", "7", "2026-03-31", "the shop, Main St"),
    }
    for table in HERS:
        (tmp_path / table.file).write_text(written(table, [rows[table.name]]), encoding="utf-8")
    trade = with_own(TRADE, tmp_path)
    assert [(bar.length_mm, bar.count) for bar in shelf_bars("conduit-3/4", trade)] == [(pytest.approx(62 * IN), 2)]
    price = trade.prices["ring:ring-1"]
    assert (price.price, price.pack, price.is_length, price.place) == (4.2, 7, False, "the shop, Main St")
    assert TRADE.shelf == {}
