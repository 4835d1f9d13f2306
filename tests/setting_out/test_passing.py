"""Cloth that passes the corner of a bent track, by hand from ``tests/findings/rooms.py`` twice at a right angle.

The track runs from 44 in to the mitre at 140 1/2 in on the first wall, 96 1/2 in, and from 3 1/2 to 100 in on the second,
as long. Bent to 4 in each straight ends 4 in early and each leg has half of the arc, pi in.
"""

from __future__ import annotations

from math import pi

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import find, find_afresh, rule_of
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Scene
from elevation.room.edits import replace_at
from elevation.room.find import layer_of
from elevation.room.model import Room
from elevation.setting_out.model import LayerOut
from elevation.setting_out.whole import set_out, set_out_afresh
from tests.findings.rooms import INCH, LAYER, inch, obstacle, rod, said, trade
from tests.findings.test_corner import SECOND
from tests.findings.test_tracks import bent

LONG = 96.5 - 4 + pi


def one_way(**fields: object) -> Room:
    """All cloth on the first wall, in one panel that parks at its left end; the second leg has none."""
    room = replace_at(bent(4), SECOND, panels=())
    panel = replace(layer_of(room, LAYER).panels[0], flat_width=inch(400), **fields)
    return replace_at(room, LAYER, panels=(panel,))


def landed(room: Room, wall: str) -> LayerOut:
    return set_out(room, wall, "s1", trade()).treatments[0].layers[0]


def test_one_panel_closes_over_both_walls() -> None:
    (panel,) = landed(one_way(), "w1").panels
    assert panel.closed == pytest.approx((44 * INCH, 140.5 * INCH))
    # Both legs are one axis of twice 96 1/2 - 4 + pi in.
    assert panel.on_mm == pytest.approx(LONG * INCH)
    assert panel.fullness == pytest.approx(400 / (2 * LONG))
    there = landed(one_way(), "w2")
    (guest,) = there.guests
    assert there.panels == ()
    assert guest.ref == panel.ref
    assert guest.closed == pytest.approx((3.5 * INCH, 100 * INCH))
    assert guest.drawn == pytest.approx((3.5 * INCH, 3.5 * INCH))
    assert guest.finished_length_mm == pytest.approx(panel.finished_length_mm)


def test_drawn_part_of_the_way_it_shows_on_the_second_wall() -> None:
    room = one_way(drawn=inch(LONG + 20))
    (guest,) = landed(room, "w2").guests
    # 20 in from the middle of the bend: pi in of them along its arc, which ends 4 in from the mitre.
    assert guest.drawn == pytest.approx((3.5 * INCH, (3.5 + 4 + 20 - pi) * INCH))
    (panel,) = landed(room, "w1").panels
    assert panel.drawn == pytest.approx((44 * INCH, 140.5 * INCH))


def test_the_second_windows_glass_is_covered_closed_and_clear_open() -> None:
    glass = set_out(one_way(), "w2", "s1", trade()).treatments[0].glass
    assert glass.clear_open == pytest.approx(1.0)
    assert glass.clear_closed == pytest.approx(0.0)


def test_each_leg_with_its_own_cloth_closes_its_own_wall() -> None:
    assert landed(bent(4), "w2").guests == ()
    assert all(panel.on_mm == 0 for panel in landed(bent(4), "w1").panels)
    # Joined on the mitre nothing passes; nor does cloth that parks in the corner.
    mitred = rod(one_way(), bend=None)
    assert landed(mitred, "w2").guests == ()
    assert landed(one_way(parks="right"), "w2").guests == ()


def test_cloth_that_passes_the_corner_is_told_of_at_a_heater_there() -> None:
    room = one_way()
    heater = obstacle("electric-heater", 60 * INCH, 0, 20 * INCH, 20 * INCH, 3 * INCH)
    second = next(wall for wall in room.walls if wall.id == "w2")
    walls = (room.walls[0], replace(second, obstacles=(heater,)))
    hot = replace(room, walls=walls)
    scene = Scene(hot, set_out(hot, "w2", "s1", trade()), trade())
    (one,) = [each for each in find(scene, TreatmentMemo(find_afresh)) if each.rule == "heat"]
    assert one.subject == SECOND
    assert "can touch it" in said(one.text)
    # Its remedies are over there, where the panel is decided.
    assert list(rule_of("heat").changes(scene, one)) == []


def test_what_is_remembered_is_what_is_set_out_afresh() -> None:
    for width in (380, 400, 420):
        room = one_way(drawn=inch(width / 4))
        for wall in ("w1", "w2"):
            assert set_out(room, wall, "s1", trade()) == set_out_afresh(room, wall, "s1", trade())


def test_of_the_folds_each_wall_has_its_share() -> None:
    (panel,) = landed(one_way(), "w1").panels
    assert panel.folds_over("closed") == round(panel.fold_count / 2)
    assert panel.folds_over("open") == panel.fold_count
    # Drawn 30 in it has not come to the corner.
    (short,) = landed(one_way(drawn=inch(30)), "w1").panels
    assert short.folds_over("drawn") == short.fold_count


