"""Panels where they are worst for each bracket and span, against every combination of their places by itself."""

from __future__ import annotations

import random
from itertools import pairwise, product

import pytest

from elevation.setting_out.hanging import Hanging, Place, under_one_newton
from elevation.trade.beam import Beam, Bent, Load
from elevation.trade.bending import bend


def case(seed: int) -> tuple[Beam, tuple[tuple[Place, ...], ...], float, tuple[float, ...]]:
    """A rod over two to four supports with free ends, and two or three panels that hang in one to three places.

    In some of them only a part hangs here: the rest of it is round a corner.
    """
    chance = random.Random(seed)
    long = chance.uniform(1500, 4000)
    inner = sorted(chance.uniform(300, long - 300) for _ in range(chance.randint(0, 2)))
    beam = Beam(0.0, long, (chance.uniform(20, 200), *inner, long - chance.uniform(20, 200)), 5e9)
    places = []
    for _ in range(chance.randint(2, 3)):
        spans = []
        for _ in range(chance.randint(1, 3)):
            left = chance.uniform(0, long - 300)
            spans.append(((left, chance.uniform(left + 100, long)), chance.choice((1.0, 1.0, 0.4, 0.0))))
        places.append(tuple(spans))
    return beam, tuple(places), chance.uniform(3, 20), tuple(chance.uniform(0, 60) for _ in places)


def every(beam: Beam, places: tuple[tuple[Place, ...], ...], rod_n: float, weights: tuple[float, ...]) -> tuple[Bent, ...]:
    """Each combination of places, as drawn first, bent as a load case of its own."""
    rod = Load(beam.left_mm, beam.right_mm, rod_n)
    cases = [
        [rod, *(Load(left, right, force * part) for ((left, right), part), force in zip(spans, weights, strict=True))]
        for spans in product(*places)
    ]
    found = bend(beam, cases)
    assert found is not None
    return tuple(found)


@pytest.mark.parametrize("seed", range(12))
def test_the_worst_of_all_combinations(seed: int) -> None:
    beam, places, rod_n, weights = case(seed)
    unit = under_one_newton(beam, (beam.left_mm, beam.right_mm), places)
    assert unit is not None
    hanging, combinations = Hanging(unit, rod_n, weights), every(beam, places, rod_n, weights)
    for index in range(len(beam.supports_mm)):
        carried = [one.reactions_n[index] for one in combinations]
        assert hanging.most(index) == pytest.approx(max(carried), rel=1e-7, abs=1e-7)
        assert hanging.least(index) == pytest.approx(min(carried), rel=1e-7, abs=1e-7)
        hogging = min(one.moments_nmm[index] for one in combinations)
        assert hanging.hogging(index) == pytest.approx(hogging, rel=1e-7, abs=1e-4)
    for place, x in ((0, beam.left_mm), (-1, beam.right_mm)):
        assert hanging.tip(place) == pytest.approx(max(one.sag_at(x) for one in combinations), rel=1e-7, abs=1e-7)
    breaks = hanging.breaks_mm
    for left, right in pairwise(beam.supports_mm):
        low, high = breaks.index(left), breaks.index(right)
        line, place = hanging.worst(low, high, hanging.drawn())
        worst = line.deepest(left, right)[1]
        assert line.deepest_by(low, high, place)[1] == pytest.approx(worst, rel=1e-9, abs=1e-9)
        most = max(one.deepest(left, right)[1] for one in combinations)
        # Which combination is worst is seen at closely spaced places, then looked at exactly.
        assert worst <= most + 1e-7
        assert worst == pytest.approx(most, rel=2e-3, abs=1e-6)


def test_as_drawn_every_panel_hangs_in_its_first_place() -> None:
    beam, places, rod_n, weights = case(3)
    unit = under_one_newton(beam, (beam.left_mm, beam.right_mm), places)
    assert unit is not None
    drawn, first = Hanging(unit, rod_n, weights).drawn(), every(beam, places, rod_n, weights)[0]
    assert drawn.reactions_n == pytest.approx(first.reactions_n, rel=1e-7, abs=1e-7)
    for x in (100.0, 700.0, 1400.0):
        assert drawn.sag_at(x) == pytest.approx(first.sag_at(x), rel=1e-6, abs=1e-9)


def test_a_rod_on_one_support_cannot_stand() -> None:
    beam = Beam(0.0, 1000.0, (500.0,), 5e9)
    assert under_one_newton(beam, (0.0, 1000.0), ((((0.0, 400.0), 1.0),),)) is None
