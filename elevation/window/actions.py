"""Every command of the window as one action, shared by menus, the bar over the canvas and the keyboard."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QMainWindow

from elevation.window.icons import icon
from elevation.window.texts import tr
from elevation.window.theme import Theme
from elevation.words import Message, msg


class Command(NamedTuple):
    """One command.

    Attributes
    ----------
    name : str
        Tests and menus know it by this.
    text : Message
        With its mnemonic.
    keys : tuple of str
        Shortcuts; the first is shown.
    icon : str
    is_switch : bool
        It stays on or off.
    group : str
        Of those with the same group one is on.
    """

    name: str
    text: Message
    keys: tuple[str, ...] = ()
    icon: str = ""
    is_switch: bool = False
    group: str = ""


COMMANDS = (
    Command("new", msg("&New room…"), ("Ctrl+N",), "new"),
    Command("open", msg("&Open…"), ("Ctrl+O",), "open"),
    Command("save", msg("&Save"), ("Ctrl+S",), "save"),
    Command("save-as", msg("Save &as…"), ("Ctrl+Shift+S",)),
    Command("revert", msg("&Back to what is saved")),
    Command("sheets", msg("Shee&ts…"), ("Ctrl+P",), "print"),
    Command("export", msg("&Draw to a file…"), ("Ctrl+E",), "export"),
    Command("sections", msg("Draw the sect&ions…"), ("Ctrl+Shift+E",)),
    Command("measuring", msg("&Measuring sheet…"), ("Ctrl+M",), "print"),
    Command("measurements", msg("Measurements of all &walls…"), ("Ctrl+Shift+M",)),
    Command("house", msg("Open a &house…"), ("Ctrl+Shift+O",)),
    Command("close", msg("&Close"), ("Ctrl+Q", "Ctrl+W")),
    Command("undo", msg("&Undo"), ("Ctrl+Z",), "undo"),
    Command("redo", msg("&Redo"), ("Ctrl+Shift+Z", "Ctrl+Y"), "redo"),
    Command("next-wall", msg("&Next wall"), ("Ctrl+PgDown",)),
    Command("previous-wall", msg("&Previous wall"), ("Ctrl+PgUp",)),
    Command("add-wall", msg("&Add a wall")),
    Command("duplicate-scheme", msg("&Duplicate the scheme"), ("Ctrl+D",), "duplicate"),
    Command("name-scheme", msg("Na&me the scheme…"), ("F2",), "name"),
    Command("delete-scheme", msg("D&elete the scheme"), (), "remove"),
    Command("duplicate-wall", msg("Duplicate the &wall")),
    Command("delete-wall", msg("De&lete the wall"), (), "remove"),
    Command("duplicate-opening", msg("Duplicate the &opening, with what hangs there"), ("Ctrl+Shift+D",)),
    Command("duplicate-treatment", msg("Hang the &same before the next bare opening")),
    Command("same-as", msg("Make other windows the s&ame…"), ("Ctrl+Shift+A",)),
    Command("level-rods", msg("All rods of the room at this &height")),
    Command("next-scheme", msg("Ne&xt scheme"), ("Ctrl+Tab",)),
    Command("schemes", msg("Schemes side b&y side…"), ("Ctrl+B",)),
    Command("fit", msg("&Whole wall"), ("Ctrl+0",), "fit"),
    Command("zoom-in", msg("Zoom &in"), ("Ctrl++", "Ctrl+="), "zoom-in"),
    Command("zoom-out", msg("Zoom o&ut"), ("Ctrl+-",), "zoom-out"),
    Command("cloth-open", msg("Cloth &open"), ("Ctrl+1",), "cloth-open", True, "cloth"),
    Command("cloth-closed", msg("Cloth &closed"), ("Ctrl+2",), "cloth-closed", True, "cloth"),
    Command("cloth-drawn", msg("Cloth as &drawn"), ("Ctrl+3",), "cloth-drawn", True, "cloth"),
    Command("stack", msg("&Stack outline"), ("Ctrl+4",), "stack", True),
    Command("dimensions", msg("Di&mensions"), ("Ctrl+5",), "dimensions", True),
    Command("clearances", msg("C&learances"), ("Ctrl+6",), "clearances", True),
    Command("zones", msg("Inside t&he wall"), ("Ctrl+7",), "zones", True),
    Command("bands", msg("Ca&bles and pipes"), ("Ctrl+8",), "bands", True),
    Command("sag", msg("S&ag of the rods"), ("Ctrl+9",), "sag", True),
    Command("person", msg("Somebody of &known height"), ("Ctrl+Shift+H",), "person", True),
    Command("guides", msg("Thirds, middles, le&vels"), ("Ctrl+G",), "proportions", True),
    Command("unfolded", msg("U&nfolded with its neighbours"), ("Ctrl+Shift+9",), "unfolded", True),
    Command("plan", msg("&Plan"), ("Shift+F7",), "plan", True),
    Command("section", msg("S&ection"), ("F7",), "section", True),
    Command("left-side", msg("Side le&ft"), ("F8",), "measure", True),
    Command("right-side", msg("Side &right"), ("F9",), "findings", True),
    Command("next-pane", msg("&Go to the next part"), ("F6",)),
    Command("light-drawn", msg("As &drawn"), (), "", True, "light"),
    Command("light-day", msg("By d&ay"), ("Ctrl+Shift+L",), "", True, "light"),
    Command("light-evening", msg("In the &evening"), ("Ctrl+Shift+K",), "", True, "light"),
    Command("theme-system", msg("As the &system"), (), "", True, "theme"),
    Command("theme-light", msg("&Light"), (), "", True, "theme"),
    Command("theme-dark", msg("&Dark"), (), "", True, "theme"),
    Command("theme-contrast-light", msg("&Black on white"), (), "", True, "theme"),
    Command("theme-contrast-dark", msg("&White on black"), (), "", True, "theme"),
    Command("text-100", msg("&Usual"), (), "", True, "text"),
    Command("text-120", msg("&Larger"), (), "", True, "text"),
    Command("text-145", msg("&Very large"), (), "", True, "text"),
    Command("tables", msg("&Tables…"), ("Ctrl+T",)),
    Command("shelf", msg("Shelf and &prices…"), ("Ctrl+Shift+T",)),
    Command("keys", msg("&Keys and gestures"), ("F1",)),
)


class Actions:
    """The window's actions by name."""

    def __init__(self, window: QMainWindow) -> None:
        self.by_name: dict[str, QAction] = {}
        self._groups: dict[str, QActionGroup] = {}
        for command in COMMANDS:
            action = QAction(tr(command.text), window)
            action.setObjectName(command.name)
            action.setShortcuts([QKeySequence(keys) for keys in command.keys])
            action.setCheckable(command.is_switch)
            plain = tr(command.text).replace("&", "").rstrip("…")
            tip = f"{plain} ({QKeySequence(command.keys[0]).toString()})" if command.keys else plain
            action.setToolTip(tip)
            if command.group:
                group = self._groups.setdefault(command.group, QActionGroup(window))
                group.addAction(action)
            window.addAction(action)
            self.by_name[command.name] = action

    def __getitem__(self, name: str) -> QAction:
        """The action of that name."""
        return self.by_name[name]

    def connect(self, slots: dict[str, Callable[[], None]]) -> None:
        """Connect commands to bound methods."""
        for name, slot in slots.items():
            self.by_name[name].triggered.connect(slot)

    def set_theme(self, theme: Theme) -> None:
        """Draw the icons in the theme's ink."""
        for command in COMMANDS:
            if command.icon:
                self.by_name[command.name].setIcon(icon(command.icon, theme.ink, theme.line))
