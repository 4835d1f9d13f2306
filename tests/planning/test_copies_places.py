"""Copies: where a copied opening stands, and what becomes of ends and brackets that hold only where they stood.

Figures by hand from ``tests/findings/rooms.py``: an opening takes 40 1/2 in with its casing, 2 1/4 in of it on either side.
"""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.planning.copies import bare_openings, duplicate_opening, duplicate_treatment, duplicate_wall, same_as
from elevation.room.edits import put_wall, replace_at, replace_rod
from elevation.room.find import layer_of, opening_of, treatment_of, wall_of
from elevation.room.model import Held, Layer, Room, Scheme, Wall, WallEnd
from elevation.room.validate import check_room
from tests.findings.rooms import INCH, LAYER, LEFT_BRACKET, RIGHT_BRACKET, good_room, held, inch, trade, treatment, window

# --- where a copied opening stands ----------------------------------------------------------------------------


def beside(*lefts: float, width: float | None) -> Room:
    """Windows at those places; the first is dressed."""
    openings = tuple(window(f"o{number}", left) for number, left in enumerate(lefts, 1))
    return good_room(width=None if width is None else inch(width), openings=openings)


def stands(room: Room, key: str) -> float:
    made, ref = duplicate_opening(room, ("w1", key), trade())
    left = opening_of(made, ref).left
    assert left is not None
    return left.mm / INCH


def test_as_far_from_its_neighbour_as_the_original_from_its_own() -> None:
    # Casings end at 92 1/4, begin again at 117 3/4 and end at 158 1/4 in: 25 1/2 in farther the copy's begins.
    assert stands(beside(54, 120, width=400), "o2") == pytest.approx(158.25 + 25.5 + 2.25)
    # The last piece of a wall whose width is not known has room for anything.
    assert stands(beside(54, 120, width=None), "o2") == pytest.approx(158.25 + 25.5 + 2.25)


def test_without_room_to_the_right_the_nearest_free_wall_on_the_left() -> None:
    # 11 3/4 in are free behind window 2; between the two, from 92 1/4 to 147 3/4 in, 55 1/2: 7 1/2 in on either side.
    assert stands(beside(54, 150, width=200), "o2") == pytest.approx(92.25 + 7.5 + 2.25)
    # Where that is too narrow, before window 1: 51 3/4 in, 5 5/8 on either side.
    assert stands(beside(54, 110, width=160), "o2") == pytest.approx(5.625 + 2.25)
    assert stands(beside(54, 110, width=160), "o1") == pytest.approx(5.625 + 2.25)


def test_free_wall_to_the_right_is_looked_through_from_the_nearest_on() -> None:
    # Behind window 1 19 1/2 in are free, behind window 2 59 1/2 in: in its middle; before window 1 would be room too.
    assert stands(beside(54, 114, 214, width=300), "o1") == pytest.approx(152.25 + 9.5 + 2.25)


@pytest.mark.parametrize(("name", "said"), [("East", "East"), ("", "wall")])
def test_the_wall_that_is_full_is_named(name: str, said: str) -> None:
    room = replace_at(beside(30, width=108.25), ("w1",), name=name)
    with pytest.raises(BadInput, match=said):
        duplicate_opening(room, ("w1", "o1"), trade())


def test_only_what_covers_the_opening_alone_is_copied_with_it() -> None:
    both = (treatment(), treatment("t2", ("o2",)), treatment("t3", ("o1", "o2")))
    room = replace_at(beside(54, 150, width=500), ("w1", "s1"), treatments=both)
    made, ref = duplicate_opening(room, ("w1", "o1"), trade())
    covered = [one.openings for one in wall_of(made, "w1").schemes[0].treatments]
    assert covered == [("o1",), ("o2",), ("o1", "o2"), (ref[1],)]


