"""What is found about tie-backs, and what clears it; figures by hand from ``rooms.py``.

The cloth of the left panel begins 8 1/2 in beyond the opening, at 45 1/2 in; the hook 2 in beyond it, at 43 1/2 in. Its
plate is 1 1/2 in each way. The hem is 1/2 in up, the top of the cloth at 82 1/2 in: a third of the drop up is 27 5/6 in.
"""

from __future__ import annotations

import pytest

from elevation.findings.model import Finding, Weight
from elevation.planning.remedies import remedies
from elevation.room.find import layer_of
from elevation.room.model import Room, TieBack, WallEnd
from tests.findings.rooms import (
    HALF,
    INCH,
    LAYER,
    LEFT_PANEL,
    at,
    found,
    good_room,
    inch,
    mm,
    obstacle,
    said,
    the,
    trade,
    window,
    with_obstacle,
)

A_HAIR = 0.1
UP = (0.5 + 82 / 3) * INCH


def tied(tie: TieBack | None = None, room: Room | None = None) -> Room:
    return at(good_room() if room is None else room, LAYER, tie=TieBack() if tie is None else tie)


def labels(room: Room, finding: Finding) -> list[str]:
    return [said(one.label) for one in remedies(room, "w1", "s1", finding, trade()).offered]


def test_a_good_room_with_tie_backs_has_nothing_to_find() -> None:
    assert found(tied()) == ()


def test_past_the_walls_end_it_stops() -> None:
    # The plate's edge comes to the corner where the hook is 44 3/4 in beyond the edge at 45 1/2 in.
    assert not found(tied(TieBack(out=mm(500))), "tie-place")
    near = at(good_room(left=WallEnd()), ("w1", "o1"), left=inch(26))
    assert not found(tied(TieBack(out=inch(16.75)), near), "tie-place")
    room = tied(TieBack(out=mm(16.75 * INCH + A_HAIR)), near)
    one = the(room, "tie-place")
    assert one.weight is Weight.STOP
    assert labels(room, one)[0] == "Set the hooks 16³⁄₄ in beyond the edges of the panels"
    assert not found(tied(TieBack(out=inch(17)), at(near, ("w1",), left=WallEnd(kind="open"))), "tie-place")


def test_over_an_outlet_it_is_broken_and_farther_out_it_is_not() -> None:
    def beside(right_mm: float) -> Room:
        return with_obstacle(tied(), obstacle("picture", right_mm - 100, UP - 50, 100, 100))

    edge = (43.5 - 0.75) * INCH
    assert not found(beside(edge), "tie-place")
    one = the(beside(edge + A_HAIR), "tie-place")
    assert one.weight is Weight.BROKEN
    assert "over the picture" in said(one.text)
    assert one.caution is not None
    offered = labels(beside(edge + A_HAIR), one)
    assert "Set the hooks 1¹⁵⁄₁₆ in beyond the edges of the panels" in offered


def test_in_a_likely_cable_band_it_is_to_be_probed_but_not_where_it_was_before() -> None:
    box = obstacle("outlet", 43.5 * INCH - 35, 12 * INCH, 70, 100)
    one = the(with_obstacle(tied(), box), "tie-place")
    assert one.weight is Weight.CONSIDER
    assert "a cable likely runs" in said(one.text)
    assert not found(with_obstacle(tied(TieBack(there=True)), box), "tie-place")


def test_before_another_opening_it_stops() -> None:
    room = at(good_room(), ("w1",), openings=(window("o2", left=20, width=inch(23), casing=inch(0)), window()))
    one = the(tied(TieBack(hold="above-floor", at=inch(40)), room), "tie-place")
    assert one.weight is Weight.STOP
    assert "where no wall is" in said(one.text)


@pytest.mark.parametrize(("at_mm", "is_low"), [(1600.0, False), (1600 - HALF, False), (1600 - HALF - A_HAIR, True)])
def test_a_loop_within_reach_of_children(at_mm: float, is_low: bool) -> None:
    room = tied(TieBack(hold="above-floor", at=mm(at_mm)))
    assert not found(room, "child-loop")
    with_children = at(room, (), children=True)
    assert bool(found(with_children, "child-loop")) is is_low


def test_an_arm_has_no_loop_and_is_offered() -> None:
    room = at(tied(), (), children=True)
    one = the(room, "child-loop")
    assert one.weight is Weight.CONSIDER
    assert one.caution is not None
    assert labels(room, one)[0] == "Hold the panels back by fixed arms instead of loops"
    assert not found(at(tied(TieBack(kind="arm")), (), children=True), "child-loop")


def test_a_loop_that_cannot_be_raised_is_not_offered_a_height_above_the_cloth() -> None:
    low = at(at(tied(), (), children=True), (*LAYER,), hem=layer_of(good_room(), LAYER).hem)
    short = at(low, ("w1", "o1"), sill=inch(2), height=inch(40))
    one = the(short, "child-loop")
    assert not any("above the floor" in label for label in labels(short, one))


def test_no_holes_counts_new_hooks_only() -> None:
    room = at(tied(), (), no_holes=True)
    hooks = [one for one in found(room, "no-holes") if one.subject == LEFT_PANEL]
    assert [said(one.text) for one in hooks] == [
        "Window 1: 2 hooks of tie-backs are to be screwed on, and this room allows no holes."
    ]
    assert labels(room, hooks[0]) == ["Take the tie-backs away"]
    there = at(tied(TieBack(there=True)), (), no_holes=True)
    assert not [one for one in found(there, "no-holes") if one.subject == LEFT_PANEL]


def test_a_hook_drawn_out_over_a_heater_is_near_it() -> None:
    # A flame heater asks for 12 in; the cloth at the hook is 2 in nearer than the panel itself.
    heater = obstacle("flame-heater", 100, 0, (45.5 - 13) * INCH - 100, 40 * INCH, 300)
    assert not found(with_obstacle(good_room(), heater), "heat")
    assert found(with_obstacle(tied(), heater), "heat")
