"""Handles stick where the longest span still sags L/360: against the closed form of a beam, and against the rule itself."""

from __future__ import annotations

from math import pi

import pytest

from elevation.findings.all_rules import find
from elevation.handles.sticking import candidates
from elevation.room.model import Room
from elevation.session.session import Session
from elevation.trade.tables import load_trade
from tests.handles.cases_rods import LONG_STOCK, THREE
from tests.handles.rooms import INCH, LAYER, inch, room, with_layer

TRADE = load_trade()


def places(start: Room, axis: str, ref: tuple[str, ...], *, alone: bool = False):
    session = Session(start, TRADE)
    handle = session.handle(axis, ref).bound(alone)
    found = candidates(handle, session.scene(), alone=alone)
    return session, handle, [place for place in found if "looks neat" in place.reason.template]


def sag_over_span(span: float, left: float, right: float) -> float:
    """Greatest sag over length of a rod under its own weight on two brackets with free ends beyond them, in inches.

    Roark's Formulas for Stress and Strain, table 8.1, cases 2e and 3e added up (even load, end moments).
    """
    outer, wall = 0.922, 0.049
    steel = TRADE.materials["steel"]
    inertia = pi / 64 * (outer**4 - (outer - 2 * wall) ** 4) * INCH**4
    area = pi / 4 * (outer**2 - (outer - 2 * wall) ** 2) * INCH**2
    w = steel.density * 1e-9 * 9.80665 * area
    long, a, b = span * INCH, left * INCH, right * INCH

    def sag(x: float) -> float:
        even = w * x * (long**3 - 2 * long * x**2 + x**3) / 24
        return (
            even
            - w * a**2 / 2 * x * (long - x) * (2 * long - x) / (6 * long)
            - w * b**2 / 2 * x * (long**2 - x**2) / (6 * long)
        ) / (steel.elastic * inertia)

    return max(sag(long * part / 2000) for part in range(800, 1201)) / long


def test_a_bare_rod_sticks_at_the_longest_span_of_the_closed_form() -> None:
    _, _, found = places(LONG_STOCK, "rod-right", LAYER, alone=True)
    (place,) = found
    span = place.value_mm / INCH - 3 - 42
    assert sag_over_span(span, 2, 3) <= 1 / 360 < sag_over_span(span + 1 / 16, 2, 3)


@pytest.mark.parametrize(("start", "axis", "ref"), [(LONG_STOCK, "rod-right", LAYER), (THREE, "bracket", (*LAYER, "b3"))])
def test_a_mark_farther_the_rule_speaks(start: Room, axis: str, ref: tuple[str, ...]) -> None:
    session, handle, found = places(start, axis, ref, alone=True)
    assert found
    for place in found:
        out = 1 if place.value_mm > handle.value_mm else -1
        told = []
        for marks in (0, out):
            moved = handle.move(session.room, place.value_mm + marks * session.room.graduation_mm, True)
            told.append({one.rule for one in find(Session(moved, TRADE).scene())} & {"sag"})
        assert told == [set(), {"sag"}]


def test_a_joint_that_does_not_hold_is_no_longest_span() -> None:
    # Tube of 96 in: past that there is a joint without a bracket, long before the rod sags.
    start = room(layer=with_layer(panels=()), width=inch(220))
    _, _, found = places(start, "rod-right", LAYER, alone=True)
    assert found == []


def test_where_the_weight_of_the_cloth_is_not_known_there_is_no_such_place() -> None:
    _, _, found = places(room(), "rod-right", LAYER, alone=True)
    assert found == []
