"""What is wrong with a typed length, in a form that can be said in any language.

``units`` lies below ``words``: texts here are marked for the catalogue with ``marked``, become a ``Said`` where they are
filled, and are said by ``words.say_error``.
"""

from __future__ import annotations

from elevation.errors import BadInput, Said


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
    **params : str or float
        Values of the templates' places; a ``Marked`` one is translated too.
    """

    def __init__(self, at: int | None, wrong: Marked, right: Marked | None = None, **params: str | float) -> None:
        super().__init__(wrong)
        self.at = at
        self.wrong = wrong
        self.right = right
        self.params = params


class BadLength(BadInput):
    """A typed length that cannot be read: BadInput whose sentence says the place in the text."""

    def __init__(self, what: str, where: str, text: str, wrong: Wrong, example: Marked) -> None:
        shown = printable(text.strip())
        more = "..." if len(shown) > _LONGEST_SHOWN else ""
        sentence = EMPTY if not shown else AS_A_WHOLE if wrong.at is None else AT_PLACE
        params: dict[str, object] = {
            **{name: Said(value, {}) if isinstance(value, Marked) else value for name, value in wrong.params.items()},
            "text": shown[:_LONGEST_SHOWN] + more,
            "place": "" if wrong.at is None else str(wrong.at + 1),
        }
        fault = Said(sentence, {**params, "wrong": Said(wrong.wrong, params)})
        super().__init__(what, where, fault, Said(wrong.right or example, params))


class Amount(float):
    """A length in mm inside an error: said in the reader's unit, and in metric where nobody reads along."""

    __slots__ = ()

    def __format__(self, spec: str) -> str:
        """What a sentence that nobody reads along says: ``metric``; with a format, the bare number."""
        return super().__format__(spec) if spec else self.metric

    @property
    def metric(self) -> str:
        """Metres from one metre on, else millimetres, to four figures."""
        if not self:
            return ZERO
        return f"{self / 1000:.4g} m" if abs(self) >= 1000 else f"{self:.4g} mm"


def printable(text: str) -> str:
    """A text with each character that cannot be shown replaced by the replacement character."""
    return "".join(char if char.isprintable() else "\N{REPLACEMENT CHARACTER}" for char in text)
