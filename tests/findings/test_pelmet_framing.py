"""Angle irons of a pelmet that miss the framing; the room and the pelmet are those of ``test_pelmet.py``.

The shelf is 88 1/4 in high, from 38 to 106 in. On studs the kings stand with their middles at 50 1/2 and 93 1/2 in, the
header over the opening reaches from 51 1/4 to 92 3/4 in and up to 84 3/4 in.
"""

from __future__ import annotations

from typing import Any

import pytest

from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.model import Room
from tests.findings.rooms import INCH, at, found, inch, said, scene, the, trade
from tests.findings.test_inside_wall import framed
from tests.findings.test_pelmet import TREATMENT, dressed


def shelf(*studs_in: float, substrate: str = "board-timber-studs", **fields: Any) -> Room:
    return dressed(at(framed(*(x * INCH for x in studs_in)), ("w1",), substrate=substrate), **fields)


def irons_in(room: Room) -> list[float]:
    pelmet = scene(room).set_out.treatments[0].pelmet
    assert pelmet is not None
    return [x / INCH for x in pelmet.irons_mm]


def test_with_one_stud_found_all_of_them_stand_on_the_layout() -> None:
    # Studs 16 in apart from one found at 10 in: 42, 58, 74, 90, 106 in are behind the shelf.
    assert irons_in(shelf(10)) == pytest.approx([42, 58, 74, 90, 106])
    assert not found(shelf(10), "pelmet-framing")


@pytest.mark.parametrize("substrate", ["not-known", "solid-brick", "concrete", "board-dabs"])
def test_only_faces_that_hang_on_studs_ask_for_framing(substrate: str) -> None:
    assert not found(shelf(substrate=substrate), "pelmet-framing")


def test_without_a_stud_found_it_says_how_many_miss_and_that_nothing_single_helps() -> None:
    one = the(shelf(), "pelmet-framing")
    assert one.weight is Weight.CONSIDER
    assert one.subject == TREATMENT
    # Only the two kings are behind the shelf; the farthest iron is half way between them.
    assert one.measured_mm == pytest.approx((72 - 50.5 - 0.75) * INCH)
    assert said(one.text).startswith("Window 1: 5 of the 7 angle irons of the pelmet are not at framing")
    assert one.caution is not None
    assert said(one.caution).startswith("Find a stud")
    tried = remedies(shelf(), "w1", "s1", one, trade())
    assert tried.offered == ()
    assert tried.none_because is not None


def test_a_shelf_lowered_before_the_header_is_offered() -> None:
    room = shelf(left=inch(1), right=inch(1))
    one = the(room, "pelmet-framing")
    offered = remedies(room, "w1", "s1", one, trade()).offered
    # Its ends come to the kings, the others before the header: its top 84 3/4 - 84 1/4 in over the rod.
    assert [said(remedy.label) for remedy in offered] == ["Set the pelmet's top \u00b9\u2044\u2082 in over the rod"]
    assert not found(offered[0].room, "pelmet-framing")


def test_no_wall_says_so_where_there_is_no_framing_at_all() -> None:
    bare = at(shelf(), ("w1",), openings=(), studs=())
    assert not found(bare, "pelmet-framing")  # nothing is covered, nothing hangs


def test_longer_ends_that_come_to_studs_are_offered() -> None:
    # Studs at 36 and 108 in alone, 2 in beyond the shelf's ends; its top before the header.
    room = at(shelf(36, above=inch(0.5)), ("w1",), stud_spacing=inch(72))
    one = the(room, "pelmet-framing")
    assert said(one.text).startswith("Window 1: 2 of the")
    assert one.caution is not None
    assert said(one.caution).startswith("Framing drawn dashed")
    offered = remedies(room, "w1", "s1", one, trade()).offered
    # An end stands 2 in beyond its iron: at 34 in, 10 in beyond the rod.
    assert [said(remedy.label) for remedy in offered] == ["End the pelmet 10 in beyond the rod on both sides"]
    assert irons_in(offered[0].room)[0] == pytest.approx(36)
    assert irons_in(offered[0].room)[-1] == pytest.approx(108)
