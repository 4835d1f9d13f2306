"""What is found about a pelmet, and what clears it; figures by hand from ``rooms.py``.

The rod is 84 1/4 in high, from 44 to 100 in, 3 1/2 in out from the wall; ball finials end beyond it. The curtain is 82 in
long: a sixth to a fifth of it (handbooks) is 13 2/3 to 16 2/5 in. The top of the cloth is at 82 1/2 in, the top of the
glass at 78 in (the frame was not measured), the ceiling at 96 in.
"""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.findings.model import Finding, Weight
from elevation.findings.shapes import front_of
from elevation.planning.remedies import remedies
from elevation.room.dressing import usual_pelmet
from elevation.room.model import Pelmet, Room, Sash, Scheme
from elevation.setting_out.model import TreatmentOut
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
    obstacle,
    said,
    scene,
    the,
    trade,
    treatment,
    window,
    with_obstacle,
)

TREATMENT = LAYER[:3]
A_HAIR = 0.1
USUAL = Pelmet(depth=inch(14), above=inch(4), left=inch(6), right=inch(6), projection=inch(8))


def dressed(room: Room | None = None, **fields: Any) -> Room:
    return at(good_room() if room is None else room, TREATMENT, pelmet=replace(USUAL, **fields))


def landed(room: Room) -> TreatmentOut:
    return scene(room).set_out.treatments[0]


def labels(room: Room, finding: Finding) -> list[str]:
    return [said(one.label) for one in remedies(room, "w1", "s1", finding, trade()).offered]


def test_where_it_lands() -> None:
    pelmet = landed(dressed()).pelmet
    assert pelmet is not None
    sides = (pelmet.left_mm, pelmet.bottom_mm, pelmet.right_mm, pelmet.top_mm, pelmet.out_mm)
    assert [round(side / INCH, 6) for side in sides] == [38, 74.25, 106, 88.25, 8]


def test_one_in_proportion_with_room_behind_it_has_nothing_to_find() -> None:
    assert found(dressed()) == ()


def test_the_one_that_the_form_begins_with_is_in_proportion_and_clear() -> None:
    plain = landed(good_room())
    panel, support = plain.layers[0].panels[0], plain.layers[0].support
    made = usual_pelmet(
        good_room(),
        panel.finished_length_mm or 0.0,
        panel.heading_mm,
        support.left_mm - support.metal_left_mm,
        front_of(plain.layers[0]),
        support.height_mm - plain.openings[0].glass_top_mm,
        96 * INCH - support.height_mm,
    )
    assert found(at(good_room(), TREATMENT, pelmet=made)) == ()


@pytest.mark.parametrize(
    ("depth", "weight"),
    [
        (82 * 0.166667 * INCH - HALF, None),
        (82 * 0.166667 * INCH - HALF - A_HAIR, "shallow"),
        (82 / 5 * INCH + HALF, None),
        (82 / 5 * INCH + HALF + A_HAIR, "deep"),
    ],
)
def test_depth_in_proportion(depth: float, weight: str | None) -> None:
    room = dressed(depth=mm(depth), above=inch(10))
    findings = found(room, "pelmet-depth")
    assert bool(findings) is (weight is not None)
    if findings:
        assert findings[0].weight is Weight.CONSIDER
        wanted = "Make the pelmet 13¹¹⁄₁₆ in deep" if weight == "shallow" else "Make the pelmet 16³⁄₈ in deep"
        assert wanted in labels(room, findings[0])


def test_too_near_the_wall_for_the_folds_it_is_broken() -> None:
    front = front_of(landed(good_room()).layers[0])
    assert not found(dressed(projection=mm(front)), "pelmet-clear")
    room = dressed(projection=mm(front - HALF - A_HAIR))
    one = the(room, "pelmet-clear")
    assert one.weight is Weight.BROKEN
    assert labels(room, one)[0].startswith("Stand the pelmet ")


def test_too_short_for_the_finials_it_is_broken() -> None:
    support = landed(good_room()).layers[0].support
    past = support.left_mm - support.metal_left_mm
    assert past > 0
    assert not found(dressed(left=mm(past), right=mm(past)), "pelmet-clear")
    room = dressed(left=mm(past - HALF - A_HAIR))
    one = the(room, "pelmet-clear")
    assert "too long to end behind the pelmet" in said(one.text)
    assert any(label.startswith("End the pelmet ") for label in labels(room, one))


def test_the_heading_is_hidden_and_little_glass() -> None:
    # Lower edge at the top of the cloth: 88 1/4 - 82 1/2 = 5 3/4 in deep.
    assert not found(dressed(depth=inch(5.75)), "pelmet-cover")
    shows = the(dressed(depth=mm(5.75 * INCH - HALF - A_HAIR)), "pelmet-cover")
    assert "shows the heading" in said(shows.text)
    # 4 in of glass: lower edge at 74 in, 14 1/4 in deep.
    assert not found(dressed(depth=inch(14.25)), "pelmet-cover")
    room = dressed(depth=mm(14.25 * INCH + HALF + A_HAIR))
    covers = the(room, "pelmet-cover")
    assert covers.weight is Weight.CONSIDER
    assert labels(room, covers)[0] == "Set the pelmet's top 4¹⁄₁₆ in over the rod"


