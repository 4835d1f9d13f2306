"""What likely stands inside the wall: figures worked by hand from 144 in of wall and a window from 54 to 90 in.

Studs 16 in on centres: IRC R602.3(5); 1 1/2 in wide: PS 20 (2x4). Wood begins 1 1/4 in beside the opening: jamb 3/4 in and
shims 1/2 in, from memory. Lintel 8 1/2 in high with 6 in of bearing, 2 3/8 in off a reveal's edge: from memory.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.model import Station
from elevation.setting_out.framing import layout
from elevation.setting_out.model import SetOut, ZoneOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from tests.findings.rooms import INCH, good_room, inch

TRADE = load_trade()


def dressed(**wall: object) -> SetOut:
    return set_out_afresh(good_room(**wall), "w1", "s1", TRADE)


def inches(zone: ZoneOut) -> tuple[float, float, float, float]:
    return tuple(round(side / INCH, 4) for side in (zone.left_mm, zone.bottom_mm, zone.right_mm, zone.top_mm))  # type: ignore[return-value]


def of(out: SetOut, kind: str, *, found: bool = False) -> list[tuple[float, float, float, float]]:
    return [inches(zone) for zone in out.zones if zone.kind == kind and zone.is_found == found]


def test_nothing_is_told_of_a_wall_that_nobody_tested() -> None:
    for substrate in ("not-known", "tile", "timber"):
        assert dressed(substrate=substrate, studs=(inch(30),)).zones == ()


def test_jacks_kings_and_header_beside_an_opening() -> None:
    out = dressed(substrate="board-timber-studs")
    # 54 - 1 1/4 = 52 3/4, less 1 1/2: 51 1/4; head 78 + 1 1/4 = 79 1/4.
    assert of(out, "jack") == [(51.25, 0, 52.75, 79.25), (91.25, 0, 92.75, 79.25)]
    assert of(out, "king") == [(49.75, 0, 51.25, 96), (92.75, 0, 94.25, 96)]
    assert of(out, "header") == [(51.25, 79.25, 92.75, 84.75)]
    # Without a stud that was found nothing else can be counted.
    assert of(out, "stud") == []


def test_metal_studs_carry_no_header_of_wood() -> None:
    assert of(dressed(substrate="board-metal-studs"), "header") == []


def test_a_found_stud_wins_and_others_are_counted_from_it() -> None:
    out = dressed(substrate="board-timber-studs", studs=(inch(20),))
    assert of(out, "stud", found=True) == [(19.25, 0, 20.75, 96)]
    # 4, 36, 52 (a jack stands there), 68 and 84 (over and under the window), 100, 116, 132.
    likely = of(out, "stud")
    assert [zone[0] + 0.75 for zone in likely if zone[1] == 0 and zone[3] == 96] == [4, 36, 100, 116, 132]
    assert {zone[0] + 0.75 for zone in likely if zone[1] == 79.25 or zone[3] == 28.75} == {68, 84}
    moved = dressed(substrate="board-timber-studs", studs=(inch(21),))
    assert [zone[0] + 0.75 for zone in of(moved, "stud") if zone[1] == 0 and zone[3] == 96] == [5, 37, 101, 117, 133]


def test_a_found_stud_takes_the_place_of_a_likely_king() -> None:
    out = dressed(substrate="board-timber-studs", studs=(inch(49.5),))
    assert [zone[0] for zone in of(out, "king")] == [92.75]
    assert len(of(out, "jack")) == 2


def test_its_own_spacing_and_the_rooms_own_limit() -> None:
    out = dressed(substrate="plaster-lath", studs=(inch(20),), stud_spacing=inch(24))
    assert [zone[0] + 0.75 for zone in of(out, "stud") if zone[1] == 0 and zone[3] == 96] == [44, 116, 140]


def test_masonry_has_a_lintel_and_edges_to_keep_off() -> None:
    out = dressed(substrate="solid-brick")
    assert of(out, "lintel") == [(48, 78, 96, 86.5)]
    assert of(out, "keep-off") == [(51.625, 30, 54, 78), (90, 30, 92.375, 78)]


def test_the_layout_between_two_studs_gives_way_to_the_right_one() -> None:
    # 16 in steps from 20: 36, 52; 68 would stand less than half a step before the stud at 70.
    assert layout([20.0, 70.0], 16.0, 100.0, 0.75) == [4.0, 36.0, 52.0, 86.0]
    assert layout([], 16.0, 100.0, 0.75) == []
    assert layout([50.0], 16.0, 100.0, 0.75) == [2.0, 18.0, 34.0, 66.0, 82.0, 98.0]
    # Just inside and just outside the wall's end.
    assert layout([50.0], 49.25, 100.0, 0.75) == pytest.approx([0.75, 99.25])
    assert layout([50.0], 49.26, 100.0, 0.75) == []


@pytest.mark.parametrize(("ceiling", "boxes"), [(78.0, 0), (80.0, 1)])
def test_a_shutter_box_stands_between_head_and_ceiling(ceiling: float, boxes: int) -> None:
    # The head is 78 in up: under a ceiling there, no box.
    (wall,) = good_room().walls
    opening = replace(wall.openings[0], shutter_box=inch(8))
    made = good_room(openings=(opening,), ceiling=(Station(inch(0), inch(ceiling)),))
    out = set_out_afresh(made, "w1", None, TRADE)
    assert len([zone for zone in out.zones if zone.kind == "shutter-box"]) == boxes


def test_no_stud_stands_where_the_floor_has_risen_to_its_top() -> None:
    # A stair's floor: 90 in up right of the opening, over the head at 79 1/4 in, where the right jack would end.
    floor = (Station(inch(0), inch(0)), Station(inch(80), inch(0)), Station(inch(91), inch(90)))
    out = set_out_afresh(good_room(substrate="board-timber-studs", floor=floor), "w1", None, TRADE)
    assert [side[0] for side in of(out, "jack")] == [51.25]
    assert len(of(out, "king")) == 2
