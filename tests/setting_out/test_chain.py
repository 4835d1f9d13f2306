"""The measuring chain: worked cases by hand, blanks, closing errors."""

from __future__ import annotations

import pytest

from elevation.room.model import Opening, Wall
from elevation.setting_out.chain import resolve, resolved
from tests.setting_out.rooms import INCH, inch

GAP = 24 * INCH


def opening(opening_id: str, width: float = 30.0, left=None, gap=None, casing=3.0) -> Opening:
    return Opening(
        id=opening_id,
        width=inch(width),
        height=inch(50),
        left=None if left is None else inch(left),
        gap=None if gap is None else inch(gap),
        casing=None if casing is None else inch(casing),
    )


def wall(*openings: Opening, width=None, gap_right=None) -> Wall:
    return Wall(
        id="a",
        width=None if width is None else inch(width),
        openings=openings,
        gap_right=None if gap_right is None else inch(gap_right),
    )


def lefts(made: Wall) -> list[float]:
    return [spot.left_mm / INCH for spot in resolved(made, 0.0, GAP).spots]


def test_an_opening_placed_by_its_left() -> None:
    out = resolved(wall(opening("w", left=40), width=120), 0.0, GAP)
    assert (out.spots[0].left_mm, out.spots[0].right_mm) == (pytest.approx(40 * INCH), pytest.approx(70 * INCH))
    assert out.spots[0].placed
    assert out.chain.closing_error_mm is None


def test_gaps_and_casings_add_up_by_hand() -> None:
    # 20 + 3 = 23; 23 + 30 + 3 + 12 + 3 = 71.
    assert lefts(wall(opening("w", gap=20), opening("v", gap=12), width=140)) == pytest.approx([23, 71])


def test_one_blank_gap_is_worked_out_from_the_wall() -> None:
    # 140 - (20 + 36) - 36 - 15 = 33 between the casings; 20 + 36 + 33 + 3 = 92.
    made = wall(opening("w", gap=20), opening("v"), width=140, gap_right=15)
    assert lefts(made) == pytest.approx([23, 92])
    out = resolved(made, 0.0, GAP)
    assert all(spot.placed for spot in out.spots)
    link = next(link for link in out.chain.links if link.key == "gap:v")
    assert (link.right_mm - link.left_mm) / INCH == pytest.approx(33)
    assert not link.typed


def test_the_first_gap_may_be_the_blank_one() -> None:
    assert lefts(wall(opening("w"), opening("v", gap=12), width=140, gap_right=20)) == pytest.approx([39, 87])


def test_several_blanks_share_what_is_left_and_place_nothing() -> None:
    # 120 - 36 = 84: 42 on each side.
    made = wall(opening("w"), width=120)
    assert lefts(made) == pytest.approx([45])
    assert not resolved(made, 0.0, GAP).spots[0].placed


def test_what_is_known_from_either_end_counts_as_placed() -> None:
    made = wall(opening("a", gap=10), opening("b"), opening("c"), opening("d", gap=5), width=300, gap_right=8)
    assert [spot.placed for spot in resolved(made, 0.0, GAP).spots] == [True, False, True, True]


def test_a_place_from_the_wall_starts_a_new_stretch() -> None:
    made = wall(opening("a"), opening("b", left=100), opening("c"), width=240)
    out = resolved(made, 0.0, GAP)
    # 97 - 36 = 61 shared by two gaps: 30.5; right of b 240 - 133 - 36 = 71 shared: 35.5.
    assert lefts(made) == pytest.approx([33.5, 100, 171.5])
    assert [spot.placed for spot in out.spots] == [False, True, False]


def test_two_placed_by_left_work_out_the_gap_between() -> None:
    out = resolve(wall(opening("a", left=20), opening("b", left=80), width=140))
    link = next(link for link in out.links if link.key == "gap:b")
    assert (link.right_mm - link.left_mm) / INCH == pytest.approx(24)


@pytest.mark.parametrize(
    ("gap_right", "error", "again"),
    [
        (64.0, 0.0, 0),
        (64.0 + 1 / 16, 1 / 16, 0),
        (64.0 + 3 / 16, 3 / 16, 3),
        (63.0, -1.0, 3),
        (34.0, -30.0, 3),
        (89.0, 25.0, 2),
    ],
)
def test_a_full_chain_shows_its_closing_error(gap_right: float, error: float, again: int) -> None:
    made = wall(opening("w", gap=20), width=120, gap_right=gap_right)
    out = resolve(made, graduation_mm=INCH / 16)
    assert out.closing_error_mm is not None
    assert out.closing_error_mm / INCH == pytest.approx(error, abs=1e-9)
    assert len(out.again) == again


def test_the_longest_links_are_to_be_measured_again_first() -> None:
    out = resolve(wall(opening("w", gap=20), width=120, gap_right=62), graduation_mm=INCH / 16)
    assert out.again == ("gap-right", "width:w", "gap:w")


