"""What holds ends that carry the rod, by hand: a socket in a jamb in shear, a tube bent back to the wall as a bracket.

The screw's figures are those of its row (NDS 12.2, Wood Handbook); two screws to an end are common practice, no source.
"""

from __future__ import annotations

from typing import Any

import pytest

from elevation.findings.carrying_words import end_carries
from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.find import layer_of
from elevation.room.model import Room, Wall, WallEnd
from elevation.setting_out.carried import HoldOut, LoadsOut
from elevation.trade.fixing import withdrawal_n
from tests.findings.rooms import INCH, LAYER, at, found, good_room, inch, panels, rod, said, scene, the, trade

LBF = 4.4482216152605


def heavy(kg: float, substrate: str = "timber", **fields: Any) -> Room:
    """The good room, two panels of that weight each, on a rod that its ends alone carry."""
    room = at(panels(good_room(), weight_kg=kg), ("w1",), substrate=substrate)
    return at(rod(room, **{"ends": "elbow", **fields}), LAYER, brackets=())


def loads(room: Room) -> LoadsOut:
    told = scene(room).set_out.treatments[0].layers[0].loads
    assert told is not None
    return told


def left(room: Room) -> HoldOut:
    held = loads(room).held[0]
    assert held is not None
    return held


def test_an_elbow_is_a_cantilever_on_its_two_screws() -> None:
    room = heavy(2.0)
    told, held = loads(room), left(room)
    load = told.ends_n[0] + 15 * LBF
    assert held.load_n == pytest.approx(load)
    # The flange turns about its lower edge, 1 in under the axis; the upper screw is 3/4 in over it: 1 3/4 in of lever.
    assert held.pull_n == pytest.approx(load * 3.5 / 1.75)
    assert held.shear_n == pytest.approx(load / 2)
    # 2 in less 1/8 in of plate: 1 7/8 in of thread in the wood itself, more than ten diameters; nine tenths stay.
    pull = 0.9 * withdrawal_n(0.42, 0.164 * INCH, 1.875 * INCH)
    shear = 0.9 * 90.6 * LBF
    assert held.times == pytest.approx(1 / (held.pull_n / pull + held.shear_n / shear))
    assert held.fixing == "screw-8"


def test_a_socket_in_a_jamb_is_in_shear_alone() -> None:
    room = at(heavy(2.0, ends="socket"), LAYER[:3], mount="reveal")
    held = left(room)
    assert (held.pull_n, held.shear_n) == pytest.approx((0.0, held.load_n / 2))
    assert held.times == pytest.approx(0.9 * 90.6 * LBF / (held.load_n / 2))


def weight_held(times: float) -> float:
    """The weight of a panel at which the left end holds that many times what hangs: 1/times is linear in it."""
    low, high = (1 / (left(heavy(kg)).times or 1) for kg in (1.0, 2.0))
    return 1 + (1 / times - low) / (high - low)


def test_just_enough_and_a_hair_too_little() -> None:
    kg = weight_held(1.0)
    assert [len(found(heavy(kg * times), "fixing")) for times in (1 - 1e-6, 1.0, 1 + 1e-6)] == [0, 0, 1]


def test_it_is_said_at_the_end_and_a_stronger_screw_is_offered() -> None:
    room = heavy(weight_held(0.97))
    finding = the(room, "fixing")
    assert finding.weight is Weight.BROKEN
    assert finding.at == (loads(room).spans[0].left_mm, finding.at[1])
    assert "the left end of the rod holds 0.97 times" in said(finding.text)
    offered = remedies(room, "w1", "s1", finding, trade()).offered
    assert any(said(remedy.label).startswith("Fix both ends of the rod with ") for remedy in offered)
    assert all("fixing" not in {one.rule for one in found(remedy.room)} for remedy in offered)


def test_what_stands_beside_is_asked_and_then_told() -> None:
    room = heavy(2.0, "board-timber-studs", ends="socket")
    assert left(room).why == "wall"
    assert not found(room, "fixing")
    # A timber wall of the room stands round the left corner: a screw in it, in shear.
    (wall,) = room.walls
    beside = Wall(id="w2", name="Beside", width=inch(100), substrate="timber")
    both = at(room, (), walls=(wall, beside))
    both = at(both, ("w1",), left=WallEnd("corner", "w2"))
    assert left(both).fixing == "screw-8"
    assert left(both).times == pytest.approx(0.9 * 90.6 * LBF / (left(both).load_n / 2))
    # In board on studs a screw holds where she chose it, through the board: 36.7 lbf.
    board = at(both, ("w2",), substrate="board-timber-studs")
    assert left(board).why == "chosen"
    assert "rod.left_fixing" in {fact.field for fact in scene(board).set_out.missing}
    chosen = rod(board, left_fixing="screw-8-3")
    assert left(chosen).times == pytest.approx(0.9 * 36.7 * LBF / (left(chosen).load_n / 2))
    assert "rod.left_fixing" not in {fact.field for fact in scene(chosen).set_out.missing}


def test_nothing_to_hold_in_and_too_short() -> None:
    bare = rod(heavy(2.0, "board-timber-studs"), left_fixing="screw-8", right_fixing="screw-8")
    assert left(bare).why == "there"
    assert "finds nothing to hold in" in said(the(bare, "fixing").text)
    x = scene(bare).set_out.treatments[0].layers[0].support.left_mm
    studs = at(bare, ("w1",), studs=(inch(x / INCH),))
    assert left(studs).why == ""
    lath = at(rod(studs, left_fixing="screw-6"), ("w1",), substrate="plaster-lath")
    assert left(lath).why == "short"


def test_mirrored_ends_hold_alike() -> None:
    one, other = loads(heavy(3.0)).held
    assert one is not None
    assert other is not None
    assert one.times == pytest.approx(other.times)


def test_it_is_said_beside_the_field() -> None:
    lines = [said(line) for line in end_carries(loads(heavy(2.0)), 0, "in", trade())]
    assert lines[0].startswith("carries ")
    assert "times that, with a safety factor of 5" in lines[1]
    assert end_carries(loads(good_room()), 0, "in", trade()) == ()
    unknown = [said(line) for line in end_carries(loads(heavy(2.0, ends="socket")), 0, "in", trade())]
    assert unknown[1] == "what the wall it is fixed to is made of is not known, so no figure for what it holds"


def test_one_weak_end_is_mended_alone() -> None:
    # The left end stands off the studs, the right one on one.
    bare = rod(heavy(2.0, "board-timber-studs"), left_fixing="screw-8", right_fixing="screw-8")
    x = scene(bare).set_out.treatments[0].layers[0].support.right_mm
    room = at(bare, ("w1",), studs=(inch(x / INCH),))
    finding = the(room, "fixing")
    assert "the left end of the rod stands where" in said(finding.text)
    offered = remedies(room, "w1", "s1", finding, trade()).offered
    mended = [one for one in offered if said(one.label).startswith("Fix the left end of the rod with ")]
    assert mended
    assert all(layer_of(one.room, LAYER).rod.right_fixing == "screw-8" for one in mended)
