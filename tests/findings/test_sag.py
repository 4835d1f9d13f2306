"""Sag and uplift: their limits, who says so, and what puts them right.

The good room's rod is 56 in of 3/4 in conduit with brackets 52 in apart. Its sag is linear in what hangs, so the weight
of cloth at which it is just at a limit follows from two weights. The limits are our own choice, borrowed from IBC 1604.3.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import rule_of
from elevation.findings.model import Weight
from elevation.findings.rules.sag import worst
from elevation.planning.remedies import remedies
from elevation.room.edits import edit_at
from elevation.room.model import Bracket, Held, Room
from elevation.setting_out.model import LayerOut
from tests.findings.rooms import INCH, LAYER, found, good_room, held, inch, panels, rod, said, scene, the, trade

SPAN = 52 * INCH


def landed(room: Room) -> LayerOut:
    return scene(room).set_out.treatments[0].layers[0]


def weighing(kg: float, **fields: object) -> Room:
    return rod(panels(good_room(), weight_kg=kg), **fields)


def kg_at(limit_mm: float, **fields: object) -> float:
    """The weight of a panel at which the rod sags by ``limit_mm``."""
    low, high = (landed(weighing(kg, **fields)).support.sag_mm or 0.0 for kg in (1.0, 2.0))
    return 1.0 + (limit_mm - low) / (high - low)


def with_brackets(room: Room, *places: Held, kit: str = "shop-strap") -> Room:
    made = tuple(Bracket(id=f"b{number}", place=place, kit=kit) for number, place in enumerate(places, 1))
    return edit_at(room, LAYER, lambda layer: replace(layer, brackets=made))


THREE = (held("from-left-end", inch(2)), held("from-centre", inch(0)), held("from-right-end", inch(2)))


@pytest.mark.parametrize(("part", "weight"), [(360, Weight.CONSIDER), (240, Weight.BROKEN)])
def test_just_inside_at_and_just_past_a_limit(part: int, weight: Weight) -> None:
    limit = SPAN / part
    kg = kg_at(limit)
    weights = [[one.weight for one in found(weighing(kg * times), "sag")] for times in (1 - 1e-6, 1.0, 1 + 1e-6)]
    before = [] if part == 360 else [Weight.CONSIDER]
    assert weights == [before, before, [weight]]
    finding = the(weighing(kg * 1.01), "sag")
    assert finding.limit_mm == pytest.approx(limit)
    assert (finding.measured_mm or 0) > limit
    assert "our own choice" in said(finding.authority)


def test_a_light_pair_on_a_stiff_rod_is_no_finding() -> None:
    assert not found(good_room(), "sag")
    assert not found(good_room(), "uplift")


def test_what_would_bend_for_good_is_broken_whatever_the_sag() -> None:
    # Copper is bent to 0.6 of 30 ksi; the stress is linear in the weight as well.
    fields = {"section": "copper-1/2"}
    loads = [landed(weighing(kg, **fields)).loads for kg in (10.0, 20.0)]
    stresses = [one.stress or 0.0 for one in loads if one is not None]
    limit = 18 * 6.894757293168361
    kg = 10 + 10 * (limit - stresses[0]) / (stresses[1] - stresses[0])
    told = [said(the(weighing(kg * times, **fields), "sag").text) for times in (1 - 1e-6, 1 + 1e-6)]
    assert "bend it for good" not in told[0]
    assert "bend it for good" in told[1]


def test_a_bracket_in_the_middle_or_a_stiffer_rod_is_offered() -> None:
    room = weighing(kg_at(SPAN / 240) * 1.2)
    finding = the(room, "sag")
    offered = remedies(room, "w1", "s1", finding, trade()).offered
    labels = [said(remedy.label) for remedy in offered]
    assert labels
    assert any(label.startswith("Add a bracket 28 in") for label in labels)
    for remedy in offered:
        assert not found(remedy.room, "sag") or the(remedy.room, "sag").weight is Weight.CONSIDER
    stiffer = remedies(panels(room, parks="left"), "w1", "s1", the(panels(room, parks="left"), "sag"), trade())
    assert any("stiffer rod" in said(remedy.label) for remedy in stiffer.offered)


def tabs_on_the_thickest_pole() -> Room:
    """Tabs that draw across the whole rod pass no bracket, and no wood of the table is thicker than the pole."""
    return edit_at(
        weighing(60.0, section="dowel-1-3/8"),
        LAYER,
        lambda layer: replace(layer, panels=layer.panels[:1], heading="tab"),
    )


def test_where_nothing_is_stiff_enough_there_is_no_remedy() -> None:
    room = tabs_on_the_thickest_pole()
    finding = the(room, "sag")
    made = remedies(room, "w1", "s1", finding, trade())
    assert not made.offered
    assert made.none_because is not None


def test_an_uneven_middle_bracket_is_moved_midway() -> None:
    places = (THREE[0], held("from-centre", inch(-20)), THREE[2])
    kg = 9.0
    room = with_brackets(weighing(kg, section="copper-1/2"), *places)
    finding = the(room, "sag")
    first = remedies(room, "w1", "s1", finding, trade()).offered
    assert worst(landed(room)) is not None
    if first:
        assert (landed(first[0].room).support.sag_mm or 0) < (landed(room).support.sag_mm or 0)


def test_a_sag_that_is_not_known_is_no_finding() -> None:
    for room in (weighing(50.0, kind="tension-rod"), weighing(50.0, kind="track"), with_brackets(weighing(50.0), THREE[0])):
        assert worst(landed(room)) is None
        assert not found(room, "sag")


def test_a_long_free_end_is_judged_by_twice_its_length() -> None:
    places = (held("from-left-end", inch(28)), held("from-right-end", inch(2)))
    plain = edit_at(
        weighing(3.0, section="dowel-5/8"),
        LAYER,
        lambda layer: replace(layer, panels=(replace(layer.panels[0], stationary=True, parks="left-of:b1"),)),
    )
    room = with_brackets(plain, *places)
    finding = the(room, "sag")
    assert "free end" in said(finding.text)
    assert finding.limit_mm == pytest.approx(2 * 28 * INCH / 240)


# --- uplift -----------------------------------------------------------------------------------------------------


def lifting(kg: float, kit: str = "shop-cradle") -> Room:
    """One panel on a light tube over three brackets; drawn, it loads the first span alone and lifts the last bracket."""
    room = with_brackets(rod(good_room(), section="alu-20"), *THREE, kit=kit)
    one = landed(room)
    assert one.loads is not None
    return edit_at(
        room,
        LAYER,
        lambda layer: replace(layer, panels=(replace(layer.panels[0], weight_kg=kg),), heading="tab"),
    )


def test_a_heavy_panel_over_one_span_lifts_the_rod_out_of_an_open_cradle() -> None:
    finding = the(lifting(8.0), "uplift")
    assert finding.subject == (*LAYER, "b3")
    assert finding.weight is Weight.BROKEN
    assert "lifts out of the right end bracket" in said(finding.text)


def test_the_least_uplift_that_counts() -> None:
    # Linear in the panel's weight as well; half a newton is held by friction (from memory).
    lifts = [landed(lifting(kg)).brackets[2].uplift_n or 0.0 for kg in (6.0, 12.0)]
    kg = 6 + 6 * (0.5 - lifts[0]) / (lifts[1] - lifts[0])
    told = [bool(found(lifting(kg * times), "uplift")) for times in (1 - 1e-6, 1.0, 1 + 1e-6)]
    assert told == [False, False, True]


def test_a_closed_strap_holds_the_rod_down() -> None:
    assert not found(lifting(8.0, "shop-strap"), "uplift")


def test_a_strap_is_offered() -> None:
    room = lifting(8.0)
    offered = remedies(room, "w1", "s1", the(room, "uplift"), trade()).offered
    assert any("holds the rod down" in said(remedy.label) for remedy in offered)
    for remedy in offered:
        assert not found(remedy.room, "uplift")


def lifting_under_the_ceiling() -> Room:
    """The same on open hooks under the ceiling, on the thickest pole: no hook of the table is closed."""
    room = rod(lifting(40.0, "ceiling-hook"), section="dowel-1-3/8")
    return edit_at(room, LAYER[:3], lambda one: replace(one, mount="ceiling"))


def test_a_hook_has_no_strap_to_be_replaced_by() -> None:
    room = lifting_under_the_ceiling()
    assert remedies(room, "w1", "s1", the(room, "uplift"), trade()).offered == ()


def test_a_bracket_sticks_midway_between_its_neighbours() -> None:
    room = with_brackets(good_room(), THREE[0], held("from-centre", inch(7)), THREE[2])
    there = rule_of("sag").stickings(scene(room), scene(room).set_out.treatments[0])
    assert [(one.axis, one.value_mm) for one in there] == [("bracket", pytest.approx(72 * INCH))]
