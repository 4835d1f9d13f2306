"""Facts of mounts, packets and fixings that nobody has typed yet, each named by the field where it is typed."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.room.model import Hem, Packet, Rod, Room, Sash
from elevation.setting_out.missing import missing_of
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from tests.setting_out.rooms import held, inch, pair, room, treatment, window

TRADE = load_trade()


def fields(made: Room) -> list[str]:
    return [fact.field for fact in set_out_afresh(made, "a", "s", TRADE).missing]


def inside(sash: Sash, **opening: Any) -> Room:
    """A rod in the reveal of a window."""
    made = replace(treatment(brackets=()), mount="reveal")
    return room([window(sash=sash, **opening)], [made])


@pytest.mark.parametrize(("sash", "is_asked"), [
    (Sash(kind="fixed"), False),
    (Sash(kind="casement-in"), True),
    (Sash(kind="casement-in", handle_stands=inch(0)), False),  # looked at: it has none
    (Sash(kind="casement-in", handle_stands=inch(1)), False),
    (Sash(kind="casement-in", handle_out=inch(1)), False),  # known from the wall's face instead
])  # fmt: skip
def test_the_handle_is_asked_for_only_where_a_rod_could_meet_it(sash: Sash, is_asked: bool) -> None:
    assert ("sash.handle_stands" in fields(inside(sash, reveal=inch(4)))) == is_asked


def test_the_reveal_is_asked_for_only_inside_the_opening() -> None:
    assert "reveal" in fields(inside(Sash(kind="fixed")))
    assert "reveal" not in fields(inside(Sash(kind="fixed"), reveal=inch(0)))
    assert fields(room()) == []


def track(overlap: float | None, arm: float | None) -> Room:
    packet = Packet(arm=None if arm is None else inch(arm))
    rod = Rod(
        height=held("above-casing", 4), left=held("beyond-opening", 10), right=held("beyond-opening", 10),
        section="track-slim", kind="track", overlap=None if overlap is None else inch(overlap), packet=packet,
    )  # fmt: skip
    return room(treatments=[treatment(rod=rod, heading="pinch-pleat")])


@pytest.mark.parametrize(("overlap", "arm", "is_asked"), [
    (None, None, False), (0, None, False), (0.01, None, True), (3, None, True), (3, 3, False), (3, 0, False),
])  # fmt: skip
def test_an_overlap_arm_is_asked_for_where_edges_are_to_overlap(
    overlap: float | None, arm: float | None, is_asked: bool
) -> None:
    assert ("rod.packet.arm" in fields(track(overlap, arm))) == is_asked


@pytest.mark.parametrize(("packet", "asked"), [
    (Packet(), ["rod.packet.least", "rod.packet.holds_kg"]),
    (Packet(least=inch(28)), ["rod.packet.most", "rod.packet.holds_kg"]),
    (Packet(most=inch(48)), ["rod.packet.least", "rod.packet.holds_kg"]),
    (Packet(least=inch(28), most=inch(48)), ["rod.packet.holds_kg"]),
    (Packet(least=inch(28), most=inch(48), holds_kg=3.0), []),
])  # fmt: skip
def test_what_a_tension_rods_packet_says(packet: Packet, asked: list[str]) -> None:
    rod = Rod(
        height=held("below-head", 1), left=held("inside-opening", 0), right=held("inside-opening", 0),
        kind="tension-rod", packet=packet,
    )  # fmt: skip
    made = replace(treatment(rod=rod, brackets=(), heading="rod-pocket"), mount="reveal")
    assert fields(room([window(reveal=inch(4))], [made])) == asked
    # On any other rod the packet's range means nothing.
    assert "rod.packet.least" not in fields(room())


@pytest.mark.parametrize(("left", "right"), [(None, None), ("screw-8", None), (None, "screw-8"), ("screw-8", "screw-8")])
def test_what_holds_each_end_that_carries(left: str | None, right: str | None) -> None:
    """On solid brick nothing is taken for granted, so each end that nobody chose a fixing for is asked for."""
    rod = Rod(
        height=held("above-casing", 4), left=held("beyond-opening", 10), right=held("beyond-opening", 10),
        ends="return", left_fixing=left, right_fixing=right,
    )  # fmt: skip
    made = room(treatments=[treatment(rod=rod, brackets=(), panels=pair(weight_kg=2.0))], substrate="solid-brick")
    asked = fields(made)
    assert ("rod.left_fixing" in asked) == (left is None)
    assert ("rod.right_fixing" in asked) == (right is None)


def test_nothing_is_asked_of_a_wall_with_nothing_on_it() -> None:
    wall = room().walls[0]
    assert missing_of(wall, (), ()) == ()


def test_a_weight_that_is_typed_is_known_though_its_length_is_not() -> None:
    def told(**more: float) -> str:
        made = room(treatments=[treatment(panels=pair(**more), hem=Hem("panel"))])
        return set_out_afresh(made, "a", "s", TRADE).missing[-1].text.template

    assert "what it weighs" in told()
    assert "what it weighs" not in told(weight_kg=2.0)
