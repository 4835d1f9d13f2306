"""Each bound of a possible scheme just inside, at, and just outside it; and what may be held by what."""

from __future__ import annotations

from typing import Any, get_args, get_type_hints

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.room.check_scheme import BRACKET_HOLDS, END_HOLDS, HEIGHT_HOLDS
from elevation.room.edits import replace_at, replace_rod
from elevation.room.first import FirstFacts, first_room
from elevation.room.model import Bracket, Fabric, Held, Hem, Packet, Panel, Room
from elevation.room.validate import check_room
from elevation.units import Length, parse_length

LAYER = ("wall-1", "s1", "t1", "l1")
PATH = "x: walls[0].schemes[0].treatments[0].layers[0]"
FACTS = ("144 in", "96 in", "36 in", "54 in", "26 in")
ROOM = first_room(FirstFacts(*(parse_length(text) for text in FACTS)))


def mm(value: float) -> Length:
    return Length(float(value), f"{value:g} mm")


def fault(room: Room) -> str:
    try:
        check_room(room, "x")
    except BadInput as error:
        return str(error)
    return ""


def rod(**fields: Any) -> str:
    return fault(replace_rod(ROOM, LAYER, **fields))


def layer(**fields: Any) -> str:
    return fault(replace_at(ROOM, LAYER, **fields))


def panel(**fields: Any) -> str:
    return fault(replace_at(ROOM, (*LAYER, "p1"), **fields))


@pytest.mark.parametrize(
    ("field", "inside", "outside"),
    [
        ("diameter", 1, 0.99),
        ("diameter", 300, 300.01),
        ("projection", 0.01, 0),
        ("projection", 5000, 5000.01),
        ("stock", 0.01, 0),
        ("stock", 100_000, 100_000.01),
    ],
)
def test_a_rod_just_inside_and_just_outside(field: str, inside: float, outside: float) -> None:
    assert rod(**{field: mm(inside)}) == ""
    assert rod(**{field: mm(outside)}).startswith(f"{PATH}.rod.{field}: is ")


@pytest.mark.parametrize(
    ("field", "inside", "outside"),
    [
        ("flat_width", 0.01, 0),
        ("flat_width", 100_000, 100_000.01),
        ("label_length", 0.01, 0),
        ("measured_length", 0.01, -1),
        ("stack", 0.01, 0),
        ("drawn", 0, -0.01),
    ],
)
def test_a_panel_just_inside_and_just_outside(field: str, inside: float, outside: float) -> None:
    assert panel(**{field: mm(inside)}) == ""
    assert panel(**{field: mm(outside)}).startswith(f"{PATH}.panels[0].{field}: is ")


@pytest.mark.parametrize(("count", "right"), [(0, False), (1, True), (100, True), (101, False)])
def test_pieces_in_a_panel(count: int, right: bool) -> None:
    assert (panel(count=count) == "") is right


def test_every_hold_has_its_place() -> None:
    every = set(get_args(get_type_hints(Held)["hold"]))
    assert set(HEIGHT_HOLDS) | set(END_HOLDS) | set(BRACKET_HOLDS) == every
    for hold in every:
        held = Held(hold, mm(100), 0.5 if hold == "share-of-opening" else 0.0)
        assert (rod(height=held) == "") == (hold in HEIGHT_HOLDS), hold
        assert (rod(left=held) == "") == (hold in END_HOLDS), hold
        assert (rod(right=held) == "") == (hold in END_HOLDS), hold
        assert (layer(brackets=(Bracket("b1", held),)) == "") == (hold in BRACKET_HOLDS), hold


def test_a_rod_length_holds_one_end_only_and_is_more_than_nothing() -> None:
    length = Held("rod-length", mm(1500))
    assert rod(left=length) == ""
    assert rod(right=length) == ""
    assert "the other end must say where the rod is" in rod(left=length, right=length)
    assert ".rod.left.at" in rod(left=replace(length, at=mm(0)))


def test_distances_may_be_negative_but_not_without_end() -> None:
    assert rod(height=Held("above-casing", mm(-50))) == ""
    assert rod(left=Held("beyond-opening", mm(-50))) == ""
    assert ".rod.height.at: is not a finite length" in rod(height=Held("above-casing", Length(float("nan"), "nan")))
    assert ".rod.left.at" in rod(left=Held("beyond-opening", mm(100_001)))


@pytest.mark.parametrize("target", get_args(get_type_hints(Hem)["target"]))
def test_hems(target: Any) -> None:
    assert layer(hem=Hem(target, mm(10))) == ""
    assert (layer(hem=Hem(target)) == "") == (target != "length")
    assert ".hem.at" in layer(hem=Hem(target, mm(-1)))
    assert (layer(hem=Hem(target, mm(0))) == "") == (target != "length")


