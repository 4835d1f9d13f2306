"""The buying list: the bedroom's by hand; packs just inside, at and outside; sums; what moves with rooms and shelf."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.places import demo_rooms
from elevation.planning.buying.model import HOUSE, BuyingList, Line, Tally, Window
from elevation.planning.buying.needs import ring_for
from elevation.planning.buying.said import compared, how_many, to_buy, total_said
from elevation.planning.buying.table import HEADS, table_rows
from elevation.planning.buying.whole import buying_list
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import dress
from elevation.planning.rod_pieces import rod_pieces
from elevation.planning.shop_made import made_brackets
from elevation.room.file import load_room
from elevation.room.find import layer_of
from elevation.room.model import Offer, Room
from elevation.setting_out.cloth import PanelCloth, cloth_of_layer
from elevation.setting_out.model import LayerOut
from elevation.trade.model import PriceRow, Trade
from elevation.trade.tables import PRICES, load_trade, price_row, read_table
from elevation.words import Style, msg, say
from tests.strategies import random_room

TRADE = load_trade()
PLAIN = Style(plain=True)
PRICE = [say(head, PLAIN) for head in HEADS].index("Price")
BEDROOM = demo_rooms() / "1-bedroom.room.json"


def bought(*rooms: Room, trade: Trade = TRADE) -> BuyingList:
    dressed = [dress(room, trade) for room in rooms]
    return buying_list(dressed, cut_list(rod_pieces(dressed, trade), trade.saws["hacksaw"], trade, seconds=0.0), trade)


def by_part(found: BuyingList) -> dict[str, Line]:
    return {line.part: line for line in found.lines}


def price(part: str, amount: float, pack: float = 1, currency: str = "USD", *, is_length: bool = False) -> PriceRow:
    return PriceRow(part, amount, currency, pack, is_length, "2026-03-31", "the shop")


def priced(trade: Trade, found: BuyingList) -> Trade:
    """A trade in which every line of a list has a price."""
    rows = [
        price(line.part, 3.37 + number, 304.8 if line.measure == "length" else 7, is_length=line.measure == "length")
        for number, line in enumerate(found.lines)
    ]
    return replace(trade, prices={row.id: row for row in rows})


def test_the_bedroom_by_hand() -> None:
    """One 60 in rod of 3/4 in conduit (0.922 in), ball finials, two straps of two holes each; two panels of 54 by 84 in.

    The straps are made: two plates of 4 in, two arms and two seats, two thin straps, each from one bar of 36 in; 8 screws.

    The panels were measured, so they are there; both straps stand on studs, which the usual screw holds in.
    Rings every 6 in of 54 in: 10 a panel. A bore 1/4 in over the rod: 1 1/4 in is the next size up from 0.922 + 0.25.
    """
    found = by_part(bought(load_room(BEDROOM)))
    figures = {
        part: (line.needed, line.packs, line.left)
        for part, line in found.items()
        if line.group not in ("tools", "consumables")
    }
    assert figures == {
        "rod:conduit-3/4": (1, 1, 0),
        "flat:flat-1-1/2": (1, 1, 0),
        "flat:flat-3/4": (1, 1, 0),
        "flat:strap-3/4": (1, 1, 0),
        "made:strap-screws": (8, 8, 0),
        "end:ball-finial": (2, 2, 0),
        "clip-ring:ring-1-1/4": (20, 2, 0),
        "panel:1372x2134-washed-linen-terracotta": (2, 0, 0),
        "fixing:screw-8": (4, 1, 6),
    }
    panels = found["panel:1372x2134-washed-linen-terracotta"]
    assert say(how_many(panels, panels.needed, "in"), PLAIN) == "1 pair"
    assert say(to_buy(found["clip-ring:ring-1-1/4"], "in"), PLAIN) == "2 packs of 10"
    assert "tool:level" in found
    assert "tool:masonry-bits" not in found
    assert "tool:shears" not in found


def test_cloth_of_the_same_kind_is_bought_in_one_piece() -> None:
    """Two windows of the living room share a cloth: lengths add up first and are rounded up to half a yard once."""
    for line in bought(load_room(demo_rooms() / "2-living-room.room.json")).lines:
        if line.measure == "length":
            assert line.bought == pytest.approx(
                -(-Fraction(line.needed).limit_denominator(1000) // Fraction("457.2")) * 457.2
            )


@pytest.mark.parametrize(("needed", "packs", "left"), [(9, 1, 1), (10, 1, 0), (11, 2, 9), (20, 2, 0), (21, 3, 9)])
def test_packs_just_inside_at_and_outside(needed: int, packs: int, left: int) -> None:
    tally = Tally()
    tally.add("ring:any", "rings", msg("{name}", name="rings"), needed)
    (line,) = tally.lines({}, {"ring": 10}, {})
    assert (line.packs, line.left) == (packs, left)


@pytest.mark.parametrize(("length", "steps"), [(457.1, 1), (457.2, 1), (457.3, 2)])
def test_lengths_just_inside_at_and_outside_a_step(length: float, steps: int) -> None:
    tally = Tally()
    tally.add("cloth:any", "cloth", msg("{name}", name="cloth"), length, measure="length", step=457.2)
    (line,) = tally.lines({}, {}, {})
    assert line.packs == steps


@pytest.mark.parametrize(
    ("diameter", "ring"),
    [(0.99, "ring-1-1/4"), (1.0, "ring-1-1/4"), (1.01, "ring-1-1/2"), (2.25, "ring-2-1/2"), (2.26, None)],
)
def test_a_ring_has_a_quarter_inch_of_play(diameter: float, ring: str | None) -> None:
    """ "1/4 to 1/2 in larger than the pole": a rod and bracket maker's guide."""
    row = ring_for(diameter * 25.4, TRADE)
    assert (None if row is None else row.id) == ring