def test_a_copied_wall_stands_right_after_its_original() -> None:
    room = good_room()
    for key in ("w2", "w3"):
        room, _ = put_wall(room, Wall(key, key, width=inch(100)))
    made, ref = duplicate_wall(room, "w1", "Twin")
    assert [wall.id for wall in made.walls] == ["w1", ref[0], "w2", "w3"]


# --- openings that are bare -----------------------------------------------------------------------------------


def test_bare_openings_by_their_distance_from_the_middle_of_what_is_covered() -> None:
    room = beside(20, 80, 140, 200, 260, width=400)
    room = replace_at(room, (*LAYER[:3],), openings=("o2", "o3"))
    # Windows 1 and 4 are as near: the right one first.
    assert bare_openings(room, LAYER) == ("o4", "o1", "o5")
    assert bare_openings(room, LAYER[:3]) == ("o4", "o1", "o5")
    # For a scheme alone, from the left.
    assert bare_openings(room, LAYER[:2]) == ("o1", "o4", "o5")


# --- what holds only where it stood ---------------------------------------------------------------------------


def handed(room: Room, target: str) -> Layer:
    done = same_as(room, LAYER, [("w1", target)], trade())
    return next(one for one in wall_of(done, "w1").schemes[0].treatments if one.openings == (target,)).layers[0]


def test_a_right_corner_becomes_reach_but_at_the_last_window() -> None:
    # The rod ends at 100 in, 10 in beyond window 1, 200 in from the corner.
    room = replace_rod(beside(54, 120, 200, width=300), LAYER, right=held("from-corner", inch(200)))
    middle = handed(room, "o2").rod.right
    assert (middle.hold, middle.at.mm) == ("beyond-opening", pytest.approx(10 * INCH))
    assert handed(room, "o3").rod.right == held("from-corner", inch(200))


def test_reach_is_taken_from_the_outer_openings_of_a_pair() -> None:
    room = replace_at(beside(54, 120, 200, width=300), LAYER[:3], openings=("o1", "o2"))
    room = replace_rod(room, LAYER, left=held("from-corner", inch(46)), right=held("from-corner", inch(137)))
    made, ref = duplicate_treatment(room, LAYER, ("o2",), trade())
    rod = layer_of(made, (*ref, "l1")).rod
    # 8 in beyond window 1's left side at 54 in; 7 in beyond window 2's right side at 156 in.
    assert (rod.left.at.mm, rod.right.at.mm) == (pytest.approx(8 * INCH), pytest.approx(7 * INCH))


def test_brackets_on_studs_are_held_from_the_nearer_end() -> None:
    # The rod runs from 44 to 100 in.
    room = replace_at(beside(54, 150, width=250), LEFT_BRACKET, place=held("from-wall-left", inch(72)))
    room = replace_at(room, RIGHT_BRACKET, place=held("from-wall-left", inch(97)))
    places = [(bracket.place.hold, bracket.place.at.mm) for bracket in handed(room, "o2").brackets]
    assert places == [("from-left-end", pytest.approx(28 * INCH)), ("from-right-end", pytest.approx(3 * INCH))]


def test_a_copy_hangs_in_the_scheme_it_was_taken_from() -> None:
    # Two schemes of one name on one wall.
    both = (Scheme("s1", "", (treatment(),)), Scheme("s2", "", (treatment(),)))
    room = replace_at(beside(54, 150, width=250), ("w1",), schemes=both)
    done = same_as(room, ("w1", "s2", "t1", "l1"), [("w1", "o2")], trade())
    assert [len(scheme.treatments) for scheme in wall_of(done, "w1").schemes] == [1, 2]


def test_a_wall_without_a_scheme_of_that_name_takes_it_in_its_first() -> None:
    room, _ = put_wall(good_room(), Wall("w2", "East", width=inch(200), openings=(window(),)))
    room = replace_at(room, ("w2",), schemes=(Scheme("s1", "Plain"), Scheme("s2", "Fancy")))
    done = same_as(room, LAYER, [("w2", "o1")], trade())
    assert [len(scheme.treatments) for scheme in wall_of(done, "w2").schemes] == [1, 0]


