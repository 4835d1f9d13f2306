"""The rules about cloth just inside, at and just outside their limits, and what puts them right.

Figures are worked by hand from the room in ``rooms.py``: rod 56 in long of 0.922 in conduit, two panels of 54 in flat on
ten rings 6 in apart, open from 8 1/2 to 4 in beyond the opening, clear of the casing of 2 1/4 in; its
centre 3 1/2 in off the wall.
"""

from __future__ import annotations

from typing import Any

import pytest

from elevation.findings.all_rules import stickings
from elevation.findings.model import Finding, Weight
from elevation.planning.remedies import remedies
from elevation.room.find import layer_of
from elevation.room.model import Fabric, Hem, Making, Room
from tests.findings.rooms import (
    HALF,
    INCH,
    LAYER,
    at,
    found,
    good_room,
    inch,
    mm,
    panels,
    reach,
    rod,
    said,
    scene,
    the,
    trade,
)

HAIR = 0.01


def rules(room: Room) -> set[str]:
    return {finding.rule for finding in found(room)}


def offered(room: Room, finding: Finding) -> list[Room]:
    return [remedy.room for remedy in remedies(room, "w1", "s1", finding, trade()).offered]


# --- folds-rub --------------------------------------------------------------------------------------------------


def out(by_mm: float) -> Room:
    return rod(good_room(), projection=mm(by_mm))


def test_stacked_folds_need_half_the_ring_pitch_and_a_quarter_inch() -> None:
    # A rod and bracket maker's guide: depth of stacked cloth from the rod's centre is half the ring pitch, here 3 in.
    needed = 3.25 * INCH
    assert "folds-rub" not in rules(out(needed))
    assert "folds-rub" not in rules(out(needed - HALF + HAIR))
    finding = the(out(needed - HALF - HAIR), "folds-rub")
    assert finding.weight is Weight.CONSIDER
    assert finding.limit_mm == pytest.approx(needed)
    assert all("folds-rub" not in rules(room) for room in offered(out(2 * INCH), the(out(2 * INCH), "folds-rub")))
    assert offered(out(2 * INCH), the(out(2 * INCH), "folds-rub"))


def test_over_the_casing_they_need_its_thickness_too() -> None:
    # Brackets 1 in beyond the opening: the open stack covers the casing, 3/4 in thick (from memory).
    near = reach(good_room(), inch(3))
    assert the(rod(near, projection=inch(3.5)), "folds-rub").limit_mm == pytest.approx(4 * INCH)
    assert "folds-rub" not in rules(rod(near, projection=inch(4)))


def test_rings_seven_inches_apart_need_more() -> None:
    # 56 in flat on nine rings 7 in apart: 3 1/2 and 1/4 in.
    wide = panels(good_room(), flat_width=inch(9.5))
    assert the(rod(wide, projection=inch(2)), "folds-rub").limit_mm == pytest.approx((9.5 / 2 / 2 + 0.25) * INCH)


def test_panels_that_never_draw_and_mounts_inside_are_not_asked() -> None:
    assert "folds-rub" not in rules(panels(out(2 * INCH), stationary=True))


# --- rings-tight ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("room_mm", "weight"),
    [
        (0.25 * INCH, None),
        (0.25 * INCH - HALF + HAIR, None),
        (0.25 * INCH - HALF - HAIR, Weight.CONSIDER),
        (0.0, Weight.CONSIDER),
        (-HAIR, Weight.BROKEN),
    ],
)
def test_rings_a_quarter_inch_wider_than_their_rod(room_mm: float, weight: Weight | None) -> None:
    # highlandforge.com/measuring-tips-rings: 1/4 to 1/2 in between pole and ring.
    room = at(good_room(), LAYER, ring=mm(0.922 * INCH + room_mm))
    if weight is None:
        assert "rings-tight" not in rules(room)
        return
    finding = the(room, "rings-tight")
    assert finding.weight is weight
    assert offered(room, finding)
    assert all("rings-tight" not in rules(one) for one in offered(room, finding))


def test_an_eyelet_for_the_thickest_rod_of_a_guide() -> None:
    # allpeoplequilt.com: eyelets 1 9/16 in wide inside for rods up to 1 3/8 in.
    room = rod(at(good_room(), LAYER, heading="eyelets", ring=inch(1.5625)), diameter=inch(1.375))
    assert "rings-tight" not in rules(room)
    assert "rings-tight" in rules(rod(room, diameter=inch(1.375 + 1 / 16)))


def test_rings_not_measured_are_not_judged() -> None:
    assert "rings-tight" not in rules(good_room())


# --- cloth-narrow -----------------------------------------------------------------------------------------------


def wishing(fullness: float | None, returns: bool = False) -> Room:
    return at(good_room(), LAYER, making=Making(fullness=fullness, returns=returns))


def test_cloth_for_the_fullness_that_was_wished() -> None:
    # Each panel has 28 in of the rod to cover and 54 in of cloth: 1.928 times.
    assert "cloth-narrow" not in rules(wishing(54 / 28))
    assert "cloth-narrow" not in rules(wishing(54 / 28 + 0.001))
    finding = the(wishing(2.0), "cloth-narrow")
    assert finding.weight is Weight.CONSIDER
    assert finding.limit_mm == pytest.approx(56 * INCH)
    made = offered(wishing(2.0), finding)
    assert made
    assert all("cloth-narrow" not in rules(room) for room in made)
    assert "2.00" in said(finding.text)


