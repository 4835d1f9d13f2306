"""A person's own rows of the trade's tables: kept in her own CSV files, laid over the program's.

A file of hers has the name and the columns of the program's. A row with an id of the program's takes its place, others
are added. A column that came with a later version may be missing where the row has a usual value for it.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from msgspec import NODEFAULT, Struct
from msgspec.structs import fields, replace

from elevation import places
from elevation.errors import BadInput, Missing, said
from elevation.trade import model, tables
from elevation.trade.csv_lines import MOST_BYTES, check_size, filled_lines, split_line
from elevation.trade.model import Trade
from elevation.trade.tables import OWN_PREFIX, Column, nearest, read_table

Cells = tuple[str, ...]

BAR = "rod"
"""Parts of this kind are bars: they have a length each, and pieces are cut from them."""


class Table(Struct, frozen=True):
    """A table that rows of one's own can be added to.

    Attributes
    ----------
    name : str
        Field of ``Trade``, and the file's name without its ending.
    columns : tuple of Column
    row : type
        Of its rows.
    make : callable or None
        Makes a row from its fields; None: the type does.
    """

    name: str
    columns: tuple[Column, ...]
    row: Any
    make: Callable[..., Any] | None = None

    @property
    def file(self) -> str:
        """The file's name."""
        return f"{self.name}.csv"

    @property
    def titles(self) -> Cells:
        """Titles of its columns, in the order of the program."""
        return tuple(column.title for column in self.columns)


TABLES = (
    Table("headings", tables.HEADINGS, model.HeadingRow),
    Table("fabrics", tables.FABRICS, model.FabricRow),
    Table("ready_made", tables.READY_MADE, model.ReadyMadeRow),
    Table("ready_widths", tables.READY_WIDTHS, model.ReadyWidthRow),
    Table("sections", tables.SECTIONS, model.SectionRow),
    Table("materials", tables.MATERIALS, model.MaterialRow),
    Table("brackets", tables.BRACKETS, model.BracketRow),
    Table("ends", tables.ENDS, model.EndRow),
    Table("fixings", tables.FIXINGS, model.FixingRow),
    Table("bodies", tables.BODIES, model.BodyRow),
    Table("allowances", tables.ALLOWANCES, model.AllowanceRow),
    Table("saws", tables.SAWS, model.SawRow),
)
"""Limits have their own place in the room, substrates and bands are facts of the wall: those stand as they are."""


HERS = (
    Table("shelf", tables.SHELF, model.ShelfRow),
    Table("prices", tables.PRICES, model.PriceRow, tables.price_row),
)
"""Tables that are all her own: what lies on her shelf, what things cost where she lives."""


DRILLS = Table("drills", tables.DRILLS, model.DrillRow)
"""Hers to add to as well, but no room names a drill: none is carried along."""


EVERY = (*TABLES, DRILLS, *HERS)
"""All tables that rows of hers can be laid over, as the window shows them."""


def table_named(name: str) -> Table:
    """The table of that name."""
    return next(table for table in EVERY if table.name == name)


def shipped_cells(table: Table) -> tuple[Cells, ...]:
    """The rows of the program's own table as they are written, in the order of ``table.titles``."""
    path = places.resources() / "tables" / table.file
    return _cells(path.read_text(encoding="utf-8-sig"), table, path.name)


def own_cells(table: Table, folder: Path) -> tuple[Cells, ...]:
    """A person's own rows as they are written; empty where there are none."""
    path = folder / table.file
    content = _content(path)
    return () if content is None else _cells(content, table, str(path))


def _content(path: Path) -> str | None:
    try:
        with path.open("rb") as stream:
            data = stream.read(MOST_BYTES + 1)
        check_size(len(data), str(path))
        return data.decode("utf-8-sig")
    except FileNotFoundError:
        return None
    except OSError as trouble:
        raise Missing(str(path), "", said("cannot be read"), trouble.strerror or "") from None
    except UnicodeDecodeError as trouble:
        wrong = said("is not UTF-8")
        raise BadInput(
            str(path), said("byte {number}", number=trouble.start), wrong, said("save the table as UTF-8")
        ) from None


