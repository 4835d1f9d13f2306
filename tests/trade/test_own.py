"""A person's own rows: added, corrected, refused with a sentence, and what a room says that names one elsewhere."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput, Missing
from elevation.room.edits import replace_at
from elevation.room.validate import check_rows
from elevation.trade import cells, own
from elevation.trade.csv_lines import MOST_BYTES, MOST_CELL
from elevation.trade.own import (
    TABLES,
    free_id,
    load_with_own,
    own_cells,
    shipped_cells,
    table_named,
    usual_cells,
    with_own,
    written,
)
from elevation.trade.tables import load_trade
from tests.findings.rooms import LEFT_BRACKET, good_room

SHIPPED = load_trade()
BRACKETS = table_named("brackets")


def mine(**cells):
    """The shipped strap bracket with other cells, as a row of one's own."""
    base = dict(zip(BRACKETS.titles, shipped_cells(BRACKETS)[0], strict=True))
    given = {"id": "my-arm", "name": "my arm", "source": "measured by me", "sure": "one source"}
    return tuple(
        {**base, **given, **{key.replace("_", " "): cell for key, cell in cells.items()}}[title]
        for title in BRACKETS.titles
    )


def keep(folder, *rows, table=BRACKETS):
    (folder / table.file).write_text(written(table, rows), encoding="utf-8")


@pytest.mark.parametrize("table", TABLES, ids=lambda table: table.name)
def test_every_table_is_shown_as_it_is_written_and_reads_back_the_same(table, tmp_path):
    rows = shipped_cells(table)
    assert [row[0] for row in rows] == list(getattr(SHIPPED, table.name))
    keep(tmp_path, *rows, table=table)
    assert getattr(with_own(SHIPPED, tmp_path), table.name) == getattr(SHIPPED, table.name)
    assert own_cells(table, tmp_path) == rows
    assert all(row[table.titles.index("source")] for row in rows)


def test_own_rows_are_added_and_nothing_else_changes(tmp_path):
    keep(tmp_path, mine(plate_width="2 in", holes="1 1/2 in; -3 in"))
    trade = with_own(SHIPPED, tmp_path)
    assert set(trade.brackets) == {*SHIPPED.brackets, "my-arm"}
    assert trade.brackets["my-arm"].plate_width_mm == pytest.approx(50.8)
    assert trade.brackets["my-arm"].holes_mm == pytest.approx((38.1, -76.2))
    assert trade.sections is SHIPPED.sections
    assert replace(trade, brackets=SHIPPED.brackets) == SHIPPED


def test_a_row_of_hers_with_the_program_s_id_takes_its_place(tmp_path):
    keep(tmp_path, mine(id="shop-strap", plate_width="60 mm"))
    trade = with_own(SHIPPED, tmp_path)
    assert list(trade.brackets) == list(SHIPPED.brackets)
    assert trade.brackets["shop-strap"].plate_width_mm == 60.0
    assert trade.brackets["cup"] == SHIPPED.brackets["cup"]


def test_without_a_folder_the_tables_are_the_program_s(tmp_path):
    assert with_own(SHIPPED, tmp_path / "nowhere") is SHIPPED


@pytest.mark.parametrize(
    ("cells", "words"),
    [
        ({"plate_width": "2"}, "has no unit"),
        ({"plate_width": ""}, "plate width"),
        ({"rings_pass": "maybe"}, "neither yes nor no"),
        ({"mount": "floor"}, "write one of"),
        ({"sure": "certain"}, "is unknown"),
        ({"source": ""}, "is empty"),
        ({"id": ""}, "is empty"),
        ({"name": "a" * (MOST_CELL + 1)}, "has a cell of more than 300 characters"),
        ({"name": "a\x00b"}, "a sign that cannot be shown"),
        ({"name": "a\x1b[31m"}, "a sign that cannot be shown"),
        ({"source": "a, " * 5000}, "is longer than 12000 characters"),
    ],
)
def test_a_bad_cell_is_refused_with_its_column(cells, words):
    with pytest.raises(BadInput) as caught:
        written(BRACKETS, [mine(**cells)])
    assert words in str(caught.value)
    assert len(str(caught.value)) < 400


