"""How one reader wants numbers and words."""

from __future__ import annotations

from elevation.words.languages import SOURCE_LANGUAGE, decimal_mark_of, languages
from elevation.words.message import Style


def style_of(room_unit: str, graduation_mm: float, language: str, *, plain: bool = False) -> Style:
    """The style of a room: its unit and graduation, its language, and that language's decimal mark.

    Parameters
    ----------
    room_unit : str
        ``"in"`` or ``"mm"``.
    graduation_mm : float
        The tape's smallest mark in mm.
    language : str
        One of ``languages()``, with or without a country ("de_AT"); another one is said in English.
    plain : bool
        Say fractions as "50 3/8", for outputs that cannot hold set fractions.
    """
    code = language.replace("-", "_").split("_")[0].lower()
    if code not in languages():
        code = SOURCE_LANGUAGE
    return Style(room_unit, graduation_mm, decimal_mark_of(code), code, plain)
