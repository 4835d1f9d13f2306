"""The tables: what they hold against the standards they come from, and what is said of damaged ones."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from elevation import places
from elevation.errors import BadInput, Missing, NoSuch
from elevation.trade import load_trade
from elevation.trade.model import EndRow, LimitRow, ReadyMadeRow, SectionRow
from elevation.trade.tables import ENDS, LIMITS, READY_MADE, SECTIONS, limit_of, read_table, row_of

INCH = 25.4
TRADE = load_trade()

# Trade size, outside diameter, wall, inches; published weight, lb/ft: ANSI C80.3 (EMT), steeltubeinstitute.org.
EMT = [("1/2", 0.706, 0.042, 0.30), ("3/4", 0.922, 0.049, 0.46), ("1", 1.163, 0.057, 0.67), ("1-1/4", 1.510, 0.065, 1.01)]


@pytest.mark.parametrize(("size", "outer", "wall", "weight"), EMT)
def test_conduit_is_that_of_ansi_c80_3(size: str, outer: float, wall: float, weight: float) -> None:
    row = TRADE.sections[f"conduit-{size}"]
    assert row.outer_mm == pytest.approx(outer * INCH, abs=1e-9)
    assert row.wall_mm == pytest.approx(wall * INCH, abs=1e-9)
    assert row.stock_mm == pytest.approx(10 * 12 * INCH)
    # 10.69 t (D - t) lb/ft is steel's weight; within 1 % of the published one it cannot be another tube.
    assert 10.69 * wall * (outer - wall) == pytest.approx(weight, rel=0.01)


@pytest.mark.parametrize(("size", "nominal"), [("1/2", 0.5), ("3/4", 0.75), ("1", 1.0)])
def test_copper_is_an_eighth_over_its_nominal_size(size: str, nominal: float) -> None:
    # ASTM B88: outside diameter = nominal + 1/8 in.
    assert TRADE.sections[f"copper-{size}"].outer_mm == pytest.approx((nominal + 0.125) * INCH)


@pytest.mark.parametrize("size", [16, 19, 20, 25, 28, 30, 35])
def test_metric_tubes_are_what_they_are_called(size: int) -> None:
    assert TRADE.sections[f"tube-{size}"].outer_mm == size


def test_ready_made_lengths() -> None:
    # US sizes: several sellers' guides; UK: 54, 72 and 90 in as 137, 183 and 229 cm.
    us = {row.length_mm / INCH for row in TRADE.ready_made.values() if row.market == "in"}
    assert {63.0, 84.0, 95.0, 96.0, 108.0, 120.0} <= {round(length, 9) for length in us}
    uk = {row.length_mm for row in TRADE.ready_made.values() if row.market == "mm"}
    assert {1370.0, 1830.0, 2290.0} <= uk


def test_escape_figures_are_those_of_irc_r310() -> None:
    # IRC R310.2.1: 5.7 ft2 (820.8 in2), 5.0 ft2 (720 in2) at grade, 24 in high, 20 in wide; R310.2.2: sill 44 in.
    assert limit_of(TRADE, "escape-area") == pytest.approx(820.8 * INCH**2)
    assert limit_of(TRADE, "escape-area-grade") == pytest.approx(720 * INCH**2)
    assert limit_of(TRADE, "escape-height") == pytest.approx(24 * INCH)
    assert limit_of(TRADE, "escape-width") == pytest.approx(20 * INCH)
    assert limit_of(TRADE, "escape-sill") == pytest.approx(44 * INCH)


@pytest.mark.parametrize(
    ("limit_id", "inches"),
    [
        ("rod-low", 3), ("rod-high", 12), ("rod-under-ceiling", 3), ("no-room", 6), ("reach-short", 6), ("reach-long", 12),
        ("stack-on-glass", 2), ("heat-default", 12), ("heat-fan-heater", 36), ("heat-portable-heater", 36),
        ("heat-hot-water-radiator", 1),
    ],
)  # fmt: skip
def test_limits_of_common_practice(limit_id: str, inches: float) -> None:
    # Common practice, no source.
    assert limit_of(TRADE, limit_id) == pytest.approx(inches * INCH)


def test_bare_ends_add_two_inches_in_all() -> None:
    # Common practice, no source.
    assert 2 * TRADE.ends["bare"].extra_tube_mm == pytest.approx(2 * INCH)


def test_every_row_says_where_it_comes_from() -> None:
    tables = (TRADE.headings, TRADE.sections, TRADE.brackets, TRADE.ends, TRADE.ready_made, TRADE.bodies, TRADE.limits)
    for table in tables:
        for row_id, row in table.items():
            assert row.id == row_id  # type: ignore[attr-defined]
            assert row.source  # type: ignore[attr-defined]
            assert row.name  # type: ignore[attr-defined]


def test_headings_agree_with_themselves() -> None:
    for row in TRADE.headings.values():
        assert 1 < row.fullness_low <= row.fullness_typical <= row.fullness_high
        assert 0 < row.stack_low_mm <= row.stack_mm <= row.stack_high_mm
        assert row.pitch_mm > 0
        assert not (row.carries == "rings" and not row.parks_outside)


def test_tubes_have_room_inside() -> None:
    for row in TRADE.sections.values():
        assert 0 <= 2 * row.wall_mm < row.outer_mm
        assert row.stock_mm > 600


GOOD = "id,name,market,length,source,sure\n"


def read(content: str, columns=READY_MADE, row=ReadyMadeRow):
    return read_table(content, "lengths.csv", columns, row)


def test_comments_empty_lines_and_a_byte_order_mark_are_passed_over() -> None:
    rows = read("\ufeff# first\n\n" + GOOD + "  # inside\na,A,in, 63 in ,me,published\n\n")
    assert rows["a"].length_mm == pytest.approx(63 * INCH)


def test_columns_may_stand_in_any_order() -> None:
    rows = read("sure,length,id,source,market,name\npublished,3/4 in,a,me,in,A\n")
    assert rows["a"].length_mm == pytest.approx(0.75 * INCH)


@pytest.mark.parametrize(
    ("content", "wanted"),
    [
        ("", ["lengths.csv", "no title line"]),
        (GOOD + "a,A,in,63,me,published\n", ["line 2", '"length"', "no unit", "3/4 in"]),
        (GOOD + "a,A,in,sixty in,me,published\n", ["line 2", '"length"']),
        (GOOD + "a,A,in,,me,published\n", ["line 2", '"length"']),
        (GOOD + "a,A,ft,63 in,me,published\n", ["line 2", '"market"', '"ft"', "in, mm"]),
        (GOOD + "a,A,in,63 in,me,sure\n", ["line 2", '"sure"', "published"]),
        (GOOD + "a,A,in,63 in,me\n", ["line 2", "5 cells", "write 6"]),
        (GOOD + "\na,A,in,63 in,me,published\na,A,in,84 in,me,published\n", ["line 4", '"a"', "second time"]),
        ("id,name,market,lenght,source,sure\n", ["line 1", '"lenght"', '"length"']),
        ("id,name,market,source,sure\n", ["line 1", '"length"', "add it"]),
        ("id,id,name,market,length,source,sure\n", ["line 1", '"id"', "twice"]),
        (GOOD + 'a,"A,in,63 in,me,published\n', ["line 2", "quotation"]),
        (GOOD + ",A,in,63 in,me,published\n", ["line 2", '"id"', "empty"]),
    ],
)
def test_damaged_tables_are_told_in_one_located_sentence(content: str, wanted: list[str]) -> None:
    with pytest.raises(BadInput) as caught:
        read(content)
    sentence = str(caught.value)
    assert sentence.startswith("lengths.csv")
    assert "\n" not in sentence
    for part in wanted:
        assert part in sentence


@pytest.mark.parametrize(
    ("cell", "kind", "value"),
    [
        ("3 in", "length", 76.2), ("19 mm", "length", 19.0), ("5.7 ft2", "area", 5.7 * 304.8**2), ("1 m2", "area", 1e6),
        ("1.5", "ratio", 1.5),
    ],
)  # fmt: skip
def test_a_limit_is_read_by_its_kind(cell: str, kind: str, value: float) -> None:
    rows = read_table(
        f"id,name,value,kind,authority,source,sure\na,A,{cell},{kind},x,y,published\n", "l.csv", LIMITS, LimitRow
    )
    assert rows["a"].value == pytest.approx(value)


@pytest.mark.parametrize(
    ("cell", "kind"), [("3", "length"), ("3 in", "ratio"), ("5.7", "area"), ("nan", "ratio"), ("1e400", "ratio")]
)
def test_a_limit_that_does_not_fit_its_kind_is_refused(cell: str, kind: str) -> None:
    with pytest.raises(BadInput, match="line 2"):
        read_table(
            f"id,name,value,kind,authority,source,sure\na,A,{cell},{kind},x,y,published\n", "l.csv", LIMITS, LimitRow
        )


def test_solid_sections_have_no_wall() -> None:
    rows = read_table(
        "id,name,material,outer,wall,stock,source,sure\na,A,wood,1 in,0 in,4 ft,x,published\n",
        "s.csv",
        SECTIONS,
        SectionRow,
    )
    assert rows["a"].wall_mm == 0.0


def test_a_wrong_shape_of_end_is_told() -> None:
    with pytest.raises(BadInput, match='column "shape"'):
        read_table(
            "id,name,extra tube,length,diameter,shape,bend,holes,plate below,source,sure\n"
            "a,A,0 in,1 in,1 in,cube,0 in,none,0 in,x,published\n",
            "e.csv",
            ENDS,
            EndRow,
        )


def test_an_unknown_row_names_the_nearest() -> None:
    with pytest.raises(NoSuch, match='"conduit-3/4"'):
        row_of(TRADE.sections, "conduit-3-4", "section")
    with pytest.raises(NoSuch, match="it may be sheer, light"):
        row_of(TRADE.bodies, "xyz", "body")


def test_a_missing_or_unreadable_table_is_told(tmp_path: Path) -> None:
    with pytest.raises(Missing, match=r"headings\.csv"):
        load_trade(tmp_path)
    (tmp_path / "headings.csv").write_bytes(b"id,name\n\xff\xfe")
    with pytest.raises(BadInput, match="UTF-8"):
        load_trade(tmp_path)


def test_the_tables_are_where_the_wheel_packs_them() -> None:
    assert (places.resources() / "tables" / "limits.csv").is_file()
    assert all(math.isfinite(row.value) for row in TRADE.limits.values())


def test_a_thicker_rod_lifts_the_cloth_by_half_of_what_it_is_thicker() -> None:
    # Geometry: what hangs from the rod's top moves by the difference of the radii.
    row = TRADE.headings["clip-rings"]
    assert row.drop_below(row.rod_mm) == row.drop_mm
    assert row.drop_below(row.rod_mm + 10.0) == pytest.approx(row.drop_mm - 5.0)
    for heading in ("eyelets", "rod-pocket"):
        sleeve = TRADE.headings[heading]
        assert -sleeve.drop_below(30.0) - 15.0 == pytest.approx(INCH)


def test_every_wall_kind_of_the_room_file_has_a_row_and_no_load_figure() -> None:
    from typing import get_args, get_type_hints

    from elevation.room.model import Wall
    from elevation.trade.model import SubstrateRow

    assert set(TRADE.substrates) == set(get_args(get_type_hints(Wall)["substrate"]))
    # What is not known carries nothing yet: no field of the row is a number.
    assert {type(getattr(row, name)) for row in TRADE.substrates.values() for name in SubstrateRow.__struct_fields__} == {
        str
    }
    # How walls are built, from memory: board and lath hang on studs, brick, block and concrete are masonry.
    assert {row.id for row in TRADE.substrates.values() if row.build == "studs"} == {
        "board-timber-studs",
        "board-metal-studs",
        "plaster-lath",
    }
    assert {row.id for row in TRADE.substrates.values() if row.build == "masonry"} == {
        "solid-brick",
        "hollow-block",
        "aerated-block",
        "concrete",
    }
