"""Candidate changes of what cloth hangs on, what that is fixed to, and which way it draws, before anything is tried."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.changing_ends import narrow_side, one_way, socket_in_wall
from elevation.findings.changing_mount import mount_on
from elevation.findings.changing_support import hang_on, press_between
from elevation.room.find import layer_of, treatment_of
from elevation.room.model import Room, WallEnd
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    LEFT_PANEL,
    OPENING,
    RIGHT_PANEL,
    at,
    good_room,
    inch,
    layer,
    panels,
    said,
    said_all,
    scene,
)
from tests.findings.test_mounts import deep, on
from tests.findings.test_supports import tension, track

FIRST, SECOND = layer().panels
TREATMENT = LAYER[:3]


# --- what it hangs on and is fixed to -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("room", "kind", "label"),
    [
        (good_room(), "track", "Hang it on a track"),
        (on("reveal", deep()), "tension-rod", "Hang it on a tension rod"),
        (track(), "rod", "Hang it on a rod"),
    ],
)
def test_another_support(room: Room, kind, label: str) -> None:
    here = scene(room)
    (change,) = hang_on(here, LAYER, kind)
    assert said(change.label) == label
    assert layer_of(change.edit(room), LAYER).rod.kind == kind
    assert said_all(hang_on(here, LAYER, layer_of(room, LAYER).rod.kind)) == []


@pytest.mark.parametrize("ref", [LAYER, LEFT_PANEL])
def test_a_tension_rod_is_pressed_between_the_jambs(ref) -> None:
    short = tension(left=replace(layer_of(tension(), LAYER).rod.left, at=inch(1)))
    (change,) = press_between(scene(short), ref)
    ends = layer_of(change.edit(short), LAYER).rod
    assert [(end.hold, end.at.mm) for end in (ends.left, ends.right)] == [("inside-opening", 0.0)] * 2


@pytest.mark.parametrize(
    ("room", "mount", "label"),
    [
        (good_room(), "ceiling", "Fix the rod to the ceiling"),
        (deep(), "reveal", "Hang it in the reveal, in sockets"),
        (deep(), "sash", "Hang it on the sash"),
        (on("ceiling"), "wall", "Fix the rod to the wall over the opening"),
    ],
)
def test_another_mount(room: Room, mount, label: str) -> None:
    here = scene(room)
    (change,) = mount_on(here, TREATMENT, mount)
    assert said(change.label) == label
    assert treatment_of(change.edit(room), TREATMENT).mount == mount
    assert said_all(mount_on(here, TREATMENT, treatment_of(room, TREATMENT).mount)) == []


def test_only_what_covers_one_opening_can_hang_inside_it() -> None:
    second = replace(good_room().walls[0].openings[0], id="o2", left=inch(100))
    two = at(good_room(openings=(*good_room().walls[0].openings, second)), TREATMENT, openings=("o1", "o2"))
    here = scene(two)
    assert said_all(mount_on(here, TREATMENT, "reveal")) == []
    assert said_all(mount_on(here, TREATMENT, "sash")) == []
    assert said_all(mount_on(here, TREATMENT, "ceiling")) == ["Fix the rod to the ceiling"]


# --- a side with no room for a stack --------------------------------------------------------------------------


def near(side: str, beside: float = 6) -> Room:
    """The 36 in opening ``beside`` inches from a corner of the 144 in wall."""
    return at(good_room(), OPENING, left=inch(beside if side == "left" else 144 - 36 - beside))


TO_THE_RIGHT, TO_THE_LEFT = "Draw all the cloth one way, to the right", "Draw all the cloth one way, to the left"
LEFT_SOCKET = "Put the left end of the rod in a socket on the side wall"
RIGHT_SOCKET = "Put the right end of the rod in a socket on the side wall"


@pytest.mark.parametrize(
    ("side", "draw", "socket", "gone"),
    [("left", TO_THE_RIGHT, LEFT_SOCKET, "b1"), ("right", TO_THE_LEFT, RIGHT_SOCKET, "b2")],
)
def test_away_from_the_narrow_side_or_a_socket_there(side: str, draw: str, socket: str, gone: str) -> None:
    here = scene(near(side))
    one, fixed = narrow_side(here, LEFT_PANEL, side)
    assert said_all((one, fixed)) == [draw, socket]
    (panel,) = layer_of(one.edit(here.room), LAYER).panels
    assert (panel.parks, panel.count) == ("right" if side == "left" else "left", 2)
    there = layer_of(fixed.edit(here.room), LAYER)
    assert {bracket.id for bracket in there.brackets} == {"b1", "b2"} - {gone}
    assert (there.rod.left if side == "left" else there.rod.right).hold == "from-corner"
    assert (there.rod.left_ends if side == "left" else there.rod.right_ends) == "socket"


def test_inside_an_opening_no_side_wall_is_near() -> None:
    assert said_all(narrow_side(scene(on("reveal", at(deep(), OPENING, left=inch(6)))), LEFT_PANEL, "left")) == []


def test_cloth_is_drawn_only_to_the_roomier_side() -> None:
    # In the middle of the wall neither is; a hair beside it one is.
    assert said_all(one_way(scene(good_room()), LAYER, "left")) == []
    assert said_all(one_way(scene(good_room()), LAYER, "right")) == []
    hair = scene(near("left", 53.9))
    assert said_all(one_way(hair, LAYER, "right")) == [TO_THE_RIGHT]
    assert said_all(one_way(hair, LAYER, "left")) == []


def test_only_a_pair_that_draws_is_joined() -> None:
    assert said_all(one_way(scene(panels(near("left"), stationary=True)), LAYER, "right")) == []
    alike = at(near("left"), RIGHT_PANEL, parks="left")
    assert said_all(one_way(scene(alike), LAYER, "right")) == []
    assert said_all(one_way(scene(at(near("left"), LAYER, panels=(FIRST,))), LAYER, "right")) == []


@pytest.mark.parametrize(("to", "beside"), [("left", "right"), ("right", "left")])
def test_unlike_pieces_become_one_as_wide_as_all_of_them(to: str, beside: str) -> None:
    # Two pieces of 50 in and three of 30 in are 190 in of cloth.
    pair = (replace(FIRST, flat_width=inch(50), count=2), replace(SECOND, flat_width=inch(30), count=3, stack=inch(3)))
    here = scene(at(near(beside), LAYER, panels=pair))
    (change,) = one_way(here, LAYER, to)
    (panel,) = layer_of(change.edit(here.room), LAYER).panels
    assert (panel.parks, panel.count, panel.stack) == (to, 1, None)
    assert panel.flat_width.mm == pytest.approx(190 * INCH)


def test_pieces_alike_are_counted_together() -> None:
    pair = (replace(FIRST, count=2), replace(SECOND, count=3, drawn=inch(40)))
    here = scene(at(near("left"), LAYER, panels=pair))
    (change,) = one_way(here, LAYER, "right")
    (panel,) = layer_of(change.edit(here.room), LAYER).panels
    assert (panel.id, panel.count, panel.drawn) == (SECOND.id, 5, None)


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_socket_wants_a_square_corner_that_is_there_and_a_bracket_to_take_away(side: str) -> None:
    room = near(side)
    assert len(said_all(socket_in_wall(scene(room), LEFT_BRACKET, side))) == 1
    for end in (WallEnd("open"), WallEnd("corner", angle=89.0), WallEnd("corner", angle=91.0)):
        other = at(room, ("w1",), **{side: end})
        assert said_all(socket_in_wall(scene(other), LEFT_BRACKET, side)) == []
    assert said_all(socket_in_wall(scene(at(room, LAYER, brackets=())), LAYER, side)) == []


def test_where_the_wall_s_width_is_not_known_its_right_corner_is_not_known_either() -> None:
    here = scene(at(near("left"), ("w1",), width=None))
    assert said_all(socket_in_wall(here, LAYER, "left")) == [LEFT_SOCKET]
    assert said_all(socket_in_wall(here, LAYER, "right")) == []
