"""The folds of a plan, measured again in what was drawn: their line is as long as the cloth is wide flat."""

from __future__ import annotations

from itertools import pairwise
from math import dist, pi

import pytest
from msgspec.structs import replace
from scipy.special import ellipe

from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.inks import Ink, blend
from elevation.sheet.plan_folds import drawn_depth, leaning
from elevation.sheet.plan_frame import frame_of
from elevation.sheet.plan_hung import treatment_records
from elevation.sheet.records import Path
from elevation.trade.tables import load_trade
from tests.findings.rooms import good_room
from tests.sheet.draw_cases import IN, make_opening, make_treatment, make_wall
from tests.sheet.test_draw_paths import flattened

TRADE = load_trade()


def lines_of(out, treatment, position="closed"):
    """Points along the folds of each panel, as they are drawn in the plan."""
    frame = frame_of(out)
    drawn = treatment_records(treatment, out.angles, frame, style_for(good_room()), 20.0, position)
    inks = {blend(layer.colour, Ink.OUTLINE, 0.35) for layer in treatment.layers}
    return frame, [
        flattened(record.steps, 24)
        for record in drawn
        if isinstance(record, Path) and record.pen.ink in inks and record.pen.width == 0.35
    ]


def length(points):
    return sum(dist(a, b) for a, b in pairwise(points))


def with_folds(heading, fullness, projection=8 * IN, folds=9, position="closed"):
    """A pair of panels with so much cloth in that position."""
    opening = make_opening()
    treatment = make_treatment(opening, heading=heading, folds=folds)
    layer = treatment.layers[0]
    panels = tuple(
        replace(panel, flat_width_mm=fullness * (getattr(panel, position)[1] - getattr(panel, position)[0]))
        for panel in layer.panels
    )
    layer = replace(layer, panels=panels, support=replace(layer.support, projection_mm=projection))
    treatment = replace(treatment, layers=(layer,))
    return make_wall((opening,), (treatment,)), treatment


@pytest.mark.parametrize("fullness", [1.5, 2.0, 2.5])
@pytest.mark.parametrize(("heading", "folds"), [("clip-rings", 9), ("pinch-pleat", 5), ("eyelet", 4), ("wave", 14)])
def test_the_drawn_line_is_fullness_times_the_width_to_one_percent(heading, folds, fullness):
    out, treatment = with_folds(heading, fullness, 12 * IN, folds)
    _, lines = lines_of(out, treatment)
    assert len(lines) == 2
    for line, panel in zip(lines, treatment.layers[0].panels, strict=True):
        left, right = panel.closed
        assert (line[0][0], line[-1][0]) == pytest.approx((left, right))
        assert length(line) == pytest.approx(fullness * (right - left), rel=0.01)
        # As many folds as there are: the line crosses the axis once within each and once between two.
        sides = [y < line[0][1] for _, y in line if abs(y - line[0][1]) > 1e-6]
        assert sum(a != b for a, b in pairwise(sides)) == 2 * folds - 1


def test_a_fold_is_as_deep_as_the_sine_of_its_length():
    # Arc length of a sine: the complete elliptic integral of the second kind (scipy, parameter m = -k2).
    steepness = 2.4
    fullness = 2 / pi * float(ellipe(-(steepness**2)))
    out, treatment = with_folds("clip-rings", fullness, 12 * IN)
    _, lines = lines_of(out, treatment)
    pitch = (lines[0][-1][0] - lines[0][0][0]) / 9
    ys = [y for _, y in lines[0]]
    assert max(ys) - min(ys) == pytest.approx(steepness * pitch / pi, rel=0.002)


def test_near_the_wall_folds_lean_over_and_keep_their_length():
    # 2 in to the rod's centre leave folds 89.6 mm: a fold of 120 mm at fullness 2.5 wants half as much again.
    out, treatment = with_folds("clip-rings", 2.5, 2 * IN, 7)
    frame, lines = lines_of(out, treatment)
    for line, panel in zip(lines, treatment.layers[0].panels, strict=True):
        assert length(line) == pytest.approx(2.5 * (panel.closed[1] - panel.closed[0]), rel=0.01)
        assert max(y for _, y in line) < frame.y0
        assert any(b[0] < a[0] for a, b in pairwise(line))
        # Neighbouring folds do not touch: each keeps within half a pitch of its own.
        pitch = (line[-1][0] - line[0][0]) / 7
        for number in range(14):
            part = line[number * 24 : number * 24 + 25]
            assert min(x for x, _ in part) > part[0][0] - pitch / 4
            assert max(x for x, _ in part) < part[-1][0] + pitch / 4


@pytest.mark.parametrize(("flat", "drawn"), [(100.0, 14.0), (100.5, 14.0), (200.0, 82.78), (900.0, 168.0)])
def test_flat_cloth_is_still_seen_and_a_stack_keeps_off_the_wall(flat, drawn):
    # 82.78: a wave 100 long whose line is 200 long, by scipy's elliptic integral.
    assert drawn_depth(flat, 100.0, 1, 14.0, 168.0) == pytest.approx(drawn, abs=0.01)


def test_cloth_for_which_there_is_no_room_leans_only_until_folds_touch():
    assert leaning(9.0, 0.2) == pytest.approx(-1.6, abs=0.001)
    assert leaning(2.0, 5.0) == pytest.approx(4 / (3 * pi))


@pytest.mark.parametrize("position", ["open", "closed"])
def test_a_room_as_it_was_set_out_is_drawn_with_its_own_cloth(position):
    out = set_out(good_room(), "w1", "s1", TRADE)
    seen = 0
    for treatment in out.treatments:
        _, lines = lines_of(out, treatment, position)
        panels = [panel for layer in reversed(treatment.layers) for panel in layer.panels]
        assert len(lines) == len(panels)
        for line, panel in zip(lines, panels, strict=True):
            if position == "closed" and panel.fullness is not None:
                assert length(line) == pytest.approx(panel.fullness * (panel.closed[1] - panel.closed[0]), rel=0.01)
                seen += 1
            # A stack before a near wall may show less than all its cloth, never more.
            assert length(line) < panel.flat_width_mm * 1.02
    assert seen or position == "open"
