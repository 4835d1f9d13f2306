"""An amount of money as a person types it."""

from __future__ import annotations

import re

from elevation.errors import BadInput, said

MOST = 1e7
"""No window costs more."""

_MONEY = re.compile(r"([0-9]+)(?:[.,]([0-9]{1,2}))?\Z")


def read_money(text: str) -> float:
    """The amount written in ``text``: figures, and after a point or a comma at most two more.

    ``1,000`` and ``1.000`` are refused: one reader takes them for one, another for a thousand.

    Raises
    ------
    BadInput
        It is no amount, or more than any window costs.
    """
    found = _MONEY.match(text.strip())
    if found is None:
        raise BadInput(
            "",
            "",
            said('"{text}" is not a price', text=text),
            said("write for example 249.50, without marks for thousands"),
        )
    amount = float(f"{found[1]}.{found[2] or 0}")
    if amount > MOST:
        raise BadInput("", "", said('"{text}" is not a price', text=text), said("it must be at most {most}", most=MOST))
    return amount
