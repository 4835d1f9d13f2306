"""Unfolded walls and plans, measured again in what was drawn."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.output.svg import to_svg
from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.elevation import elevation_sheet
from elevation.sheet.plan import plan_groups
from elevation.sheet.plan_frame import along_neighbour, frame_of
from elevation.sheet.plan_sheet import plan_sheet
from elevation.sheet.records import Picture, Polyline, Text
from elevation.sheet.unfolded import row_of, unfold, unfolded_sheet
from elevation.trade import load_trade
from tests.strategies import random_room

TRADE = load_trade()
BAY = load_room(demo_rooms() / "9-bay.room.json")
CORNER = load_room(demo_rooms() / "10-corner-room.room.json")
INCH = 25.4


def sheet_of(room: Room, at: int = 0) -> Picture:
    walls = unfold(room, room.walls[at], "s1", TRADE)
    findings = [one for wall in walls for one in find(Scene(room, wall.set_out, TRADE))]
    return unfolded_sheet(room, walls, findings, TRADE, style_for(room), date="2026-01-02")


def rod_spans(picture: Picture) -> list[tuple[float, float]]:
    """Left and right of each rod's tube as it stands in the SVG, wall mm from the first wall's left end."""
    root = ET.fromstring(to_svg(picture))
    found = []
    for group in root.iter("{http://www.w3.org/2000/svg}g"):
        if "rod" not in (group.get("class") or "").split():
            continue
        xs: list[float] = []
        for record in group.iter():
            steps = (record.get("d") or "") + " " + (record.get("points") or "")
            numbers = [float(one) for one in re.findall(r"-?\d+(?:\.\d+)?", steps)]
            xs.extend(numbers[::2])
        found.append(tuple((x - picture.origin[0]) * picture.scale for x in (min(xs), max(xs))))
    return sorted(found)  # type: ignore[arg-type]


def test_the_bay_unfolds_to_its_legs_with_the_mitres_left_out() -> None:
    # By hand: 3 1/2 in out and a corner of 135 degrees leave 3.5 / tan 67.5 = 3.5 / 2.41421 = 1.44975 in on either side.
    off = 3.5 / 2.414213562 * INCH
    first, middle, last = rod_spans(sheet_of(BAY))
    half = 1.0  # the rod's own line is 0.25 mm wide on paper, and its end caps are drawn to the sheet's scale
    assert middle[0] == pytest.approx(50 * INCH + off, abs=half)
    assert middle[1] == pytest.approx((50 + 92) * INCH - off, abs=half)
    assert first[1] == pytest.approx(50 * INCH - off, abs=half)
    assert last[0] == pytest.approx((50 + 92) * INCH + off, abs=half)
    # Left of the first leg's tube stands its finial: the tube begins 8 in beyond the casing of a window at 15 in.
    assert first[0] < (15 - 3.5 - 8) * INCH


def test_a_square_corner_leaves_as_much_as_the_rod_stands_out() -> None:
    first, last = rod_spans(sheet_of(CORNER))
    assert first[1] == pytest.approx(2700 - 120, abs=1.0)
    assert last[0] == pytest.approx(2700 + 120, abs=1.0)


def test_every_wall_of_a_row_unfolds_to_the_same_sheet() -> None:
    one, other = (to_svg(sheet_of(BAY, at)) for at in (0, 2))
    assert one == other


def test_corner_lines_say_their_angles() -> None:
    texts = [record.text for group in sheet_of(BAY).groups for record in group.records if isinstance(record, Text)]
    assert texts.count("corner, 135°") == 2
    assert {"Left side", "Middle", "Right side"} <= set(texts)


def test_a_ring_of_walls_is_cut_open_at_the_wall_that_is_looked_at() -> None:
    for seed in range(200):
        room = random_room(seed)
        for wall in room.walls:
            row = row_of(room, wall)
            assert wall in row
            assert len({one.id for one in row}) == len(row)


def test_the_plan_draws_the_neighbour_at_its_angle() -> None:
    laid = set_out(BAY, "middle", "s1", TRADE)
    frame = frame_of(laid)
    for angle in (60.0, 90.0, 135.0, 150.0):
        a, b = (along_neighbour(frame, "right", angle, far, 0.0) for far in (0.0, 500.0))
        # The inside angle lies between the wall seen from the corner (to the left) and the neighbour.
        seen = math.degrees(math.atan2(b[1] - a[1], -(b[0] - a[0])))
        assert seen == pytest.approx(angle)
        assert math.hypot(b[0] - a[0], b[1] - a[1]) == pytest.approx(500.0)


def test_the_plan_shows_the_rod_as_far_out_as_it_stands_and_mitred() -> None:
    laid = set_out(BAY, "middle", "s1", TRADE)
    frame = frame_of(laid)
    (treatment,) = laid.treatments
    groups = plan_groups(laid, frame, style_for(BAY), 16.0)
    records = next(group for group in groups if group.ref == treatment.ref).records
    support = treatment.layers[0].support
    radius, out = support.diameter_mm / 2, support.projection_mm
    rod = next(
        record
        for record in records
        if isinstance(record, Polyline)
        and len(record.points) == 4
        and min(y for _, y in record.points) == pytest.approx(-(out + radius))
        and max(y for _, y in record.points) == pytest.approx(-(out - radius))
        and max(x for x, _ in record.points) - min(x for x, _ in record.points) > 1000
    )
    # Both edges end on the mitre: as far from the corner as they stand out, over the tangent of half the angle.
    for x, y in rod.points:
        from_corner = min(x, laid.width_mm - x)
        assert from_corner == pytest.approx(-y / math.tan(math.radians(67.5)))


@pytest.mark.parametrize("seed", range(24))
def test_any_wall_has_a_plan_and_unfolds(seed: int) -> None:
    room = random_room(seed)
    for wall in room.walls:
        scheme = wall.schemes[0].id if wall.schemes else None
        laid = set_out(room, wall.id, scheme, TRADE)
        findings = find(Scene(room, laid, TRADE))
        picture = plan_sheet(room, laid, findings, TRADE, style_for(room), date="2026-01-02")
        assert picture.page is not None
        walls = unfold(room, wall, scheme, TRADE)
        row = unfolded_sheet(room, walls, findings, TRADE, style_for(room), date="2026-01-02")
        assert row.page is not None


def test_the_elevation_of_a_wall_with_a_neighbour_has_its_plan_under_it() -> None:
    laid = set_out(BAY, "middle", "s1", TRADE)
    findings = find(Scene(BAY, laid, TRADE))
    picture = elevation_sheet(BAY, laid, findings, TRADE, style_for(BAY), date="2026-01-02")
    plans = [group for group in picture.groups if group.layer == "plan"]
    assert plans
    heights = [y for group in plans for record in group.records if isinstance(record, Polyline) for _, y in record.points]
    # All of it under the floor, and on the paper inside the frame.
    assert max(heights) < 0
    assert picture.page is not None
    assert picture.origin[1] + min(heights) / picture.scale > 10.0
    alone = BAY.walls[1]
    ends = {side: replace(getattr(alone, side), neighbour=None) for side in ("left", "right")}
    single = replace(BAY, walls=(replace(alone, schemes=(), **ends),))
    bare = set_out(single, "middle", None, TRADE)
    picture = elevation_sheet(single, bare, (), TRADE, style_for(BAY), date="2026-01-02")
    assert not [group for group in picture.groups if group.layer == "plan"]
