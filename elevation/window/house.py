"""A house at a glance: every wall of every room of a folder, small, with what is wrong and what is not measured."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QDialog, QFileDialog, QLabel, QListView, QListWidget, QListWidgetItem, QVBoxLayout

from elevation.errors import ElevationError
from elevation.output.painters.replay import replay
from elevation.planning.house import WallLooked, counts_of, look, rooms_in
from elevation.room.find import wall_of
from elevation.sheet.inks import colour
from elevation.sheet.records import Ink
from elevation.sheet.small import small_elevation
from elevation.window.flag import Flag
from elevation.window.on_screen import resize_on_screen
from elevation.window.texts import tr, tr_whole_error
from elevation.window.theme import make_quiet
from elevation.words import msg, msg_plural

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow

TILE = QSize(264, 166)
_PX_PER_MM = 96 / 25.4
_WALL = Qt.ItemDataRole.UserRole


class House(QDialog):
    """The overview; a wall that is clicked opens in the window.

    Raises BadInput where the folder holds no room.
    """

    def __init__(self, folder: Path, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._trade = window.session.trade
        self._paths = rooms_in(folder)
        self._rest: Iterator[WallLooked] = iter(())
        self.walls: list[WallLooked] = []
        self.setWindowTitle(tr(msg("House: {name}", name=folder.resolve().name)))
        self.total = QLabel(self)
        self.total.setTextFormat(Qt.TextFormat.PlainText)
        make_quiet(self.total)
        self.tiles = QListWidget(self)
        self.tiles.setViewMode(QListView.ViewMode.IconMode)
        self.tiles.setIconSize(TILE)
        self.tiles.setGridSize(QSize(TILE.width() + 24, TILE.height() + 66))
        self.tiles.setMovement(QListView.Movement.Static)
        self.tiles.setResizeMode(QListView.ResizeMode.Adjust)
        self.tiles.setWordWrap(True)
        self.tiles.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.tiles.setAccessibleName(tr(msg("Walls of the house")))
        self.tiles.itemClicked.connect(self._choose)
        self.tiles.itemActivated.connect(self._choose)
        self.every = Flag(tr(msg("Every scheme of each wall")), self)
        self.every.setChecked(False)
        self.every.toggled.connect(self.begin)
        box = QVBoxLayout(self)
        box.addWidget(self.total)
        box.addWidget(self.every)
        box.addWidget(self.tiles, 1)
        resize_on_screen(self, 940, 660)
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self.look_at_next)
        self.begin()

    def begin(self) -> None:
        """Look at the house from its first wall on."""
        every = self.every.isChecked()
        self._rest = (wall for path in self._paths for wall in look(path, self._trade, every_scheme=every))
        self.walls = []
        self.tiles.clear()
        self._timer.start()
        self._say()

    def look_at_next(self) -> None:
        """Look at one wall more; the window answers between two."""
        wall = next(self._rest, None)
        if wall is None:
            self._timer.stop()
            return
        self.walls.append(wall)
        item = QListWidgetItem(self._icon(wall), _text(wall))
        item.setData(_WALL, len(self.walls) - 1)
        item.setTextAlignment(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop)
        item.setToolTip(tr_whole_error(wall.error) if wall.error is not None else str(wall.path))
        self.tiles.addItem(item)
        self._say()

    def finish(self) -> None:
        """Look at all that is left, at once."""
        while self._timer.isActive():
            self.look_at_next()

    def _icon(self, wall: WallLooked) -> QIcon:
        ratio = self.devicePixelRatioF()
        pixmap = QPixmap(TILE * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(QColor(colour(Ink.PAPER)))
        if wall.set_out is not None and wall.trade is not None:
            picture = small_elevation(wall.set_out, wall.trade, TILE.width() / _PX_PER_MM, TILE.height() / _PX_PER_MM)
            painter = QPainter(pixmap)
            replay(picture, painter, _PX_PER_MM)
            painter.end()
        icon = QIcon(pixmap)
        # A tile that is chosen keeps its colours.
        icon.addPixmap(pixmap, QIcon.Mode.Selected)
        return icon

    def _choose(self, item: QListWidgetItem) -> None:
        wall = self.walls[item.data(_WALL)]
        if wall.set_out is not None:
            self.walk_to(wall.path, wall.set_out.wall, wall.set_out.scheme)

    def walk_to(self, path: Path, wall_id: str, scheme_id: str | None = None) -> None:
        """Open the room where it is not open already, and turn to the wall in the scheme that was shown."""
        session = self._window.session
        if session.path is None or session.path.resolve() != path.resolve():
            before = session.committed
            self._window.files.open(path)
            if session.committed is before:
                return  # Somebody wanted to keep what was open.
        if any(wall.id == wall_id for wall in session.committed.walls):
            session.switch_wall(wall_id)
            if any(scheme.id == scheme_id for scheme in wall_of(session.committed, wall_id).schemes):
                session.switch_scheme(str(scheme_id))
            self._window.activateWindow()

    def _say(self) -> None:
        walls = [wall for wall in self.walls if wall.set_out is not None]
        rooms = len({wall.path for wall in self.walls})
        places = {(wall.path, wall.set_out.wall) for wall in walls if wall.set_out is not None}
        self.total.setText(
            tr(
                msg(
                    "{rooms}, {walls}. {counts}. Click a wall to walk to it.",
                    rooms=msg_plural("{count} room", "{count} rooms", count=rooms),
                    walls=msg_plural("{count} wall", "{count} walls", count=len(places)),
                    counts=counts_of(
                        sum(wall.stops for wall in walls),
                        sum(wall.broken for wall in walls),
                        sum(wall.advice for wall in walls),
                        sum(wall.missing for wall in walls),
                    ),
                )
            )
        )


def _text(wall: WallLooked) -> str:
    if wall.set_out is None:
        return tr(msg("{room}\ncannot be read", room=wall.room_name))
    place = msg("{room}, {wall}", room=wall.room_name, wall=wall.set_out.wall_name or wall.set_out.wall)
    if wall.set_out.scheme_name:
        place = msg("{place}: {scheme}", place=place, scheme=wall.set_out.scheme_name)
    return tr(
        msg(
            "{place}\n{counts}",
            place=place,
            counts=counts_of(wall.stops, wall.broken, wall.advice, wall.missing),
        )
    )


def open_house(window: MainWindow) -> None:
    """Ask for a folder and show its rooms; a wall that is chosen opens in the window."""
    path = window.session.path
    start = str(path.parent) if path is not None else str(Path.home())
    name = QFileDialog.getExistingDirectory(window, tr(msg("Open a house: the folder of its rooms")), start)
    if name:
        show_house(window, Path(name))


def show_house(window: MainWindow, folder: Path) -> House | None:
    """The overview of a folder over the window; None where there is nothing to show, which is said."""
    try:
        house = House(folder, window)
    except ElevationError as error:
        window.tell(tr_whole_error(error))
        return None
    house.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    house.show()
    return house
