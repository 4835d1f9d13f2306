"""A mounting board: where it lands, that it holds the rod farther out, and what it may not cover.

Figures by hand from ``rooms.py``: brackets at 46 and 98 in, the rod 84 1/4 in high; strap plates from 2 1/2 in below to
1 1/2 in above it, so 81 3/4 to 85 3/4 in and their middle 83 3/4 in; casing top 80 1/4 in, ceiling 96 in. Boards are sold
3 1/2, 5 1/2 and 7 1/4 in wide and 3/4 in thick: PS 20, nominal 1x4, 1x6, 1x8.
"""

from __future__ import annotations

import pytest

from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.boards import usual_board
from elevation.room.find import layer_of
from elevation.room.model import Board, Room
from elevation.setting_out.framing import FRAMING
from elevation.setting_out.model import LayerOut
from tests.findings.rooms import (
    INCH,
    LAYER,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    mm,
    obstacle,
    rod,
    said,
    scene,
    the,
    trade,
    with_obstacle,
)

TOO_FAR = 1.0
USUAL = Board(inch(2), inch(2))


def boarded(board: Board = USUAL, room: Room | None = None) -> Room:
    return at(good_room() if room is None else room, LAYER, board=board)


def layer(room: Room) -> LayerOut:
    return scene(room).set_out.treatments[0].layers[0]


def test_where_it_lands_and_how_far_out_it_holds_the_rod() -> None:
    plain, out = layer(good_room()), layer(boarded())
    assert plain.board is None
    assert out.board is not None
    assert [round(side / INCH, 6) for side in (out.board.left_mm, out.board.right_mm)] == [44, 100]
    assert [round(side / INCH, 6) for side in (out.board.bottom_mm, out.board.top_mm)] == [81, 86.5]
    assert out.support.projection_mm - plain.support.projection_mm == pytest.approx(0.75 * INCH)
    # Nothing else moves.
    assert out.support.height_mm == plain.support.height_mm
    assert [one.x_mm for one in out.brackets] == [one.x_mm for one in plain.brackets]


def test_a_wall_without_trouble_has_none_with_a_board() -> None:
    assert found(boarded()) == ()


@pytest.mark.parametrize(
    ("plates", "wanted"), [(80.0, "3 1/2 in"), (88.9, "3 1/2 in"), (89.0, "5 1/2 in"), (180.0, "7 1/4 in")]
)
def test_a_board_is_one_that_is_sold(plates: float, wanted: str) -> None:
    board = usual_board(good_room(), plates, 50.8, 50.8)
    assert (board.height.text, board.thickness.text, board.left.text) == (wanted, "3/4 in", "2 in")
    metric = usual_board(at(good_room(), (), unit="mm"), 95.0, 50.0, 50.0)
    assert (metric.height.text, metric.thickness.text) == ("120 mm", "20 mm")


def test_on_the_casing_it_stops() -> None:
    # The board's lower edge is 3 1/4 in under the rod; the casing's top is 4 in under it: at 3 1/4 in it just clears.
    assert not found(rod(boarded(), height=held("above-casing", inch(3.25))), "board-place")
    hit = the(rod(boarded(), height=held("above-casing", mm(3.25 * INCH - TOO_FAR))), "board-place")
    assert hit.weight is Weight.STOP
    assert "casing" in said(hit.text)


def test_past_the_ceiling_it_stops() -> None:
    # 5 1/2 in high: its top is 2 1/4 in over the rod.
    def under(value: float) -> Room:
        return ceiling(boarded(), mm(84.25 * INCH + value))

    assert not found(under(2.25 * INCH), "board-place")
    assert the(under(2.25 * INCH - TOO_FAR), "board-place").weight is Weight.STOP


def test_over_an_outlet_it_is_broken_and_can_be_raised() -> None:
    room = with_obstacle(boarded(), obstacle("switch", 70 * INCH, 79 * INCH, 70, 2 * INCH + TOO_FAR))
    one = the(room, "board-place")
    assert one.weight is Weight.BROKEN
    assert "covers the switch" in said(one.text)
    labels = [said(each.label) for each in remedies(room, "w1", "s1", one, trade()).offered]
    assert "Take the mounting board away" in labels
    assert not found(with_obstacle(boarded(), obstacle("switch", 70 * INCH, 79 * INCH, 70, 2 * INCH)), "board-place")


def test_a_board_across_the_framing_is_the_way_where_no_stud_is() -> None:
    room = good_room(substrate="board-timber-studs")
    finding = the(room, "off-framing")
    (offered,) = remedies(room, "w1", "s1", finding, trade()).offered
    assert "Put a mounting board across the framing" in said(offered.label)
    # Plates are 4 in high together: the board that carries them is 5 1/2 in.
    assert layer_of(offered.room, LAYER).board == USUAL
    assert found(offered.room) == ()


def test_a_board_that_crosses_one_stud_is_too_short() -> None:
    # One bracket alone, right on a stud that was found; metal studs carry no header of wood.
    room = good_room(substrate="board-metal-studs", studs=(inch(46),))
    short = at(room, LAYER, brackets=layer_of(room, LAYER).brackets[:1], board=Board(inch(2), inch(2)))
    one = the(short, "off-framing")
    assert "across 1 piece of" in said(one.text)
    # The king's far side is at 51 1/4 in, 5 1/4 in beyond the bracket; a hair less and it is not crossed.
    assert not found(at(short, LAYER, board=Board(inch(2), inch(5.25))), "off-framing")
    assert found(at(short, LAYER, board=Board(inch(2), mm(5.25 * INCH - TOO_FAR))), "off-framing")


def test_in_a_reveal_a_board_is_left_out_of_account() -> None:
    room = at(boarded(), LAYER[:3], mount="ceiling")
    assert layer(room).board is None


def switch_under(x: float) -> Room:
    """A board across likely king studs (52 and 92 in at their middles), over a switch at ``x`` mm from the left end."""
    room = good_room(substrate="board-timber-studs")
    box = obstacle("switch", x - 35, 40 * INCH, 70, 100)
    return with_obstacle(boarded(room=room), box)


def test_a_boards_own_fixings_are_judged_not_its_brackets() -> None:
    wood = [zone for zone in scene(switch_under(0)).set_out.zones if zone.kind in FRAMING and zone.kind != "header"]
    crossed = next(zone for zone in wood if zone.left_mm > 44 * INCH and zone.top_mm > 81 * INCH)
    one = the(switch_under((crossed.left_mm + crossed.right_mm) / 2), "over-box")
    assert one.weight is Weight.CONSIDER
    assert one.subject == LAYER
    assert "where the mounting board is to be screwed on" in said(one.text)
    # Without the board its bracket would be drilled in the band; with it nothing is, there.
    bracket = switch_under(46 * INCH)
    assert found(at(bracket, LAYER, board=None), "over-box")
    assert not [one for one in found(bracket, "over-box") if "left end bracket" in said(one.text)]


def test_a_remedy_counts_the_boards_thickness() -> None:
    # A shelf that stands 6 in out under the rod's panels: the rod has to come out 6 in, 5 1/4 in of it from the board.
    room = with_obstacle(boarded(), obstacle("shelf", 46 * INCH, 40 * INCH, 8 * INCH, 20, 6 * INCH))
    one = next(one for one in found(room, "meets") if "panel" in said(one.text))
    wanted = next(
        each for each in remedies(room, "w1", "s1", one, trade()).offered if "out from the wall" in said(each.label)
    )
    assert layer_of(wanted.room, LAYER).rod.projection.text == "5 1/4 in"
