"""One line of a table, split into cells, with everything refused that no table holds."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator

from elevation.errors import BadInput, said
from elevation.words.plain import is_plain

MOST_BYTES = 1024 * 1024
"""Largest table that is read; ours take a hundredth of it."""

MOST_CELL = 300
"""Longest cell, in characters: a source with its title and address."""

_MOST_LINE = 40 * MOST_CELL


def check_size(size: int, name: str) -> None:
    """Refuse a table that is larger than any table is.

    Raises
    ------
    BadInput
        It has more than ``MOST_BYTES``.
    """
    if size > MOST_BYTES:
        raise BadInput(
            name, "", said("is larger than {most} MB", most=MOST_BYTES // 2**20), said("no table is; choose another file")
        )


def filled_lines(content: str) -> Iterator[tuple[int, str]]:
    """The lines that hold cells, with their numbers from 1; comments and empty lines are passed over."""
    for number, line in enumerate(io.StringIO(content.lstrip("\ufeff")), start=1):
        if line.strip() and not line.lstrip().startswith("#"):
            yield number, line


def _line(number: int) -> str:
    return said("line {number}", number=number)


def split_line(line: str, name: str, number: int) -> list[str]:
    """The cells of a line, bare of blanks around them.

    Raises
    ------
    BadInput
        A quotation mark stands where none may, a cell is too long, or holds a sign that cannot be shown.
    """
    if len(line) > _MOST_LINE:
        raise BadInput(
            name, _line(number), said("is longer than {most} characters", most=_MOST_LINE), said("write one row in a line")
        )
    try:
        found = [cell.strip() for cell in next(csv.reader([line], strict=True), [])]
    except csv.Error:
        raise BadInput(
            name, _line(number), said("has a quotation mark in the wrong place"), said('write "..." round a cell')
        ) from None
    for cell in found:
        if len(cell) > MOST_CELL:
            raise BadInput(
                name, _line(number), said("has a cell of more than {most} characters", most=MOST_CELL), said("shorten it")
            )
        if not is_plain(cell):
            raise BadInput(
                name,
                _line(number),
                said("holds a sign that cannot be shown"),
                said("write letters, figures and signs only"),
            )
    return found
