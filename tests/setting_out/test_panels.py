"""Panels and glass of a whole treatment: worked by hand; common practice, no source."""

from __future__ import annotations

import msgspec
import pytest

from elevation.room.model import Bracket, Panel, Rod, Station, Treatment
from elevation.setting_out.glass import clear_share
from elevation.setting_out.model import TreatmentOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from elevation.trade.folds import fold_depth
from tests.setting_out.rooms import INCH, held, inch, pair, room, treatment, window

TRADE = load_trade()


def dressed(made: Treatment | None = None, openings=None, **more) -> TreatmentOut:
    return set_out_afresh(room(openings, [made or treatment()], **more), "a", "s", TRADE).treatments[0]


def test_the_pair_of_the_first_room() -> None:
    # Rod 30 to 86 in; straps 2 in in and 3/4 in wide, a ring of 1/4 in held beyond: cloth from 31 1/2 to 84 1/2 in.
    out = dressed()
    left, right = out.layers[0].panels
    assert left.parks_at_mm / INCH == pytest.approx(31.5)
    assert right.parks_at_mm / INCH == pytest.approx(84.5)
    assert left.closed[1] / INCH == right.closed[0] / INCH == pytest.approx(58)
    assert left.fullness == pytest.approx(54 / 26.5)
    assert left.rings == 10
    assert left.fold_count == 9
    assert left.fold_depth_mm / INCH == pytest.approx(fold_depth(54 / 9, 26.5 / 9))
    assert left.open[1] / INCH == pytest.approx(31.5 + 4.5)
    assert left.top_mm / INCH == pytest.approx(91.5 - 1.75)
    assert left.heading_mm / INCH == pytest.approx(1.75)


def test_its_clearances() -> None:
    clear = dressed().clearances
    assert clear.above_opening_mm / INCH == pytest.approx(7.5)
    assert clear.above_casing_mm / INCH == pytest.approx(4)
    assert clear.below_ceiling_mm is not None
    assert clear.below_ceiling_mm / INCH == pytest.approx(4.5)
    assert clear.head_to_ceiling_mm is not None
    assert clear.head_to_ceiling_mm / INCH == pytest.approx(8.5)
    assert clear.left_of_opening_mm / INCH == pytest.approx(10)
    assert clear.bracket_right_mm is not None
    assert clear.bracket_right_mm / INCH == pytest.approx(8)


@pytest.mark.parametrize(
    ("left_in", "right_in", "below", "gap"),
    [
        # Falling 1 in 20 from 100 in: 93.7 in at the rod's end (126 in), 94.025 in over the last casing's end (119.5 in).
        (100.0, 93.0, 93.7 - 1 - 91.5, 94.025 - 1 - 87.5),
        # Rising from 93 in: 93.5 in at the rod's left end (10 in), 93.825 in over the first casing's end (16.5 in).
        (93.0, 100.0, 93.5 - 1 - 91.5, 93.825 - 1 - 87.5),
    ],
)
def test_clearances_under_a_raked_ceiling_with_crown(left_in: float, right_in: float, below: float, gap: float) -> None:
    openings = (window("a1", left=20), window("a2", left=80, height=50))
    panels = (
        Panel(id="p1", flat_width=inch(54), parks="left", measured_length=inch(87)),
        Panel(id="p2", flat_width=inch(54), parks="right", measured_length=inch(88)),
    )
    made = room(openings, [treatment(openings=("a1", "a2"), panels=panels)], width=140.0, crown=inch(1))
    ceiling = (Station(inch(0), inch(left_in)), Station(inch(140), inch(right_in)))
    made = msgspec.structs.replace(made, walls=(msgspec.structs.replace(made.walls[0], ceiling=ceiling),))
    clear = set_out_afresh(made, "a", "s", TRADE).treatments[0].clearances
    # The higher head is at 84 in, its casing's top at 87 1/2, the rod 4 in over that.
    assert clear.above_opening_mm / INCH == pytest.approx(7.5)
    assert clear.above_casing_mm / INCH == pytest.approx(4)
    assert clear.below_ceiling_mm is not None
    assert clear.below_ceiling_mm / INCH == pytest.approx(below)
    assert clear.head_to_ceiling_mm is not None
    assert clear.head_to_ceiling_mm / INCH == pytest.approx(gap)
    assert clear.bracket_left_mm is not None
    assert clear.bracket_left_mm / INCH == pytest.approx(8)
    # Cloth from 89 3/4 in down.
    assert clear.hem_to_floor_low_mm is not None
    assert clear.hem_to_floor_low_mm / INCH == pytest.approx(1.75)
    assert clear.hem_to_floor_high_mm is not None
    assert clear.hem_to_floor_high_mm / INCH == pytest.approx(2.75)