@pytest.mark.parametrize(
    ("gap_right", "error", "again"),
    [
        # 30 in of width may have been read for 5, 20 of wall not for minus 5; but 20 may well stand for 45.
        (89, 25, ("gap-right", "width:w")),
        (39, -25, ("gap-right", "width:w", "gap:w")),
        # Just long enough, and just not.
        (84, 20, ("gap-right", "width:w", "gap:w")),
        (84.125, 20.125, ("gap-right", "width:w")),
    ],
)
def test_a_link_shorter_than_the_excess_cannot_hold_it(gap_right: float, error: float, again: tuple[str, ...]) -> None:
    out = resolve(wall(opening("w", gap=20), width=120, gap_right=gap_right), graduation_mm=INCH / 16)
    assert out.closing_error_mm == pytest.approx(error * INCH)
    assert out.again == again


def test_where_no_link_is_long_enough_the_longest_are_still_named() -> None:
    # 20 + 3 + 30 + 3 + 24 = 80 on a wall of 40.
    out = resolve(wall(opening("w", gap=20), width=40, gap_right=24), graduation_mm=INCH / 16)
    assert out.closing_error_mm == pytest.approx(40 * INCH)
    assert out.again == ("width:w", "gap-right", "gap:w")


def test_a_misread_tape_shows_before_the_chain_is_full() -> None:
    # 95 + 36 = 131 on a wall of 120: nothing is left for the blank link, and 11 in are too many.
    out = resolved(wall(opening("w", gap=95), width=120), INCH / 16, GAP)
    assert out.chain.closing_error_mm == pytest.approx(11 * INCH)
    assert out.chain.again == ("gap:w", "width:w")
    assert out.spots[0].left_mm == pytest.approx(98 * INCH)
    # Just enough: the blank link is nothing, and nothing is wrong.
    out = resolved(wall(opening("w", gap=84), width=120), INCH / 16, GAP)
    assert out.chain.closing_error_mm is None
    assert out.chain.links[-1].left_mm == pytest.approx(out.chain.links[-1].right_mm)


def test_openings_pushed_together_by_a_misread_link_do_not_overlap() -> None:
    # From the right the second would stand at 140 - 90 - 3 - 30 = 17 in, over the first.
    first, second = resolved(wall(opening("w", gap=20), opening("v"), width=140, gap_right=90), 0.0, GAP).spots
    assert second.left_mm - first.right_mm == pytest.approx(6 * INCH)


def test_only_the_stretch_that_misses_is_measured_again() -> None:
    # The first stretch closes (20 + 3 = 23); in the second 23 + 30 + 3 + 9 + 3 = 68, not 70.
    made = wall(opening("a", left=23, gap=20), opening("b", left=70, gap=9), width=200, gap_right=97)
    out = resolve(made, graduation_mm=INCH / 16)
    assert out.closing_error_mm == pytest.approx(-2 * INCH)
    assert out.again == ("width:a", "gap:b", "casing-right:a")
    # The worst one counts: 70 + 30 + 3 + 100 = 203 on 200.
    out = resolve(wall(*made.openings, width=200, gap_right=100), graduation_mm=INCH / 16)
    assert out.closing_error_mm == pytest.approx(3 * INCH)
    assert out.again == ("gap-right", "width:b", "casing-right:b")


def test_an_opening_placed_twice_shows_the_difference() -> None:
    out = resolve(wall(opening("w", left=40, gap=35), width=120))
    # The casing's left stands at 37, so the gap is 37, not 35.
    assert out.closing_error_mm == pytest.approx(-2 * INCH)
    assert out.links[0].right_mm == pytest.approx(37 * INCH)


def test_without_the_walls_width_it_is_assumed() -> None:
    out = resolved(wall(opening("w", gap=20), opening("v")), 0.0, GAP)
    assert not out.known_width
    assert [spot.placed for spot in out.spots] == [True, False]
    # 20 + 36 + 24 + 36 + 24.
    assert out.width_mm / INCH == pytest.approx(140)
    # Nothing to compare with.
    assert out.chain.closing_error_mm is None
    assert out.chain.again == ()


def test_what_is_taken_where_nothing_is_said() -> None:
    # A blank gap is drawn 24 in wide; every closing error is worth a second look.
    out = resolve(wall(opening("w")))
    assert [link.right_mm / INCH for link in out.links] == pytest.approx([24, 27, 57, 60, 84])
    assert resolve(wall(opening("w", gap=20), width=120, gap_right=64.01)).again == ("gap-right", "width:w", "gap:w")


def test_an_unmeasured_casing_is_taken_as_none_and_not_typed() -> None:
    out = resolve(wall(opening("w", gap=20, casing=None), width=120))
    casing = next(link for link in out.links if link.key == "casing-left:w")
    assert casing.left_mm == casing.right_mm
    assert not casing.typed


def test_links_run_through_without_a_break() -> None:
    out = resolve(wall(opening("a"), opening("b", left=60), opening("c", gap=9), width=200))
    assert out.links[0].left_mm == 0.0
    for before, after in zip(out.links, out.links[1:], strict=False):
        assert after.left_mm == pytest.approx(before.right_mm)
    assert out.links[-1].right_mm == pytest.approx(200 * INCH)
    assert out.links[-1].key == "gap-right"


def test_a_bare_wall_is_one_link() -> None:
    out = resolved(wall(width=100), 0.0, GAP)
    assert [(link.key, link.right_mm / INCH) for link in out.chain.links] == [("gap-right", pytest.approx(100))]
