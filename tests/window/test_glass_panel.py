"""The curve of glass over the rod's length."""

from __future__ import annotations

import subprocess
import sys
from itertools import pairwise

import pytest
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
