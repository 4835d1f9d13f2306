"""Annotation that remembers its last laying is the very annotation that a fresh laying gives."""

from __future__ import annotations

import random

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.room.model import Held, Room, Station
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.annotation import lay_annotation
from elevation.sheet.annotation.remembered import AnnotationKeeper
from elevation.trade import load_trade
from elevation.units import Length
from tests.bench.rooms import windows
from tests.strategies import random_room

TRADE = load_trade()


def _changed(room: Room, chance: random.Random) -> Room:
    """One wall's floor, ceiling or first rod moved by chance."""
    wall = room.walls[0]
    what = chance.choice(("floor", "floor", "ceiling", "rod", "nothing"))
    if what == "floor":
        far = wall.width.mm if wall.width else 2000.0
        ends = [Station(Length(x, ""), Length(chance.uniform(-80.0, 80.0), "")) for x in (0.0, far)]
        wall = replace(wall, floor=tuple(ends))
    elif what == "ceiling" and wall.ceiling:
        first = wall.ceiling[0]
        up = Length(first.height.mm + chance.uniform(0.0, 90.0), "")
        wall = replace(wall, ceiling=(replace(first, height=up), *wall.ceiling[1:]))
    elif what == "rod" and wall.schemes and wall.schemes[0].treatments and wall.schemes[0].treatments[0].layers:
        scheme = wall.schemes[0]
        treatment = scheme.treatments[0]
        layer = treatment.layers[0]
        rod = replace(layer.rod, height=Held("above-floor", Length(chance.uniform(1800.0, 2300.0), "")))
        treatment = replace(treatment, layers=(replace(layer, rod=rod), *treatment.layers[1:]))
        wall = replace(wall, schemes=(replace(scheme, treatments=(treatment, *scheme.treatments[1:])), *wall.schemes[1:]))
    return replace(room, walls=(wall, *room.walls[1:]))


@pytest.mark.parametrize("seed", range(80))
def test_remembered_equals_fresh_over_random_edits(seed: int) -> None:
    chance = random.Random(seed)
    room = windows(5) if seed % 8 == 0 else random_room(seed)
    keeper, rungs = AnnotationKeeper(), {}
    for _ in range(7):
        wall = room.walls[0]
        landed = set_out_afresh(room, wall.id, wall.schemes[0].id if wall.schemes else None, TRADE)
        findings = find(Scene(room, landed, TRADE))
        scale = chance.choice((20.0, 20.0, 20.0, 75.0))
        kept = lay_annotation(landed, findings, style_for(room), scale, room=room, previous=rungs, keeper=keeper)
        assert kept == lay_annotation(landed, findings, style_for(room), scale, room=room, previous=rungs)
        rungs = kept.rungs
        room = _changed(room, chance)


def test_a_floor_that_moves_lays_only_the_side_that_hangs_from_it() -> None:
    room, keeper, rungs = windows(6), AnnotationKeeper(), {}
    counts = []
    for step in range(12):
        wall = room.walls[0]
        floor = (Station(Length(0.0, ""), Length(-5.0 * step, "")), wall.floor[1])
        room = replace(room, walls=(replace(wall, floor=floor),))
        landed = set_out_afresh(room, "w1", "s1", TRADE)
        rungs = lay_annotation(landed, (), style_for(room), 20.0, room=room, previous=rungs, keeper=keeper).rungs
        counts.append((keeper.chains_made, keeper.sides_laid))
    assert {chains for chains, _ in counts} == {6}
    # Nothing over the wall moves: what hangs from its foot and the finished lengths at its sides do.
    assert counts[-1][1] - counts[2][1] <= 3 * 9
    assert keeper.sides_laid < 4 * 12
