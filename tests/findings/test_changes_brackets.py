"""Candidate changes to brackets before anything is tried: places by hand from ``rooms.py``, kits from the bracket table."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.changing import bracket_added, bracket_to, end_brackets, passing_kit, smaller_plate
from elevation.room.find import bracket_of, layer_of
from elevation.room.model import Bracket, Built, Held, Room
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    LEFT_PANEL,
    RIGHT_BRACKET,
    at,
    good_room,
    held,
    inch,
    layer,
    said,
    said_all,
    scene,
)
from tests.findings.test_mounts import on
from tests.findings.test_supports import track

FIRST, SECOND = layer().brackets


def on_brackets(*of: Bracket) -> Room:
    return at(good_room(), LAYER, brackets=of)


def with_kit(kit: str) -> Room:
    return at(good_room(), LEFT_BRACKET, kit=kit)


# --- along the rod --------------------------------------------------------------------------------------------


def test_a_bracket_is_moved_as_far_as_it_may_be_and_no_farther() -> None:
    here = scene(good_room())
    x_mm = here.set_out.treatments[0].layers[0].brackets[0].x_mm
    far = x_mm + 32.0
    assert said_all(bracket_to(here, LEFT_BRACKET, far, most_mm=far - x_mm)) != []
    assert said_all(bracket_to(here, LEFT_BRACKET, far, most_mm=far - x_mm - 0.01)) == []


def test_what_was_read_to_stand_apart_is_moved_from_where_it_stands() -> None:
    # Planned 52 in apart, read 53 in: each stands 1/2 in farther out, at 45 1/2 and 98 1/2 in. To bring the left one to
    # 44 1/2 in, somebody moves it 1 in; it lands there, and the reading of where it stood before goes.
    here = scene(at(good_room(), LAYER, built=Built(bracket_to_bracket=inch(53))))
    x_mm = here.set_out.treatments[0].layers[0].brackets[0].x_mm
    assert x_mm == pytest.approx(45.5 * INCH)
    (change,) = bracket_to(here, LEFT_BRACKET, 44.5 * INCH)
    assert said(change.label) == "Move the left end bracket 1 in to the left"
    moved = scene(change.edit(here.room)).set_out.treatments[0].layers[0].brackets[0]
    assert moved.x_mm == pytest.approx(44.5 * INCH)


def test_the_label_says_the_way_that_the_bracket_really_goes() -> None:
    # Held at 2.03 in from the left end; to where it stands already, half a mark short, is 2 in: a little to the left.
    room = at(good_room(), LEFT_BRACKET, place=held("from-left-end", inch(2.03)))
    here = scene(room)
    (change,) = bracket_to(here, LEFT_BRACKET, 46.03 * INCH + 0.001, slack_mm=INCH / 32)
    assert said(change.label).endswith("to the left")
    moved = scene(change.edit(room)).set_out.treatments[0].layers[0].brackets[0]
    assert moved.x_mm == pytest.approx(46 * INCH)


def test_an_added_bracket_is_one_of_those_that_are_there() -> None:
    here = scene(on_brackets(replace(FIRST, kit="cup"), replace(SECOND, kit="flange")))
    for ref in (LAYER, LEFT_BRACKET):
        # The rod begins at 44 in, its middle is at 72 in.
        (change,) = bracket_added(here, ref, 80 * INCH)
        assert said(change.label) == "Add a bracket 36 in from the left end of the rod"
        *_, new = layer_of(change.edit(here.room), LAYER).brackets
        assert (new.kit, new.place.hold) == ("cup", "from-centre")
        assert new.place.at.mm == pytest.approx(8 * INCH)
    bare = scene(on_brackets())
    (change,) = bracket_added(bare, LAYER, 72 * INCH)
    (new,) = layer_of(change.edit(bare.room), LAYER).brackets
    assert new.kit == Bracket(id="", place=held("from-centre", inch(0))).kit


# --- end brackets ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize("ref", [LAYER, LEFT_PANEL])
def test_a_rod_without_brackets_is_given_a_pair(ref) -> None:
    here = scene(on_brackets())
    (change,) = end_brackets(here, ref, 2 * INCH)
    assert said(change.label) == "Put a bracket 2 in in from each end"
    pair = layer_of(change.edit(here.room), LAYER).brackets
    assert [(one.place.hold, one.place.at.mm) for one in pair] == [
        ("from-left-end", pytest.approx(2 * INCH)),
        ("from-right-end", pytest.approx(2 * INCH)),
    ]


@pytest.mark.parametrize(
    ("place", "label", "other"),
    [
        # The rod runs from 44 to 100 in, its middle is at 72 in: the new one stands as far in from the other end.
        (held("from-wall-left", inch(47)), "Add the bracket at the other end, 3 in in", "from-right-end"),
        (held("from-wall-left", inch(70)), "Add the bracket at the other end, 26 in in", "from-right-end"),
        (held("from-wall-left", inch(76)), "Add the bracket at the other end, 24 in in", "from-left-end"),
        (held("from-wall-left", inch(99)), "Add the bracket at the other end, 1 in in", "from-left-end"),
        (held("from-left-end", inch(0)), "Add the bracket at the other end, 0 in in", "from-right-end"),
        (held("from-centre", inch(0)), "Add the bracket at the other end, 28 in in", "from-right-end"),
    ],
)
def test_a_single_bracket_is_given_its_like_at_the_other_end(place: Held, label: str, other: str) -> None:
    here = scene(on_brackets(replace(FIRST, place=place)))
    (change,) = end_brackets(here, LEFT_PANEL, 2 * INCH)
    assert said(change.label) == label
    there, new = layer_of(change.edit(here.room), LAYER).brackets
    assert there.place == place
    assert new.place.hold == other


def test_a_bracket_that_stands_off_the_rod_is_no_end_to_copy() -> None:
    for x in (43.99, 100.01):
        here = scene(on_brackets(replace(FIRST, place=held("from-wall-left", inch(x)))))
        assert said_all(end_brackets(here, LAYER, 2 * INCH)) == []


# --- kits -----------------------------------------------------------------------------------------------------


def kits_after(changes) -> list[str]:
    return [bracket_of(change.edit(good_room()), LEFT_BRACKET).kit for change in changes]


def test_rods_pass_their_rings_on_open_arms_and_never_on_a_tracks_clips() -> None:
    # Of the wall's kits only the open arm and the track's clip let things pass; a rod does not hang in a clip.
    assert kits_after(passing_kit(scene(good_room()), LEFT_BRACKET)) == ["open-arm"]
    assert said_all(passing_kit(scene(good_room()), LEFT_BRACKET)) == [
        "Make the left end bracket one that lets rings pass: slim open arm that open rings pass"
    ]
    ceiling = scene(on("ceiling"))
    (change,) = passing_kit(ceiling, LEFT_BRACKET)
    assert bracket_of(change.edit(ceiling.room), LEFT_BRACKET).kit == "ceiling-hook"
    clips = scene(track())
    (change,) = passing_kit(clips, LEFT_BRACKET)
    assert bracket_of(change.edit(clips.room), LEFT_BRACKET).kit == "track-clip"


@pytest.mark.parametrize(
    ("kit", "smaller"),
    [
        # Widths and what hangs below the axis, from the table: strap and cradle 1 1/2 and 2 1/2 in, cup 1 1/4 and 1 3/4,
        # metal 30 and 55 mm, flange 3 and 1 1/2; the arm, 1 and 2 1/2, lets rings pass as no other for rods does.
        ("shop-strap", ["metal-25", "cup", "flange"]),
        ("shop-cradle", ["metal-25", "cup", "flange"]),
        ("metal-25", ["cup", "flange"]),
        ("cup", ["metal-25", "flange"]),
        ("flange", ["metal-25", "cup", "shop-strap", "shop-cradle", "double-front"]),
        ("open-arm", []),
    ],
)
def test_smaller_plates_are_narrower_or_hang_less_far_down(kit: str, smaller: list[str]) -> None:
    here = scene(with_kit(kit))
    changes = list(smaller_plate(here, LEFT_BRACKET))
    assert kits_after(changes) == smaller
    for change in changes:
        assert said(change.label).startswith("Use a smaller bracket there: ")
        assert bracket_of(change.edit(here.room), RIGHT_BRACKET).kit == SECOND.kit
