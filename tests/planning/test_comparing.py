"""Schemes side by side: what the table says, against figures reckoned by hand and against the sheets of each alone."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation import places
from elevation.findings.all_rules import find
from elevation.findings.model import Scene, Weight
from elevation.planning.buying.table import table_rows
from elevation.planning.buying.whole import buying_list
from elevation.planning.comparing import MOST, Comparison, choices, compare, pages_of
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import dress
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.edits import duplicate_scheme, keep_scheme
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.trade import load_trade
from elevation.trade.model import PriceRow
from elevation.trade.tables import row_of
from elevation.words import say

TRADE = load_trade()
ROOM = load_room(places.demo_rooms() / "1-bedroom.room.json")
STYLE = style_for(ROOM)


def said(compared: Comparison, label: str) -> list[str | None]:
    """The cells of the row with that label."""
    row = next(row for row in compared.rows if say(row.label, STYLE) == label)
    return [None if value is None else say(value, STYLE) for value in row.values]


@pytest.fixture(scope="module")
def both() -> Comparison:
    return compare(ROOM, "north", ("s1", "s2"), TRADE)


def test_figures_reckoned_by_hand(both: Comparison) -> None:
    # The opening is 38 in between its jambs; 11 in on either side make 60 in, 13 in make 64 in.
    assert said(both, "Beyond the opening") == ["11 in each", "13 in each"]
    assert said(both, "Rod, end to end") == ["60 in", "64 in"]
    # Fullness is flat over finished: 2 x 54 in over the rod, 2 x 64 in over the rod, as read to one place.
    assert [float(cell or 0) for cell in said(both, "Fullness")] == pytest.approx([108 / 58, 128 / 62], abs=0.06)


def test_only_what_reads_differently_differs(both: Comparison) -> None:
    for row in both.rows:
        cells = {None if value is None else say(value, STYLE) for value in row.values}
        assert row.differs == (len(cells) > 1)
    assert len(both.differing) + len(both.alike) == len(both.rows)
    assert [say(row.label, STYLE) for row in both.alike] == [
        "Glass clear, open", "Glass clear, closed", "Findings",
    ]  # fmt: skip


def test_findings_are_those_of_each_scheme_alone() -> None:
    room = load_room(places.demo_rooms() / "4-flat.room.json")
    compared = compare(room, "sued", ("s1", "s2"), TRADE)
    for one in compared.schemes:
        assert one.findings == find(Scene(room, one.set_out, TRADE))
    stops = [any(finding.weight is Weight.STOP for finding in one.findings) for one in compared.schemes]
    assert stops == [False, True]
    assert ["stop" in (cell or "") for cell in said(compared, "Findings")] == stops


def test_a_copy_differs_in_nothing() -> None:
    room, ref = duplicate_scheme(ROOM, "north", "s1", "Copy")
    assert compare(room, "north", ("s1", ref[1]), TRADE).differing == ()


def test_the_order_of_schemes_orders_the_columns_and_nothing_else(both: Comparison) -> None:
    turned = compare(ROOM, "north", ("s2", "s1"), TRADE)
    assert [row.values for row in turned.rows] == [row.values[::-1] for row in both.rows]
    assert [row.differs for row in turned.rows] == [row.differs for row in both.rows]


def test_before_anything_hangs_all_glass_is_clear() -> None:
    compared = compare(ROOM, "north", (None, "s1"), TRADE)
    assert said(compared, "Glass clear, open")[0] == said(compared, "Glass clear, closed")[0] == "100%"
    assert said(compared, "Rod, end to end")[0] is None
    assert compared.schemes[0].findings == ()
    assert compared.schemes[0].set_out.treatments == ()


def test_the_cost_never_keeps_silent_about_what_has_no_price() -> None:
    assert all(cell and "without a price" in cell for cell in said(compare(ROOM, "north", ("s1", "s2"), TRADE), "Cost"))
    dressed = dress(ROOM, TRADE, "north", "s1")
    cuts = cut_list(rod_pieces((dressed,), TRADE), row_of(TRADE.saws, "hacksaw", "saw"), TRADE)
    bought = buying_list((dressed,), cuts, TRADE)
    # Every part at 2 for one: as many twos as packs, by hand from the list itself.
    prices = {
        line.part: PriceRow(line.part, 2.0, "EUR", line.pack, line.measure == "length", "2026-03-31", "shop")
        for line in bought.lines
    }
    priced = replace(TRADE, prices=prices)
    euros = 2 * sum(line.packs for line in bought.lines)
    cell = said(compare(ROOM, "north", ("s1",), priced), "Cost")[0]
    assert cell == f"{euros:.2f} EUR"
    rows = table_rows(buying_list((dressed,), cuts, priced), "in", STYLE)
    assert any(f"{euros:.2f}" in row and "EUR" in row for row in rows)


# At most four on a page, parted as evenly as can be: by hand.
@pytest.mark.parametrize(("count", "sizes"), [(2, (2,)), (3, (3,)), (4, (4,)), (5, (3, 2)), (8, (4, 4)), (9, (3, 3, 3))])
def test_many_schemes_are_parted_evenly(count: int, sizes: tuple[int, ...]) -> None:
    room = ROOM
    for _ in range(count - 2):
        room, _ref = duplicate_scheme(room, "north", "s1", "")
    pages = pages_of(room, "north")
    assert tuple(map(len, pages)) == sizes
    assert max(sizes) <= MOST
    assert [key for page in pages for key in page] == [key for key, _ in choices(room, "north")][1:]


def test_one_scheme_is_shown_before_and_after_and_kept() -> None:
    room = keep_scheme(ROOM, "north", "s2")
    assert [scheme.id for scheme in room.walls[0].schemes] == ["s2"]
    assert room.walls[0].schemes[0] is ROOM.walls[0].schemes[1]
    assert pages_of(room, "north") == ((None, "s2"),)
    assert keep_scheme(room, "north", "s2") is room
    assert pages_of(replace(room, walls=(replace(room.walls[0], schemes=()),)), "north") == ()
