"""How wide text is, from the advance table; breaking and shortening text to a width.

All painters switch kerning, ligatures and hinting off, so a text is as wide as the sum of its advances.
Widths and heights are paper mm; a height is the type size (em).
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache

import msgspec

from elevation.places import resources

CAP = 0.66
"""Height of a capital or a figure, in em."""

DESCENT = 0.205
"""How far p and g hang below the baseline, in em."""

_WIDE = 1000.0
_USUAL = 550.0


class _Table(msgspec.Struct, frozen=True):
    family: str
    weights: dict[str, dict[str, float]]


@lru_cache(maxsize=1)
def _advances() -> dict[str, dict[str, float]]:
    data = (resources() / "type" / "advances.json").read_bytes()
    return msgspec.json.decode(data, type=_Table).weights


def _foreign(character: str) -> float:
    # A viewer takes such a character from another font; the room we leave for it is the usual one.
    if unicodedata.combining(character) or unicodedata.category(character) in ("Cf", "Cc"):
        return 0.0
    return _WIDE if unicodedata.east_asian_width(character) in "WF" else _USUAL


@lru_cache(maxsize=2048)
def text_width(text: str, height: float, weight: str = "regular") -> float:
    """The width of one line of text.

    Parameters
    ----------
    text : str
    height : float
        Type size (em), paper mm.
    weight : str
        ``regular``, ``semibold`` or ``italic``.

    Returns
    -------
    float
        Sum of the advances, paper mm.
    """
    table = _advances()[weight]
    thousandths = 0.0
    for character in text:
        advance = table.get(character)
        thousandths += _foreign(character) if advance is None else advance
    return thousandths * height / 1000.0


def shorten(text: str, height: float, width: float, weight: str = "regular") -> str:
    """The text, or as much of it as fits into ``width`` with an ellipsis."""
    if text_width(text, height, weight) <= width:
        return text
    kept = text
    while kept and text_width(kept.rstrip() + "…", height, weight) > width:
        kept = kept[:-1]
    return kept.rstrip() + "…"


def _pieces(word: str, height: float, width: float, weight: str) -> list[str]:
    # A word wider than the column is broken where it must be.
    pieces = []
    while len(word) > 1 and text_width(word, height, weight) > width:
        cut = len(word) - 1
        while cut > 1 and text_width(word[:cut], height, weight) > width:
            cut -= 1
        pieces.append(word[:cut])
        word = word[cut:]
    return [*pieces, word]


def wrap(text: str, height: float, width: float, weight: str = "regular") -> tuple[str, ...]:
    """The text broken into lines no wider than ``width`` (paper mm); white space is folded, a no-break space holds."""
    lines: list[str] = []
    line = ""
    # str.split() would also break at the no-break spaces that keep figures and units together.
    words = [word for word in text.replace("\n", " ").replace("\t", " ").split(" ") if word]
    for word in words:
        for piece in _pieces(word, height, width, weight):
            longer = f"{line} {piece}" if line else piece
            if line and text_width(longer, height, weight) > width:
                lines.append(line)
                line = piece
            else:
                line = longer
    if line:
        lines.append(line)
    return tuple(lines)
