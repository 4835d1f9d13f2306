"""Rows of the tables as cells again: what a room carries of a person's own rows, and reads them back from."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from decimal import Decimal
from typing import Any

from msgspec import NODEFAULT
from msgspec.structs import fields

from elevation.errors import BadInput, said
from elevation.trade import cells
from elevation.trade.csv_lines import MOST_CELL
from elevation.trade.own import Table


def _figure(value: float) -> str:
    # Every digit, and never an exponent: cells know none.
    return format(Decimal(repr(float(value))), "f")


def _length(value: float) -> str:
    # To a millionth of a millimetre: the reader of lengths takes twelve figures.
    text = _figure(round(value, 6))
    # Three figures after the sign could be thousands: a fourth says that they are not.
    return f"{text}0 mm" if len(text.partition(".")[2]) == 3 else f"{text} mm"


def _offsets(values: tuple[float, ...]) -> str:
    return "; ".join(f"{'-' if value < 0 else ''}{_length(abs(value))}" for value in values) or "none"


_WRITERS: dict[object, Callable[[Any], str]] = {
    cells.length: _length,
    cells.pitch: _length,
    cells.offsets: _offsets,
    cells.area: lambda value: f"{_figure(value)} mm2",
    cells.stress: lambda value: f"{_figure(value)} MPa",
    cells.force: lambda value: f"{_figure(value)} N",
    cells.mass: lambda value: f"{_figure(value)} kg",
    cells.density: lambda value: f"{_figure(value)} kg/m3",
    cells.ratio: _figure,
    cells.whole: str,
    cells.yes: lambda value: "yes" if value else "no",
}
"""How a value is written that was read so; everything else is text."""


def _writer(read: Callable[[str], object]) -> Callable[[Any], str]:
    return _WRITERS.get(read.read if isinstance(read, cells.Bounded) else read, str)


def cells_of(table: Table, row: Any) -> dict[str, str]:
    """A row's cells by their titles, without its id; reading them gives the very row again.

    Parameters
    ----------
    table : Table
    row : struct
        Of ``table.row``.
    """
    return {
        column.title: _writer(column.read)(getattr(row, column.field)) for column in table.columns if column.field != "id"
    }


def row_of_cells(table: Table, row_id: str, given: Mapping[str, str]) -> Any:
    """The row that cells by their titles make.

    Raises
    ------
    BadInput
        A title is unknown, a cell wrong or missing: with its title.
    """
    unknown = next((title for title in given if title not in table.titles or title == "id"), None)
    if unknown is not None:
        raise BadInput("", unknown, said("is no column of that table"), said("take it away"))
    long = next((title for title, cell in given.items() if len(cell) > MOST_CELL), None)
    if long is not None:
        raise BadInput("", long, said("has a cell of more than {most} characters", most=MOST_CELL), said("shorten it"))
    made: dict[str, object] = {"id": row_id}
    usual = {field.name for field in fields(table.row) if field.default is not NODEFAULT}
    for column in table.columns:
        if column.title in given:
            try:
                made[column.field] = column.read(given[column.title])
            except BadInput as trouble:
                raise BadInput("", column.title, trouble.wrong, trouble.right) from None
        elif column.field not in usual and column.field != "id":
            raise BadInput("", column.title, said("is missing"), said("write that cell"))
    return table.row(**made)
