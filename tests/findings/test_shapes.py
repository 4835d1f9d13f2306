"""Plain geometry under the rules, by hand: profiles, casing bands, corners, parts of a rod."""

from __future__ import annotations

from math import sqrt

import pytest
from msgspec.structs import replace

from elevation.findings.looking import layer_at, panel_at
from elevation.findings.shapes import (
    casing_top,
    cloth_back,
    corner_room,
    extremes,
    height_at,
    lowest_under_ceiling,
    meet,
    on_casing,
    rod_rects,
    shared,
    top_name,
    way,
)
from elevation.setting_out.model import OpeningOut, Profile
from tests.findings.rooms import LAYER, LEFT_PANEL, good_room, scene

LINE = Profile(((100.0, 10.0), (200.0, 30.0), (200.0, 50.0), (400.0, 0.0)))
"""Level, a rise, a step up at 200, a fall, level."""
NEAR = 0.01
"""More than what counts as touching, mm."""


@pytest.mark.parametrize(
    ("x", "height"), [(0, 10), (100, 10), (150, 20), (200, 30), (220, 45), (300, 25), (400, 0), (900, 0)]
)
def test_a_profile_is_straight_between_its_points_and_level_beyond(x, height) -> None:
    assert height_at(LINE, x) == pytest.approx(height)


def test_a_profile_without_points_is_the_level_line() -> None:
    assert height_at(Profile(()), 5.0) == 0.0


@pytest.mark.parametrize(
    ("left", "right", "least", "most"), [(0, 100, 10, 10), (120, 180, 14, 26), (150, 300, 20, 50), (300, 900, 0, 25)]
)
def test_extremes_are_at_the_ends_or_at_points_between(left, right, least, most) -> None:
    assert extremes(LINE, left, right) == pytest.approx((least, most))


def test_solids_that_only_touch_do_not_meet() -> None:
    here = (0.0, 0.0, 10.0, 20.0)
    for other in ((10.0, 0.0, 30.0, 20.0), (-9.0, 0.0, 0.0, 20.0), (0.0, 20.0, 10.0, 30.0), (0.0, -5.0, 10.0, 0.0)):
        assert not meet(here, other)
    for other in (
        (10.0 - NEAR, 0.0, 30.0, 20.0),
        (-9.0, 0.0, NEAR, 20.0),
        (0.0, 20.0 - NEAR, 10.0, 30.0),
        (0.0, -5.0, 10.0, NEAR),
    ):
        assert meet(here, other)
        assert meet(other, here)
    assert shared(here, (7.0, 4.0, 30.0, 9.0)) == 3.0
    assert shared(here, (1.0, 18.0, 9.0, 40.0)) == 2.0
    assert shared(here, (-50.0, 3.0, 4.0, 12.0)) == 4.0
    assert shared((5.0, 5.0, 25.0, 25.0), (7.0, -30.0, 20.0, 6.0)) == 1.0
    assert shared((5.0, 5.0, 25.0, 25.0), (24.0, 7.0, 40.0, 20.0)) == 1.0


def test_the_ceiling_is_lowest_in_the_middle_at_an_end_or_at_a_point() -> None:
    laid = scene(good_room()).set_out
    support = replace(layer_at(scene(good_room()), LAYER).support, left_mm=1000.0, right_mm=2000.0)

    def lowest(*points: tuple[float, float]) -> float:
        return lowest_under_ceiling(replace(laid, ceiling=Profile(points)), support)

    assert lowest((0.0, 2400.0)) == 1500.0
    assert lowest((0.0, 2000.0), (3000.0, 2600.0)) == 1000.0
    assert lowest((0.0, 2600.0), (3000.0, 2000.0)) == 2000.0
    assert lowest((0.0, 2600.0), (1700.0, 2000.0), (3000.0, 2600.0)) == 1700.0
    # A point beyond the rod's end is none of its business.
    assert lowest((0.0, 2600.0), (2500.0, 2000.0), (3000.0, 2600.0)) == 2000.0