def test_a_return_takes_cloth_and_nothing_wished_is_not_judged() -> None:
    # Return: 3 1/2 in and 1/2 in; at twice (the heading's usual) 28 + 4 take 64 in.
    assert the(wishing(None, True), "cloth-narrow").limit_mm == pytest.approx(64 * INCH)
    assert "cloth-narrow" not in rules(good_room())


# --- panel-length -----------------------------------------------------------------------------------------------


def in_hand(long_in: float, hem: Hem | None = None) -> Room:
    """Panels measured; wished 6 in below the opening's sill: the top of the cloth is at 82 1/2 in, so 58 1/2 in long."""
    room = at(good_room(), LAYER, hem=Hem("apron", inch(6)) if hem is None else hem)
    return panels(room, measured_length=inch(long_in))


@pytest.mark.parametrize(
    ("off_mm", "weight"),
    [
        (0.0, None),
        (0.25 * INCH + HALF - HAIR, None),
        (0.25 * INCH + HALF + HAIR, Weight.BROKEN),
        (-0.25 * INCH - HALF + HAIR, None),
        (-0.25 * INCH - HALF - HAIR, Weight.CONSIDER),
    ],
)
def test_a_panel_in_hand_at_its_wished_length(off_mm: float, weight: Weight | None) -> None:
    room = in_hand(58.5 + off_mm / INCH)
    if weight is None:
        assert "panel-length" not in rules(room)
        return
    finding = the(room, "panel-length")
    assert finding.weight is weight
    made = offered(room, finding)
    assert made
    assert all("panel-length" not in rules(one) for one in made)


def test_the_rod_sticks_where_the_panels_reach_their_hem() -> None:
    room = in_hand(60)
    laid = scene(room)
    places = [one for one in stickings(laid, laid.set_out.treatments[0]) if "reach their hem" in one.reason.template]
    # 1 1/2 in too long: as much higher than 84 1/4 in.
    assert [place.value_mm / INCH for place in places] == pytest.approx([85.75])


def test_hems_at_the_floor_are_other_rules_matter() -> None:
    assert "panel-length" not in rules(in_hand(70, Hem("clear")))


# --- wash -------------------------------------------------------------------------------------------------------


def shrinking(share: float, **making: Any) -> Room:
    room = at(good_room(), LAYER, fabric=Fabric(shrinks=share), making=Making(**making))
    return at(room, LAYER, hem=Hem("length", inch(80)))


def test_a_hem_that_rises_half_an_inch_in_the_wash() -> None:
    # 80 in long: half an inch is 1/160 of it.
    assert "wash" not in rules(shrinking(1 / 160))
    assert "wash" not in rules(shrinking((0.5 * INCH + HALF - HAIR) / (80 * INCH)))
    finding = the(shrinking((0.5 * INCH + HALF + HAIR) / (80 * INCH)), "wash")
    assert finding.weight is Weight.CONSIDER
    assert the(shrinking(0.03), "wash").measured_mm == pytest.approx(2.4 * INCH)
    made = offered(shrinking(0.03), the(shrinking(0.03), "wash"))
    assert [layer_of(room, LAYER).making.washed_first for room in made] == [True]
    assert "wash" not in rules(shrinking(0.03, washed_first=True))


def test_cloth_that_lies_on_the_floor_may_rise_unseen() -> None:
    linen = at(good_room(), LAYER, fabric=Fabric(row="linen-light"))
    assert "wash" in rules(linen)
    assert "wash" not in rules(at(linen, LAYER, hem=Hem("puddle", inch(8))))
    assert "wash" not in rules(at(linen, LAYER, fabric=Fabric(row="linen-light", shrinks=0.0)))
    assert "wash" not in rules(good_room())


def test_a_panel_still_to_be_made_is_as_long_as_its_hem_asks() -> None:
    room = at(good_room(), LAYER, hem=Hem("apron", inch(6)))
    laid = scene(room)
    assert "panel-length" not in rules(room)
    assert not [one for one in stickings(laid, laid.set_out.treatments[0]) if "reach their hem" in one.reason.template]


# --- where findings point, and the sides of things ----------------------------------------------------------------


@pytest.mark.parametrize("mirrored", [False, True])
def test_the_stack_beside_the_casing_and_just_over_it(mirrored: bool) -> None:
    # Left side of the opening at 54 in, casing of 2 1/4 in: it begins at 51 3/4 in. Open cloth ends 4 in beyond the opening
    # where the rod reaches 10 in beyond: 1 3/4 in beside the casing, which it covers once the rod reaches less than 8 1/4.
    panel = "right" if mirrored else "left"

    def needed(beyond_in: float) -> float:
        room = panels(reach(good_room(), inch(beyond_in)), stationary=True)
        one = at(room, (*LAYER, "p2" if mirrored else "p1"), stationary=False)
        finding = the(rod(one, projection=inch(2)), "folds-rub")
        assert panel in said(finding.text)
        return (finding.limit_mm or 0.0) / INCH

    assert needed(8.25 + 1 / 64) == pytest.approx(3.25)
    assert needed(8.25 - 1 / 64) == pytest.approx(4.0)


