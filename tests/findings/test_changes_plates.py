"""What is tried for plates over boxes and cables, on casings, and beside their rod: each list whole, worked by hand.

Plates from ``rooms.py``: the left one from 45 1/4 to 46 3/4 in around 46 in, the right one from 97 1/4 to 98 3/4 in around
98 in, both from 81 3/4 to 85 3/4 in up. A cable's band reaches 2 in beyond its box (from memory).
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Change, Weight
from elevation.findings.rules import on_casing
from elevation.room.model import Obstacle, Room
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    RIGHT_BRACKET,
    at,
    candidates,
    found,
    good_room,
    held,
    inch,
    layer,
    obstacle,
    rod,
    said,
    said_all,
    scene,
    the,
    with_obstacle,
)
from tests.findings.test_carrying import three_brackets


def thing(kind: str, left: float, bottom: float, width: float, height: float) -> Obstacle:
    """An obstacle flat on the wall, in inches."""
    return obstacle(kind, left * INCH, bottom * INCH, width * INCH, height * INCH)


def possible(changes: list[Change]) -> list[str]:
    return said_all(change for change in changes if change.is_possible)


# --- over-box -------------------------------------------------------------------------------------------------


def test_off_a_shelf_along_the_wall_with_the_rod_s_ends_or_over_it() -> None:
    # The shelf begins 1/4 in under the plate and ends at 56 1/2 in; its top, 83 in, is 1 1/4 in over the plate's foot.
    room = with_obstacle(good_room(), thing("shelf", 46.5, 82, 10, 1))
    changes = candidates(room, "over-box")
    assert possible(changes) == [
        "Move the left end bracket ¹⁄₄ in to the left",
        "Move the left end bracket 11¹⁄₄ in to the right",
        "Set both rod ends 10¹⁄₄ in beyond the opening",
        "Set the left rod end 10¹⁄₄ in beyond the opening",
        "Set the rod 5¹⁄₄ in above the casing",
    ]
    # With the rod's ends to the right they would stand 1 1/4 in inside the opening: tried, to tell what is in the way.
    assert said_all(change for change in changes if not change.is_possible) == [
        "Set both rod ends −1¹⁄₄ in beyond the opening",
        "Set the left rod end −1¹⁄₄ in beyond the opening",
    ]


OFF_THE_LEFT_BAND = [
    # From 44 1/2 to 51 1/2 in: 2 1/4 in to the left, past the rod's end, or 6 1/4 in to the right.
    "Move the left end bracket 6¹⁄₄ in to the right",
    "Set both rod ends 12¹⁄₄ in beyond the opening",
    "Set the left rod end 12¹⁄₄ in beyond the opening",
    "Set both rod ends 3³⁄₄ in beyond the opening",
    "Set the left rod end 3³⁄₄ in beyond the opening",
]


def test_off_an_outlet_is_off_its_cable_as_well() -> None:
    room = with_obstacle(good_room(), thing("outlet", 46.5, 82, 3, 3))
    changes = candidates(room, "over-box")
    assert possible(changes) == OFF_THE_LEFT_BAND
    assert said(changes[0].label) == "Move the left end bracket 2¹⁄₄ in to the left"
    # Another outlet, told first, has a cable of its own.
    both = with_obstacle(good_room(), thing("outlet", 20, 12, 3, 3), thing("outlet", 46.5, 82, 3, 3))
    assert possible(candidates(both, "over-box")) == OFF_THE_LEFT_BAND


def test_off_a_cable_on_either_side() -> None:
    low_left = with_obstacle(good_room(), thing("picture", 10, 50, 5, 5), thing("outlet", 46.5, 12, 3, 3))
    hit = the(low_left, "over-box")
    assert hit.weight is Weight.CONSIDER
    assert said(hit.text) == ("Window 1: a cable of the outlet likely runs where the left end bracket is to be drilled.")
    assert possible(candidates(low_left, "over-box")) == OFF_THE_LEFT_BAND
    # Mirrored: from 92 1/2 to 99 1/2 in.
    low_right = with_obstacle(good_room(), thing("outlet", 94.5, 12, 3, 3))
    assert possible(candidates(low_right, "over-box")) == [
        "Move the right end bracket 6¹⁄₄ in to the left",
        "Set both rod ends 12¹⁄₄ in beyond the opening",
        "Set the right rod end 12¹⁄₄ in beyond the opening",
        "Set both rod ends 3³⁄₄ in beyond the opening",
        "Set the right rod end 3³⁄₄ in beyond the opening",
    ]


def test_a_bracket_in_the_middle_moves_alone_the_nearer_way_first() -> None:
    # Strap of 1 1/2 in at 72 in; bands from 68 3/4 to 74 3/4 in, then from 69 1/4 to 75 1/4 in.
    middle = three_brackets("shop-strap", parks=("left", "right"))
    assert possible(candidates(with_obstacle(middle, thing("outlet", 70.75, 12, 2, 3)), "over-box")) == [
        "Move bracket 2 from the left 3¹⁄₂ in to the right",
        "Move bracket 2 from the left 4 in to the left",
    ]
    assert possible(candidates(with_obstacle(middle, thing("outlet", 71.25, 12, 2, 3)), "over-box")) == [
        "Move bracket 2 from the left 3¹⁄₂ in to the left",
        "Move bracket 2 from the left 4 in to the right",
    ]


def test_a_rod_in_a_band_along_the_wall_goes_under_it_or_over_it() -> None:
    # A light from 84 to 88 in, its band from 82 to 90 in: under it is 3 3/4 in lower, over it 8 1/4 in higher.
    room = with_obstacle(good_room(), thing("light", 125, 84, 4, 4))
    hit = the(room, "over-box")
    assert hit.subject == LAYER
    assert hit.at == pytest.approx((46 * INCH, 84.25 * INCH))
    assert possible(candidates(room, "over-box")) == [
        "Set the rod ¹⁄₄ in above the casing",
        "Set the rod 12¹⁄₄ in above the casing",
    ]


def test_the_nearer_way_out_of_a_band_is_tried_first() -> None:
    # A light from 78 to 82 in, its band from 76 to 84 in: over it 2 1/4 in higher, under it 9 3/4 in lower, on the casing.
    room = with_obstacle(good_room(), thing("light", 125, 78, 4, 4))
    assert said_all(candidates(room, "over-box")) == [
        "Set the rod 6¹⁄₄ in above the casing",
        "Set the rod −5³⁄₄ in above the casing",
    ]


def test_a_bracket_that_hangs_already_is_not_warned_of_cables() -> None:
    def hung(room: Room) -> Room:
        return at(at(room, LEFT_BRACKET, height=inch(84.25)), RIGHT_BRACKET, height=inch(84.25))

    for room in (
        with_obstacle(good_room(), thing("outlet", 46.5, 12, 3, 3)),
        with_obstacle(good_room(), thing("light", 125, 84, 4, 4)),
    ):
        assert found(room, "over-box")
        assert not found(hung(room), "over-box")


def test_cables_and_pipes_each_name_their_own_authority() -> None:
    # Where the room has a figure of its own for one of them, only that one is the room's.
    for own in ("cable-band", "pipe-band"):
        for kind, limit in (("outlet", "cable-band"), ("pipe", "pipe-band")):
            room = at(good_room(), (), limits={own: inch(2)})
            hit = found(with_obstacle(room, thing(kind, 46.5, 12, 1, 30)), "over-box")[0]
            assert ("own limit" in said(hit.authority)) is (limit == own)


# --- no-bracket -----------------------------------------------------------------------------------------------


def on_the_wall(left: float, right: float | None = None) -> Room:
    """Brackets at those places of the wall, in inches; the rod runs from 44 to 100 in."""
    first, second = layer().brackets
    of = [replace(first, place=held("from-wall-left", inch(left)))]
    if right is not None:
        of.append(replace(second, place=held("from-wall-left", inch(right))))
    return at(good_room(), LAYER, brackets=tuple(of))


@pytest.mark.parametrize(
    ("room", "subject", "moves", "x"),
    [
        # 2 in in from the end is usual (common practice, no source).
        (on_the_wall(43, 98), LEFT_BRACKET, "Move the left end bracket 3 in to the right", 43),
        (on_the_wall(46, 101.5), RIGHT_BRACKET, "Move the right end bracket 3¹⁄₂ in to the left", 101.5),
        (on_the_wall(20, 98), LEFT_BRACKET, "Move the left end bracket 26 in to the right", 20),
        (on_the_wall(46, 125), RIGHT_BRACKET, "Move the right end bracket 27 in to the left", 125),
    ],
)
def test_a_bracket_beside_its_rod_goes_onto_it_from_however_far(room, subject, moves, x) -> None:
    one = next(each for each in found(room, "no-bracket") if each.subject == subject)
    assert one.weight is Weight.STOP
    assert one.measured_mm == pytest.approx(-max(44 - x, x - 100) * INCH)
    assert one.limit_mm == 0.0
    assert one.at == pytest.approx((x * INCH, 84.25 * INCH))
    assert said(one.authority) == "statics: a rod on one support turns over"
    which = [each.subject for each in found(room, "no-bracket")].index(subject)
    assert said_all(candidates(room, "no-bracket", which)) == [moves]


def test_a_rod_on_one_bracket_gets_another_or_its_stray_one_back() -> None:
    alone = the(on_the_wall(46), "no-bracket")
    assert alone.at == pytest.approx((72 * INCH, 84.25 * INCH))
    assert said_all(candidates(on_the_wall(46), "no-bracket")) == ["Add the bracket at the other end, 2 in in"]
    # Brackets at the very ends stay there.
    for end in (44, 100):
        assert said_all(candidates(on_the_wall(end), "no-bracket")) == ["Add the bracket at the other end, 0 in in"]
    stray = on_the_wall(46, 101)
    assert [each.subject for each in found(stray, "no-bracket")] == [LAYER, RIGHT_BRACKET]
    assert said_all(candidates(stray, "no-bracket", 0)) == [
        "Add the bracket at the other end, 2 in in",
        "Move the right end bracket 3 in to the left",
    ]


# --- on-casing ------------------------------------------------------------------------------------------------


def test_a_plate_on_the_casing_may_be_a_smaller_one() -> None:
    # The strap hangs 2 1/2 in under the axis; 2 in above the casing only kits that reach less far down stay off it.
    room = rod(at(good_room(), LEFT_BRACKET, place=held("from-wall-left", inch(60))), height=held("above-casing", inch(2)))
    labels = said_all(candidates(room, "on-casing"))
    assert [label for label in labels if label.startswith("Use")] == [
        "Use a smaller bracket there: metal bracket with 25 mm cup",
        "Use a smaller bracket there: cup bracket",
        "Use a smaller bracket there: wall flange",
    ]


def test_brackets_stick_just_beside_the_casing_on_either_side() -> None:
    # Casing from 51 3/4 to 92 1/4 in; the plate 3/4 in to either side of its centre.
    here = scene(good_room())
    places = [one for one in on_casing.RULE.stickings(here, here.set_out.treatments[0]) if one.axis == "bracket"]
    assert {(one.ref, round(one.value_mm / INCH, 6)) for one in places} == {
        (ref, x) for ref in (LEFT_BRACKET, RIGHT_BRACKET) for x in (51.0, 93.0)
    }
