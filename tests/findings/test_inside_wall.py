"""Brackets and what stands or runs inside the wall: just inside, at, and just outside each limit.

Figures by hand from ``rooms.py``: brackets at 46 and 98 in; the window stands from 54 to 90 in, so likely kings stand from
49 3/4 to 51 1/4 in and from 92 3/4 to 94 1/4 in (wood 1 1/4 in beside the opening, from memory; 1 1/2 in: PS 20).
"""

from __future__ import annotations

import pytest

from elevation.findings.model import Weight
from elevation.room.model import Bracket, Room
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
    mm,
    obstacle,
    rod,
    said,
    the,
    with_obstacle,
)

TOO_FAR = 1.0
"""mm past a limit that geometry holds to 1e-6 mm."""


def framed(*studs: float, **wall: object) -> Room:
    return good_room(substrate="board-timber-studs", studs=tuple(mm(x) for x in studs), **wall)


def test_board_without_framing_is_worth_a_thought_once_a_rod() -> None:
    one = the(framed(), "off-framing")
    assert one.weight is Weight.CONSIDER
    assert one.subject == LAYER
    # From the king's near side at 49 3/4 in to the bracket at 46 in.
    assert one.measured_mm == pytest.approx(3.75 * INCH)
    assert "2 brackets" in said(one.text)


@pytest.mark.parametrize("substrate", ["not-known", "timber", "solid-brick", "concrete", "board-dabs", "tile"])
def test_only_faces_that_hang_on_studs_ask_for_framing(substrate: str) -> None:
    assert not found(good_room(substrate=substrate), "off-framing")


def test_at_the_edge_of_a_stud_is_at_framing() -> None:
    half, bracket = 0.75 * INCH, 46 * INCH
    right = 98 * INCH
    assert not found(framed(bracket - half, right), "off-framing")
    assert not found(framed(bracket, right), "off-framing")
    off = the(framed(bracket - half - TOO_FAR, right), "off-framing")
    assert off.measured_mm == pytest.approx(TOO_FAR)
    assert "a bracket is" in said(off.text)


def test_a_bracket_that_hangs_already_is_not_judged() -> None:
    hung = tuple(
        Bracket(id=key, place=held(hold, inch(2)), height=inch(84.25))
        for key, hold in (("b1", "from-left-end"), ("b2", "from-right-end"))
    )
    assert not found(at(framed(), LAYER, brackets=hung), "off-framing")


def test_the_header_holds_only_at_its_own_height() -> None:
    # Header from 79 1/4 to 84 3/4 in; the strap's plate reaches from 1 1/2 in above to 2 1/2 in below the axis, so its
    # middle is 1/2 in under it: at 84 1/4 in that is 83 3/4, at 86 in 85 1/2.
    middle = (Bracket(id="m", place=held("from-centre", inch(0))),)
    assert not found(at(framed(), LAYER, brackets=middle), "off-framing")
    high = rod(at(framed(), LAYER, brackets=middle), height=held("above-floor", inch(86)))
    assert found(high, "off-framing")


def beside_masonry(beyond: float, substrate: str = "solid-brick") -> Room:
    """Brackets ``beyond`` mm outside an uncased opening, at half its height."""
    room = at(good_room(substrate=substrate), OPENING, casing=inch(0))
    ends = held("beyond-opening", mm(beyond + 2 * INCH))
    return rod(room, left=ends, right=ends, height=held("above-floor", inch(60)))


def test_near_the_edge_of_a_reveal() -> None:
    limit, half = 2.375 * INCH, INCH / 32
    assert not found(beside_masonry(limit), "near-edge")
    assert not found(beside_masonry(limit - half), "near-edge")
    one = found(beside_masonry(limit - half - 0.1), "near-edge")
    assert [each.subject[-1] for each in one] == ["b1", "b2"]
    assert one[0].weight is Weight.CONSIDER
    assert one[0].measured_mm == pytest.approx(limit - half - 0.1)
    assert not found(beside_masonry(30.0, "board-timber-studs"), "near-edge")
    # Over the head no reveal's side is near.
    over = rod(beside_masonry(30.0), height=held("above-casing", inch(4)))
    assert not found(over, "near-edge")


def lamp(bottom: float) -> Room:
    """A wall light far to the right whose cable may run sideways at the rod's height."""
    return with_obstacle(good_room(), obstacle("light", 125 * INCH, bottom, 100, 100))


def test_a_band_along_the_wall_is_told_once_a_rod() -> None:
    # The plate's top is at 85 3/4 in; the band begins 2 in under the light.
    edge = 85.75 * INCH + 2 * INCH
    assert not found(lamp(edge), "over-box")
    one = the(lamp(edge - TOO_FAR), "over-box")
    assert one.subject == LAYER
    assert one.weight is Weight.CONSIDER
    assert "a cable of the light" in said(one.text)


def test_a_countrys_usage_names_itself() -> None:
    # Germany: 10 to 30 cm beside a window; the plate reaches from 45 1/4 to 46 3/4 in, 184 to 222 mm beside it.
    room = at(good_room(), (), wiring="de")
    told = found(room, "over-box")
    assert {one.subject[-1] for one in told} == {"b1", "b2", "l1"}
    assert "10 to 30 cm beside a window or door" in said(told[0].text)
    assert said(told[0].authority) == "German wiring usage: to be confirmed"
    # Under the ceiling: 15 cm; the plate's top is 96 - 85 3/4 = 10 1/4 in = 260 mm under it.
    assert not found(at(good_room(), (), wiring="uk"), "over-box")


def test_a_pipe_is_called_one() -> None:
    room = with_obstacle(good_room(), obstacle("pipe", 46 * INCH, 0, 22, 1500, 60))
    (one,) = [each for each in found(room, "over-box") if each.subject == LEFT_BRACKET]
    assert "a pipe of the pipe" in said(one.text)