@pytest.mark.parametrize("gone", [LAYER, SECOND])
def test_nothing_passes_where_the_other_leg_covers_nothing(gone: tuple[str, ...]) -> None:
    room = replace_at(one_way(), gone[:3], openings=())
    other = "w1" if gone is SECOND else "w2"
    assert set_out(room, other, "s1", trade()) == set_out_afresh(room, other, "s1", trade())
    assert landed(room, other).guests == ()
    assert set_out(room, gone[0], "s1", trade()).treatments == ()


def test_a_rod_behind_the_bent_track_has_nothing_that_passes() -> None:
    room = one_way()
    behind = replace(layer_of(room, LAYER), id="l2", panels=())
    behind = replace(behind, rod=replace(behind.rod, kind="rod", section="conduit-1/2", bend=None))
    for ref in (LAYER, SECOND):
        room = replace_at(room, ref[:3], layers=(layer_of(room, ref), replace(behind, rod=behind.rod)))
    first, second = (set_out(room, wall, "s1", trade()).treatments[0].layers for wall in ("w1", "w2"))
    assert len(second[0].guests) == 1
    assert second[1].guests == ()
    assert first[0].panels[0].on_mm > 0


def test_a_stack_longer_than_its_own_wall_goes_on_round_the_corner() -> None:
    room = one_way(stack=inch(LONG + 10))
    (panel,), (guest,) = landed(room, "w1").panels, landed(room, "w2").guests
    assert panel.open == pytest.approx((44 * INCH, 140.5 * INCH))
    assert panel.on_open_mm == pytest.approx(10 * INCH)
    assert guest.open == pytest.approx((3.5 * INCH, (3.5 + 4 + 10 - pi) * INCH))
    # The glass there begins at 50 in, as far from the corner as on the first wall: open it stays clear.
    assert set_out(room, "w2", "s1", trade()).treatments[0].glass.clear_open == pytest.approx(1.0)


def test_two_panels_that_park_at_one_end_lie_one_after_the_other_along_both_walls() -> None:
    room = one_way()
    first = layer_of(room, LAYER).panels[0]
    room = replace_at(room, LAYER, panels=(first, replace(first, id="p9")))
    own, there = landed(room, "w1").panels, landed(room, "w2").guests
    # Alike in flat width, each closes over one wall.
    assert own[0].closed == pytest.approx((44 * INCH, 140.5 * INCH))
    assert own[1].closed == pytest.approx((140.5 * INCH, 140.5 * INCH))
    assert [guest.ref[-1] for guest in there] == ["p9"]
    assert there[0].closed == pytest.approx((3.5 * INCH, 100 * INCH))


def test_the_brackets_of_each_wall_carry_what_hangs_before_it() -> None:
    room = one_way()
    first, second = landed(room, "w1"), landed(room, "w2")
    (panel,), (guest,) = first.panels, second.guests
    assert first.loads is not None
    assert second.loads is not None
    # Both legs are as long: closed a half hangs on either wall; open all of it on the first, none on the second.
    assert panel.shares == pytest.approx((1.0, 0.5, 1.0))
    assert guest.shares == pytest.approx((0.0, 0.5, 0.0))
    whole_n = first.loads.hung_n
    assert second.loads.hung_n == pytest.approx(whole_n / 2)
    # Each bracket's most is with the half of the cloth closed: together they carry that half and the track.
    carried = sum(bracket.load_n or 0.0 for bracket in second.brackets)
    assert carried >= second.loads.rod_n + whole_n / 2 - 1e-6
    assert carried == pytest.approx(second.loads.rod_n + whole_n / 2, rel=0.2)
    # On the first wall a stack hangs heavier on its end bracket than the drawn half would.
    assert sum(bracket.load_n or 0.0 for bracket in first.brackets) > first.loads.rod_n + whole_n
    bare = landed(replace_at(room, LAYER, panels=()), "w2")
    assert sum(bracket.load_n or 0.0 for bracket in bare.brackets) == pytest.approx(second.loads.rod_n, rel=0.05)


def test_drawn_into_the_bend_it_lies_before_that_bends_tangent() -> None:
    # 1 in short of the middle of the arc of pi in a side, whose tangent is 4 in.
    (panel,) = landed(one_way(drawn=inch(LONG - 1)), "w1").panels
    assert panel.drawn[1] == pytest.approx((140.5 - 4 / pi) * INCH)
    # And 1 in past it, on the other wall.
    (guest,) = landed(one_way(drawn=inch(LONG + 1)), "w2").guests
    assert guest.drawn[1] == pytest.approx((3.5 + 4 / pi) * INCH)


def test_from_the_other_end_it_closes_over_the_first_wall() -> None:
    room = replace_at(bent(4), LAYER, panels=())
    panel = replace(layer_of(bent(4), SECOND).panels[1], flat_width=inch(400), parks="right")
    room = replace_at(room, SECOND, panels=(panel,))
    (own,), (guest,) = landed(room, "w2").panels, landed(room, "w1").guests
    assert own.closed == pytest.approx((3.5 * INCH, 100 * INCH))
    assert own.on_mm == pytest.approx(LONG * INCH)
    assert guest.ref == (*SECOND, panel.id)
    assert guest.closed == pytest.approx((44 * INCH, 140.5 * INCH))
    assert guest.open == pytest.approx((140.5 * INCH, 140.5 * INCH))
