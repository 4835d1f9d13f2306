"""The menus, and the bar over the canvas."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QMenu, QSizePolicy, QToolBar, QWidget

from elevation.window.texts import tr
from elevation.window.theme import MODES, SIZES
from elevation.words import Message, msg

if TYPE_CHECKING:
    from elevation.window.main_window import MainWindow

_LINE = "-"
_MENUS: tuple[tuple[str, Message, tuple[str, ...]], ...] = (
    (
        "room",
        msg("&Room"),
        ("new", "open", "house", "demo>", "recent>", _LINE, "save", "save-as", "revert", _LINE, "sheets", "export",
         "sections", "measuring", "measurements", _LINE, "close"),
    ),
    (
        "edit",
        msg("&Edit"),
        (
            "undo", "redo", _LINE, "duplicate-opening", "duplicate-treatment", "same-as", _LINE, "level-rods",
            _LINE, "tables", "shelf",
        ),
    ),
    (
        "wall",
        msg("&Wall"),
        (
            "next-wall", "previous-wall", "add-wall", "duplicate-wall", "delete-wall", _LINE, "next-scheme",
            "duplicate-scheme", "name-scheme", "delete-scheme", _LINE, "schemes",
        ),
    ),
    (
        "view",
        msg("&View"),
        (
            "fit", "zoom-in", "zoom-out", _LINE, "cloth-open", "cloth-closed", "cloth-drawn", "light>", _LINE, "stack",
            "dimensions", "clearances", "guides", "zones", "bands", "sag", "person", _LINE, "unfolded", "plan", "section",
            "left-side", "right-side", "next-pane", _LINE, "theme>", "text>",
        ),
    ),
    ("help", msg("&Help"), ("keys",)),
)  # fmt: skip
_SUBMENUS = {
    "demo>": msg("D&emo rooms"),
    "recent>": msg("&Recent rooms"),
    "theme>": msg("&Theme"),
    "text>": msg("Si&ze of the text"),
    "light>": msg("Da&y and evening"),
}
_BAR = (
    "new", "open", "save", "sheets", _LINE, "undo", "redo", _LINE, "switchers", "duplicate-scheme", "name-scheme", " ",
    "cloth-open", "cloth-closed", "cloth-drawn", _LINE, "stack", "dimensions", "clearances", "guides", "zones", "bands",
    "sag", _LINE, "unfolded", "plan", "section", "fit", "left-side", "right-side",
)  # fmt: skip


def fill_menus(window: MainWindow) -> None:
    """Put every command into its menu."""
    for name, title, entries in _MENUS:
        menu = window.menuBar().addMenu(tr(title))
        menu.setObjectName(name)
        menu.setToolTipsVisible(True)
        for entry in entries:
            if entry == _LINE:
                menu.addSeparator()
            elif entry.endswith(">"):
                window.commands.keep_menu(entry, _submenu(window, menu, entry))
            else:
                menu.addAction(window.actions_by_name[entry])


def _submenu(window: MainWindow, menu: QMenu, entry: str) -> QMenu:
    inner = menu.addMenu(tr(_SUBMENUS[entry]))
    if entry == "theme>":
        for mode in MODES:
            inner.addAction(window.actions_by_name[f"theme-{mode}"])
    elif entry == "text>":
        for size in SIZES:
            inner.addAction(window.actions_by_name[f"text-{size}"])
    elif entry == "light>":
        for light in ("drawn", "day", "evening"):
            inner.addAction(window.actions_by_name[f"light-{light}"])
    return inner


def fill_bar(window: MainWindow) -> QToolBar:
    """The bar: what is used most, and the switchers."""
    bar = QToolBar(tr(msg("Bar")), window)
    bar.setObjectName("bar")
    bar.setMovable(False)
    bar.setFloatable(False)
    bar.setIconSize(QSize(20, 20))
    bar.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)
    for entry in _BAR:
        if entry == _LINE:
            bar.addSeparator()
        elif entry == " ":
            gap = QWidget(bar)
            gap.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
            bar.addWidget(gap)
        elif entry == "switchers":
            bar.addWidget(window.switchers)
        else:
            bar.addAction(window.actions_by_name[entry])
    window.addToolBar(bar)
    return bar
