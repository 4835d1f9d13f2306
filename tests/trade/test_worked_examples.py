"""Published worked examples of cloth, each with its source; what is misprinted must not come out.

Inches and centimetres as printed; the addresses are those of the pages.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from elevation.trade.pleats import pleats_of
from elevation.trade.yardage import (
    Split,
    can_railroad,
    cut_length,
    drop_match,
    exact,
    finished_width,
    flat_width,
    split,
    to_repeat,
    widths_of,
)

INCH, CM = 25.4, 10.0
YARD = 36 * INCH


def inches(mm: Fraction | float) -> float:
    return float(mm) / INCH


def test_t01_track_65_at_2_25() -> None:
    # homesteady.com/how-7849834-determine-needed-pinch-pleated-drapes.html
    flat = flat_width("all", 65 * INCH, 0, 0, 2.25, 0, 0)
    widths = widths_of(flat, 54 * INCH)
    cut = cut_length(80 * INCH, 8 * INCH, 8 * INCH)
    assert flat == exact(146.25 * INCH)
    assert float(flat / exact(54 * INCH)) == pytest.approx(2.708, abs=5e-4)
    assert (widths, cut) == (3, exact(96 * INCH))
    assert widths * cut == exact(288 * INCH) == 8 * exact(YARD)


def test_t02_the_rod_alone_times_fullness() -> None:
    # ehow.co.uk/how_6326063_calculate-amount-fabric-needed-curtains.html
    assert flat_width("rod", 84 * INCH, 0, 0, 2.5, 0, 0) == exact(210 * INCH)
    flat = flat_width("rod", 84 * INCH, 0, 7 * INCH, 2.5, 8 * INCH, 0)
    widths = widths_of(flat, 54 * INCH)
    total = widths * cut_length(78 * INCH, 0, 10 * INCH)
    assert flat == exact(225 * INCH)
    assert (widths, total) == (5, exact(440 * INCH))
    assert round(float(total / exact(YARD)), 2) == 12.22


def test_t03_a_fixed_sum_in_centimetres() -> None:
    # et-wholesale.com.au/instructionsheets/curtainsfabricrequired.html
    flat = flat_width("fixed", 200 * CM, 0, 0, 2, 0, 40 * CM)
    widths = widths_of(flat, 140 * CM)
    cut = cut_length((213 - 3) * CM, 0, 30 * CM)
    assert flat == 4400
    assert (widths, cut, widths * cut) == (4, 2400, 9600)


def test_t05_wide_cloth_turned_on_its_side() -> None:
    # The same sheet: continuous cloth.
    assert flat_width("fixed", 200 * CM, 0, 0, 2.5, 0, 40 * CM) == 5400


def test_t06_lining_by_drops() -> None:
    # The same sheet: two drops of 140 cm.
    assert 2 * cut_length(140 * CM, 0, 0) == 2800


def test_t08_a_pair_of_one_width_and_a_half_each() -> None:
    # barkclothhawaii.com/Skeleton/scripts/measuring_for_drapes.html
    assert finished_width(48 * INCH, 4 * INCH, 8 * INCH) == exact(60 * INCH)
    flat = flat_width("all", 48 * INCH, 4 * INCH, 8 * INCH, 2.5, 0, 0)
    assert flat == exact(150 * INCH)
    assert widths_of(flat, 54 * INCH) == 3
    assert split(Fraction(3), 2) == Split(1, True)
    assert split(Fraction(2), 3) is None


def test_t09_five_plain_widths() -> None:
    # The same page.
    total = 5 * cut_length(92 * INCH, 8 * INCH, 8 * INCH)
    assert total == exact(540 * INCH) == 15 * exact(YARD)


def test_t10_three_times_for_a_sheer() -> None:
    # drpinc.net/drp/measuring_for_draperies.php (prints 12.6 yards, cut off and not rounded)
    flat = flat_width("all", 63 * INCH, 0, 0, 3, 0, 0)
    total = widths_of(flat, 54 * INCH) * cut_length(102 * INCH, 0, 12 * INCH)
    assert (flat, total) == (exact(189 * INCH), exact(456 * INCH))
    assert flat / exact(54 * INCH) == Fraction(7, 2)
    assert int(float(total / exact(YARD)) * 10) / 10 == 12.6


def test_t12_whole_repeats() -> None:
    # gardinen-kroner.de/stoffkunde
    cut = cut_length(225 * CM, 0, 25 * CM)
    assert (cut, to_repeat(cut, 30 * CM)) == (2500, 2700)


def test_t13_wide_sheer_at_two_and_a_half() -> None:
    # The same page.
    assert flat_width("all", 200 * CM, 0, 0, 2.5, 0, 0) == 5000


def test_t15_one_repeat_more_to_every_cut() -> None:
    # curtainsandfabx.co.uk/measuring-guide; whole repeats would take 540 cm.
    cut = cut_length(135 * CM, 0, 0)
    assert 4 * to_repeat(cut, 27 * CM, add_one=True) == 6480
    assert 4 * to_repeat(cut, 27 * CM) == 5400


def test_t16_half_drop_takes_one_repeat_more() -> None:
    # livingstonetextiles.com/2011/07/half-drop-repeat-for-curtain-fabric/
    cut = Fraction(1950)
    patterned = to_repeat(cut, 65 * CM)
    assert 3 * patterned == 5850
    assert 3 * patterned + drop_match(cut, patterned, 65 * CM, 3) == 6500


def test_t19_sheer_on_a_rod_of_3_metres() -> None:
    # howded.com: drop 2.5 m, top 10 cm, hem 15 cm, rod 3 m, twice
    assert cut_length(250 * CM, 10 * CM, 15 * CM) == 2750
    assert flat_width("all", 300 * CM, 0, 0, 2, 0, 0) == 6000


def test_t21_a_contract_workrooms_pair() -> None:
    # contractdecor.com/contentmgr/showdetails.php/id/8713
    flat = flat_width("all", 56 * INCH, 4 * INCH, 8 * INCH, 2, 0, 0)
    widths = widths_of(flat, 54 * INCH)
    cut = to_repeat(cut_length(64 * INCH, 7 * INCH, 8 * INCH), 8 * INCH)
    assert flat == exact(136 * INCH)
    assert float(flat / exact(54 * INCH)) == pytest.approx(2.52, abs=5e-3)
    assert (widths, split(widths, 2), cut) == (3, Split(1, True), exact(80 * INCH))
    assert round(float(widths * cut / exact(YARD)), 2) == 6.67
    assert cut_length(64 * INCH, 5 * INCH, 5 * INCH) == exact(74 * INCH)  # its lining: 10 in more than the finished length


def test_t22_a_rod_pocket() -> None:
    # mycurtainstyles.com/Yardage_for%20rodpocket_curtain.html
    flat = flat_width("rod", 100 * INCH, 0, 7 * INCH, 2, 8 * INCH, 0)
    assert flat == exact(215 * INCH)
    assert float(flat / exact(54 * INCH)) == pytest.approx(3.98, abs=5e-3)
    total = widths_of(flat, 54 * INCH) * cut_length(85 * INCH, 2.5 * INCH, 8 * INCH)
    assert total == exact(382 * INCH)
    assert round(float(total / exact(YARD)), 2) == 10.61
    # By the other convention, its side hems inside, it takes a width more: why the convention is asked for.
    assert widths_of(flat_width("all", 100 * INCH, 0, 7 * INCH, 2, 0, 0) + exact(8 * INCH), 54 * INCH) == 5


def test_t24_ten_repeats_of_13() -> None:
    # btalmadge.blogspot.com, 2017-03
    assert to_repeat(cut_length(100 * INCH, 9 * INCH, 9 * INCH), 13 * INCH) == exact(130 * INCH)


def test_t25_seven_yards_by_the_older_rule() -> None:
    # mgrsewing.com: cut 100, repeat 26, two widths; whole repeats take 208 in.
    assert 2 * to_repeat(exact(100 * INCH), 26 * INCH, add_one=True) == 7 * exact(YARD)
    assert 2 * to_repeat(exact(100 * INCH), 26 * INCH) == exact(208 * INCH)


def test_t26_a_cut_of_nine_repeats() -> None:
    # sew-helpful.com/curtain-lined-triple-pleat-step9.php: 286.2 cm is nine repeats, and stays so.
    assert to_repeat(exact(286.2 * CM), 31.8 * CM) == exact(286.2 * CM) == 9 * exact(31.8 * CM)


def test_t27_twenty_centimetres_on_each_side() -> None:
    # espace-cocon.com/?p=1527
    assert flat_width("all", (120 + 2 * 20) * CM, 0, 0, 2, 0, 0) == 3200


def test_t28_misprinted_total() -> None:
    # ehow.co.uk/how_7849834 prints 8 yards for three drops of 2.4 m.
    flat = flat_width("all", 180 * CM, 0, 0, 2.25, 0, 0)
    total = widths_of(flat, 135 * CM) * cut_length(200 * CM, 20 * CM, 20 * CM)
    assert (flat, total) == (4050, 7200)
    assert float(total / exact(YARD)) == pytest.approx(7.87, abs=5e-3)
    assert total != 8 * exact(YARD)


def test_t29_misprinted_drops() -> None:
    # spotlightstores.com (sg) prints three drops and 8.1 m for 225 cm of cloth 150 cm wide.
    flat = flat_width("all", 150 * CM, 0, 0, 1.5, 0, 0)
    assert flat == 2250
    assert widths_of(flat, 150 * CM) == 2 != 3
    assert 2 * cut_length(270 * CM, 0, 0) == 5400


@pytest.mark.parametrize(
    ("flat", "usable", "widths"),
    [(150 * INCH, 50 * INCH, 3), (4050.0, 1350.0, 3), (3 * 1371.6, 1371.6, 3), (3 * 0.1 * 1000, 100.0, 3)],
)
def test_exact_multiples_need_no_width_more(flat: float, usable: float, widths: int) -> None:
    # 150/50, 405/135 and 3 x 54 in are whole numbers, whatever floats make of them.
    assert widths_of(flat, usable) == widths
    assert widths_of(flat + 0.01, usable) == widths + 1
    assert widths_of(flat - 0.01, usable) == widths


def test_p01_thirteen_pleats_of_the_book() -> None:
    # How to Make Draperies (Singer Sewing Library 102, 1960; gutenberg.org 63282), measuring for pleats.
    finished, flat = (49 + 3 + 1) * INCH, 144 * INCH
    made = pleats_of(flat, finished, 2 * INCH, 3 * INCH, (7 * INCH, 7 * INCH), (4 * INCH, 4 * INCH))
    assert made is not None
    assert inches(flat - finished) == pytest.approx(91)
    assert made.count == 13
    assert inches(made.take_up_mm) == pytest.approx(7)
    assert inches(made.space_mm) == pytest.approx(4.00)
    assert inches(made.at_mm[0]) == pytest.approx(2)
    assert inches(made.at_mm[-1]) == pytest.approx(53 - 3)
    assert inches(made.marks_mm[-1][1]) == pytest.approx(144 - 3)


def test_p03_twelve_spaces() -> None:
    # draperysewingsupplies.com/kb_results.asp?ID=5: 36 in finished at spaces of 3.2: 11.25, so 12 spaces and 13 pleats.
    made = pleats_of(36 * INCH + 13 * 5.5 * INCH, 36 * INCH, 0, 0, (5.5 * INCH, 5.5 * INCH), (3.2 * INCH, 3.2 * INCH), 13)
    assert made is not None
    assert made.count - 1 == 12
    assert inches(made.space_mm) == pytest.approx(3.0)
    assert inches(made.take_up_mm) == pytest.approx(5.5)


def test_p04_cut_width_of_that_tape() -> None:
    # The same page: pleats of 5.5, leading 3, return 2.5, side seams 6, cloth of 54 of which 48 are used (repeat of 6).
    finished = (12 * 3.2 + 3 + 2.5) * INCH
    flat = finished + 13 * 5.5 * INCH
    made = pleats_of(flat, finished, 3 * INCH, 2.5 * INCH, (5.5 * INCH, 5.5 * INCH), (3.2 * INCH, 3.2 * INCH))
    assert made is not None
    assert made.count == 13
    assert inches(made.take_up_mm + made.space_mm) == pytest.approx(8.7)
    cut = made.marks_mm[-1][1] + (2.5 + 6) * INCH
    assert inches(cut) == pytest.approx(121.4)
    assert inches(cut) / 48 == pytest.approx(2.53, abs=5e-3)
    assert widths_of(cut, 48.0 * INCH) == 3


# Pleats for each 54 in width at a fullness of 2.5: 5, and 10 for two, of 4 1/2 to 6 in and 3 1/2 to 4 in apart (S. Woodcock
# 2019, cappersfarmer.com/do-it-yourself-projects/calculating-pleats-spaces-zerz1905zsta).
@pytest.mark.parametrize(("widths", "pleats"), [(1, 5), (2, 10)])
def test_five_pleats_to_a_width(widths: int, pleats: int) -> None:
    flat = (54 * widths - 4) * INCH
    finished = flat / 2.5 + 3 * INCH
    made = pleats_of(flat, finished, 2 * INCH, 3 * INCH, (4.5 * INCH, 6 * INCH), (3.5 * INCH, 4 * INCH))
    assert made is not None
    assert abs(made.count - pleats) <= 1
    assert 4.5 <= inches(made.take_up_mm) <= 6
    assert 3.4 <= inches(made.space_mm) <= 4.1


def test_only_cloth_without_a_way_is_turned_on_its_side() -> None:
    # et-wholesale.com.au: continuous cloth must be as wide as the drop with heading and hem.
    cut = cut_length(2500.0, 100.0, 200.0)
    assert can_railroad(2800.0, cut, one_way=False)
    assert not can_railroad(2799.0, cut, one_way=False)
    assert not can_railroad(3000.0, cut, one_way=True)


@pytest.mark.parametrize(("slack", "extra"), [(324.9, 650), (325.0, 0), (325.1, 0)])
def test_a_drop_match_with_half_a_repeat_to_spare_costs_nothing(slack: float, extra: int) -> None:
    # mydecozo.co.uk forum, half drop pattern repeats.
    assert drop_match(exact(1950 - slack), Fraction(1950), 650.0, 3) == extra
    assert drop_match(exact(1950 - slack), Fraction(1950), 650.0, 1) == 0


def test_shrinking_cloth_is_cut_longer() -> None:
    # Cloth that loses 4 % of its length is cut so that 96 % of it is enough: by arithmetic.
    assert cut_length(2000.0, 100.0, 300.0, 0.04) * Fraction(96, 100) == 2400
    assert cut_length(2000.0, 100.0, 300.0) == 2400


@pytest.mark.parametrize("usable", [0.0, -1.0])
def test_cloth_without_width(usable: float) -> None:
    with pytest.raises(ValueError, match="without width"):
        widths_of(100.0, usable)


@pytest.mark.parametrize(
    ("flat", "finished", "count"),
    [(1000.0, 1000.0, None), (900.0, 1000.0, None), (2000.0, 100.0, 1), (2e9, 1e9, 100_000), (2000.0, 100.0, None)],
)
def test_no_silly_pleats(flat: float, finished: float, count: int | None) -> None:
    assert pleats_of(flat, finished, 50.0, 90.0, (100.0, 150.0), (90.0, 100.0), count) is None


def test_marks_of_every_pleat_on_the_flat_panel() -> None:
    # The book's panel: 2 in flat, then 13 pleats of 7 in with 4 in between, then 3 in: the second begins at 2 + 7 + 4.
    made = pleats_of(144 * INCH, 53 * INCH, 2 * INCH, 3 * INCH, (7 * INCH, 7 * INCH), (4 * INCH, 4 * INCH))
    assert made is not None
    assert [inches(begin) for begin, _ in made.marks_mm] == pytest.approx([2 + 11 * index for index in range(13)])
    assert [inches(end) for _, end in made.marks_mm] == pytest.approx([9 + 11 * index for index in range(13)])


@pytest.mark.parametrize(("count", "is_made"), [(2, True), (400, True), (401, False), (1, False), (0, False)])
def test_from_two_pleats_to_four_hundred(count: int, is_made: bool) -> None:
    made = pleats_of(5000.0, 2000.0, 50.0, 90.0, (100.0, 150.0), (90.0, 100.0), count)
    assert (made is not None) is is_made


@pytest.mark.parametrize(("pleat", "space"), [((0.0, 0.0), (90.0, 100.0)), ((100.0, 150.0), (0.0, 0.0))])
def test_a_heading_without_pleats_has_none(pleat: tuple[float, float], space: tuple[float, float]) -> None:
    assert pleats_of(5000.0, 2000.0, 50.0, 90.0, pleat, space) is None


def test_plain_cloth_has_no_repeat_to_match() -> None:
    assert to_repeat(Fraction(1950), 0.0) == 1950
    assert drop_match(Fraction(1950), Fraction(1950), 0.0, 3) == 0
    assert drop_match(Fraction(1900), Fraction(1950), 650.0, 2) == 650


def test_half_widths_are_rounded_up_to_halves() -> None:
    # contractdecor.com: 2.52 widths; of cloth bought by halves they are 3, and 2.4 are 2 1/2.
    assert widths_of(136 * INCH, 54 * INCH, halves=True) == 3
    assert widths_of(2.4 * 1371.6, 1371.6, halves=True) == Fraction(5, 2)


def test_two_cuts_of_a_half_drop_match_already() -> None:
    # The second cut begins half a repeat lower than the first: as in T16 one repeat more.
    assert drop_match(exact(1900.0), Fraction(1950), 650.0, 2) == 650
