"""The curve of glass over the rod's length."""

from __future__ import annotations

import subprocess
import sys
from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest


@pytest.fixture
def plotted(window):
    window.glass_drawer.set_open(True)
    QTest.qWait(0)
    window.glass.load()
    window.glass.work_out()
    return window


def test_the_plotting_library_waits_for_its_drawer():
    # A fresh process: the window is built and painted, and nobody has asked for the curve yet.
    code = (
        "import sys\n"
        "from elevation import places\n"
        "from elevation.room.file import load_room\n"
        "from elevation.trade import load_trade\n"
        "from elevation.window.start import make_app, make_window\n"
        "app = make_app()\n"
        "window = make_window(load_room(places.demo_rooms() / '1-bedroom.room.json'), load_trade())\n"
        "window.show()\n"
        "app.processEvents()\n"
        "late = {'pyqtgraph', 'ezdxf', 'pint', 'PySide6.QtPrintSupport', 'fontTools'} & set(sys.modules)\n"
        "window.close()\n"
        "print(sorted(late))\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert done.stdout.strip() == "[]"


def test_glass_clear_never_falls_as_the_rod_grows(plotted):
    xs, ys = plotted.glass.plot._curve.getData()
    assert len(xs) > 10
    assert list(xs) == sorted(xs)
    assert all(later >= earlier - 1e-9 for earlier, later in pairwise(ys))


def test_the_line_stands_where_the_rod_is(plotted):
    support = plotted.session.set_out().treatments[0].layers[0].support
    assert plotted.glass.plot._line.value() * 25.4 == pytest.approx(support.length_mm)


def test_pulling_the_line_is_one_edit_of_the_rod(plotted):
    before = plotted.session.set_out().treatments[0].layers[0].support
    glass = plotted.glass
    for more in (20.0, 60.0, 101.6):
        glass._pull(before.length_mm + more)
    glass._drop()
    after = plotted.session.set_out().treatments[0].layers[0].support
    assert plotted.session.edits == 1
    assert after.length_mm == pytest.approx(before.length_mm + 101.6, abs=3.2)
    assert after.left_mm < before.left_mm


def test_the_curve_follows_the_theme(plotted):
    plotted.actions_by_name["theme-dark"].trigger()
    dark = plotted.glass.plot._plot.backgroundBrush().color().lightness()
    plotted.actions_by_name["theme-light"].trigger()
    assert dark < 60 < plotted.glass.plot._plot.backgroundBrush().color().lightness()


def test_the_other_curve_is_the_gap_under_the_hem_and_its_line_is_the_rod(plotted):
    glass = plotted.glass
    glass.choice.setCurrentIndex(1)
    xs, ys = glass.plot._curve.getData()
    support = plotted.session.set_out().treatments[0].layers[0].support
    assert glass.plot._line.value() * 25.4 == pytest.approx(support.height_mm)
    # As far up, as much more gap.
    assert (ys[-1] - ys[0]) == pytest.approx(xs[-1] - xs[0])
    assert len(glass.plot._marks) == 2 * len(glass.curve.marks) > 0
    before = support.height_mm
    for more in (10.0, 30.0, 50.8):
        glass._pull(before + more)
    glass._drop()
    assert plotted.session.edits == 1
    assert plotted.session.set_out().treatments[0].layers[0].support.height_mm == pytest.approx(before + 50.8, abs=3.2)


def test_arrows_move_the_line_and_words_say_the_same(plotted):
    glass = plotted.glass
    glass.choice.setCurrentIndex(1)
    before = plotted.session.set_out().treatments[0].layers[0].support.height_mm
    QTest.keyClick(glass.plot, Qt.Key.Key_Right)
    QTest.keyClick(glass.plot, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    after = plotted.session.set_out().treatments[0].layers[0].support.height_mm
    assert after - before == pytest.approx(11 * 25.4 / 16)
    glass.refresh()
    assert "over the floor" in glass.text.text()
    assert glass.plot.accessibleDescription() == glass.text.text()
    glass.choice.setCurrentIndex(0)
    assert "of the glass clear" in glass.text.text()


def test_the_third_curve_is_the_sag_and_its_line_a_bracket(plotted):
    glass = plotted.glass
    glass.choice.setCurrentIndex(2)
    bracket = plotted.session.set_out().treatments[0].layers[0].brackets[-1]
    assert glass.plot._line.value() * 25.4 == pytest.approx(bracket.x_mm)
    assert "sags" in glass.text.text()
    glass._pull(bracket.x_mm - 25.4)
    glass._drop()
    assert plotted.session.edits == 1
