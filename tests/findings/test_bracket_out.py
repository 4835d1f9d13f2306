"""bracket-out: a bracket of one's own that holds the rod nearer or farther out than planned. Geometry, so no source."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import find, rule_of
from elevation.findings.model import Finding, Scene, Weight
from elevation.handles.sticking import candidates
from elevation.planning.remedies import remedies
from elevation.room.edits import edit_at
from elevation.room.find import layer_of
from elevation.room.model import Board, Room
from elevation.session.session import Session
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from tests.findings.rooms import INCH, LAYER, good_room, inch, said, trade

HALF = INCH / 32
HAIR = 1e-5
PLAN = 3.5 * INCH
"""The good room's rod stands 3 1/2 in out, by marks of a sixteenth."""


def with_arms(*outs_mm: float) -> tuple[Room, Trade]:
    """The good room on brackets of her own that hold a rod so far out, left to right."""
    rows = dict(trade().brackets)
    for number, out in enumerate(outs_mm):
        rows[f"my-{number}"] = replace(rows["shop-strap"], id=f"my-{number}", out_mm=out)

    def own(layer):
        kits = [f"my-{number}" for number in range(len(outs_mm))]
        return replace(layer, brackets=tuple(replace(one, kit=kit) for one, kit in zip(layer.brackets, kits, strict=True)))

    return edit_at(good_room(), LAYER, own), replace(trade(), brackets=rows)


def scene_of(room: Room, rows: Trade) -> Scene:
    return Scene(room, set_out(room, LAYER[0], LAYER[1], rows), rows)


def findings(room: Room, rows: Trade) -> list[Finding]:
    return [one for one in find(scene_of(room, rows)) if one.rule == "bracket-out"]


@pytest.mark.parametrize("sign", [1, -1])
@pytest.mark.parametrize(("off", "is_told"), [(0.0, False), (HALF - HAIR, False), (HALF + HAIR, True), (25.0, True)])
def test_the_plan_follows_the_bracket_to_half_a_mark(off: float, is_told: bool, sign: int) -> None:
    found = findings(*with_arms(PLAN + sign * off, PLAN + sign * off))
    assert [one.weight for one in found] == [Weight.BROKEN] * is_told
    for one in found:
        assert one.measured_mm == pytest.approx(off)


def test_brackets_that_say_nothing_are_made_to_measure() -> None:
    assert not findings(*with_arms(0.0, 0.0))
    assert not findings(good_room(), trade())


def test_the_remedy_plans_the_rod_where_its_bracket_holds_it() -> None:
    room, rows = with_arms(4.25 * INCH, 4.25 * INCH)
    (finding,) = findings(room, rows)
    assert "4¹⁄₄ in from what it is screwed to; it is planned 3¹⁄₂ in from it" in said(finding.text)
    answer = remedies(room, LAYER[0], LAYER[1], finding, rows)
    labels = [said(one.label) for one in answer.offered]
    assert labels == ["Plan the rod 4¹⁄₄ in out, as its bracket holds it"]
    after = answer.offered[0].room
    assert layer_of(after, LAYER).rod.projection.text == "4 1/4 in"
    assert not findings(after, rows)


def test_two_brackets_that_hold_it_unlike_leave_no_remedy() -> None:
    room, rows = with_arms(PLAN, 4.25 * INCH)
    (finding,) = findings(room, rows)
    assert not remedies(room, LAYER[0], LAYER[1], finding, rows).offered


def test_on_a_board_the_bracket_stands_farther_out_by_its_thickness() -> None:
    room, rows = with_arms(PLAN, PLAN)
    on_board = edit_at(room, LAYER, lambda one: replace(one, board=Board(inch(2), inch(2))))
    assert on_board != room
    assert not findings(on_board, rows)


def test_the_projection_s_handle_sticks_there() -> None:
    room, rows = with_arms(4.25 * INCH, 4.25 * INCH)
    session = Session(room, rows)
    handle = session.handle("projection", LAYER)
    found = {said(place.reason): place.value_mm for place in candidates(handle, session.scene())}
    assert found["where its bracket holds it"] == pytest.approx(4.25 * INCH)
    assert rule_of("bracket-out").name
