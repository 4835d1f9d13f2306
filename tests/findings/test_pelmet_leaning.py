"""A pelmet over rods that lean: it leans with them. Figures by hand from ``test_pelmet.py``.

The ceiling rises from 96 in to 108 in over the wall's 144 in, an inch in a foot. The rod, from 44 to 100 in, is parallel to
it; the pelmet reaches from 38 to 106 in, so both have their middle at 72 in, where the ceiling is 102 in high. Its ends are
34 in from there: 2 5/6 in lower and higher.
"""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.output.report import wall_report
from elevation.room.edits import replace_rod
from elevation.room.model import Room, Station
from elevation.room.style import style_for
from elevation.setting_out.model import PelmetOut
from elevation.sheet.draw_dress import pelmet_group
from tests.findings.rooms import HALF, INCH, LAYER, at, found, good_room, inch, mm, scene
from tests.findings.test_layers import double
from tests.findings.test_pelmet import TREATMENT, USUAL, dressed

RISE = 34 / 12 * INCH


def sloping(**fields: Any) -> Room:
    room = at(good_room(), ("w1",), ceiling=(Station(inch(0), inch(96)), Station(inch(144), inch(108))))
    return dressed(replace_rod(room, LAYER, tilt="ceiling"), **fields)


def pelmet(room: Room) -> PelmetOut:
    found_there = scene(room).set_out.treatments[0].pelmet
    assert found_there is not None
    return found_there


def rod_mm(room: Room) -> float:
    return scene(room).set_out.treatments[0].layers[0].support.height_mm


def test_it_leans_with_its_rod() -> None:
    room = sloping()
    one = pelmet(room)
    assert one.tilt == pytest.approx(1 / 12)
    assert one.over_mm == pytest.approx(rod_mm(room))
    assert one.up_at(one.right_mm) == pytest.approx(RISE)
    assert one.length_mm == pytest.approx(68 * INCH * (1 + 1 / 144) ** 0.5)
    assert one.level_at(one.left_mm).top_mm == pytest.approx(rod_mm(room) + 4 * INCH - RISE)
    assert one.level_at(one.left_mm).tilt == 0.0


def test_ends_of_other_length_move_its_middle_along_the_slope() -> None:
    # 12 in longer on the right: its middle is 6 in farther, half an inch higher.
    assert pelmet(sloping(right=inch(18))).over_mm == pytest.approx(rod_mm(sloping()) + 0.5 * INCH)


def test_over_rods_that_lean_otherwise_it_is_level_over_the_highest_end() -> None:
    room, back = double()
    room = at(room, ("w1",), ceiling=(Station(inch(0), inch(96)), Station(inch(144), inch(108))))
    room = at(replace_rod(room, LAYER, tilt="ceiling"), TREATMENT, pelmet=USUAL)
    made = scene(room).set_out.treatments[0]
    assert back[:3] == TREATMENT
    assert made.pelmet is not None
    assert made.pelmet.tilt == 0.0
    highest = max(one.support.height_mm + abs(one.support.tilt) * one.support.length_mm / 2 for one in made.layers)
    assert made.pelmet.over_mm == pytest.approx(highest)


@pytest.mark.parametrize(("more_mm", "meets"), [(-0.1, False), (0.0, False), (0.1, True)])
def test_parallel_to_the_ceiling_all_of_it_has_the_same_room(more_mm: float, meets: bool) -> None:
    # Level, its lower end would have 2 5/6 in less.
    room = sloping(above=mm(102 * INCH - rod_mm(sloping()) + more_mm), depth=inch(20))
    assert bool(found(room, "pelmet-meets")) is meets


@pytest.mark.parametrize(("short_mm", "shows"), [(HALF, False), (HALF + 0.1, True)])
def test_it_hides_the_heading_all_along(short_mm: float, shows: bool) -> None:
    made = scene(sloping()).set_out.treatments[0]
    down = rod_mm(sloping()) - made.layers[0].panels[0].top_mm
    room = sloping(depth=mm(4 * INCH + down - short_mm))
    found_there = [one for one in found(room, "pelmet-cover") if one.measured_mm is not None]
    assert bool(found_there) is shows


def test_it_is_drawn_and_told_as_it_leans() -> None:
    room = sloping()
    made = scene(room).set_out.treatments[0]
    one = pelmet(room)
    group = pelmet_group(made, one, style_for(room))
    heights = [float(step[-1]) for record in group.records for step in getattr(record, "steps", ()) if len(step) > 1]
    assert max(heights) == pytest.approx(one.top_mm + RISE)
    flat = pelmet_group(made, replace(one, tilt=0.0), style_for(room))
    assert len(flat.records) == len(group.records)
    told = wall_report(scene(room).set_out, [], style_for(room))["treatments"][0]["pelmet"]  # type: ignore[index]
    assert told["top_right_mm"] - told["top_left_mm"] == pytest.approx(2 * RISE, abs=0.01)


def test_mirrored_it_leans_the_other_way() -> None:
    room = at(good_room(), ("w1",), ceiling=(Station(inch(0), inch(108)), Station(inch(144), inch(96))))
    other = pelmet(dressed(replace_rod(room, LAYER, tilt="ceiling")))
    one = pelmet(sloping())
    assert other.tilt == pytest.approx(-one.tilt)
    assert other.top_mm == pytest.approx(one.top_mm)
