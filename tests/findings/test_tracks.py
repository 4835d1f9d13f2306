"""Tracks: what their own sheets say of stacks, overlap arms and bends. Figures by hand from ``rooms.py``."""

from __future__ import annotations

from math import pi, tan

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.planning.dressed import dress
from elevation.planning.remedies import remedies
from elevation.planning.rod_pieces import rod_pieces
from elevation.room.edits import replace_rod
from elevation.room.going_round import go_on
from elevation.room.model import Packet, Room
from elevation.setting_out.whole import set_out
from tests.findings.rooms import HALF, INCH, LAYER, at, found, good_room, held, inch, mm, panels, rod, said, the, trade
from tests.findings.test_corner import SECOND, TREATMENT, two_walls


def track(**fields: object) -> Room:
    return rod(good_room(), **{"kind": "track", "section": "track-slim", "ends": "cap", **fields})


def stacks(room: Room) -> list[float]:
    layer = set_out(room, "w1", "s1", trade()).treatments[0].layers[0]
    return [panel.stack_mm for panel in layer.panels]


def test_a_packets_stack_wins_over_the_table_and_a_measured_one_over_both() -> None:
    room = track(packet=Packet(stack=inch(7)))
    assert stacks(room) == pytest.approx([7 * INCH, 7 * INCH])
    assert stacks(panels(room, stack=inch(5))) == pytest.approx([5 * INCH, 5 * INCH])
    # A rod has no sheet that says so.
    assert stacks(rod(good_room(), packet=Packet(stack=inch(7)))) == stacks(good_room())


@pytest.mark.parametrize(("overlap_mm", "is_found"), [(50.8, False), (50.8 + HALF, False), (50.8 + HALF + 0.1, True)])
def test_edges_overlap_by_what_the_arm_gives(overlap_mm: float, is_found: bool) -> None:
    room = track(overlap=mm(overlap_mm), packet=Packet(arm=inch(2)))
    says = found(room, "overlap-arm")
    assert [one.weight for one in says] == [Weight.BROKEN] * is_found
    # With no sheet at hand nothing is claimed; what is not known is said to be so.
    assert not found(track(overlap=inch(9)), "overlap-arm")
    fields = {fact.field for fact in set_out(track(overlap=inch(9)), "w1", "s1", trade()).missing}
    assert "rod.packet.arm" in fields


def test_a_track_without_an_arm_is_a_stop_with_a_way_out() -> None:
    room = track(overlap=inch(2), packet=Packet(arm=mm(0)))
    one = the(room, "overlap-arm")
    assert one.weight is Weight.STOP
    assert said(one.text).endswith("this track has no overlap arm.")
    offered = remedies(room, "w1", "s1", one, trade()).offered
    assert offered
    assert not found(offered[0].room, "overlap-arm")


# --- bent round a corner -------------------------------------------------------------------------------------------------


def bent(radius: float, angle: float = 90.0, away: float = 8.0, **packet: object) -> Room:
    """One track along both walls, bent in the corner, its brackets ``away`` in from the mitre."""
    room = go_on(two_walls(angle), TREATMENT, LAYER[2])
    room = replace_rod(
        room, LAYER, kind="track", section="track-slim", ends="cap", bend=inch(radius), packet=Packet(**packet)
    )
    room = at(room, (*LAYER, "b2"), place=held("from-right-end", inch(away)))
    return at(room, (*SECOND, "b1"), place=held("from-left-end", inch(away)))


@pytest.mark.parametrize("angle", [90.0, 120.0, 135.0])
def test_a_bend_is_cut_shorter_than_the_mitre_by_hand(angle: float) -> None:
    room = bent(4, angle)
    cut = [set_out(room, wall, "s1", trade()).treatments[0].layers[0].support.cut_length_mm for wall in ("w1", "w2")]
    mitred = bent(4, angle)
    mitred = replace_rod(mitred, LAYER, bend=None)
    plain = [set_out(mitred, wall, "s1", trade()).treatments[0].layers[0].support.cut_length_mm for wall in ("w1", "w2")]
    turned = (180 - angle) * pi / 180
    saved = 4 * INCH * (2 * tan(turned / 2) - turned)
    assert sum(plain) - sum(cut) == pytest.approx(saved)
    assert plain[0] - cut[0] == pytest.approx(saved / 2)


