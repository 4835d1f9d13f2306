"""The same again: what is held is carried, what was measured on the thing itself is not, and nothing else moves.

Figures by hand from the first lines of ``tests/findings/rooms.py``: window 1 at 54 in, 36 in wide, casing 2 1/4 in, on a
wall of 144 in. Free wall before it: 51 3/4 in; after it 144 - 92 1/4 = 51 3/4 in.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput, NoSuch
from elevation.planning.copies import (
    bare_openings,
    duplicate_opening,
    duplicate_treatment,
    duplicate_wall,
    same_as,
)
from elevation.room.carrying import PARTS
from elevation.room.edits import edit_at, put_wall, replace_at, replace_rod
from elevation.room.file import dump_room, load_bytes
from elevation.room.find import layer_of, opening_of, treatment_of, wall_of
from elevation.room.model import Bracket, Hem, Room, Scheme, Wall, WallEnd
from elevation.room.validate import check_room
from elevation.setting_out.whole import set_out
from tests.findings.rooms import INCH, LAYER, good_room, held, inch, layer, trade, treatment, window
from tests.strategies import random_room


def two_windows() -> Room:
    """Window 1 dressed, window 2 (30 in wide, at 100 in) bare, on a wall of 200 in."""
    return good_room(width=inch(200), openings=(window(), window("o2", 100, width=inch(30))))


def with_second_wall() -> Room:
    room = two_windows()
    room, _ = put_wall(room, Wall("w2", "East", width=inch(300), openings=(window("o1", 50), window("o2", 150))))
    return room


# --- same as ------------------------------------------------------------------------------------------------


def test_a_bare_opening_gets_the_whole_treatment() -> None:
    room = same_as(two_windows(), LAYER, [("w1", "o2")], trade())
    made = wall_of(room, "w1").schemes[0].treatments[1]
    assert (made.id, made.openings) == ("t2", ("o2",))
    assert made.layers == (layer(),)
    landed = set_out(room, "w1", "s1", trade()).treatments[1].layers[0].support
    # By hand: 10 in beyond window 2 on both sides, 4 in over a casing whose top is at 80 1/4 in.
    assert landed.left_mm == pytest.approx(90 * INCH)
    assert landed.right_mm == pytest.approx(140 * INCH)
    assert landed.height_mm == pytest.approx(84.25 * INCH)


def test_only_what_was_asked_is_carried() -> None:
    room = same_as(two_windows(), LAYER, [("w1", "o2")], trade())
    other = ("w1", "s1", "t2", "l1")
    room = replace_rod(room, LAYER, height=held("above-floor", inch(88)), left=held("beyond-opening", inch(7)))
    room = replace_at(room, LAYER, hem=Hem("kiss"))
    one = layer_of(same_as(room, LAYER, [("w1", "o2")], trade(), ("height",)), other)
    assert one.rod.height == held("above-floor", inch(88))
    assert one.rod.left == held("beyond-opening", inch(10))
    assert one.hem == Hem()
    assert one.brackets is layer_of(room, other).brackets


@pytest.mark.parametrize("part", PARTS)
def test_each_part_is_carried_by_its_name_alone(part: str) -> None:
    room = same_as(two_windows(), LAYER, [("w1", "o2")], trade())
    different = replace(
        layer(),
        rod=replace(
            layer().rod,
            height=held("above-floor", inch(90)),
            left=held("beyond-casing", inch(3)),
            section="dowel-1",
            ends="bare",
        ),
        brackets=(*layer().brackets, Bracket("b3", held("from-centre", inch(0)))),
        heading="rings",
        drop=inch(2),
        fabric=replace(layer().fabric, name="linen"),
        hem=Hem("break"),
        panels=layer().panels[:1],
    )
    room = edit_at(room, LAYER, lambda _one: different)
    before = layer_of(room, ("w1", "s1", "t2", "l1"))
    after = layer_of(same_as(room, LAYER, [("w1", "o2")], trade(), (part,)), ("w1", "s1", "t2", "l1"))  # type: ignore[arg-type]
    assert after != before
    back = {
        "height": replace(after, rod=replace(after.rod, height=before.rod.height)),
        "reach": replace(after, rod=replace(after.rod, left=before.rod.left, right=before.rod.right)),
        "hem": replace(after, hem=before.hem),
        "heading": replace(after, heading=before.heading, drop=before.drop),
        "fabric": replace(after, fabric=before.fabric),
        "rod": replace(after, rod=replace(after.rod, section=before.rod.section)),
        "ends": replace(after, rod=replace(after.rod, ends=before.rod.ends)),
        "brackets": replace(after, brackets=before.brackets),
        "panels": replace(after, panels=before.panels),
    }
    # Everything but that part is as it was.
    assert back[part] == before


def test_other_walls_take_the_scheme_of_the_same_name_or_get_one() -> None:
    room = with_second_wall()
    room = replace_at(room, ("w1", "s1"), name="Linen")
    done = same_as(room, LAYER, [("w2", "o1"), ("w2", "o2")], trade())
    (scheme,) = wall_of(done, "w2").schemes
    assert (scheme.name, [one.openings for one in scheme.treatments]) == ("Linen", [("o1",), ("o2",)])
    schemes = (Scheme("s1", "Plain"), Scheme("s2", "Linen"))
    done = same_as(replace_at(room, ("w2",), schemes=schemes), LAYER, [("w2", "o1")], trade())
    assert [len(one.treatments) for one in wall_of(done, "w2").schemes] == [0, 1]


def test_a_treatment_over_two_chosen_openings_changes_once_and_the_source_never() -> None:
    room = two_windows()
    both = replace(treatment("t2", ("o1", "o2")), layers=(layer(hem=Hem("kiss")),))
    room = replace_at(room, ("w1",), schemes=(Scheme("s1", "", (treatment("t1", ("o1",)),)), Scheme("s2", "x", (both,))))
    done = same_as(room, LAYER, [("w1", "o1")], trade())
    assert done is room


def test_doing_it_twice_changes_nothing_more() -> None:
    once = same_as(with_second_wall(), LAYER, [("w1", "o2"), ("w2", "o1")], trade())
    assert same_as(once, LAYER, [("w1", "o2"), ("w2", "o1")], trade()) is once


def test_what_was_measured_on_the_thing_itself_stays_with_it() -> None:
    room = two_windows()
    room = replace_at(room, (*LAYER, "b1"), height=inch(84))
    room = replace_at(room, (*LAYER, "p1"), measured_length=inch(83))
    made = wall_of(same_as(room, LAYER, [("w1", "o2")], trade()), "w1").schemes[0].treatments[1].layers[0]
    assert [bracket.height for bracket in made.brackets] == [None, None]
    assert [panel.measured_length for panel in made.panels] == [None, None]


def test_a_corner_and_a_stud_become_reach_and_inset() -> None:
    room = two_windows()
    # 44 in from the corner is 10 in beyond window 1; the stud at 46 in is 2 in in from the rod's left end.
    room = replace_rod(room, LAYER, left=held("from-corner", inch(44)))
    room = replace_at(room, (*LAYER, "b1"), place=held("from-wall-left", inch(46)))
    made = wall_of(same_as(room, LAYER, [("w1", "o2")], trade()), "w1").schemes[0].treatments[1].layers[0]
    assert made.rod.left.hold == "beyond-opening"
    assert made.rod.left.at.mm == pytest.approx(10 * INCH)
    assert made.brackets[0].place.hold == "from-left-end"
    assert made.brackets[0].place.at.mm == pytest.approx(2 * INCH)


def test_a_corner_stays_a_corner_at_the_wall_s_first_window() -> None:
    room = replace_rod(with_second_wall(), LAYER, left=held("from-corner", inch(44)))
    made = wall_of(same_as(room, LAYER, [("w2", "o1")], trade()), "w2").schemes[0].treatments[0].layers[0]
    assert made.rod.left == held("from-corner", inch(44))


def test_parking_places_follow_the_brackets_they_name() -> None:
    room = same_as(two_windows(), LAYER, [("w1", "o2")], trade())
    source = replace(
        layer(),
        brackets=(*layer().brackets, Bracket("b9", held("from-centre", inch(0)))),
        panels=(replace(layer().panels[0], parks="left-of:b9"), layer().panels[1]),
    )
    room = edit_at(room, LAYER, lambda _one: source)
    whole = layer_of(same_as(room, LAYER, [("w1", "o2")], trade()), ("w1", "s1", "t2", "l1"))
    assert whole.panels[0].parks == f"left-of:{whole.brackets[2].id}"
    # Without the bracket there is nothing to park at but that end of the rod.
    cloth = layer_of(same_as(room, LAYER, [("w1", "o2")], trade(), ("panels",)), ("w1", "s1", "t2", "l1"))
    assert cloth.panels[0].parks == "left"


def test_no_such_opening() -> None:
    with pytest.raises(NoSuch):
        same_as(two_windows(), LAYER, [("w1", "nowhere")], trade())


@pytest.mark.parametrize("seed", range(60))
def test_any_room_stays_possible_and_can_be_written(seed: int) -> None:
    room = random_room(seed)
    for wall in room.walls:
        for scheme in wall.schemes:
            for one in scheme.treatments[:1]:
                targets = [(other.id, opening.id) for other in room.walls for opening in other.openings]
                done = same_as(room, (wall.id, scheme.id, one.id), targets, trade())
                check_room(done, "x")
                assert load_bytes(dump_room(done), "x") == done
                assert treatment_of(done, (wall.id, scheme.id, one.id)) == one


# --- duplicates ---------------------------------------------------------------------------------------------


def test_an_opening_with_its_treatment_stands_to_the_right() -> None:
    room, ref = duplicate_opening(good_room(width=inch(300)), ("w1", "o1"), trade())
    made = opening_of(room, ref)
    # Free wall before window 1 is 51 3/4 in: the copy's casing begins as far after window 1's, at 92 1/4 + 51 3/4 in.
    assert made.left is not None
    assert made.left.mm == pytest.approx((144 + 2.25) * INCH)
    assert opening_of(room, ("w1", "o1")) is not made
    assert [one.openings for one in wall_of(room, "w1").schemes[0].treatments] == [("o1",), (ref[1],)]


def test_a_tighter_wall_takes_it_in_the_middle_of_what_is_free() -> None:
    room, ref = duplicate_opening(good_room(), ("w1", "o1"), trade())
    made = opening_of(room, ref)
    # 51 3/4 in free, 40 1/2 in needed: 5 5/8 in on each side.
    assert made.left is not None
    assert made.left.mm == pytest.approx((92.25 + 5.625 + 2.25) * INCH)


def test_a_wall_without_room_says_so() -> None:
    with pytest.raises(BadInput, match="no free part"):
        duplicate_opening(good_room(width=inch(30 + 36 + 2.25 + 40), openings=(window(left=30),)), ("w1", "o1"), trade())


def test_a_wall_once_more_stands_in_no_corner_and_nothing_on_it_is_hung() -> None:
    room = replace_at(good_room(), ("w1",), left=WallEnd("corner", None, 120.0))
    room = replace_at(room, (*LAYER, "b1"), height=inch(84))
    done, ref = duplicate_wall(room, "w1", "Twin")
    copy = wall_of(done, ref[0])
    assert [wall.id for wall in done.walls] == ["w1", ref[0]]
    assert (copy.name, copy.left, copy.openings) == ("Twin", WallEnd("corner", None, 120.0), wall_of(room, "w1").openings)
    assert copy.schemes[0].treatments[0].layers[0].brackets[0].height is None
    check_room(done, "x")


def test_the_nearest_bare_opening_is_named_first_the_right_one_of_two() -> None:
    room = good_room(width=inch(400), openings=(window("a", 20), window("o1", 100), window("b", 180), window("c", 260)))
    assert bare_openings(room, LAYER) == ("b", "a", "c")
    done, ref = duplicate_treatment(room, LAYER, ("b",), trade())
    assert treatment_of(done, ref).openings == ("b",)
    assert bare_openings(done, LAYER) == ("a", "c")


@pytest.mark.parametrize("seed", range(40))
def test_nothing_else_moves(seed: int) -> None:
    room = random_room(seed)
    wall = room.walls[0]
    before = {one.ref: (one.left_mm, one.right_mm) for one in set_out(room, wall.id, None, trade()).openings if one.placed}
    for opening in wall.openings:
        try:
            done, ref = duplicate_opening(room, (wall.id, opening.id), trade())
        except BadInput:
            continue
        check_room(done, "x")
        after = {one.ref: (one.left_mm, one.right_mm) for one in set_out(done, wall.id, None, trade()).openings}
        half = room.graduation_mm / 2
        for key, place in before.items():
            assert after[key] == pytest.approx(place, abs=half + 1e-6), key
        assert ref in after