def test_the_longest_cell_and_the_largest_table_are_read(tmp_path):
    keep(tmp_path, mine(name="a" * MOST_CELL))
    assert with_own(SHIPPED, tmp_path).brackets["my-arm"].name == "a" * MOST_CELL
    path = tmp_path / "brackets.csv"
    whole = path.read_bytes()
    path.write_bytes(whole + b"#" + b"x" * (MOST_BYTES - len(whole) - 1))
    assert "my-arm" in with_own(SHIPPED, tmp_path).brackets
    path.write_bytes(path.read_bytes() + b"x")
    for read in (lambda: with_own(SHIPPED, tmp_path), lambda: own_cells(BRACKETS, tmp_path)):
        with pytest.raises(BadInput, match="larger than 1 MB"):
            read()


def test_a_damaged_table_is_refused_in_the_tables_dialog_too(tmp_path):
    (tmp_path / "brackets.csv").write_bytes(b'id,name\nx,"open\n')
    with pytest.raises(BadInput, match="line 2: has a quotation mark in the wrong place"):
        own_cells(BRACKETS, tmp_path)


def test_an_id_twice_and_a_file_that_is_no_text_are_refused(tmp_path):
    with pytest.raises(BadInput, match="second time"):
        written(BRACKETS, [mine(), mine()])
    (tmp_path / "brackets.csv").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(BadInput, match="UTF-8"):
        with_own(SHIPPED, tmp_path)


def test_a_column_that_came_later_may_be_missing(tmp_path):
    titles = [title for title in BRACKETS.titles if title not in ("arm wide", "arm deep", "holds down")]
    cells = dict(zip(BRACKETS.titles, mine(), strict=True))
    text = ",".join(titles) + "\n" + ",".join(f'"{cells[title]}"' for title in titles) + "\n"
    (tmp_path / "brackets.csv").write_text(text, encoding="utf-8")
    assert with_own(SHIPPED, tmp_path).brackets["my-arm"].arm_wide_mm == 0.0
    assert len(own_cells(BRACKETS, tmp_path)[0]) == len(BRACKETS.titles)
    # One without a usual value is asked for.
    (tmp_path / "brackets.csv").write_text(text.replace("plate width", "plate breadth"), encoding="utf-8")
    with pytest.raises(BadInput, match="plate"):
        with_own(SHIPPED, tmp_path)


def test_ids_of_her_own_are_told_apart_and_never_taken_twice():
    assert free_id("arm", ["my-arm"]) == "my-arm-2"
    assert free_id("cup", ["cup"]) == "my-cup"
    assert free_id("my-cup", ["my-cup", "my-cup-2"]) == "my-cup-3"


def test_a_room_that_names_her_row_says_elsewhere_whose_it_is(tmp_path):
    room = replace_at(good_room(), LEFT_BRACKET, kit="my-arm")
    keep(tmp_path, mine())
    check_rows(room, with_own(SHIPPED, tmp_path), "room")
    with pytest.raises(BadInput) as caught:
        check_rows(room, SHIPPED, "room")
    assert "somebody's own table" in str(caught.value)
    assert "ask whoever made this room to save it again" in str(caught.value)


