"""Glass areas against formulas of other shape and against polygons of another library, to 1e-6."""

from __future__ import annotations

import itertools
import math

import pytest
import shapely

from elevation.room.model import Head, Opening, Sash
from elevation.setting_out import heads
from elevation.setting_out.chain import Spot
from elevation.setting_out.covers import clear_beside, line_at
from elevation.setting_out.opening import Placed, SweepSizes, place
from tests.setting_out.rooms import mm

SIZES = SweepSizes(101.6, 0.25)


def placed(width=900.0, height=1400.0, frame=50.0, head=None, left=1000.0, **more) -> Placed:
    opening = Opening(
        id="w",
        width=mm(width),
        height=mm(height),
        sill=mm(800),
        frame=mm(frame),
        head=head or Head(),
        casing=mm(90),
        **more,
    )
    return place(("a", "w"), opening, Spot(left, left + width, 1, placed=True), SIZES)


HEADS = {
    "flat": Head(),
    "segmental": Head(kind="segmental", rise=mm(150)),
    "half-round": Head(kind="half-round"),
    "raked-down": Head(kind="raked", right_height=mm(900)),
    "raked-up": Head(kind="raked", right_height=mm(1900)),
}


def test_flat_glass_is_width_times_height() -> None:
    assert placed().out.glass_area_mm2 == pytest.approx(800 * 1300, rel=1e-12)


def test_half_round_glass_is_a_half_disc_on_a_rectangle() -> None:
    # Half a disc of radius 400 over 800 x (950 - 50) of glass below the springing.
    expected = math.pi * 400**2 / 2 + 800 * (1400 - 450 - 50)
    assert placed(head=HEADS["half-round"]).out.glass_area_mm2 == pytest.approx(expected, rel=1e-9)


def test_a_pure_half_round_loses_the_frame_at_its_foot_too() -> None:
    # A disc of radius 400 cut by a chord 50 above its centre: circular segment r^2 acos(d/r) - d sqrt(r^2 - d^2).
    expected = 400**2 * math.acos(50 / 400) - 50 * math.sqrt(400**2 - 50**2)
    out = placed(width=900, height=450, head=HEADS["half-round"]).out
    assert out.glass_area_mm2 == pytest.approx(expected, rel=1e-9)
    assert out.glass_right_mm - out.glass_left_mm == pytest.approx(2 * math.sqrt(400**2 - 50**2))


def test_segmental_glass_by_the_circular_segment() -> None:
    # Radius of a 900 chord with rise 150 is (450^2 + 150^2) / 300 = 750; the glass arc has 700 about the same centre,
    # over a chord of 800: area of the segment = r^2 (t - sin t) / 2 with t = 2 asin(400 / 700).
    t = 2 * math.asin(400 / 700)
    segment = 700**2 * (t - math.sin(t)) / 2
    springing = math.sqrt(700**2 - 400**2) - (750 - 150)
    expected = segment + 800 * (1250 + springing - 50)
    assert placed(head=HEADS["segmental"]).out.glass_area_mm2 == pytest.approx(expected, rel=1e-9)


def test_raked_glass_is_a_trapezium_with_the_frame_square_to_the_slope() -> None:
    slope = (900 - 1400) / 900
    down = 50 * math.sqrt(1 + slope**2)
    left, right = 1400 + slope * 50 - down - 50, 1400 + slope * 850 - down - 50
    assert placed(head=HEADS["raked-down"]).out.glass_area_mm2 == pytest.approx(800 * (left + right) / 2, rel=1e-12)


def test_a_raked_head_that_dies_into_the_sill_is_a_triangle() -> None:
    out = placed(frame=0.0, head=Head(kind="raked", right_height=mm(0))).out
    assert out.glass_area_mm2 == pytest.approx(900 * 1400 / 2, rel=1e-12)
    framed = placed(frame=50.0, head=Head(kind="raked", right_height=mm(0))).out
    assert framed.glass_right_mm < 1850
    assert framed.glass_area_mm2 == pytest.approx(shapely.Polygon(framed.glass).area, rel=1e-9)


@pytest.mark.parametrize("kind", HEADS)
@pytest.mark.parametrize("frame", [0.0, 50.0])
def test_the_outline_is_the_opening_with_the_frame_deducted_all_round(kind: str, frame: float) -> None:
    made = placed(head=HEADS[kind], frame=frame)
    polygon = shapely.Polygon(made.out.glass)
    assert polygon.is_valid
    assert made.out.glass_area_mm2 == pytest.approx(polygon.area, rel=1e-6)
    whole = shapely.Polygon(placed(head=HEADS[kind], frame=0.0).out.glass)
    # Mitred, so that corners stay corners; chords of the outline lie inside the arc by far less than the tolerance.
    inset = whole.buffer(-frame, join_style="mitre", mitre_limit=100) if frame else whole
    assert polygon.area == pytest.approx(inset.area, rel=1e-5)
    assert polygon.symmetric_difference(inset).area < 1e-5 * inset.area


@pytest.mark.parametrize("kind", ["segmental", "half-round"])
def test_arcs_have_at_least_512_segments_a_quarter(kind: str) -> None:
    made = placed(head=HEADS[kind])
    shape = made.glass
    arc = [point for point in made.out.glass if point[1] > shape.left_top_mm - 1e-9]
    turn = 2 * math.asin((shape.right_mm - shape.left_mm) / 2 / shape.radius_mm)
    assert (len(arc) - 1) / (turn / (math.pi / 2)) >= 512 - 1e-6
    for x, y in arc:
        assert math.hypot(x - shape.centre_x_mm, y - shape.centre_y_mm) == pytest.approx(shape.radius_mm, abs=1e-6)


