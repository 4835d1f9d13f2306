"""Lines of proportion: every figure by hand, on a wall of round inches; what counts as standing on one, and the words."""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.planning.guide_words import guide_words
from elevation.planning.guides import Guide, gap_of, guides_of, held_by, reaches_of
from elevation.room.model import Obstacle, Room, Station
from elevation.setting_out.model import SetOut, TreatmentOut
from elevation.setting_out.whole import set_out
from elevation.trade import load_trade
from elevation.words import Style, say
from tests.handles.rooms import INCH, SECOND, TWO, WINDOW, held, inch, room, with_layer, with_rod
from tests.handles.test_moves import mirrored

TRADE = load_trade()
HALF = INCH / 32
"""Half of the tape's sixteenth."""
PICTURE = Obstacle("x1", "picture", left=inch(110), bottom=inch(50), width=inch(20), height=inch(30))
# The wall is 150 in wide and 108 in high, the casing's top at 84 in; the rod 88 in high runs from 40 to 100 in.


def landed(now: Room) -> SetOut:
    return set_out(now, "a", "s", TRADE)


def lines(now: Room, kind: str, axis: str) -> list[float]:
    return [round(one.at_mm / INCH, 4) for one in guides_of(landed(now)) if one.kind == kind and one.axis == axis]


def words(now: Room) -> list[str]:
    wall = landed(now)
    return [say(word, Style()) for word in guide_words(wall, wall.treatments[0], HALF)]


def test_parts_of_the_wall_and_of_the_way_to_the_ceiling() -> None:
    assert lines(room(), "wall", "x") == [50.0, 75.0, 100.0]
    assert lines(room(), "wall", "y") == [36.0, 54.0, 72.0]
    # 84 in to 108 in are 24 in: 8, 12 and 16 in up.
    assert lines(room(), "gap", "y") == [92.0, 96.0, 100.0]
    assert lines(room(), "middle", "x") == [70.0]


def test_levels_are_those_of_what_stands_there() -> None:
    now = room(openings=(WINDOW, SECOND))
    now = replace(now, walls=(replace(now.walls[0], obstacles=(PICTURE,)),))
    wall = landed(now)
    # Heads of both windows and the top of the first one's casing; the picture is 50 + 30 in high.
    tops = {opening.top_mm for opening in wall.openings} | {opening.casing_top_mm for opening in wall.openings}
    assert set(lines(now, "level", "y")) == {round(top / INCH, 4) for top in tops} | {80.0}
    assert lines(now, "edge", "x") == [110.0, 130.0]


def test_a_crown_takes_its_part_and_a_raked_ceiling_has_no_height() -> None:
    crowned = room()
    crowned = replace(crowned, walls=(replace(crowned.walls[0], crown=inch(3)),))
    # 84 to 105 in are 21 in: 7, 10.5 and 14 in up.
    assert lines(crowned, "gap", "y") == [91.0, 94.5, 98.0]
    raked = room(ceiling=(Station(inch(0), inch(96)), Station(inch(150), inch(126))))
    assert lines(raked, "wall", "y") == []
    # Over the rod from 40 in on the ceiling is lowest there: 96 + 40 / 5 = 104 in; 20 in over the casing.
    gap = gap_of(landed(raked), landed(raked).treatments[0])
    assert gap is not None
    assert [edge / INCH for edge in gap] == pytest.approx([84.0, 104.0])


def test_no_line_is_guessed() -> None:
    now = room()
    unmeasured = replace(now, walls=(replace(now.walls[0], width=None, ceiling=(), gap_right=None),))
    assert [one.kind for one in guides_of(landed(unmeasured)) if one.kind in ("wall", "gap")] == []


def moved_up(treatment: TreatmentOut, by_mm: float, right_mm: float = 0.0) -> TreatmentOut:
    layer = treatment.layers[0]
    support: Any = replace(
        layer.support,
        height_mm=layer.support.height_mm + by_mm,
        left_mm=layer.support.left_mm + right_mm,
        right_mm=layer.support.right_mm + right_mm,
    )
    return replace(treatment, layers=(replace(layer, support=support), *treatment.layers[1:]))


