"""The elevation as PDF, against the same picture recorded by Qt and replayed."""

from __future__ import annotations

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF
from PySide6.QtGui import QPageSize, QPainter, QPdfWriter, QPicture

from elevation.commands.draw import picture_of
from elevation.output.painters.pdf import to_pdf
from elevation.output.painters.replay import replay
from elevation.sheet.records import Picture
from elevation.trade.model import Trade
from tests.bench.rooms import windows
from tests.bench.timing import Row, alternate, row

_DPI = 1200


def _recorded(picture: Picture) -> QPicture:
    recorded = QPicture()
    painter = QPainter(recorded)
    replay(picture, painter, 96 / 25.4)
    painter.end()
    return recorded


def _replayed(recorded: QPicture) -> bytes:
    kept = QByteArray()
    buffer = QBuffer(kept)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(_DPI)
    writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
    writer.setPageMargins(QMarginsF(0, 0, 0, 0))
    painter = QPainter(writer)
    # Qt replays a QPicture scaled by the ratio of the two resolutions, so mm come out true by themselves.
    painter.drawPicture(0, 0, recorded)
    painter.end()
    return bytes(kept.data())


def paper(trade: Trade, runs: int) -> Row:
    """One elevation of four windows."""
    room = windows(4)
    picture = picture_of(room, room.walls[0], room.walls[0].schemes[0], trade)
    recorded = _recorded(picture)
    ours, theirs = alternate(lambda: to_pdf([picture]), lambda: _replayed(recorded), runs)
    return row("PDF", ours, theirs, 2)
