"""A rod out of level by choice. Figures by hand from ``tests/findings/rooms.py``: plane geometry.

The rod runs from 44 to 100 in, its middle at 72 in; the casing from 51 3/4 to 92 1/4 in with its top at 80 1/4 in; brackets
at 46 and 98 in; the left panel closed from 45 1/2 to 72 in, its cloth 1 3/4 in under the axis, hem 1/2 in clear. The
ceiling rises 1 in over the rod.
"""

from __future__ import annotations

from math import sqrt

import pytest

from elevation.errors import BadInput
from elevation.findings.changing_tilt import with_tilt
from elevation.room.model import Built, Head, Hem, Readings, Room, Station
from elevation.room.validate import check_room
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.tilt import axis_at
from elevation.setting_out.whole import set_out
from tests.findings.rooms import INCH, LAYER, OPENING, at, good_room, held, inch, rod, trade

S = 1 / 56
MIDDLE = 84.25 + S * 20.25
"""A rod that rises to the right is nearest the casing over its left corner, 20 1/4 in left of the rod's middle."""


def sloping(**fields: object) -> Room:
    stations = (Station(inch(44), inch(92)), Station(inch(100), inch(93)))
    return rod(at(good_room(), ("w1",), ceiling=stations), **fields)


def landed(room: Room) -> TreatmentOut:
    return set_out(room, "w1", "s1", trade()).treatments[0]


def test_parallel_to_the_ceiling() -> None:
    one = landed(sloping(tilt="ceiling"))
    support = one.layers[0].support
    assert support.tilt == pytest.approx(S)
    assert support.height_mm == pytest.approx(MIDDLE * INCH)
    assert axis_at(support, 44 * INCH) == pytest.approx((MIDDLE - 0.5) * INCH)
    assert axis_at(support, 100 * INCH) == pytest.approx((MIDDLE + 0.5) * INCH)
    heights = [bracket.height_mm / INCH for bracket in one.layers[0].brackets]
    assert heights == pytest.approx([MIDDLE - 26 * S, MIDDLE + 26 * S])
    assert one.clearances.above_casing_mm == pytest.approx(4 * INCH)
    assert one.clearances.below_ceiling_mm == pytest.approx((92 - (MIDDLE - 0.5)) * INCH)


def test_split_is_half_way_between_level_head_and_ceiling() -> None:
    support = landed(sloping(tilt="split")).layers[0].support
    assert support.tilt == pytest.approx(S / 2)
    assert support.height_mm == pytest.approx((84.25 + S / 2 * 20.25) * INCH)


def test_below_the_ceiling_is_the_same_all_along_a_parallel_rod() -> None:
    one = landed(sloping(tilt="ceiling", height=held("below-ceiling", inch(6))))
    support = one.layers[0].support
    assert axis_at(support, 44 * INCH) == pytest.approx(86 * INCH)
    assert axis_at(support, 100 * INCH) == pytest.approx(87 * INCH)
    assert one.clearances.below_ceiling_mm == pytest.approx(6 * INCH)


def test_over_the_floor_the_middle_is_held() -> None:
    support = landed(sloping(tilt="ceiling", height=held("above-floor", inch(85)))).layers[0].support
    assert support.height_mm == pytest.approx(85 * INCH)


def test_a_head_read_crooked_and_a_raked_one() -> None:
    taken = Readings(height_left=inch(48), height_right=inch(48.5))
    read = at(rod(good_room(), tilt="head"), OPENING, height=inch(48.5), taken=taken)
    s = 0.5 / 36
    one = landed(read)
    assert one.layers[0].support.tilt == pytest.approx(s)
    # Nearest over the left corner of the casing: 80 1/4 in there, 20 1/4 in left of the middle.
    assert one.layers[0].support.height_mm == pytest.approx((80.25 + s * 20.25 + 4) * INCH)
    raked = at(rod(good_room(), tilt="head"), OPENING, head=Head("raked", right_height=inch(66)))
    support = landed(raked).layers[0].support
    assert support.tilt == pytest.approx(0.5)
    # A rod that leans by 1 in 2 is longer than the wall it spans: by Pythagoras.
    assert support.length_mm == pytest.approx(56 * INCH)
    assert support.cut_length_mm == pytest.approx((support.cut_right_mm - support.cut_left_mm) * sqrt(1.25))


def test_cloth_is_as_long_as_its_shortest_drop_and_the_hem_follows_floor_or_sill() -> None:
    # The left panel's shortest drop is at 45 1/2 in.
    top = MIDDLE + S * (45.5 - 72) - 1.75
    panel = landed(sloping(tilt="ceiling")).layers[0].panels[0]
    assert panel.finished_length_mm == pytest.approx((top - 0.5) * INCH)
    assert (panel.gap_low_mm, panel.gap_high_mm) == pytest.approx((INCH / 2, INCH / 2))
    room = at(sloping(tilt="ceiling"), LAYER, hem=Hem("sill", inch(1)))
    panel = landed(room).layers[0].panels[0]
    assert panel.finished_length_mm == pytest.approx((top - 31) * INCH)
    assert (panel.gap_low_mm, panel.gap_high_mm) == pytest.approx((31 * INCH, 31 * INCH))


def test_a_single_reading_says_how_high_and_the_plan_how_steep() -> None:
    room = at(sloping(tilt="ceiling"), LAYER, built=Built(floor_left=inch(83)))
    support = landed(room).layers[0].support
    radius = support.diameter_mm / 2
    assert axis_at(support, 46 * INCH) == pytest.approx(83 * INCH + radius)
    assert axis_at(support, 98 * INCH) == pytest.approx((83 + 52 * S) * INCH + radius)


def test_only_level_rods_go_round_a_corner() -> None:
    around = held("around-corner", inch(0))
    made = rod(sloping(tilt="ceiling"), right=around)
    assert made.walls[0].schemes[0].treatments[0].layers[0].rod.tilt == "level"
    with pytest.raises(BadInput, match="goes round a corner"):
        check_room(with_tilt(made, LAYER, "split"), "x")
