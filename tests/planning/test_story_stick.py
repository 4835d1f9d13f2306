"""Story sticks: by hand for the hall, against the set-out for rooms beside their own copies, mirrored, one window moved."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import Missing
from elevation.places import demo_rooms
from elevation.planning.dressed import Dressed, dress
from elevation.planning.drilling import drill_places
from elevation.planning.stops import stopped
from elevation.planning.story_stick import story_sticks
from elevation.room.edits import replace_at
from elevation.room.file import load_room
from elevation.sheet.work.lists import stick_pages
from elevation.trade.tables import load_trade
from elevation.units import Length
from elevation.words import Style, say
from tests.sheet.pages import check_inside, texts
from tests.strategies import random_room

TRADE = load_trade()
HALL = load_room(demo_rooms() / "6-hall.room.json")
PLAIN = Style(plain=True)


def sticks_of(*rooms):
    return story_sticks([dress(room, TRADE) for room in rooms], TRADE)


def marks(stick):
    return [(say(mark.name, PLAIN), mark.at_mm) for mark in stick.marks]


def test_the_hall_by_hand() -> None:
    """Its four bays: a rod of 3540 mm from 180 mm beyond the casing, end brackets 60 mm in from its ends, one midway."""
    (stick,) = [one for one in sticks_of(HALL).sticks if one.way == "along"]
    assert len(stick.windows) == 4
    assert marks(stick) == [
        ("rod's left end", 0.0),
        ("bracket 1, middle", 60.0),
        ("left edge of the casing", 180.0),
        ("bracket 2, middle", 1770.0),
        ("right edge of the casing", 3360.0),
        ("bracket 3, middle", 3480.0),
        ("rod's right end", 3540.0),
    ]
    assert [mark.is_held for mark in stick.marks].index(True) == 2


@pytest.mark.parametrize(("off_mm", "served"), [(0.0, 4), (0.4, 4), (1.0, 3)])
def test_a_window_that_is_off_by_a_mark_of_the_tape_has_a_stick_of_its_own(off_mm: float, served: int) -> None:
    """The tape reads whole mm: what rounds to the same mark shares the stick, one mark more does not."""
    wall = HALL.walls[0]
    laid = wall.schemes[0].treatments[1]
    bracket = laid.layers[0].brackets[1]
    moved = replace(bracket.place, at=Length(bracket.place.at.mm + off_mm, f"{bracket.place.at.mm + off_mm:g} mm"))
    ref = (wall.id, wall.schemes[0].id, laid.id, laid.layers[0].id, bracket.id)
    found = sticks_of(replace_at(HALL, ref, place=moved))
    (stick,) = [one for one in found.sticks if one.way == "along"]
    assert len(stick.windows) == served
    assert len([one for one in found.alone if one[0] == "along"]) == 4 - served


@pytest.mark.parametrize("seed", range(10))
def test_a_room_beside_its_copy_shares_every_stick_and_marks_are_the_set_out_s(seed: int) -> None:
    room = random_room(seed)
    dressed = dress(room, TRADE)
    found = story_sticks([dressed, dressed], TRADE)
    assert found.alone == ()
    half = room.graduation_mm / 2 + 1e-6
    along = {window: stick for stick in found.sticks if stick.way == "along" for window in map(str, stick.windows)}
    served = sum(len(stick.windows) for stick in found.sticks if stick.way == "along")
    count = 0
    for wall, findings in zip(dressed.walls, dressed.findings, strict=True):
        for laid in wall.treatments:
            if laid.ref in stopped(findings) or laid.mount != "wall":
                continue
            for layer in laid.layers:
                there = {bracket.ref for bracket in layer.brackets if bracket.is_there}
                places = [place for place in drill_places(wall, laid, TRADE) if place.ref[:-1] == layer.ref]
                places = [place for place in places if place.ref not in there and place.on == "wall"]
                if not places or not laid.openings:
                    continue
                count += 1
                # Some stick has these brackets at these distances from each other, to the tape.
                gaps = [place.x_mm - places[0].x_mm for place in places]
                fits = []
                for stick in along.values():
                    at = [mark.at_mm for mark in stick.marks if "bracket" in say(mark.name, PLAIN)]
                    if len(at) == len(gaps):
                        fits.append(
                            all(abs(b - at[0] - gap) <= 2 * half for b, gap in zip(sorted(at), sorted(gaps), strict=True))
                        )
                assert any(fits)
    assert served == 2 * count


def test_a_treatment_with_a_stop_has_no_stick() -> None:
    stopping = next(
        dressed
        for dressed in (dress(random_room(seed), TRADE) for seed in range(40))
        if any(stopped(findings) for findings in dressed.findings)
    )
    walls = [
        Dressed(stopping.room, (wall,), (findings,))
        for wall, findings in zip(stopping.walls, stopping.findings, strict=True)
        if wall.treatments and all(laid.ref in stopped(findings) for laid in wall.treatments)
    ]
    for alone in walls:
        assert story_sticks([alone, alone], TRADE).sticks == ()


@pytest.mark.parametrize("language", ["en", "de"])
def test_pages_of_all_demo_rooms_hold_every_mark(language: str) -> None:
    rooms = [dress(replace(load_room(path), language=language), TRADE) for path in sorted(demo_rooms().glob("*.room.json"))]
    pages = stick_pages(rooms, TRADE)
    check_inside(pages)
    said = [text.text for text in texts(pages)]
    for figure in ("60 mm", "1770 mm", "3480 mm", "1590 mm"):
        assert any(text.startswith(figure) for text in said)
    with pytest.raises(Missing, match="no two windows alike"):
        stick_pages(rooms[:1], TRADE)


@pytest.mark.parametrize("seed", range(6))
def test_no_text_leaves_the_page(seed: int) -> None:
    dressed = dress(random_room(seed), TRADE)
    if story_sticks([dressed, dressed], TRADE).sticks:
        check_inside(stick_pages([dressed, dressed], TRADE))


BAY = load_room(demo_rooms() / "9-bay.room.json")


def test_heights_over_the_floor_by_hand() -> None:
    """The bay's three windows: sill 26 in, head 56 in over it, rod 7 1/2 in over that, hem 1/2 in clear of the floor."""
    (stick,) = [one for one in sticks_of(BAY).sticks if one.way == "floor"]
    assert len(stick.windows) == 3
    assert [(name, at_mm / 25.4) for name, at_mm in marks(stick)] == [
        ("floor", 0.0),
        ("hem", 0.5),
        ("sill of the opening", pytest.approx(26.0)),
        ("head of the opening", pytest.approx(82.0)),
        ("rod's axis", pytest.approx(89.5)),
    ]
    assert stick.marks[0].is_held


@pytest.mark.parametrize(("off_mm", "served"), [(0.0, 3), (0.7, 3), (1.6, 2)])
def test_a_sill_that_is_off_by_a_sixteenth_is_found(off_mm: float, served: int) -> None:
    wall = BAY.walls[0]
    opening = wall.openings[0]
    sill = opening.sill.mm + off_mm
    height = opening.height.mm - off_mm
    ref = (wall.id, opening.id)
    off = replace_at(BAY, ref, sill=Length(sill, f"{sill:g} mm"), height=Length(height, f"{height:g} mm"))
    found = [one for one in sticks_of(off).sticks if one.way == "floor"]
    assert [len(one.windows) for one in found] == [served]


def test_over_a_floor_that_falls_no_two_windows_have_the_same_heights() -> None:
    """The hall's rods are level, its floor is not: one stick along the wall serves all four, none from the floor does."""
    found = sticks_of(HALL)
    assert {one.way for one in found.sticks} == {"along"}
    assert len([one for one in found.alone if one[0] == "floor"]) == 4
