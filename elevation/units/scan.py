"""What a person typed, cut into numbers, fractions, units and signs, each with its place."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from elevation.units.format import FRACTION_SLASH, LOWERED, RAISED

VULGAR = {
    "¼": (1, 4),
    "½": (1, 2),
    "¾": (3, 4),
    "⅐": (1, 7),
    "⅑": (1, 9),
    "⅒": (1, 10),
    "⅓": (1, 3),
    "⅔": (2, 3),
    "⅕": (1, 5),
    "⅖": (2, 5),
    "⅗": (3, 5),
    "⅘": (4, 5),
    "⅙": (1, 6),
    "⅚": (5, 6),
    "⅛": (1, 8),
    "⅜": (3, 8),
    "⅝": (5, 8),
    "⅞": (7, 8),
}
"""Ready-made fraction characters of Unicode."""

MM_OF = {
    "in": Fraction(127, 5),
    "ft": Fraction(1524, 5),
    "yd": Fraction(4572, 5),
    "mm": Fraction(1),
    "cm": Fraction(10),
    "dm": Fraction(100),
    "m": Fraction(1000),
}
"""Exact size of each unit in mm: NIST Handbook 44, appendix C (1 in = 2.54 cm exactly, 1 ft = 12 in, 1 yd = 3 ft)."""

_NAMES = {
    "in": "in inch inches zoll",
    "ft": "ft foot feet fuss",
    "yd": "yd yds yard yards",
    "mm": "mm millimeter millimeters millimetre millimetres",
    "cm": "cm centimeter centimeters centimetre centimetres zentimeter",
    "dm": "dm decimeter decimeters decimetre decimetres dezimeter",
    "m": "m meter meters metre metres",
}
_UNIT_OF = {name: unit for unit, names in _NAMES.items() for name in names.split()}

_TOKEN = re.compile(
    rf"""
      (?P<space>\s+)
    | (?P<number>[0-9]+(?:[.,][0-9]+)*|[.,][0-9]+)
    | (?P<set>[{RAISED}]+{FRACTION_SLASH}[{LOWERED}]+)
    | (?P<vulgar>[{"".join(VULGAR)}])
    | (?P<slash>[/{FRACTION_SLASH}∕])
    | (?P<inch>["″”“„]|[']{{2}}|′′|’’)
    | (?P<foot>['′’‘´])
    | (?P<times>[*×·⋅]|[xX](?![A-Za-z]))
    | (?P<word>[A-Za-zß]+\.?)
    | (?P<plus>\+)
    | (?P<minus>[-\u2010\u2011\u2012\u2013\u2212])
    """,
    re.VERBOSE,
)


class Token(NamedTuple):
    """One piece of the text.

    ``kind`` is ``number``, ``fraction``, ``slash``, ``unit``, ``times``, ``plus``, ``minus``, ``end`` or ``unknown``;
    ``text`` the unit's short name or the piece itself; ``value`` a fraction's value.
    """

    kind: str
    text: str
    start: int
    end: int
    value: Fraction | None = None


def scan(text: str) -> list[Token]:
    """Cut ``text`` into tokens; the last one is ``end``, and the first character that means nothing is ``unknown``."""
    tokens: list[Token] = []
    at = 0
    while at < len(text):
        found = _TOKEN.match(text, at)
        if found is None:
            tokens.append(Token("unknown", text[at], at, at + 1))
            return tokens
        kind = found.lastgroup or ""
        if kind != "space":
            tokens.append(_token(kind, found.group(), at, found.end()))
        at = found.end()
    tokens.append(Token("end", "", at, at))
    return tokens


def _token(kind: str, piece: str, start: int, end: int) -> Token:
    if kind == "inch":
        return Token("unit", "in", start, end)
    if kind == "foot":
        return Token("unit", "ft", start, end)
    if kind == "word":
        unit = _UNIT_OF.get(piece.rstrip(".").casefold())
        return Token("unit", unit, start, end) if unit else Token("unknown", piece, start, end)
    if kind == "vulgar":
        return Token("fraction", piece, start, end, Fraction(*VULGAR[piece]))
    if kind == "set":
        top, bottom = piece.split(FRACTION_SLASH)
        numerator = int("".join(str(RAISED.index(digit)) for digit in top[:20]))
        denominator = int("".join(str(LOWERED.index(digit)) for digit in bottom[:20]))
        # A zero below is told apart by its missing value, so that the reader can name the place.
        return Token("fraction", piece, start, end, Fraction(numerator, denominator) if denominator else None)
    return Token(kind, piece, start, end)
