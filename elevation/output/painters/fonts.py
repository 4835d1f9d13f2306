"""The bundled type, for every painter.

Text is set at ``SET_AT`` pixels and scaled down by the painter, with kerning, ligatures and hinting off: advances then
agree with the table that ``sheet`` measures by.
"""

from __future__ import annotations

from functools import cache
from threading import get_ident

from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QFont, QFontDatabase

from elevation.sheet.type_files import font_path

SET_AT = 250
"""Pixel size that text is set at before it is scaled to its height (a hundred times 2.5 mm)."""

_known: dict[str, str] = {}
_known_to: list[QCoreApplication | None] = [None]


def _family(weight: str) -> str:
    """The family's name, its cut loaded when it is first needed: a second application (tests) starts with no fonts."""
    app = QCoreApplication.instance()
    if app is None or _known_to[0] is not app:
        _known.clear()
        _drawing_font.cache_clear()
        _known_to[0] = app
    if weight not in _known:
        # TrueType outlines: Qt's PDF writer embeds these as a subset, the others whole.
        number = QFontDatabase.addApplicationFont(str(font_path(weight)))
        found = QFontDatabase.applicationFontFamilies(number)
        _known[weight] = found[0] if found else ""
    return _known[weight]


@cache
def _drawing_font(weight: str, thread: int) -> QFont:
    # A font keeps its engine, which belongs to one thread: an export on the worker must not share the window's.
    del thread
    font = QFont(_known[weight])
    font.setPixelSize(SET_AT)
    font.setWeight(QFont.Weight.DemiBold if weight == "semibold" else QFont.Weight.Normal)
    font.setItalic(weight == "italic")
    font.setKerning(False)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    font.setStyleStrategy(QFont.StyleStrategy.PreferOutline)
    for tag in ("liga", "clig", "calt", "frac"):
        font.setFeature(QFont.Tag(tag), 0)
    return font


def drawing_font(weight: str) -> QFont:
    """The font that drawings are set in.

    Parameters
    ----------
    weight : str
        ``regular``, ``semibold`` or ``italic``.

    Returns
    -------
    QFont
        At ``SET_AT`` pixels, kerning, ligatures and hinting off. Needs a QGuiApplication.
    """
    _family(weight)
    return _drawing_font(weight, get_ident())


def window_font(points: float) -> QFont:
    """The same family for the window's own text.

    Parameters
    ----------
    points : float
        Type size in points.

    Returns
    -------
    QFont
    """
    # The window sets some of its text in the heavier cut, which Qt finds by itself once it is loaded.
    _family("semibold")
    font = QFont(_family("regular"))
    font.setPointSizeF(points)
    return font
