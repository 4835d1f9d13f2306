"""What was read after hanging takes the place of the plan. Figures by hand from ``tests/findings/rooms.py``.

The rod is planned with its centre at 84 1/4 in; it is 0.922 in thick, so its underside is planned 83.789 in over the
floor. Its brackets stand at 46 and 98 in: 52 in apart. Clips: cloth begins 1 3/4 in under the axis; hem 1/2 in clear.
Of three readings of a drop that hangs free of the floor the shortest counts: makers' measuring guides
(https://www.bett-und-tuch.de/vorhangmasse/ct-301.html).
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.handles.all_handles import handles
from elevation.planning.remedies import remedies
from elevation.room.edits import replace_at, replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Built, Room, Station
from elevation.setting_out.model import LayerOut
from elevation.setting_out.whole import set_out
from elevation.units import Length
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    LEFT_PANEL,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    said,
    the,
    trade,
)

RADIUS = 0.922 * INCH / 2


def built(**readings: Length) -> Room:
    return replace_at(good_room(), LAYER, built=Built(**readings))


def under(left: float, middle: float | None, right: float, room: Room | None = None) -> Room:
    """Readings, in inches, that lie so far under an axis: the tape reads less by the rod's radius."""
    read = [None if value is None else mm(value * INCH - RADIUS) for value in (left, middle, right)]
    return replace_at(room or good_room(), LAYER, built=Built(*read))


def landed(room: Room) -> LayerOut:
    return set_out(room, "w1", "s1", trade()).treatments[0].layers[0]


def test_what_was_not_read_is_planned() -> None:
    one = landed(good_room())
    assert not one.is_built
    assert [bracket.built for bracket in one.brackets] == [False, False]


def test_three_equal_readings_set_the_height() -> None:
    one = landed(under(85, 85, 85))
    assert one.is_built
    assert one.support.height_mm == pytest.approx(85 * INCH)
    assert [bracket.height_mm for bracket in one.brackets] == [pytest.approx(85 * INCH)] * 2
    assert all(bracket.built for bracket in one.brackets)
    # By hand: 85 - 1 3/4 - 1/2 in.
    assert [panel.finished_length_mm for panel in one.panels] == [pytest.approx(82.75 * INCH)] * 2


def test_the_plate_goes_with_its_bracket() -> None:
    plan, one = landed(good_room()).brackets[0], landed(under(85, 85, 85)).brackets[0]
    assert one.plate == pytest.approx(
        (plan.plate[0], plan.plate[1] + 0.75 * INCH, plan.plate[2], plan.plate[3] + 0.75 * INCH)
    )


def test_the_shortest_drop_of_three_cuts_each_panel() -> None:
    # Left 84, right 85 in over the floor: the axis rises 1 in over 52 in, from 46 in to 98 in.
    one = landed(under(84, 84.5, 85))
    assert one.support.height_mm == pytest.approx(84.5 * INCH)
    left, right = one.panels
    # The left panel closes from the end bracket's ring (45 1/2 in, under the level part before the bracket) to the
    # middle at 72 in: its shortest drop is 84 in. The right one's is that of the middle, 84 1/2 in.
    assert left.finished_length_mm == pytest.approx((84 - 1.75 - 0.5) * INCH)
    assert right.finished_length_mm == pytest.approx((84.5 - 1.75 - 0.5) * INCH)


def test_a_low_middle_is_the_shortest_for_both() -> None:
    one = landed(under(84.5, 84.25, 84.5))
    assert [panel.finished_length_mm for panel in one.panels] == [pytest.approx((84.25 - 1.75 - 0.5) * INCH)] * 2


def test_only_what_was_read_is_taken() -> None:
    one = landed(under(85, None, 85))
    assert one.support.height_mm == pytest.approx(85 * INCH)
    alone = landed(replace_at(good_room(), LAYER, built=Built(floor_right=mm(85 * INCH - RADIUS))))
    assert [bracket.height_mm for bracket in alone.brackets] == [pytest.approx(85 * INCH)] * 2


def sloping() -> Room:
    """The good room on a floor that rises 1 in from 46 to 98 in."""
    floor = (Station(inch(46), inch(0)), Station(inch(98), inch(1)))
    return replace_at(good_room(), ("w1",), floor=floor)


def test_over_a_measured_floor_the_rod_itself_is_told_level() -> None:
    # A level rod at 84 1/4 in: the tape reads 84 1/4 in left of the slope and 83 1/4 in right of it.
    one = landed(under(84.25, 83.75, 83.25, sloping()))
    assert [bracket.height_mm for bracket in one.brackets] == [pytest.approx(84.25 * INCH)] * 2
    plan = landed(sloping())
    for built_panel, planned in zip(one.panels, plan.panels, strict=True):
        assert built_panel.finished_length_mm == pytest.approx(planned.finished_length_mm)
    assert not found(under(84.25, 83.75, 83.25, sloping()), "bracket-level")


def test_a_floor_to_come_lies_on_the_one_that_was_read() -> None:
    room = replace(under(85, 85, 85), floor_to_come=inch(1))
    one = landed(room)
    # The new floor comes off the drop; the rod stands where it was read, over the old floor.
    assert one.support.height_mm == pytest.approx(85 * INCH)
    assert one.panels[0].finished_length_mm == pytest.approx((85 - 1 - 1.75 - 0.5) * INCH)


