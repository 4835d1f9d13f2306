"""Café curtains on sashes that turn. Figures by hand from ``rooms.py``: opening 54 to 90 in, sill 30 in, head 78 in."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.edits import put_treatment, replace_rod
from elevation.room.model import Obstacle, Room, Sash, WallEnd
from elevation.room.mounting import mounted
from tests.findings.rooms import (
    INCH,
    LAYER,
    OPENING,
    at,
    found,
    good_room,
    held,
    inch,
    rod,
    said,
    the,
    trade,
    treatment,
)


def cafe(reveal: float = 4, near: float = 2, **fields: Any) -> Room:
    """A rod with caps on the sash, its ends ``near`` in from the jambs, in a reveal."""
    sash = Sash(**{"kind": "casement-in", "hinge": "left", **fields})
    room = mounted(at(good_room(), OPENING, reveal=inch(reveal), sash=sash), LAYER[:3], "sash", trade())
    ends = held("inside-opening", inch(near))
    return rod(room, left=ends, right=ends, projection=inch(1.5), ends="bare", left_ends=None, right_ends=None)


def flush(near: float, reveal: float, **fields: Any) -> Room:
    """The same with what is measured from the end of the metal: bare ends are cut 2 in longer in all, 1 in each."""
    room = cafe(reveal, near, **fields)
    extra = trade().ends["bare"].extra_tube_mm / INCH
    return rod(room, left=held("inside-opening", inch(near + extra)), right=held("inside-opening", inch(near + extra)))


@pytest.mark.parametrize(("near", "is_found"), [(3.9, True), (4.0, False), (4.01, False)])
def test_rod_and_cloth_begin_as_far_from_the_hinge_as_the_reveal_is_deep(near: float, is_found: bool) -> None:
    assert bool(found(flush(near, 4.0), "on-leaf")) == is_found
    # A leaf flush with the wall has no jamb beside it.
    assert not found(flush(near, 0.0), "on-leaf")


def test_how_far_the_leaf_opens_is_said() -> None:
    # r = 2, d = 4: the point that passes the hinge's line at the reveal's depth is q = sqrt(16 - 4) = 3.46 out, past the
    # rod's front at 1.5 + 0.46 = 1.96; so the front counts: atan(2 / 1.96) = 45.6 degrees.
    one = the(flush(2.0, 4.0), "on-leaf")
    assert one.weight is Weight.BROKEN
    assert said(one.text) == (
        "Window 1: with the curtain on it the leaf opens to about 45° only: the rod begins 2 in from the hinge, and the"
        " jamb reaches 4 in out beside it."
    )
    offered = remedies(flush(2.0, 4.0), "w1", "s1", one, trade())
    assert offered.offered or offered.between


def test_one_rod_across_two_leaves_holds_them_shut() -> None:
    one = the(cafe(hinge="both"), "on-leaf")
    assert one.weight is Weight.STOP
    assert said(one.text) == "Window 1: the rod on the sash lies across both leaves, and neither opens."
    # Leaves that turn out are held shut as well; ones that slide or are fixed turn nowhere.
    assert found(cafe(kind="casement-out", hinge="both"), "on-leaf")
    assert not found(cafe(kind="casement-out"), "on-leaf")
    for kind in ("fixed", "sliding", "double-hung", "tilt-in"):
        assert not found(cafe(kind=kind, hinge="both"), "on-leaf")
    # A rod that ends at the meeting stile hangs on one of them.
    half = rod(cafe(0, hinge="both"), right=held("inside-opening", inch(21)))
    assert not found(half, "on-leaf")


def test_a_leaf_with_its_curtain_reaches_beyond_its_hinge() -> None:
    """A panel that just clears the bare leaf is hit by the curtain on it."""
    room = cafe(0, 4)
    # Its reach of 7 in lets the left panel stand open from 48 1/2 to 53 in; the curtain stands out to 52.04 in.
    room, made = put_treatment(room, ("w1", "s1"), treatment("t2"))
    seven = held("beyond-opening", inch(7))
    room = replace_rod(room, (*made, "l1"), left=seven, right=seven)
    left = next(one for one in found(room, "swing") if one.subject[2] == "t2" and "curtain on its sash" in said(one.text))
    assert "hits the" in said(left.text)
    without = at(room, ("w1", "s1"), treatments=room.walls[0].schemes[0].treatments[1:])
    assert not any("curtain" in said(one.text) for one in found(without, "swing"))


def test_a_door_that_swings_against_the_neighbour_wall_swings_before_this_one() -> None:
    """A door of 30 in sweeps against the second wall, from the corner at 144 in: it covers this wall from 114 in on."""
    room = good_room()
    (first,) = room.walls
    door = Obstacle("x1", "door-swing", inch(0), inch(0), inch(30), inch(80), inch(30))
    second = replace(
        first,
        id="w2",
        name="Side",
        left=WallEnd("corner", "w1", 90.0),
        right=WallEnd("open"),
        obstacles=(door,),
        schemes=(),
    )
    first = replace(first, right=WallEnd("corner", "w2", 90.0))
    both = replace(room, walls=(first, second))
    assert not found(both, "swing")
    far = rod(both, right=held("beyond-opening", inch(20)), height=held("above-floor", inch(79)))
    assert not found(far, "swing")
    hit = rod(both, right=held("beyond-opening", inch(27)), height=held("above-floor", inch(79)))
    texts = [said(one.text) for one in found(hit, "swing")]
    assert texts
    assert all("the door that swings against the wall “Side”" in text for text in texts)
    assert not any("door" in said(one.text) for one in found(hit, "meets"))