def test_the_price_s_own_pack_wins() -> None:
    tally = Tally()
    tally.add("ring:any", "rings", msg("{name}", name="rings"), 15)
    (line,) = tally.lines({}, {"ring": 10}, {"ring:any": price("ring:any", 4.2, 7)})
    assert (line.packs, line.left, line.cents) == (3, 6, 1260)


def test_the_shelf_comes_first_and_what_is_there_costs_nothing() -> None:
    for on_shelf, packs, left, cents in (
        (0, 2, 5, 800),
        (4, 2, 9, 800),
        (5, 1, 0, 400),
        (6, 1, 1, 400),
        (15, 0, 0, 0),
        (99, 0, 0, 0),
    ):
        tally = Tally()
        tally.add("ring:any", "rings", msg("{name}", name="rings"), 15, 0)
        (line,) = tally.lines({"ring:any": on_shelf}, {"ring": 10}, {"ring:any": price("ring:any", 4, 10)})
        assert (line.packs, line.left, line.cents, line.shelf) == (packs, left, cents, min(on_shelf, 15))


def test_two_equal_rooms_buy_twice_but_tools_once() -> None:
    room = load_room(demo_rooms() / "2-living-room.room.json")
    one, two = by_part(bought(room)), by_part(bought(room, room))
    assert one.keys() == two.keys()
    for part, line in one.items():
        times = 1 if line.group in ("tools", "consumables") or line.group == "rods" else 2
        if line.group == "rods":
            # Pieces of two rooms may share a bar.
            assert line.needed <= two[part].needed <= 2 * line.needed
        else:
            assert two[part].needed == pytest.approx(times * line.needed)


@pytest.mark.parametrize("seed", range(40))
def test_windows_and_house_add_up_to_everything(seed: int) -> None:
    rooms = (random_room(seed), random_room(seed + 1000))
    trade = priced(TRADE, bought(*rooms))
    found = bought(*rooms, trade=trade)
    assert found.total().unpriced == 0
    parts = [found.of_window(index).cents.get("USD", 0) for index in (*range(len(found.windows)), HOUSE)]
    assert sum(parts) == found.total().cents.get("USD", 0) == sum(line.cents or 0 for line in found.lines)
    for line in found.lines:
        assert line.bought == pytest.approx(line.packs * line.pack)
        assert 0 <= line.left < line.pack
        assert line.shelf + line.bought == pytest.approx(line.needed + line.left)


