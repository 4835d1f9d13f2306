"""What stands still during a drag, kept as pixels: only groups that change are painted again.

The groups of a picture are painted back to front, and those that a drag changes lie among many that it leaves
alone. Each run of the latter becomes one transparent layer, so that a frame paints a few layers and the changed
groups between them, in the same order as before.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QWidget

from elevation.output.painters.replay import Placing, Replay
from elevation.room.model import Ref
from elevation.sheet.records import Group

WORTH_KEEPING = 60
"""Records in a run from which a layer is quicker than painting them again."""

_Key = tuple[str, Ref]


class _Layer(Struct, frozen=True):
    groups: tuple[Group, ...]
    pixels: QPixmap


class StandingLayers:
    """Layers for one drag at one placing.

    Parameters
    ----------
    canvas : QWidget
        Its size and its pixel ratio are those of the layers.
    placing : Placing
    before : sequence of Group
        What was painted last: what is another object now is changing.

    Attributes
    ----------
    painted : int
        How many records were really painted so far, into layers or between them.
    """

    def __init__(self, canvas: QWidget, placing: Placing, before: Sequence[Group]) -> None:
        self.placing = placing
        self.painted = 0
        self._canvas = canvas
        self._known = {id(group): group for group in before}
        self._changing: set[_Key] = set()
        self._layers: dict[int, _Layer] = {}

    def paint(self, groups: Sequence[Group], painter: QPainter, replay: Replay) -> None:
        """Paint ``groups`` in their order.

        Parameters
        ----------
        groups : sequence of Group
        painter : QPainter
            On the canvas.
        replay : Replay
        """
        # Whatever changed once during a drag is likely to change again and is not kept any more.
        self._changing.update(_key(group) for group in groups if id(group) not in self._known)
        self._known = {id(group): group for group in groups}
        layers = {}
        if not self._changing:
            self._replay(groups, painter, replay)
            return
        for run in _runs(groups, lambda group: _key(group) in self._changing):
            if _key(run[0]) in self._changing or sum(len(group.records) for group in run) < WORTH_KEEPING:
                self._replay(run, painter, replay)
                continue
            layer = self._layers.get(id(run[0]))
            if layer is None or not _are_same(layer.groups, run):
                layer = _Layer(tuple(run), self._pixels(run, replay))
            layers[id(run[0])] = layer
            painter.drawPixmap(0, 0, layer.pixels)
        self._layers = layers

    def _replay(self, run: Sequence[Group], painter: QPainter, replay: Replay) -> None:
        replay.paint(run, painter, self.placing, (self._canvas.width(), self._canvas.height()))
        self.painted += sum(len(group.records) for group in run)

    def _pixels(self, run: Sequence[Group], replay: Replay) -> QPixmap:
        ratio = self._canvas.devicePixelRatioF()
        pixels = QPixmap(round(self._canvas.width() * ratio), round(self._canvas.height() * ratio))
        pixels.setDevicePixelRatio(ratio)
        pixels.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixels)
        self._replay(run, painter, replay)
        painter.end()
        return pixels


def _key(group: Group) -> _Key:
    return group.layer, group.ref


def _are_same(some: Sequence[Group], others: Sequence[Group]) -> bool:
    return len(some) == len(others) and all(one is other for one, other in zip(some, others, strict=True))


def _runs(groups: Sequence[Group], is_changing: Callable[[Group], bool]) -> list[list[Group]]:
    """Neighbours that all change or all stand still."""
    runs: list[list[Group]] = []
    before: bool | None = None
    for group in groups:
        now = is_changing(group)
        if now != before:
            runs.append([])
            before = now
        runs[-1].append(group)
    return runs
