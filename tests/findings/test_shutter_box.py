"""The box of a roller shutter over the head: where it likely is, and that nothing is fixed to it.

By hand from ``rooms.py``: the head at 78 in; the rod at 84 1/4 in, its plates from 81 3/4 to 85 3/4 in up and 1 1/2 in
wide, about 46 and 98 in. The box is 2 3/8 in wider than the opening on each side: from 51 5/8 to 92 3/8 in.
"""

from __future__ import annotations

import pytest

from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.model import Board, Room
from elevation.setting_out.model import ZoneOut
from elevation.sheet.draw_inside import zone_group
from elevation.sheet.records import Polyline, Text
from elevation.words import Style
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    OPENING,
    RIGHT_BRACKET,
    at,
    found,
    good_room,
    held,
    inch,
    mm,
    said,
    scene,
    trade,
)

A_HAIR = 0.1


def boxed(high_in: float, room: Room | None = None, inset_in: float = 10.0) -> Room:
    """A box that high, and brackets that far in from the rod's ends: at 54 and 90 in, over it."""
    room = at(good_room() if room is None else room, OPENING, shutter_box=inch(high_in))
    room = at(room, LEFT_BRACKET, place=held("from-left-end", inch(inset_in)))
    return at(room, RIGHT_BRACKET, place=held("from-right-end", inch(inset_in)))


def zone(room: Room) -> ZoneOut:
    return next(one for one in scene(room).set_out.zones if one.kind == "shutter-box")


@pytest.mark.parametrize("substrate", ["not-known", "concrete", "board-timber-studs", "solid-brick"])
def test_where_it_likely_is_whatever_the_wall(substrate: str) -> None:
    box = zone(boxed(8, good_room(substrate=substrate)))
    sides = (box.left_mm, box.bottom_mm, box.right_mm, box.top_mm)
    assert [round(side / INCH, 6) for side in sides] == [51.625, 78, 92.375, 86]
    assert not box.is_found
    assert not [one for one in scene(good_room(substrate=substrate)).set_out.zones if one.kind == "shutter-box"]


def test_a_lintel_lies_over_the_box() -> None:
    room = boxed(8, good_room(substrate="concrete"))
    lintel = next(one for one in scene(room).set_out.zones if one.kind == "lintel")
    assert lintel.bottom_mm == pytest.approx(86 * INCH)


def test_a_bracket_over_it_stops_at_its_edge_and_not_beyond() -> None:
    # Plates begin 3 3/4 in over the head.
    assert not found(at(boxed(1), OPENING, shutter_box=inch(3.75)), "shutter-box")
    hit = found(at(boxed(1), OPENING, shutter_box=mm(3.75 * INCH + A_HAIR)), "shutter-box")
    assert [one.weight for one in hit] == [Weight.STOP, Weight.STOP]
    assert (
        said(hit[0].text)
        == "Window 1: the left end bracket is to be fixed over the roller shutter's box, where nothing holds."
    )
    # Beside it: the left plate's right edge at 51 5/8 in is 6 7/8 in in from the rod's end.
    assert not found(boxed(8, inset_in=6.875), "shutter-box")
    assert found(boxed(8, inset_in=6.875 + 1 / 16), "shutter-box")


def test_what_was_there_before_or_is_carried_by_a_board_is_not_drilled_there() -> None:
    room = at(at(boxed(8), LEFT_BRACKET, there=True), RIGHT_BRACKET, there=True)
    assert not found(room, "shutter-box")
    assert not found(at(boxed(8), LAYER, board=Board(inch(6), inch(6))), "shutter-box")


def test_it_can_be_fixed_over_it_beside_it_or_to_the_ceiling() -> None:
    room = boxed(6)
    one = found(room, "shutter-box")[0]
    labels = [said(each.label) for each in remedies(room, "w1", "s1", one, trade()).offered]
    assert "Set the rod 6¹⁄₄ in above the casing" in labels


def test_it_is_drawn_dashed_and_asks_for_a_probe() -> None:
    group = zone_group(scene(boxed(14)).set_out, Style(), 24.0)
    box = zone(boxed(14))
    outlines = [record for record in group.records if isinstance(record, Polyline)]
    assert any(record.points[0] == (box.left_mm, box.bottom_mm) and record.pen.dash for record in outlines)
    assert any("probe to confirm" in record.text for record in group.records if isinstance(record, Text))
