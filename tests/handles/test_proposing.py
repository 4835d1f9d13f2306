"""Proposals: they differ in kind, break nothing, are what the engine itself finds; fewer where fewer exist."""

from __future__ import annotations

import pytest

from elevation import places
from elevation.findings.all_rules import find
from elevation.findings.model import Scene, Weight
from elevation.handles.proposing import Proposal, propose, put_proposals
from elevation.planning.guides import gap_of
from elevation.room.edits import replace_rod
from elevation.room.file import load_room
from elevation.room.model import Held, Room, Station
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out
from elevation.trade import load_trade
from tests.handles.rooms import INCH, held, inch, room, with_rod

TRADE = load_trade()
BEDROOM = load_room(places.demo_rooms() / "1-bedroom.room.json")


@pytest.fixture(scope="module")
def proposals() -> dict[str, Proposal]:
    return {one.kind: one for one in propose(BEDROOM, "north", "s2", TRADE)}


def landed(now: Room, one: Proposal, wall: str = "north") -> tuple[Room, SetOut]:
    made, ids = put_proposals(now, wall, [("Proposed", one.scheme)])
    return made, set_out(made, wall, ids[0], TRADE)


def test_they_differ_and_break_nothing(proposals: dict[str, Proposal]) -> None:
    assert {"modest", "tall"} <= set(proposals)
    rods = set()
    for one in proposals.values():
        made, wall = landed(BEDROOM, one)
        assert all(finding.weight is Weight.CONSIDER for finding in find(Scene(made, wall, TRADE)))
        support = wall.treatments[0].layers[0].support
        rods.add((round(support.height_mm, 2), round(support.length_mm, 2)))
    assert len(rods) == len(proposals)


def test_each_is_what_its_name_says(proposals: dict[str, Proposal]) -> None:
    modest, tall = (landed(BEDROOM, proposals[kind])[1] for kind in ("modest", "tall"))
    short, long = (wall.treatments[0].layers[0].support for wall in (modest, tall))
    assert short.length_mm <= long.length_mm
    assert short.height_mm <= long.height_mm
    assert tall.treatments[0].glass.clear_open >= modest.treatments[0].glass.clear_open - 0.005
    gap = gap_of(tall, tall.treatments[0])
    assert gap is not None
    assert gap[0] < long.height_mm < gap[1]


def test_no_half_inch_place_of_the_modest_rod_is_shorter_by_more_than_a_graduation(proposals: dict[str, Proposal]) -> None:
    # The full half-inch grid of reaches at the modest height, each set out and checked anew.
    made, wall = landed(BEDROOM, proposals["modest"])
    layer = wall.treatments[0].layers[0]
    advice = len([one for one in find(Scene(made, wall, TRADE)) if one.subject[:3] == wall.treatments[0].ref])
    best = layer.support.length_mm
    for halves in range(48):
        ends = Held("beyond-opening", inch(halves / 2))
        tried = replace_rod(made, layer.ref, left=ends, right=ends)
        other = set_out(tried, "north", wall.scheme, TRADE)
        findings = [one for one in find(Scene(tried, other, TRADE)) if one.subject[:3] == other.treatments[0].ref]
        if len(findings) <= advice and all(one.weight is Weight.CONSIDER for one in findings):
            assert other.treatments[0].layers[0].support.length_mm >= best - INCH / 16


def test_fewer_where_fewer_exist_and_none_where_nothing_can_be() -> None:
    # A ceiling 1 in over the casing: no rod on the wall keeps 3 in from both.
    low = room(layer=with_rod(height=held("above-casing", "1/2")), ceiling=(Station(inch(0), inch(85)),))
    assert propose(low, "a", "s", TRADE) == ()
    assert propose(BEDROOM, "north", "s2", TRADE, lambda: True) == ()
