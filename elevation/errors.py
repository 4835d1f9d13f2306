"""The one family of errors that a person is meant to read."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Self


class Said(str):
    """English text that still knows the template and the values it was made from.

    Errors are made below ``words``, where no language is known. Such a text is plain English to whoever prints or compares
    it; ``words.say_error`` says the same template in the reader's language.

    Attributes
    ----------
    template : str
        The key of the translation.
    params : mapping
        Values of its places: text, numbers, or another ``Said``.
    """

    template: str
    params: Mapping[str, object]

    def __new__(cls, template: str, params: Mapping[str, object]) -> Self:
        """Fill ``template`` with ``params`` in English."""
        text = template.format_map({name: _plain(value) for name, value in params.items()})
        made = super().__new__(cls, text)
        made.template = template
        made.params = params
        return made


def said(template: str, /, **params: object) -> Said:
    """Mark a literal template for translation and fill its places in English."""
    return Said(template, params)


def _plain(value: object) -> object:
    # A whole number that was read as a float is said without its ".0".
    return f"{value:g}" if type(value) is float else value


class ElevationError(Exception):
    """Something outside the program's control is wrong, and a person can put it right.

    Only ``commands.main`` and the window's guard catch it; any other exception is a bug.

    Parameters
    ----------
    what : str
        The thing that is wrong: usually a file's name.
    where : str
        The place inside it (``walls[0].width``); empty where there is none.
    wrong : str
        What is wrong, as the rest of a sentence ("is not a length").
    right : str
        What would be right ("write for example 120 in"); may be empty.

    Any of them may be a ``Said``, so that the window can say it in another language.
    """

    def __init__(self, what: str, where: str = "", wrong: str = "", right: str = "") -> None:
        super().__init__(what, where, wrong, right)
        self.what = what
        self.where = where
        self.wrong = wrong
        self.right = right

    def __str__(self) -> str:
        """One sentence on one line: what, where, what is wrong, what would be right."""
        head = ": ".join(part for part in (self.what, self.where) if part)
        tail = "; ".join(part for part in (self.wrong, self.right) if part)
        text = f"{head}: {tail}" if head and tail else head or tail
        return " ".join(text.split())


class BadInput(ElevationError):
    """A file, a field or an argument cannot be understood or cannot be true."""


class BadOutput(ElevationError):
    """A file cannot be written."""


class NoSuch(ElevationError):
    """A wall, scheme, table row or file ending of that name does not exist."""


class Missing(ElevationError):
    """Something the program needs from the machine is not there."""
