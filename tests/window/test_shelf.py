"""Shelf and prices in the window: typed, refused with a sentence, kept, read again, and used by the lists."""

from __future__ import annotations

import pytest

from elevation.places import demo_rooms
from elevation.planning.buying.hers import FIELDS
from elevation.planning.buying.shelf import carry_mm, saw_of, shelf_bars, shelf_parts
from elevation.room.file import load_room
from elevation.session.session import Session
from elevation.trade.own import own_cells, table_named, with_own
from elevation.trade.tables import load_trade
from elevation.window.shelf_dialog import ShelfDialog

TRADE = load_trade()
RINGS = "clip-ring:ring-1-1/4"


@pytest.fixture
def opened(qtbot, tmp_path):
    def open_it():
        session = Session(load_room(demo_rooms() / "1-bedroom.room.json"), TRADE, None)
        dialog = ShelfDialog(session, tmp_path / "tables")
        qtbot.addWidget(dialog)
        return dialog

    return open_it


def put(dialog, part, field, text):
    row = next(number for number, one in enumerate(dialog.hers.parts) if one.part == part)
    dialog.parts.item(row, 2 + FIELDS.index(field)).setText(text)
    return dialog.hers.parts[row]


def test_every_line_of_the_buying_list_has_a_row(opened):
    dialog = opened()
    assert [one.part for one in dialog.hers.parts][:2] == ["rod:conduit-3/4", "flat:flat-1-1/2"]
    assert dialog.parts.item(0, 1).text() == "1"
    assert dialog.save()


def test_what_is_typed_is_kept_and_read_again(opened, tmp_path):
    dialog = opened()
    put(dialog, RINGS, "there", "12")
    typed = put(dialog, RINGS, "price", "4,20")
    # What a price needs is proposed: one piece, today.
    assert (typed.pack, len(typed.date)) == ("1", 10)
    put(dialog, RINGS, "currency", "USD")
    put(dialog, RINGS, "pack", "7")
    put(dialog, RINGS, "place", "the shop")
    # The next price takes currency and shop from the last one.
    assert put(dialog, "end:ball-finial", "price", "9").currency == "USD"
    dialog.bars.section.setCurrentIndex(dialog.bars.section.findData("conduit-3/4"))
    dialog.bars.add_bar()
    dialog.bars.table.item(0, 1).setText("62 1/4")
    dialog.bars.table.item(0, 2).setText("2")
    dialog.carry.setText("8 ft")
    told = []
    dialog.kept.connect(lambda: told.append(1))
    assert dialog.save()
    assert told == [1]
    trade = with_own(TRADE, tmp_path / "tables")
    assert shelf_parts(trade) == {RINGS: 12}
    assert [(bar.length_mm, bar.count) for bar in shelf_bars("conduit-3/4", trade)] == [(pytest.approx(62.25 * 25.4), 2)]
    assert carry_mm(trade) == pytest.approx(96 * 25.4)
    assert (trade.prices[RINGS].price, trade.prices[RINGS].pack) == (4.2, 7)
    again = opened()
    assert again.hers.carry == "8 ft"
    assert {one.part: one for one in again.hers.parts}[RINGS].there == "12"
    assert again.hers.bars[0].length == "62 1/4 in"
    again.carry.setText("")
    again.bars.remove_bar()
    put(again, RINGS, "price", "")
    assert again.save()
    trade = with_own(TRADE, tmp_path / "tables")
    assert carry_mm(trade) is None
    assert set(trade.prices) == {"end:ball-finial"}
    assert shelf_bars("conduit-3/4", trade) == ()


@pytest.mark.parametrize(
    ("field", "text", "wrong"),
    [("there", "1.5", "is not a count"), ("price", "1,000", "is not a price"), ("pack", "0", "is nothing"),
     ("date", "yesterday", "is not a day"), ("currency", "", "a price needs it")],
)  # fmt: skip
def test_what_is_wrong_is_said_and_nothing_is_written(opened, tmp_path, field, text, wrong):
    dialog = opened()
    put(dialog, RINGS, "price", "3")
    put(dialog, RINGS, "currency", "USD")
    put(dialog, RINGS, "place", "shop")
    put(dialog, RINGS, field, text)
    assert wrong in dialog.trouble.text()
    assert not dialog.save()
    assert wrong in dialog.trouble.text()
    assert not (tmp_path / "tables").exists()


def test_her_other_allowances_stay(opened, tmp_path):
    table = table_named("allowances")
    (tmp_path / "tables").mkdir()
    (tmp_path / "tables" / table.file).write_text(
        ",".join(table.titles) + "\nhem,hem of a long panel,7 in,mine,one source\n", encoding="utf-8"
    )
    dialog = opened()
    dialog.carry.setText("2 m")
    assert dialog.save()
    assert [row[0] for row in own_cells(table, tmp_path / "tables")] == ["hem", "carry"]


def test_the_saw_that_is_chosen_or_measured_is_reckoned_with(opened, tmp_path):
    dialog = opened()
    assert (dialog.saw.currentData(), dialog.kerf.text()) == ("hacksaw", "1/32 in")
    assert dialog.save()
    assert saw_of(with_own(TRADE, tmp_path / "tables")) == TRADE.saws["hacksaw"]
    index = dialog.saw.findData("mitre-saw")
    dialog.saw.setCurrentIndex(index)
    dialog.saw.activated.emit(index)
    assert dialog.kerf.text() == "1/8 in"
    dialog.kerf.setText("0.1")
    assert dialog.save()
    mine = saw_of(with_own(TRADE, tmp_path / "tables"))
    assert (mine.name, mine.kerf_mm) == ("mitre saw", pytest.approx(2.54))
    again = opened()
    assert (again.saw.currentData(), again.kerf.text()) == ("mitre-saw", "0.1 in")
    again.kerf.setText("thin")
    assert not again.save()
    assert again.trouble.text()
    again.saw.setCurrentIndex(again.saw.findData("hacksaw"))
    again.kerf.setText("1/32 in")
    assert again.save()
    assert saw_of(with_own(TRADE, tmp_path / "tables")) == TRADE.saws["hacksaw"]


@pytest.mark.parametrize(("column", "text", "wrong"), [(1, "long", "is not"), (2, "1.5", "is not a count")])
def test_a_wrong_bar_is_said(opened, tmp_path, column, text, wrong):
    dialog = opened()
    dialog.bars.add_bar()
    dialog.bars.table.item(0, column).setText(text)
    assert dialog.trouble.text()
    assert not dialog.save()
    assert wrong in dialog.trouble.text() or column == 1
    assert not (tmp_path / "tables").exists()


def test_what_cannot_be_read_is_never_written_over(opened, tmp_path):
    (tmp_path / "tables").mkdir()
    (tmp_path / "tables" / "shelf.csv").write_bytes(b"\xff\xfe broken")
    dialog = opened()
    assert dialog.trouble.text()
    assert not dialog.save()
    assert (tmp_path / "tables" / "shelf.csv").read_bytes() == b"\xff\xfe broken"