@pytest.mark.parametrize(
    ("beyond", "over"),
    # Glass begins 2 in inside the opening; the stack's inner edge stands beyond - 6 in outside it.
    [(10, 0), (4, 0), (3.9375, 0.0625), (3, 1), (2, 2), (0, 4)],
)
def test_stack_over_glass_on_each_side(beyond: float, over: float) -> None:
    glass = dressed(treatment(beyond=beyond)).glass
    assert glass.stack_over_left_mm / INCH == pytest.approx(over, abs=1e-9)
    assert glass.stack_over_right_mm / INCH == pytest.approx(over, abs=1e-9)
    assert glass.clear_open == pytest.approx(1 - 2 * over / 32)
    assert glass.area_mm2 / INCH**2 == pytest.approx(32 * 50)


def test_the_rod_that_would_clear_the_glass_clears_it_and_a_shorter_one_does_not() -> None:
    long = dressed(treatment(beyond=1)).glass.support_to_clear_mm / INCH
    # Glass 32 in, twice 4 1/2 in of stack, twice 1 1/2 in from the rod's end to the parked ring.
    assert long == pytest.approx(32 + 9 + 3)
    beyond = (long - 36) / 2
    assert dressed(treatment(beyond=beyond)).glass.clear_open == pytest.approx(1.0)
    assert dressed(treatment(beyond=beyond - 1 / 16)).glass.clear_open < 1


def test_closed_cloth_blocks_the_light_that_its_width_covers() -> None:
    glass = dressed().glass
    assert glass.light_blocking_mm / INCH == pytest.approx(53)
    assert glass.clear_closed == 0.0
    narrow = dressed(treatment(panels=pair(20))).glass
    assert narrow.light_blocking_mm / INCH == pytest.approx(40)
    # 53 - 40 = 13 in of glass between leading edges that do not meet.
    assert narrow.clear_closed == pytest.approx(13 / 32)


def test_glass_as_drawn_just_now() -> None:
    # Drawn 20 in from 31 1/2: covers glass from 42 to 51 1/2, and as much from the right.
    assert dressed(treatment(panels=pair(drawn=inch(20)))).glass.clear_drawn == pytest.approx(1 - 2 * 9.5 / 32)


def test_a_measured_stack_is_what_counts() -> None:
    out = dressed(treatment(beyond=2, panels=pair(stack=inch(6))))
    assert out.glass.stack_over_left_mm / INCH == pytest.approx(3.5)
    assert "measured" in out.layers[0].panels[0].stack_basis.template


def test_two_windows_under_one_rod_with_two_panels_parked_between() -> None:
    openings = (window("a1", left=20), window("a2", left=80))
    brackets = (
        Bracket(id="b1", place=held("from-left-end", 0)),
        Bracket(id="m", place=held("from-centre", 0)),
        Bracket(id="b2", place=held("from-right-end", 0)),
    )
    panels = tuple(
        Panel(id=f"p{i}", flat_width=inch(54), parks=place)
        for i, place in enumerate(("left", "left-of:m", "right-of:m", "right"))
    )
    out = dressed(treatment(openings=("a1", "a2"), brackets=brackets, panels=panels), openings, width=140.0)
    assert [opening.number for opening in out.openings] == [1, 2]
    # Rod 10 to 126 in, middle bracket at 68, between the windows (56 to 80 in).
    middle = [panel.parks_at_mm / INCH for panel in out.layers[0].panels[1:3]]
    assert middle == pytest.approx([68, 68])
    assert out.glass.clear_open == 1.0
    assert out.glass.clear_closed == 0.0
    assert out.glass.area_mm2 / INCH**2 == pytest.approx(2 * 32 * 50)
    assert out.clearances.right_of_opening_mm / INCH == pytest.approx(10)


def test_an_arched_window_loses_more_area_than_width_to_a_stack_at_its_middle() -> None:
    from elevation.room.model import Head

    arch = window(head=Head(kind="half-round"))
    out = dressed(treatment(beyond=0), [arch])
    # The sides of a half-round window are lower than its middle: 4 in of width a side is less than its share of the area.
    assert 1 - 8 / 32 < out.glass.clear_open < 1


def test_eyelets_are_even_and_fold_once_for_two() -> None:
    panel = dressed(treatment(heading="eyelets")).layers[0].panels[0]
    assert panel.rings % 2 == 0
    assert panel.fold_count == round((panel.rings - 1) / 2)
    assert panel.heading_mm < 0


def test_pinch_pleats_follow_the_published_table() -> None:
    panel = dressed(treatment(heading="pinch-pleat")).layers[0].panels[0]
    assert panel.stack_mm / INCH == pytest.approx(4.5 + 4.75)
    assert "published" in panel.stack_basis.template


def test_a_thicker_rod_lifts_the_cloth_by_half_of_what_it_is_thicker() -> None:
    def top(section: str) -> float:
        rod = Rod(held("above-casing", 4), held("beyond-opening", 10), held("beyond-opening", 10), section=section)
        return dressed(treatment(rod=rod)).layers[0].panels[0].top_mm / INCH

    assert top("dowel-1-3/8") - top("conduit-1/2") == pytest.approx((1.375 - 0.706) / 2)


def test_eyelets_stand_an_inch_above_the_pole_whatever_it_is() -> None:
    # livingstonetextiles.com, how to measure for curtains: 2.5 cm above the top of the pole.
    out = dressed(treatment(heading="eyelets")).layers[0]
    pole_top = out.support.height_mm + out.support.diameter_mm / 2
    assert (out.panels[0].top_mm - pole_top) / INCH == pytest.approx(1.0)


