"""The trade's tables in the window: looked at with sources, own rows added, copied, corrected, kept, and used at once."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from elevation.sheet.bracket_drawing import bracket_group, extent
from elevation.trade.drills import drill_for
from elevation.trade.own import EVERY, HERS, own_cells, table_named, with_own
from elevation.trade.tables import load_trade
from elevation.window.tables_dialog import TablesDialog
from tests.sheet.draw_checks import check_grammar
from tests.sheet.draw_checks import extent as reach

BRACKETS = next(index for index, table in enumerate(EVERY) if table.name == "brackets")


@pytest.fixture
def dialog(qtbot, tmp_path):
    made = TablesDialog(tmp_path / "tables")
    qtbot.addWidget(made)
    made.choice.setCurrentIndex(BRACKETS)
    made._choose(BRACKETS)
    return made


def put(dialog, row, title, text):
    index = dialog.model.index(row, dialog.model.table.titles.index(title))
    return dialog.model.setData(index, text)


@pytest.mark.parametrize("index", range(len(EVERY)), ids=[table.name for table in EVERY])
def test_every_table_shows_its_rows_and_their_sources(dialog, index):
    dialog._choose(index)
    assert dialog.model.rowCount() == len(getattr(load_trade(), EVERY[index].name))
    for row in range(dialog.model.rowCount()):
        dialog.view.selectRow(row)
        assert dialog.source.text().startswith("Source: ")
    # The program's own rows are looked at, not typed in; of shelf and prices it has none.
    if EVERY[index] in HERS:
        assert "All of this is your own" in dialog.source.text()
        return
    assert not dialog.model.flags(dialog.model.index(0, 1)) & Qt.ItemFlag.ItemIsEditable
    assert not put(dialog, 0, "name", "another")


def test_a_copied_bracket_is_drawn_kept_and_read_again(dialog, tmp_path):
    dialog.view.selectRow(0)
    dialog._copy()
    assert dialog.model.is_own(0)
    assert put(dialog, 0, "plate below", "4 in")
    assert put(dialog, 0, "holes", "1 in; -3 1/2 in")
    row = dialog.model.row_value(0)
    assert row.id == "my-shop-strap"
    assert row.plate_below_mm == pytest.approx(101.6)
    assert dialog.drawing._row == row
    told = []
    dialog.kept.connect(lambda: told.append(1))
    assert dialog.save()
    assert told == [1]
    assert own_cells(table_named("brackets"), tmp_path / "tables")[0][0] == "my-shop-strap"
    assert TablesDialog(tmp_path / "tables")._open(BRACKETS).own[0][0] == "my-shop-strap"


def test_a_bad_cell_is_said_at_once_and_never_kept(dialog, tmp_path):
    dialog._add()
    assert put(dialog, 0, "plate width", "2")
    assert "has no unit" in dialog.trouble.text()
    assert not dialog.save()
    assert dialog.trouble.text()
    assert not (tmp_path / "tables" / "brackets.csv").exists()
    # Another table is not opened over what is typed and wrong.
    dialog._choose(0)
    assert dialog.model.table.name == "brackets"


def test_a_corrected_row_stands_for_the_program_s_until_it_is_removed(dialog):
    count = dialog.model.rowCount()
    dialog.view.selectRow(1)
    name = dialog.model.cells(1)[0]
    dialog._correct()
    assert dialog.model.rowCount() == count
    assert dialog.model.own[0][0] == name
    dialog.view.selectRow(0)
    dialog._remove()
    assert dialog.model.rowCount() == count
    assert dialog.model.own == []


def test_the_window_works_with_what_was_kept(window, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    dialog = TablesDialog(tmp_path / "elevation" / "tables", window)
    dialog.kept.connect(window.commands.take_tables)
    dialog._choose(BRACKETS)
    dialog.view.selectRow(0)
    dialog._correct()
    before = window.session.set_out().treatments[0].layers[0].brackets[0].plate
    put(dialog, 0, "plate above", "3 in")
    assert dialog.save()
    after = window.session.set_out().treatments[0].layers[0].brackets[0].plate
    assert after[3] - before[3] == pytest.approx(1.5 * 25.4)
    dialog.close()


def test_brackets_are_drawn_by_their_figures_inside_their_room():
    for row in load_trade().brackets.values():
        group = bracket_group(row)
        check_grammar([group])
        left, bottom, right, top = extent(row)
        got = reach([group])
        assert left <= got[0] + 1e-6
        assert got[2] <= right + 1e-6
        assert bottom <= got[1] + 26.0
        assert got[3] <= top + 26.0


def test_every_column_has_a_title_in_plain_words():
    from elevation.window.table_titles import _TITLES

    assert {title for table in EVERY for title in table.titles} == set(_TITLES)


def open_table(dialog, name):
    index = [table.name for table in EVERY].index(name)
    dialog.choice.setCurrentIndex(index)
    dialog._choose(index)


def test_prices_and_stock_are_added_copied_and_corrected_there_too(dialog, tmp_path):
    open_table(dialog, "prices")
    dialog._add()
    cells = {"id": "ring:ring-1", "price": "4.20", "currency": "USD", "pack": "7", "date": "2026-03-31", "place": "corner"}
    for title, text in cells.items():
        put(dialog, 0, title, text)
    dialog._copy()
    # Whose price the copy is only she knows: nothing is kept until its part is named.
    assert not dialog.save()
    put(dialog, 1, "id", "rod:conduit-3/4")
    assert dialog.save()
    assert [row[0] for row in own_cells(table_named("prices"), tmp_path / "tables")] == ["ring:ring-1", "rod:conduit-3/4"]
    open_table(dialog, "shelf")
    dialog._add()
    for title, text in {"part": "rod:conduit-3/4", "length": "none", "count": "2"}.items():
        put(dialog, 0, title, text)
    assert not dialog.save()
    assert "without a length" in dialog.trouble.text()
    put(dialog, 0, "length", "62 in")
    assert dialog.save()
    trade = with_own(load_trade(), tmp_path / "tables")
    assert trade.prices["ring:ring-1"].pack == 7
    assert [(row.part, row.count) for row in trade.shelf.values()] == [("rod:conduit-3/4", 2)]


def test_a_drill_that_she_lacks_is_no_longer_named(dialog, tmp_path):
    open_table(dialog, "drills")
    row = next(row for row in range(dialog.model.rowCount()) if dialog.model.cells(row)[0] == "mm-2.5")
    dialog.view.selectRow(row)
    dialog._correct()
    put(dialog, 0, "diameter", "0 mm")
    assert dialog.save()
    drills = with_own(load_trade(), tmp_path / "tables").drills.values()
    # 7/64 in is 2.778 mm: no drill of half millimetres is larger than 2 and not larger than that without the one of 2.5.
    found = drill_for(2.778, is_pilot=True, market="mm", same_mm=0.05, drills=drills)
    assert found is not None
    assert found.name == "2 mm"
