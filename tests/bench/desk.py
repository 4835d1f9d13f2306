"""The real window on a wall of many windows, driven by events, and the same window merely repainted."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QImage, QMouseEvent, QPainter, QPaintEvent, QPicture, QWheelEvent
from PySide6.QtWidgets import QApplication

from elevation.handles.model import Handle
from elevation.output.painters.replay import Replay
from elevation.trade.model import Trade
from elevation.window.canvas import Canvas
from elevation.window.settings import Settings
from elevation.window.start import make_app, make_window
from tests.bench.calibration import calibration_picture, replay_calibration
from tests.bench.rooms import windows
from tests.bench.timing import Row, alternate, collecting, once, row

MOVES = 120
GESTURES = (
    ("rod height", "rod-height", (0, -60)),
    ("rod end", "rod-right", (50, 0)),
    ("leading edge", "lead", (60, 0)),
    ("opening side", "opening-right", (40, 0)),
    ("floor station", "floor", (0, -30)),
)


HAND_PX_PER_MM = 0.08
"""Four windows fill the canvas at about this scale: all drags are done from there."""


class Desk:
    """A shown window, 1400 x 900, on ``count`` dressed windows."""

    def __init__(self, count: int, trade: Trade, folder: Path) -> None:
        self.app = make_app()
        self.window = make_window(windows(count), trade, settings=Settings(folder / "bench.ini"))
        self.window.resize(1400, 900)
        self.window.show()
        self.settle()
        self.canvas: Canvas = self.window.canvas
        self._picture = QPicture()
        self._panned = 0.0

    def settle(self) -> None:
        """Let everything that was asked for happen, paints included."""
        for _ in range(3):
            QApplication.processEvents()

    def close(self) -> None:
        """Close without being asked to save."""
        session = self.window.session
        while session.undo_label is not None:
            session.undo()
        self.window.close()
        self.window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    def handle(self, axis: str) -> Handle:
        """The first handle of that axis, by its place from the left."""
        found = [handle for handle in self.canvas.handles() if handle.axis == axis]
        return min(found, key=lambda handle: handle.at[0])

    def near(self, handle: Handle) -> tuple[float, float]:
        """Look at the wall from where a hand would take the handle, not from so far that a pixel is a foot; its pixel."""
        self.canvas.fit()
        place = self.canvas.viewport.to_px(handle.at)
        if self.canvas.viewport.px_per_mm < HAND_PX_PER_MM:
            self.canvas.zoom(HAND_PX_PER_MM / self.canvas.viewport.px_per_mm, *place)
        self.settle()
        return place

    def mouse(self, kind: QEvent.Type, x: float, y: float) -> None:
        """One event of the left button at a pixel of the canvas, and all that follows from it."""
        place = QPointF(x, y)
        pressed = kind != QEvent.Type.MouseButtonRelease
        button = Qt.MouseButton.NoButton if kind == QEvent.Type.MouseMove else Qt.MouseButton.LeftButton
        buttons = Qt.MouseButton.LeftButton if pressed else Qt.MouseButton.NoButton
        everywhere = self.canvas.mapToGlobal(place)
        event = QMouseEvent(kind, place, everywhere, button, buttons, Qt.KeyboardModifier.NoModifier)
        QApplication.sendEvent(self.canvas, event)
        QApplication.processEvents()

    def wheel(self, steps: int, x: float, y: float) -> None:
        """One turn of the wheel at a pixel of the canvas, painted."""
        place = QPointF(x, y)
        event = QWheelEvent(
            place,
            self.canvas.mapToGlobal(place),
            QPoint(0, 0),
            QPoint(0, 120 * steps),
            Qt.MouseButton.NoButton,
            Qt.KeyboardModifier.NoModifier,
            Qt.ScrollPhase.NoScrollPhase,
            False,
        )
        QApplication.sendEvent(self.canvas, event)
        QApplication.processEvents()

    def pan(self, dx: float) -> None:
        """Drag the whole view from where it was taken to ``dx`` further right with the middle button, painted."""
        middle, none = Qt.MouseButton.MiddleButton, Qt.MouseButton.NoButton
        start, end = QPointF(500.0, 400.0), QPointF(500.0 + dx - self._panned, 400.0)
        self._panned = dx
        for kind, place, button, buttons in (
            (QEvent.Type.MouseButtonPress, start, middle, middle),
            (QEvent.Type.MouseMove, end, none, middle),
            (QEvent.Type.MouseButtonRelease, end, middle, none),
        ):
            everywhere = self.canvas.mapToGlobal(place)
            event = QMouseEvent(kind, place, everywhere, button, buttons, Qt.KeyboardModifier.NoModifier)
            QApplication.sendEvent(self.canvas, event)
        QApplication.processEvents()

    def record(self) -> None:
        """Keep what the canvas shows just now as one picture of Qt's."""
        self._picture = QPicture()
        painter = QPainter(self._picture)
        groups = self.canvas.picture.groups(self.canvas.viewport, self.canvas.shown)
        Replay().paint(groups, painter, self.canvas.viewport.placing)
        painter.end()

    @contextmanager
    def recorded(self) -> Iterator[None]:
        """The canvas paints that picture and nothing else."""
        picture, canvas = self._picture, self.canvas

        def paint(event: QPaintEvent) -> None:
            painter = QPainter(canvas)
            painter.fillRect(event.rect(), canvas.desk())
            painter.drawPicture(0, 0, picture)
            painter.end()

        # On the object, not on its class: Qt's wrapper does not look at the class a second time.
        canvas.paintEvent = paint  # type: ignore[method-assign]
        try:
            yield
        finally:
            del canvas.paintEvent

    def repainted(self) -> float:
        """The reference: ms to paint the whole window again, nothing worked out, the canvas from that picture."""
        with self.recorded():
            # A window's own repaint leaves opaque parts out, the canvas first of all, unless they are due as well.
            self.canvas.update()
            for drawer in self.window.drawers:
                drawer.area.viewport().update()
                drawer.content.update()
            return once(self.window.repaint)


