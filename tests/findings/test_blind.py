"""What is found about a blind behind, and what clears it; figures by hand from ``rooms.py``.

On the wall above the casing, whose top is at 80 1/4 in, a box 3 in high ends at 83 1/4 in; the rod's underside is at
84 1/4 - 0.461 in. Free cords: ANSI/WCMA A100.1-2022, EN 13120 (both only cited, not quoted).
"""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.findings.model import Finding, Weight
from elevation.findings.shapes import back_of
from elevation.planning.remedies import remedies
from elevation.room.model import Blind, Room, Sash
from elevation.setting_out.model import BlindOut
from tests.findings.rooms import (
    HALF,
    INCH,
    LAYER,
    OPENING,
    at,
    ceiling,
    found,
    good_room,
    inch,
    mm,
    rod,
    said,
    scene,
    the,
    trade,
)

TREATMENT = LAYER[:3]
A_HAIR = 0.1
ON_WALL = Blind(height=inch(3), projection=inch(1.5), place="wall")
INSIDE = Blind(height=inch(3), projection=inch(2))


def blinded(blind: Blind = ON_WALL, room: Room | None = None, **fields: Any) -> Room:
    return at(good_room() if room is None else room, TREATMENT, blind=replace(blind, **fields))


def landed(room: Room) -> BlindOut:
    return scene(room).set_out.treatments[0].blinds[0]


def labels(room: Room, finding: Finding) -> list[str]:
    return [said(one.label) for one in remedies(room, "w1", "s1", finding, trade()).offered]


def test_on_the_wall_it_stands_on_the_casing_as_wide_as_that() -> None:
    blind = landed(blinded())
    sides = (blind.left_mm, blind.bottom_mm, blind.right_mm, blind.top_mm, blind.out_mm)
    assert [round(side / INCH, 6) for side in sides] == [51.75, 80.25, 92.25, 83.25, 1.5]
    assert landed(blinded(width=inch(50), above=inch(1))).left_mm == pytest.approx(47 * INCH)


def test_in_the_reveal_it_hangs_under_the_head_from_jamb_to_jamb() -> None:
    room = at(good_room(), OPENING, reveal=inch(4))
    blind = landed(blinded(INSIDE, room, drop=inch(20)))
    sides = (blind.left_mm, blind.bottom_mm, blind.right_mm, blind.top_mm, blind.out_mm, blind.hem_mm)
    assert [round(side / INCH, 6) for side in sides] == [54, 75, 90, 78, -2, 55]
    # A reveal that nobody measured lets nothing be found.
    assert landed(blinded(INSIDE)).out_mm == 0


def test_room_behind_the_folds() -> None:
    back = back_of(scene(good_room()).set_out.treatments[0].layers[0])
    assert not found(blinded(projection=mm(back)), "blind-behind")
    room = blinded(projection=mm(back + HALF + A_HAIR))
    one = the(room, "blind-behind")
    assert one.weight is Weight.BROKEN
    assert labels(room, one)[0].startswith("Hold the rod 3⁹⁄₁₆ in out")


def test_a_chain_needs_room_of_its_own() -> None:
    back = back_of(scene(good_room()).set_out.treatments[0].layers[0])
    assert not found(blinded(projection=mm(back - 0.75 * INCH), cord="loop"), "blind-behind")
    assert found(blinded(projection=mm(back - 0.75 * INCH + HALF + A_HAIR), cord="loop"), "blind-behind")


def test_a_rod_may_not_run_into_the_box() -> None:
    # The rod's back is 3 1/2 - 0.461 in from the wall; the box reaches farther, and up to the rod.
    deep = blinded(projection=inch(4), height=inch(4))
    one = the(deep, "blind-behind")
    assert one.weight is Weight.STOP
    assert "runs" in said(one.text)
    assert "Hang the blind in the reveal" in labels(deep, one)
    # Above the box the rod is clear of it, whatever the cloth does.
    high = rod(deep, height=replace(good_room().walls[0].schemes[0].treatments[0].layers[0].rod.height, at=inch(5)))
    assert all(found.weight is not Weight.STOP for found in found(high, "blind-behind"))


def test_no_room_under_a_ceiling() -> None:
    assert not found(ceiling(blinded(), inch(83.25)), "blind-behind")
    room = ceiling(blinded(), mm(83.25 * INCH - A_HAIR))
    assert the(room, "blind-behind").weight is Weight.STOP


def test_a_sash_that_swings_in_meets_a_box_in_the_reveal() -> None:
    room = at(good_room(), OPENING, reveal=inch(4), sash=Sash(kind="casement-in", hinge="left"))
    one = next(one for one in found(blinded(INSIDE, room), "blind-behind"))
    assert one.weight is Weight.STOP
    assert "its sash swings into the box" in said(one.text)
    assert not found(blinded(ON_WALL, room), "blind-behind")


@pytest.mark.parametrize(
    ("cord", "weight"),
    [("none", None), ("held-loop", Weight.CONSIDER), ("loop", Weight.STOP), ("cords", Weight.STOP)],
)
def test_cords_where_children_are(cord: Any, weight: Weight | None) -> None:
    assert not found(blinded(cord=cord), "child-cord")
    room = at(blinded(cord=cord), (), children=True)
    findings = found(room, "child-cord")
    assert [one.weight for one in findings] == ([] if weight is None else [weight])
    for one in findings:
        assert one.caution is not None
        assert labels(room, one)[0] == "Choose a blind without cord or chain"


def test_a_box_before_the_glass_hides_it_and_cloth_let_down_does_just_now() -> None:
    def glass(room: Room) -> Any:
        return scene(room).set_out.treatments[0].glass

    plain, made = glass(good_room()), glass(blinded(INSIDE, drop=inch(12)))
    # 3 in of box and 12 in of cloth, of 48 in; the cloth as wide as the opening.
    assert made.clear_open == pytest.approx(plain.clear_open - 3 / 48)
    assert made.clear_drawn == pytest.approx(plain.clear_drawn - 15 / 48)


def test_a_box_takes_from_the_way_out() -> None:
    room = at(good_room(), (), sleeping=True)
    room = at(room, OPENING, escape=True, sash=Sash(kind="casement-out", hinge="left"), height=inch(26))
    assert not [one for one in found(room, "escape") if one.weight is Weight.STOP]
    assert [one.subject for one in found(blinded(INSIDE, room), "escape") if one.weight is Weight.STOP] == [TREATMENT]
