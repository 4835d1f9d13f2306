"""Every limit: just inside, at it, and just outside, with half a graduation of tolerance.

Figures are worked by hand from the room in ``rooms.py``; limits are common practice without a printed source unless another
source stands beside them. The room's graduation is 1/16 in, so a length misses its limit only by more than 1/32 in.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.model import Bracket, Hem, Rod, Room, Sash, Scheme, Station
from tests.findings.rooms import (
    HALF,
    INCH,
    LAYER,
    LEFT_BRACKET,
    OPENING,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    obstacle,
    panels,
    reach,
    rod,
    said,
    the,
    treatment,
    window,
    with_obstacle,
)

LESS, MORE = -1, 1


def rod_above_casing(value: float) -> Room:
    return rod(ceiling(good_room(), inch(110)), height=held("above-casing", mm(value)))


def rod_below_ceiling(value: float) -> Room:
    return rod(good_room(), height=held("below-ceiling", mm(value)))


def gap(value: float) -> Room:
    # Casing top at 80 1/4 in.
    return ceiling(good_room(), mm(80.25 * INCH + value))


def cloth_below_top(value: float) -> Room:
    # Clips let the cloth begin 1 3/4 in under the axis.
    return rod(good_room(), height=held("above-casing", mm(1.75 * INCH - value)))


def bracket_beyond(value: float) -> Room:
    return reach(good_room(), mm(value + 2 * INCH))


def stack_over_glass(value: float) -> Room:
    # Bracket r beyond the opening: cloth from r + 1/2 in, 4 1/2 in wide, so 4 in - r of it over the opening.
    return reach(good_room(), mm(4 * INCH - value + 2 * INCH))


def stack_over_goal(value: float) -> Room:
    room = stack_over_glass(value)
    return at(room, ("w1", "s1"), clear_glass_to=inch(1))


def beside_heater(kind: str) -> Callable[[float], Room]:
    def make(value: float) -> Room:
        # The left panel begins 8 1/2 in left of 54 in; the heater stands to its left, as high and as deep as the cloth.
        left = 45.5 * INCH - value - 200
        return with_obstacle(at(good_room(), ("w1",), width=inch(400)), obstacle(kind, left, 0, 200, 300, 300))

    return make


def beside_heater_with_sheet(value: float) -> Room:
    left = 45.5 * INCH - value - 200
    return with_obstacle(good_room(), obstacle("electric-heater", left, 0, 200, 300, 300, clearance=mm(150)))


def over_radiator(value: float) -> Room:
    # Cloth 40 in long from 82 1/2 in ends at 42 1/2 in.
    room = at(good_room(), LAYER, hem=Hem("length", inch(40)))
    return with_obstacle(room, obstacle("hot-water-radiator", 1400, 0, 800, 42.5 * INCH - value, 80))


def hem_lower(value: float) -> Room:
    # Wished: 1/2 in clear. Top of the cloth at 82 1/2 in.
    return panels(good_room(), label_length=mm(82 * INCH + value))


def hem_higher(value: float) -> Room:
    return panels(good_room(), label_length=mm(82 * INCH - value))


def floor_varies(value: float) -> Room:
    # Under the left panel's whole way, 45 1/2 to 72 in, the floor rises by the value; the hem is level 2 in over its start.
    floor = (Station(inch(45.5), mm(0)), Station(inch(72), mm(value)))
    return panels(at(good_room(), ("w1",), floor=floor), label_length=inch(80.5))


def panels_apart(value: float) -> Room:
    # From the centre of the opening it is 18 + 8 1/2 in to where the cloth begins.
    return panels(good_room(), flat_width=mm(26.5 * INCH - value / 2))


def second_rod(value: float) -> Room:
    openings = (window(), window("o2", left=160))
    other = layer(rod=_rod_at(4 * INCH + value))
    third = treatment("t3", ("o3",))
    openings = (*openings, window("o3", left=260))
    both = (treatment(), treatment("t2", ("o2",), layers=(other,)), third)
    return good_room(width=inch(360), openings=openings, schemes=(Scheme(id="s1", treatments=both),))


def _rod_at(above_mm: float) -> Rod:
    return replace(layer().rod, height=held("above-casing", mm(above_mm)))


def bracket_off(value: float) -> Room:
    return at(good_room(), LEFT_BRACKET, height=mm(84.25 * INCH + value))


def escape_sill(value: float) -> Room:
    # IRC R310.2.2: sill of an escape opening at most 44 in above the floor.
    room = at(good_room(), OPENING, escape=True, sill=mm(value), height=inch(60), sash=Sash("casement-out"))
    return at(ceiling(room, inch(140)), (), sleeping=True)


CASES = [
    ("rod-low", Weight.BROKEN, rod_above_casing, 3 * INCH, LESS, HALF),
    ("rod-high", Weight.CONSIDER, rod_above_casing, 12 * INCH, MORE, HALF),
    ("rod-under-ceiling", Weight.BROKEN, rod_below_ceiling, 3 * INCH, LESS, HALF),
    ("no-room", Weight.BROKEN, gap, 6 * INCH, LESS, HALF),
    ("cloth-below-head", Weight.CONSIDER, cloth_below_top, 0.0, MORE, HALF),
    ("reach-short", Weight.BROKEN, bracket_beyond, 6 * INCH, LESS, HALF),
    ("reach-long", Weight.CONSIDER, bracket_beyond, 12 * INCH, MORE, HALF),
    # A maker's advice: 4 to 5 cm of glass on each side at most.
    ("stack-on-glass", Weight.CONSIDER, stack_over_glass, 2 * INCH, MORE, HALF),
    ("stack-on-glass", Weight.BROKEN, stack_over_goal, 1 * INCH, MORE, HALF),
    # Strictest heater maker's sheet seen; a fan heater maker's sheet; fire-safety pages (3 ft from anything that burns).
    ("heat", Weight.BROKEN, beside_heater("electric-heater"), 12 * INCH, LESS, HALF),
    ("heat", Weight.BROKEN, beside_heater("flame-heater"), 12 * INCH, LESS, HALF),
    ("heat", Weight.BROKEN, beside_heater("fan-heater"), 36 * INCH, LESS, HALF),
    ("heat", Weight.BROKEN, beside_heater("portable-heater"), 36 * INCH, LESS, HALF),
    ("heat", Weight.BROKEN, beside_heater_with_sheet, 150.0, LESS, HALF),
    ("heat", Weight.CONSIDER, over_radiator, 1 * INCH, LESS, HALF),
    ("hem-varies", Weight.CONSIDER, floor_varies, INCH / 2, MORE, HALF),
    ("no-meet", Weight.BROKEN, panels_apart, 0.0, MORE, HALF),
    # One graduation apart is seen by nobody.
    ("uneven-rods", Weight.CONSIDER, second_rod, INCH / 16, MORE, HALF),
    ("bracket-level", Weight.BROKEN, bracket_off, INCH / 16, MORE, HALF),
    ("escape", Weight.CONSIDER, escape_sill, 44 * INCH, MORE, HALF),
]
IDS = [f"{rule}-{weight.value}-{make.__name__}-{limit:.0f}" for rule, weight, make, limit, _, _ in CASES]


@pytest.mark.parametrize(("rule", "weight", "make", "limit", "sign", "half"), CASES, ids=IDS)
def test_nothing_is_said_up_to_half_a_graduation_past_the_limit(rule, weight, make, limit, sign, half) -> None:
    for value in (limit - sign * 1.0, limit, limit + sign * half):
        assert not [one for one in found(make(value), rule) if one.weight is weight], value


@pytest.mark.parametrize(("rule", "weight", "make", "limit", "sign", "half"), CASES, ids=IDS)
def test_past_half_a_graduation_it_is_said_with_its_figures(rule, weight, make, limit, sign, half) -> None:
    value = limit + sign * (half + 0.01)
    findings = [one for one in found(make(value), rule) if one.weight is weight]
    assert findings
    for one in findings:
        assert one.measured_mm == pytest.approx(value, abs=1e-6)
        assert one.limit_mm == pytest.approx(limit, abs=1e-6)
        assert one.authority.template
        assert one.at is not None


def test_nothing_is_wrong_with_the_good_room() -> None:
    assert [said(one.text) for one in found(good_room())] == []


def test_hem_low_at_its_tolerance() -> None:
    # Common practice: a hem may hang 1/4 in lower than wished.
    assert not found(hem_lower(INCH / 4 + HALF), "hem-low")
    low = the(hem_lower(INCH / 4 + HALF + 0.01), "hem-low")
    assert low.weight is Weight.BROKEN
    assert low.measured_mm == pytest.approx(INCH / 4 - HALF - 0.01)  # its gap; 1/2 in was wished
    assert low.limit_mm == pytest.approx(INCH / 2)


def test_hem_high_at_its_tolerance() -> None:
    # Common practice: a hem may hang 1/2 in higher than wished.
    assert not found(hem_higher(INCH / 2 + HALF), "hem-high")
    high = the(hem_higher(INCH / 2 + HALF + 0.01), "hem-high")
    assert high.weight is Weight.CONSIDER
    assert high.measured_mm == pytest.approx(INCH + HALF + 0.01)
    assert high.limit_mm == pytest.approx(INCH)


def test_a_panel_in_hand_without_a_wish_may_not_lie_on_the_floor() -> None:
    room = at(good_room(), LAYER, hem=Hem("panel"))
    assert not found(panels(room, label_length=mm(82.75 * INCH + HALF)), "hem-low")  # 1/4 in on the floor
    low = the(panels(room, label_length=mm(82.75 * INCH + HALF + 0.01)), "hem-low")
    assert "lies on it" in said(low.text)
    assert not found(panels(room, label_length=inch(60)), "hem-high")


def test_a_hem_higher_than_a_hand_over_the_floor_is_not_compared_with_it() -> None:
    floor = (Station(inch(45.5), mm(0)), Station(inch(72), inch(1)))
    room = at(at(good_room(), ("w1",), floor=floor), LAYER, hem=Hem("panel"))
    # The hem's least gap is over the floor's high part: 4 in (common practice, no source).
    assert found(panels(room, label_length=inch(77.5)), "hem-varies")
    assert not found(panels(room, label_length=mm(77.5 * INCH - 0.01)), "hem-varies")


@pytest.mark.parametrize(
    ("heading", "low", "high"),
    # Ranges by heading: UK and US workroom guides; clips as for flat panels, common practice.
    [("clip-rings", 1.5, 2.5), ("tab", 1.25, 2.0), ("pinch-pleat", 2.0, 3.0)],
)
def test_fullness_within_the_headings_range(heading, low, high) -> None:
    room = at(good_room(), LAYER, heading=heading)
    closed = {"clip-rings": 26.5, "tab": 26.5, "pinch-pleat": 26.5}[heading] * INCH

    def of(ratio: float) -> Room:
        return panels(room, flat_width=mm(ratio * closed))

    for ratio in (low, high, low * (1 - 5e-10), high * (1 + 5e-10)):
        assert not found(of(ratio), "fullness"), ratio
    assert the(of(low - 0.001), "fullness").weight is Weight.CONSIDER
    assert "only" in said(the(of(low - 0.001), "fullness").text)
    assert "only" not in said(the(of(high + 0.001), "fullness").text)


def test_a_long_reach_is_no_matter_where_it_clears_the_glass() -> None:
    # Bracket 14 in out: cloth from 14 1/2 in. At 12 in, 12 1/2 in of stack would just clear the glass, and no more.
    def stack(wide_mm: float) -> Room:
        return panels(bracket_beyond(14 * INCH), stack=mm(wide_mm))

    assert len(found(stack(12.5 * INCH), "reach-long")) == 2
    assert not found(stack(12.5 * INCH + 0.01), "reach-long")


@pytest.mark.parametrize(("parks", "end"), [("left", "left"), ("right", "right")])
def test_only_the_end_to_which_cloth_draws_clear_needs_reach(parks, end) -> None:
    one = at(bracket_beyond(4 * INCH), LAYER, panels=(replace(layer().panels[0], parks=parks, flat_width=inch(108)),))
    assert f"the {end} end bracket" in said(the(one, "reach-short").text)
    long = at(bracket_beyond(14 * INCH), LAYER, panels=one.walls[0].schemes[0].treatments[0].layers[0].panels)
    assert f"the {end} end bracket" in said(the(long, "reach-long").text)


def test_cloth_that_stands_still_needs_no_reach() -> None:
    assert not found(panels(bracket_beyond(4 * INCH), stationary=True), "reach-short")
    assert not found(panels(bracket_beyond(14 * INCH), stationary=True), "reach-long")
    assert not found(panels(cloth_below_top(INCH), stationary=True), "cloth-below-head")
    assert not found(panels(good_room(), stationary=True, flat_width=inch(20)), "no-meet")


def test_a_panel_parked_at_a_middle_bracket_clears_no_end() -> None:
    middle = Bracket(id="b3", place=held("from-centre", inch(0)), kit="open-arm")
    parked = (replace(layer().panels[0], parks="left-of:b3"), replace(layer().panels[1], parks="right-of:b3"))
    room = at(bracket_beyond(4 * INCH), LAYER, brackets=(*layer().brackets, middle), panels=parked)
    assert not found(room, "reach-short")


def test_where_the_ceiling_was_not_measured_nothing_is_said_of_it() -> None:
    room = at(rod_below_ceiling(INCH), ("w1",), ceiling=())
    assert not found(room, "rod-under-ceiling")
    assert not found(room, "no-room")


def test_under_a_sloping_ceiling_the_lowest_place_along_the_rod_counts() -> None:
    # Rod from 44 to 100 in at 84 1/4 in; the ceiling comes down to 87 1/4 in at one place, 3 in over it.
    def dip(at_in: float, height_mm: float) -> Room:
        line = (Station(inch(0), inch(100)), Station(inch(at_in), mm(height_mm)), Station(inch(144), inch(100)))
        return at(good_room(), ("w1",), ceiling=line)

    for place in (47, 72, 99):
        assert not found(dip(place, 87.25 * INCH), "rod-under-ceiling")
        low = the(dip(place, 87.25 * INCH - 1.0), "rod-under-ceiling")
        assert low.measured_mm == pytest.approx(3 * INCH - 1.0)
        assert low.at is not None
        assert low.at[0] == pytest.approx(place * INCH)


def test_one_finding_stands_for_two_where_the_gap_holds_no_rod() -> None:
    # 5 in of gap, the rod 2 in above the casing and 3 in below the ceiling; then the other way round.
    for above in (2 * INCH, 3 * INCH):
        rules = {one.rule for one in found(rod(gap(5 * INCH), height=held("above-casing", mm(above))))}
        assert "no-room" in rules
        assert not rules & {"rod-low", "rod-under-ceiling"}
    # The room's own limits need less of it; its own figure for the gap wins over both.
    less = at(gap(5 * INCH), (), limits={"rod-low": inch(2)})
    assert not found(less, "no-room")
    own = at(gap(5 * INCH), (), limits={"no-room": inch(4)})
    assert not found(own, "no-room")
    assert found(at(gap(7 * INCH), (), limits={"no-room": inch(8)}), "no-room")


def test_millimetre_rooms_compare_with_half_a_millimetre() -> None:
    room = at(rod_above_casing(3 * INCH - 0.5), (), unit="mm")
    assert not found(room, "rod-low")
    assert found(at(rod_above_casing(3 * INCH - 0.51), (), unit="mm"), "rod-low")


def test_a_rooms_own_limit_wins_and_is_said() -> None:
    room = at(rod_above_casing(4 * INCH), (), limits={"rod-low": inch(5)})
    low = the(room, "rod-low")
    assert low.limit_mm == 5 * INCH
    assert said(low.text) == (
        "Window 1: the rod's centre line is 4 in above the casing, "
        "1 in less than the 5 in (this room's own limit) it needs."
    )
    assert said(low.authority) == "this room's own limit, instead of 3 in (common practice)"
    assert not found(at(rod_above_casing(1 * INCH), (), limits={"rod-low": inch(1)}), "rod-low")
