"""Light and dark: palettes of our own on Qt's Fusion style.

Only the desk and the panels change; the paper keeps its inks, so the drawing looks on the screen as it prints.
"""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from elevation.output.painters.fonts import window_font

Mode = Literal["system", "light", "dark"]
MODES: tuple[Mode, ...] = ("system", "light", "dark")


class Theme(Struct, frozen=True):
    """Colours of the window, ``#rrggbb``.

    Attributes
    ----------
    is_dark : bool
    desk : str
        Behind the paper.
    panel, field, line : str
        Ground of panels, of fields, and the hairlines between.
    ink, quiet : str
        Text, and secondary text (both at least 4.5 to 1 on panel and field).
    accent : str
        What asks attention.
    held : str
        What is held, selected or focused.
    on_held : str
        Text on ``held``.
    """

    is_dark: bool
    desk: str
    panel: str
    field: str
    line: str
    ink: str
    quiet: str
    accent: str
    held: str
    on_held: str


LIGHT = Theme(
    is_dark=False, desk="#d9d4ca", panel="#f1ede5", field="#fdfbf7", line="#c4bdb0", ink="#1d2935", quiet="#566069",
    accent="#a02c14", held="#17656e", on_held="#ffffff",
)  # fmt: skip
DARK = Theme(
    is_dark=True, desk="#15191d", panel="#22282e", field="#191e23", line="#434b53", ink="#ece7de", quiet="#a9b0b6",
    accent="#f0967a", held="#6cc3cb", on_held="#10161b",
)  # fmt: skip


POINTS = 10.5
"""Type size of the window."""


def theme_for(mode: Mode) -> Theme:
    """The theme that a mode means just now.

    Parameters
    ----------
    mode : str
        ``system`` follows the desktop where it tells, else light.

    Returns
    -------
    Theme
    """
    if mode == "system":
        # Kept in a variable: a chained temporary of the style hints is gone before it answers.
        hints = QGuiApplication.styleHints()
        return DARK if hints.colorScheme() == Qt.ColorScheme.Dark else LIGHT
    return DARK if mode == "dark" else LIGHT


def palette_of(theme: Theme) -> QPalette:
    """A Fusion palette in a theme's colours."""
    palette = QPalette()
    role = QPalette.ColorRole
    mixed = _mix(theme.panel, theme.ink, 0.06)
    colours = {
        role.Window: theme.panel, role.WindowText: theme.ink, role.Base: theme.field, role.AlternateBase: mixed,
        role.Text: theme.ink, role.Button: mixed, role.ButtonText: theme.ink, role.BrightText: theme.accent,
        role.ToolTipBase: theme.field, role.ToolTipText: theme.ink, role.PlaceholderText: theme.quiet,
        role.Highlight: theme.held, role.HighlightedText: theme.on_held, role.Link: theme.held,
        role.LinkVisited: theme.held, role.Accent: theme.held, role.Light: _mix(theme.panel, "#ffffff", 0.15),
        role.Midlight: _mix(theme.panel, "#ffffff", 0.07), role.Mid: theme.line,
        role.Dark: _mix(theme.panel, "#000000", 0.35), role.Shadow: _mix(theme.panel, "#000000", 0.6),
    }  # fmt: skip
    for name, text in colours.items():
        palette.setColor(name, QColor(text))
    for name in (role.WindowText, role.Text, role.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, name, QColor(_mix(theme.panel, theme.ink, 0.45)))
    palette.setColor(QPalette.ColorGroup.Disabled, role.Highlight, QColor(theme.line))
    return palette


def _mix(first: str, second: str, share: float) -> str:
    a, b = QColor(first), QColor(second)
    parts = (round(x + (y - x) * share) for x, y in ((a.red(), b.red()), (a.green(), b.green()), (a.blue(), b.blue())))
    return "#{:02x}{:02x}{:02x}".format(*parts)


def apply(app: QApplication, theme: Theme) -> None:
    """Dress the whole application in a theme; best before any widget is made, because Qt dresses each one again."""
    sheet = _SHEET.format_map(_parts(theme))
    if app.styleSheet() == sheet:
        return
    if not app.styleSheet():
        app.setStyle("Fusion")
        app.setFont(window_font(POINTS))
    app.setPalette(palette_of(theme))
    app.setStyleSheet(sheet)


def _parts(theme: Theme) -> dict[str, str]:
    return {
        "ink": theme.ink,
        "quiet": theme.quiet,
        "line": theme.line,
        "held": theme.held,
        "accent": theme.accent,
        "field": theme.field,
        "panel": theme.panel,
        "hover": _mix(theme.panel, theme.ink, 0.08),
        "pressed": _mix(theme.panel, theme.held, 0.22),
    }


_SHEET = """
QToolTip {{ color: {ink}; background: {field}; border: 1px solid {line}; padding: 3px; }}
QLabel[quiet="true"] {{ color: {quiet}; }}
QLabel[wrong="true"] {{ color: {accent}; }}
QLineEdit {{ border: 1px solid {line}; border-radius: 2px; padding: 2px 4px; background: {field}; }}
QLineEdit:focus {{ border: 1px solid {held}; }}
QLineEdit[wrong="true"] {{ border: 1px solid {accent}; }}
QToolButton {{ border: 1px solid transparent; border-radius: 3px; padding: 3px 5px; }}
QToolButton:hover {{ background: {hover}; }}
QToolButton:checked {{ background: {pressed}; border-color: {held}; }}
QToolButton:focus {{ border-color: {held}; }}
QToolButton#drawerHead {{ text-align: left; font-weight: 600; padding: 4px 6px; border-radius: 0;
    border-top: 1px solid {line}; }}
QToolButton#drawerHead:checked {{ background: transparent; border-color: transparent; border-top: 1px solid {line}; }}
QToolButton#drawerHead:hover {{ background: {hover}; }}
QToolButton#drawerHead:focus {{ border: 1px solid {held}; }}
QStatusBar {{ color: {quiet}; }}
QStatusBar::item {{ border: none; }}
QScrollArea, QSplitter {{ border: none; }}
QSplitter::handle {{ background: {line}; }}
QHeaderView::section {{ background: {panel}; color: {quiet}; border: none; border-bottom: 1px solid {line}; padding: 3px; }}
QTableView {{ border: none; gridline-color: {line}; }}
"""