# Half a graduation is the policy's own slack: what reads alike is alike.
@pytest.mark.parametrize(("by_mm", "is_held"), [(HALF - 1e-4, True), (HALF, True), (HALF + 1e-4, False), (0.0, True)])
@pytest.mark.parametrize("way", [-1, 1])
def test_just_inside_at_and_outside_a_line(by_mm: float, is_held: bool, way: int) -> None:
    wall = landed(room(layer=with_rod(height=held("above-casing", 16))))
    two_thirds = next(one for one in guides_of(wall) if one.kind == "gap" and one.mark == "2/3")
    treatment = moved_up(wall.treatments[0], way * by_mm)
    assert bool(held_by(two_thirds, (treatment,), HALF)) == is_held
    said = [say(word, Style()) for word in guide_words(wall, treatment, HALF)]
    assert ("the rod sits two thirds up to the ceiling" in said) == is_held
    third = next(one for one in guides_of(wall) if one.kind == "wall" and one.axis == "x" and one.mark == "1/3")
    # The rod's left end at 40 in comes to 50 in.
    ended = moved_up(wall.treatments[0], 0.0, 10 * INCH + way * by_mm)
    assert bool(held_by(third, (ended,), HALF)) == is_held


@pytest.mark.parametrize(("more_mm", "is_equal"), [(HALF - 1e-4, True), (HALF, True), (HALF + 1e-4, False)])
def test_reaches_are_alike_within_half_a_graduation(more_mm: float, is_equal: bool) -> None:
    wall = landed(room())
    layer = wall.treatments[0].layers[0]
    support: Any = replace(layer.support, right_mm=layer.support.right_mm + more_mm)
    treatment = replace(wall.treatments[0], layers=(replace(layer, support=support),))
    (reach,) = reaches_of(replace(wall, treatments=(treatment,)), HALF)
    assert reach.is_equal == is_equal
    assert [length / INCH for length in reach.left] == [40.0, 50.0]


def test_the_words() -> None:
    # 88 in is 4 of the 24 in up: a sixth, 17 %. The rod's middle is 70 in, the wall's 75 in.
    assert words(room()) == ["the rod sits 17% of the way up to the ceiling", "left and right reach alike"]
    uneven = room(layer=with_rod(right=held("beyond-opening", "10 1/2"), height=held("above-casing", 12)))
    assert words(uneven) == ["the rod sits half way up to the ceiling", "left and right differ by ¹⁄₂ in"]
    # From 50 less 10 in to 90 plus 20 in: its middle is the wall's.
    wide = room(layer=with_rod(right=held("beyond-opening", 20), height=held("above-casing", 8)))
    assert words(wide) == [
        "the rod sits a third up to the ceiling",
        "left and right differ by 10 in",
        "centred on the wall",
    ]


def test_rods_of_one_wall_are_told_level_or_by_how_much_they_are_not() -> None:
    # The second rod is 10 in over a head at 76 in: 86 in, the first 88 in.
    assert words(room(**TWO))[-1] == "up to 2 in off the level of the other rods"
    assert words(room(layer=with_rod(height=held("above-casing", 2)), **TWO))[-1] == "level with the other rods"


def test_the_mirror_has_the_mirrored_lines_and_the_same_words() -> None:
    start = room(layer=with_layer(rod=with_rod(right=held("beyond-casing", 7)).rod))
    here, there = guides_of(landed(start)), guides_of(landed(mirrored(start)))

    def key(one: Guide, *, is_mirror: bool) -> tuple[str, str, float, tuple[float, ...]]:
        at, run = one.at_mm / INCH, tuple(edge / INCH for edge in one.run)
        if is_mirror:
            at, run = (150 - at, run) if one.axis == "x" else (at, (150 - run[1], 150 - run[0]))
        return one.kind, one.axis, round(at, 4), tuple(round(edge, 3) for edge in run)

    assert sorted(key(one, is_mirror=False) for one in here) == sorted(key(one, is_mirror=True) for one in there)
    assert words(start) == words(mirrored(start))