def test_the_usual_folder_follows_the_person_s_data_home(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    folder = tmp_path / "elevation" / "tables"
    folder.mkdir(parents=True)
    keep(folder, mine())
    assert "my-arm" in own.load_with_own(load_trade).brackets


def test_a_folder_in_place_of_a_table_is_one_sentence(tmp_path):
    (tmp_path / BRACKETS.file).mkdir()
    with pytest.raises(Missing, match=r"brackets\.csv: cannot be read"):
        own_cells(BRACKETS, tmp_path)


@pytest.mark.parametrize("content", ["", "\n\n", "# nothing yet\n"])
def test_a_table_without_a_line_holds_no_row(content, tmp_path):
    (tmp_path / BRACKETS.file).write_text(content, encoding="utf-8")
    assert own_cells(BRACKETS, tmp_path) == ()


def test_a_new_row_says_who_measured_it_where_a_table_asks():
    assert usual_cells(BRACKETS)["source"] == "measured by me"
    assert set(usual_cells(table_named("shelf")).values()) == {""}


def test_on_the_shelf_lie_bars_of_sections_that_are_known_and_other_things(tmp_path):
    shelf = table_named("shelf")
    keep(tmp_path, ("rings", "ring:1", "none", "20"), ("bar", "rod:conduit-1", "62 in", "1"), table=shelf)
    assert len(with_own(SHIPPED, tmp_path).shelf) == 2
    keep(tmp_path, ("bar", "rod:conduit-9", "62 in", "1"), table=shelf)
    with pytest.raises(BadInput, match=r"which is no section"):
        with_own(SHIPPED, tmp_path)


def test_her_tables_lie_where_her_settings_are(tmp_path):
    keep(tmp_path, mine())
    assert "my-arm" in load_with_own(load_trade, tmp_path).brackets
    # Every test has a home of its own, and nothing lies in this one.
    assert load_with_own(load_trade) == SHIPPED


@pytest.mark.parametrize(("pitch", "right"), [("5 mm", True), ("4.99 mm", False), ("0 in", False)])
def test_rings_and_pleats_do_not_stand_in_one_another(pitch, right, tmp_path):
    headings = table_named("headings")
    row = list(shipped_cells(headings)[0])
    row[0], row[headings.titles.index("pitch")] = "my-rings", pitch
    if right:
        keep(tmp_path, row, table=headings)
        assert with_own(SHIPPED, tmp_path).headings["my-rings"].pitch_mm == 5.0
    else:
        with pytest.raises(BadInput, match="closer than 5 mm"):
            written(headings, [row])


def test_a_section_is_of_a_material_that_is_known(tmp_path):
    sections = table_named("sections")
    row = list(shipped_cells(sections)[0])
    row[0], row[sections.titles.index("material")] = "my-tube", "unobtainium"
    keep(tmp_path, row, table=sections)
    with pytest.raises(BadInput, match=r"sections\.csv.*my-tube.*unobtainium.*no material"):
        with_own(SHIPPED, tmp_path)


@pytest.mark.parametrize(
    ("name", "title", "cell"),
    [
        ("headings", "fullness low", "0"),
        ("headings", "stack", "0 in"),
        ("headings", "turned", "-1 in"),
        ("fabrics", "width", "0 in"),
        ("fabrics", "grams", "0"),
        ("fabrics", "shrinks", "1"),
        ("sections", "outer", "0 in"),
        ("sections", "wall", "-1 mm"),
        ("materials", "elastic", "0 GPa"),
        ("brackets", "projection", "-5 in"),
        ("ready_made", "length", "0 in"),
        ("drills", "diameter", "-1 mm"),
    ],
)
def test_no_size_of_nothing_or_less_is_taken(name, title, cell):
    table = table_named(name)
    column = table.columns[table.titles.index(title)]
    with pytest.raises(BadInput) as caught:
        column.read(cell)
    assert cell in str(caught.value)
    assert "write" in str(caught.value)


def test_sizes_at_their_limits_are_taken():
    assert cells.size("0.1 mm") == pytest.approx(0.1)
    assert cells.extent("0 in") == 0.0
    assert cells.between(0.0, 0.5, cells.ratio)("0.5") == 0.5
    for cell, read in (("0.51", cells.between(0.0, 0.5, cells.ratio)), ("0", cells.more_than(0.0, cells.ratio))):
        with pytest.raises(BadInput):
            read(cell)


def test_a_price_buys_pieces_or_a_length():
    assert cells.pack("7") == (7.0, False)
    assert cells.pack("1 yd") == (pytest.approx(914.4), True)
    assert cells.pack("0.5") == (0.5, False)
    for nothing in ("0", "0 in"):
        with pytest.raises(BadInput):
            cells.pack(nothing)