def test_a_bracket_s_own_height_wins() -> None:
    room = replace_at(under(85, 85, 85), LEFT_BRACKET, height=inch(84))
    assert [bracket.height_mm for bracket in landed(room).brackets] == [
        pytest.approx(84 * INCH),
        pytest.approx(85 * INCH),
    ]


def test_brackets_farther_apart_share_the_difference() -> None:
    one = landed(built(bracket_to_bracket=inch(53)))
    assert [bracket.x_mm for bracket in one.brackets] == [pytest.approx(45.5 * INCH), pytest.approx(98.5 * INCH)]
    # Cloth travels between the brackets as they are.
    plan = landed(good_room())
    assert one.panels[0].closed[0] == pytest.approx(plan.panels[0].closed[0] - INCH / 2)


def test_a_bracket_at_a_stud_stays_there() -> None:
    room = replace_at(built(bracket_to_bracket=inch(53)), LEFT_BRACKET, place=held("from-wall-left", inch(46)))
    assert [bracket.x_mm for bracket in landed(room).brackets] == [pytest.approx(46 * INCH), pytest.approx(99 * INCH)]


def test_a_hung_length_wins_over_what_the_packet_says() -> None:
    room = replace_at(good_room(), LEFT_PANEL, label_length=inch(84), measured_length=inch(83), hung_length=inch(81))
    one = landed(room)
    assert one.is_built
    assert one.panels[0].finished_length_mm == pytest.approx(81 * INCH)
    # Top at 82 1/2 in, so 1 1/2 in over the floor.
    assert one.panels[0].gap_low_mm == pytest.approx(1.5 * INCH)


# --- level --------------------------------------------------------------------------------------------------

HALF = INCH / 32


@pytest.mark.parametrize(("off", "count"), [(INCH / 16, 0), (INCH / 16 + HALF, 0), (INCH / 16 + HALF + 0.01, 1)])
def test_readings_to_a_known_floor_find_brackets_out_of_level(off: float, count: int) -> None:
    floor = (Station(inch(0), inch(0)), Station(inch(144), inch(0)))
    room = replace_at(good_room(), ("w1",), floor=floor)
    room = under(84.25, None, 84.25 + off / INCH, room)
    findings = found(room, "bracket-level")
    assert len(findings) == count
    assert all(one.weight is Weight.BROKEN for one in findings)


def test_over_a_floor_nobody_measured_it_may_be_the_floor() -> None:
    one = the(under(84, 84.5, 85), "bracket-level")
    assert one.weight is Weight.CONSIDER
    assert "or the floor is not level" in said(one.text)


def test_hanging_it_again_is_the_remedy() -> None:
    room = under(84, None, 85)
    offered = remedies(room, "w1", "s1", the(room, "bracket-level"), trade()).offered
    assert offered
    assert not found(offered[0].room, "bracket-level")


# --- edits --------------------------------------------------------------------------------------------------


def test_a_rod_that_is_moved_is_a_plan_again() -> None:
    room = under(85, 85, 85)
    assert layer_of(replace_rod(room, LAYER, height=held("above-casing", inch(5))), LAYER).built == Built()
    assert layer_of(replace_rod(room, LAYER, section="dowel-1"), LAYER).built != Built()
    assert layer_of(replace_rod(room, LAYER, height=layer().rod.height), LAYER) is layer_of(room, LAYER)


def test_readings_cost_no_other_treatment_anything() -> None:
    room = good_room()
    before = set_out(room, "w1", "s1", trade())
    assert set_out(replace_at(room, LAYER, built=Built()), "w1", "s1", trade()).treatments[0] is before.treatments[0]


def test_the_handle_says_where_it_hangs_and_follows_the_hand() -> None:
    room = under(86, 86, 86)
    out = set_out(room, "w1", "s1", trade())
    handle = next(one for one in handles(room, out, trade()) if one.axis == "rod-height")
    # The casing's top is at 80 1/4 in: the rod hangs 5 3/4 in above it, whatever was planned.
    assert handle.shown_mm(handle.value_mm) == pytest.approx(5.75 * INCH)
    moved = handle.move(room, 87 * INCH, False)
    assert landed(moved).support.height_mm == pytest.approx(87 * INCH)
    # Back to the very height that was planned it is a plan again, too.
    back = handle.move(room, 84.25 * INCH, False)
    assert landed(back).support.height_mm == pytest.approx(84.25 * INCH)
    assert not landed(back).is_built


def test_a_remedy_moves_a_hung_rod_from_where_it_was_planned() -> None:
    room = under(82, 82, 82)
    low = the(room, "rod-low")
    offered = remedies(room, "w1", "s1", low, trade()).offered
    # It hangs 1 3/4 in above the casing; the plan is moved to the 3 in it needs, and hung again.
    assert said(offered[0].label) == "Set the rod 3 in above the casing"
    assert landed(offered[0].room).support.height_mm == pytest.approx(83.25 * INCH)
