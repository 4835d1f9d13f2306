"""Plain JSON values to the room's frozen data, strictly, with the place of every fault.

Driven by the annotations of ``room.model``: a field that is added there can be read at once.
"""

from __future__ import annotations

import math
import types
from collections.abc import Callable
from functools import cache
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from msgspec import NODEFAULT, Struct
from msgspec.structs import fields

from elevation.errors import BadInput, said
from elevation.room.model import Room
from elevation.room.nearest import advice, quoted
from elevation.room.raw_json import join
from elevation.units import Length, parse_length
from elevation.words.plain import is_plain

MOST_TEXT = 200
"""Longest name, in characters."""

_Reader = Callable[[Any, str, str], Any]
"""(value, path in the file, the file's name) -> what it means."""


def decode_room(value: dict[str, Any], name: str) -> Room:
    """The room that ``value`` (without ``format`` and ``version``) says.

    Parameters
    ----------
    value : dict
        A JSON object.
    name : str
        The file's name, for sentences.

    Raises
    ------
    BadInput
        An unknown, missing or mistyped key; the sentence gives its path.
    """
    room = _reader(Room)(value, "", name)
    assert isinstance(room, Room)
    return room


@cache
def _reader(kind: Any) -> _Reader:
    """The reader of one annotation."""
    origin = get_origin(kind)
    if origin is Literal:
        return _choice(get_args(kind))
    if origin in (Union, types.UnionType):
        (inner,) = [part for part in get_args(kind) if part is not type(None)]
        return _optional(_reader(inner))
    if origin is tuple:
        return _list(_reader(get_args(kind)[0]))
    if origin is dict:
        return _table(_reader(get_args(kind)[1]))
    if kind is Length:
        return _length
    if isinstance(kind, type) and issubclass(kind, Struct):
        return _struct(kind)
    return {str: _text, bool: _flag, int: _whole, float: _number}[kind]


def _optional(inner: _Reader) -> _Reader:
    def read(value: Any, path: str, name: str) -> Any:
        return None if value is None else inner(value, path, name)

    return read


def _list(inner: _Reader) -> _Reader:
    def read(value: Any, path: str, name: str) -> Any:
        if not isinstance(value, list):
            raise BadInput(name, path, said("is {value}, not a list", value=quoted(value)), said("put it in [ and ]"))
        return tuple(inner(item, f"{path}[{index}]", name) for index, item in enumerate(value))

    return read


def _table(inner: _Reader) -> _Reader:
    def read(value: Any, path: str, name: str) -> Any:
        if not isinstance(value, dict):
            raise BadInput(name, path, said("is {value}, not an object", value=quoted(value)), said("put it in {{ and }}"))
        return {_text(key, path, name): inner(item, join(path, key), name) for key, item in value.items()}

    return read


def _choice(choices: tuple[str, ...]) -> _Reader:
    def read(value: Any, path: str, name: str) -> Any:
        if isinstance(value, str) and value in choices:
            return value
        wrong = value if isinstance(value, str) else ""
        raise BadInput(name, path, said("is {value}, which it cannot be", value=quoted(value)), advice(wrong, choices))

    return read


def _struct(kind: type[Struct]) -> _Reader:
    hints = get_type_hints(kind)
    parts = {field.name: _reader(hints[field.name]) for field in fields(kind)}
    needed = tuple(
        field.name for field in fields(kind) if field.default is NODEFAULT and field.default_factory is NODEFAULT
    )

    def read(value: Any, path: str, name: str) -> Any:
        if not isinstance(value, dict):
            raise BadInput(
                name,
                path,
                said("is {value}, not an object", value=quoted(value)),
                said("write {{{keys}}}", keys=_example(needed)),
            )
        made = {}
        for key, item in value.items():
            part = parts.get(key)
            if part is None:
                raise BadInput(name, join(path, key), said("is not a key that belongs here"), advice(key, parts))
            made[key] = part(item, join(path, key), name)
        for key in needed:
            if key not in made:
                raise BadInput(name, path, said('has no "{key}"', key=key), said("add it: it cannot be left out"))
        return kind(**made)

    return read


def _example(needed: tuple[str, ...]) -> str:
    return ", ".join(f'"{key}": …' for key in needed) or "…"


def _text(value: Any, path: str, name: str) -> str:
    if not isinstance(value, str):
        raise BadInput(name, path, said("is {value}, not a text", value=quoted(value)), said("put it in quotes"))
    if len(value) > MOST_TEXT:
        raise BadInput(name, path, said("is longer than {most} characters", most=MOST_TEXT), said("shorten it"))
    if not is_plain(value):
        raise BadInput(name, path, said("holds a sign that cannot be shown"), said("write letters, figures and signs only"))
    return value


def _flag(value: Any, path: str, name: str) -> bool:
    if not isinstance(value, bool):
        raise BadInput(
            name,
            path,
            said("is {value}, not true or false", value=quoted(value)),
            said("write true or false without quotes"),
        )
    return value


def _whole(value: Any, path: str, name: str) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise BadInput(name, path, said("is {value}, not a whole number", value=quoted(value)), said("write for example 2"))
    return value


def _number(value: Any, path: str, name: str) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise BadInput(name, path, said("is {value}, not a number", value=quoted(value)), said("write for example 90"))
    try:
        number = float(value)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        raise BadInput(name, path, said("is too large a number"), said("write for example 90"))
    return number


def _length(value: Any, path: str, name: str) -> Length:
    if not isinstance(value, str):
        right = (
            said('write "{text} in" or "{text} mm"', text=str(value))
            if _is_small_number(value)
            else said('write for example "50 3/8 in"')
        )
        raise BadInput(name, path, said("is {value}, not a length in quotes", value=quoted(value)), right)
    text = _text(value, path, name)
    length = parse_length(text, "in", what=name, where=path)
    if length.mm != parse_length(text, "mm", what=name, where=path).mm:
        raise BadInput(
            name,
            path,
            said("is {text}, without a unit", text=quoted(text)),
            said('write "{text} in" or "{text} mm"', text=text),
        )
    return Length(length.mm, text)


def _is_small_number(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and abs(value) < 1e6
