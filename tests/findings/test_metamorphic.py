"""What findings must not depend on: the side one looks from, the unit, the place along the wall, what was asked before."""

from __future__ import annotations

import math
from collections import Counter
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from elevation.findings.all_rules import find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Finding, Scene
from elevation.room.model import Obstacle, Room, Station, WallEnd
from elevation.setting_out.whole import set_out_afresh
from tests.findings import test_carrying as carrying
from tests.findings import test_limits as limits
from tests.findings import test_meeting_others as others
from tests.findings.rooms import (
    INCH,
    LAYER,
    OPENING,
    at,
    found,
    good_room,
    held,
    inch,
    mm,
    obstacle,
    rod,
    trade,
    with_obstacle,
)
from tests.setting_out.test_metamorphic import WIDE, mirrored, rooms
from tests.strategies import OBSTACLE_KINDS

Told = Counter[tuple[str, tuple[str, ...], str, float | None]]


def told(room: Room, wall: str = "a", scheme: str = "s") -> Told:
    """What is said, without words: rule, subject, weight, figure."""
    findings = find(Scene(room, set_out_afresh(room, wall, scheme, trade()), trade()), TreatmentMemo(find_afresh))
    return Counter(_figures(one) for one in findings)


def _figures(one: Finding) -> tuple[str, tuple[str, ...], str, float | None]:
    # To a hundredth. The offset keeps the places where rounding turns away from the round figures that walls have, so
    # that a float's last digit does not part two figures that agree.
    measured = None if one.measured_mm is None else float(math.floor(one.measured_mm * 100 + 0.2718))
    return one.rule, one.subject, one.weight.value, measured


@st.composite
def obstacles(draw: st.DrawFn) -> tuple[Obstacle, ...]:
    count = draw(st.integers(0, 4))
    return tuple(
        Obstacle(
            id=f"x{number}",
            kind=draw(st.sampled_from(OBSTACLE_KINDS)),  # type: ignore[arg-type]
            left=mm(draw(st.integers(0, 5000))),
            bottom=mm(draw(st.integers(0, 2300))),
            width=mm(draw(st.integers(20, 900))),
            height=mm(draw(st.integers(10, 900))),
            projection=mm(draw(st.integers(0, 500))),
        )
        for number in range(count)
    )


def with_all(room: Room, made: tuple[Obstacle, ...]) -> Room:
    wall = replace(room.walls[0], obstacles=made)
    return replace(room, walls=(wall,), sleeping=True)


def turned(one: Obstacle) -> Obstacle:
    return replace(one, left=mm(WIDE - one.left.mm - one.width.mm))


@given(rooms(), obstacles())
def test_a_mirrored_wall_has_the_same_wrong_with_it(room: Room, made: tuple[Obstacle, ...]) -> None:
    here = with_all(room, made)
    there = with_all(mirrored(room), tuple(turned(one) for one in made))
    assert told(here) == told(there)


@given(rooms(), obstacles())
def test_inches_and_millimetres_agree(room: Room, made: tuple[Obstacle, ...]) -> None:
    metric = with_all(replace(room, graduation=mm(1)), made)
    assert told(metric) == told(replace(metric, unit="in"))


def moved(room: Room, by: float) -> Room:
    """Everything ``by`` mm further right on a wall that is as much wider."""
    wall: Any = room.walls[0]

    def stations(line: tuple[Station, ...]) -> tuple[Station, ...]:
        return tuple(Station(mm(one.x.mm + by), one.height) for one in line)

    wall = replace(
        wall,
        width=mm(wall.width.mm + by),
        openings=tuple(replace(one, left=mm(one.left.mm + by)) for one in wall.openings),
        obstacles=tuple(replace(one, left=mm(one.left.mm + by)) for one in wall.obstacles),
        ceiling=stations(wall.ceiling),
        floor=stations(wall.floor),
    )
    return replace(room, walls=(wall,))


@pytest.mark.parametrize(
    "room",
    [
        limits.gap(5 * INCH),
        limits.bracket_beyond(3 * INCH),
        limits.stack_over_glass(3 * INCH),
        limits.over_radiator(0.0),
        limits.floor_varies(INCH),
        limits.panels_apart(INCH),
        limits.second_rod(INCH),
        others.two_windows(-INCH),
        carrying.three_brackets("shop-strap"),
    ],
)
def test_a_shifted_wall_has_the_same_wrong_with_it(room: Room) -> None:
    assert told(room, "w1", "s1") == told(moved(room, 508.0), "w1", "s1")
    assert told(room, "w1", "s1")


def test_an_uncovered_opening_changes_nothing() -> None:
    room = limits.bracket_beyond(3 * INCH)
    other = replace(room.walls[0].openings[0], id="o9", left=inch(130))
    wider = at(room, ("w1",), width=inch(200), openings=(*room.walls[0].openings, other))
    assert told(at(room, ("w1",), width=inch(200)), "w1", "s1") == told(wider, "w1", "s1")


# --- nothing is found twice over ----------------------------------------------------------------------------


def scene_of(room: Room) -> Scene:
    from elevation.setting_out.whole import set_out

    return Scene(room, set_out(room, "w1", "s1", trade()), trade())


def test_an_unchanged_treatment_is_not_looked_at_again() -> None:
    memo = TreatmentMemo(find_afresh)
    room = limits.second_rod(INCH)
    first = find(scene_of(room), memo)
    assert memo.calls == 3
    assert find(scene_of(room), memo) == first
    assert memo.calls == 3
    # A drag of one rod: only its treatment.
    dragged = rod(room, height=held("above-casing", inch(5)))
    find(scene_of(dragged), memo)
    assert memo.calls == 4
    # Back and forth costs nothing.
    assert find(scene_of(room), memo) == first
    find(scene_of(dragged), memo)
    assert memo.calls == 4


@pytest.mark.parametrize(
    "change",
    [
        lambda room: at(room, (), limits={"rod-low": inch(5)}),
        lambda room: at(room, (), graduation=inch(1)),
        lambda room: at(room, (), sleeping=True),
        lambda room: at(room, ("w1", "s1"), clear_glass_to=inch(0)),
        lambda room: with_obstacle(room, obstacle("shelf", 1700, 2100, 300, 60, 200)),
        lambda room: at(room, ("w1",), left=WallEnd("open")),
        lambda room: at(room, ("w1",), ceiling=(Station(inch(0), inch(86)),)),
        lambda room: at(room, OPENING, escape=True),
        lambda room: at(room, LAYER, heading="eyelets"),
    ],
)
def test_what_rules_read_is_what_the_memo_compares(change) -> None:
    memo = TreatmentMemo(find_afresh)
    room = rod(good_room(), height=held("above-casing", inch(4)))
    find(scene_of(room), memo)
    changed = change(room)
    assert find(scene_of(changed), memo) == found(changed)
    assert memo.calls == 2