def test_a_treatment_without_panels_has_a_rod_and_nothing_else() -> None:
    out = dressed(treatment(panels=()))
    assert out.layers[0].panels == ()
    assert out.glass.clear_open == out.glass.clear_closed == 1.0
    assert out.clearances.hem_to_floor_low_mm is None


def test_a_rod_without_brackets_has_no_reach() -> None:
    assert dressed(treatment(brackets=())).clearances.bracket_left_mm is None


def test_pieces_close_over_as_much_as_all_of_them() -> None:
    # Two pieces of 10 in a side: 20 in each, from 31 1/2 and from 84 1/2 in.
    left, right = dressed(treatment(panels=pair(10, count=2))).layers[0].panels
    assert (left.closed[1] / INCH, right.closed[0] / INCH) == pytest.approx((51.5, 64.5))


@pytest.mark.parametrize(("heading", "meets"), [("clip-rings", 58.0), ("eyelets", 63.0), ("rod-pocket", 63.0)])
def test_eyelets_and_pockets_stop_at_a_middle_bracket_that_rings_pass(heading: str, meets: float) -> None:
    brackets = (
        Bracket(id="b1", place=held("from-left-end", 2)),
        Bracket(id="m", place=held("from-centre", 5), kit="open-arm"),
        Bracket(id="b2", place=held("from-right-end", 2)),
    )
    left, right = dressed(treatment(brackets=brackets, heading=heading)).layers[0].panels
    assert left.closed[1] / INCH == right.closed[0] / INCH == pytest.approx(meets)


def test_the_narrowest_panel_still_has_one_fold() -> None:
    panel = dressed(treatment(panels=pair(5), heading="eyelets")).layers[0].panels[0]
    assert (panel.rings, panel.fold_count) == (2, 1)


def test_a_hems_gaps_count_wherever_the_panel_may_hang() -> None:
    # Two panels park at the left; the inner one is open from 36 in on, where the floor is 3.6 in high.
    panels = tuple(Panel(id=name, flat_width=inch(54), parks="left", measured_length=inch(80)) for name in ("p1", "p2"))
    inner = dressed(treatment(panels=panels), floor=((0, 0), (120, 12))).layers[0].panels[1]
    assert inner.open[0] / INCH == pytest.approx(36)
    assert inner.closed[0] > inner.open[0]
    assert inner.gap_high_mm is not None
    assert inner.gap_high_mm / INCH == pytest.approx(91.5 - 1.75 - 80 - 3.6)


def to_clear(panels: tuple[Panel, ...], openings=None, covers: tuple[str, ...] = ("w1",)) -> float:
    out = dressed(treatment(openings=covers, panels=panels), openings, width=140.0)
    return out.glass.support_to_clear_mm / INCH


def test_the_rod_that_clears_two_windows_spans_both() -> None:
    # Glass from 22 to 114 in, both stacks of 4 1/2, and 1 1/2 in outside each.
    openings = (window("a1", left=20), window("a2", left=80))
    assert to_clear(pair(), openings, ("a1", "a2")) == pytest.approx(92 + 9 + 3)


def test_the_rod_that_clears_counts_every_panel_at_an_end() -> None:
    two = tuple(Panel(id=name, flat_width=inch(54), parks="right") for name in ("p1", "p2"))
    assert to_clear(two) == pytest.approx(32 + 9 + 1.5)
    two = tuple(Panel(id=name, flat_width=inch(54), parks="left") for name in ("p1", "p2"))
    assert to_clear(two) == pytest.approx(32 + 9 + 1.5)


def test_a_panel_that_stands_still_counts_as_wide_as_it_is_spread() -> None:
    assert to_clear(pair(stationary=True, drawn=inch(10))) == pytest.approx(32 + 20 + 3)


def test_of_two_layers_the_one_that_needs_more_rod_decides() -> None:
    made = treatment()
    thick = msgspec.structs.replace(made.layers[0], id="l2", panels=pair(stack=inch(6)))
    for layers in ((made.layers[0], thick), (thick, made.layers[0])):
        both = dressed(msgspec.structs.replace(made, layers=layers))
        assert both.glass.support_to_clear_mm / INCH == pytest.approx(32 + 12 + 3)


def test_where_there_is_no_glass_nothing_is_covered() -> None:
    assert clear_share((), ((0.0, 100.0),), 0.0) == 1.0


@pytest.mark.parametrize(("left", "right", "over"), [(0, 10, (4, 0)), (10, 1, (0, 3))])
def test_each_side_has_its_own_stack_over_glass(left: float, right: float, over: tuple[float, float]) -> None:
    rod = Rod(held("above-casing", 4), held("beyond-opening", left), held("beyond-opening", right))
    glass = dressed(treatment(rod=rod)).glass
    assert (glass.stack_over_left_mm / INCH, glass.stack_over_right_mm / INCH) == pytest.approx(over, abs=1e-9)
