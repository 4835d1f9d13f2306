"""Edits share what they did not change, keep ids, and leave no reference to what is gone."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from elevation.errors import NoSuch
from elevation.room import edits
from elevation.room.find import (
    bracket_of,
    by_name,
    children,
    has,
    item_at,
    layer_of,
    obstacle_of,
    opening_of,
    panel_of,
    scheme_of,
    treatment_of,
    wall_of,
)
from elevation.room.model import (
    Bracket,
    Held,
    Layer,
    Obstacle,
    Opening,
    Panel,
    Ref,
    Rod,
    Room,
    Scheme,
    Treatment,
    Wall,
    WallEnd,
)
from elevation.room.stand import stands
from elevation.room.validate import check_room
from elevation.units import Length, parse_length
from tests.strategies import random_room

MM = Length(100.0, "100 mm")
ROD = Rod(Held("above-casing", MM), Held("beyond-opening", MM), Held("beyond-opening", MM))
LAYER = Layer(
    "l1",
    ROD,
    (Bracket("b1", Held("from-left-end", MM)), Bracket("b2", Held("from-right-end", MM))),
    panels=(Panel("p1", MM, parks="left-of:b2"), Panel("p2", MM, parks="right-of:b1")),
)


def a_room() -> Room:
    openings = tuple(Opening(f"o{n}", MM, MM, left=Length(n * 200.0, f"{n * 200} mm")) for n in (1, 2, 3))
    treatments = (Treatment("t1", ("o1", "o2"), (LAYER,)), Treatment("t2", ("o3",), (LAYER,)))
    one = Wall(
        "w1",
        "North",
        openings=openings,
        obstacles=(Obstacle("x1", "shelf", MM, MM, MM, MM),),
        schemes=(Scheme("s1", "Plain", treatments), Scheme("s2", "Evening")),
        right=WallEnd(neighbour="w2"),
    )
    return Room("Room", walls=(one, Wall("w2", "East", left=WallEnd(neighbour="w1"))))


def refs(room: Room) -> list[Ref]:
    found: list[Ref] = []

    def down(item: object, ref: Ref) -> None:
        for child in children(item):  # type: ignore[arg-type]
            found.append((*ref, child.id))
            down(child, (*ref, child.id))

    down(room, ())
    return found


def test_replace_at_reaches_everything() -> None:
    room = a_room()
    assert wall_of(edits.replace_at(room, ("w1",), name="N"), "w1").name == "N"
    assert opening_of(edits.replace_at(room, ("w1", "o2"), columns=3), ("w1", "o2")).columns == 3
    assert obstacle_of(edits.replace_at(room, ("w1", "x1"), name="S"), ("w1", "x1")).name == "S"
    scheme = scheme_of(edits.replace_at(room, ("w1", "s2"), name="E"), "w1", "s2")
    assert scheme is not None
    assert scheme.name == "E"
    at = ("w1", "s1", "t1")
    assert treatment_of(edits.replace_at(room, at, name="T"), at).name == "T"
    assert layer_of(edits.replace_at(room, (*at, "l1"), heading="tab"), (*at, "l1")).heading == "tab"
    assert bracket_of(edits.replace_at(room, (*at, "l1", "b2"), kit="cup"), (*at, "l1", "b2")).kit == "cup"
    assert panel_of(edits.replace_at(room, (*at, "l1", "p2"), count=4), (*at, "l1", "p2")).count == 4
    assert edits.replace_at(room, (), sleeping=True).sleeping
    rod = layer_of(edits.replace_rod(room, (*at, "l1"), section="dowel-1"), (*at, "l1")).rod
    assert rod == replace(ROD, section="dowel-1")


def test_an_edit_shares_all_that_did_not_change() -> None:
    room = a_room()
    new = edits.replace_at(room, ("w1", "s1", "t1", "l1", "b1"), kit="cup")
    assert new.walls[1] is room.walls[1]
    old_wall, new_wall = room.walls[0], new.walls[0]
    assert new_wall.openings is old_wall.openings
    assert new_wall.obstacles is old_wall.obstacles
    assert new_wall.schemes[1] is old_wall.schemes[1]
    assert new_wall.schemes[0].treatments[1] is old_wall.schemes[0].treatments[1]
    old, changed = old_wall.schemes[0].treatments[0].layers[0], new_wall.schemes[0].treatments[0].layers[0]
    assert changed is not old
    assert changed.rod is old.rod
    assert changed.panels is old.panels
    assert changed.brackets[1] is old.brackets[1]
    assert changed.brackets[0].kit == "cup"


@given(st.integers(0, 500), st.data())
def test_an_edit_to_the_same_value_gives_back_the_same_room(seed: int, data: st.DataObject) -> None:
    room = random_room(seed)
    ref = data.draw(st.sampled_from(refs(room)))
    item = item_at(room, ref)
    assert edits.replace_at(room, ref, **{name: getattr(item, name) for name in item.__struct_fields__}) is room


@given(st.integers(0, 500), st.data())
def test_ids_stay_through_every_edit_and_others_are_shared(seed: int, data: st.DataObject) -> None:
    room = random_room(seed)
    ref = data.draw(st.sampled_from([ref for ref in refs(room) if len(ref) in (1, 3)]))
    new = edits.replace_at(room, ref, name="a name that no other has")
    assert refs(new) == refs(room)
    for other in refs(room):
        shared = item_at(new, other) is item_at(room, other)
        assert shared == (other != ref[: len(other)])


def test_what_is_not_there_is_said() -> None:
    room = a_room()
    for ref in (("w9",), ("w1", "o9"), ("w1", "s1", "t9"), ("w1", "s1", "t1", "l1", "b9"), ("w1", "o1", "deeper")):
        with pytest.raises(NoSuch):
            edits.replace_at(room, ref, name="x")
        with pytest.raises(NoSuch):
            edits.remove(room, ref)
        assert not has(room, ref)
    with pytest.raises(NoSuch, match='there is no wall "w9"'):
        wall_of(room, "w9")
    with pytest.raises(NoSuch, match='did you mean "o1"'):
        opening_of(room, ("w1", "o11"))
    with pytest.raises(NoSuch):
        layer_of(room, ("w1", "s1"))


def test_new_ids_are_free_and_not_those_of_anything_older() -> None:
    assert edits.new_id((), "w") == "w1"
    assert edits.new_id(("w1", "w3"), "w") == "w4"
    assert edits.new_id(("b2", "p7"), "b") == "b8"
    assert edits.new_id(("sued",), "w") == "w1"
    room = a_room()
    room, ref = edits.add_opening(room, "w1", width=MM, height=MM)
    assert ref == ("w1", "o4")
    # The middle one goes; its id is not given to the next one.
    room = edits.remove(room, ("w1", "o2"))
    room, ref = edits.add_opening(room, "w1", width=MM, height=MM)
    assert ref == ("w1", "o5")


@given(st.integers(0, 300), st.lists(st.sampled_from(["opening", "obstacle", "scheme", "bracket", "panel"]), max_size=6))
def test_whatever_is_added_has_an_id_of_its_own(seed: int, kinds: list[str]) -> None:
    room = random_room(seed)
    wall = room.walls[0].id
    scheme = room.walls[0].schemes[0]
    layer = (wall, scheme.id, scheme.treatments[0].id, scheme.treatments[0].layers[0].id)
    added = []
    for kind in kinds:
        before = set(refs(room))
        if kind == "opening":
            room, ref = edits.put_opening(room, wall, Opening("o1", MM, MM))
        elif kind == "obstacle":
            room, ref = edits.put_obstacle(room, wall, Obstacle("o1", "pipe", MM, MM, MM, MM))
        elif kind == "scheme":
            room, ref = edits.put_scheme(room, wall, Scheme(""))
        elif kind == "bracket":
            room, ref = edits.put_bracket(room, layer, Bracket("p1", Held("from-centre", MM)))
        else:
            room, ref = edits.put_panel(room, layer, Panel("", MM))
        assert set(refs(room)) == before | {ref}
        added.append(ref)
    for ref in reversed(added):
        room = edits.remove(room, ref)
    # A gap that was measured to the wall's end from another opening is not measured any more; all else is as it was.
    was = random_room(seed)
    assert edits.replace_at(room, (wall,), gap_right=None) == edits.replace_at(was, (wall,), gap_right=None)


def test_put_keeps_an_id_that_is_free() -> None:
    _, ref = edits.put_wall(a_room(), Wall("attic"))
    assert ref == ("attic",)
    _, ref = edits.put_treatment(a_room(), ("w1", "s2"), Treatment("t1", ("o1",), (LAYER,)))
    assert ref == ("w1", "s2", "t1")
    _, ref = edits.put_layer(a_room(), ("w1", "s1", "t1"), LAYER)
    assert ref == ("w1", "s1", "t1", "l2")


def test_an_opening_finds_its_place_from_the_left() -> None:
    room, ref = edits.add_opening(a_room(), "w1", width=MM, height=MM, left=Length(450.0, "450 mm"))
    assert [opening.id for opening in room.walls[0].openings] == ["o1", "o2", ref[1], "o3"]
    room, ref = edits.add_opening(a_room(), "w1", width=MM, height=MM, at=0)
    assert room.walls[0].openings[0].id == ref[1]


def test_removing_an_opening_leaves_no_reference() -> None:
    room = edits.remove(a_room(), ("w1", "o2"))
    assert [treatment.openings for treatment in room.walls[0].schemes[0].treatments] == [("o1",), ("o3",)]
    room = edits.remove(room, ("w1", "o3"))
    assert [treatment.id for treatment in room.walls[0].schemes[0].treatments] == ["t1"]
    check_room(room, "x")


def chain(*gaps: str, casing: str = "3 1/2 in", right: str = "20 in") -> Room:
    """A wall of 36 in openings placed by gaps alone."""
    openings = tuple(
        Opening(f"o{n}", parse_length("36 in"), MM, gap=parse_length(gap), casing=parse_length(casing))
        for n, gap in enumerate(gaps, 1)
    )
    return Room(walls=(Wall("w1", openings=openings, gap_right=parse_length(right)),))


def places_of(room: Room) -> dict[str, float | None]:
    wall = room.walls[0]
    return dict(zip((opening.id for opening in wall.openings), stands(wall), strict=True))


def test_neighbours_stay_where_they_are_when_an_opening_goes() -> None:
    room = chain("10 in", "13 in", "12 1/2 in")
    before = places_of(room)
    middle = edits.remove(room, ("w1", "o2"))
    assert places_of(middle) == pytest.approx({key: before[key] for key in ("o1", "o3")})
    gap = middle.walls[0].openings[1].gap
    # 13 + 3 1/2 + 36 + 3 1/2 + 12 1/2 by hand
    assert gap is not None
    assert gap == parse_length("13 in + 3 1/2 in + 36 in + 3 1/2 in + 12 1/2 in")
    assert gap.mm == pytest.approx(68.5 * 25.4)
    first = edits.remove(room, ("w1", "o1"))
    assert places_of(first) == pytest.approx({key: before[key] for key in ("o2", "o3")})
    last = edits.remove(room, ("w1", "o3"))
    assert last.walls[0].gap_right is not None
    assert last.walls[0].gap_right.mm == pytest.approx((12.5 + 3.5 + 36 + 3.5 + 20) * 25.4)


def test_neighbours_stay_where_they_are_when_an_opening_comes() -> None:
    room = chain("10 in", "60 in")
    before = places_of(room)
    new, ref = edits.add_opening(room, "w1", width=parse_length("30 in"), height=MM, left=parse_length("65 in"))
    after = places_of(new)
    assert list(after) == ["o1", ref[1], "o2"]
    assert {key: after[key] for key in before} == pytest.approx(before)
    gap = new.walls[0].openings[2].gap
    # From 95 in to the casing at 10 + 43 + 60 = 113 in
    assert gap is not None
    assert gap.text == "18 in"
    # Without a place of its own it is worked out: the gap after it was not measured from it.
    loose, ref = edits.add_opening(room, "w1", width=MM, height=MM, at=1)
    assert loose.walls[0].openings[2].gap is None


@given(st.integers(0, 400), st.data())
def test_removing_any_opening_leaves_the_others_in_place(seed: int, data: st.DataObject) -> None:
    room = random_room(seed)
    wall = room.walls[0]
    gone = data.draw(st.sampled_from([opening.id for opening in wall.openings]))
    less = edits.remove(room, (wall.id, gone))
    before, after = places_of(room), places_of(less)
    half = room.graduation_mm / 2
    for key, place in after.items():
        assert place == pytest.approx(before[key], abs=half + 1e-6)


def test_removing_a_bracket_parks_its_panels_at_the_ends() -> None:
    room = edits.remove(a_room(), ("w1", "s1", "t1", "l1", "b2"))
    room = edits.remove(room, ("w1", "s1", "t1", "l1", "b1"))
    assert [panel.parks for panel in layer_of(room, ("w1", "s1", "t1", "l1")).panels] == ["left", "right"]
    check_room(room, "x")


def test_removing_a_wall_leaves_no_neighbour() -> None:
    room = edits.remove(a_room(), ("w2",))
    assert room.walls[0].right == WallEnd()
    check_room(room, "x")


@given(st.integers(0, 500), st.data())
def test_a_room_without_one_of_its_things_can_still_be(seed: int, data: st.DataObject) -> None:
    room = random_room(seed)
    ref = data.draw(st.sampled_from([ref for ref in refs(room) if len(ref) != 4 and (len(ref) > 1 or len(room.walls) > 1)]))
    less = edits.remove(room, ref)
    assert not has(less, ref)
    check_room(less, "x")


def test_a_scheme_is_duplicated_named_and_kept_apart() -> None:
    room, ref = edits.duplicate_scheme(a_room(), "w1", "s1", "Copy")
    assert ref == ("w1", "s4")  # one more than the greatest number on that wall: opening o3
    schemes = room.walls[0].schemes
    assert [scheme.id for scheme in schemes] == ["s1", "s4", "s2"]
    assert schemes[1].name == "Copy"
    assert schemes[1].treatments is schemes[0].treatments
    edited = edits.replace_at(room, ("w1", "s4", "t1"), name="only here")
    assert edited.walls[0].schemes[0] is schemes[0]
    renamed = edits.rename_scheme(room, "w1", "s4", "Winter")
    assert by_name(renamed.walls[0].schemes, "winter", what="x", kind="scheme").id == "s4"
    assert edits.rename_wall(room, "w2", "O").walls[1] == replace(room.walls[1], name="O")


def test_names_and_ids_find_what_a_person_means() -> None:
    walls = (Wall("a", "North"), Wall("b", "north"), Wall("North2", "a"), Wall("c", "South"), Wall("d", "South"), Wall("e"))
    assert by_name(walls, "a", what="x", kind="wall").id == "a"  # the id wins over the name of another
    assert by_name(walls, "North", what="x", kind="wall").id == "a"  # exactly that case wins
    with pytest.raises(NoSuch, match='more than one wall is named "South"; use one of the ids c, d'):
        by_name(walls, "South", what="x", kind="wall")
    with pytest.raises(NoSuch, match='more than one wall is named "NORTH"; use one of the ids a, b'):
        by_name(walls, "NORTH", what="x", kind="wall")
    with pytest.raises(NoSuch, match='there is no wall "Soth"; did you mean "South"'):
        by_name(walls, "Soth", what="x", kind="wall")
    with pytest.raises(NoSuch):
        by_name(walls, "", what="x", kind="wall")
    with pytest.raises(NoSuch, match="none to choose from"):
        by_name((), "x", what="x", kind="scheme")


def test_the_first_scheme_is_meant_where_none_is_named() -> None:
    room = a_room()
    assert scheme_of(room, "w1", None) is room.walls[0].schemes[0]
    assert scheme_of(room, "w2", None) is None
