"""Light and dark: palettes of our own on Qt's Fusion style.

Only the desk and the panels change; the paper keeps its inks, so the drawing looks on the screen as it prints.
"""

from __future__ import annotations

from typing import Literal

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication, QWidget

from elevation.output.painters.fonts import window_font

Mode = Literal["system", "light", "dark", "contrast-light", "contrast-dark"]
MODES: tuple[Mode, ...] = ("system", "light", "dark", "contrast-light", "contrast-dark")


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


CONTRAST_LIGHT = Theme(
    is_dark=False, desk="#ffffff", panel="#ffffff", field="#ffffff", line="#000000", ink="#000000", quiet="#262626",
    accent="#8a1500", held="#003f47", on_held="#ffffff",
)  # fmt: skip
CONTRAST_DARK = Theme(
    is_dark=True, desk="#000000", panel="#000000", field="#000000", line="#ffffff", ink="#ffffff", quiet="#e0e0e0",
    accent="#ffb59e", held="#8ff0f7", on_held="#000000",
)  # fmt: skip
_BY_MODE = {
    "light": LIGHT, "dark": DARK, "contrast-light": CONTRAST_LIGHT, "contrast-dark": CONTRAST_DARK,
}  # fmt: skip


STYLE = "Fusion"
"""The one style of Qt's that the palettes are made for."""
STYLED = "elevationStyled"
"""Property of an application that has had the style from its start."""
_DRESSED = "elevationTheme"
_SIZED = "elevationSize"

POINTS = 10.5
"""Type size of the window."""
SIZES = (100, 120, 145)
"""Sizes of its text that can be chosen, in per cent."""


def theme_for(mode: Mode) -> Theme:
    """The theme that a mode means just now.

    Parameters
    ----------
    mode : str
        ``system`` follows the desktop where it tells, in light or dark and in high contrast, else light.

    Returns
    -------
    Theme
    """
    if mode == "system":
        # Kept in a variable: a chained temporary of the style hints is gone before it answers.
        hints = QGuiApplication.styleHints()
        is_dark = hints.colorScheme() == Qt.ColorScheme.Dark
        wishes = hints.accessibility()
        if wishes.contrastPreference() == Qt.ContrastPreference.HighContrast:
            return CONTRAST_DARK if is_dark else CONTRAST_LIGHT
        return DARK if is_dark else LIGHT
    return _BY_MODE[mode]


def palette_of(theme: Theme) -> QPalette:
    """A Fusion palette in a theme's colours."""
    palette = QPalette()
    role = QPalette.ColorRole
    # On black and on white a button that is down shows by its ground alone.
    mixed = _mix(theme.panel, theme.ink, 0.28 if theme in (CONTRAST_LIGHT, CONTRAST_DARK) else 0.06)
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


def apply(app: QApplication, theme: Theme, size: int = 100) -> None:
    """Dress the whole application in a theme, its text ``size`` per cent of the usual; best before any widget is made.

    A palette on Fusion does it all: a style sheet would make every widget three times as dear to build.
    """
    if app.property(_DRESSED) is None and not app.property(STYLED):
        app.setStyle(STYLE)
    if app.property(_SIZED) != size:
        app.setProperty(_SIZED, size)
        app.setFont(window_font(POINTS * size / 100))
    if app.property(_DRESSED) != theme.panel:
        app.setProperty(_DRESSED, theme.panel)
        app.setPalette(palette_of(theme))


def make_quiet(widget: QWidget) -> None:
    """Secondary text: the palette's placeholder ink, which follows the theme by itself."""
    widget.setForegroundRole(QPalette.ColorRole.PlaceholderText)


def make_wrong(widget: QWidget) -> None:
    """Text that asks attention: the palette's bright ink, which is the accent."""
    widget.setForegroundRole(QPalette.ColorRole.BrightText)


def grown(widget: QWidget, px: int) -> int:
    """Pixels of the usual text's layout, at the size that a widget's own text has."""
    return round(px * max(widget.font().pointSizeF(), 1.0) / POINTS)


def is_stark(palette: QPalette) -> bool:
    """Whether a palette is one of high contrast: on black or on white itself."""
    return palette.color(QPalette.ColorRole.Window).lightness() in (0, 255)
