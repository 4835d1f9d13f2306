"""Bytes to plain JSON values, trusting nothing: size, text, depth, numbers and doubled keys.

Also the way back: plain values to the bytes of a file.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator
from typing import Any

from elevation.errors import BadInput, said
from elevation.room.nearest import quoted

MOST_BYTES = 4 * 1024 * 1024
"""Largest file that is read. A room with hundreds of windows stays under a tenth of it."""

MOST_DEPTH = 60
"""Deepest nesting that is read; a room needs about sixteen levels."""


class _Pairs(dict[str, Any]):
    """A JSON object that remembers which keys it was given twice."""

    doubled: tuple[str, ...] = ()


class _Refused:
    """What stands where a number should and is none: carried to where its path is known."""

    def __init__(self, wrong: str) -> None:
        self.wrong = wrong


def _pairs(pairs: list[tuple[str, Any]]) -> _Pairs:
    made = _Pairs(pairs)
    if len(made) != len(pairs):
        counts = Counter(key for key, _ in pairs)
        made.doubled = tuple(key for key, count in counts.items() if count > 1)
    return made


def _constant(word: str) -> _Refused:
    # ``NaN`` and ``Infinity``: Python's reader takes them, JSON knows neither.
    return _Refused(said("is {word} where a number should be", word=word))


def _whole(digits: str) -> int | _Refused:
    try:
        return int(digits)
    except ValueError:  # Python reads no whole number of thousands of digits.
        return _Refused(said("is a number that is far too long"))


def decode_text(data: bytes, name: str) -> str:
    """The text in ``data``.

    A byte order mark at the start is skipped: some editors write one.

    Raises
    ------
    BadInput
        Too large, empty or not UTF-8.
    """
    if len(data) > MOST_BYTES:
        raise BadInput(
            name,
            "",
            said("is larger than {most} MB", most=MOST_BYTES // 2**20),
            said("no room file is; choose another file"),
        )
    if not data.strip():
        raise BadInput(name, "", said("is empty"), said("choose a room file"))
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise BadInput(
            name,
            said("byte {place}", place=error.start),
            said("is not UTF-8 text"),
            said("choose a room file, or save it as UTF-8"),
        ) from None


def parse_json(text: str, name: str) -> Any:
    """The JSON value in ``text``.

    Raises
    ------
    BadInput
        Not JSON, too deeply nested, a number that JSON does not know, or a key given twice.
    """
    try:
        value = json.loads(text, object_pairs_hook=_pairs, parse_constant=_constant, parse_int=_whole)
    except RecursionError:
        raise BadInput(name, "", said("is nested too deeply"), said("choose a room file")) from None
    except json.JSONDecodeError as error:
        where = said("line {line}, column {column}", line=error.lineno, column=error.colno)
        # Python words it "Expecting ',' delimiter" or "Unterminated string starting at".
        raise BadInput(
            name, where, said("is not JSON here ({reason})", reason=_reason(error.msg)), said("mend it or take a copy")
        ) from None
    for path, key in _doubled(value, "", 0, name):
        raise BadInput(name, join(path, key), said("is given twice"), said("keep one of the two"))
    return value


_REASONS = {
    "expecting value": said("a value is missing"),
    "expecting ',' delimiter": said("a comma is missing"),
    "expecting ':' delimiter": said("a colon is missing"),
    "expecting property name enclosed in double quotes": said("a key in double quotes is missing"),
    "illegal trailing comma before end of object": said("a comma stands before a closing bracket"),
    "illegal trailing comma before end of array": said("a comma stands before a closing bracket"),
    "unterminated string starting at": said("a text has no closing quote"),
    "invalid control character at": said("a text holds a line end or another control sign"),
    "extra data": said("something follows after the end"),
}
"""What Python's reader of JSON finds, in words for people; what is not here is told as Python tells it."""


def _reason(found: str) -> str:
    small = found.lower()
    return _REASONS.get(small, small)


def _doubled(value: Any, path: str, depth: int, name: str) -> Iterator[tuple[str, str]]:
    if depth > MOST_DEPTH:
        raise BadInput(name, "", said("is nested too deeply"), said("choose a room file"))
    if isinstance(value, _Refused):
        raise BadInput(name, path, value.wrong, said("write a plain number"))
    if isinstance(value, _Pairs):
        for key in value.doubled:
            yield path, key
        for key, inner in value.items():
            yield from _doubled(inner, join(path, key), depth + 1, name)
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from _doubled(inner, f"{path}[{index}]", depth + 1, name)


def join(path: str, key: str) -> str:
    """``path.key``, with keys that are not plain words in quotes."""
    shown = key if key.replace("_", "a").replace("-", "a").isalnum() and len(key) <= 40 else quoted(key)
    return f"{path}.{shown}" if path else shown


def to_bytes(value: dict[str, Any]) -> bytes:
    """The bytes of a file that holds ``value``: two-space indent, keys as they stand, a line end at the end."""
    return (json.dumps(value, indent=2, ensure_ascii=False, allow_nan=False) + "\n").encode("utf-8")
