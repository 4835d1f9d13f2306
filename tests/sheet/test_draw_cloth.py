import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import Polygon

from elevation.setting_out.model import Profile
from elevation.sheet import inks
from elevation.sheet.cloth import bunched_share, depth_share
from elevation.sheet.draw_cloth import cloth_records, outline_path
from elevation.sheet.draw_drape import hang, valley
from elevation.sheet.draw_pool import pool_records
from elevation.sheet.paths import bounds
from elevation.sheet.records import Fill, Gradient, Path
from tests.sheet.draw_cases import IN, make_panel
from tests.sheet.test_draw_paths import flattened

LEVEL = Profile(((0.0, 0.0),))
BODIES = ("sheer", "light", "medium", "lined", "interlined")


def drape_of(left=0.0, width=900.0, folds=9, body="light", colour="#b9704a", heading="rings", floor=LEVEL, **facts):
    span = (left, left + width)
    panel = make_panel("p1", "left", span, span, span, 2200.0, folds=folds, **facts)
    return panel, hang(panel, span, heading, colour, body, floor)


def wash_of(drape):
    fill = next(r for r in cloth_records(drape)[1:] if isinstance(r, Fill))
    assert isinstance(fill.paint, Gradient)
    return fill.paint


@pytest.mark.parametrize("width", [114.3, 400.0, 900.0, 1290.0])
@pytest.mark.parametrize("folds", [1, 4, 9, 15, 16, 27, 40])
def test_there_are_as_many_folds_as_the_set_out_says(width, folds):
    _, drape = drape_of(width=width, folds=folds, flat_width_mm=1.5 * width + 60 * folds)
    assert len(drape.valleys_top) == folds + 1
    # Seen as light and shade: one crest of light a fold.
    lights = [inks.lightness(stop.colour) for stop in wash_of(drape).stops]
    crests = sum(1 for a, b, c in zip(lights, lights[1:], lights[2:], strict=False) if b >= a and b > c and b > a - 1e-9)
    assert crests == folds
    # And as lines: one between each two folds.
    lines = [r for r in cloth_records(drape) if isinstance(r, Path) and r.steps[0][2:] == (2200.0,)]
    drawn = sum(step[0] == "M" for step in lines[0].steps) if folds > 1 else 0
    assert drawn == folds - 1


@given(
    left=st.floats(-500, 5000), width=st.floats(20, 4000), folds=st.integers(1, 60),
    body=st.sampled_from(BODIES), over=st.floats(1.0, 14.0), heading=st.sampled_from(["rings", "pinch", "eyelets"]),
)  # fmt: skip
def test_the_outline_stays_between_the_panels_edges(left, width, folds, body, over, heading):
    _, drape = drape_of(left, width, folds, body, heading=heading, flat_width_mm=over * width)
    points = flattened(outline_path(drape), 12)
    assert min(x for x, _ in points) >= left - 1e-6
    assert max(x for x, _ in points) <= left + width + 1e-6
    assert max(y for _, y in points) <= 2200.0 + 1e-6
    assert min(y for _, y in points) >= 0.5 * IN - 1e-6
    assert all(a <= b for a, b in pairwise(drape.valleys_foot))
    stops = wash_of(drape).stops
    assert all(a.at < b.at for a, b in pairwise(stops))
    assert stops[0].at == 0.0
    assert stops[-1].at == pytest.approx(1.0)


@given(folds=st.integers(2, 40), over=st.floats(1.05, 12.0), body=st.sampled_from(BODIES))
def test_valleys_never_cross(folds, over, body):
    _, drape = drape_of(folds=folds, flat_width_mm=900 * over, body=body)
    for index in range(folds):
        near, far = valley(drape, index), valley(drape, index + 1)
        assert all(a[0] < b[0] for a, b in zip(near, far, strict=True))


def test_the_hem_hangs_to_its_line_in_the_middle_of_each_fold_and_rises_between():
    _, drape = drape_of()
    points = [p for p in flattened(outline_path(drape), 32) if p[1] < 200]
    assert min(y for _, y in points) == pytest.approx(0.5 * IN, abs=0.3)
    assert drape.lift_mm > 0
    for x in drape.valleys_foot[1:-1]:
        y = min(points, key=lambda p: abs(p[0] - x))[1]
        assert y == pytest.approx(0.5 * IN + drape.lift_mm, abs=0.3)


