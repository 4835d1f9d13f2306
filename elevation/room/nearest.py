"""The nearest right word to a wrong one, and how a wrong value is quoted."""

from __future__ import annotations

from collections.abc import Iterable

from elevation.errors import said

_MOST_NAMED = 16
"""So many words to choose from are named; of more, the likest."""

_QUOTED = 40

_LIKENED = 200
"""No right word is nearly as long; what follows tells nothing, and to liken all of a damaged file's takes seconds."""


def nearest(wrong: str, right: Iterable[str]) -> str | None:
    """The word of ``right`` that looks most like ``wrong``; None if there are none.

    Ties go to the word that stands first, so that the answer does not depend on chance.

    Parameters
    ----------
    wrong : str
        What was written.
    right : iterable of str
        What could have been meant.
    """
    small = wrong[:_LIKENED].casefold()
    best: str | None = None
    best_likeness = -1.0
    for word in right:
        likeness = _likeness(small, word)
        if likeness > best_likeness:
            best, best_likeness = word, likeness
    return best


def _likeness(small: str, word: str) -> float:
    from difflib import SequenceMatcher  # Needed where something is wrong, and slow to load.

    return SequenceMatcher(None, small, word.casefold()).ratio()


def advice(wrong: str, right: Iterable[str]) -> str:
    """What to write instead: the nearest word first, then all of them.

    Parameters
    ----------
    wrong : str
        What was written.
    right : iterable of str
        What could have been meant.
    """
    words = tuple(right)
    best = nearest(wrong, words)
    if best is None:
        return said("there is none to choose from")
    if len(words) == 1:
        return said('write "{best}"', best=best)
    if len(words) > _MOST_NAMED:
        # A sentence that lists every hold of the file is read by nobody: the likest are named.
        small = wrong[:_LIKENED].casefold()
        likest = sorted(words, key=lambda word: -_likeness(small, word))[:_MOST_NAMED]
        named = ", ".join(word for word in words if word in likest)
        return said('did you mean "{best}"? It may be {choices} and others', best=best, choices=named)
    return said('did you mean "{best}"? It may be {choices}', best=best, choices=", ".join(words))


def quoted(value: object) -> str:
    """``value`` as a short text in quotes (texts) or as it stands (numbers), safe on one line."""
    if isinstance(value, str):
        shown = "".join(sign if sign.isprintable() else "�" for sign in value[: _QUOTED + 1])
        return f'"{shown[:_QUOTED]}…"' if len(shown) > _QUOTED else f'"{shown}"'
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dict):
        return said("an object")
    if isinstance(value, list):
        return said("a list")
    shown = repr(value)
    return f"{shown[:_QUOTED]}…" if len(shown) > _QUOTED else shown
