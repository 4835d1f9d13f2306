"""Numbers with comma, dot or both."""

from __future__ import annotations

import re
from fractions import Fraction

from elevation.units.scan import MM_OF, Token
from elevation.units.wrong import Wrong, marked

MOST_DIGITS = 12

_LONGEST_MM = 100_000
"""Nothing in a house is longer than 100 m: a number that would be can only have been meant with decimals."""

_DOUBTFUL = re.compile(r"([1-9][0-9]{0,2})([.,])([0-9]{3})\Z")


def check_digits(token: Token) -> None:
    """Refuse a number of more than ``MOST_DIGITS`` digits."""
    if len(token.text) > MOST_DIGITS:
        raise Wrong(token.start, marked("a number of more than {most} digits"), most=str(MOST_DIGITS))


def decimal(token: Token) -> tuple[Fraction, bool]:
    """Value of a number written with comma, dot or both, and whether it is plainly whole."""
    text = token.text
    check_digits(token)
    if text.isdigit():
        return Fraction(int(text)), True
    marks = [char for char in text if char in ".,"]
    decimal = marks[-1]
    groups: list[str]
    if len(marks) > 1 and len(set(marks)) == 1:
        # 1.234.567: the same mark twice can only group.
        groups, digits = text.split(decimal), ""
    else:
        head, digits = text.rsplit(decimal, 1)
        groups = head.replace(",", ".").split(".")
    grouped_well = len(groups) == 1 or (1 <= len(groups[0]) <= 3 and all(len(group) == 3 for group in groups[1:]))
    if not grouped_well or len(set(marks[:-1])) > 1 or (digits and decimal in marks[:-1]):
        raise Wrong(token.start, marked("the commas and dots of {number} do not make a number"), number=text)
    return Fraction(int("".join(groups) or "0")) + Fraction(int(digits or "0"), 10 ** len(digits)), not digits


def refuse_doubtful(token: Token, unit: str) -> None:
    """Refuse 1,234 or 1.234 where it can mean a thousand and some of ``unit`` as well as one and a fraction."""
    found = _DOUBTFUL.match(token.text)
    if found is None or (found[2] == "." and unit in ("in", "ft", "yd")):
        return
    grouped = found[1] + found[3]
    if int(grouped) * MM_OF[unit] > _LONGEST_MM:
        return
    raise Wrong(
        token.start,
        marked("{number} can mean {grouped} or {decimal}"),
        marked("write {grouped}, or {longer} for the smaller one"),
        number=token.text,
        grouped=grouped,
        decimal=float(f"{found[1]}.{found[3]}"),
        longer=f"{token.text}0",
    )
