"""A rod that the tape found out of level is drawn along its readings, and its cloth with it."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.model import Built, Hem
from elevation.setting_out.profile import height_at
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.drawing import View, draw_treatment
from elevation.sheet.records import Fill
from elevation.trade import load_trade
from tests.setting_out.rooms import INCH, inch, room, treatment

TRADE = load_trade()


def hung(left, middle, right, **more):
    """The usual pair on a rod whose underside was read that many inches over the floor; none: as planned."""
    made = treatment(hem=Hem("clear", inch(0.5)))
    built = Built(*(None if reading is None else inch(reading) for reading in (left, middle, right)))
    layer = replace(made.layers[0], built=built)
    out = set_out_afresh(room(None, [replace(made, layers=(layer,))], **more), "a", "s", TRADE)
    return out, out.treatments[0]


def drawn(out, laid, layer):
    groups = draw_treatment(laid, out.floor, TRADE, View("open", False))
    return [group for group in groups if group.layer == layer]


def points(records):
    """All points of areas: ends of straight and curved steps."""
    return [
        (step[-2], step[-1]) for record in records if isinstance(record, Fill) for step in record.steps if len(step) > 2
    ]


def axis_at(records, x, near=2.0):
    """Middle of the tube at ``x``: worked out from the straight edges of what is drawn."""
    found = [y for px, y in points(records) if abs(px - x) <= near]
    return (max(found) + min(found)) / 2


@pytest.mark.parametrize("fall", [2.0, -2.0])
def test_the_tube_leans_as_it_was_read(fall):
    out, laid = hung(90.0, None, 90.0 - fall)
    layer = laid.layers[0]
    assert layer.support.line is not None
    (rod,) = drawn(out, laid, "rod")
    left, right = layer.support.cut_left_mm, layer.support.cut_right_mm
    # Between the end brackets, 52 in apart, it falls by ``fall``; past them it goes on level.
    assert axis_at(rod.records, left) - axis_at(rod.records, right) == pytest.approx(fall * INCH, abs=0.5)
    for bracket in layer.brackets:
        assert bracket.height_mm == pytest.approx(height_at(layer.support.line, bracket.x_mm))


def test_a_reading_in_the_middle_bends_it():
    out, laid = hung(90.0, 89.0, 90.0)
    (rod,) = drawn(out, laid, "rod")
    support = laid.layers[0].support
    middle = (laid.layers[0].brackets[0].x_mm + laid.layers[0].brackets[-1].x_mm) / 2
    assert axis_at(rod.records, middle) == pytest.approx(axis_at(rod.records, support.cut_left_mm) - INCH, abs=0.5)


def test_the_hem_lies_over_the_floor_that_is_drawn():
    # As far over a level floor as on a level rod, wherever along the leaning one the cloth hangs.
    out, laid = hung(90.0, None, 90.0)
    level = min(y for group in drawn(out, laid, "panel-open") for _, y in points(group.records))
    out, laid = hung(90.0, None, 87.0)
    for group in drawn(out, laid, "panel-open"):
        low = min(y for _, y in points(group.records))
        assert low == pytest.approx(level, abs=1.0)


@pytest.mark.parametrize("readings", [(None, None, None), (90.0, None, 90.0), (90.0, None, None)])
def test_a_level_rod_is_drawn_as_before(readings):
    out, laid = hung(*readings)
    assert laid.layers[0].support.line is None
    (rod,) = drawn(out, laid, "rod")
    support = laid.layers[0].support
    assert axis_at(rod.records, support.cut_left_mm) == pytest.approx(axis_at(rod.records, support.cut_right_mm))