def test_the_hem_follows_a_floor_that_is_out_of_level():
    hem = ((0.0, 20.0), (900.0, 50.0))
    span = (0.0, 900.0)
    panel = replace(make_panel("p1", "left", span, span, span, 2200.0, folds=6), hem=hem)
    drape = hang(panel, (0.0, 900.0), "rings", "#b9704a", "light", LEVEL)
    for x, y in zip(drape.valleys_foot, drape.foot, strict=True):
        assert y == pytest.approx(20.0 + 30.0 * x / 900.0)


def test_cloth_never_goes_below_the_floor():
    floor = Profile(((0.0, 0.0), (900.0, 60.0)))
    panel, drape = drape_of(hem=-120.0, floor=floor, target_gap_mm=-120.0)
    for record in pool_records(panel, drape, floor):
        for x, y in flattened(record.steps, 8):
            assert y >= 60.0 * min(max(x, 0.0), 900.0) / 900.0 - 8.0
    assert min(drape.foot) >= 0.0


def test_a_fold_keeps_its_own_wandering_while_it_is_drawn():
    # In folds, a valley stands at the same place at every width: a drag moves cloth and does not make it shimmer.
    shares = []
    for width in (700.0, 705.0, 900.0):
        _, drape = drape_of(width=width)
        shares.append([(x - drape.left_mm) / drape.pitch_mm for x in drape.valleys_foot])
    assert shares[0] == pytest.approx(shares[1])
    assert shares[0] == pytest.approx(shares[2])


def test_shade_deepens_as_cloth_is_gathered():
    depths = [depth_share(over) for over in (1.0, 1.1, 1.5, 2.0, 3.0, 8.0)]
    assert depths == sorted(depths)
    assert depths[0] < 0.2
    assert depths[-1] > 0.9
    assert bunched_share(2.5) == 0.0
    assert bunched_share(12.0) == 1.0

    def spread(over):
        _, drape = drape_of(flat_width_mm=900 * over)
        lights = [inks.lightness(stop.colour) for stop in wash_of(drape).stops]
        return max(lights) - min(lights)

    assert spread(1.05) < spread(1.5) < spread(2.5)


def test_light_falls_from_the_left():
    _, drape = drape_of(folds=1)
    lights = [(stop.at, inks.lightness(stop.colour)) for stop in wash_of(drape).stops]
    left = max(light for at, light in lights if at < 0.5)
    right = max(light for at, light in lights if at > 0.6)
    assert left > right


@pytest.mark.parametrize("colour", ["#ffffff", "#000000", "#b9704a", "#0000ff", "#f2e9d8"])
@pytest.mark.parametrize("body", BODIES)
def test_any_colour_shows_its_folds(colour, body):
    _, drape = drape_of(colour=colour, body=body, flat_width_mm=1500.0)
    stops = wash_of(drape).stops
    assert len({stop.colour for stop in stops}) >= 4
    is_clear = all(len(stop.colour) == 9 and stop.colour[7:] != "ff" for stop in stops)
    assert is_clear is (body == "sheer")


@pytest.mark.parametrize("extra", [0.5 * IN, 2 * IN, 8 * IN])
def test_spare_cloth_lies_on_the_floor_and_more_of_it_spreads_wider(extra):
    panel, drape = drape_of(hem=0.0, target_gap_mm=-extra)
    records = pool_records(panel, drape, LEVEL)
    assert records
    left, bottom, right, top = bounds([step for r in records for step in r.steps if step[0] != "Z"])
    assert bottom == pytest.approx(0.0, abs=1e-6)
    assert left < 0.0
    assert right > 900.0
    assert right - 900.0 <= 90.0
    assert top < 400.0


def test_a_hem_that_hangs_free_has_no_pool():
    panel, drape = drape_of()
    assert pool_records(panel, drape, LEVEL) == []


@pytest.mark.parametrize("folds", [1, 9, 27, 60, 200])
def test_a_panel_is_few_records(folds):
    for over in (1.3, 9.0):
        _, drape = drape_of(width=2400.0, folds=folds, flat_width_mm=2400.0 * over)
        assert len(cloth_records(drape)) <= 56


def test_strokes_lie_within_the_outline():
    _, drape = drape_of(flat_width_mm=1300.0)
    outline = Polygon(flattened(outline_path(drape), 24)).buffer(1.0)
    strokes = [r for r in cloth_records(drape)[2:] if isinstance(r, Fill) and isinstance(r.paint, str)]
    assert len(strokes) > 9
    for record in strokes:
        shape = Polygon(flattened(record.steps, 24)).buffer(0)
        assert shape.difference(outline).area < 0.02 * shape.area + 1.0
        assert math.isfinite(shape.area)
