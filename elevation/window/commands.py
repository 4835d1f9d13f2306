"""What the window's commands do."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication, QDialog, QMenu

from elevation import places
from elevation.errors import ElevationError
from elevation.room.edits import duplicate_scheme, put_scheme, put_wall, remove, rename_scheme
from elevation.room.find import scheme_of, wall_of
from elevation.room.model import Room, Scheme, Wall
from elevation.trade.own import load_with_own
from elevation.trade.tables import load_trade
from elevation.window.copying import Copying
from elevation.window.shown import Shown
from elevation.window.texts import tr, tr_error, tr_whole_error
from elevation.window.theme import MODES, SIZES, theme_for
from elevation.words import msg

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow


class Commands:
    """Slots of the actions, and the state that they show."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window
        self._session = window.session
        self._menus: dict[str, QMenu] = {}
        self._seen: tuple[object, ...] = ()
        actions = window.actions_by_name
        files = window.files
        actions.connect({
            "new": self.new, "open": files.ask_open, "save": self.save, "save-as": self.save_as,
            "revert": self.revert, "sheets": self.open_sheets, "export": files.ask_export,
            "sections": files.ask_sections, "measuring": files.ask_measuring_sheet,
            "measurements": files.ask_measurements, "house": self.open_house,
            "close": self.close, "undo": self._session.undo, "redo": self._session.redo,
            "next-wall": self.next_wall, "previous-wall": self.previous_wall, "add-wall": self.add_wall,
            "delete-wall": self.delete_wall,
            "duplicate-scheme": self.duplicate_scheme, "name-scheme": self.name_scheme,
            "delete-scheme": self.delete_scheme, "next-scheme": self.next_scheme,
            "schemes": self.open_schemes, "fit": window.canvas.fit,
            "zoom-in": self.zoom_in, "zoom-out": self.zoom_out, "cloth-open": self.show_as_switched,
            "cloth-closed": self.show_as_switched, "cloth-drawn": self.show_as_switched,
            "stack": self.show_as_switched, "dimensions": self.show_as_switched, "clearances": self.show_as_switched,
            "zones": self.show_as_switched, "bands": self.show_as_switched, "sag": self.show_as_switched,
            "person": self.show_as_switched,
            "unfolded": self.show_as_switched, "guides": self.show_as_switched,
            "light-drawn": self.show_as_switched, "light-day": self.show_as_switched,
            "light-evening": self.show_as_switched,
            "plan": self.show_plan, "section": self.show_section,
            "left-side": self.show_sides, "right-side": self.show_sides,
            "next-pane": self.next_pane,
            **{f"theme-{mode}": self.take_theme for mode in MODES},
            **{f"text-{size}": self.take_text_size for size in SIZES},
            "keys": self.say_keys, "tables": self.show_tables, "shelf": self.show_shelf,
        })  # fmt: skip
        self.copying = Copying(window)
        actions.connect(self.copying.slots())
        for name in ("cloth-open", "light-drawn", "dimensions", "clearances", "left-side", "right-side"):
            actions[name].setChecked(True)
        actions[f"theme-{window.settings.mode}"].setChecked(True)
        actions[f"text-{window.settings.text_size}"].setChecked(True)

    # -- state -----------------------------------------------------------------------

    def keep_menu(self, name: str, menu: QMenu) -> None:
        """A submenu that is filled when it opens."""
        self._menus[name] = menu
        if name == "recent>":
            menu.aboutToShow.connect(self._fill_recent)
        elif name == "demo>":
            menu.aboutToShow.connect(self._fill_demo)

    def refresh(self) -> None:
        """Names of undo and redo, title, what is possible."""
        session = self._session
        seen = (session.undo_label, session.redo_label, session.is_modified, session.path, session.committed.name,
                session.wall_id, session.scheme_id)  # fmt: skip
        if seen == self._seen:
            return
        self._seen = seen
        actions = self._window.actions_by_name
        undo, redo = session.undo_label, session.redo_label
        actions["undo"].setText(tr(msg("&Undo: {what}", what=undo)) if undo else tr(msg("&Undo")))
        actions["redo"].setText(tr(msg("&Redo: {what}", what=redo)) if redo else tr(msg("&Redo")))
        actions["undo"].setToolTip(actions["undo"].text().replace("&", ""))
        actions["redo"].setToolTip(actions["redo"].text().replace("&", ""))
        actions["undo"].setEnabled(undo is not None)
        actions["redo"].setEnabled(redo is not None)
        wall = wall_of(session.committed, session.wall_id) if session.wall_id else None
        schemes = len(wall.schemes) if wall is not None else 0
        for name, is_possible in (
            ("duplicate-scheme", schemes > 0), ("name-scheme", schemes > 0), ("delete-scheme", schemes > 0),
            ("next-scheme", schemes > 1), ("schemes", schemes > 0), ("next-wall", len(session.committed.walls) > 1),
            ("previous-wall", len(session.committed.walls) > 1), ("save", session.is_modified or session.path is None),
            ("revert", session.is_modified),
        ):  # fmt: skip
            actions[name].setEnabled(is_possible)
        wall_name = wall.name or tr(msg("Wall")) if wall is not None else ""
        self._window.setWindowTitle(tr(msg("{room}, {wall}[*] · Elevation", room=self._window.files.name, wall=wall_name)))
        self._window.setWindowModified(session.is_modified)

    # -- the room ----------------------------------------------------------------------

    def new(self) -> None:
        """Ask for the first facts and draw them."""
        if not self._window.files.may_leave():
            return
        from elevation.window.new_room import (
            NewRoom,
            usual_unit,
        )  # Loaded when it is first wanted, not before the first picture.

        here = self._session.room.unit if self._session.path is not None else usual_unit(QLocale.system())
        dialog = NewRoom(self._session.trade, self._window.settings.unit or here, self._window)
        if dialog.exec() == QDialog.DialogCode.Accepted and dialog.room is not None:
            self._window.settings.unit = dialog.room.unit
            self.begin(dialog.room)
        dialog.deleteLater()

    def open_house(self) -> None:
        """Ask for a folder of rooms and show them all."""
        from elevation.window.house import open_house

        open_house(self._window)

    def open_sheets(self) -> None:
        """Choose sheets, look at them, print and export."""
        from elevation.window.sheets_dialog import open_sheets

        open_sheets(self._window)

    def begin(self, room: Room) -> None:
        """Work on a new room."""
        self._window.files.begin(room)
        self._window.canvas.fit()

    def save(self) -> None:
        """Save."""
        self._window.files.save()

    def save_as(self) -> None:
        """Save under another name."""
        self._window.files.save_as()

    def revert(self) -> None:
        """Back to what is saved."""
        self._window.files.revert()

    def close(self) -> None:
        """Close the window."""
        self._window.close()

    def _fill_recent(self) -> None:
        self._fill("recent>", self._window.settings.recent)

    def _fill_demo(self) -> None:
        self._fill("demo>", places.demo_room_files())

    def _fill(self, name: str, paths: Sequence[Path]) -> None:
        menu = self._menus[name]
        menu.clear()
        for path in paths:
            action = QAction(path.name.removesuffix(".room.json").replace("&", "&&"), menu)
            action.setToolTip(str(path))
            action.setData(str(path))
            action.triggered.connect(self._open_listed)
            menu.addAction(action)
        if not paths:
            menu.addAction(tr(msg("None yet"))).setEnabled(False)

    def _open_listed(self) -> None:
        for menu in self._menus.values():
            action = menu.activeAction()
            if action is not None and action.data():
                self.open_listed(Path(str(action.data())))
                return

    def open_listed(self, path: Path) -> None:
        """Open a room of a menu."""
        self._window.files.open(path)

    # -- walls and schemes ------------------------------------------------------------

    def next_wall(self) -> None:
        """The wall to the right, round the room."""
        self._turn(1)

    def previous_wall(self) -> None:
        """The wall to the left."""
        self._turn(-1)

    def _turn(self, way: int) -> None:
        ids = [wall.id for wall in self._session.committed.walls]
        self._session.switch_wall(ids[(ids.index(self._session.wall_id) + way) % len(ids)])

    def add_wall(self) -> None:
        """One wall more, as high as this one, its width still to be measured."""
        here = wall_of(self._session.committed, self._session.wall_id)
        number = len(self._session.committed.walls) + 1
        scheme = Scheme("s1", tr(msg("First idea")))
        wall = Wall("", tr(msg("Wall {number}", number=number)), ceiling=here.ceiling[:1], schemes=(scheme,))
        room, ref = put_wall(self._session.committed, wall)
        self._session.commit(room, msg("Add a wall"), ref)
        self._session.switch_wall(ref[0])

    def delete_wall(self) -> None:
        """Take the wall away with all that hangs on it; undo brings it back."""
        from elevation.room.taking_down import without_wall

        session, walls = self._session, self._session.committed.walls
        gone = session.wall_id
        try:
            room = without_wall(session.committed, gone)
        except ElevationError as error:
            self._window.tell(tr_whole_error(error))
            return
        # The next wall to the left is looked at, of the first one the next to the right.
        number = [wall.id for wall in walls].index(gone)
        session.commit(room, msg("Delete the wall"), (gone,))
        session.switch_wall(room.walls[max(number - 1, 0)].id)

    def next_scheme(self) -> None:
        """The wall's next scheme."""
        ids = [scheme.id for scheme in wall_of(self._session.committed, self._session.wall_id).schemes]
        if self._session.scheme_id in ids:
            self._session.switch_scheme(ids[(ids.index(self._session.scheme_id) + 1) % len(ids)])

    def open_schemes(self) -> None:
        """Schemes side by side."""
        from elevation.window.schemes_dialog import open_schemes

        open_schemes(self._window)

    def duplicate_scheme(self) -> None:
        """Go on in a copy of the scheme."""
        scheme = self._scheme()
        if scheme is not None:
            name = tr(msg("{name}, another way", name=scheme.name or tr(msg("Scheme"))))
            room, ref = duplicate_scheme(self._session.committed, self._session.wall_id, scheme.id, name)
            self._session.commit(room, msg("Duplicate the scheme"), ref)
            self._session.switch_scheme(ref[1])

    def name_scheme(self) -> None:
        """Ask for the scheme's name."""
        scheme = self._scheme()
        if scheme is None:
            return
        name = self._window.files.dialogs.text(tr(msg("Name the scheme")), tr(msg("Name")), scheme.name)
        if name:
            room = rename_scheme(self._session.committed, self._session.wall_id, scheme.id, name)
            self._session.commit(room, msg("Name the scheme"), (self._session.wall_id, scheme.id))

    def delete_scheme(self) -> None:
        """Take the scheme away; undo brings it back."""
        scheme = self._scheme()
        if scheme is None:
            return
        room = remove(self._session.committed, (self._session.wall_id, scheme.id))
        if not wall_of(room, self._session.wall_id).schemes:
            room = put_scheme(room, self._session.wall_id, Scheme(""))[0]
        self._session.commit(room, msg("Delete the scheme"), (self._session.wall_id,))

    def _scheme(self) -> Scheme | None:
        return scheme_of(self._session.committed, self._session.wall_id, self._session.scheme_id)

    # -- view ----------------------------------------------------------------------------

    def zoom_in(self) -> None:
        """Nearer."""
        self._window.canvas.zoom(1.25)

    def zoom_out(self) -> None:
        """Farther."""
        self._window.canvas.zoom(0.8)

    def show_as_switched(self) -> None:
        """Show what the switches say."""
        actions = self._window.actions_by_name
        cloth = next((name for name in ("open", "closed", "drawn") if actions[f"cloth-{name}"].isChecked()), "open")
        light = next((name for name in ("day", "evening") if actions[f"light-{name}"].isChecked()), "drawn")
        shown = Shown(
            cloth=cloth,  # type: ignore[arg-type]
            stack=actions["stack"].isChecked(),
            dimensions=actions["dimensions"].isChecked(),
            clearances=actions["clearances"].isChecked(),
            zones=actions["zones"].isChecked(),
            bands=actions["bands"].isChecked(),
            sag=actions["sag"].isChecked(),
            person=actions["person"].isChecked(),
            unfolded=actions["unfolded"].isChecked(),
            guides=actions["guides"].isChecked(),
            light=light,  # type: ignore[arg-type]
        )
        self._window.canvas.shown = shown
        self._window.refresh()

    def show_section(self) -> None:
        """Show or hide the section beside the elevation."""
        self._window.beside.show_section(self._window.actions_by_name["section"].isChecked(), self._window)

    def show_plan(self) -> None:
        """Show or hide the plan under the elevation."""
        self._window.under.show_plan(self._window.actions_by_name["plan"].isChecked())

    def show_sides(self) -> None:
        """Show or hide the sides."""
        actions = self._window.actions_by_name
        self._window.left.setVisible(actions["left-side"].isChecked())
        self._window.right.setVisible(actions["right-side"].isChecked())

    def next_pane(self) -> None:
        """Put the keyboard on the next part: left side, elevation, section, right side."""
        window = self._window
        middle = (window.canvas, window.beside.canvas, window.under.canvas)
        parts = [part for part in (window.left, *middle, window.right) if part is not None and part.isVisible()]
        focused = QApplication.focusWidget()
        now = next((i for i, part in enumerate(parts) if focused is part or (focused and part.isAncestorOf(focused))), -1)
        target = parts[(now + 1) % len(parts)]
        if target in middle:
            target.setFocus(Qt.FocusReason.TabFocusReason)
        else:
            side = window.left if target is window.left else window.right
            side.drawers[0].head.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def take_theme(self) -> None:
        """Dress the window as chosen and remember it."""
        for mode in MODES:
            if self._window.actions_by_name[f"theme-{mode}"].isChecked():
                self._window.settings.mode = mode
                self._window.set_theme(theme_for(mode))

    def take_text_size(self) -> None:
        """Set the window's text as large as chosen and remember it."""
        for size in SIZES:
            if self._window.actions_by_name[f"text-{size}"].isChecked():
                self._window.settings.text_size = size
                self._window.set_theme(self._window.theme)

    def show_tables(self) -> None:
        """The trade's tables, with rows of one's own."""
        from elevation.window.tables_dialog import TablesDialog

        dialog = TablesDialog(places.own_tables(), self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.kept.connect(self.take_tables)
        dialog.show()

    def show_shelf(self) -> None:
        """What lies on her shelf, and her prices."""
        from elevation.window.shelf_dialog import ShelfDialog

        dialog = ShelfDialog(self._session, places.own_tables(), self._window)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.kept.connect(self.take_tables)
        dialog.show()

    def take_tables(self) -> None:
        """Work with the tables as they were just kept."""
        try:
            self._session.take_trade(load_with_own(load_trade))
        except ElevationError as error:
            self._window.tell(tr_error(error))

    def say_keys(self) -> None:
        """The keys and gestures, in the notice."""
        self._window.notice.say(
            tr(
                msg(
                    "Drag a handle: Shift moves one end alone, Ctrl moves freely past the places where it sticks, typed"
                    " figures set it exactly, Esc gives it back. Tab goes from handle to handle, the arrow keys move one"
                    " by your tape's finest mark, with Shift by ten. The wheel zooms at the pointer; drag the paper, or"
                    " hold Space, to shift it. F6 goes to the window's next part, Ctrl+P to the sheets. A plus or minus"
                    " behind a figure: it is a little more, or a little less."
                )
            )
        )