def _cells(content: str, table: Table, name: str) -> tuple[Cells, ...]:
    found = [split_line(line, name, number) for number, line in filled_lines(content)]
    if not found:
        return ()
    places_of = {title: index for index, title in enumerate(found[0])}
    usual = usual_cells(table)
    return tuple(
        tuple(
            row[places_of[title]] if title in places_of and places_of[title] < len(row) else usual[title]
            for title in table.titles
        )
        for row in found[1:]
    )


def usual_cells(table: Table) -> dict[str, str]:
    """What a new row has in each column before anything is written there."""
    first = dict.fromkeys(table.titles, "")
    if "source" in first:
        first["source"] = "measured by me"
        first["sure"] = "one source"
    return first


def read_rows(table: Table, content: str, name: str) -> dict[str, Any]:
    """Read own rows; columns that they lack and that have a usual value are passed over.

    Raises
    ------
    BadInput
        With file, line and column.
    """
    has_usual = {field.name for field in fields(table.row) if field.default is not NODEFAULT}
    first = next(filled_lines(content), None)
    titles = set() if first is None else set(split_line(first[1], name, first[0]))
    columns = tuple(one for one in table.columns if one.title in titles or one.field not in has_usual)
    return read_table(content, name, columns, table.make or table.row)


def with_own(trade: Trade, folder: Path) -> Trade:
    """The trade with a person's own rows laid over it.

    Parameters
    ----------
    trade : Trade
    folder : Path
        Where her tables are; nothing there is no trouble.

    Raises
    ------
    BadInput
        A cell of hers is wrong: file, line and column are named.
    """
    found: dict[str, dict[str, Any]] = {}
    for table in EVERY:
        content = _content(folder / table.file)
        if content is not None:
            found[table.name] = {**getattr(trade, table.name), **read_rows(table, content, str(folder / table.file))}
    if not found:
        return trade
    made = replace(trade, **found)
    check_materials(made, str(folder / "sections.csv"))
    check_shelf(made, str(folder / "shelf.csv"))
    return made


def check_materials(trade: Trade, name: str) -> None:
    """Refuse a section of a material that nobody knows.

    Raises
    ------
    BadInput
        With the row's id.
    """
    for row in trade.sections.values():
        if row.material not in trade.materials:
            wrong = said('is of "{material}", which is no material', material=row.material)
            raise BadInput(name, said('row "{id}"', id=row.id), wrong, nearest(row.material, trade.materials))


def check_shelf(trade: Trade, name: str) -> None:
    """Refuse a bar on the shelf that has no length, or is of a section that nobody knows.

    Raises
    ------
    BadInput
        With the row's id.
    """
    for row in trade.shelf.values():
        kind, _, section = row.part.partition(":")
        if kind != BAR:
            continue
        where = said('row "{id}"', id=row.id)
        if section not in trade.sections:
            wrong = said('is a bar of "{section}", which is no section', section=section)
            raise BadInput(name, where, wrong, nearest(section, trade.sections))
        if row.length_mm <= 0:
            raise BadInput(name, where, said("is a bar without a length"), said("write for example 62 in"))


def written(table: Table, rows: Sequence[Cells]) -> str:
    """The CSV text of own rows, checked.

    Raises
    ------
    BadInput
        With the row's name and the column, where a cell is wrong.
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(table.titles)
    writer.writerows(rows)
    content = out.getvalue()
    read_rows(table, content, table.file)
    return content


def check_cell(column: Column, cell: str) -> BadInput | None:
    """What is wrong with a cell; None where nothing is."""
    try:
        column.read(cell)
    except BadInput as trouble:
        return trouble
    return None


def free_id(wanted: str, taken: Sequence[str]) -> str:
    """An id for a row of one's own that nobody else has: it begins with ``my-``."""
    base = wanted if wanted.startswith(OWN_PREFIX) else OWN_PREFIX + wanted
    number, found = 2, base
    while found in taken:
        found, number = f"{base}-{number}", number + 1
    return found


def load_with_own(load: Callable[[], Trade], folder: Path | None = None) -> Trade:
    """The program's tables with a person's own over them.

    Parameters
    ----------
    load : callable
        Loads the program's.
    folder : Path or None
        None: ``places.own_tables``.
    """
    return with_own(load(), places.own_tables() if folder is None else folder)
