"""The trade's tables in the window: looked at with sources, own rows added, copied, corrected, kept, and used at once."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from elevation.sheet.bracket_drawing import bracket_group, extent
from elevation.trade.own import TABLES, own_cells, table_named
from elevation.trade.tables import load_trade
from elevation.window.tables_dialog import TablesDialog
from tests.sheet.draw_checks import check_grammar
from tests.sheet.draw_checks import extent as reach

BRACKETS = next(index for index, table in enumerate(TABLES) if table.name == "brackets")


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


@pytest.mark.parametrize("index", range(len(TABLES)), ids=[table.name for table in TABLES])
def test_every_table_shows_its_rows_and_their_sources(dialog, index):
    dialog._choose(index)
    assert dialog.model.rowCount() == len(getattr(load_trade(), TABLES[index].name))
    for row in range(dialog.model.rowCount()):
        dialog.view.selectRow(row)
        assert dialog.source.text().startswith("Source: ")
    # The program's own rows are looked at, not typed in.
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

    assert {title for table in TABLES for title in table.titles} == set(_TITLES)
