"""Tie-backs: where hook, waist and swept edge stand, and what of the glass stays clear beside them.

Heights at a third or two thirds of the drop: a workroom's guide (the half is avoided). The swept edge is a parabola: its
length and the area beside it are checked against Simpson's rule over many steps, made here apart.
"""

from __future__ import annotations

from collections.abc import Callable
from math import hypot

import pytest
from msgspec.structs import replace

from elevation.room.model import Panel, Room, TieBack
from elevation.setting_out.model import PanelOut, TieOut, TreatmentOut
from elevation.setting_out.tie import swept_mm
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.tables import load_trade
from tests.setting_out.rooms import INCH, inch, pair, room, treatment, window

TRADE = load_trade()
STEPS = 4000


def quad(function: Callable[[float], float], low: float, high: float) -> float:
    """Simpson's rule."""
    step = (high - low) / STEPS
    inner = sum(function(low + index * step) * (4 if index % 2 else 2) for index in range(1, STEPS))
    return (function(low) + inner + function(high)) * step / 3


def tied(tie: TieBack, panels: tuple[Panel, ...] | None = None, **window_fields: object) -> Room:
    made = treatment(panels=pair(drawn=inch(24)) if panels is None else panels)
    (layer,) = made.layers
    return room(openings=[window(**window_fields)], treatments=[replace(made, layers=(replace(layer, tie=tie),))])


def dressed(made: Room) -> TreatmentOut:
    return set_out_afresh(made, "a", "s", TRADE).treatments[0]


def ties(made: Room) -> tuple[PanelOut, TieOut, PanelOut, TieOut]:
    left, right = dressed(made).layers[0].panels
    assert left.tie is not None
    assert right.tie is not None
    return left, left.tie, right, right.tie


@pytest.mark.parametrize("share", [1 / 3, 2 / 3, 0.4])
def test_a_share_of_the_drop_counts_up_from_the_hem(share: float) -> None:
    panel, tie, _, _ = ties(tied(TieBack(share=share)))
    drop = panel.top_mm - panel.hem_low_mm
    assert tie.hook[1] == pytest.approx(panel.hem_low_mm + share * drop)


def test_a_height_counts_from_the_floor_under_the_hook() -> None:
    made = tied(TieBack(hold="above-floor", at=inch(36)))
    assert ties(made)[1].hook[1] == pytest.approx(36 * INCH)
    sloping = replace(made.walls[0], floor=room(floor=((0, 0), (120, 12))).walls[0].floor)
    _, left, _, right = ties(replace(made, walls=(sloping,)))
    assert left.hook[1] == pytest.approx(36 * INCH + left.hook[0] / 10)
    assert right.hook[1] == pytest.approx(36 * INCH + right.hook[0] / 10)


def test_the_hook_stands_beyond_the_fixed_edge_on_either_side() -> None:
    left, tie_left, right, tie_right = ties(tied(TieBack(out=inch(3))))
    assert left.drawn[0] - tie_left.hook[0] == pytest.approx(3 * INCH)
    assert tie_right.hook[0] - right.drawn[1] == pytest.approx(3 * INCH)


def test_the_waist_is_the_stack_until_it_is_given_and_never_wider_than_the_panel() -> None:
    panel, tie, _, _ = ties(tied(TieBack()))
    assert tie.waist[1] - tie.waist[0] == pytest.approx(panel.stack_mm)
    _, given, _, _ = ties(tied(TieBack(waist=inch(8))))
    assert given.waist[1] - given.waist[0] == pytest.approx(8 * INCH)
    _, wide, _, _ = ties(tied(TieBack(waist=inch(80))))
    assert wide.waist[1] - wide.waist[0] == pytest.approx(24 * INCH)


def test_a_tie_back_above_the_heading_or_below_the_hem_is_drawn_where_it_can_be() -> None:
    for at in (1, 200):
        panel, tie, _, _ = ties(tied(TieBack(hold="above-floor", at=inch(at))))
        assert panel.hem_low_mm < tie.hook[1] < panel.top_mm


