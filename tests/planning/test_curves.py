"""Curves: what they read at a place is what the wall set out there says; marks by hand.

Figures from ``tests/findings/rooms.py``: clips put the top of the cloth 1 3/4 in below a rod of 0.922 in, hem 1/2 in clear.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.handles.all_handles import handles
from elevation.planning.curves import Curve, gap_over_height, glass_over_length, places, sag_along
from elevation.room.edits import replace_at
from elevation.room.model import Held, Panel, Station
from elevation.setting_out.whole import set_out_afresh
from tests.findings.rooms import INCH, LAYER, good_room, inch, rod, trade

TRADE = trade()
REF = LAYER[:3]


def laid(room):
    return set_out_afresh(room, "w1", "s1", TRADE)


def gap_curve(room, low, high):
    out = laid(room)
    return gap_over_height(room, out, out.treatments[0].layers[0], TRADE, low * INCH, high * INCH)


def test_places_run_from_end_to_end():
    assert places(0.0, 10.0, 4) == (0.0, 2.5, 5.0, 7.5, 10.0)
    assert places(5.0, 5.0) == ()
    assert places(5.0, 4.0) == ()


def test_a_longer_rod_clears_more_glass_and_the_curve_says_what_the_wall_says():
    room = good_room()
    handle = next(one for one in handles(room, laid(room), TRADE) if one.axis == "rod-right")

    def move(value):
        return handle.move(room, value, False)

    curve = glass_over_length(move, 91 * INCH, 115 * INCH, "w1", "s1", TRADE, REF)
    assert len(curve.at_mm) == 25
    assert all(b > a for a, b in pairwise(curve.at_mm))
    assert all(b >= a - 1e-9 for a, b in pairwise(curve.values))
    middle = laid(move(103 * INCH)).treatments[0]
    index = curve.at_mm.index(middle.layers[0].support.length_mm)
    assert curve.values[index] == pytest.approx(100 * middle.glass.clear_open)


def test_places_that_the_room_refuses_are_left_out():
    def move(value):
        raise BadInput("room", "", f"refuses {value}", "try another")

    assert glass_over_length(move, 0.0, 10.0, "w1", "s1", TRADE, REF) == Curve()


def test_the_gap_grows_as_much_as_the_rod_rises():
    panels = tuple(
        Panel(key, flat_width=inch(54), measured_length=inch(82), parks=side)
        for key, side in (("p1", "left"), ("p2", "right"))
    )
    room = replace_at(good_room(), LAYER, panels=panels)
    # The rod at 84 1/4 in: cloth from 82 1/2 in down 82 in, so 1/2 in is left.
    curve = gap_curve(room, 80, 90)
    assert [at / INCH for at in curve.at_mm] == pytest.approx([80, 84.25, 90])
    assert [value / INCH for value in curve.values] == pytest.approx([-3.75, 0.5, 6.25])
    higher = rod(room, height=Held("above-casing", inch(6)))
    at_once = laid(higher).treatments[0].clearances.hem_to_floor_low_mm / INCH
    assert at_once == pytest.approx(2.5)
    assert [value / INCH for value in gap_curve(higher, 80, 90).values] == pytest.approx([-3.75, 2.5, 6.25])


def test_lengths_that_are_sold_are_marked_where_they_just_clear():
    curve = gap_curve(good_room(), 80, 100)
    found = {round(mark.length_mm / INCH): mark.at_mm / INCH for mark in curve.marks}
    # 84 in of cloth, 1 3/4 in of ring and clip, 1/2 in clear of the floor.
    assert found[84] == pytest.approx(86.25)
    assert all(mark.value == pytest.approx(0.5 * INCH) for mark in curve.marks)
    assert all(80 * INCH <= mark.at_mm <= 100 * INCH for mark in curve.marks)


def test_a_floor_that_rises_brings_marks_up_with_its_highest_point():
    level, raked = good_room(), good_room(floor=(Station(inch(0), inch(0)), Station(inch(144), inch(1))))
    up = [b.at_mm - a.at_mm for a, b in zip(gap_curve(level, 80, 100).marks, gap_curve(raked, 80, 100).marks, strict=False)]
    assert all(0.3 * INCH < rise < INCH for rise in up)


def test_a_rod_without_panels_and_a_height_without_way_have_no_curve():
    bare = replace_at(good_room(), LAYER, panels=())
    assert gap_curve(bare, 80, 90) == Curve()
    assert gap_curve(good_room(), 90, 90) == Curve()


def test_the_sagged_line_lies_at_nought_on_its_brackets_and_is_deepest_where_the_set_out_says():
    layer = laid(good_room()).treatments[0].layers[0]
    curve = sag_along(layer)
    spans = [span for span in layer.loads.spans if not span.is_end]
    assert [mark.at_mm for mark in curve.marks] == [bracket.x_mm for bracket in layer.brackets]
    for at, value in zip(curve.at_mm, curve.values, strict=True):
        if any(abs(at - bracket.x_mm) < 1e-9 for bracket in layer.brackets):
            assert value == pytest.approx(0.0, abs=1e-9)
    # The curve is of panels as drawn; the set-out's figure has them where they weigh worst: never less.
    assert -min(curve.values) <= max(span.sag_mm for span in spans) + 1e-9
    assert [limit[2] for limit in curve.limits] == [-span.neat_mm for span in layer.loads.spans]


def test_a_rod_of_unknown_stiffness_has_no_sag_curve():
    layer = laid(replace_at(good_room(), LAYER, panels=())).treatments[0].layers[0]
    assert sag_along(replace(layer, loads=None)) == Curve()
