"""The sheets dialog: the list, pages made on the worker, turning, true size on paper, files, giving up."""

from __future__ import annotations

import re
import sys
from threading import Event

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from elevation.commands.arguments import SHEETS
from elevation.errors import Missing
from elevation.findings.model import Weight
from elevation.output.painters.printing import print_pages
from elevation.room.edits import replace_at
from elevation.room.file import load_room, save_room
from elevation.room.style import style_for
from elevation.sheet.every import every_sheet
from elevation.sheet.records import Text
from elevation.units import Length
from elevation.window.sheets_dialog import open_sheets
from elevation.window.sheets_pages import Stopped, write_pages
from elevation.window.sheets_printing import ask_and_print, chosen_pages
from elevation.window.texts import tr
from elevation.words import msg

MM_PER_POINT = 25.4 / 72


@pytest.fixture
def sheets(window, qtbot):
    return opened(window, qtbot)


def opened(window, qtbot, name=""):
    window.actions_by_name["sheets"].trigger()
    dialog = open_sheets(window, name)
    settle(dialog, qtbot)
    return dialog


def settle(dialog, qtbot):
    qtbot.waitUntil(lambda: not dialog._busy and not dialog._wait.isActive(), timeout=20_000)


def test_the_command_line_knows_the_same_sheets():
    assert {kind.name for kind in every_sheet()} == set(SHEETS)


def test_opens_on_the_wall_shown(sheets, window):
    assert sheets.isVisible()
    assert len(sheets.pages) == 1
    assert sheets.pages[0].title.startswith(window.session.committed.name)
    assert sheets.findChildren(type(sheets)) == []
    window.actions_by_name["sheets"].trigger()
    assert len(window.findChildren(type(sheets))) == 1


def test_every_sheet_of_the_first_demo_room_is_drawn_or_says_why(sheets, qtbot):
    for kind in every_sheet():
        sheets.choice.choose(kind.name)
        settle(sheets, qtbot)
        assert sheets.pages or sheets.preview.accessibleDescription(), kind.name


