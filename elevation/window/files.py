"""Rooms in and out: new, open, save, revert, recover, export."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from elevation import places
from elevation.errors import BadInput, BadOutput, ElevationError, said
from elevation.room.find import scheme_of, wall_of
from elevation.room.keeping.atomic import write_atomically
from elevation.room.model import Room
from elevation.room.style import style_for
from elevation.session.session import Session
from elevation.session.storage import ChangedOnDisk
from elevation.sheet.records import Picture
from elevation.window.dialogs import Dialogs
from elevation.window.settings import Settings
from elevation.window.shown import Light
from elevation.window.texts import tr, tr_whole_error
from elevation.words import msg

ENDINGS = (".pdf", ".svg", ".png")
PNG_DPI = 200


class Files:
    """What the Room menu does.

    Parameters
    ----------
    session : Session
    settings : Settings
    dialogs : Dialogs
    tell : callable
        Shows a quiet sentence.
    """

    def __init__(self, session: Session, settings: Settings, dialogs: Dialogs, tell: Callable[[str], None]) -> None:
        self._session = session
        self._settings = settings
        self.dialogs = dialogs
        self._tell = tell
        self._drawn_to: Path | None = None
        self.light_shown: Callable[[], Light] = lambda: "drawn"

    @property
    def name(self) -> str:
        """What the room is called, for people."""
        session = self._session
        if session.room.name:
            return session.room.name
        return session.path.name if session.path is not None else tr(msg("This room"))

    def may_leave(self) -> bool:
        """Whether the room may be left: saved, dropped on purpose, or without edits."""
        if not self._session.is_modified:
            return True
        answer = self.dialogs.unsaved(self.name)
        return self.save() if answer == "save" else answer == "discard"

    def begin(self, room: Room) -> None:
        """Work on a new room."""
        self._session.begin(room)

    def ask_open(self) -> None:
        """Ask for a room and open it."""
        if self.may_leave():
            path = self.dialogs.open_room(self._folder())
            if path is not None:
                self._open(path)

    def open(self, path: Path) -> None:
        """Open a room, after asking about edits that are not saved."""
        if self.may_leave():
            self._open(path)

    def _open(self, path: Path) -> None:
        try:
            if path.resolve().is_relative_to(places.demo_rooms().resolve()):
                from elevation.room.file import load_room

                # A demo room is looked at, not written to: saving asks for a place of one's own.
                self._session.begin(load_room(path))
                return
            self._session.open(path)
        except ElevationError as error:
            self._tell(tr_whole_error(error))
            return
        self._settings.remember(path)
        if self._session.storage.is_read_only:
            self._tell(
                tr(msg("{name} is open in another window: here it can be looked at and saved as another.", name=path.name))
            )

    def save(self) -> bool:
        """Save where it was; a new room asks where. True when it is saved."""
        if self._session.path is None or self._session.storage.is_read_only:
            return self.save_as()
        return self._save(None)

    def save_as(self) -> bool:
        """Ask where, and save there."""
        proposal = self._session.path or self._folder() / f"{_file_name(self.name)}.room.json"
        path = self.dialogs.save_as(tr(msg("Save the room")), proposal, tr(msg("Rooms (*.room.json)")))
        if path is None:
            return False
        if not path.name.endswith(".json"):
            path = path.with_name(f"{path.name}.room.json")
        return self._save(path)

    def _save(self, path: Path | None, *, overwrite: bool = False) -> bool:
        try:
            self._session.save(path, overwrite=overwrite)
        except ChangedOnDisk:
            answer = self.dialogs.changed_on_disk(self.name)
            if answer == "overwrite":
                return self._save(path, overwrite=True)
            if answer == "reread":
                self.revert(is_asked=True)
            return False
        except ElevationError as error:
            self._tell(tr_whole_error(error))
            return False
        if self._session.path is not None:
            self._settings.remember(self._session.path)
            self._tell(tr(msg("Saved to {name}.", name=self._session.path.name)))
        return True

    def revert(self, *, is_asked: bool = False) -> None:
        """Back to what is saved, after asking."""
        title, act = tr(msg("Back to what is saved")), tr(msg("&Read it again"))
        text = tr(msg("All edits of {name} since it was saved are dropped. This cannot be undone.", name=self.name))
        if is_asked or not self._session.is_modified or self.dialogs.sure(title, text, act):
            try:
                self._session.revert()
            except ElevationError as error:
                self._tell(tr_whole_error(error))

    def ask_export(self) -> None:
        """Ask where, and draw the wall there as it is shown."""
        wall = wall_of(self._session.room, self._session.wall_id)
        name = _file_name(" ".join(part for part in (self.name, wall.name) if part))
        filters = tr(msg("PDF to print (*.pdf);;Drawing for editing (*.svg);;Picture (*.png)"))
        path = self.dialogs.save_as(tr(msg("Draw to a file")), self._out() / f"{name}.pdf", filters)
        if path is not None:
            self.export(path, self.elevations() if path.suffix.lower() == ".pdf" else [self.elevation()])

    def ask_sections(self) -> None:
        """Ask where, and draw the sections of the wall shown: one through each treatment."""
        wall = wall_of(self._session.room, self._session.wall_id)
        words = (self.name, wall.name, tr(msg("section")))
        name = _file_name(" ".join(part for part in words if part))
        filters = tr(msg("PDF to print (*.pdf);;Drawing for editing (*.svg);;Picture (*.png)"))
        path = self.dialogs.save_as(tr(msg("Sections of the wall")), self._out() / f"{name}.pdf", filters)
        if path is not None:
            self.export(path, self.sections())

    def sections(self) -> list[Picture]:
        """The sheets of the wall shown, cut through each treatment: what is selected first."""
        from elevation.sheet.section_cut import treatment_shown
        from elevation.sheet.section_sheet import section_sheet

        session = self._session
        room, laid = session.committed, session.set_out()
        first = treatment_shown(laid, session.selection)
        others = [one for one in laid.treatments if one is not first]
        findings, style = session.findings(), style_for(room)
        return [section_sheet(room, laid, findings, session.trade, style, one) for one in (first, *others)]

    def ask_measuring_sheet(self) -> None:
        """Ask where, and write the blank measuring sheet of the wall."""
        filters = tr(msg("PDF to print (*.pdf);;Drawing for editing (*.svg);;Picture (*.png)"))
        proposal = self._out() / f"{_file_name(self.name)} {tr(msg('measuring sheet'))}.pdf"
        path = self.dialogs.save_as(tr(msg("Measuring sheet")), proposal, filters)
        if path is not None:
            self.export(path, [self.measuring_sheet()])

    def ask_measurements(self) -> None:
        """Ask where, and write the measuring sheets of all walls with what was measured."""
        from elevation.sheet.measuring import measuring_sheets

        filters = tr(msg("PDF to print (*.pdf)"))
        proposal = self._out() / f"{_file_name(self.name)} {tr(msg('measurements'))}.pdf"
        path = self.dialogs.save_as(tr(msg("Measurements of all walls")), proposal, filters)
        if path is not None:
            room = self._session.committed
            self.export(path, list(measuring_sheets(room, style_for(room), is_filled=True)))

    def elevation(self, wall_id: str | None = None) -> Picture:
        """The sheet of a wall (the one shown by default, in the scheme shown), in the light that is shown."""
        from elevation.sheet.elevation import elevation_sheet

        session = self._session
        room = session.committed
        wall = wall_of(room, wall_id or session.wall_id)
        is_shown = wall.id == session.wall_id
        scheme = scheme_of(room, wall.id, session.scheme_id if is_shown else None)
        scheme_id = scheme.id if scheme is not None else None
        set_out = session.pipeline.set_out_of(room, wall.id, scheme_id)
        findings = session.pipeline.findings_of(room, wall.id, scheme_id)
        shown = self.light_shown()
        light = None if shown == "drawn" else shown
        return elevation_sheet(room, set_out, findings, session.trade, style_for(room), light=light)

    def elevations(self) -> list[Picture]:
        """A sheet for every wall of the room."""
        return [self.elevation(wall.id) for wall in self._session.committed.walls]

    def measuring_sheet(self) -> Picture:
        """The blank measuring sheet of the wall shown."""
        from elevation.sheet.measuring import measuring_sheet

        room = self._session.committed
        return measuring_sheet(room, wall_of(room, self._session.wall_id), style_for(room))

    def export(self, path: Path, pictures: list[Picture]) -> bool:
        """Write pictures to a file; its ending picks the format. True when it is written."""
        try:
            write_atomically(path, _bytes_of(path, pictures))
        except (BadInput, BadOutput) as error:
            self._tell(tr_whole_error(error))
            return False
        self.went_to(path)
        self._tell(tr(msg("Drawn to {name}.", name=str(path))))
        return True

    def propose(self, parts: list[str], ending: str) -> Path:
        """A file beside the room, named by ``parts``."""
        return self._out() / f"{_file_name(' '.join(part for part in parts if part))}{ending}"

    def went_to(self, path: Path) -> None:
        """Remember where drawings go, until the window is closed."""
        self._drawn_to = path.parent

    def _out(self) -> Path:
        return self._drawn_to or self._folder()

    def _folder(self) -> Path:
        if self._session.path is not None:
            return self._session.path.parent
        recent = self._settings.recent
        return recent[0].parent if recent else Path.home()


def _bytes_of(path: Path, pictures: list[Picture]) -> bytes:
    ending = path.suffix.lower()
    if ending == ".svg":
        from elevation.output.svg import to_svg

        return to_svg(pictures[0])
    if ending == ".png":
        from elevation.output.painters.png import to_png

        return to_png(pictures[0], PNG_DPI)
    if ending == ".pdf":
        from elevation.output.painters.pdf import to_pdf

        return to_pdf(pictures)
    raise BadOutput(path.name, "", said("has no known ending"), said("use {choices}", choices=", ".join(ENDINGS)))


def _file_name(text: str) -> str:
    """Text that may stand in a file's name everywhere."""
    kept = "".join(letter if letter.isalnum() or letter in " -_" else "-" for letter in text).strip()
    return kept[:80] or "room"
