"""Texts that travel as a template with parameters and become words only at the edge."""

from __future__ import annotations

from msgspec import Struct


class Mm(Struct, frozen=True, gc=False):
    """A length in mm inside a message; it is said in the reader's unit and graduation.

    Attributes
    ----------
    value : float
        The length in millimetres.
    about : bool
        A rule of thumb, not a measure: said without the sign that something was rounded away.
    """

    value: float
    about: bool = False


class Ratio(Struct, frozen=True, gc=False):
    """A bare ratio inside a message, said with ``digits`` decimals in the reader's number style."""

    value: float
    digits: int = 2


class Percent(Struct, frozen=True, gc=False):
    """A fraction from 0 to 1 inside a message, said in whole per cent."""

    value: float


class Message(Struct, frozen=True):
    """A template in English with named parameters, to be said in any language.

    Attributes
    ----------
    template : str
        English text with ``{name}`` places; the key of the translation.
    params : dict
        Values of the places: str, int, float, Mm, Ratio, Percent or another Message.
    other : str
        The template for every other ``{count}`` than one, where the words depend on it; empty where they do not.
    """

    template: str
    params: dict[str, object] = {}
    other: str = ""


def msg(template: str, /, **params: object) -> Message:
    """Mark ``template`` for translation and bind its parameters.

    Every text that a person may see and that is made below the window goes through here,
    with a literal template, so that the catalogue's script can find it.
    """
    return Message(template, params)


def msg_plural(one: str, other: str, /, *, count: int, **params: object) -> Message:
    """Mark two templates whose words depend on ``{count}``: ``msg_plural("{count} ring", "{count} rings", count=n)``."""
    return Message(one, {"count": count, **params}, other)


def term(name: str) -> Message:
    """A name from the trade's tables (a rod section, a heading) as a message, said in the reader's language.

    The catalogue's script reads the tables, so their names are translated like any template. A name that a person typed
    is no term: bind it as a plain parameter.
    """
    return Message(name.replace("{", "{{").replace("}", "}}"))


class Style(Struct, frozen=True):
    """How numbers and words are said to one reader.

    Attributes
    ----------
    unit : str
        ``"in"`` or ``"mm"``.
    graduation_mm : float
        The tape's smallest mark.
    decimal_mark : str
        ``"."`` or ``","``.
    language : str
        ``"en"`` or another language that has a catalogue ("de").
    plain : bool
        Say fractions as "50 3/8": for outputs that cannot hold set fractions (JSON, DXF).
    """

    unit: str = "in"
    graduation_mm: float = 25.4 / 16
    decimal_mark: str = "."
    language: str = "en"
    plain: bool = False