def test_through_the_ceiling_it_stops_and_is_lowered() -> None:
    def under(value: float) -> Room:
        return ceiling(dressed(), mm(88.25 * INCH + value))

    assert not found(under(0), "pelmet-meets")
    one = the(under(-A_HAIR), "pelmet-meets")
    assert one.weight is Weight.STOP
    assert labels(under(-A_HAIR), one)[0].startswith("Set the pelmet's top 3¹⁵⁄₁₆ in over")


def test_past_the_walls_end_it_stops_and_not_where_the_wall_is_open() -> None:
    assert not found(dressed(left=inch(44), right=inch(44)), "pelmet-meets")
    room = dressed(left=mm(44 * INCH + A_HAIR))
    one = the(room, "pelmet-meets")
    assert one.weight is Weight.STOP
    assert "left end" in said(one.text)
    wall = room.walls[0]
    assert not found(at(room, ("w1",), left=replace(wall.left, kind="open")), "pelmet-meets")


def test_what_is_flat_may_stand_behind_it_and_nothing_across_its_outline() -> None:
    behind = obstacle("switch", 60 * INCH, 80 * INCH, 50, 50, 10)
    assert not found(with_obstacle(dressed(), behind), "pelmet-meets")
    across = obstacle("picture", 30 * INCH, 80 * INCH, 8 * INCH + A_HAIR, 50, 10)
    room = with_obstacle(dressed(), across)
    one = the(room, "pelmet-meets")
    assert "picture" in said(one.text)
    # The returns stand 6 in beyond the rod; a sixteenth less, and they clear it.
    assert "End the pelmet 5¹⁵⁄₁₆ in beyond the rod on the left" in labels(room, one)
    beside = obstacle("picture", 30 * INCH, 80 * INCH, 8 * INCH, 50, 10)
    assert not found(with_obstacle(dressed(), beside), "pelmet-meets")
    through = obstacle("light", 60 * INCH, 80 * INCH, 50, 50, 8 * INCH + A_HAIR)
    assert found(with_obstacle(dressed(), through), "pelmet-meets")


def test_a_sash_that_swings_past_its_front_may_not_meet_it() -> None:
    room = at(dressed(), OPENING, sash=Sash(kind="casement-in", hinge="left"))
    one = the(room, "pelmet-meets")
    assert one.weight is Weight.STOP
    assert "swings" in said(one.text)
    # With its lower edge at the head nothing meets.
    assert not found(at(dressed(depth=inch(10.25)), OPENING, sash=Sash(kind="casement-in", hinge="left")), "pelmet-meets")


def test_two_pelmets_may_touch_but_not_meet() -> None:
    def both(gap: float) -> Room:
        second = treatment("t2", ("o2",))
        beside = window("o2", left=54 + 68 + gap)
        room = good_room(width=inch(300), openings=(window(), beside))
        room = at(room, ("w1",), schemes=(Scheme(id="s1", treatments=(treatment(), second)),))
        for key in ("t1", "t2"):
            room = at(room, ("w1", "s1", key), pelmet=USUAL)
        return room

    assert not found(both(0), "pelmet-meets")
    assert {one.subject[2] for one in found(both(-0.01), "pelmet-meets")} == {"t1", "t2"}


def test_it_is_screwed_on() -> None:
    room = at(dressed(), (), no_holes=True)
    one = next(one for one in found(room, "no-holes") if one.subject == TREATMENT)
    assert labels(room, one) == ["Take the pelmet away"]


def test_it_lowers_the_way_out() -> None:
    # A casement that opens outward is clear up to its head at 78 in; the pelmet ends at 74 1/4 in: 44 1/4 in are left.
    room = at(dressed(), (), sleeping=True)
    room = at(room, OPENING, escape=True, sash=Sash(kind="casement-out", hinge="left"))
    assert not [one for one in found(room, "escape") if one.weight is Weight.STOP]
    # 24 in of height are asked for (IRC R310.2.1): lower edge at 54 in and a sixteenth's half more.
    deep = mm((88.25 - 54) * INCH + HALF + A_HAIR)
    low = at(dressed(depth=deep), (), sleeping=True)
    low = at(low, OPENING, escape=True, sash=Sash(kind="casement-out", hinge="left"))
    assert [one.subject for one in found(low, "escape") if one.weight is Weight.STOP] == [TREATMENT]


def test_the_glass_that_it_covers_is_never_clear() -> None:
    plain, made = landed(good_room()).glass, landed(dressed()).glass
    # 3 3/4 in of 48 in, over the whole width.
    assert made.clear_open == pytest.approx(plain.clear_open - 3.75 / 48)


def test_inside_an_opening_it_is_left_out_of_account() -> None:
    assert landed(at(dressed(), TREATMENT, mount="reveal")).pelmet is None
