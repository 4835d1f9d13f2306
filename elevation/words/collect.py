"""Every template that the program can say, gathered from its source and its tables."""

from __future__ import annotations

import ast
import csv
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

from msgspec import Struct

from elevation.errors import BadInput
from elevation.units import parse_length

TABLE_COLUMNS = ("name", "authority", "sounds", "shows", "pin", "fix")
"""Columns of the trade's tables that ``term`` says to a person."""


class Template(Struct, frozen=True):
    """A text to translate: ``other`` is its plural or empty, ``files`` where it stands."""

    one: str
    other: str
    files: tuple[str, ...]


class Collected(Struct, frozen=True):
    """Templates in order, and the calls (``file:line``) whose template is not a literal and escapes translation."""

    templates: tuple[Template, ...]
    not_literal: tuple[str, ...]


def places_in(template: str) -> frozenset[str]:
    """Names of the ``{places}`` of a template.

    Raises
    ------
    ValueError
        The braces do not match.
    """
    return frozenset(name for _, name, _, _ in Formatter().parse(template) if name is not None)


def collect(package: Path, tables: Path) -> Collected:
    """Gather the literal templates of ``msg`` and ``msg_plural`` calls and the names in the tables.

    Parameters
    ----------
    package : Path
        Folder of Python source, read with everything below it.
    tables : Path
        Folder of the trade's CSV tables.
    """
    files: dict[str, set[str]] = {}
    others: dict[str, str] = {}
    not_literal: list[str] = []
    for path in sorted(package.rglob("*.py")):
        name = path.relative_to(package.parent).as_posix()
        for found in _calls(ast.parse(path.read_text("utf-8"), str(path))):
            if isinstance(found, int):
                not_literal.append(f"{name}:{found}")
                continue
            one, other = found
            files.setdefault(one, set()).add(name)
            if other:
                others[one] = other
    for path in sorted(tables.glob("*.csv")):
        for text in _names(path):
            files.setdefault(text, set()).add(f"resources/tables/{path.name}")
    templates = tuple(
        Template(one, others.get(one, ""), tuple(sorted(files[one]))) for one in sorted(files) if _has_words(one)
    )
    return Collected(templates, tuple(not_literal))


def _calls(tree: ast.Module) -> Iterator[tuple[str, str] | int]:
    """Templates of the marker calls of a module, or the line where one is not a literal."""
    constants = _constants(tree)
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        called = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
        if called in ("msg", "marked", "said") and node.args:
            texts = _texts(node.args[0], constants)
            yield from ((text, "") for text in texts)
        elif called == "msg_plural" and len(node.args) == 2:
            texts = _texts(node.args[0], constants)
            others = _texts(node.args[1], constants)
            yield from zip(texts, others, strict=False)
            texts = texts if len(texts) == len(others) == 1 else ()
        else:
            continue
        if not texts:
            yield node.lineno


def _texts(node: ast.expr, constants: dict[str, str]) -> tuple[str, ...]:
    """The literals that an expression can be: one, or both of a choice; nothing if any is not a literal."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return (node.value,)
    if isinstance(node, ast.Name) and node.id in constants:
        return (constants[node.id],)
    if isinstance(node, ast.IfExp):
        first, second = _texts(node.body, constants), _texts(node.orelse, constants)
        return first + second if first and second else ()
    return ()


def _constants(tree: ast.Module) -> dict[str, str]:
    """Module-level names bound once to a text."""
    found: dict[str, str] = {}
    for node in tree.body:
        target = node.targets[0] if isinstance(node, ast.Assign) else getattr(node, "target", None)
        value = getattr(node, "value", None)
        if isinstance(target, ast.Name) and isinstance(value, ast.Constant) and isinstance(value.value, str):
            found[target.id] = value.value
    return found


def _has_words(template: str) -> bool:
    """Whether there is anything to translate: words, or a per cent sign, whose spacing differs, or quotes, which do too."""
    text = "".join(literal for literal, _, _, _ in Formatter().parse(template))
    return any(char.isalpha() or char in "%“" for char in text)


def _names(path: Path) -> Iterator[str]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        rows = csv.DictReader(line for line in file if not line.startswith("#"))
        for row in rows:
            for column in TABLE_COLUMNS:
                text = row.get(column) or ""
                if any(char.isalpha() for char in text) and not _is_length(text):
                    yield escaped(text)


def _is_length(text: str) -> bool:
    # A ready-made panel may be named by nothing but its length, which needs no translation.
    try:
        parse_length(text)
    except BadInput:
        return False
    return True


def escaped(text: str) -> str:
    """A text as a template that says just it: its braces doubled."""
    return text.replace("{", "{{").replace("}", "}}")
