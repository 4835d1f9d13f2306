"""The window's own words, said in the language of the person at the screen.

Everything that stands in the window goes through ``tr(msg("literal", ...))``, so that the script which
gathers texts for translation finds it. Lengths inside a message are said in the room's unit where a style is given.
"""

from __future__ import annotations

from functools import cache, lru_cache

from msgspec.structs import replace

from elevation.errors import ElevationError
from elevation.words import Message, Style, say, say_error
from elevation.words.languages import decimal_mark_of

_language = "en"


def use_language(language: str) -> None:
    """Say everything in ``language`` from now on (set once, before the window is built)."""
    global _language
    _language = language
    _plain.cache_clear()
    _in_own_language.cache_clear()


def language() -> str:
    """The language that the window speaks."""
    return _language


def tr(message: Message, style: Style | None = None) -> str:
    """A message as text.

    Parameters
    ----------
    message : Message
    style : Style, optional
        How numbers are said; its language and decimal mark are replaced by the window's.

    Returns
    -------
    str
    """
    return say(message, _plain() if style is None else _in_own_language(style))


def tr_error(error: ElevationError, style: Style | None = None) -> str:
    """What is wrong with something typed, without the name that stands beside the field anyway.

    Parameters
    ----------
    error : ElevationError
    style : Style, optional
        How its lengths are said; its language is replaced by the window's.

    Returns
    -------
    str
        One sentence, in the window's language where the error carries its templates.
    """
    bare = ElevationError("", "", error.wrong, error.right)
    return say_error(bare, _plain() if style is None else _in_own_language(style))


def tr_whole_error(error: ElevationError) -> str:
    """An error about a file as one sentence that names the file first, in the window's language."""
    return say_error(error, _plain())


@lru_cache(maxsize=8)
def _in_own_language(style: Style) -> Style:
    return replace(style, language=_language, decimal_mark=decimal_mark_of(_language))


@cache
def _plain() -> Style:
    return _in_own_language(Style())
