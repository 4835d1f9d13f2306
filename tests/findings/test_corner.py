"""Corners: a rod that goes round one, and what of the neighbour wall stands, swings or glows where this one's things are.

The room is that of ``rooms.py`` twice, at a right angle: the second wall begins at the first one's right end, 144 in along.
Where the rod of the first wall goes round the corner it ends 3 1/2 in (its projection) before it, at 140 1/2 in.
"""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.going_round import go_on
from elevation.room.model import Obstacle, Room, Sash, WallEnd
from elevation.words import say
from tests.findings.rooms import (
    HALF,
    INCH,
    INCHES,
    LAYER,
    LEFT_PANEL,
    RIGHT_PANEL,
    at,
    found,
    good_room,
    held,
    inch,
    mm,
    rod,
)

SECOND = ("w2", *LAYER[1:])
TREATMENT = SECOND[:3]


def two_walls(angle: float = 90.0, **ends: Any) -> Room:
    """The good wall, and another like it round the right corner."""
    room = good_room()
    (first,) = room.walls
    second = replace(first, id="w2", name="Side", left=WallEnd("corner", "w1", angle), right=WallEnd("open"))
    first = replace(first, right=WallEnd("corner", "w2", angle), **ends)
    return replace(room, walls=(first, second))


def round_corner(angle: float = 90.0, away_in: float = 3.0) -> Room:
    """One rod along both walls, its brackets ``away_in`` from the corner's joint."""
    room = go_on(two_walls(angle), TREATMENT, LAYER[2])
    room = at(room, (*LAYER, "b2"), place=held("from-right-end", inch(away_in)))
    return at(room, (*SECOND, "b1"), place=held("from-left-end", inch(away_in)))


def test_a_rod_round_the_corner_is_no_fault() -> None:
    room = round_corner()
    assert found(room, "corner-bracket") == ()
    assert found(room, "meets") == ()


@pytest.mark.parametrize(("away_mm", "is_found"), [(152.4 - 1, False), (152.4 + HALF, False), (152.4 + HALF + 0.1, True)])
def test_a_bracket_stands_near_the_corner(away_mm: float, is_found: bool) -> None:
    room = at(round_corner(), (*LAYER, "b2"), place=held("from-right-end", mm(away_mm)))
    says = found(room, "corner-bracket")
    assert [finding.weight for finding in says] == [Weight.BROKEN] * is_found
    if says:
        assert says[0].measured_mm == pytest.approx(away_mm)


def test_a_rod_that_meets_nothing_round_the_corner_says_so() -> None:
    room = rod(two_walls(), right=held("around-corner", inch(0)))
    (finding,) = found(room, "corner-bracket")
    assert "meets no rod there" in say(finding.text, INCHES)


# --- meets ---------------------------------------------------------------------------------------------------------------


def chest(along_in: float, out_in: float, kind: Any = "furniture", **more: Any) -> Room:
    """A thing 84 in high on the second wall, from ``along_in`` to 40 in from the corner, and so far out from it."""
    room = two_walls()
    thing = Obstacle("x", kind, inch(along_in), inch(2), inch(40 - along_in), inch(88), inch(out_in), **more)
    return replace(room, walls=(room.walls[0], replace(room.walls[1], obstacles=(thing,))))


# The first wall's rod ends 10 in beyond its window, at 100 in, and its ball finial farther out: 144 - 100 = 44 in from the
# second wall. A thing that stands 40 in out from that is not reached; one that stands 46 in out is, where it begins nearer
# to the first wall than the rod's own front edge.
def test_a_thing_of_the_other_wall_that_reaches_the_rod_is_met() -> None:
    assert found(chest(1, 40), "meets") == ()
    rods = [one for one in found(chest(1, 46), "meets") if one.subject == LAYER]
    assert len(rods) == 1
    assert "Side" in say(rods[0].text, INCHES)


# The rod's axis stands 3 1/2 in out and its tube is 0.922 in thick: it reaches to 3.961 in before the wall, its finial,
# a ball, farther. A thing that begins 12 in from the corner on the other wall stands 12 in before this one.
def test_a_thing_that_begins_farther_from_the_corner_stands_before_the_rod() -> None:
    assert found(chest(12, 60), "meets") == ()


def test_cloth_meets_it_too() -> None:
    panels = [one for one in found(chest(1, 60), "meets") if one.subject == RIGHT_PANEL]
    assert len(panels) == 1


def test_an_obtuse_corner_leans_the_neighbour_away() -> None:
    room = chest(1, 46)
    ends = {"right": WallEnd("corner", "w2", 150.0)}
    other = replace(room.walls[1], left=WallEnd("corner", "w1", 150.0))
    blunt = replace(room, walls=(replace(room.walls[0], **ends), other))
    # cos 150 = -0.866: a point d along and z out lies at 144 + 0.866 d - 0.5 z; 46 in out takes off 23 in only.
    assert found(blunt, "meets") == ()


# --- swing ---------------------------------------------------------------------------------------------------------------


def casement(left_in: float, hinge: Any) -> Room:
    """The second wall's window 36 in wide from ``left_in`` from the corner, opening into the room."""
    room = two_walls()
    window = replace(room.walls[1].openings[0], left=inch(left_in), sash=Sash("casement-in", hinge), reveal=None)
    return replace(room, walls=(room.walls[0], replace(room.walls[1], openings=(window,))))


# Its sash turns about the hinge with a radius of 36 in. Hinged 1 in from the corner it stands, open, 1 in before the first
# wall and 36 in along it: the cloth of the first wall, 3 1/2 in out, begins 44 in from the corner. Wider it would hit.
def test_a_sash_round_the_corner_swings_clear_of_what_hangs_far_enough() -> None:
    assert found(casement(1, "left"), "swing") == ()


def test_a_sash_round_the_corner_hits_what_hangs_near() -> None:
    room = rod(casement(1, "left"), right=held("from-corner", inch(20)))
    subjects = {one.subject for one in found(room, "swing")}
    # The rod itself hangs 6 in over the sash.
    assert LAYER not in subjects
    assert RIGHT_PANEL in subjects
    assert LEFT_PANEL not in subjects


def test_hinged_on_the_far_side_it_never_comes_near() -> None:
    # Its nearest point is the closing edge in the closed sash: 1 in before the first wall only at the wall itself; out at
    # the depth of the rod's front, 4 in, the circle about 37 in has come no nearer than 37 - root(36^2 - 4^2) = 1.22 in.
    room = rod(casement(8, "right"), right=held("from-corner", inch(20)))
    assert found(room, "swing") == ()


# --- heat ----------------------------------------------------------------------------------------------------------------


def fire(out_in: float) -> Room:
    """An electric heater on the second wall, from 1 to 40 in from the corner."""
    return chest(1, out_in, "electric-heater")


# The first wall's cloth ends 8 1/2 in beyond its window, at 98 1/2 in: 45 1/2 in from the corner. Its distance is 12 in.
@pytest.mark.parametrize(("out_in", "weight"), [(33.4, None), (33.6, Weight.BROKEN), (46.0, Weight.STOP)])
def test_cloth_keeps_off_a_heater_of_the_other_wall(out_in: float, weight: Weight | None) -> None:
    says = [one for one in found(fire(out_in), "heat") if one.subject == RIGHT_PANEL]
    assert [one.weight for one in says] == ([] if weight is None else [weight])
    if weight is Weight.BROKEN:
        assert says[0].measured_mm == pytest.approx((45.5 - out_in) * INCH)
