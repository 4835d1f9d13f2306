"""Candidate changes before anything is tried: which figure that is held becomes which, by hand from ``rooms.py``."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.changing import (
    bracket_to,
    from_sash,
    longer_stock,
    plain_ends,
    rod_end,
    rod_ends,
    rod_height,
    rod_projection,
    without_overlap,
)
from elevation.findings.model import Change, Scene
from elevation.room.find import layer_of
from elevation.room.model import Held
from elevation.setting_out.whole import set_out
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    LEFT_PANEL,
    OPENING,
    RIGHT_BRACKET,
    at,
    candidates,
    good_room,
    held,
    inch,
    mm,
    reach,
    rod,
    said,
    said_all,
    scene,
)
from tests.findings.test_mounts import deep, on


def test_a_plate_on_the_casing_goes_up_out_or_along() -> None:
    # The casing's outer edges are at 51 3/4 and 92 1/4 in, its top at 80 1/4 in. With the ends 4 in beyond the opening the
    # brackets' centres are 2 in beyond it, at 52 and 92 in, their plates 3/4 in to either side; the centre line 2 in above
    # the casing takes the plates down to 79 3/4 in.
    room = rod(reach(good_room(), inch(4)), height=held("above-casing", inch(2)))
    for which, side in enumerate(("left", "right")):
        labels = [label for label in said_all(candidates(room, "on-casing", which)) if "plate" not in label]
        assert labels[:4] == [
            "Set the rod 2¹⁄₂ in above the casing",
            "Set both rod ends 5 in beyond the opening",
            f"Set the {side} rod end 5 in beyond the opening",
            f"Move the {side} end bracket 1 in to the {side}",
        ]


def test_of_two_ways_off_the_casing_the_nearer_comes_first() -> None:
    # A middle bracket at 55 in: 4 in to the left (51), 38 in to the right, which is farther than a bracket is moved.
    room = rod(good_room(), height=held("above-casing", inch(2)))
    room = at(room, LEFT_BRACKET, place=held("from-wall-left", inch(55)))
    moves = [label for label in said_all(candidates(room, "on-casing")) if label.startswith("Move")]
    assert moves == ["Move the left end bracket 4 in to the left"]


HEIGHTS = [
    # The centre line is at 84 1/4 in, the ceiling at 96 in, the head at 78 in; wanted is 1 1/8 in more.
    (held("above-casing", inch(4)), "Set the rod 5¹⁄₈ in above the casing"),
    (held("above-head", inch(6.25)), "Set the rod 7³⁄₈ in above the opening"),
    (held("below-ceiling", inch(11.75)), "Set the rod 10⁵⁄₈ in below the ceiling"),
    (held("above-floor", inch(84.25)), "Set the rod 85³⁄₈ in above the floor"),
]


@pytest.mark.parametrize(("how", "label"), HEIGHTS, ids=[how.hold for how, _ in HEIGHTS])
def test_a_rod_is_raised_by_the_figure_that_is_held(how: Held, label: str) -> None:
    here = scene(rod(good_room(), height=how))
    assert said_all(rod_height(here, LAYER, 85.375 * INCH)) == [label]
    # To the graduation it is at already: nothing to do.
    assert said_all(rod_height(here, LAYER, 84.25 * INCH)) == []


INSIDE = [
    # Head at 78 in, sill at 30 in; half of the 48 in between is 54 in.
    ("reveal", Held("below-head", inch(2)), 77.125, "Set the rod ⁷⁄₈ in below the head"),
    ("reveal", Held("above-sill", inch(40)), 71.125, "Set the rod 41¹⁄₈ in above the sill"),
    ("reveal", Held("share-of-opening", inch(0), 0.5), 55.125, "Set the rod 1¹⁄₈ in above 50% of the opening"),
    ("reveal", Held("share-of-opening", inch(0), 0.5), 53.5, "Set the rod −¹⁄₂ in above 50% of the opening"),
    # Cup brackets hold the axis 2 in below a ceiling at 96 in; held 3 in lower it is at 91 in.
    ("ceiling", Held("bracket-drop", inch(3)), 92.5, "Set the rod 1¹⁄₂ in below where its brackets hold it"),
]


@pytest.mark.parametrize(("mount", "how", "wanted", "label"), INSIDE, ids=[f"{how.hold}-{y}" for _, how, y, _ in INSIDE])
def test_a_rod_inside_an_opening_or_under_a_ceiling_is_raised_by_what_is_held(mount, how, wanted, label) -> None:
    here = scene(rod(on(mount, deep()), height=how))
    (change,) = rod_height(here, LEFT_BRACKET, wanted * INCH)
    assert said(change.label) == label
    assert change.is_possible
    landed = scene(change.edit(here.room)).set_out.treatments[0].layers[0].support
    assert landed.height_mm == pytest.approx(wanted * INCH)


def test_a_rod_goes_to_the_first_graduation_beyond_and_slack_may_leave_it_short() -> None:
    here = scene(good_room())
    half, nearly = INCH / 32, 84.25 * INCH + INCH / 32
    assert said_all(rod_height(here, LAYER, nearly)) == ["Set the rod 4¹⁄₁₆ in above the casing"]
    assert said_all(rod_height(here, LAYER, nearly, half)) == []
    assert said_all(rod_height(here, LAYER, nearly + 0.01, half)) == ["Set the rod 4¹⁄₁₆ in above the casing"]
    low = 84.25 * INCH - INCH / 32
    assert said_all(rod_height(here, LAYER, low)) == ["Set the rod 3¹⁵⁄₁₆ in above the casing"]
    assert said_all(rod_height(here, LAYER, low, half)) == []


ENDS = [
    # The rod runs from 44 to 100 in: 10 in beyond the opening, 7 3/4 in beyond the casing, 44 in from either corner.
    (held("beyond-opening", inch(10)), "11 in beyond the opening"),
    (held("beyond-casing", inch(7.75)), "8³⁄₄ in beyond the casing"),
    (held("from-corner", inch(44)), "43 in from the corner"),
]


@pytest.mark.parametrize(("how", "place"), ENDS, ids=[how.hold for how, _ in ENDS])
def test_ends_move_outward_by_the_figure_that_is_held(how: Held, place: str) -> None:
    here = scene(rod(good_room(), left=how, right=how))
    assert said_all(rod_end(here, LAYER, "left", INCH)) == [f"Set the left rod end {place}"]
    assert said_all(rod_end(here, LAYER, "right", INCH)) == [f"Set the right rod end {place}"]
    assert said_all(rod_ends(here, LAYER, INCH)) == [f"Set both rod ends {place}"]


def test_a_held_length_takes_both_moves_where_both_ends_move() -> None:
    here = scene(rod(good_room(), right=held("rod-length", inch(56))))
    assert said_all(rod_ends(here, LAYER, INCH)) == [
        "Set the rod ends: left 11 in beyond the opening, right at a rod length of 58 in"
    ]
    assert said_all(rod_end(here, LAYER, "right", INCH)) == ["Set the right rod end at a rod length of 57 in"]
    here = scene(rod(good_room(), left=held("rod-length", inch(56))))
    assert said_all(rod_ends(here, LAYER, INCH)) == [
        "Set the rod ends: left at a rod length of 58 in, right 11 in beyond the opening"
    ]


def test_an_end_where_it_is_wanted_already_is_left_alone() -> None:
    here = scene(good_room())
    assert said_all(rod_end(here, LAYER, "left", 0.0)) == []
    assert said_all(rod_ends(here, LAYER, 0.0)) == []
    # A pair moves together or not at all: the left end reads 10 in, the right one lies between two marks.
    here = scene(rod(good_room(), right=held("beyond-opening", inch(10.03))))
    assert said_all(rod_ends(here, LAYER, 0.0)) == []


def test_a_pair_of_ends_inside_the_jambs_moves_inward_and_outward() -> None:
    inside = rod(on("reveal", deep()), left=held("inside-opening", inch(1)), right=held("inside-opening", inch(1)))
    here = scene(inside)
    assert said_all(rod_ends(here, LAYER, 0.5 * INCH)) == ["Set both rod ends ¹⁄₂ in inside the jamb"]
    assert said_all(rod_end(here, LAYER, "right", -INCH)) == ["Set the right rod end 2 in inside the jamb"]


def test_no_figure_less_than_nothing_is_offered_in_millimetres_either() -> None:
    here = scene(reach(at(good_room(), (), unit="mm"), mm(40)))
    assert [change.is_possible for change in rod_end(here, LAYER, "left", -40)] == [True]
    assert [change.is_possible for change in rod_end(here, LAYER, "left", -41)] == [False]


def test_nothing_is_moved_so_far_in_that_no_rod_is_left() -> None:
    # The rod is 56 in long.
    here = scene(good_room())
    assert list(rod_end(here, LAYER, "left", -56.01 * INCH)) == []
    long_mm = here.set_out.treatments[0].layers[0].support.length_mm
    assert list(rod_end(here, LAYER, "left", -long_mm)) == []
    assert list(rod_end(here, LAYER, "left", -55.9 * INCH)) != []
    assert list(rod_ends(here, LAYER, -28.01 * INCH)) == []
    assert list(rod_ends(here, LAYER, -long_mm / 2)) == []
    assert list(rod_ends(here, LAYER, -27.9 * INCH)) != []
    # What would be a negative reach is only tried, never offered.
    assert [change.is_possible for change in rod_end(here, LAYER, "left", -10 * INCH)] == [True]
    assert [change.is_possible for change in rod_end(here, LAYER, "left", -11 * INCH)] == [False]
    assert [change.is_possible for change in rod_ends(here, LAYER, -11 * INCH)] == [False]


def test_one_impossible_figure_of_a_pair_is_enough() -> None:
    here = scene(rod(good_room(), left=held("beyond-opening", inch(4))))
    assert [change.is_possible for change in rod_ends(here, LAYER, -5 * INCH)] == [False]
    assert [change.is_possible for change in rod_ends(here, LAYER, -4 * INCH)] == [True]


@pytest.mark.parametrize(
    ("ref", "wanted", "label"),
    [
        # Brackets at 46 and 98 in, held from the rod's ends.
        (LEFT_BRACKET, 45, "Move the left end bracket 1 in to the left"),
        (LEFT_BRACKET, 48, "Move the left end bracket 2 in to the right"),
        (RIGHT_BRACKET, 97, "Move the right end bracket 1 in to the left"),
        (RIGHT_BRACKET, 100, "Move the right end bracket 2 in to the right"),
    ],
)
def test_a_bracket_moves_the_way_it_says(ref, wanted, label) -> None:
    here = scene(good_room())
    (change,) = bracket_to(here, ref, wanted * INCH)
    assert said(change.label) == label
    moved = scene(change.edit(here.room)).set_out.treatments[0].layers[0].brackets
    assert wanted * INCH == pytest.approx(next(one.x_mm for one in moved if one.ref == ref))


def test_a_bracket_is_moved_a_foot_and_no_farther() -> None:
    here = scene(good_room())
    assert list(bracket_to(here, LEFT_BRACKET, 58 * INCH)) != []
    assert list(bracket_to(here, LEFT_BRACKET, 58.1 * INCH)) == []
    assert list(bracket_to(here, LEFT_BRACKET, 46 * INCH)) == []


def test_a_rod_is_held_out_only_farther_and_never_past_ten_inches() -> None:
    here = scene(rod(good_room(), projection=mm(76.2)))
    assert said_all(rod_projection(here, LAYER, 3.5 * INCH)) == ["Hold the rod 3¹⁄₂ in out from the wall"]
    assert said_all(rod_projection(here, LAYER, 10 * INCH)) == ["Hold the rod 10 in out from the wall"]
    assert said_all(rod_projection(here, LAYER, 2.9 * INCH)) == []
    assert said_all(rod_projection(here, LAYER, 3 * INCH)) == []
    assert said_all(rod_projection(here, LAYER, 10.01 * INCH)) == []


def test_only_finials_longer_than_a_cap_are_taken_off() -> None:
    ends = scene(good_room()).trade.ends
    caps = [row for row in ends.values() if row.shape == "cap"]
    shortest = min(row.length_mm for row in caps)
    for row in ends.values():
        here = scene(rod(good_room(), ends=row.id))
        offered = said_all(plain_ends(here, LAYER))
        is_longer = row.shape not in ("none", "cap") and row.length_mm > shortest
        assert offered == (["End the rod in flat caps"] if is_longer else [])


def test_of_several_caps_the_shortest_takes_a_finials_place() -> None:
    # From the table: caps 1/4 in long, balls 2 3/4 in. Beside them stand here a cap of 1 in and a ball of 1/4 in.
    here = scene(good_room())
    ends = here.trade.ends
    long_cap = replace(ends["cap"], id="long-cap", length_mm=INCH)
    short_ball = replace(ends["ball-finial"], id="short-ball", length_mm=ends["cap"].length_mm)
    both = replace(here.trade, ends={"long-cap": long_cap, "short-ball": short_ball, **ends})
    (change,) = plain_ends(replace(here, trade=both), LEFT_BRACKET)
    assert layer_of(change.edit(here.room), LAYER).rod.ends == "cap"
    short = rod(good_room(), ends="short-ball")
    assert said_all(plain_ends(Scene(short, set_out(short, "w1", "s1", both), both), LAYER)) == []
    no_caps = replace(here.trade, ends={key: row for key, row in ends.items() if row.shape != "cap"})
    assert said_all(plain_ends(replace(here, trade=no_caps), LAYER)) == []


def test_a_rod_of_one_piece_as_long_as_its_section_is_sold() -> None:
    # Conduit is sold in pieces of 10 ft. Balls need no extra tube: the rod is cut as long as it is.
    def beyond(inches: float) -> list[Change]:
        return list(longer_stock(scene(reach(at(good_room(), OPENING, width=inch(40)), inch(inches))), LEFT_BRACKET))

    assert said_all(beyond(40)) == ["Buy the rod in one piece of 120 in"]
    assert said_all(beyond(40.1)) == []
    (change,) = beyond(30)
    stock = layer_of(change.edit(reach(good_room(), inch(30))), LAYER).rod.stock
    assert stock is not None
    assert stock.mm == pytest.approx(100 * INCH)


def test_off_the_sash_to_the_mark_beyond() -> None:
    # A rod in the reveal stands 2 in off the sash.
    here = scene(rod(on("reveal", deep()), projection=inch(2)))
    assert said_all(from_sash(here, LAYER, 2.51 * INCH)) == ["Hold the rod 2⁹⁄₁₆ in off the sash"]
    assert said_all(from_sash(here, LAYER, 1.51 * INCH)) == ["Hold the rod 1¹⁄₂ in off the sash"]
    for nowhere in (2.0, 0.0, 0.03, -1.0):
        assert said_all(from_sash(here, LAYER, nowhere * INCH)) == []
    metric = scene(at(here.room, (), unit="mm"))
    assert len(said_all(from_sash(metric, LAYER, 1.0))) == 1
    assert said_all(from_sash(metric, LAYER, 0.9)) == []
    # Before the wall no sash is near.
    assert said_all(from_sash(scene(good_room()), LAYER, INCH)) == []
    # What is asked for from the wall is turned into what is held: the reveal is 4 in deep, the rod 2 in behind the face.
    (change,) = rod_projection(here, LEFT_BRACKET, -1.5 * INCH)
    assert said(change.label) == "Hold the rod 2¹⁄₂ in off the sash"
    assert layer_of(change.edit(here.room), LAYER).rod.projection.mm == pytest.approx(2.5 * INCH)


def test_what_is_asked_about_a_part_changes_its_layer() -> None:
    # Any part of a layer may be what a finding is about; what is changed is the rod.
    here = scene(rod(good_room(), overlap=inch(1)))
    for changes in (
        rod_height(here, LEFT_PANEL, 85.25 * INCH),
        rod_end(here, LEFT_PANEL, "left", INCH),
        rod_end(here, LEFT_PANEL, "right", INCH),
        rod_ends(here, LEFT_PANEL, INCH),
        rod_projection(here, LEFT_PANEL, 5 * INCH),
        without_overlap(LEFT_PANEL),
    ):
        (change,) = changes
        assert layer_of(change.edit(here.room), LAYER).rod != layer_of(here.room, LAYER).rod


def test_an_end_that_goes_on_round_a_corner_is_not_moved() -> None:
    # The other end of that rod may be; both together not.
    here = scene(rod(good_room(), right=held("around-corner", inch(0))))
    assert said_all(rod_end(here, LAYER, "right", INCH)) == []
    assert said_all(rod_ends(here, LAYER, INCH)) == []
    assert said_all(rod_end(here, LAYER, "left", INCH)) == ["Set the left rod end 11 in beyond the opening"]
