"""Sheets say whether they show a plan or what was read after hanging."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.setting_out.whole import set_out
from elevation.sheet.annotation.treatment_chains import heights
from elevation.sheet.elevation import elevation_sheet
from elevation.sheet.facts import state_of
from elevation.sheet.records import Text
from elevation.trade import load_trade
from elevation.words import Style, say


def texts_of(name: str, wall: int) -> list[str]:
    room = load_room(demo_rooms() / name)
    here = room.walls[wall]
    out = set_out(room, here.id, here.schemes[0].id, load_trade())
    picture = elevation_sheet(room, out, (), load_trade(), Style(room.unit, room.graduation_mm), date="2026-03-01")
    return [one.text for group in picture.groups for one in group.records if isinstance(one, Text)]


@pytest.mark.parametrize(
    ("name", "wall", "said"),
    [
        ("1-bedroom.room.json", 0, "Elevation, PLANNED"),
        ("4-flat.room.json", 0, "Elevation, AS BUILT"),
        ("4-flat.room.json", 1, "Elevation, PLANNED"),
    ],
)
def test_the_title_block_says_planned_or_as_built(name: str, wall: int, said: str) -> None:
    assert said in texts_of(name, wall)


def test_a_wall_of_both_is_partly_built_and_a_bare_one_neither() -> None:
    room = load_room(demo_rooms() / "4-flat.room.json")
    wall = room.walls[0]
    (built,) = set_out(room, wall.id, wall.schemes[0].id, load_trade()).treatments
    planned = replace(built, layers=tuple(replace(layer, is_built=False) for layer in built.layers))
    state = state_of((built, planned))
    assert state is not None
    assert say(state, Style()) == "PARTLY AS BUILT"
    assert state_of(()) is None


def test_a_rod_that_was_read_to_hang_shows_no_held_height() -> None:
    room = load_room(demo_rooms() / "4-flat.room.json")
    wall = room.walls[0]
    out = set_out(room, wall.id, wall.schemes[0].id, load_trade())
    treatment = wall.schemes[0].treatments[0]
    built = heights(out, out.treatments[0], treatment, Style("mm", 1.0))
    support = out.treatments[0].layers[0].support
    planned = replace(
        out.treatments[0],
        layers=tuple(replace(layer, support=replace(support, planned_mm=None)) for layer in out.treatments[0].layers),
    )
    plan = heights(out, planned, treatment, Style("mm", 1.0))
    assert built is not None
    assert plan is not None
    assert not any(segment.held for segment in built.segments)
    assert any(segment.held for segment in plan.segments)