def test_the_cut_list_has_one_piece_with_its_bend() -> None:
    room = replace_rod(bent(4), LAYER, stock=inch(240))
    whole = dress(room, trade())
    (piece,) = rod_pieces((whole,), trade())
    assert piece.length_mm == pytest.approx(
        sum(one.treatments[0].layers[0].support.cut_length_mm for one in whole.walls), abs=room.graduation_mm
    )
    (corner,) = piece.corners
    assert corner.degrees == pytest.approx(90.0)
    assert corner.arc_mm == pytest.approx(4 * INCH * pi / 2)
    # From the left end at 44 in to the straight's end, 4 in before the mitre at 140 1/2 in.
    first = whole.walls[0].treatments[0].layers[0].support
    assert corner.at_mm == pytest.approx((140.5 - 4) * INCH - first.cut_left_mm)
    # On the mitre each leg is a piece of its own.
    assert len(rod_pieces((dress(replace_rod(room, LAYER, bend=None), trade()),), trade())) == 2


def test_stock_too_short_for_the_bay_makes_even_pieces() -> None:
    room = replace_rod(bent(4), LAYER, stock=inch(80))
    pieces = rod_pieces((dress(room, trade()),), trade())
    assert len(pieces) == 3
    whole = sum(piece.length_mm for piece in pieces)
    assert [piece.length_mm for piece in pieces] == pytest.approx([whole / 3] * 3, abs=room.graduation_mm)
    assert [len(piece.corners) for piece in pieces] == [0, 1, 0]
    # Of two pieces the joint would fall into the bend: it is moved to where that begins or ends.
    two = rod_pieces((dress(replace_rod(room, LAYER, stock=inch(100)), trade()),), trade())
    assert [len(piece.corners) for piece in two] in ([0, 1], [1, 0])
    assert max(piece.length_mm for piece in two) <= 100 * INCH


def test_no_bracket_stands_in_the_bend() -> None:
    # The straight ends 4 in before the mitre; half a strap is 3/8 in.
    assert not found(bent(4, away=4.375 + 0.01), "bent-round")
    (one,) = found(bent(4, away=4.3), "bent-round")
    assert one.weight is Weight.BROKEN
    assert one.subject == (*LAYER, "b2")
    room = bent(4, away=4.3)
    offered = remedies(room, "w1", "s1", one, trade()).offered
    assert [said(way.label) for way in offered][-1] == "Join it on the mitre instead of bending it"


def test_a_track_is_bent_no_tighter_than_its_sheet_allows() -> None:
    assert not found(bent(4, least_bend=inch(4)), "bent-round")
    (one,) = found(bent(4, least_bend=inch(5)), "bent-round")
    assert "is bent to a radius of 4 in, and its sheet allows 5 in" in said(one.text)


def test_a_straight_too_short_for_its_bend() -> None:
    (one,) = [each for each in found(bent(100), "bent-round") if each.subject == LAYER]
    assert "no straight left on this wall" in said(one.text)


def test_the_radius_is_the_first_legs() -> None:
    room = bent(4)
    second = next(wall for wall in room.walls if wall.id == "w2")
    assert second.schemes[0].treatments[0].layers[0].rod.bend is None
    laid = set_out(room, "w2", "s1", trade()).treatments[0].layers[0].support
    assert laid.bend_mm == pytest.approx(4 * INCH)
    assert replace(laid).tangents_mm == pytest.approx((4 * INCH, 0.0))


@pytest.mark.parametrize(("away", "is_found"), [(42.9, False), (43.0, False), (43.1, True)])
def test_round_a_bend_each_leg_has_half_of_the_stretch_between_fixings(away: float, is_found: bool) -> None:
    room = bent(4, away=away, spacing=inch(86))
    says = [one for one in found(room, "track-fixings") if "end is" in said(one.text)]
    assert bool(says) == is_found
