"""Leaves that turn with what hangs on them, against shapely's own rotation of the same bodies."""

from __future__ import annotations

import pytest
import shapely
from shapely import affinity

from elevation.setting_out.leaves import Leaf, Load, opens_to, swept


def turns_to(load: Load, wide: float, reveal: float) -> float:
    """How far a body on a leaf turns before it meets the jamb: shapely turns it, a tenth of a degree at a time."""
    body = shapely.box(load.near_mm, load.back_mm, wide, load.out_mm)
    jamb = shapely.box(-500.0, 0.0, 0.0, reveal)
    for tenth in range(1, 901):
        # In the leaf's own frame the jamb turns the other way; here the leaf turns into the room, anticlockwise.
        if affinity.rotate(body, tenth / 10, origin=(0.0, 0.0)).intersection(jamb).area > 1e-3:
            return tenth / 10
    return 90.0


@pytest.mark.parametrize(
    ("near", "back", "out", "reveal"),
    [
        (10.0, 20.0, 45.0, 60.0),  # all of the rod's end passes within the reveal
        (10.0, 20.0, 90.0, 60.0),  # its front passes farther out
        (30.0, 70.0, 95.0, 60.0),  # all of it passes farther out, and comes down on the jamb's edge
        (59.0, 20.0, 45.0, 60.0),
        (60.0, 20.0, 45.0, 60.0),
        (80.0, 20.0, 45.0, 60.0),
        (10.0, 20.0, 45.0, 0.0),
    ],
)
def test_a_leaf_opens_until_what_hangs_on_it_meets_the_jamb(near: float, back: float, out: float, reveal: float) -> None:
    load = Load(near, back, out, 0.0, 1000.0)
    assert opens_to(load, reveal) == pytest.approx(turns_to(load, 600.0, reveal), abs=0.15)


@pytest.mark.parametrize("way", [1.0, -1.0])
@pytest.mark.parametrize("reveal", [0.0, 120.0])
def test_what_a_loaded_leaf_sweeps(way: float, reveal: float) -> None:
    leaf, load = Leaf(400.0, way, 600.0), Load(30.0, 20.0, 70.0, 0.0, 1000.0)
    outline = shapely.Polygon(swept(leaf, reveal, load))
    x = sorted((400.0, 400.0 + way * 600.0))
    body = shapely.box(x[0], -reveal, x[1], 70.0 - reveal)
    turned = [affinity.rotate(body, way * degrees, origin=(400.0, -reveal)) for degrees in range(91)]
    assert all(outline.buffer(1e-6).contains(one) for one in turned)
    # Nothing is swept that the body does not reach, but for the straight pieces around the arc.
    assert outline.area <= shapely.union_all(turned).area * 1.005
    assert outline.convex_hull.area == pytest.approx(outline.area)