@pytest.mark.parametrize(
    ("colour", "right"),
    [
        ("#b9704a", True),
        ("#B9704A", True),
        ("b9704a", False),
        ("#b9704", False),
        ("#b9704a0", False),
        ("#b9704g", False),
        ("#b9704a\n", False),
    ],
)
def test_colours(colour: str, right: bool) -> None:
    assert (layer(fabric=Fabric(colour=colour)) == "") is right


@pytest.mark.parametrize(
    ("parks", "right"),
    [
        ("left", True),
        ("right", True),
        ("left-of:b1", True),
        ("right-of:b2", True),
        ("left-of:b9", False),
        ("left-of:", False),
        ("", False),
    ],
)
def test_parking_places(parks: str, right: bool) -> None:
    assert (panel(parks=parks) == "") is right


def test_a_panel_may_not_share_a_bracket_s_id() -> None:
    assert "has already" in layer(panels=(Panel("b1", mm(1000)),))


def test_a_bracket_as_built() -> None:
    def built(height: float) -> str:
        return fault(replace_at(ROOM, (*LAYER, "b1"), height=mm(height)))

    assert built(2200) == ""
    assert built(20_000) == ""
    assert ".brackets[0].height" in built(20_000.1)


def test_a_goal_for_the_glass() -> None:
    assert fault(replace_at(ROOM, LAYER[:2], clear_glass_to=mm(0))) == ""
    assert "schemes[0].clear_glass_to" in fault(replace_at(ROOM, LAYER[:2], clear_glass_to=mm(-1)))


@pytest.mark.parametrize(("share", "right"), [(0.001, True), (1.0, True), (0.0, False), (1.001, False), (-0.5, False)])
def test_a_share_of_the_opening_is_more_than_nothing_and_at_most_all(share: float, right: bool) -> None:
    told = rod(height=Held("share-of-opening", mm(0), share))
    assert (told == "") is right
    assert right or f"height.share: is {share:g}" in told


def test_only_a_share_of_the_opening_has_a_share() -> None:
    assert ".left.share: stands beside" in rod(left=Held("beyond-opening", mm(100), 0.5))


@pytest.mark.parametrize(("wall", "right"), [(0, True), (10, True), (10.01, False)])
def test_a_tubes_wall_is_at_most_half_its_diameter(wall: float, right: bool) -> None:
    assert (rod(diameter=mm(20), wall=mm(wall)) == "") is right


@pytest.mark.parametrize(("most", "right"), [(400, True), (399.99, False)])
def test_a_packets_range_does_not_end_before_it_begins(most: float, right: bool) -> None:
    assert (rod(packet=Packet(least=mm(400), most=mm(most))) == "") is right


@pytest.mark.parametrize(("kg", "right"), [(0.001, True), (200, True), (0, False), (200.01, False)])
def test_what_a_packet_says_a_rod_holds(kg: float, right: bool) -> None:
    assert (rod(packet=Packet(holds_kg=kg)) == "") is right


@pytest.mark.parametrize("key", ["pull_kg", "shear_kg"])
@pytest.mark.parametrize(("kg", "right"), [(0.001, True), (2000, True), (0, False), (2000.01, False)])
def test_what_a_packet_says_a_fixing_holds(key: str, kg: float, right: bool) -> None:
    told = layer(brackets=(Bracket("b1", Held("from-left-end", mm(50)), **{key: kg}),))
    assert (told == "") is right
    assert right or f"brackets[0].{key}: is {kg:g}" in told


@pytest.mark.parametrize(("kg", "right"), [(0, True), (2000, True), (-0.1, False), (2000.1, False)])
def test_what_somebody_pulls_with(kg: float, right: bool) -> None:
    assert (fault(replace(ROOM, tug_kg=kg)) == "") is right


def test_a_treatment_has_a_layer() -> None:
    assert "treatments[0].layers: is empty" in fault(replace_at(ROOM, LAYER[:3], layers=()))


@pytest.mark.parametrize(("mount", "right"), [("wall", True), ("ceiling", True), ("reveal", False), ("sash", False)])
def test_only_a_rod_before_the_wall_spans_two_openings(mount: str, right: bool) -> None:
    (first,) = ROOM.walls[0].openings
    second = replace(first, id="second", left=mm(0), gap=None, width=mm(100))
    room = replace_at(ROOM, ("wall-1",), openings=(second, first))
    room = replace_at(room, LAYER[:3], mount=mount, openings=(first.id, second.id))
    told = fault(room)
    assert ("a rod in a reveal or on a sash has one" not in told) is right, told
