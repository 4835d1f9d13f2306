"""The whole bay in one plan, against the room's own geometry: mitres by hand, corners by the set-out's own turning."""

from __future__ import annotations

from math import cos, hypot, radians, sin

import pytest

from elevation import places
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.corners import turned
from elevation.setting_out.model import CornerOut, SetOut
from elevation.setting_out.whole import set_out
from elevation.sheet.bay import Turn, bay_frame, bay_of, turn_beside
from elevation.sheet.plan import plan_extent, plan_groups
from elevation.sheet.plan_sheet import plan_sheet
from elevation.sheet.records import Text
from elevation.trade import load_trade

TRADE = load_trade()


def bay() -> Room:
    return load_room(places.demo_rooms() / "9-bay.room.json")


def laid(room: Room, wall: str) -> SetOut:
    own = next(one for one in room.walls if one.id == wall)
    return set_out(room, wall, own.schemes[0].id, TRADE)


@pytest.mark.parametrize("angle", [60.0, 90.0, 120.0, 135.0, 240.0])
@pytest.mark.parametrize("side", ["left", "right"])
def test_a_wall_turns_as_what_stands_before_the_corner_does(side, angle: float) -> None:
    points = ((0.0, 0.0), (800.0, 0.0), (300.0, 120.0))
    theirs = turned(points, side, 2000.0, CornerOut("b", "B", 800.0, angle))
    turn = turn_beside(side, angle, 2000.0, 800.0)
    for point, there in zip(points, theirs, strict=True):
        assert turn.at(point) == pytest.approx(there)


def test_turns_follow_each_other() -> None:
    one, two = turn_beside("right", 120.0, 1000.0, 700.0), turn_beside("right", 135.0, 700.0, 500.0)
    assert one.after(two).at((200.0, 50.0)) == pytest.approx(one.at(two.at((200.0, 50.0))))
    assert Turn().after(one) == one


@pytest.mark.parametrize("wall", ["left", "middle", "right"])
def test_the_axes_of_all_legs_meet_in_one_line(wall: str) -> None:
    room = bay()
    here = laid(room, wall)
    found = bay_of(room, here, TRADE)
    assert sorted([wall, *(one.set_out.wall for one in found)]) == ["left", "middle", "right"]
    ends = {}
    for out, turn in [(here, Turn()), *((one.set_out, one.turn) for one in found)]:
        support = out.treatments[0].layers[0].support
        ends[out.wall] = [turn.at((x, support.projection_mm)) for x in (support.left_mm, support.right_mm)]
    for first, second in (("left", "middle"), ("middle", "right")):
        assert hypot(*(a - b for a, b in zip(ends[first][1], ends[second][0], strict=True))) < 1e-6


def test_a_bay_of_three_sides_is_drawn_whole_with_both_angles() -> None:
    room = bay()
    here = laid(room, "left")
    found = bay_of(room, here, TRADE)
    frame = bay_frame(here, found)
    groups = plan_groups(here, frame, style_for(room), 24.0, "drawn", found)
    texts = [record.text for group in groups for record in group.records if isinstance(record, Text)]
    assert texts.count("135°") == 2
    left, bottom, right, top = plan_extent(here, frame, 24.0, found)
    # The far end of the right wall: along the middle at 45 degrees, then the right one square to the first.
    widths = {one.set_out.wall: one.set_out.width_mm for one in found}
    x = here.width_mm + widths["middle"] * cos(radians(45))
    z = widths["middle"] * sin(radians(45)) + widths["right"]
    assert right > x
    assert bottom < frame.y0 - z
    assert left <= 0.0 < top


def test_its_sheet_names_all_walls() -> None:
    room = bay()
    picture = plan_sheet(room, laid(room, "middle"), (), TRADE, style_for(room))
    texts = [record.text for group in picture.groups for record in group.records if isinstance(record, Text)]
    assert any("Left side, Middle, Right side" in text for text in texts)


def test_a_wall_by_itself_has_no_bay() -> None:
    room = load_room(places.demo_rooms() / "1-bedroom.room.json")
    assert bay_of(room, laid(room, room.walls[0].id), TRADE) == ()
