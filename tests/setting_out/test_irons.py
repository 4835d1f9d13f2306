"""Angle irons of a pelmet's shelf, brought onto framing; a shelf 1000 mm long with irons at most 508 mm (20 in) apart.

Evenly they stand 50.8 mm (2 in) in from its ends and half way, at 50.8, 500 and 949.2 mm: bays of 449.2 mm.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from elevation.setting_out.irons import on_framing
from elevation.setting_out.model import PelmetOut, ZoneOut

APART = 508.0
EVEN = (50.8, 500.0, 949.2)


def shelf(top: float = 2200.0, irons: tuple[float, ...] = EVEN) -> PelmetOut:
    return PelmetOut("board", 0.0, top - 300, 1000.0, top, 150.0, top - 50, irons)


def upright(x: float, bottom: float = 0.0, top: float = 2500.0, kind: str = "stud") -> ZoneOut:
    return ZoneOut(kind, ("w1",), x - 19.0, bottom, x + 19.0, top)


def irons(*zones: ZoneOut, apart: float = APART) -> tuple[float, ...]:
    return on_framing(shelf(), zones, apart).irons_mm


def test_without_framing_they_stay_and_nothing_is_made_anew() -> None:
    pelmet = shelf()
    assert on_framing(pelmet, (), APART) is pelmet
    # Nor is what ends below the shelf, a lintel, or a stud in just that place any reason.
    low, lintel = upright(480.0, top=2199.0), ZoneOut("lintel", ("w1",), 400.0, 2100.0, 600.0, 2300.0)
    assert on_framing(pelmet, (low, lintel, upright(500.0)), APART) is pelmet


@pytest.mark.parametrize(
    ("at", "there"),
    [
        (724.5, (50.8, 724.5, 949.2)),
        (724.7, (50.8, 500.0, 724.7)),
        (275.3, (275.3, 500.0, 949.2)),
        (10.0, (10.0, 500.0, 949.2)),
    ],
)
def test_of_two_irons_the_nearer_one_goes(at: float, there: tuple[float, ...]) -> None:
    assert irons(upright(at), apart=2000.0) == pytest.approx(there)


@pytest.mark.parametrize(("top", "goes"), [(2199.9, False), (2200.0, True), (2200.1, True)])
def test_only_what_stands_behind_the_shelf_counts(top: float, goes: bool) -> None:
    assert (540.0 in irons(upright(540.0, top=top))) is goes


@pytest.mark.parametrize(("bottom", "goes"), [(2199.9, True), (2200.0, True), (2200.1, False)])
def test_nor_what_begins_over_it(bottom: float, goes: bool) -> None:
    assert (540.0 in irons(upright(540.0, bottom=bottom))) is goes


def test_over_a_header_they_stand_where_they_are_and_at_its_ends_just_on_it() -> None:
    header = ZoneOut("header", ("w1", "o1"), 200.0, 2100.0, 900.0, 2300.0)
    assert irons(header, apart=2000.0) == pytest.approx((200.0, 500.0, 900.0))


def test_where_a_move_leaves_too_much_another_one_comes_between() -> None:
    # 50.8 to 600 is 549.2: one is added, on the framing there, or half way on board alone.
    assert irons(upright(600.0)) == pytest.approx((50.8, (50.8 + 600) / 2, 600.0, 949.2))
    assert irons(upright(600.0), upright(300.0)) == pytest.approx((50.8, 300.0, 600.0, 949.2))
    assert irons(upright(558.8)) == pytest.approx((50.8, 558.8, 949.2))


def test_two_that_would_come_together_are_one() -> None:
    close = PelmetOut("board", 0.0, 1900.0, 300.0, 2200.0, 150.0, 2150.0, (50.0, 150.0, 250.0))
    assert on_framing(close, (upright(100.0),), APART).irons_mm == pytest.approx((100.0, 250.0))


def test_mirrored_they_are_mirrored_where_all_are_on_framing() -> None:
    zones = (upright(90.0), upright(470.0), upright(880.0))
    other = tuple(upright(1000.0 - at) for at in (90.0, 470.0, 880.0))
    assert irons(*other) == pytest.approx(tuple(1000.0 - x for x in reversed(irons(*zones))))
    assert all(b - a <= APART for a, b in pairwise(irons(*zones)))


def test_nothing_goes_beyond_the_shelf() -> None:
    assert irons(upright(-10.0), upright(1010.0)) == EVEN
