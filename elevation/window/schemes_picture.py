"""Schemes painted beside each other at one scale, or one over another with a line between before and after."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from elevation.output.painters.replay import Placing, Replay
from elevation.setting_out.model import SetOut
from elevation.sheet.inks import colour
from elevation.sheet.records import Group, Ink
from elevation.window.texts import tr
from elevation.window.theme import Theme
from elevation.words import msg

_PX_PER_PAPER_MM = 96 / 25.4
_EDGE, _GAP, _TITLE = 14.0, 14.0, 26.0
_STEP = 0.05


class Drawn(Struct, frozen=True):
    """One scheme as it is painted."""

    name: str
    set_out: SetOut
    groups: tuple[Group, ...]


class SchemesPicture(QWidget):
    """Two to four walls to one scale.

    Attributes
    ----------
    chosen : Signal(int)
        A scheme was chosen by mouse or key.
    """

    chosen = Signal(int)

    def __init__(self, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.theme = theme
        self.schemes: tuple[Drawn, ...] = ()
        self.current = 0
        self.is_before_after = False
        self.share = 0.5
        self._replay = Replay()
        self._is_pulled = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(360, 200)
        self.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        self.setAccessibleName(tr(msg("Schemes at one scale")))

    def sizeHint(self) -> QSize:
        """Wide rather than high."""
        return QSize(900, 320)

    def show_schemes(self, schemes: Sequence[Drawn], current: int) -> None:
        """Show these; ``current`` is framed."""
        self.schemes = tuple(schemes)
        self.current = min(max(current, 0), max(len(self.schemes) - 1, 0))
        self._tell()

    def show_before_after(self, is_shown: bool) -> None:
        """One over the other, or side by side."""
        self.is_before_after = is_shown
        self._tell()

    def set_share(self, share: float) -> None:
        """How much of the wall's width shows what was before, 0 to 1."""
        self.share = min(max(share, 0.0), 1.0)
        self.update()

    def _tell(self) -> None:
        names = [one.name for one in self.schemes]
        if self.is_before_after and len(names) > 1:
            text = tr(msg("Before: {before}. After: {after}. Arrow keys move the line.", before=names[0], after=names[-1]))
        else:
            text = ", ".join(names)
        self.setAccessibleDescription(text)
        self.update()

    # -- where things stand ------------------------------------------------------------

    def scale(self) -> float:
        """Pixels for one mm of wall: the same for all that is shown."""
        if not self.schemes:
            return 0.0
        return self._scale_in(self.columns())

    def columns(self) -> int:
        """How many walls stand in a row: as many as give the largest drawing; wide walls stand over one another."""
        ways = range(self._count(), 0, -1)
        return max(ways, key=self._scale_in, default=1)

    def _count(self) -> int:
        return 1 if self.is_before_after else len(self.schemes)

    def _scale_in(self, columns: int) -> float:
        rows = -(-self._count() // columns)
        wide = (self.width() - 2 * _EDGE - (columns - 1) * _GAP) / columns
        high = (self.height() - 2 * _EDGE - (rows - 1) * _GAP) / rows - self._title_px()
        across, tall = _size(self.schemes[0].set_out)
        return max(min(wide / across, high / tall), 0.001)

    def _title_px(self) -> float:
        """Room for a name of two lines over each wall: what is proposed says in its name what it trades."""
        return max(_TITLE, 2.0 * QFontMetricsF(self._bold()).lineSpacing() + 6.0)

    def _bold(self) -> QFont:
        font = QFont(self.font())
        font.setWeight(QFont.Weight.DemiBold)
        return font

    def tiles(self) -> tuple[QRectF, ...]:
        """Where each wall stands, in pixels; one tile for before and after."""
        if not self.schemes:
            return ()
        count, columns, title = self._count(), self.columns(), self._title_px()
        rows, scale = -(-count // columns), self._scale_in(columns)
        across, tall = (part * scale for part in _size(self.schemes[0].set_out))
        step = title + tall + _GAP
        left = (self.width() - columns * across - (columns - 1) * _GAP) / 2
        top = (self.height() - rows * step + _GAP) / 2 + title
        places = (divmod(at, columns) for at in range(count))
        return tuple(QRectF(left + column * (across + _GAP), top + row * step, across, tall) for row, column in places)

    # -- painting ----------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """The walls, their names over them."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self.theme.desk))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tiles = self.tiles()
        if self.is_before_after and len(self.schemes) > 1:
            self._paint_over(painter, tiles[0])
        else:
            for index, (tile, one) in enumerate(zip(tiles, self.schemes, strict=False)):
                self._paint_wall(painter, tile, one)
                high = self._title_px()
                self._name(painter, QRectF(tile.left(), tile.top() - high, tile.width(), high - 6.0), one.name, "middle")
                if index == self.current and len(self.schemes) > 1:
                    painter.setPen(QPen(QColor(self.theme.held), 3 if self.hasFocus() else 2))
                    painter.setBrush(Qt.BrushStyle.NoBrush)
                    painter.drawRect(tile.adjusted(-5, -5, 5, 5))
        painter.end()

    def _paint_over(self, painter: QPainter, tile: QRectF) -> None:
        before, after = self.schemes[0], self.schemes[-1]
        line = tile.left() + self.share * tile.width()
        around = QRectF(self.rect())
        for one, left, right in ((before, around.left(), line), (after, line, around.right())):
            painter.save()
            painter.setClipRect(QRectF(left, around.top(), max(right - left, 0.0), around.height()))
            self._paint_wall(painter, tile, one)
            painter.restore()
        half = tile.width() / 2 - _GAP / 2
        high = self._title_px()
        self._name(painter, QRectF(tile.left(), tile.top() - high, half, high - 6.0), before.name, "left")
        self._name(painter, QRectF(tile.right() - half, tile.top() - high, half, high - 6.0), after.name, "right")
        painter.setPen(QPen(QColor(colour(Ink.PAPER)), 4))
        painter.drawLine(round(line), round(tile.top()), round(line), round(tile.bottom()))
        painter.setPen(QPen(QColor(self.theme.held), 2))
        painter.drawLine(round(line), round(tile.top()) - 4, round(line), round(tile.bottom()) + 4)
        painter.setBrush(QColor(colour(Ink.PAPER)))
        painter.drawEllipse(QRectF(line - 7, tile.center().y() - 7, 14, 14))

    def _paint_wall(self, painter: QPainter, tile: QRectF, one: Drawn) -> None:
        scale = self.scale()
        low, _ = _heights(one.set_out)
        base = tile.bottom() + low * scale
        placing = Placing(min(_PX_PER_PAPER_MM, scale * 48.0), scale, tile.left(), base, tile.left(), base)
        painter.save()
        painter.fillRect(tile, QColor(colour(Ink.PAPER)))
        self._replay.paint(one.groups, painter, placing)
        painter.restore()

    def _name(self, painter: QPainter, place: QRectF, text: str, align: str) -> None:
        painter.setFont(self._bold())
        painter.setPen(QColor(self.theme.ink))
        # Two lines hold a little less than twice the width: a word is not parted.
        text = QFontMetricsF(self._bold()).elidedText(text, Qt.TextElideMode.ElideRight, place.width() * 1.7)
        flag = {"left": Qt.AlignmentFlag.AlignLeft, "middle": Qt.AlignmentFlag.AlignHCenter}.get(
            align, Qt.AlignmentFlag.AlignRight
        )
        painter.drawText(place, int(flag | Qt.AlignmentFlag.AlignBottom) | int(Qt.TextFlag.TextWordWrap), text)

    # -- hands -------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose a wall, or take the line."""
        if self.is_before_after:
            self._is_pulled = True
            self._pull(event.position().x())
            return
        for index, tile in enumerate(self.tiles()):
            if tile.adjusted(-5, -self._title_px(), 5, 5).contains(event.position()):
                self._choose(index)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The line follows."""
        if self._is_pulled:
            self._pull(event.position().x())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let the line go."""
        del event
        self._is_pulled = False

    def _pull(self, x: float) -> None:
        tile = self.tiles()[0] if self.schemes else QRectF()
        if tile.width() > 0:
            self.set_share((x - tile.left()) / tile.width())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows choose the next wall, or move the line."""
        row = 0 if self.is_before_after else self.columns()
        ways = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1, Qt.Key.Key_Down: row, Qt.Key.Key_Up: -row}
        way = ways.get(Qt.Key(event.key()))
        if way is None:
            super().keyPressEvent(event)
        elif self.is_before_after:
            self.set_share(self.share + way * _STEP)
        else:
            self._choose(self.current + way)

    def _choose(self, index: int) -> None:
        if 0 <= index < len(self.schemes):
            self.current = index
            self.chosen.emit(index)
            self.update()


def _heights(wall: SetOut) -> tuple[float, float]:
    return min(0.0, *(y for _, y in wall.floor.points)), max(y for _, y in wall.ceiling.points)


def _size(wall: SetOut) -> tuple[float, float]:
    low, high = _heights(wall)
    return max(wall.width_mm, 1.0), max(high - low, 1.0)