def test_cloth_that_ends_above_the_casing_does_not_reach_it() -> None:
    # The casing's top is at 80 1/4 in; a frill of 2 in ends at 80 1/2 in, one of 2 1/2 in below it.
    near = rod(reach(good_room(), inch(3)), projection=inch(2))
    assert the(at(near, LAYER, hem=Hem("length", inch(2))), "folds-rub").limit_mm == pytest.approx(3.25 * INCH)
    assert the(at(near, LAYER, hem=Hem("length", inch(2.5))), "folds-rub").limit_mm == pytest.approx(4 * INCH)
    bare = at(near, ("w1", "o1"), casing=inch(0))
    assert the(bare, "folds-rub").limit_mm == pytest.approx(3.25 * INCH)


def test_pleats_reach_half_of_what_lies_between_them() -> None:
    # Spaces of up to 4 in between triple pleats (a workroom book): 2 in and 1/4 in stacked, or the closed fold's.
    room = at(rod(good_room(), projection=inch(1)), LAYER, heading="pinch-pleat")
    layer = scene(room).set_out.treatments[0].layers[0]
    closed = max(panel.fold_depth_mm for panel in layer.panels) / 2 / INCH + 0.75
    assert the(room, "folds-rub").limit_mm == pytest.approx((max(2.0, closed) + 0.25) * INCH)


def test_pieces_side_by_side_are_as_deep_as_one() -> None:
    one, two = rod(good_room(), projection=inch(2)), rod(panels(good_room(), count=2), projection=inch(2))
    layer = scene(two).set_out.treatments[0].layers[0]
    assert layer.panels[0].rings == 20
    # Half of 6 in either way; two pieces stack 9 in and come over the casing by that.
    assert the(one, "folds-rub").limit_mm == pytest.approx(3.25 * INCH)
    assert the(two, "folds-rub").limit_mm == pytest.approx(4.0 * INCH)


def test_findings_point_at_what_they_are_about() -> None:
    rub = the(out(2 * INCH), "folds-rub")
    layer = scene(out(2 * INCH)).set_out.treatments[0].layers[0]
    stacks = [pytest.approx((panel.open[0] + panel.open[1]) / 2) for panel in layer.panels]
    assert rub.at is not None
    assert rub.at[0] in stacks
    ring = the(at(good_room(), LAYER, ring=inch(0.9)), "rings-tight")
    assert ring.at == pytest.approx((72 * INCH, 84.25 * INCH))
    for room, rule in ((wishing(2.0), "cloth-narrow"), (in_hand(60), "panel-length"), (shrinking(0.03), "wash")):
        finding = the(room, rule)
        landed = scene(room).set_out.treatments[0].layers[0].panels
        assert finding.at is not None
        assert any(panel.closed[0] < finding.at[0] < panel.closed[1] for panel in landed)
        assert landed[0].hem_low_mm - HAIR <= finding.at[1] <= landed[0].top_mm


def test_a_thinner_rod_is_the_thickest_of_its_kind_that_fits() -> None:
    room = at(good_room(), LAYER, ring=inch(1))
    thin = [one for one in offered(room, the(room, "rings-tight")) if layer_of(one, LAYER).rod.section != "conduit-3/4"]
    section = trade().sections[layer_of(thin[0], LAYER).rod.section]
    now = trade().sections["conduit-3/4"]
    assert section.material == now.material
    assert section.outer_mm + 0.25 * INCH <= INCH
    others = [row.outer_mm for row in trade().sections.values() if row.material == now.material]
    assert section.outer_mm == max(outer for outer in others if outer + 0.25 * INCH <= INCH)


def test_the_panel_that_is_said_too_long_is_as_long_as_it_is() -> None:
    finding = the(in_hand(60), "panel-length")
    assert finding.measured_mm == pytest.approx(60 * INCH)
    assert finding.limit_mm == pytest.approx(58.5 * INCH)
    assert "1¹⁄₂ in too long" in said(finding.text)
    assert "60 in long" in said(finding.text)
    short = the(in_hand(57), "panel-length")
    assert "1¹⁄₂ in too short" in said(short.text)


def test_two_pieces_need_half_of_it_each() -> None:
    room = panels(wishing(2.0), flat_width=inch(20), count=2)
    assert the(room, "cloth-narrow").limit_mm == pytest.approx(56 * INCH)
    widths = {layer_of(one, LAYER).panels[0].flat_width.mm / INCH for one in offered(room, the(room, "cloth-narrow"))}
    assert any(width == pytest.approx(28) for width in widths)


def test_nobody_is_asked_to_be_content_with_less_than_once() -> None:
    less = panels(wishing(2.0), flat_width=inch(27.5))
    assert all(layer_of(one, LAYER).making.fullness == 2.0 for one in offered(less, the(less, "cloth-narrow")))
