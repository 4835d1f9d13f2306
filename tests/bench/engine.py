"""Set-out and findings without memory of earlier runs, against each other and against the yardstick."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QImage

from elevation.findings.all_rules import find
from elevation.findings.model import Scene
from elevation.room.model import Room
from elevation.setting_out.whole import set_out
from elevation.trade.model import Trade
from tests.bench.calibration import calibration_picture, replay_calibration
from tests.bench.rooms import windows
from tests.bench.timing import Row, alternate, row


def _fresh(count: int, trade: Trade) -> Callable[[], object]:
    # A room made anew has no value in common with the last one, so no memo can answer.
    room: Room = windows(count)
    return lambda: find(Scene(room, set_out(room, "w1", "s1", trade), trade))


def _engine_runs(count: int, trade: Trade, runs: int) -> list[Callable[[], object]]:
    return [_fresh(count, trade) for _ in range(runs)]


def scaling(trade: Trade, runs: int) -> Row:
    """40 treatments over 4."""
    forty, four = iter(_engine_runs(40, trade, runs + 5)), iter(_engine_runs(4, trade, runs + 5))
    ours, theirs = alternate(lambda: next(forty)(), lambda: next(four)(), runs)
    return row("engine scaling", ours, theirs, 11)


def weight(trade: Trade, runs: int) -> Row:
    """4 treatments over one replay of the yardstick."""
    four = iter(_engine_runs(4, trade, runs + 5))
    picture, image = calibration_picture(), QImage(1400, 900, QImage.Format.Format_ARGB32_Premultiplied)
    ours, theirs = alternate(lambda: next(four)(), lambda: replay_calibration(picture, image), runs)
    return row("engine weight", ours, theirs, 0.5)
