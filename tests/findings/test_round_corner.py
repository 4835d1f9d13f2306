"""Cloth that passes the corner of a bent track, and what it meets on the wall it comes on to.

The room is that of ``tests/setting_out/test_passing.py``: all cloth in one panel on the first wall, closed over both; on
the second it hangs from 3 1/2 in to 100 in, 3 1/2 in out, under a track 84 1/4 in high.
"""

from __future__ import annotations

from math import pi

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Finding, Weight
from elevation.output.report import wall_report
from elevation.planning.remedies import remedies
from elevation.room.model import Obstacle, Room, Sash
from elevation.setting_out.whole import set_out
from tests.findings.rooms import INCH, INCHES, at, found, held, inch, layer, obstacle, said, scene, trade, treatment, window
from tests.findings.test_corner import SECOND
from tests.setting_out.test_passing import LONG, one_way

OUT = 3.5 * INCH


def says(room: Room, rule: str, wall: str = "w2") -> tuple[Finding, ...]:
    findings = find(scene(room, wall), TreatmentMemo(find_afresh))
    return tuple(one for one in findings if one.rule == rule)


def beside(room: Room, *things: Obstacle) -> Room:
    """The same with things on the second wall."""
    return at(room, ("w2",), obstacles=things)


def chest(out_mm: float, left_in: float = 60.0, room: Room | None = None) -> Room:
    """A chest of drawers 20 in wide and high on the second wall."""
    return beside(
        one_way() if room is None else room, obstacle("furniture", left_in * INCH, 0, 20 * INCH, 20 * INCH, out_mm)
    )


@pytest.mark.parametrize(("out_mm", "is_met"), [(OUT - 0.1, False), (OUT, False), (OUT + 0.1, True)])
def test_it_runs_into_what_reaches_the_plane_it_hangs_in(out_mm: float, is_met: bool) -> None:
    room = chest(out_mm)
    assert [one.subject for one in says(room, "meets")] == [SECOND] * is_met
    if is_met:
        (one,) = says(room, "meets")
        assert one.weight is Weight.STOP
        # The shortest way out of it is over it.
        assert one.measured_mm == pytest.approx(-20 * INCH, abs=0.6 * INCH)
        assert "comes round the corner" in said(one.text)
        # Pointed at in the middle of what it meets there.
        assert one.at == pytest.approx((70 * INCH, 10 * INCH))
        # The wall that the cloth belongs to has nothing to say: nothing stands there.
        assert says(room, "meets", "w1") == ()


@pytest.mark.parametrize(("left_in", "is_met"), [(100.1, False), (100.0, False), (99.9, True)])
def test_as_far_as_it_closes_and_no_farther(left_in: float, is_met: bool) -> None:
    found_there = says(chest(6 * INCH, left_in), "meets")
    assert len(found_there) == is_met
    if is_met:
        assert found_there[0].at is not None
        assert found_there[0].at[0] == pytest.approx((left_in + 100) / 2 * INCH)


def test_the_track_taken_farther_out_or_shorter_cloth_puts_it_right() -> None:
    room = chest(4 * INCH)
    (one,) = says(room, "meets")
    offered = remedies(room, "w2", "s1", one, trade()).offered
    assert [said(remedy.label) for remedy in offered][:1] == ["Hold the track 4 in out from the wall"]
    assert any("long" in said(remedy.label) for remedy in offered)
    assert all(not says(remedy.room, "meets") for remedy in offered)


def door(left_in: float, wide_in: float) -> Room:
    """A door of another wall that swings against the second one, 80 in high, farther out than any rod."""
    return beside(one_way(), obstacle("door-swing", left_in * INCH, 0, wide_in * INCH, 80 * INCH, 30 * INCH))


@pytest.mark.parametrize(("left_in", "is_met"), [(100.1, False), (100.0, False), (99.9, True)])
def test_a_door_swings_into_it_wherever_it_draws_and_nothing_helps(left_in: float, is_met: bool) -> None:
    found_there = says(door(left_in, 30), "swing")
    assert [one.subject for one in found_there] == [SECOND] * is_met
    if is_met:
        assert found_there[0].measured_mm == pytest.approx(-0.1 * INCH)
        assert found_there[0].at == pytest.approx((99.95 * INCH, 40 * INCH))
        tried = remedies(door(left_in, 30), "w2", "s1", found_there[0], trade())
        assert tried.offered == ()
        assert tried.none_because is not None


