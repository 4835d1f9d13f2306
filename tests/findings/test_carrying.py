"""Rules about brackets that carry and let pass: joints, ends, middle brackets.

Places are worked by hand from the room in ``rooms.py``; geometry, so no source. Touching is compared within 1e-6 mm.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.model import Bracket, Room
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    TOO_FAR,
    at,
    found,
    good_room,
    held,
    inch,
    layer,
    mm,
    panels,
    rod,
    said,
    the,
)


def three_brackets(kit: str, heading: str = "clip-rings", parks: tuple[str, str] = ("left", "left")) -> Room:
    middle = Bracket(id="b3", place=held("from-centre", inch(0)), kit=kit)
    one = layer(brackets=(*layer().brackets, middle), heading=heading)
    first = replace(one.panels[0], parks=parks[0], flat_width=inch(108))
    one = replace(one, panels=(first,) if parks[0] == parks[1] else (first, replace(one.panels[1], parks=parks[1])))
    return at(good_room(), ("w1", "s1", "t1"), layers=(one,))


@pytest.mark.parametrize(
    ("kit", "heading", "is_stopped"),
    # A strap stops rings; an open arm lets open rings pass; eyelets, tabs and pockets pass no middle bracket.
    [
        ("shop-strap", "clip-rings", True),
        ("open-arm", "clip-rings", False),
        ("open-arm", "eyelets", True),
        ("open-arm", "tab", True),
        ("open-arm", "rod-pocket", True),
        ("open-arm", "rings", False),
    ],
)
def test_one_panel_before_a_middle_bracket(kit, heading, is_stopped) -> None:
    assert bool(found(three_brackets(kit, heading), "cannot-pass")) is is_stopped
    assert bool(found(three_brackets(kit, heading), "no-meet")) is is_stopped


def test_a_pair_meets_at_a_middle_bracket() -> None:
    assert not found(three_brackets("shop-strap", parks=("left", "right")), "cannot-pass")


def test_a_joint_needs_a_bracket() -> None:
    # Rod of 56 in from pieces of 30 in: two pieces, one joint.
    room = rod(good_room(), stock=inch(30))
    hit = the(room, "splice")
    assert hit.weight is Weight.STOP
    # A bracket between 26 and 30 in from the left end takes it.
    middle = Bracket(id="b3", place=held("from-left-end", inch(28)))
    held_up = at(room, LAYER, brackets=(*layer().brackets, middle))
    assert not found(held_up, "splice")
    assert not found(rod(good_room(), stock=inch(56)), "splice")


def test_a_rod_needs_two_brackets_on_it() -> None:
    first, second = layer().brackets
    assert "no bracket" in said(the(at(good_room(), LAYER, brackets=()), "no-bracket").text)
    assert "a single bracket" in said(the(at(good_room(), LAYER, brackets=(first,)), "no-bracket").text)
    assert not found(at(good_room(), LAYER, brackets=(first, second)), "no-bracket")
    # The rod ends at 44 in: a bracket there still carries it.
    at_end = replace(first, place=held("from-wall-left", inch(44)))
    assert not found(at(good_room(), LAYER, brackets=(at_end, second)), "no-bracket")
    off = replace(first, place=held("from-wall-left", mm(44 * INCH - TOO_FAR)))
    subjects = {one.subject for one in found(at(good_room(), LAYER, brackets=(off, second)), "no-bracket")}
    assert subjects == {LAYER, LEFT_BRACKET}
    # What stands still needs carrying as well.
    assert found(at(panels(good_room(), stationary=True), LAYER, brackets=()), "no-bracket")
