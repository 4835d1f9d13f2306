"""What is not known of a wall: said once for what it concerns, with a field that tells it."""

from __future__ import annotations

from msgspec.structs import replace

from elevation.findings.unknowns import unknowns
from elevation.room.edits import replace_at
from elevation.room.model import Room, Scheme
from elevation.setting_out.whole import set_out
from tests.findings.rooms import at, good_room, inch, said, scene, trade, treatment, window


def told(room: Room) -> list[tuple[tuple[str, ...], str, str]]:
    return [(one.ref[2:], one.field, said(one.text)) for one in unknowns(scene(room).set_out)]


def two(substrate: str = "solid-brick") -> Room:
    """Two windows, each with its own rod, whose brackets nobody chose a fixing for."""
    return good_room(
        width=inch(240),
        substrate=substrate,
        crown=inch(0),
        openings=(window(), window("o2", left=150)),
        schemes=(Scheme(id="s1", treatments=(treatment(), treatment("t2", ("o2",)))),),
    )


FIXING = "What the brackets are fixed with is not chosen: how much they hold cannot be told."


def test_what_holds_for_all_that_hangs_stands_once() -> None:
    assert told(two()) == [(("t1", "l1", "b1"), "fixing", FIXING)]


def test_what_holds_for_some_names_the_openings_it_hangs_before() -> None:
    room = two()
    for bracket in ("b1", "b2"):
        room = replace_at(room, ("w1", "s1", "t1", "l1", bracket), fixing="brick-plug", pull_kg=20.0, shear_kg=20.0)
    assert told(room) == [(("t2", "l1", "b1"), "fixing", f"Window 2: {FIXING}")]
    mixed = replace_at(room, ("w1", "s1", "t1", "l1", "b2"), pull_kg=None)
    assert [line[2].partition(":")[0] for line in told(mixed)] == ["Window 1", "Window 2"]


def test_two_panels_in_hand_miss_one_thing() -> None:
    room = good_room(crown=inch(0), substrate="timber")
    for panel in ("p1", "p2"):
        room = at(room, ("w1", "s1", "t1", "l1", panel), label_length=inch(84))
    lines = told(room)
    assert [line[:2] for line in lines] == [(("t1", "l1", "p1"), "measured_length")]
    assert lines[0][2].startswith("The panel in hand is known by its label only")


def test_the_wall_s_own_facts_stand_without_an_opening() -> None:
    room = replace(good_room(substrate="timber"), walls=(replace(good_room().walls[0], crown=None, substrate="timber"),))
    assert [line[1] for line in told(room)] == ["crown"]
    bare = set_out(at(room, ("w1",), crown=inch(0)), "w1", "s1", trade())
    assert unknowns(bare) == ()
