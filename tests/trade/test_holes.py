"""Where a bracket's screws go."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput
from elevation.trade.cells import offsets
from elevation.trade.tables import load_trade


@pytest.mark.parametrize(
    ("cell", "found"), [("none", ()), ("1 in; -2 in", (25.4, -50.8)), ("15 mm;-45 mm", (15.0, -45.0)), ("0 in", (0.0,))]
)
def test_offsets_are_read_with_their_side(cell, found):
    assert offsets(cell) == pytest.approx(found)


@pytest.mark.parametrize("cell", ["", "1", "1 in;", "1 in; two"])
def test_a_bad_offset_is_refused(cell):
    with pytest.raises(BadInput):
        offsets(cell)


def test_every_hole_is_inside_its_plate():
    for row in load_trade().brackets.values():
        low, high = -row.plate_below_mm, row.plate_above_mm
        if row.mount == "ceiling":
            low, high = -row.plate_width_mm / 2, row.plate_width_mm / 2
        assert all(low < hole < high for hole in row.holes_mm)
        assert bool(row.holes_mm) is (row.mount != "layer")