def opening(**fields: object) -> OpeningOut:
    """The good room's window, or one like it: clear opening 1000..2000 by 800..2000, casing 50."""
    facts: dict[str, object] = {
        "left_mm": 1000.0,
        "right_mm": 2000.0,
        "bottom_mm": 800.0,
        "top_mm": 2000.0,
        "left_top_mm": 2000.0,
        "right_top_mm": 2000.0,
        "casing_mm": 50.0,
        "casing_top_mm": 2050.0,
        "apron_mm": 0.0,
    }
    return replace(scene(good_room()).set_out.openings[0], **{**facts, **fields})


def test_the_highest_of_several_openings_gives_the_top_its_name() -> None:
    low, high = opening(), opening(casing_mm=0.0, casing_top_mm=2100.0)
    for both in ((low, high), (high, low)):
        assert casing_top(both) == 2100.0
        assert top_name(both).template == "the opening"
    assert top_name((low, opening(casing_mm=0.5, casing_top_mm=2100.0))).template == "the casing"
    assert casing_top(()) is None


def small(x: float, y: float) -> tuple[float, float, float, float]:
    """A plate 20 mm square whose lower left corner is there."""
    return (x, y, x + 20.0, y + 20.0)


@pytest.mark.parametrize(
    ("x", "y", "meets"),
    [
        # Square band all round: it only touches at 930, 2050 and 2050, and meets within.
        (930, 1500, False),
        (930 + NEAR, 1500, True),
        (2050, 1500, False),
        (2050 - NEAR, 1500, True),
        (1500, 2050, False),
        (1500, 2050 - NEAR, True),
        (931, 2049, True),
    ],
)
def test_the_band_of_a_flat_head_is_square(x, y, meets) -> None:
    assert on_casing(opening(), small(x, y)) is meets


def test_a_window_has_its_apron_and_a_door_has_none() -> None:
    window, door = opening(apron_mm=100.0), opening(apron_mm=100.0, kind="door")
    assert on_casing(window, small(1500, 680 + NEAR))
    assert not on_casing(window, small(1500, 680))
    assert not on_casing(door, small(1500, 700))
    assert on_casing(door, small(1500, 780 + NEAR))


ROUND = {"head": "half-round", "rise_mm": 500.0, "top_mm": 2000.0, "left_top_mm": 1500.0, "right_top_mm": 1500.0}
"""Half a circle of radius 500 over springings at 1500: the band's outer radius is 550 around (1500, 1500)."""


def test_the_band_round_an_arc_is_concentric() -> None:
    arched = opening(**ROUND)
    along = 550 / sqrt(2)  # at 45 degrees up to the right; the plate's nearest corner is its lower left one
    assert on_casing(arched, small(1500 + along - NEAR, 1500 + along - NEAR))
    assert not on_casing(arched, small(1500 + along + NEAR, 1500 + along + NEAR))
    # The same to the left: the nearest corner is the lower right one.
    assert on_casing(arched, small(1500 - along - 20 + NEAR, 1500 + along - NEAR))
    assert not on_casing(arched, small(1500 - along - 20 - NEAR, 1500 + along + NEAR))
    # Over the crown, beside the middle by less than the plate: straight up.
    assert on_casing(arched, small(1490, 2050 - NEAR))
    assert not on_casing(arched, small(1490, 2050))
    # Beside the jambs, under the springing, the band is straight again, up to its very edge.
    assert on_casing(arched, small(930 + NEAR, 1400))
    assert on_casing(arched, small(2050 - NEAR, 1495))
    # A flat segment: rise 0 is no arc at all.
    assert on_casing(opening(head="segmental", rise_mm=0.0), small(931, 2049))