def test_sums_stay_blank_while_a_price_is_missing_and_never_read_zero() -> None:
    room = load_room(BEDROOM)
    full = priced(TRADE, bought(room))
    some = replace(full, prices={key: row for key, row in full.prices.items() if key != "end:ball-finial"})
    assert total_said(bought(room, trade=full).total()) is not None
    lacking = bought(room, trade=some)
    assert lacking.total().unpriced == 1
    assert total_said(lacking.total()) is None
    last = list(table_rows(lacking, "in", PLAIN))[-1]
    assert last[PRICE] == ""
    assert "1 line without a price" in last[-1]
    assert by_part(lacking)["end:ball-finial"].cents is None
    none = bought(room)
    assert total_said(none.total()) is None
    # Panels that are there already cost nothing more.
    assert none.total().unpriced == len(none.lines) - 1


def shared(*, priced_too: bool) -> BuyingList:
    """Two windows that share screws, one of them with a tie of its own; without prices, or each at 4.00 and 1.50."""
    tally = Tally()
    for window, count in ((0, 1), (1, 3)):
        tally.add("fixing:a", "fixings", msg("{name}", name="screws"), count, window)
    tally.add("tie:loop", "dress", msg("{name}", name="a tie"), 1, 1)
    tally.add("tool:level", "tools", msg("{name}", name="a level"), 1)
    prices = {"fixing:a": price("fixing:a", 4, 4), "tie:loop": price("tie:loop", 1.5), "tool:level": price("tool:level", 9)}
    offers = (Offer(2.0, "USD"), Offer(4.25, "USD"))
    windows = tuple(Window(0, ("w", "s", str(at)), msg("{name}", name=str(at)), one) for at, one in enumerate(offers))
    return BuyingList(windows, tuple(tally.lines({}, {}, prices if priced_too else {})))


def test_a_shared_line_without_a_price_counts_once() -> None:
    found = shared(priced_too=False)
    rows = [found.of_window(index) for index in (0, 1, HOUSE)]
    assert [(row.unpriced, row.shared) for row in rows] == [(0, 1), (1, 1), (1, 0)]
    # Alone + shared ones once = all.
    assert sum(row.unpriced for row in rows) + 1 == found.total().unpriced == 3
    assert all(total_said(row) is None for row in (*rows, found.total()))


def test_against_a_shops_price() -> None:
    """By hand: 4 screws at 4.00, one for the first window, three for the second, and its tie at 1.50: 1.00 and 4.50."""
    found = shared(priced_too=True)
    said_ = [compared(found.of_window(at), found.windows[at].offered) for at in (0, 1)]
    assert [None if one is None else say(one, PLAIN) for one in said_] == ["1.00 USD less", "0.25 USD more"]
    assert found.offered() == {"USD": 625}
    whole = compared(found.total(), found.offered())
    assert whole is not None
    assert say(whole, PLAIN) == "8.25 USD more"
    assert compared(found.of_window(0), {"EUR": 200}) is None
    assert compared(found.of_window(0), None) is None
    assert compared(shared(priced_too=False).of_window(0), {"USD": 200}) is None
    same = compared(found.of_window(0), {"USD": 100})
    assert same is not None
    assert say(same, PLAIN) == "the same"
    some = BuyingList((found.windows[0], replace(found.windows[1], offer=None)), found.lines)
    assert some.offered() is None