def test_pages_are_turned_by_keys_buttons_and_wheel(make_window, demo_room, qtbot):
    sheets = opened(make_window(demo_room("2-living-room.room.json")), qtbot)
    sheets.choice.whose_box.setCurrentIndex(1)
    settle(sheets, qtbot)
    assert len(sheets.pages) == 4
    sheets.preview.setFocus()
    QTest.keyClick(sheets.preview, Qt.Key.Key_PageDown)
    assert sheets.index == 1
    QTest.keyClick(sheets.preview, Qt.Key.Key_Left)
    assert sheets.index == 0
    assert not sheets.before.isEnabled()
    QTest.mouseClick(sheets.next, Qt.MouseButton.LeftButton)
    assert sheets.page_text.text() == "Page 2 of 4"
    roll = QWheelEvent(
        QPointF(9, 9), QPointF(9, 9), QPoint(), QPoint(0, -240), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(sheets.preview, roll)
    assert sheets.index == 3
    assert not sheets.next.isEnabled()


def test_the_wall_is_drawn_in_the_scheme_that_is_shown(make_window, demo_room, qtbot):
    window = make_window(demo_room("2-living-room.room.json"))
    scheme = window.session.committed.walls[0].schemes[-1]
    window.session.switch_scheme(scheme.id)
    sheets = opened(window, qtbot)
    assert scheme.name in sheets.pages[0].title


def test_a_house_takes_the_open_room_as_it_is_and_the_others_from_their_files(make_window, demo_room, qtbot, tmp_path):
    for name in ("1-bedroom.room.json", "4-flat.room.json"):
        save_room(demo_room(name), tmp_path / name)
    own = tmp_path / "1-bedroom.room.json"
    window = make_window(load_room(own), own)
    window.session.commit(replace_at(window.session.committed, (), name="Not saved yet"), msg("Name"), ())
    sheets = opened(window, qtbot)
    sheets.choice.whose_box.setCurrentIndex(2)
    settle(sheets, qtbot)
    rooms = {page.title.split(" · ")[0] for page in sheets.pages}
    assert rooms == {"Not saved yet", demo_room("4-flat.room.json").name}


def test_a_room_of_the_house_that_cannot_be_read_is_named_and_the_others_go_on(make_window, demo_room, qtbot, tmp_path):
    own = tmp_path / "a.room.json"
    save_room(demo_room(), own)
    (tmp_path / "b.room.json").write_text("{", encoding="utf-8")
    (tmp_path / "d.room.json").write_text("[]", encoding="utf-8")
    save_room(demo_room("4-flat.room.json"), tmp_path / "c.room.json")
    sheets = opened(make_window(load_room(own), own), qtbot)
    sheets.choice.whose_box.setCurrentIndex(2)
    settle(sheets, qtbot)
    assert {page.title.split(" · ")[0] for page in sheets.pages} == {demo_room().name, demo_room("4-flat.room.json").name}
    assert sheets.state.text().startswith("2 rooms are not on these pages: b.room.json")
    assert sheets.export_button.isEnabled()
    # What is one over all rooms is one over those that can be read.
    sheets.choice.choose("house")
    settle(sheets, qtbot)
    assert sheets.pages
    assert sheets.state.text().startswith("2 rooms are not on these pages: b.room.json")


@pytest.mark.parametrize(("ending", "begins"), [(".pdf", b"%PDF"), (".svg", b"<?xml"), (".png", b"\x89PNG")])
def test_exports_on_the_worker_what_is_named_and_nothing_else(make_window, demo_room, qtbot, tmp_path, ending, begins):
    window = make_window(demo_room("2-living-room.room.json"))
    sheets = opened(window, qtbot)
    sheets.choice.whose_box.setCurrentIndex(1)
    settle(sheets, qtbot)
    sheets.show_page(2)
    path = tmp_path / f"out{ending}"
    path.write_bytes(b"old")
    window.files.dialogs.path = path
    sheets.export_button.click()
    settle(sheets, qtbot)
    assert path.read_bytes().startswith(begins)
    assert [one.name for one in tmp_path.glob("out*")] == [path.name]
    assert ("Page 3" in sheets.state.text()) == (ending != ".pdf")
    if ending == ".pdf":
        assert len(re.findall(rb"/Type /Page\b", path.read_bytes())) == 4


def test_a_file_that_cannot_be_written_is_said(sheets, window, qtbot, tmp_path):
    window.files.dialogs.path = tmp_path / "nowhere" / "a.pdf"
    sheets.export_button.click()
    settle(sheets, qtbot)
    assert "nowhere" in sheets.state.text()
    assert sheets.pages


def test_giving_up_writes_nothing(sheets, tmp_path):
    path = tmp_path / "a.pdf"
    path.write_bytes(b"old")
    cancelled = Event()
    seen = []

    def tell(done, of):
        seen.append((done, of))
        cancelled.set()

    with pytest.raises(Stopped):
        write_pages(path, sheets.pages * 3, 0, cancelled, tell)
    assert path.read_bytes() == b"old"
    assert seen == [(0, 3)]


def test_hiding_the_dialog_gives_up(sheets, window):
    sheets.begin()
    assert sheets._busy
    sheets.reject()
    assert not sheets._busy
    assert window.session.worker.wait(20.0)


def test_a_drilling_sheet_that_is_withheld_says_why(make_window, demo_room, qtbot):
    # A rod in the middle of the casing's head: its brackets would stand half on the casing's edge.
    room = demo_room()
    layer = room.walls[0].schemes[0].treatments[0].layers[0]
    low = replace(layer.rod.height, at=Length(0.0, "0 in"))
    ref = (room.walls[0].id, room.walls[0].schemes[0].id, "t1", layer.id)
    ends = tuple(replace(one, place=replace(one.place, at=Length(279.4, "11 in"))) for one in layer.brackets)
    room = replace_at(room, ref, rod=replace(layer.rod, height=low), brackets=ends)
    window = make_window(room)
    reasons = [tr(one.text, style_for(room)) for one in window.session.findings() if one.weight is Weight.STOP]
    assert reasons
    sheets = opened(window, qtbot, "drilling")
    texts = " ".join(
        record.text for group in sheets.pages[0].groups for record in group.records if isinstance(record, Text)
    )
    assert "Drilling sheet withheld" in texts
    assert reasons[0].split(":")[-1].strip()[:20] in texts


def test_prints_at_true_size(sheets, tmp_path):
    # A printer that is a PDF file: its page boxes are read back in points of 1/72 in (ISO 32000-1, 8.3.2.3).
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    path = tmp_path / "printed.pdf"
    printer.setOutputFileName(str(path))
    print_pages(sheets.pages, printer)
    boxes = re.findall(rb"/MediaBox \[([^\]]*)\]", path.read_bytes())
    _, _, wide, high = (float(part) * MM_PER_POINT for part in boxes[0].split())
    page = sheets.pages[0].page
    assert (wide, high) == pytest.approx((page.width_mm, page.height_mm), abs=0.4)
    assert printer.fullPage()


def test_where_qt_cannot_print_one_sentence_says_so(sheets, monkeypatch):
    monkeypatch.setitem(sys.modules, "PySide6.QtPrintSupport", None)
    with pytest.raises(Missing, match="cannot print here"):
        ask_and_print(sheets.pages, sheets)
    sheets.print_button.click()
    assert "cannot print here" in sheets.state.text()


@pytest.mark.parametrize(("first", "last", "got"), [(0, 0, "abc"), (1, 3, "abc"), (2, 2, "b"), (3, 3, "c"), (2, 3, "bc")])
def test_a_range_of_pages_is_counted_from_one(first, last, got):
    assert "".join(chosen_pages("abc", first, last)) == got


def test_works_by_keyboard_alone(sheets, qtbot):
    assert sheets.choice.sheets.hasFocus()
    QTest.keyClick(sheets.choice.sheets, Qt.Key.Key_Down)
    settle(sheets, qtbot)
    assert sheets.choice.kind.name == "section"
    names = set()
    for _ in range(12):
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        names.add(QApplication.focusWidget())
    assert {sheets.preview, sheets.print_button, sheets.export_button, sheets.choice.paper_box} <= names
    QTest.keyClick(sheets, Qt.Key.Key_Escape)
    assert not sheets.isVisible()


def test_enter_presses_the_button_that_has_the_keyboard(sheets):
    sheets.close_button.setFocus()
    QTest.keyClick(sheets.close_button, Qt.Key.Key_Return)
    assert not sheets.isVisible()


def test_the_picture_to_post_carries_the_figures_of_her_choice_and_remembers_them(sheets, window, qtbot):
    assert not sheets.choice.post.isVisible()
    sheets.choice.choose("picture")
    settle(sheets, qtbot)
    assert sheets.choice.post.isVisible()
    assert "camera level" in sheets.choice.post.advice.text()
    first = sheets.choice.post.choices[0]
    # What another choice has taken is not offered twice.
    assert "glass-open" not in first._keys
    first.choose("fullness")
    sheets.choice.post.flag.setChecked(True)
    settle(sheets, qtbot)
    words = [record.text for group in sheets.pages[0].groups for record in group.records if isinstance(record, Text)]
    assert {"fullness", "before", "after"} <= set(words)
    assert window.settings.figures[0] == "fullness"


@pytest.mark.parametrize(("ending", "begins"), [(".dxf", b"  0\n"), (".svg", b'<?xml version="1.0"')])
def test_plates_are_exported_for_a_cutting_machine(make_window, demo_room, qtbot, tmp_path, ending, begins):
    window = make_window(demo_room())
    sheets = opened(window, qtbot, "plate")
    path = tmp_path / f"plate{ending}"
    window.files.dialogs.path = path
    sheets.export_button.click()
    settle(sheets, qtbot)
    assert path.read_bytes().startswith(begins)
    assert b"CUT" in path.read_bytes()
    assert b"Bedroom" not in path.read_bytes()


@pytest.mark.parametrize("name", ["buying", "house", "sewing"])
def test_tables_are_exported_beside_the_pages(make_window, demo_room, qtbot, tmp_path, name):
    window = make_window(demo_room())
    sheets = opened(window, qtbot, name)
    for ending in (".csv", ".txt"):
        path = tmp_path / f"list{ending}"
        window.files.dialogs.path = path
        sheets.export_button.click()
        settle(sheets, qtbot)
        assert "Drawn to" in sheets.state.text()
        data = path.read_bytes()
        assert data.startswith(b"\xef\xbb\xbf") is (ending == ".csv")
        assert b"Window" in data
    # Another sheet is no table.
    sheets.choice.choose("elevation")
    settle(sheets, qtbot)
    window.files.dialogs.path = tmp_path / "wall.csv"
    sheets.export_button.click()
    settle(sheets, qtbot)
    assert not (tmp_path / "wall.csv").exists()
    assert "has no known ending" in sheets.state.text()