def test_the_band_along_a_raked_head_is_square_to_its_slope() -> None:
    # Rises 750 over 1000: a slope of 3 in 4, on which a band of 50 square to it stands 50 * 5/4 = 62.5 high.
    raked = opening(head="raked", left_top_mm=1250.0, right_top_mm=2000.0, casing_top_mm=2000.0 + 62.5 + 0.75 * 50)
    # A plate's lower right corner comes nearest on a slope up to the right: at x 1500 the band's top is at 1687.5.
    assert on_casing(raked, small(1480, 1687.5 - NEAR))
    assert not on_casing(raked, small(1480, 1687.5))
    # The other way round, mirrored about 1500.
    other = replace(raked, left_top_mm=2000.0, right_top_mm=1250.0)
    assert on_casing(other, small(1500, 1687.5 - NEAR))
    assert not on_casing(other, small(1500, 1687.5))
    # Beyond the clear opening the slope runs on to the casing's edge, and no farther: 2050 has 2100.
    assert on_casing(raked, small(2040, 2100 - NEAR))
    assert not on_casing(raked, small(2040, 2100))
    assert on_casing(other, small(940, 2100 - NEAR))
    assert not on_casing(other, small(940, 2100))


def test_a_corner_that_leans_over_takes_room_from_the_rod() -> None:
    # At 45 degrees the neighbour wall stands as far in as it is deep; at 135 it makes room, least at the back.
    assert corner_room(90.0, 30.0, 80.0) == 0.0
    assert corner_room(45.0, 30.0, 80.0) == pytest.approx(80.0)
    # tan 60 degrees is the square root of 3.
    assert corner_room(60.0, 30.0, 80.0) == pytest.approx(80 / sqrt(3))
    assert corner_room(135.0, 30.0, 80.0) == pytest.approx(-30.0)


def test_the_parts_of_a_rod_and_how_deep_they_stand() -> None:
    support = replace(
        layer_at(scene(good_room()), LAYER).support,
        left_mm=1000.0,
        right_mm=2000.0,
        metal_left_mm=940.0,
        metal_right_mm=2060.0,
        height_mm=2100.0,
        diameter_mm=20.0,
        finial_diameter_mm=50.0,
        projection_mm=80.0,
        left_ends="",
        right_ends="",
        carried=(False, False),
    )
    rod, left, right = rod_rects(support)
    assert rod == ("rod", (1000.0, 2090.0, 2000.0, 2110.0), 70.0, 90.0)
    assert left == ("end", (940.0, 2075.0, 1000.0, 2125.0), 55.0, 105.0)
    assert right == ("end", (2000.0, 2075.0, 2060.0, 2125.0), 55.0, 105.0)
    # Bent back to the wall it reaches it; in a socket on a side wall it does not.
    bent = replace(support, carried=(True, True))
    assert [part[2] for part in rod_rects(bent)] == [70.0, 0.0, 0.0]
    held = replace(bent, left_ends="socket", right_ends="socket")
    assert [part[2] for part in rod_rects(held)] == [70.0, 55.0, 55.0]
    # Bare ends are no parts of their own; a thin end is as thick as the rod.
    bare = replace(support, metal_left_mm=1000.0, metal_right_mm=2000.0)
    assert len(rod_rects(bare)) == 1
    thin = rod_rects(replace(support, finial_diameter_mm=6.0))[1]
    assert thin[1][1:4:2] == (2090.0, 2110.0)


def test_the_way_and_the_back_of_a_panel() -> None:
    here = scene(good_room())
    layer, panel = layer_at(here, LAYER), panel_at(here, LEFT_PANEL)
    shown = replace(panel, open=(100.0, 200.0), closed=(90.0, 700.0), fold_depth_mm=60.0)
    assert way(shown) == (90.0, 700.0)
    assert way(replace(shown, open=(600.0, 750.0))) == (90.0, 750.0)
    assert cloth_back(replace(layer, support=replace(layer.support, projection_mm=90.0)), shown) == 60.0
