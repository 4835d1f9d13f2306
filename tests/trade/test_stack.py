"""Stack-back against the published table, and the default for flat panels."""

from __future__ import annotations

from itertools import pairwise

import msgspec
import pytest

from elevation.trade import load_trade
from elevation.trade.stack import (
    stack_of,
    traverse_one_way_stack,
    traverse_pair_stack,
    traverse_rod_for_glass,
)
from elevation.trade.tables import limit_of
from elevation.words import Mm

INCH = 25.4
TRADE = load_trade()
PLEATED = TRADE.headings["pinch-pleat"]
OVERLAP = limit_of(TRADE, "traverse-overlap")
RETURN = limit_of(TRADE, "traverse-return")

# Glass, stack of a centre-opening pair, rod; inches. A draperies measuring guide,
# levolor.com/support/how-to-measure/draperies.php; the rows from 24 to 96 also in
# fashionwindowtreatments.com/blog/measuring-for-pleated-drapes-and (whose rod 127 in row 90 is a misprint of 128).
PUBLISHED = [
    (24, 21, 45), (30, 23, 53), (42, 26, 68), (48, 29, 77), (54, 30, 84), (60, 31, 91), (72, 34, 106), (78, 36, 114),
    (90, 38, 128), (96, 39, 135), (108, 44, 152), (114, 45, 159), (120, 48, 168),
]  # fmt: skip


@pytest.mark.parametrize(("glass", "stack", "rod"), PUBLISHED)
def test_pair_meets_the_published_table_within_two_inches(glass: int, stack: int, rod: int) -> None:
    assert glass + stack == rod
    assert traverse_pair_stack(rod * INCH, PLEATED, OVERLAP, RETURN) / INCH == pytest.approx(stack, abs=2.0)
    assert traverse_rod_for_glass(glass * INCH, PLEATED, OVERLAP, RETURN) / INCH == pytest.approx(rod, abs=2.0)


@pytest.mark.parametrize(("glass", "stack", "rod"), PUBLISHED)
def test_one_way_is_seven_inches_less(glass: int, stack: int, rod: int) -> None:
    # Same table: "one way: deduct 7 in" from stack and from rod.
    assert traverse_one_way_stack((rod - 7) * INCH, PLEATED, RETURN) / INCH == pytest.approx(stack - 7, abs=2.0)


def test_the_table_goes_on_smoothly_to_150_in_of_glass() -> None:
    rods = [traverse_rod_for_glass(glass * INCH, PLEATED, OVERLAP, RETURN) / INCH for glass in range(24, 151, 6)]
    steps = [b - a for a, b in pairwise(rods)]
    assert min(steps) == pytest.approx(max(steps))
    # The table's own steps: 123 in of rod over 96 in of glass.
    assert steps[0] / 6 == pytest.approx(123 / 96, abs=0.05)


def test_rod_for_glass_leaves_the_glass_between_its_stacks() -> None:
    rod = traverse_rod_for_glass(2000.0, PLEATED, OVERLAP, RETURN)
    assert rod - traverse_pair_stack(rod, PLEATED, OVERLAP, RETURN) == pytest.approx(2000.0)


def test_two_flat_panels_on_rings_take_what_common_practice_says() -> None:
    # Common practice, no source: about 4 1/2 in for each 54 in of unlined cloth; 10 to 15 cm for each 137 cm in
    # theboyswhosew.co.uk/post/journal-insight-1-stack-back.
    stack = stack_of(54 * INCH, TRADE.headings["clip-rings"], TRADE.bodies["light"])
    assert stack.typical_mm == pytest.approx(4.5 * INCH)
    assert stack.low_mm == pytest.approx(100)
    assert stack.high_mm == pytest.approx(150)


def test_a_measured_stack_overrides_every_table_and_says_so() -> None:
    stack = stack_of(54 * INCH, TRADE.headings["pinch-pleat"], TRADE.bodies["interlined"], 77.0)
    assert (stack.low_mm, stack.typical_mm, stack.high_mm) == (77.0, 77.0, 77.0)
    assert "measured" in stack.basis.template


@pytest.mark.parametrize("heading", TRADE.headings)
@pytest.mark.parametrize("body", TRADE.bodies)
def test_every_heading_and_body_gives_a_range_round_its_figure(heading: str, body: str) -> None:
    stack = stack_of(1000.0, TRADE.headings[heading], TRADE.bodies[body])
    assert 0 < stack.low_mm <= stack.typical_mm <= stack.high_mm
    assert stack.basis.template


def test_the_basis_tells_the_three_models_apart() -> None:
    flat = stack_of(1000.0, TRADE.headings["clip-rings"], TRADE.bodies["light"]).basis
    pleated = stack_of(1000.0, TRADE.headings["pinch-pleat"], TRADE.bodies["light"]).basis
    measured = stack_of(1000.0, TRADE.headings["clip-rings"], TRADE.bodies["light"], 90.0).basis
    assert len({flat.template, pleated.template, measured.template}) == 3


def test_the_basis_of_flat_cloth_names_the_figure_of_its_body() -> None:
    # 4 1/2 in for each 54 in, half as much again where the body says so.
    half_more = msgspec.structs.replace(TRADE.bodies["light"], stack_factor=1.5)
    basis = stack_of(1000.0, TRADE.headings["clip-rings"], half_more).basis
    assert basis.params["stack"] == Mm(6.75 * INCH)
    assert basis.params["cloth"] == Mm(54 * INCH)


def test_a_one_way_draw_has_one_leading_edge_and_a_return_at_each_end() -> None:
    # Rod 100 in, 4 in of return at each end, fullness 2.5: 270 in of cloth, 5 widths of 54 in.
    heading = msgspec.structs.replace(TRADE.headings["pinch-pleat"], fullness_typical=2.5)
    expected = 5 * heading.stack_mm + heading.stack_plus_mm
    assert traverse_one_way_stack(100 * INCH, heading, 4 * INCH) == pytest.approx(expected)


def test_lined_cloth_takes_the_model_figures() -> None:
    # 4 1/2, 5 1/2, 6 1/2 and 9 in for each 54 in: common practice, no source.
    rings = TRADE.headings["clip-rings"]
    for body, inches in (("sheer", 4.5), ("light", 4.5), ("medium", 5.5), ("lined", 6.5), ("interlined", 9.0)):
        assert stack_of(54 * INCH, rings, TRADE.bodies[body]).typical_mm / INCH == pytest.approx(inches, abs=0.001)


def test_stack_grows_in_proportion_with_flat_cloth() -> None:
    rings = TRADE.headings["rings"]
    one, two = (stack_of(flat, rings, TRADE.bodies["light"]).typical_mm for flat in (800.0, 1600.0))
    assert two == pytest.approx(2 * one)
    plus = msgspec.structs.replace(rings, stack_plus_mm=30.0)
    assert stack_of(800.0, plus, TRADE.bodies["light"]).typical_mm == pytest.approx(one + 30.0)
