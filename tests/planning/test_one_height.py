"""Rods of one room at one height, round its corners, over floors that are not level. Figures by hand.

Both walls are those of ``tests/findings/rooms.py``: the rod stands at 84 1/4 in over its own wall's datum.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import find, find_afresh, stickings
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Finding
from elevation.handles.all_handles import handles
from elevation.handles.sticking import candidates
from elevation.planning.one_height import level_rods
from elevation.planning.remedies import remedies
from elevation.room.edits import edit_at, replace_at, replace_rod
from elevation.room.find import layer_of, treatment_of, wall_of
from elevation.room.model import Room, Station, WallEnd
from elevation.room.mounting import mounted
from elevation.setting_out.room_rods import datum_steps, rods_elsewhere
from elevation.setting_out.whole import set_out
from tests.findings.rooms import INCH, LAYER, good_room, held, inch, said, scene, trade
from tests.findings.test_points import rods_at, with_back_layer

SECOND = ("w2", "s1", "t1", "l1")


def two_walls(over_casing: float = 4, **fields: object) -> Room:
    """The good wall twice; the rod of the second ``over_casing`` in over its casing."""
    first = good_room().walls[0]
    room = Room(walls=(first, replace(first, id="w2", name="East")), **fields)  # type: ignore[arg-type]
    return replace_rod(room, SECOND, height=held("above-casing", inch(over_casing)))


def uneven(room: Room) -> list[Finding]:
    found = find(scene(room), TreatmentMemo(find_afresh))
    return [one for one in found if one.rule == "uneven-rods"]


@pytest.mark.parametrize(("over", "count"), [(4 + 1 / 16, 0), (4 + 3 / 32, 0), (4 + 1 / 8, 1), (4, 0)])
def test_the_wish_counts_from_one_graduation_on(over: float, count: int) -> None:
    # Limit one graduation, 1/16 in, and half of one more is still the same reading: 3/32 in is the last that passes.
    assert len(uneven(two_walls(over, one_height=True))) == count


def test_without_the_wish_each_wall_is_by_itself() -> None:
    assert uneven(two_walls(6)) == []


def test_it_says_the_room_and_by_how_much() -> None:
    (finding,) = uneven(two_walls(6, one_height=True))
    assert said(finding.text) == "Window 1: the rod stands 2 in lower than the other rods of this room."
    offered = remedies(two_walls(6, one_height=True), "w1", "s1", finding, trade()).offered
    assert [said(one.label) for one in offered] == ["Set the rod 6 in above the casing"]
    assert uneven(offered[0].room) == []


def test_the_handle_sticks_there_and_says_why() -> None:
    room = two_walls(6, one_height=True)
    here = scene(room)
    places = stickings(here, here.set_out.treatments[0])
    wished = [place for place in places if said(place.reason) == "at the height of the room's other rods"]
    assert [place.value_mm for place in wished] == [pytest.approx(86.25 * INCH)]
    plain = scene(two_walls(6))
    handle = next(one for one in handles(plain.room, plain.set_out, trade()) if one.axis == "rod-height")
    reasons = {said(place.reason): place.value_mm for place in candidates(handle, plain)}
    assert reasons["level with the rod of Window 1, wall East"] == pytest.approx(86.25 * INCH)


def corners(room: Room) -> Room:
    """The second wall to the right of the first; the first one's floor rises 1 in to its right end."""
    floor = (Station(inch(0), inch(0)), Station(inch(144), inch(1)))
    room = replace_at(room, ("w1",), right=WallEnd("corner", "w2"), floor=floor)
    return replace_at(room, ("w2",), left=WallEnd("corner", "w1"))


def test_the_floor_goes_round_the_corner() -> None:
    room = corners(two_walls())
    assert datum_steps(room, "w1") == {"w1": 0.0, "w2": pytest.approx(INCH)}
    assert datum_steps(room, "w2") == {"w2": 0.0, "w1": pytest.approx(-INCH)}
    # 84 1/4 in over a floor that is 1 in higher.
    assert rods_elsewhere(room, "w1", "s1", trade())[0].height_mm == pytest.approx(85.25 * INCH)


def test_seen_from_either_wall_the_difference_is_the_same() -> None:
    room = corners(two_walls())
    heights = [set_out(room, wall, "s1", trade()).treatments[0].layers[0].support.height_mm for wall in ("w1", "w2")]
    one = rods_elsewhere(room, "w1", "s1", trade())[0].height_mm - heights[0]
    other = rods_elsewhere(room, "w2", "s1", trade())[0].height_mm - heights[1]
    assert one == pytest.approx(-other)


def test_all_rods_follow_in_one_edit_and_keep_what_they_hold() -> None:
    room = corners(two_walls(6))
    room = replace_rod(room, SECOND, height=held("below-ceiling", inch(9)))
    done = level_rods(room, LAYER, trade())
    assert done.one_height
    assert layer_of(done, LAYER) is layer_of(room, LAYER)
    # The first rod stands 84 1/4 in over w1's datum, so 83 1/4 in over w2's, whose ceiling is at 96 in.
    assert layer_of(done, SECOND).rod.height.hold == "below-ceiling"
    assert layer_of(done, SECOND).rod.height.at.mm == pytest.approx(12.75 * INCH)
    assert uneven(done) == []
    assert level_rods(done, LAYER, trade()) is done


def above(room: Room, wall: str, scheme: str) -> list[list[float]]:
    """How high above its casing each rod of a scheme is held, layer by layer, in inches."""
    hung = next(one for one in wall_of(room, wall).schemes if one.id == scheme).treatments
    return [[round(layer.rod.height.at.mm / INCH, 6) for layer in one.layers] for one in hung]


def test_the_rod_that_is_pointed_at_gives_the_height_and_only_front_rods_follow() -> None:
    room = with_back_layer(with_back_layer(rods_at(4, 5, 6), "t1", 7), "t2", 8)
    done = level_rods(room, ("w1", "s1", "t1", "l1"), trade())
    assert above(done, "w1", "s1") == [[5], [5, 7], [5, 8]]
    assert treatment_of(done, ("w1", "s1", "t1")) is treatment_of(room, ("w1", "s1", "t1"))


def test_rods_that_hang_from_the_ceiling_stay() -> None:
    ceiling = mounted(rods_at(4, 5), ("w1", "s1", "t1"), "ceiling", trade())
    done = level_rods(ceiling, ("w1", "s1", "t0"), trade())
    assert treatment_of(done, ("w1", "s1", "t1")) == treatment_of(ceiling, ("w1", "s1", "t1"))


def test_on_other_walls_the_scheme_of_the_same_name_follows() -> None:
    first = replace_at(rods_at(4), ("w1", "s1"), name="Linen").walls[0]
    plain = replace(rods_at(6).walls[0].schemes[0], name="Plain")
    linen = replace(with_back_layer(rods_at(7), "t0", 9).walls[0].schemes[0], id="s2", name="Linen")
    second = replace(first, id="w2", name="East", schemes=(plain, linen))
    done = level_rods(Room(walls=(first, second)), ("w1", "s1", "t0"), trade())
    assert above(done, "w2", "s1") == [[6]]
    assert above(done, "w2", "s2") == [[4, 9]]


def test_a_drag_asks_other_walls_once() -> None:
    room = two_walls(6, one_height=True)
    first = rods_elsewhere(room, "w1", "s1", trade())
    moved = edit_at(room, LAYER, lambda one: replace(one, rod=replace(one.rod, height=held("above-casing", inch(5)))))
    again = rods_elsewhere(moved, "w1", "s1", trade())
    assert again[0].treatment is first[0].treatment