@pytest.mark.parametrize(("stack_in", "is_met"), [(0.0, False), (45.0, False), (60.0, True)])
def test_a_sash_of_the_window_it_covers_meets_only_a_stack_that_does_not_fit_its_own_wall(
    stack_in: float, is_met: bool
) -> None:
    room = one_way(stack=inch(LONG + stack_in)) if stack_in else one_way()
    sash = window(sash=Sash("casement-in", "left"), reveal=inch(0))
    room = at(room, ("w2",), openings=(sash,))
    (guest,) = set_out(room, "w2", "s1", trade()).treatments[0].layers[0].guests
    # Open it ends so far in: 4 in to the straight, and what is left of the stack past the middle of the bend.
    ends_in = 3.5 + 4 + stack_in - pi if stack_in else 3.5
    assert guest.open[1] == pytest.approx(ends_in * INCH)
    # The window begins at 54 in.
    assert len(says(room, "swing")) == is_met


def other_rod(room: Room, wall: str, left_in: float, **rod: object) -> Room:
    """A rod 40 in up, with nothing on it, before another window of a wall."""
    there = layer(panels=(), brackets=())
    there = replace(there, rod=replace(there.rod, height=held("above-floor", inch(40)), **rod))
    scheme = next(one for one in room.walls if one.id == wall).schemes[0]
    openings = next(one for one in room.walls if one.id == wall).openings
    room = at(room, (wall,), openings=(*openings, window("o2", left_in, width=inch(20))))
    return at(room, (wall, "s1"), treatments=(*scheme.treatments, treatment("t2", ("o2",), layers=(there,))))


@pytest.mark.parametrize(("reach_in", "is_met"), [(8.9, False), (9.1, True)])
def test_it_hangs_before_another_rod_of_that_wall(reach_in: float, is_met: bool) -> None:
    # From 110 in to the left, with an end of 1 in: the cloth closes to 100 in.
    room = other_rod(one_way(), "w2", 110, left=held("beyond-opening", inch(reach_in)), ends="bare")
    assert [one.subject for one in says(room, "meets")] == [("w2", "s1", "t2", "l1")] * is_met


@pytest.mark.parametrize(("away_in", "is_met"), [(5.0, False), (1.0, True)])
def test_the_wall_it_comes_from_meets_it_round_the_corner(away_in: float, is_met: bool) -> None:
    # A rod far out on the first wall passes before the cloth there, and reaches the plane 3 1/2 in before the second wall.
    room = other_rod(one_way(), "w1", 100, right=held("from-corner", inch(away_in)), projection=inch(20), ends="bare")
    subjects = [one.subject for one in says(room, "meets", "w1")]
    assert (("w1", "s1", "t2", "l1") in subjects) is is_met


def test_the_run_itself_is_no_fault() -> None:
    for wall in ("w1", "w2"):
        assert says(one_way(), "meets", wall) == ()
        assert says(one_way(), "swing", wall) == ()
    assert found(one_way(), "meets") == ()


def test_check_tells_what_passes() -> None:
    room = one_way(stack=inch(LONG + 10))
    first, second = (wall_report(set_out(room, wall, "s1", trade()), [], INCHES) for wall in ("w1", "w2"))
    panel = first["treatments"][0]["layers"][0]["panels"][0]  # type: ignore[index]
    assert panel["round_corner_open_mm"] == pytest.approx(10 * INCH, abs=0.001)
    assert panel["round_corner_closed_mm"] == pytest.approx(LONG * INCH, abs=0.001)
    there = second["treatments"][0]  # type: ignore[index]
    (guest,) = there["layers"][0]["guests"]
    assert guest["panel"] == "w1/s1/t1/l1/p1"
    assert (guest["closed_from_mm"], guest["closed_to_mm"]) == pytest.approx((3.5 * INCH, 100 * INCH), abs=0.001)
    assert guest["open_to_mm"] == pytest.approx((3.5 + 4 + 10 - pi) * INCH, abs=0.001)
    assert there["clearances"]["hem_to_floor_low_mm"] == guest["hem_to_floor_low_mm"] is not None
