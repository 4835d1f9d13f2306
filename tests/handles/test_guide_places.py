"""Places on the lines of proportion: handles stick to them while the lines are shown, and never otherwise."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Scene
from elevation.handles.sticking import candidates
from elevation.room.edits import replace_at
from elevation.room.find import layer_of
from elevation.room.model import Hem, Obstacle, Room
from elevation.session.session import Session
from elevation.setting_out.whole import set_out
from elevation.trade import load_trade
from elevation.words import Style, say
from tests.handles.rooms import INCH, LAYER, SECOND, WINDOW, held, inch, room, with_rod
from tests.handles.test_moves import mirrored

TRADE = load_trade()
PX_MM = 0.5
PICTURE = Obstacle("x1", "picture", left=inch(112), bottom=inch(60), width=inch(18), height=inch(33))
# The wall is 150 in wide and 108 in high; casing top 84 in; the rod is 88 in high, from 40 to 100 in.


def with_picture() -> Room:
    now = room(openings=(WINDOW, SECOND))
    return replace(now, walls=(replace(now.walls[0], obstacles=(PICTURE,)),))


CASES = (
    # By hand: 24 in from the casing to the ceiling, a third of them is 8 in.
    ("rod-height", room(), 92.0, "a third up from head to ceiling", "height", "8 in", False),
    ("rod-height", room(), 72.0, "two thirds of the wall's height", "height", "-12 in", False),
    ("rod-height", with_picture(), 93.0, "level with the top of the picture", "height", "9 in", False),
    (
        "rod-left",
        room(layer=with_rod(right=held("beyond-opening", 20))),
        50.0,
        "a third of the wall's width",
        "left",
        "0 in",
        True,
    ),
    ("rod-right", room(), 130.0, "the side of the picture", "right", "40 in", True),
    # 75 in long: half of 150 in; both ends go out by 7 1/2 in, one alone by 15 in.
    ("rod-left", room(), 32.5, "the rod is half of the wall's width", "left", "17 1/2 in", False),
    ("rod-left", room(), 25.0, "the rod is half of the wall's width", "left", "25 in", True),
    ("rod-right", room(), 107.5, "the rod is half of the wall's width", "right", "17 1/2 in", False),
)


@pytest.mark.parametrize(("axis", "start", "at_in", "reason", "side", "text", "alone"), CASES)
def test_dragging_there_sticks_and_is_kept(
    axis: str, start: Room, at_in: float, reason: str, side: str, text: str, alone: bool
) -> None:
    if "side of" in reason:
        start = with_picture()
    session = Session(start, TRADE)
    session.is_guided = True
    gesture = session.press(session.handle(axis, LAYER), alone)
    gesture.move(at_in * INCH + 1.0, PX_MM)
    assert gesture.stuck.reason is not None
    assert reason in say(gesture.stuck.reason, Style())
    assert gesture.stuck.value_mm == pytest.approx(at_in * INCH, abs=1e-6)
    gesture.release()
    rod = layer_of(session.committed, LAYER).rod
    assert getattr(rod, side).at.text == text


def offered(now: Room, axis: str, *, alone: bool, guided: bool) -> set[tuple[float, str]]:
    session = Session(now, TRADE)
    bound = session.handle(axis, LAYER).bound(alone)
    scene = Scene(now, set_out(now, "a", "s", TRADE), TRADE)
    places = candidates(bound, scene, alone=alone, guided=guided)
    return {(round(place.value_mm / INCH, 3), say(place.reason, Style())) for place in places}


@pytest.mark.parametrize("axis", ["rod-height", "rod-left", "rod-right"])
def test_nothing_sticks_to_a_line_that_is_not_shown(axis: str) -> None:
    off, on = (offered(with_picture(), axis, alone=True, guided=guided) for guided in (False, True))
    assert len(on - off) >= 2
    assert not any("wall's" in reason or "picture" in reason for _, reason in off)


def test_a_rod_that_is_held_by_its_length_is_not_made_longer_by_the_end_that_carries_it() -> None:
    carried = room(layer=with_rod(left=held("beyond-opening", 14), right=held("rod-length", 60)))
    assert not any("the rod is" in reason for _, reason in offered(carried, "rod-left", alone=True, guided=True))
    assert any("the rod is" in reason for _, reason in offered(carried, "rod-right", alone=True, guided=True))


@pytest.mark.parametrize("alone", [False, True])
def test_the_mirror_offers_the_mirrored_places(alone: bool) -> None:
    start = room(layer=with_rod(right=held("beyond-casing", 7)))
    turned = {"a third of the wall's width": "two thirds of the wall's width"}
    turned |= {value: key for key, value in turned.items()}
    for left, right in (("rod-left", "rod-right"), ("rod-right", "rod-left")):
        here = offered(start, left, alone=alone, guided=True) - offered(start, left, alone=alone, guided=False)
        there = offered(mirrored(start), right, alone=alone, guided=True)
        there -= offered(mirrored(start), right, alone=alone, guided=False)
        assert {(round(150 - at, 3), turned.get(reason, reason)) for at, reason in here} == there


def test_a_hem_sticks_to_level_lines_and_those_of_the_wall() -> None:
    hung = replace(layer_of(room(), LAYER), hem=Hem("length", inch(60)))
    start = with_picture()
    start = replace_at(start, LAYER, hem=hung.hem)
    off, on = (offered(start, "hem", alone=False, guided=guided) for guided in (False, True))
    # 108 in: half of it is 54 in.
    assert any("the wall's height" in reason for _, reason in on - off)


def test_a_rod_sticks_to_heads_on_the_other_walls() -> None:
    # The second wall's head is 24 + 58 in up.
    (first,) = room().walls
    other = replace(first, id="b", name="East", openings=(replace(WINDOW, height=inch(58)),))
    start = Room(walls=(first, other))
    off, on = (offered(start, "rod-height", alone=False, guided=guided) for guided in (False, True))
    assert (82.0, "level with a head on the wall East") in on
    assert not any("a head on the wall" in reason for _, reason in off)


def test_no_part_of_a_width_that_was_not_measured() -> None:
    on = offered(room(width=None), "rod-left", alone=True, guided=True)
    assert not any("the rod is" in reason for _, reason in on)


def test_inside_an_opening_there_are_no_lines() -> None:
    inside = replace_at(room(), LAYER[:3], mount="reveal")
    off, on = (offered(inside, "rod-height", alone=False, guided=guided) for guided in (False, True))
    assert off == on
