"""No hitch: the longest of many frames against the median one, what the collector does in between included."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QEvent

from elevation.trade.model import Trade
from tests.bench.desk import GESTURES, Desk
from tests.bench.timing import Row, collecting

AT_MOST = 4.0
WARM = 5
_BACK_AND_FORTH = 60


class Frames:
    """Times of frames, on the clock and of the processor.

    The row compares the processor's own times: on a machine that others use as well, the clock's longest frame is mostly
    one in which somebody else had the processor. The clock's figure stands in the note.
    """

    def __init__(self) -> None:
        self.clock: list[float] = []
        self.busy: list[float] = []

    def time(self, work: Callable[[], object]) -> None:
        """Run one frame and keep its times, ms."""
        clock, busy = time.perf_counter(), time.thread_time()
        work()
        self.busy.append((time.thread_time() - busy) * 1000)
        self.clock.append((time.perf_counter() - clock) * 1000)

    def drop(self) -> None:
        """Forget the last frame: it showed nothing new."""
        self.busy.pop()
        self.clock.pop()

    def row(self, name: str) -> Row:
        """The longest frame over the median one."""
        median = statistics.median(self.busy)
        by_clock = max(self.clock) / statistics.median(self.clock)
        place = self.busy.index(max(self.busy))
        note = f"{len(self.busy)} frames; the longest, number {place + 1}, {by_clock:.1f} by the clock"
        return Row(name, max(self.busy), median, AT_MOST, statistics.quantiles(self.busy, n=20)[-1] / median, note)


def hitches(count: int, trade: Trade, folder: Path, frames: int) -> list[Row]:
    """Rows of dragging, zooming and panning over ``count`` windows, ``frames`` frames each."""
    desk = Desk(count, trade, folder)
    with collecting():
        rows = [_drag(desk, frames, count), _zoom(desk, frames // 4, count), _pan(desk, frames // 4, count)]
    desk.close()
    return rows


def _drag(desk: Desk, frames: int, count: int) -> Row:
    """All gestures, an equal share each; each gesture's frames in units of its own median, so that none hides another."""
    worst: Row | None = None
    every = 0
    for name, axis, way in GESTURES:
        x, y = desk.near(desk.handle(axis))
        desk.mouse(QEvent.Type.MouseButtonPress, x, y)
        kept, before = Frames(), desk.window.session.room
        for move in range(3 * frames):
            part = ((move * 7) % _BACK_AND_FORTH) / _BACK_AND_FORTH
            kept.time(partial(desk.mouse, QEvent.Type.MouseMove, x + way[0] * part, y + way[1] * part))
            now = desk.window.session.room
            # A move that sticks where it was costs next to nothing and would only make the median small.
            if move < WARM or now == before:
                kept.drop()
            before = now
            if len(kept.busy) == frames // len(GESTURES):
                break
        desk.mouse(QEvent.Type.MouseButtonRelease, x, y)
        desk.settle()
        every += len(kept.busy)
        made = kept.row(f"hitch, drag, {count} windows")
        if worst is None or made.ratio > worst.ratio:
            worst = made
            gesture = name
    assert worst is not None
    return Row(
        worst.name, worst.work_ms, worst.reference_ms, AT_MOST, worst.p95, f"{every} frames; worst {gesture}: {worst.note}"
    )


def _zoom(desk: Desk, frames: int, count: int) -> Row:
    desk.canvas.fit()
    desk.settle()
    kept = Frames()
    for turn in range(frames + WARM):
        # Six steps in, six out.
        kept.time(partial(desk.wheel, 1 if turn % 12 < 6 else -1, 500, 400))
        if turn < WARM:
            kept.drop()
    return kept.row(f"hitch, zoom, {count} windows")


def _pan(desk: Desk, frames: int, count: int) -> Row:
    desk.canvas.fit()
    for _ in range(6):
        desk.wheel(1, 500, 400)
    desk.settle()
    kept = Frames()
    for turn in range(frames + WARM):
        far = turn % _BACK_AND_FORTH
        dx = 20.0 * (far if far < _BACK_AND_FORTH / 2 else _BACK_AND_FORTH - far)
        kept.time(partial(desk.pan, dx))
        if turn < WARM:
            kept.drop()
    return kept.row(f"hitch, pan, {count} windows")