@pytest.mark.parametrize("name", ["1-bedroom", "4-flat", "7-guest-room"])
@pytest.mark.parametrize("language", ["en", "de"])
def test_numbers_stand_alone_in_the_cells_of_the_table(name: str, language: str) -> None:
    """Every amount is empty or a number that any program reads, and no cell begins a formula."""
    room = load_room(demo_rooms() / f"{name}.room.json")
    trade = priced(TRADE, bought(room))
    first, *rows = table_rows(bought(room, trade=trade), room.unit, Style(unit=room.unit, plain=True, language=language))
    assert len({len(row) for row in (first, *rows)}) == 1
    for row in rows:
        for cell in row[4:12]:
            assert re.fullmatch(r"([0-9]+(\.[0-9]+)?)?", cell)
        assert all(not cell.startswith(("=", "+", "-", "@")) for cell in row)
    lines = [row for row in rows if row[1]]
    for row in lines:
        needed, there, buys, packs, pack, left = (float(cell) for cell in row[4:10])
        assert buys == pytest.approx(packs * pack, abs=0.002 * max(packs, 1))
        assert there + buys == pytest.approx(needed + left, abs=0.004)
        assert row[3] == ({"in": "yd", "mm": "m"}[room.unit] if row[1].startswith("cloth:") else row[3])
    assert any(row[2] and row[PRICE] for row in rows if not row[1])


def test_currencies_are_not_mixed() -> None:
    tally = Tally()
    tally.add("ring:a", "rings", msg("{name}", name="a"), 1, 0)
    tally.add("ring:b", "rings", msg("{name}", name="b"), 1, 0)
    prices = {"ring:a": price("ring:a", 2, currency="USD"), "ring:b": price("ring:b", 3, currency="EUR")}
    found = BuyingList((), tuple(tally.lines({}, {}, prices)))
    assert found.total().cents == {"USD": 200, "EUR": 300}


@pytest.mark.parametrize(
    ("cells", "wrong"),
    [
        ("2.50,USD,10,2026-02-30,shop", "is not a day"),
        ("2.50,USD,0,2026-02-28,shop", "is nothing"),
        ("-2,USD,1,2026-02-28,shop", "bare number"),
        ("2.50,USD,1,2026-02-28,", "is empty"),
    ],
)
def test_a_wrong_price_is_refused_with_its_line(cells: str, wrong: str) -> None:
    with pytest.raises(BadInput) as caught:
        read_table(f"id,price,currency,pack,date,place\nring:a,{cells}\n", "prices.csv", PRICES, price_row)
    assert wrong in str(caught.value)
    assert "line 2" in str(caught.value)


def test_a_price_for_a_length_buys_a_length() -> None:
    rows = read_table(
        "id,price,currency,pack,date,place\ncloth:a,9.00,USD,36 in,2026-02-28,shop\n", "prices.csv", PRICES, price_row
    )
    tally = Tally()
    tally.add("cloth:a", "cloth", msg("{name}", name="a"), 1000.0, measure="length", step=457.2)
    (line,) = tally.lines({}, {}, rows)
    assert line.bought == pytest.approx(1371.6)
    assert line.cents == 1350


def test_our_own_table_of_prices_has_only_its_head() -> None:
    assert TRADE.prices == {}


def cloth_panels(room: Room, layer: LayerOut) -> tuple[PanelCloth, ...]:
    made = cloth_of_layer(room, layer_of(room, layer.ref), layer, TRADE)
    return () if made is None else made.panels


@pytest.mark.parametrize("path", sorted(demo_rooms().glob("*.room.json")), ids=lambda path: Path(path).name.split(".")[0])
def test_every_demo_room_buys_each_bracket_and_each_ring_once(path: Path) -> None:
    room = load_room(path)
    found = bought(room)
    layers = [layer for wall in dress(room, TRADE).walls for laid in wall.treatments for layer in laid.layers]
    brackets = sum(line.needed for line in found.lines if line.part.startswith("bracket:"))
    made = sum(one.count for one in made_brackets([dress(room, TRADE)], TRADE))
    assert brackets + made == sum(bracket.on != "layer" for layer in layers for bracket in layer.brackets)
    runners = sum(line.needed for line in found.lines if line.part.split(":")[0] in ("ring", "clip-ring", "glide"))
    # A pleat takes one each and one at either edge (7 hooks for 5 pleats: bedbathstore.com/pinch.html).
    assert runners == sum(
        panel.rings if made.pleats is None else made.pleats.count + 2
        for layer in layers
        if layer.support.kind == "track" or TRADE.headings[layer.heading].carries == "rings"
        for panel, made in zip(layer.panels, cloth_panels(room, layer), strict=True)
    )