# --- round corners --------------------------------------------------------------------------------------------

ROUND = Held("around-corner", inch(0))


def going_round(**second: Any) -> Room:
    """Walls w1 and w2 meet in a corner; what hangs on w2 goes on as what hangs on w1. A bare window on each."""
    own = beside(54, 150, width=250).walls[0]
    first = replace(own, right=WallEnd("corner", "w2"))
    other = replace(own, id="w2", name="East", left=WallEnd("corner", "w1"))
    room = replace(good_room(), walls=(first, other))
    room = replace_rod(room, LAYER, right=ROUND)
    room = replace_rod(room, ("w2", "s1", "t1", "l1"), left=ROUND)
    return replace_at(room, ("w2", "s1", "t1"), continues="t1", **second)


def test_a_copy_of_a_leg_goes_round_no_corner() -> None:
    room = going_round()
    check_room(room, "x")
    made, ref = duplicate_treatment(room, ("w2", "s1", "t1"), ("o2",), trade())
    copy = treatment_of(made, ref)
    assert copy.continues is None
    assert copy.layers[0].rod.left.hold == "beyond-opening"
    check_room(made, "x")
    assert treatment_of(made, ("w2", "s1", "t1")) == treatment_of(room, ("w2", "s1", "t1"))


def test_a_leg_that_takes_over_a_reach_still_goes_round_its_corner() -> None:
    room = going_round()
    plain, ref = duplicate_treatment(room, LAYER[:3], ("o2",), trade())
    plain = replace_rod(plain, (*ref, "l1"), left=held("beyond-opening", inch(5)), right=held("beyond-opening", inch(5)))
    done = same_as(plain, ref, [("w2", "o1")], trade(), ("reach",))
    leg = treatment_of(done, ("w2", "s1", "t1"))
    assert leg.continues == "t1"
    assert (leg.layers[0].rod.left, leg.layers[0].rod.right) == (ROUND, held("beyond-opening", inch(5)))


def test_a_leg_that_comes_to_hang_inside_its_opening_goes_round_no_more() -> None:
    room = going_round()
    inside = replace_at(room, ("w1", "o2"), reveal=inch(4))
    inside, ref = duplicate_treatment(inside, LAYER[:3], ("o2",), trade())
    jamb = held("inside-opening", inch(0.5))
    inside = replace_rod(replace_at(inside, ref, mount="reveal"), (*ref, "l1"), left=jamb, right=jamb, ends="socket")
    inside = replace_at(replace_rod(inside, (*ref, "l1"), height=held("below-head", inch(2))), (*ref, "l1"), brackets=())
    check_room(inside, "x")
    done = same_as(inside, ref, [("w2", "o1")], trade())
    leg = treatment_of(done, ("w2", "s1", "t1"))
    assert (leg.mount, leg.continues, leg.layers[0].rod.left) == ("reveal", None, jamb)
    check_room(done, "x")


def test_a_back_layer_of_its_own_comes_between_the_jambs_as_well() -> None:
    room = going_round()
    leg = layer_of(room, ("w2", "s1", "t1", "l1"))
    room = replace_at(room, ("w2", "s1", "t1"), layers=(leg, replace(leg, id="l2")))
    inside = replace_at(room, ("w1", "o2"), reveal=inch(4))
    inside, ref = duplicate_treatment(inside, LAYER[:3], ("o2",), trade())
    jamb = held("inside-opening", inch(0.5))
    inside = replace_rod(replace_at(inside, ref, mount="reveal"), (*ref, "l1"), left=jamb, right=jamb)
    done = same_as(inside, ref, [("w2", "o1")], trade(), ("height",))
    assert [(one.rod.left, one.rod.right) for one in treatment_of(done, ("w2", "s1", "t1")).layers] == [(jamb, jamb)] * 2
