"""The measure of difference itself: it must find what it is there to find."""

import numpy as np
import pytest

from tests.cross.rasters import share_different, share_displaced


@pytest.fixture
def page():
    made = np.full((100, 100, 3), 240, dtype=np.uint8)
    made[20:40, 20:40] = (40, 60, 80)
    return made


def test_the_same_picture_does_not_differ(page):
    assert share_different(page, page) == 0
    assert share_displaced(page, page) == 0


@pytest.mark.parametrize(("by", "share"), [(16, 0.0), (17, 0.04)])
def test_a_colour_counts_from_seventeen_steps_in_one_channel(page, by, share):
    other = page.copy()
    other[20:40, 20:40, 1] += by
    assert share_different(page, other) == share
    assert share_displaced(page, other) == pytest.approx(share)


def test_an_edge_may_move_by_one_pixel_and_not_by_two(page):
    one, three = np.roll(page, 1, axis=1), np.roll(page, 3, axis=1)
    assert share_different(page, one) == 0.004
    assert share_displaced(page, one) == 0
    assert share_displaced(page, three) > 0.004


def test_a_line_that_is_missing_counts(page):
    other = page.copy()
    other[70] = 0
    assert share_different(page, other) == 0.01
    assert share_displaced(page, other) == 0.01
    assert share_displaced(other, page) == 0.01