def drag(count: int, trade: Trade, folder: Path, at_most: float, moves: int = MOVES) -> list[Row]:
    """Five gestures; each move from its event to the end of the paint that shows it."""
    desk = Desk(count, trade, folder)
    with collecting():
        rows = [_gesture(desk, count, gesture, at_most, moves) for gesture in GESTURES]
    desk.close()
    return rows


def _gesture(desk: Desk, count: int, gesture: tuple[str, str, tuple[int, int]], at_most: float, moves: int) -> Row:
    name, axis, way = gesture
    handle = desk.handle(axis)
    x, y = desk.near(handle)
    desk.record()
    desk.mouse(QEvent.Type.MouseButtonPress, x, y)
    ours, theirs, still = [], [], 0
    before = desk.window.session.room
    for move in range(4 * moves + 5):
        part = ((move * 7) % 60) / 60
        went = once(partial(desk.mouse, QEvent.Type.MouseMove, x + way[0] * part, y + way[1] * part))
        seen = desk.repainted()
        now = desk.window.session.room
        # A move that sticks where it was costs next to nothing; only those that change the room count.
        if move >= 5 and now != before:
            ours.append(went)
            theirs.append(seen)
        still += now == before
        before = now
        if len(ours) == moves:
            break
    desk.mouse(QEvent.Type.MouseButtonRelease, x, y)
    desk.settle()
    note = f"{len(ours)} moves that changed the room; {still} stuck, left out"
    return row(f"drag, {count} windows: {name}", ours, theirs, at_most, note)


def zoom(trade: Trade, folder: Path, runs: int) -> Row:
    """One wheel step to paint, four windows."""
    desk = Desk(4, trade, folder)
    desk.record()
    ours, theirs = [], []
    for turn in range(runs + 5):
        went = once(partial(desk.wheel, 1 if turn % 2 == 0 else -1, 500, 400))
        seen = desk.repainted()
        if turn >= 5:
            ours.append(went)
            theirs.append(seen)
    desk.close()
    return row("zoom step", ours, theirs, 2)


def picture_weight(trade: Trade, folder: Path, runs: int) -> Row:
    """Replay of the four-window picture over replay of the yardstick."""
    desk = Desk(4, trade, folder)
    groups = desk.canvas.picture.groups(desk.canvas.viewport, desk.canvas.shown)
    placing, replay = desk.canvas.viewport.placing, Replay()
    image = QImage(1400, 900, QImage.Format.Format_ARGB32_Premultiplied)
    yardstick = calibration_picture()

    def ours() -> None:
        painter = QPainter(image)
        replay.paint(groups, painter, placing)
        painter.end()

    work, reference = alternate(ours, lambda: replay_calibration(yardstick, image), runs)
    desk.close()
    return row("picture weight", work, reference, 3, f"{sum(len(group.records) for group in groups)} records")
