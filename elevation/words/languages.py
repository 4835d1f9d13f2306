"""The languages the program speaks, and their catalogues."""

from __future__ import annotations

from functools import lru_cache
from gettext import GNUTranslations, NullTranslations

from elevation import places

SOURCE_LANGUAGE = "en"
"""The language that the templates are written in; it needs no catalogue."""

_DECIMAL_COMMA = frozenset({"de"})


@lru_cache(maxsize=1)
def languages() -> tuple[str, ...]:
    """Codes of the languages that can be said, the language of the templates first."""
    found = sorted(path.stem for path in (places.resources() / "words").glob("*.mo"))
    return (SOURCE_LANGUAGE, *found)


def decimal_mark_of(language: str) -> str:
    """The decimal mark that a language uses: ``"."`` or ``","``."""
    return "," if language in _DECIMAL_COMMA else "."


@lru_cache(maxsize=16)
def catalogue_of(language: str) -> NullTranslations:
    """The translations of a language; a language without catalogue says the templates as they are."""
    path = places.resources() / "words" / f"{language}.mo"
    if language not in languages()[1:]:
        return NullTranslations()
    with path.open("rb") as file:
        return GNUTranslations(file)
