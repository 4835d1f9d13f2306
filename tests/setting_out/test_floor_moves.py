"""A floor that moves: what is remembered of rods, brackets and ways must give what a fresh set-out gives."""

from __future__ import annotations

import random

import pytest
from msgspec.structs import replace

from elevation.room.model import Room, Station, Wall
from elevation.setting_out import panels, parts, whole
from elevation.setting_out.whole import set_out, set_out_afresh
from elevation.trade import load_trade
from elevation.units import Length
from tests.bench.rooms import windows
from tests.strategies import random_room

TRADE = load_trade()


def _with_floor(room: Room, wall: Wall, floor: tuple[Station, ...]) -> Room:
    moved = replace(wall, floor=floor)
    return replace(room, walls=tuple(moved if one.id == wall.id else one for one in room.walls))


def _floor(chance: random.Random, width_mm: float) -> tuple[Station, ...]:
    places = sorted(chance.sample(range(int(width_mm) or 1), k=min(chance.randint(0, 5), int(width_mm) or 1)))
    return tuple(Station(Length(float(x), ""), Length(chance.uniform(-60.0, 60.0), "")) for x in places)


@pytest.mark.parametrize("seed", range(60))
def test_remembered_equals_fresh_over_random_floors(monkeypatch: pytest.MonkeyPatch, seed: int) -> None:
    monkeypatch.setattr(whole, "_keepers", {})
    chance = random.Random(seed)
    room = random_room(seed)
    for wall in room.walls:
        scheme = wall.schemes[0].id if wall.schemes else None
        for _ in range(4):
            made = _with_floor(room, wall, _floor(chance, wall.width.mm if wall.width else 3000.0))
            kept = set_out(made, wall.id, scheme, TRADE)
            assert kept == set_out_afresh(made, wall.id, scheme, TRADE)
            if chance.random() < 0.3:
                made = replace(made, graduation=Length(chance.choice([1.0, 5.0]), ""))
                assert set_out(made, wall.id, scheme, TRADE) == set_out_afresh(made, wall.id, scheme, TRADE)


def test_a_floor_that_moves_makes_neither_metal_nor_ways_again(monkeypatch: pytest.MonkeyPatch) -> None:
    runs = {"planned": 0, "making": 0}

    def counted(name: str, function):
        def run(*args, **more):
            runs[name] += 1
            return function(*args, **more)

        return run

    monkeypatch.setattr(whole, "_keepers", {})
    monkeypatch.setattr(parts, "planned_of", counted("planned", parts.planned_of))
    monkeypatch.setattr(parts, "making_of", counted("making", panels.making_of))
    room = windows(4)
    first = set_out(room, "w1", "s1", TRADE)
    assert runs == {"planned": 4, "making": 4}
    for step in range(1, 20):
        floor = (Station(Length(0.0, ""), Length(float(-step), "")), room.walls[0].floor[1])
        after = set_out(_with_floor(room, room.walls[0], floor), "w1", "s1", TRADE)
        for one, other in zip(first.treatments, after.treatments, strict=True):
            assert one.layers[0].panels != other.layers[0].panels
            # What cloth weighs may tell on them; where they are does not change.
            assert replace(one.layers[0].support, sag_mm=None) == replace(other.layers[0].support, sag_mm=None)
            assert [bracket.plate for bracket in one.layers[0].brackets] == [
                bracket.plate for bracket in other.layers[0].brackets
            ]
    assert runs == {"planned": 4, "making": 4}
