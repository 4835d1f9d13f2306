"""What a change costs in cover and fullness, told beside it."""

from __future__ import annotations

import pytest

from elevation.findings.costs import covered_mm, fullness_of, with_cost
from elevation.room.edits import edit_at, replace_at
from elevation.room.model import Held, Room
from elevation.words import msg
from tests.findings.rooms import INCH, LAYER, LEFT_BRACKET, good_room, held, inch, said, scene

LABEL = msg("move it")


def moved(by_inches: float):
    place: Held = held("from-left-end", inch(2 + by_inches))

    def edit(room: Room) -> Room:
        return replace_at(room, LEFT_BRACKET, place=place)

    return edit


@pytest.mark.parametrize(("inches", "words"), [(4, "covers 4 in less"), (-1, "covers 1 in more")])
def test_a_bracket_moved_along_the_rod_takes_cover_or_gives_it(inches: float, words: str) -> None:
    here = scene(good_room())
    told = said(with_cost(here, LAYER, LABEL, moved(inches)))
    assert told.startswith("move it: the cloth ")
    assert words in told
    layer = here.set_out.treatments[0].layers[0]
    after = scene(moved(inches)(good_room())).set_out.treatments[0].layers[0]
    assert covered_mm(after) - covered_mm(layer) == pytest.approx(-inches * INCH)
    assert f"{fullness_of(after):.2f} instead of {fullness_of(layer):.2f}" in told


def test_what_costs_nothing_that_is_seen_is_not_told() -> None:
    here = scene(good_room())
    assert with_cost(here, LAYER, LABEL, moved(0.0)) is LABEL
    assert with_cost(here, LAYER, LABEL, moved(1 / 64)) is LABEL

    def bare(room: Room) -> Room:
        return edit_at(room, LAYER, lambda layer: layer.__class__(id=layer.id, rod=layer.rod, brackets=layer.brackets))

    assert with_cost(here, LAYER, LABEL, bare) is LABEL
