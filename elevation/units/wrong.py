"""What is wrong with a typed length, in a form that can be said in any language.

``units`` lies below ``words``: texts here are marked for the catalogue with ``marked`` and travel inside the error as
templates with their parameters; ``words.say_error`` says them.
"""

from __future__ import annotations

from collections.abc import Mapping

from elevation.errors import BadInput


class Marked(str):
    """A literal template that the catalogue knows."""

    __slots__ = ()


def marked(template: str) -> Marked:
    """Mark a literal template for translation."""
    return Marked(template)


ZERO = marked("zero")
EMPTY = marked("is empty where a length is expected")
AT_PLACE = marked("“{text}”, character {place}: {wrong}")
AS_A_WHOLE = marked("“{text}”: {wrong}")
_LONGEST_SHOWN = 40


class Wrong(Exception):
    """What is wrong and where, before file and field are known.

    Parameters
    ----------
    at : int or None
        Index of the character in the trimmed text; None if the text as a whole is wrong.
    wrong, right : Marked
        What is wrong, and what would be right (may be empty).
    **params : str
        Values of the templates' places; a ``Marked`` one is translated too.
    """

    def __init__(self, at: int | None, wrong: Marked, right: Marked | None = None, **params: str) -> None:
        super().__init__(wrong)
        self.at = at
        self.wrong = wrong
        self.right = right
        self.params = params


class BadLength(BadInput):
    """A typed length that cannot be read: BadInput with its templates.

    Attributes
    ----------
    sentence : Marked
        The outer template, with places ``text``, ``place`` and ``wrong`` (EMPTY, AT_PLACE or AS_A_WHOLE).
    fault, remedy : Marked
        Templates of what is wrong (the outer ``wrong``) and of what would be right.
    params : mapping of str to str
        Values of all places but ``wrong``; a ``Marked`` one is a template itself.
    """

    def __init__(self, what: str, where: str, text: str, wrong: Wrong, example: Marked) -> None:
        shown = printable(text.strip())
        more = "..." if len(shown) > _LONGEST_SHOWN else ""
        self.sentence = EMPTY if not shown else AS_A_WHOLE if wrong.at is None else AT_PLACE
        self.fault = wrong.wrong
        self.remedy = wrong.right or example
        self.params: Mapping[str, str] = {
            **wrong.params,
            "text": shown[:_LONGEST_SHOWN] + more,
            "place": "" if wrong.at is None else str(wrong.at + 1),
        }
        fault = self.fault.format_map(self.params)
        super().__init__(
            what, where, self.sentence.format_map({**self.params, "wrong": fault}), self.remedy.format_map(self.params)
        )


class Amount(float):
    """A length in mm inside an error: said in the reader's unit, and in metric where nobody reads along."""

    __slots__ = ()

    @property
    def metric(self) -> str:
        """Metres from one metre on, else millimetres, to four figures."""
        if not self:
            return ZERO
        return f"{self / 1000:.4g} m" if abs(self) >= 1000 else f"{self:.4g} mm"


class BadFact(BadInput):
    """A fact that cannot be: BadInput with its templates.

    Attributes
    ----------
    fault, remedy : Marked
        Templates of what is wrong and of what would be right.
    params : mapping
        Values of their places: text as it stands, or an ``Amount``.
    """

    def __init__(self, what: str, where: str, fault: Marked, remedy: Marked, params: Mapping[str, str | Amount]) -> None:
        self.fault, self.remedy, self.params = fault, remedy, params
        said = {name: value.metric if isinstance(value, Amount) else value for name, value in params.items()}
        super().__init__(what, where, fault.format_map(said), remedy.format_map(said))


def printable(text: str) -> str:
    """A text with each character that cannot be shown replaced by the replacement character."""
    return "".join(char if char.isprintable() else "\N{REPLACEMENT CHARACTER}" for char in text)
