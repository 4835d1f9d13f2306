"""The way out of a sleeping room.

IRC R310.2.1: net clear opening of 5.7 square feet (5.0 at grade floor), at least 24 in high and 20 in wide; R310.2.2:
sill at most 44 in above the floor. The local code governs. Figures by hand.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from elevation.findings.model import Weight
from elevation.room.model import Head, Room, Sash, Station
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_PANEL,
    OPENING,
    RIGHT_PANEL,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    mm,
    panels,
    reach,
    rod,
    said,
    the,
    trade,
)

FT2 = 144 * INCH * INCH


def bedroom(sash: str = "casement-out", **opening: object) -> Room:
    room = at(at(good_room(), OPENING, escape=True, sash=Sash(sash), **opening), (), sleeping=True)
    return ceiling(room, inch(120))


def taking(room: Room, each: float) -> Room:
    """Open cloth ``each`` mm inside both jambs: it begins 1/2 in outside the bracket and is 4 1/2 in wide."""
    return reach(room, mm(4 * INCH - each + 2 * INCH))


def stops(room: Room):  # type: ignore[no-untyped-def]
    return [one for one in found(room, "escape") if one.weight is Weight.STOP]


def test_the_figures_are_those_of_the_code() -> None:
    limits = trade().limits
    assert limits["escape-area"].value == pytest.approx(5.7 * FT2)
    assert limits["escape-area-grade"].value == pytest.approx(5.0 * FT2)
    assert limits["escape-height"].value == pytest.approx(24 * INCH)
    assert limits["escape-width"].value == pytest.approx(20 * INCH)
    assert limits["escape-sill"].value == pytest.approx(44 * INCH)


def test_cloth_outside_the_opening_is_no_matter() -> None:
    assert not found(bedroom(), "escape")


def test_width_that_is_left() -> None:
    # 36 in wide, 48 in high: 20 in are left where each panel takes 8 in.
    assert not stops(taking(bedroom(), 8 * INCH))  # 20 x 48 = 6.67 ft2
    hit = stops(taking(bedroom(), 8 * INCH + INCH / 64 + 0.01))
    assert len(hit) == 1
    assert hit[0].subject[:4] == LAYER
    assert "20 in is asked for" in said(hit[0].text)
    assert "local code governs" in said(hit[0].authority)


def test_only_in_sleeping_rooms_and_only_the_marked_window() -> None:
    assert not found(at(taking(bedroom(), 9 * INCH), (), sleeping=False), "escape")
    assert not found(at(taking(bedroom(), 9 * INCH), OPENING, escape=False), "escape")


def test_area_that_is_left() -> None:
    # 40 in high: 5.7 ft2 = 820.8 in2 need 20.52 in of width; each panel may take 7.74 in.
    room = bedroom(height=inch(40))
    assert not stops(taking(room, 7.74 * INCH))
    hit = stops(taking(room, 7.74 * INCH + 0.01))
    assert "square feet where 5.7 are asked for (5.0 at grade floor)" in said(hit[0].text)
    metric = at(taking(room, 8 * INCH), (), unit="mm")
    assert "square metres where 0.53 are asked for (0.46 at grade floor)" in said(stops(metric)[0].text)


def test_a_rod_across_the_opening_takes_height() -> None:
    # Rod radius 0.461 in; sill 30 in: 24 in of height are left where the rod's underside is at 54 in.
    radius = 0.922 * INCH / 2
    wide = bedroom(width=inch(60), casing=inch(0))

    def make(over_sill: float) -> Room:
        return panels(rod(wide, height=held("above-floor", mm(30 * INCH + over_sill + radius))), parks="left")

    # The cloth, parked on the left, leaves 60 - 9 in of width at least.
    tall = [one for one in stops(make(24 * INCH)) if "high" in said(one.text)]
    assert not tall
    assert any("24 in is asked for" in said(one.text) for one in stops(make(24 * INCH - INCH / 32 - 0.01)))


@dataclass
class Sized:
    sash: str
    wide: float
    high: float


@pytest.mark.parametrize(
    "size",
    # Half the height opens of a double-hung window, half the width of a sliding one, all of a casement.
    [
        Sized("double-hung", 36, 48.0),
        Sized("sliding", 40, 48),
        Sized("casement-out", 20, 48),
        Sized("casement-in", 36, 24),
    ],
)
def test_a_window_just_big_enough_by_itself_and_one_just_too_small(size) -> None:
    trimmed = at(bedroom(size.sash, width=inch(size.wide), height=inch(size.high)), (), limits={})
    alone = [one for one in found(trimmed, "escape") if one.weight is Weight.CONSIDER]
    part_wide = size.wide / (2 if size.sash == "sliding" else 1)
    part_high = size.high / (2 if size.sash == "double-hung" else 1)
    fits = part_wide >= 20 and part_high >= 24 and part_wide * part_high >= 820.8
    assert bool(alone) is not fits
    small = at(trimmed, OPENING, width=mm(size.wide * INCH - 2 * 0.9), height=mm(size.high * INCH - 2 * 0.9))
    hit = the(small, "escape")
    assert hit.weight is Weight.CONSIDER
    assert hit.subject == OPENING
    assert "even without cloth" in said(hit.text)


def test_a_fixed_sash_is_no_way_out() -> None:
    assert "fixed" in said(the(bedroom("fixed"), "escape").text)


def test_a_sill_too_high() -> None:
    assert not found(bedroom(sill=inch(44)), "escape")
    assert "sill" in said(the(bedroom(sill=inch(45)), "escape").text)


def test_the_sill_is_taken_over_the_floor_below_its_middle() -> None:
    # The floor rises 2 in from 54 to 90 in: 1 in at the window's middle.
    floor = (Station(inch(54), inch(0)), Station(inch(90), inch(2)))
    room = at(bedroom(sill=inch(45)), ("w1",), floor=floor)
    assert not found(room, "escape")
    assert found(at(room, OPENING, sill=inch(45.1)), "escape")


def test_under_an_arch_only_the_height_to_its_springing_counts() -> None:
    # 36 in wide and 45 in high with a half-round head: 27 in to the springing; 20.52... 820.8/27 = 30.4 in are needed.
    room = bedroom(height=inch(45), head=Head("half-round"))
    assert not stops(taking(room, 2.8 * INCH))
    assert stops(taking(room, 2.81 * INCH))


def test_under_a_rake_only_the_lower_side_counts() -> None:
    # 24 in on the right, 60 in on the left: 820.8/24 = 34.2 in of 36 are needed.
    room = ceiling(bedroom(height=inch(60), head=Head("raked", right_height=inch(24))), inch(140))
    room = panels(room, label_length=inch(100))
    assert not stops(taking(room, 0.9 * INCH))
    assert stops(taking(room, 0.91 * INCH))


def test_what_takes_most_is_named() -> None:
    # The left panel is wider and takes more.
    room = taking(bedroom(), 9 * INCH)
    wider = at(room, LEFT_PANEL, flat_width=inch(66))
    assert stops(wider)[0].subject == LEFT_PANEL
    assert "takes 5¹⁄₂ in of the way out" in said(stops(wider)[0].text)
    assert stops(at(room, RIGHT_PANEL, flat_width=inch(66)))[0].subject == RIGHT_PANEL


def test_of_a_sliding_sash_the_worse_half_counts() -> None:
    # 80 in wide: 40 in a half; a single panel on the left takes 21 in of the left half.
    room = panels(bedroom("sliding", width=inch(80)), parks="left", flat_width=inch(126))
    assert [one.subject[:4] for one in stops(reach(room, inch(2)))] == [LAYER]
