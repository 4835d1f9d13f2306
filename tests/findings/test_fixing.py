"""What holds the brackets: just enough, too little, nothing to hold in; and what puts it right."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.edits import edit_at
from elevation.room.model import Room
from elevation.setting_out.model import LayerOut
from tests.findings.rooms import INCH, LAYER, at, found, good_room, inch, panels, said, scene, the, trade


def landed(room: Room) -> LayerOut:
    return scene(room).set_out.treatments[0].layers[0]


def fixed(room: Room, **fields: object) -> Room:
    """Every bracket with those fields."""
    return edit_at(room, LAYER, lambda layer: replace(layer, brackets=tuple(replace(b, **fields) for b in layer.brackets)))


def in_board(kg: float, fixing: str = "toggle-3/16", **fields: object) -> Room:
    """The good room on board and studs, none of them at a bracket, its brackets on an anchor in the board."""
    room = panels(at(good_room(), ("w1",), substrate="board-timber-studs", studs=(inch(72),)), weight_kg=kg)
    return fixed(room, fixing=fixing, **fields)


def kg_held(times: float) -> float:
    """The weight of a panel at which the brackets hold that many times what hangs: 1/times is linear in it."""
    low, high = (1 / (landed(in_board(kg)).brackets[0].holds_times or 1) for kg in (1.0, 2.0))
    return 1 + (1 / times - low) / (high - low)


def test_just_enough_and_a_hair_too_little() -> None:
    kg = kg_held(1.0)
    told = [len(found(in_board(kg * times), "fixing")) for times in (1 - 1e-6, 1.0, 1 + 1e-6)]
    assert told == [0, 0, 1]


def test_it_is_said_once_for_a_rod_with_what_hangs_and_the_packet_governs() -> None:
    finding = the(in_board(kg_held(0.5)), "fixing")
    assert finding.weight is Weight.BROKEN
    assert finding.subject == LAYER
    assert "holds 0.50 times the" in said(finding.text)
    assert "spring toggle" in said(finding.text)
    assert "packet" in said(finding.authority)
    assert finding.caution is not None


def test_a_stronger_fixing_is_offered() -> None:
    room = in_board(kg_held(0.95))
    offered = remedies(room, "w1", "s1", the(room, "fixing"), trade()).offered
    assert any(said(remedy.label).startswith("Fix it with ") for remedy in offered)
    for remedy in offered:
        assert not found(remedy.room, "fixing")


def too_heavy_for_board() -> Room:
    """No anchor in board holds half a ton, however many brackets there are."""
    return in_board(500.0)


def test_there_may_be_none() -> None:
    room = too_heavy_for_board()
    assert remedies(room, "w1", "s1", the(room, "fixing"), trade()).offered == ()


def test_a_screw_in_board_alone_finds_nothing_to_hold_in() -> None:
    room = in_board(1.0, "screw-8")
    finding = the(room, "fixing")
    assert "nothing to hold in" in said(finding.text)
    offered = remedies(room, "w1", "s1", finding, trade()).offered
    assert offered
    # At a stud it holds.
    here = landed(room).brackets
    studs = tuple(inch(bracket.x_mm / INCH) for bracket in here)
    assert not found(at(room, ("w1",), studs=studs), "fixing")


def test_a_screw_that_is_too_short() -> None:
    # 1 5/8 in less 1 in of plaster and lath and 1/8 in of plate leaves 1/2 in of thread: less than six diameters.
    room = at(fixed(good_room(), fixing="screw-6"), ("w1",), substrate="plaster-lath")
    here = landed(room).brackets
    room = at(room, ("w1",), studs=tuple(inch(bracket.x_mm / INCH) for bracket in here))
    assert "too little thread" in said(the(room, "fixing").text)
    assert "no. 8 x 3 in" in " ".join(
        said(remedy.label) for remedy in remedies(room, "w1", "s1", the(room, "fixing"), trade()).offered
    )


def test_a_plug_under_a_ceiling_is_never_counted_on() -> None:
    room = fixed(at(good_room(), ("w1",), substrate="board-timber-studs"), kit="ceiling-cup", fixing="plug")
    room = at(room, LAYER[:3], mount="ceiling")
    assert "friction alone" in said(the(room, "fixing").text)


@pytest.mark.parametrize("substrate", ["not-known", "tile", "solid-brick"])
def test_what_cannot_be_told_is_no_finding(substrate: str) -> None:
    fixing = "brick-plug" if substrate == "solid-brick" else "plug"
    assert not found(at(in_board(50.0, fixing), ("w1",), substrate=substrate), "fixing")


def test_a_packets_figure_is_taken_as_it_is() -> None:
    room = in_board(kg_held(0.9))
    assert found(room, "fixing")
    assert not found(fixed(room, pull_kg=100.0, shear_kg=100.0), "fixing")
