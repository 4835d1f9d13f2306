"""Which wall, in which scheme."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from elevation.room.called import scheme_title
from elevation.room.find import wall_of
from elevation.session.session import Session
from elevation.window.choice import Choice
from elevation.window.texts import tr
from elevation.words import msg


class Switchers(QWidget):
    """Two choices side by side."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.wall = Choice(tr(msg("Wall")))
        self.scheme = Choice(tr(msg("Scheme")))
        box = QHBoxLayout(self)
        box.setContentsMargins(6, 0, 6, 0)
        box.setSpacing(6)
        # Schemes are told apart by longer names than walls.
        for name, choice, letters in ((tr(msg("Wa&ll")), self.wall, 16), (tr(msg("S&cheme")), self.scheme, 22)):
            label = QLabel(name, self)
            label.setBuddy(choice)
            choice.setMinimumContentsLength(letters)
            box.addWidget(label)
            box.addWidget(choice)
        self.wall.chosen.connect(session.switch_wall)
        self.scheme.chosen.connect(session.switch_scheme)
        self.refresh()

    def refresh(self) -> None:
        """Offer what the room has."""
        room = self._session.committed
        walls = [
            (wall.id, tr(msg("{number}  {name}", number=number, name=wall.name or tr(msg("Wall")))))
            for number, wall in enumerate(room.walls, 1)
        ]
        self.wall.offer(walls, self._session.wall_id)
        if not self._session.wall_id:
            return
        schemes = [
            (scheme.id, tr(scheme_title(scheme, number)))
            for number, scheme in enumerate(wall_of(room, self._session.wall_id).schemes, 1)
        ]
        self.scheme.offer(schemes, self._session.scheme_id or "")
        self.scheme.setEnabled(bool(schemes))
