"""What holds brackets, by wall, mount and fixing; worked by hand from the trade's figures."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.room.model import Board, Bracket, Room, Treatment
from elevation.setting_out.carried import HoldOut
from elevation.setting_out.model import BracketOut, LayerOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from elevation.trade.fixing import Strength, screw_strength, times_held
from tests.setting_out.rooms import INCH, held, inch, pair, room, treatment

TRADE = load_trade()
G = 9.80665
LBF = 4.4482216152605


def on(
    substrate: str, mount: str = "wall", kit: str = "shop-strap", more: dict[str, Any] | None = None, **fields: Any
) -> Room:
    """A room whose brackets have ``fields``."""
    made = treatment(panels=pair(weight_kg=2.0))
    layer = made.layers[0]
    brackets = tuple(replace(bracket, kit=kit, **fields) for bracket in layer.brackets)
    made = replace(made, mount=mount, layers=(replace(layer, brackets=brackets, **(more or {})),))
    return room(treatments=[made], substrate=substrate)


def layer_of(made: Room) -> LayerOut:
    return set_out_afresh(made, "a", "s", TRADE).treatments[0].layers[0]


def first(made: Room) -> tuple[BracketOut, HoldOut]:
    bracket = layer_of(made).brackets[0]
    assert bracket.held is not None
    return bracket, bracket.held


def test_a_screw_in_timber_as_a_cantilever() -> None:
    bracket, told = first(on("timber"))
    load = (bracket.load_n or 0) + 15 * LBF
    assert told.load_n == pytest.approx(load)
    # 3 1/2 in out; upper hole 1 in over the axis, plate 2 1/2 in below it.
    assert told.pull_n == pytest.approx(load * 3.5 / 3.5)
    assert told.shear_n == pytest.approx(load / 2)
    strength = screw_strength(TRADE.fixings["screw-8"], INCH / 8, True, 0.42, 0.9)
    assert strength is not None
    assert bracket.holds_times == pytest.approx(times_held(load, load / 2, strength))
    assert bracket.fixing == "screw-8"


@pytest.mark.parametrize(("substrate", "fixing", "why"), [
    ("not-known", None, "wall"), ("tile", "screw-8", "wall"), ("not-known", "toggle-1/4", "wall"),
    ("solid-brick", None, "chosen"), ("solid-brick", "brick-plug", "packet"), ("solid-brick", "screw-8", "there"),
    ("board-timber-studs", "brick-plug", "there"), ("board-metal-studs", "screw-8", "there"),
    ("plaster-lath", "toggle-1/4", "there"), ("board-timber-studs", "sleeve-1/8", "packet"),
    ("timber", "toggle-1/4", "there"), ("concrete", "concrete-anchor", "packet"),
])  # fmt: skip
def test_where_no_figure_is_given(substrate: str, fixing: str | None, why: str) -> None:
    bracket, told = first(on(substrate, fixing=fixing))
    assert bracket.holds_times is None
    assert told.why == why


def test_a_packets_figures_win() -> None:
    for substrate, fixing in (("solid-brick", "brick-plug"), ("board-timber-studs", "toggle-1/8")):
        bracket, told = first(on(substrate, fixing=fixing, pull_kg=40.0, shear_kg=60.0))
        expected = times_held(told.pull_n, told.shear_n, Strength(40 * G, 60 * G))
        assert bracket.holds_times == pytest.approx(expected)
    # One figure alone does not stand for the other.
    assert first(on("solid-brick", fixing="brick-plug", shear_kg=60.0))[1].why == "packet"


def test_a_toggle_in_board() -> None:
    bracket, told = first(on("board-timber-studs", fixing="toggle-3/16"))
    assert bracket.holds_times == pytest.approx(times_held(told.pull_n, told.shear_n, Strength(30 * LBF, 50 * LBF)))


def test_the_usual_screw_is_taken_only_at_wood() -> None:
    plain = on("board-timber-studs")
    bracket, told = first(plain)
    assert told.why == "chosen"
    assert bracket.fixing == ""
    wall = replace(plain.walls[0], studs=(inch(bracket.x_mm / INCH),))
    bracket, told = first(replace(plain, walls=(wall,)))
    assert bracket.fixing == "screw-8"
    assert bracket.holds_times is not None


def test_a_tug_is_the_rooms_own_or_larger_where_children_are() -> None:
    made = on("timber")
    usual = first(made)[1].load_n
    assert first(replace(made, children=True))[1].load_n == pytest.approx(usual + 15 * LBF)
    assert first(replace(made, tug_kg=0.0))[1].load_n == pytest.approx(usual - 15 * LBF)
    assert first(replace(made, children=True, tug_kg=20.0))[1].load_n == pytest.approx(usual - 15 * LBF + 20 * G)
    assert (first(replace(made, tug_kg=0.0))[0].holds_times or 0) > (first(made)[0].holds_times or 0)


def test_under_a_ceiling_it_pulls_straight_down_and_a_plug_never_counts() -> None:
    bracket, told = first(on("timber", "ceiling", "ceiling-cup", fixing="screw-8"))
    assert told.shear_n == 0.0
    assert told.pull_n == pytest.approx(told.load_n / 2)
    strength = screw_strength(TRADE.fixings["screw-8"], (5 / 8 + 1 / 8) * INCH, False, 0.42, 0.9)
    assert strength is not None
    assert bracket.holds_times == pytest.approx((strength.pull_n or 0) / told.pull_n)
    assert first(on("board-timber-studs", "ceiling", "ceiling-cup", fixing="plug"))[1].why == "friction"
    assert first(on("timber", "ceiling", "ceiling-cup"))[1].why == "chosen"


def test_in_a_reveal_it_is_in_shear() -> None:
    bracket, told = first(on("timber", "reveal", fixing="screw-8"))
    assert told.pull_n == 0.0
    assert told.shear_n == pytest.approx(told.load_n / 2)
    assert bracket.holds_times is not None


def test_brackets_on_a_board_and_the_board_on_studs() -> None:
    board = Board(inch(4), inch(4))
    made = on("board-timber-studs", more={"board": board})
    studs = tuple(inch(x) for x in (28.0, 44.0, 60.0, 76.0, 88.0))
    made = replace(made, walls=(replace(made.walls[0], studs=studs),))
    layer = layer_of(made)
    bracket = layer.brackets[0]
    assert bracket.held is not None
    # On the board the bracket stands 3 1/2 in out of it; its screw has the board's 3/4 in of thread.
    assert bracket.held.pull_n == pytest.approx(bracket.held.load_n * 3.5 / 3.5)
    assert layer.board is not None
    assert layer.board.held is not None
    told = layer.board.held
    assert told.times is not None
    assert told.load_n == pytest.approx(sum(b.held.load_n for b in layer.brackets if b.held is not None))
    # The rod is 4 1/4 in off the wall; screws 1 in off the board's edges, the upper one 4 1/2 in over the lower edge.
    assert told.pull_n == pytest.approx(told.shear_n * 2 * 4.25 / 4.5)
    alone = replace(made, walls=(replace(made.walls[0], studs=()),))
    assert layer_of(alone).board is not None


def test_the_back_rod_hangs_on_the_front_bracket() -> None:
    made = treatment(panels=pair(weight_kg=2.0))
    front = made.layers[0]
    doubled = replace(front, brackets=tuple(replace(bracket, kit="double-front") for bracket in front.brackets))
    back = replace(
        front,
        id="l2",
        rod=replace(front.rod, projection=inch(1.5)),
        brackets=tuple(replace(bracket, kit="double-back") for bracket in front.brackets),
    )
    both: Treatment = replace(made, layers=(doubled, back))
    out = set_out_afresh(room(treatments=[both], substrate="timber"), "a", "s", TRADE).treatments[0]
    one, other = out.layers[0].brackets[0], out.layers[1].brackets[0]
    assert other.held is None
    assert one.held is not None
    load = (one.load_n or 0) + (other.load_n or 0) + 15 * LBF
    moment = (one.load_n or 0) * 3.5 + (other.load_n or 0) * 1.5 + 15 * LBF * 3.5
    assert one.held.load_n == pytest.approx(load)
    assert one.held.pull_n == pytest.approx(moment / 4)


def test_what_hangs_unknown_holds_unknown() -> None:
    made = on("timber")
    bare = replace(made.walls[0].schemes[0].treatments[0].layers[0], brackets=(Bracket("b1", held("from-left-end", 2)),))
    one = replace(made.walls[0].schemes[0].treatments[0], layers=(bare,))
    out = set_out_afresh(room(treatments=[one]), "a", "s", TRADE)
    bracket = out.treatments[0].layers[0].brackets[0]
    assert bracket.held is None
    assert bracket.holds_times is None


def test_missing_says_what_to_choose_or_to_type() -> None:
    for made, field in (
        (on("solid-brick"), "fixing"),
        (on("solid-brick", fixing="brick-plug"), "pull_kg"),
    ):
        fields = [fact.field for fact in set_out_afresh(made, "a", "s", TRADE).missing]
        assert field in fields


def test_a_far_rod_asks_more_of_its_screws() -> None:
    times = []
    for out in (2.0, 3.5, 6.0):
        made = treatment(panels=pair(weight_kg=2.0))
        layer = replace(made.layers[0], rod=replace(made.layers[0].rod, projection=inch(out)))
        times.append(first(room(treatments=[replace(made, layers=(layer,))]))[0].holds_times or 0)
    assert times == sorted(times, reverse=True)


@pytest.mark.parametrize("holes", [(), (-100.0, -120.0)])
def test_a_plate_without_a_screw_over_its_foot_asks_for_the_packet(holes: tuple[float, ...]) -> None:
    kit = replace(TRADE.brackets["shop-strap"], holes_mm=holes, plate_below_mm=50.0)
    trade = replace(TRADE, brackets={**TRADE.brackets, "shop-strap": kit})
    bracket = set_out_afresh(on("timber"), "a", "s", trade).treatments[0].layers[0].brackets[0]
    assert bracket.held is not None
    assert (bracket.held.times, bracket.held.why) == (None, "packet")
