"""The same again, from the menus: a wall, a window, a treatment; same as; all rods at one height."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog

from elevation.errors import ElevationError
from elevation.findings.naming import where
from elevation.planning.copies import bare_openings, duplicate_opening, duplicate_treatment, duplicate_wall, same_as
from elevation.planning.one_height import level_rods
from elevation.room.find import has, wall_of
from elevation.room.model import Ref
from elevation.room.validate import check_room
from elevation.setting_out.model import TreatmentOut
from elevation.window.measurements import error_sentence
from elevation.window.texts import tr
from elevation.words import msg

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow
    from elevation.window.same_as import SameAs


class Copying:
    """Slots of the commands that carry one thing to others."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._session = window.session

    def slots(self) -> dict[str, Callable[[], None]]:
        """The commands by name."""
        return {
            "duplicate-wall": self.duplicate_wall,
            "duplicate-opening": self.duplicate_opening,
            "duplicate-treatment": self.duplicate_treatment,
            "same-as": self.ask_same_as,
            "level-rods": self.level_rods,
        }

    def duplicate_wall(self) -> None:
        """Go on with a copy of the wall."""
        room, session = self._session.committed, self._session
        wall = wall_of(room, session.wall_id)
        made, ref = duplicate_wall(room, wall.id, tr(msg("{name}, again", name=wall.name or wall.id)))
        session.commit(made, msg("Duplicate the wall"), ref)
        session.switch_wall(ref[0])

    def duplicate_opening(self) -> None:
        """A copy of the selected window, with what hangs there, where the wall is free."""
        ref = self.opening()
        if ref is None:
            self._window.tell(tr(msg("There is no window or door on this wall yet.")))
            return
        try:
            made, new = duplicate_opening(self._session.committed, ref, self._session.trade)
        except ElevationError as error:
            self._window.tell(error_sentence(error))
            return
        self._session.commit(made, msg("Duplicate an opening"), new)
        self._session.selection = new

    def duplicate_treatment(self) -> None:
        """A copy of the selected treatment before the nearest opening that has none."""
        source = self.treatment()
        bare = bare_openings(self._session.committed, source.ref) if source is not None else ()
        if source is None or not bare:
            self._window.tell(tr(msg("No opening of this wall is bare. “Same as” carries to openings that are dressed.")))
            return
        made, new = duplicate_treatment(self._session.committed, source.ref, bare[:1], self._session.trade)
        self._session.commit(made, msg("Duplicate the treatment of {where}", where=where(source)), new)
        self._session.selection = new

    def ask_same_as(self) -> None:
        """Ask for windows and parts, and carry what is held there, with one undo."""
        source = self.treatment()
        if source is None:
            self._window.tell(tr(msg("Nothing hangs on this wall yet.")))
            return
        from elevation.window.same_as import SameAs  # Loaded when it is first wanted.

        dialog = SameAs(self._session.committed, source, self._window)
        if dialog.exec() == QDialog.DialogCode.Accepted:
            self.carry(source, dialog)
        dialog.deleteLater()

    def carry(self, source: TreatmentOut, dialog: SameAs) -> None:
        """Carry what was chosen."""
        session = self._session
        made = same_as(session.committed, source.ref, dialog.targets(), session.trade, dialog.parts())
        try:
            check_room(made, "")
        except ElevationError as error:
            # Some parts cannot be without others: a track's brackets on a rod, for example.
            self._window.tell(error_sentence(error))
            return
        if made is session.committed:
            self._window.tell(tr(msg("They are the same already.")))
            return
        session.commit(made, msg("Same as {where}", where=where(source)), source.ref)

    def level_rods(self) -> None:
        """All rods of the room as high as the selected one, and the wish kept."""
        source = self.treatment()
        if source is None:
            self._window.tell(tr(msg("Nothing hangs on this wall yet.")))
            return
        made = level_rods(self._session.committed, source.ref, self._session.trade)
        if made is self._session.committed:
            self._window.tell(tr(msg("All rods of the room stand at this height already.")))
            return
        self._session.commit(made, msg("All rods of the room at one height"), source.ref)

    def treatment(self) -> TreatmentOut | None:
        """The treatment that is meant: the selected one, that of the selected opening, else the wall's first."""
        treatments = self._session.set_out().treatments
        selected = self._session.selection or ()
        for one in treatments:
            if selected[:3] == one.ref or (len(selected) == 2 and any(part.ref == selected for part in one.openings)):
                return one
        return treatments[0] if treatments else None

    def opening(self) -> Ref | None:
        """The opening that is meant: the selected one, that of what is selected, else the wall's first."""
        openings = self._session.set_out().openings
        selected = self._session.selection or ()
        if len(selected) == 2 and any(one.ref == selected for one in openings) and has(self._session.committed, selected):
            return selected
        if len(selected) > 2:
            source = self.treatment()
            if source is not None and source.openings:
                return source.openings[0].ref
        return openings[0].ref if openings else None