SPANS = [
    (0, 500),
    (900, 1100),
    (1050, 1051),
    (1200, 1600),
    (1000, 1900),
    (1450, 1450),
    (1700, 3000),
    (1849, 1900),
    (1500, 1400),
]


@pytest.mark.parametrize("kind", HEADS)
@pytest.mark.parametrize(("left", "right"), SPANS)
def test_covered_glass_agrees_with_clipped_polygons(kind: str, left: float, right: float) -> None:
    made = placed(head=HEADS[kind])
    strip = shapely.box(left, 0, max(right, left), 5000)
    expected = shapely.Polygon(made.out.glass).intersection(strip).area
    assert heads.area_between(made.glass, left, right) == pytest.approx(
        expected, rel=1e-6, abs=1e-6 * made.out.glass_area_mm2
    )


@pytest.mark.parametrize("kind", HEADS)
def test_parts_of_glass_add_up(kind: str) -> None:
    made = placed(head=HEADS[kind])
    cuts = [0.0, 1010.0, 1051.0, 1123.4, 1450.0, 1451.0, 1799.0, 1850.0, 2500.0]
    parts = sum(heads.area_between(made.glass, a, b) for a, b in itertools.pairwise(cuts))
    assert parts == pytest.approx(made.out.glass_area_mm2, rel=1e-12)


@pytest.mark.parametrize("kind", HEADS)
def test_the_head_bounds_what_is_said_of_it(kind: str) -> None:
    out = placed(head=HEADS[kind]).out
    assert out.glass_top_mm == pytest.approx(max(y for _, y in out.glass), abs=1e-6)
    assert out.glass_left_mm == pytest.approx(min(x for x, _ in out.glass))
    assert out.glass_top_mm <= out.top_mm - 50 + 1e-9
    assert out.casing_top_mm >= out.top_mm + 90 - 1e-9


def test_tops_of_a_raked_head() -> None:
    up = placed(head=HEADS["raked-up"]).out
    assert (up.left_top_mm, up.right_top_mm, up.top_mm) == (2200, 2700, 2700)
    # The casing's upper edge runs 90 mm off the head, square to it; its outer corner is where that meets the outer side,
    # 90 mm beyond the jamb: half the angle between upright and slope, by the tangent of that half.
    lean = math.atan2(500, 900)
    assert up.casing_top_mm == pytest.approx(2700 + 90 * math.tan((lean + math.pi / 2) / 2))
    down = placed(head=HEADS["raked-down"]).out
    assert down.casing_top_mm - down.top_mm == pytest.approx(
        90 * math.tan((math.atan2(down.left_top_mm - down.right_top_mm, 900) + math.pi / 2) / 2)
    )
    assert placed(head=HEADS["flat"]).out.casing_top_mm == pytest.approx(placed(head=HEADS["flat"]).out.top_mm + 90)


def test_no_glass_where_the_frame_takes_all() -> None:
    for head in HEADS.values():
        out = placed(frame=500.0, head=head).out
        assert out.glass_area_mm2 == 0.0
        assert out.glass == ()


@pytest.mark.parametrize(
    ("sash", "reveal", "boxes"),
    [
        (Sash(), None, ()),
        (Sash(kind="double-hung"), None, ()),
        (Sash(kind="casement-out"), None, ()),
        (Sash(kind="casement-in"), None, ((1000, 800, 1900, 2200, 900),)),
        (Sash(kind="casement-in", hinge="both"), None, ((1000, 800, 1900, 2200, 450),)),
        (Sash(kind="casement-in"), 120, ((1000, 800, 1900, 2200, 780),)),
        (Sash(kind="tilt-in"), 100, ((1000, 800, 1900, 2200, 250),)),
        # What ends in the reveal reaches out a negative way: a quarter of 1400 less 400.
        (Sash(kind="tilt-in"), 400, ((1000, 800, 1900, 2200, -50),)),
        (Sash(kind="casement-in"), 1000, ((1000, 800, 1900, 2200, -100),)),
        # A handle 30 out from a sash that hangs 100 back ends 70 behind the wall's face.
        (Sash(handle_stands=mm(30)), 100, ((1000, 800, 1900, 2200, -70),)),
        # Measured from the wall's face, it is that.
        (Sash(handle_stands=mm(130), handle_out=mm(25)), 100, ((1000, 800, 1900, 2200, 25),)),
        (Sash(kind="fixed", handle_out=mm(40)), None, ((1000, 800, 1900, 2200, 40),)),
        (Sash(kind="casement-out", hinge="left", handle_out=mm(40)), None, ((1798.4, 800, 1900, 2200, 40),)),
        (Sash(kind="casement-out", hinge="right", handle_out=mm(40)), None, ((1000, 800, 1101.6, 2200, 40),)),
        (
            Sash(kind="swing-in", hinge="left", handle_out=mm(60)), None,
            ((1000, 800, 1900, 2200, 900), (1798.4, 800, 1900, 2200, 60)),
        ),
    ],
)  # fmt: skip
def test_what_a_sash_sweeps(sash: Sash, reveal: float | None, boxes: tuple[tuple[float, ...], ...]) -> None:
    made = placed(sash=sash, reveal=None if reveal is None else mm(reveal))
    assert len(made.out.sweep) == len(boxes)
    for got, wanted in zip(made.out.sweep, boxes, strict=True):
        assert got == pytest.approx(wanted)


def test_a_line_is_level_beyond_its_ends() -> None:
    line = ((100.0, 10.0), (200.0, 30.0))
    assert [line_at(line, x) for x in (0.0, 100.0, 150.0, 200.0, 300.0)] == [10.0, 10.0, 20.0, 30.0, 30.0]


def test_where_no_glass_is_all_of_it_is_clear() -> None:
    assert clear_beside([], [], 0.0) == 1.0
