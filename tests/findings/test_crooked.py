"""Level or look: a level rod under a ceiling out of level. Limits from memory; figures by hand from ``rooms.py``.

The rod runs from 44 to 100 in, 56 in long, 84 1/4 in high. Over it the ceiling rises evenly from the wall's left end.
"""

from __future__ import annotations

import pytest

from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.model import Room, Station
from tests.findings.rooms import HALF, INCH, LAYER, at, ceiling, found, good_room, inch, mm, said, the, trade

ROD = 56 * INCH


def sloping(by: float, over_left: float = 8 * INCH) -> Room:
    """The ceiling ``over_left`` over the rod's left end and ``by`` mm higher over its right end."""
    rise = by / ROD
    left = 84.25 * INCH + over_left - rise * 44 * INCH
    stations = (Station(inch(0), mm(left)), Station(inch(144), mm(left + rise * 144 * INCH)))
    return at(good_room(), ("w1",), ceiling=stations)


def test_a_quarter_inch_along_the_rod_is_not_seen() -> None:
    limit = INCH / 4
    assert not found(sloping(limit), "crooked")
    assert not found(sloping(limit + HALF), "crooked")
    one = the(sloping(limit + HALF + 0.1), "crooked")
    assert one.weight is Weight.CONSIDER
    assert one.subject == LAYER
    assert one.measured_mm == pytest.approx(limit + HALF + 0.1)


@pytest.mark.parametrize("by", [INCH, -INCH])
def test_each_way_to_hang_it_is_told_with_its_figure(by: float) -> None:
    text = said(the(sloping(by), "crooked").text)
    assert "runs 1 in out of level" in text
    assert "8 in under it at the left" in text
    assert f"{8 + round(by / INCH)} in at the right" in text
    assert "split, ¹⁄₂ in" in text


def test_far_under_the_ceiling_nobody_compares() -> None:
    assert found(sloping(INCH, 12 * INCH), "crooked")
    assert found(sloping(INCH, 12 * INCH + HALF), "crooked")
    assert not found(sloping(INCH, 12 * INCH + HALF + 0.1), "crooked")


def test_a_slope_for_all_to_see_is_no_trouble() -> None:
    assert found(sloping(0.05 * ROD - 0.1), "crooked")
    assert not found(sloping(0.05 * ROD + 0.1), "crooked")


def test_a_level_or_unmeasured_ceiling_is_no_trouble() -> None:
    assert not found(ceiling(good_room(), inch(92)), "crooked")
    assert not found(at(good_room(), ("w1",), ceiling=()), "crooked")


def test_a_gable_over_the_rod_is_seen_as_one() -> None:
    stations = (Station(inch(0), inch(90)), Station(inch(72), inch(94)), Station(inch(144), inch(91)))
    assert not found(at(good_room(), ("w1",), ceiling=stations), "crooked")


def test_a_lower_rod_is_offered() -> None:
    # 12 in and a mark under the low end: 84 1/4 + 11 3/4 - 12 1/16 = 83 15/16 in, 3 11/16 in above the casing.
    room = sloping(INCH, 11.75 * INCH)
    offered = remedies(room, "w1", "s1", the(room, "crooked"), trade()).offered
    assert [said(one.label) for one in offered] == ["Set the rod 3¹¹⁄₁₆ in above the casing"]
    assert not found(offered[0].room, "crooked")
