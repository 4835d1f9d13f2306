"""Ends that carry the rod, and a side of the wall too narrow for a stack.

Figures are worked by hand from the room in ``rooms.py``: opening 36 in wide, rod of 0.922 in tube 3 1/2 in out.
"""

from __future__ import annotations

from math import pi

import pytest
from msgspec.structs import replace

from elevation.findings.looking import draws_from
from elevation.planning.remedies import remedies
from elevation.room.find import layer_of
from elevation.room.model import Panel, Room, WallEnd
from elevation.setting_out.model import LayerOut
from elevation.sheet.drawing import draw_wall
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    OPENING,
    at,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    panels,
    reach,
    rod,
    said,
    scene,
    the,
    trade,
)


def landed(room: Room) -> LayerOut:
    return scene(room).set_out.treatments[0].layers[0]


def rules(room: Room) -> set[str]:
    return {finding.rule for finding in found(room)}


def test_a_tube_bent_back_is_longer_by_two_arcs_and_two_legs() -> None:
    # Along the middle line, each end: 3 1/2 in to the wall on an arc of 3 in: half an inch of leg, a quarter circle of
    # 3 pi / 2 in, and 3 in less of the straight part.
    room = rod(good_room(), ends="return")
    support = landed(room).support
    extra = 0.5 + 3 * pi / 2 - 3
    assert support.cut_length_mm == pytest.approx((56 + 2 * extra) * INCH)
    assert support.carried == (True, True)
    # The outermost metal is half a tube beyond the middle of the leg, down to the wall.
    assert support.metal_left_mm == pytest.approx((44 - 0.461) * INCH)
    elbow = landed(rod(good_room(), left_ends="elbow", ends="cap")).support
    assert elbow.cut_length_mm == pytest.approx((56 + 3.5) * INCH)
    assert elbow.carried == (True, False)


def test_a_bend_is_no_wider_than_the_rod_stands_out() -> None:
    # 2 in out, an arc of 3 in cannot be: the bend is 2 in, and no leg is left.
    room = rod(good_room(), ends="return", projection=inch(2))
    assert landed(room).support.cut_length_mm == pytest.approx((56 + 2 * (2 * pi / 2 - 2)) * INCH)


def test_ends_that_carry_need_no_bracket_and_cloth_goes_round_to_them() -> None:
    bare = at(rod(good_room(), ends="return"), LAYER, brackets=())
    assert "no-bracket" not in rules(bare)
    left, right = landed(bare).panels
    assert (left.open[0], right.open[1]) == pytest.approx((44 * INCH, 100 * INCH))
    assert "no-bracket" in rules(at(rod(good_room(), left_ends="return"), LAYER, brackets=()))
    one_each = at(rod(good_room(), left_ends="socket"), LAYER, brackets=(layer().brackets[1],))
    assert "no-bracket" not in rules(one_each)


def test_a_bracket_between_carried_ends_is_one_in_the_middle() -> None:
    middle = replace(layer().brackets[0], place=held("from-centre", inch(0)))
    room = at(rod(good_room(), ends="return"), LAYER, brackets=(middle,))
    left, right = landed(room).panels
    # A closed strap at 72 in: both leading edges stop there.
    assert (left.travel[1], right.travel[0]) == pytest.approx((72 * INCH, 72 * INCH))
    assert draws_from(landed(room), "left") is not None


def test_a_return_meets_what_stands_flat_on_the_wall() -> None:
    from tests.findings.rooms import obstacle, with_obstacle

    board = obstacle("picture", 43 * INCH, 83 * INCH, 2 * INCH, 3 * INCH, 20)
    plain = at(good_room(), LAYER, brackets=())
    assert "meets" not in rules(with_obstacle(rod(plain, ends="cap"), board))
    assert "meets" in rules(with_obstacle(rod(plain, ends="return"), board))


def test_unlike_ends_are_drawn_as_what_they_are() -> None:
    def count(room: Room) -> int:
        out = scene(room).set_out
        return sum(len(group.records) for group in draw_wall(out, trade()) if group.layer == "rod")

    assert count(rod(good_room(), ends="bare")) < count(rod(good_room(), ends="bare", left_ends="return"))


# --- the narrow side --------------------------------------------------------------------------------------------


def narrow(beside: float = 6.0) -> Room:
    """The opening ``beside`` inches from the left corner; the rod reaches 5 in to that side."""
    return reach(at(good_room(), OPENING, left=inch(beside)), inch(5))


def ways(room: Room, rule: str) -> dict[str, Room]:
    finding = next(one for one in found(room) if one.rule == rule)
    answer = remedies(room, "w1", "s1", finding, trade())
    return {said(remedy.label): remedy.room for remedy in answer.offered}


def test_cloth_that_draws_one_way_to_the_roomy_side() -> None:
    offered = ways(rod(narrow(), ends="cap"), "reach-short")
    room = offered["Draw all the cloth one way, to the right"]
    (panel,) = layer_of(room, LAYER).panels
    assert (panel.parks, panel.count, panel.flat_width) == ("right", 2, inch(54))
    short = [one for one in found(room) if one.rule == "reach-short"]
    assert LEFT_BRACKET not in [one.subject for one in short]


def test_a_socket_in_the_side_wall() -> None:
    room = rod(narrow(), ends="cap")
    offered = ways(room, "reach-short")
    fixed = offered["Put the left end of the rod in a socket on the side wall"]
    there = landed(fixed)
    assert there.support.metal_left_mm == pytest.approx(0, abs=1e-9)
    assert len(there.brackets) == 1
    assert not {"meets", "no-bracket"} & rules(fixed)
    assert LEFT_BRACKET not in [one.subject for one in found(fixed)]


def test_a_shorter_equal_reach_where_the_rod_passes_the_corner() -> None:
    # 10 in beyond an opening that stands 8 1/2 in from the corner: 8 1/4 in leave room for the cap and reach far enough.
    room = rod(reach(at(good_room(), OPENING, left=inch(8.5)), inch(10)), ends="cap")
    assert any(label.startswith("Set both rod ends") for label in ways(room, "meets"))


def test_no_socket_where_the_corner_is_not_square() -> None:
    room = at(rod(narrow(), ends="cap"), ("w1",), left=WallEnd(angle=100.0))
    assert not any("socket" in label for label in ways(room, "reach-short"))


def test_unlike_pieces_become_one_of_both_widths() -> None:
    both = (Panel(id="p1", flat_width=inch(50)), Panel(id="p2", flat_width=inch(54), parks="right", stack=mm(60)))
    room = at(rod(narrow(), ends="cap"), LAYER, panels=both)
    (panel,) = layer_of(ways(room, "reach-short")["Draw all the cloth one way, to the right"], LAYER).panels
    assert panel.flat_width.mm == pytest.approx(104 * INCH)
    assert (panel.count, panel.stack) == (1, None)


@pytest.mark.parametrize("how", ["never draws", "roomy"])
def test_no_one_way_draw_where_it_helps_nothing(how: str) -> None:
    room = rod(narrow(), ends="cap")
    if how == "never draws":
        room = panels(room, stationary=True)
        assert "reach-short" not in rules(room)
        return
    # In the middle of the wall neither side is roomier.
    middle = reach(good_room(), inch(5))
    assert "Draw all the cloth one way, to the right" not in ways(middle, "reach-short")
    assert the(at(middle, LAYER, panels=layer().panels[:1]), "reach-short").subject == LEFT_BRACKET
