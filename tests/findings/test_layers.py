"""Front and back layers: on double brackets, in their order, without touching.

Figures are worked by hand from the room in ``rooms.py``: rods 56 in long, brackets 2 in in, panels 54 in flat and
26 1/2 in wide when closed.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.findings.model import Finding, Weight
from elevation.findings.rules.meets_layers import needed_apart
from elevation.planning.remedies import remedies
from elevation.room.edits import edit_at, replace_rod
from elevation.room.file import dump_room, load_bytes
from elevation.room.find import layer_of
from elevation.room.layering import with_back_layer
from elevation.room.model import Room
from elevation.room.mounting import mounted
from elevation.setting_out.model import TreatmentOut
from elevation.sheet.drawing import draw_wall
from tests.findings.rooms import HALF, INCH, LAYER, at, found, good_room, held, inch, mm, scene, trade

TREATMENT = LAYER[:3]
HAIR = 0.01


def double() -> tuple[Room, tuple[str, ...]]:
    return with_back_layer(good_room(), TREATMENT, trade())


def beside_its_bracket() -> Room:
    """The back layer's left bracket an inch beside the double bracket."""
    room, back = double()
    return at(room, (*back, "b1"), place=held("from-left-end", inch(3)))


def on_plain_brackets() -> Room:
    """Front brackets that carry one rod only."""
    room, _ = double()
    return edit_at(room, LAYER, lambda layer: replace(layer, brackets=tuple(replace(b, kit="cup") for b in layer.brackets)))


def landed(room: Room) -> TreatmentOut:
    return scene(room).set_out.treatments[0]


def stops(room: Room) -> list[Finding]:
    return [one for one in found(room) if one.weight is Weight.STOP]


def meetings(room: Room) -> list[Finding]:
    return found(room, "meets")  # type: ignore[return-value]


def test_a_second_layer_stands_behind_the_first_and_nothing_touches() -> None:
    room, ref = double()
    front, back = landed(room).layers
    assert back.ref == ref
    assert back.body == "sheer"
    # 2 in to the back rod and 2 3/4 in more to the front one; common practice, no source.
    assert (back.support.projection_mm, front.support.projection_mm) == pytest.approx((2 * INCH, 4.75 * INCH))
    assert [one.kit for one in front.brackets] == ["double-front"] * 2
    assert [one.kit for one in back.brackets] == ["double-back"] * 2
    assert not stops(room)
    assert not meetings(room)
    assert dump_room(load_bytes(dump_room(room), "x")) == dump_room(room)
    with pytest.raises(BadInput, match="two layers already"):
        with_back_layer(room, TREATMENT, trade())


def test_layers_in_the_wrong_order_stop() -> None:
    room, back = double()
    room = replace_rod(room, LAYER, projection=inch(0.5))
    told = [one for one in meetings(room) if one.weight is Weight.STOP]
    assert [one.subject for one in told] == [LAYER]
    assert told[0].measured_mm == pytest.approx(-1.5 * INCH)
    answer = remedies(room, "w1", "s1", told[0], trade())
    assert answer.offered
    fixed = answer.offered[0].room
    assert layer_of(fixed, LAYER).rod.projection.mm > layer_of(fixed, back).rod.projection.mm
    assert not meetings(fixed)


def test_just_far_enough_and_just_too_near() -> None:
    room, _ = double()
    front, back = landed(room).layers
    needed = needed_apart(front, back)
    # Half the deepest fold of each layer, by arc length: both hang at fullness 2.04, 9 gaps of 6 in a panel.
    assert needed == pytest.approx(
        max(panel.fold_depth_mm for panel in front.panels) / 2 + max(panel.fold_depth_mm for panel in back.panels) / 2
    )

    def apart(gap: float) -> Room:
        return replace_rod(room, LAYER, projection=mm(2 * INCH + gap))

    assert not meetings(apart(needed + HAIR))
    near = meetings(apart(needed - HAIR))
    assert [one.weight for one in near] == [Weight.BROKEN]
    answer = remedies(apart(needed - 5), "w1", "s1", meetings(apart(needed - 5))[0], trade())
    assert answer.offered
    assert all(not meetings(one.room) for one in answer.offered)


def test_layers_beside_each_other_do_not_touch() -> None:
    room, back = double()
    # Each layer keeps one short panel, at its own end.
    room = replace_rod(room, LAYER, projection=inch(2.5))
    room = edit_at(room, LAYER, lambda layer: replace(layer, panels=(replace(layer.panels[0], flat_width=inch(20)),)))
    room = edit_at(room, back, lambda layer: replace(layer, panels=(replace(layer.panels[1], flat_width=inch(20)),)))
    assert not [one for one in meetings(room) if one.weight is Weight.BROKEN]


def test_a_back_rod_s_place_needs_its_double_bracket() -> None:
    room, back = double()

    def moved(by: float) -> Room:
        return at(room, (*back, "b1"), place=held("from-left-end", mm(2 * INCH + by)))

    assert not found(moved(HALF - HAIR), "double-bracket")
    stop = found(moved(HALF + HAIR), "double-bracket")[0]
    assert (stop.weight, stop.subject) == (Weight.STOP, (*back, "b1"))
    far = moved(30)
    answer = remedies(far, "w1", "s1", found(far, "double-bracket")[0], trade())
    assert [one for one in answer.offered if not found(one.room, "double-bracket")]
    # A plain front bracket carries no second rod.
    plain = at(room, (*LAYER, "b1"), kit="shop-strap")
    assert [one.subject for one in found(plain, "double-bracket")] == [(*back, "b1")]
    none = on_plain_brackets()
    assert {one.subject for one in found(none, "double-bracket")} == {(*back, "b1"), (*back, "b2")}
    assert remedies(none, "w1", "s1", found(none, "double-bracket")[0], trade()).offered == ()


def test_the_back_layer_is_drawn_first() -> None:
    room, back = double()
    panels = [group.ref for group in draw_wall(scene(room).set_out, trade()) if group.layer == "panel-drawn"]
    assert [ref[3] for ref in panels] == [back[3]] * 2 + [LAYER[3]] * 2


def test_a_plate_that_is_not_there_stands_on_no_casing() -> None:
    room, back = double()
    low = replace_rod(
        replace_rod(room, LAYER, height=held("above-casing", inch(1))), back, height=held("above-casing", inch(1))
    )
    subjects = {one.subject for one in found(low, "on-casing")}
    assert not any(subject[3] == back[3] for subject in subjects)


def test_a_second_layer_under_the_ceiling_hangs_on_double_brackets_at_the_front_rods_height() -> None:
    room, _ = with_back_layer(mounted(good_room(), LAYER[:3], "ceiling", trade()), LAYER[:3], trade())
    front, back = scene(room).set_out.treatments[0].layers
    assert {bracket.kit for bracket in front.brackets} == {"double-front-ceiling"}
    assert {bracket.kit for bracket in back.brackets} == {"double-back-ceiling"}
    # Both kits hold their rod 2 in under the ceiling (common practice, no source).
    assert back.support.height_mm == pytest.approx(front.support.height_mm)
    assert not found(room, "double-bracket")
    assert not found(room, "meets")
    alone = at(room, (*LAYER, "b1"), kit="ceiling-cup")
    assert [one.weight for one in found(alone, "double-bracket")] == [Weight.STOP]
