"""Level or look: a level rod under a ceiling out of level. Limits from memory; figures by hand from ``rooms.py``.

The rod runs from 44 to 100 in, 56 in long, 84 1/4 in high. Over it the ceiling rises evenly from the wall's left end.
"""

from __future__ import annotations

from typing import Any

import pytest

from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.model import Head, Readings, Room, Station
from tests.findings.rooms import (
    HALF,
    INCH,
    LAYER,
    OPENING,
    at,
    ceiling,
    found,
    good_room,
    inch,
    mm,
    panels,
    rod,
    said,
    the,
    trade,
)

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
    labels = [said(one.label) for one in offered]
    # Parallel to the ceiling it would be as crooked over the head: only the way between is any better.
    assert labels == ["Hang the rod half way between head and ceiling", "Set the rod 3¹¹⁄₁₆ in above the casing"]
    assert not any(found(one.room, "crooked") for one in offered)


def crooked_head(by: float, **fields: Any) -> Room:
    """The head read ``by`` mm higher at its right corner than at its left one, 36 in on."""
    taken = Readings(height_left=inch(48), height_right=mm(48 * INCH + by))
    return rod(at(good_room(), OPENING, height=mm(48 * INCH + by), taken=taken), **fields)


def test_a_crooked_head_under_a_level_rod() -> None:
    # Over the rod, 56 in long, a head that rises 1/2 in over 36 in rises 7/9 in; 1/4 in is seen.
    seen = 36 / 56
    assert not found(crooked_head(seen * (INCH / 4 + HALF)), "crooked")
    one = the(crooked_head(seen * (INCH / 4 + HALF + 0.1)), "crooked")
    assert one.measured_mm == pytest.approx(INCH / 4 + HALF + 0.1)
    room = ceiling(crooked_head(INCH / 2), inch(110))
    text = said(the(room, "crooked").text)
    assert text == (
        "Window 1: the rod looks crooked. Over the rod's 56 in: level, it is ³⁄₄+ in off the head; parallel to the head,"
        " it is ³⁄₄+ in off the level."
    )
    offered = remedies(room, "w1", "s1", the(room, "crooked"), trade()).offered
    assert [said(one.label) for one in offered] == ["Hang the rod parallel to the head"]
    # With a level ceiling near, what is parallel to the head is as far off that.
    room = crooked_head(INCH / 2)
    text = said(the(room, "crooked").text)
    assert text == (
        "Window 1: the rod looks crooked. Over the rod's 56 in: level, it is ³⁄₄+ in off the head and 0 in off the ceiling;"
        " parallel to the head, it is ³⁄₄+ in off the ceiling and ³⁄₄+ in off the level; split, it is ³⁄₈+ in off the head,"
        " ³⁄₈+ in off the ceiling and ³⁄₈+ in off the level."
    )
    offered = remedies(room, "w1", "s1", the(room, "crooked"), trade()).offered
    assert said(offered[0].label) == "Hang the rod half way between head and ceiling"
    assert not found(ceiling(crooked_head(INCH / 2, tilt="head"), inch(110)), "crooked")


def test_a_choice_is_only_doubted_where_another_looks_straighter() -> None:
    room = rod(sloping(INCH, 8 * INCH), tilt="split")
    assert not found(room, "crooked")
    assert found(rod(sloping(INCH, 8 * INCH), tilt="ceiling"), "crooked")


def leaning(slope: float) -> Room:
    """A rod parallel to a raked head."""
    head = Head("raked", right_height=mm(48 * INCH + slope * 36 * INCH))
    return rod(at(good_room(), OPENING, head=head), tilt="head")


def test_cloth_runs_down_a_rod_steeper_than_one_in_ten() -> None:
    assert not found(leaning(0.1), "runs-down")
    one = the(leaning(0.1001), "runs-down")
    assert one.weight is Weight.CONSIDER
    assert "falls 5⁵⁄₈" in said(one.text)
    assert "to the left" in said(one.text)
    assert "to the right" in said(the(leaning(-0.2), "runs-down").text)
    offered = remedies(leaning(-0.2), "w1", "s1", the(leaning(-0.2), "runs-down"), trade()).offered
    assert [said(one.label) for one in offered][:1] == ["Hang the rod level"]
    # What never draws stays where it is fixed.
    assert not found(panels(leaning(0.3), stationary=True), "runs-down")