@pytest.mark.parametrize(("aside", "drop"), [(0.0, 1000.0), (1.0, 1000.0), (450.0, 1200.0), (-900.0, 600.0)])
def test_the_swept_edge_is_as_long_as_quadrature_says(aside: float, drop: float) -> None:
    wanted = quad(lambda s: hypot(2 * aside * s, drop), 0, 1)
    assert swept_mm(aside, drop) == pytest.approx(wanted, rel=1e-9)


def test_the_leading_corner_hangs_higher_by_what_the_sweep_takes() -> None:
    panel, tie, _, _ = ties(tied(TieBack()))
    away = panel.drawn[1] - tie.waist[1]
    swept = quad(lambda s: hypot(2 * away * s, panel.top_mm - tie.hook[1]), 0, 1)
    below = hypot(tie.foot[1] - tie.waist[1], tie.hook[1] - tie.hem_mm)
    assert tie.lift_mm == pytest.approx(swept + below - (panel.top_mm - tie.hem_mm), rel=1e-6)
    # Drawn no wider than its stack, nothing sweeps.
    _, straight, _, _ = ties(tied(TieBack(out=inch(0)), pair()))
    assert straight.lift_mm < 1.0


def test_glass_beside_a_swept_edge_by_formula() -> None:
    # One panel from the left, its fixed edge and its waist wholly beside the glass, tied below it: only the parabola
    # crosses the glass. Over the glass from x0 to the lead x1, the edge stands at top - D sqrt((x1 - x) / (x1 - w)).
    one = (Panel(id="p1", flat_width=inch(60), drawn=inch(40)),)
    made = tied(TieBack(hold="above-floor", at=inch(20)), one, casing=3.5)
    laid = dressed(made)
    panel, opening = laid.layers[0].panels[0], laid.openings[0]
    assert panel.tie is not None
    tie, lead = panel.tie, panel.drawn[1]
    assert tie.waist[1] < opening.glass_left_mm < lead < opening.glass_right_mm
    drop, away = panel.top_mm - tie.hook[1], lead - tie.waist[1]

    def covered(x: float) -> float:
        edge = panel.top_mm - drop * (1 - (x - tie.waist[1]) / away) ** 0.5
        return max(0.0, opening.glass_top_mm - max(edge, opening.glass_bottom_mm))

    wanted = quad(covered, opening.glass_left_mm, lead)
    assert 1 - laid.glass.clear_drawn == pytest.approx(wanted / laid.glass.area_mm2, abs=1e-3)


def test_tied_panels_leave_more_glass_clear_than_hanging_ones_and_open_and_closed_stay() -> None:
    loose = dressed(room(treatments=[treatment(panels=pair(drawn=inch(24)))])).glass
    made = dressed(tied(TieBack())).glass
    assert loose.clear_drawn < made.clear_drawn < 1
    assert (made.clear_open, made.clear_closed) == (loose.clear_open, loose.clear_closed)


def test_it_counts_what_two_panels_cover_once() -> None:
    # Two panels from the left over each other: the same cloth twice hides no more glass.
    panel = Panel(id="p1", flat_width=inch(60), drawn=inch(40))
    alone = dressed(tied(TieBack(), (panel,))).glass.clear_drawn
    made = tied(TieBack(), (panel,))
    (layer,) = made.walls[0].schemes[0].treatments[0].layers
    both = replace(made.walls[0].schemes[0].treatments[0], layers=(layer, replace(layer, id="l2")))
    twice = dressed(room(treatments=[both])).glass.clear_drawn
    assert twice == pytest.approx(alone, abs=1e-12)


def test_a_mirrored_wall_mirrors_its_tie_backs() -> None:
    left, tie_left, right, tie_right = ties(tied(TieBack(out=inch(1), waist=inch(5))))
    middle = (left.drawn[0] + right.drawn[1]) / 2
    assert tie_left.hook[0] - middle == pytest.approx(middle - tie_right.hook[0])
    assert tie_left.lift_mm == pytest.approx(tie_right.lift_mm)
    assert [x - middle for x, _ in tie_left.edge] == pytest.approx([middle - x for x, _ in tie_right.edge])


def test_a_panel_that_never_draws_hangs_tied_for_good() -> None:
    glass = dressed(tied(TieBack(), pair(drawn=inch(24), stationary=True))).glass
    assert glass.clear_open == glass.clear_closed == glass.clear_drawn
    assert 0 < glass.clear_open < 1
