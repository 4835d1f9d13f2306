import math

import pytest
from shapely.geometry import Polygon

from elevation.setting_out.model import Profile
from elevation.sheet import paths
from elevation.sheet.draw_sash import glass_path
from elevation.sheet.paths import head_at, opening_path
from tests.sheet.draw_cases import HEADS, IN, make_opening, mirrored_opening


def flattened(steps, pieces=64):
    """Points along the steps, cubics by their Bernstein polynomials."""
    points = []
    for step in steps:
        if step[0] == "Z":
            continue
        numbers = [float(part) for part in step[1:]]
        if step[0] == "C":
            x0, y0 = points[-1]
            x1, y1, x2, y2, x3, y3 = numbers
            for index in range(1, pieces + 1):
                t = index / pieces
                u = 1 - t
                a, b, c, d = u**3, 3 * u * u * t, 3 * u * t * t, t**3
                points.append((a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3))
        else:
            points.append((numbers[0], numbers[1]))
    return points


@pytest.mark.parametrize(("start", "end"), [(0.0, math.pi / 2), (0.3, 2.9), (math.pi, 0.0), (0.0, math.tau)])
def test_arcs_keep_to_the_circle(start, end):
    steps = (("M", 5 + 100 * math.cos(start), 7 + 100 * math.sin(start)), *paths.arc(5, 7, 100.0, start, end))
    for x, y in flattened(steps):
        # A quarter circle by one cubic departs by at most 2.73e-4 of the radius (known result, from memory).
        assert math.hypot(x - 5, y - 7) == pytest.approx(100.0, abs=0.0275)


def test_ellipses_and_round_corners_stay_inside_their_bounds():
    assert paths.bounds(paths.ellipse(10, 20, 3, 8)) == (7, 12, 13, 28)
    assert paths.bounds(paths.rounded(0, 0, 50, 30, 400)) == (0, 0, 50, 30)


@pytest.mark.parametrize("head", HEADS)
@pytest.mark.parametrize("grow", [-50.8, 0.0, 88.9])
def test_every_head_closes(head, grow):
    steps = opening_path(make_opening(head=head), grow)
    assert steps[0][0] == "M"
    assert steps[-1] == ("Z",)
    shape = Polygon(flattened(steps))
    assert shape.is_valid
    assert shape.area > 0


@pytest.mark.parametrize("head", HEADS)
def test_the_glass_drawn_is_the_glass_set_out(head):
    # The drawing's outline and the set-out's polygon are made by different formulas; they agree.
    opening = make_opening(head=head)
    drawn, set_out = Polygon(flattened(glass_path(opening))), Polygon(opening.glass)
    assert drawn.area == pytest.approx(set_out.area, rel=3e-4)
    assert drawn.symmetric_difference(set_out).area < 5e-4 * set_out.area


def test_a_lunette_whose_glass_is_cut_above_its_springing_closes():
    opening = make_opening(head="half-round", width=900.0, height=450.0, sill=1500.0)
    drawn, set_out = Polygon(flattened(glass_path(opening))), Polygon(opening.glass)
    assert drawn.is_valid
    assert drawn.area == pytest.approx(set_out.area, rel=1e-3)


@pytest.mark.parametrize("head", ["segmental", "half-round"])
def test_casing_follows_the_arc_at_one_width(head):
    opening = make_opening(head=head)
    half = (opening.right_mm - opening.left_mm) / 2
    radius = (half**2 + opening.rise_mm**2) / (2 * opening.rise_mm)
    centre = ((opening.left_mm + opening.right_mm) / 2, opening.top_mm - radius)
    outer = [p for p in flattened(opening_path(opening, 3.5 * IN)) if p[1] > opening.top_mm - opening.rise_mm + 200]
    for point in outer:
        assert math.dist(point, centre) == pytest.approx(radius + 3.5 * IN, rel=3e-4)


def test_casing_of_a_raked_head_is_one_width_across_the_slope():
    opening = make_opening(head="raked")
    inner, outer = opening_path(opening), opening_path(opening, 88.9)
    (x1, y1), (x2, y2) = inner[1][1:], inner[2][1:]
    length = math.hypot(x2 - x1, y2 - y1)
    for x, y in (outer[1][1:], outer[2][1:]):
        away = abs((x2 - x1) * (y1 - y) - (x1 - x) * (y2 - y1)) / length
        assert away == pytest.approx(88.9)


@pytest.mark.parametrize("head", HEADS)
def test_the_head_reaches_its_crown_and_no_higher(head):
    opening = make_opening(head=head)
    places = [opening.left_mm + (opening.right_mm - opening.left_mm) * i / 200 for i in range(201)]
    assert max(head_at(opening, x, 0.0) for x in places) == pytest.approx(opening.top_mm)


@pytest.mark.parametrize("head", HEADS)
def test_a_mirrored_opening_has_the_mirrored_outline(head):
    width = 146 * IN
    opening = make_opening(head=head)
    here = Polygon(flattened(opening_path(opening, 88.9)))
    there = Polygon([(width - x, y) for x, y in flattened(opening_path(mirrored_opening(opening, width), 88.9))])
    assert here.symmetric_difference(there).area < 1e-6 * here.area


def test_profiles_are_straight_between_points_and_level_beyond():
    profile = Profile(((0.0, 0.0), (1000.0, 10.0), (2000.0, -10.0)))
    assert paths.height_at(profile, -50) == 0.0
    assert paths.height_at(profile, 500) == pytest.approx(5.0)
    assert paths.height_at(profile, 9000) == -10.0
    assert paths.along(profile, 500.0, 1500.0) == ((500.0, 5.0), (1000.0, 10.0), (1500.0, 0.0))
