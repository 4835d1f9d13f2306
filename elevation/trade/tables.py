"""The tables in ``resources/tables`` read into typed rows, and the one frozen ``Trade`` that holds them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, TypeVar

from msgspec import Struct

from elevation import places
from elevation.errors import BadInput, Missing, NoSuch, said
from elevation.trade import cells
from elevation.trade.csv_lines import filled_lines, split_line
from elevation.trade.model import (
    AllowanceRow,
    BandRow,
    BodyRow,
    BracketPartRow,
    BracketRow,
    CutRow,
    DrillRow,
    EndRow,
    FabricRow,
    FinishRow,
    FixingRow,
    FlatRow,
    HeadingRow,
    LimitRow,
    MaterialRow,
    PackRow,
    PriceRow,
    ReadyMadeRow,
    ReadyWidthRow,
    RingRow,
    SawRow,
    SectionRow,
    ShelfRow,
    SubstrateRow,
    ToolRow,
    Trade,
)

Row = TypeVar("Row")
Reader = Callable[[str], object]

OWN_PREFIX = "my-"
"""Ids of a person's own rows begin so."""
_SURE = cells.one_of("published", "one source", "common practice", "from memory")
_LIMIT_KINDS: dict[str, Callable[[str], float]] = {
    "length": cells.length,
    "area": cells.area,
    "ratio": cells.ratio,
    "force": cells.force,
    "mass": cells.mass,
}


class Column(Struct, frozen=True):
    """A column of a table: its title in the file, the row's field, and how a cell is read."""

    title: str
    field: str
    read: Reader


def _columns(*middle: Column) -> tuple[Column, ...]:
    head = (Column("id", "id", cells.text), Column("name", "name", cells.text))
    return (*head, *middle, Column("source", "source", cells.text), Column("sure", "sure", _SURE))


DRAWINGS = (
    "rings", "pinch", "two-finger", "goblet", "cartridge", "inverted", "box", "pencil", "wave", "tabs", "back-tabs",
    "eyelets", "pocket",
)  # fmt: skip
"""Kinds of drawing of a heading."""

HEADINGS = _columns(
    Column("drop", "drop_mm", cells.length),
    Column("rod", "rod_mm", cells.length),
    Column("pitch", "pitch_mm", cells.pitch),
    Column("carries", "carries", cells.one_of("rings", "sleeve")),
    Column("fullness low", "fullness_low", cells.between(1.0, 6.0, cells.ratio)),
    Column("fullness typical", "fullness_typical", cells.between(1.0, 6.0, cells.ratio)),
    Column("fullness high", "fullness_high", cells.between(1.0, 6.0, cells.ratio)),
    Column("stack low", "stack_low_mm", cells.size),
    Column("stack", "stack_mm", cells.size),
    Column("stack high", "stack_high_mm", cells.size),
    Column("plus", "stack_plus_mm", cells.extent),
    Column("model", "stack_model", cells.one_of("flat-on-rings", "pleated-on-cord")),
    Column("folds", "folds", cells.ratio),
    Column("even", "even", cells.yes),
    Column("parks", "parks_outside", cells.yes),
    Column("datum", "datum", cells.one_of("ring-eye", "rod-top", "cloth-top")),
    Column("turned", "turned_in_mm", cells.extent),
    Column("pleat low", "pleat_low_mm", cells.extent),
    Column("pleat high", "pleat_high_mm", cells.extent),
    Column("space low", "space_low_mm", cells.extent),
    Column("space high", "space_high_mm", cells.extent),
    Column("draw", "drawing", cells.one_of(*DRAWINGS)),
    Column("common", "is_common", cells.yes),
)
SECTIONS = _columns(
    Column("material", "material", cells.text),
    Column("outer", "outer_mm", cells.size),
    Column("wall", "wall_mm", cells.extent),
    Column("stock", "stock_mm", cells.size),
)
FIXINGS = _columns(
    Column("into", "into", cells.one_of("wood", "board", "board-steel", "masonry")),
    Column("diameter", "diameter_mm", cells.extent),
    Column("length", "length_mm", cells.extent),
    Column("pull", "pull_n", cells.force),
    Column("shear", "shear_n", cells.force),
    Column("shear through", "through_n", cells.force),
    Column("factor", "factor", cells.more_than(0.0, cells.ratio)),
    Column("friction", "friction", cells.yes),
    Column("drill", "drill", cells.text),
)
MATERIALS = _columns(
    Column("elastic", "elastic", cells.more_than(0.0, cells.stress)),
    Column("density", "density", cells.more_than(0.0, cells.density)),
    Column("yields", "yields", cells.more_than(0.0, cells.stress)),
    Column("bends to", "bends_to", cells.more_than(0.0, cells.stress)),
    Column("creep", "creep", cells.more_than(0.0, cells.ratio)),
    Column("looks", "looks", cells.text),
)
BRACKETS = _columns(
    Column("plate width", "plate_width_mm", cells.extent),
    Column("plate above", "plate_above_mm", cells.extent),
    Column("plate below", "plate_below_mm", cells.extent),
    Column("width", "width_mm", cells.size),
    Column("rings pass", "rings_pass", cells.yes),
    Column("mount", "mount", cells.one_of("wall", "ceiling", "sash", "layer")),
    Column("drop", "drop_mm", cells.length),
    Column("holes", "holes_mm", cells.offsets),
    Column("arm wide", "arm_wide_mm", cells.extent),
    Column("arm deep", "arm_deep_mm", cells.extent),
    Column("holds down", "holds_down", cells.yes),
    Column("projection", "out_mm", cells.extent),
)
ENDS = _columns(
    Column("extra tube", "extra_tube_mm", cells.extent),
    Column("length", "length_mm", cells.extent),
    Column("diameter", "diameter_mm", cells.extent),
    Column("shape", "shape", cells.one_of("none", "cap", "ball", "spear", "socket", "return")),
    Column("bend", "bend_mm", cells.extent),
    Column("holes", "holes_mm", cells.offsets),
    Column("plate below", "plate_below_mm", cells.extent),
)
ALLOWANCES = _columns(Column("length", "length_mm", cells.length))
READY_MADE = _columns(
    Column("market", "market", cells.one_of("in", "mm")),
    Column("length", "length_mm", cells.size),
)
READY_WIDTHS = _columns(
    Column("market", "market", cells.one_of("in", "mm")),
    Column("width", "width_mm", cells.size),
)
BODIES = _columns(
    Column("stack factor", "stack_factor", cells.more_than(0.0, cells.ratio)),
    Column("pleated factor", "pleated_factor", cells.more_than(0.0, cells.ratio)),
    Column("grams", "grams", cells.more_than(0.0, cells.ratio)),
)
FABRICS = _columns(
    Column("kind", "kind", cells.one_of("face", "lining", "interlining")),
    Column("grams", "grams", cells.more_than(0.0, cells.ratio)),
    Column("transmits", "transmits", cells.between(0.0, 1.0, cells.ratio)),
    Column("width", "width_mm", cells.size),
    Column("shrinks", "shrinks", cells.between(0.0, 0.3, cells.ratio)),
    Column("way", "one_way", cells.yes),
    Column("body", "body", cells.one_of("sheer", "light", "medium", "lined", "interlined")),
)
SUBSTRATES = _columns(
    Column("build", "build", cells.one_of("unknown", "studs", "battens", "dabs", "masonry", "timber")),
    Column("sounds", "sounds", cells.text),
    Column("shows", "shows", cells.text),
    Column("pin", "pin", cells.text),
    Column("fix", "fix", cells.text),
)
SAWS = _columns(
    Column("kerf", "kerf_mm", cells.extent),
)
RINGS = _columns(Column("bore", "bore_mm", cells.size))
PACKS = _columns(Column("count", "count", cells.ratio))
TOOLS = _columns(
    Column("kind", "kind", cells.one_of("tool", "consumable")),
    Column("when", "when", cells.one_of("always", "holes", "masonry", "cut", "rod", "metal", "cloth")),
)
DRILLS = _columns(
    Column("diameter", "diameter_mm", cells.extent),
    Column("market", "market", cells.one_of("in", "mm")),
)
PRICES = (
    Column("id", "id", cells.text),
    Column("price", "price", cells.ratio),
    Column("currency", "currency", cells.text),
    Column("pack", "pack", cells.pack),
    Column("date", "date", cells.day),
    Column("place", "place", cells.text),
)
SHELF = (
    Column("id", "id", cells.text),
    Column("part", "part", cells.text),
    Column("length", "length_mm", cells.length_or_none),
    Column("count", "count", cells.whole),
)
FLATS = _columns(
    Column("wide", "wide_mm", cells.length),
    Column("thick", "thick_mm", cells.length),
    Column("stock", "stock_mm", cells.length),
)
BRACKET_PARTS = _columns(
    Column("kit", "kit", cells.text),
    Column("count", "count", cells.whole),
    Column("flat", "flat", cells.text),
    Column("fixed", "fixed_mm", cells.length),
    Column("projections", "projections", cells.ratio),
    Column("diameters", "diameters", cells.ratio),
)
FINISHES = _columns(
    Column("coats", "coats", cells.whole),
    Column("between", "between_hours", cells.ratio),
    Column("hard", "hard_hours", cells.ratio),
)
BANDS = _columns(
    Column("region", "region", cells.one_of("uk", "de")),
    Column("side", "side", cells.one_of("ceiling", "floor", "corner", "opening")),
    Column("near", "near_mm", cells.length),
    Column("far", "far_mm", cells.length),
    Column("authority", "authority", cells.text),
)
CUTS = _columns(
    Column("thick", "thick_mm", cells.length),
    Column("face", "face_mm", cells.length),
    Column("hatch", "hatch", cells.one_of("plain", "cavity", "brick", "hollow", "aerated", "concrete", "timber")),
)
LIMITS = _columns(
    Column("value", "value", cells.text),
    Column("kind", "kind", cells.one_of(*_LIMIT_KINDS)),
    Column("authority", "authority", cells.text),
)


def load_trade(folder: Path | None = None) -> Trade:
    """Read every table of the trade.

    Parameters
    ----------
    folder : Path or None
        Where the tables are; None: the program's own.

    Returns
    -------
    Trade

    Raises
    ------
    BadInput
        A cell is wrong: file, line and column are named.
    Missing
        A table is not there.
    """
    at = places.resources() / "tables" if folder is None else folder
    return Trade(
        headings=_load(at / "headings.csv", HEADINGS, HeadingRow),
        sections=_load(at / "sections.csv", SECTIONS, SectionRow),
        brackets=_load(at / "brackets.csv", BRACKETS, BracketRow),
        ends=_load(at / "ends.csv", ENDS, EndRow),
        ready_made=_load(at / "ready_made.csv", READY_MADE, ReadyMadeRow),
        ready_widths=_load(at / "ready_widths.csv", READY_WIDTHS, ReadyWidthRow),
        bodies=_load(at / "bodies.csv", BODIES, BodyRow),
        limits=_load(at / "limits.csv", LIMITS, LimitRow),
        substrates=_load(at / "substrates.csv", SUBSTRATES, SubstrateRow),
        bands=_load(at / "bands.csv", BANDS, BandRow),
        allowances=_load(at / "allowances.csv", ALLOWANCES, AllowanceRow),
        fabrics=_load(at / "fabrics.csv", FABRICS, FabricRow),
        saws=_load(at / "saws.csv", SAWS, SawRow),
        cuts=_load(at / "cuts.csv", CUTS, CutRow),
        materials=_load(at / "materials.csv", MATERIALS, MaterialRow),
        fixings=_load(at / "fixings.csv", FIXINGS, FixingRow),
        rings=_load(at / "rings.csv", RINGS, RingRow),
        packs=_load(at / "packs.csv", PACKS, PackRow),
        tools=_load(at / "tools.csv", TOOLS, ToolRow),
        prices=_load(at / "prices.csv", PRICES, price_row),
        shelf=_load(at / "shelf.csv", SHELF, ShelfRow),
        flats=_load(at / "flats.csv", FLATS, FlatRow),
        bracket_parts=_load(at / "bracket_parts.csv", BRACKET_PARTS, BracketPartRow),
        finishes=_load(at / "finishes.csv", FINISHES, FinishRow),
        drills=_load(at / "drills.csv", DRILLS, DrillRow),
    )


def price_row(pack: tuple[float, bool], **fields: Any) -> PriceRow:
    """A price from its cells: what it buys is so many pieces, or a length."""
    return PriceRow(pack=pack[0], is_length=pack[1], **fields)


def row_of(table: Mapping[str, Row], row_id: str, what: str) -> Row:
    """The row of that id.

    Parameters
    ----------
    table : mapping
        One table of a ``Trade``.
    row_id : str
    what : str
        What the row is, for the sentence ("heading").

    Raises
    ------
    NoSuch
        With the nearest id.
    """
    try:
        return table[row_id]
    except KeyError:
        raise NoSuch(what, "", said('there is no "{wanted}"', wanted=row_id), nearest(row_id, table)) from None


def limit_of(trade: Trade, limit_id: str) -> float:
    """The value of a limit, in mm, mm2 or bare, as its row says."""
    return row_of(trade.limits, limit_id, "limit").value


def nearest(wrong: str, known: Mapping[str, object]) -> str:
    """Advice for an unknown id: the nearest one, else all of them."""
    from difflib import get_close_matches  # Needed where something is wrong, and slow to load.

    close = get_close_matches(wrong, known, n=1, cutoff=0.5)
    if close:
        return said('the nearest is "{choice}"', choice=close[0])
    return said("it may be {known}", known=", ".join(known))


def _load(path: Path, columns: tuple[Column, ...], row_type: Callable[..., Row]) -> dict[str, Row]:
    try:
        raw = path.read_bytes()
    except OSError as trouble:
        raise Missing(str(path), "", "cannot be read", trouble.strerror or "") from None
    try:
        return read_table(raw.decode("utf-8-sig"), path.name, columns, row_type)
    except UnicodeDecodeError as trouble:
        raise BadInput(path.name, f"byte {trouble.start}", "is not UTF-8", "save the table as UTF-8") from None


def read_table(content: str, name: str, columns: tuple[Column, ...], row_type: Callable[..., Row]) -> dict[str, Row]:
    """Read one table: a title line, then a row a line; lines that start with ``#`` and empty lines are passed over.

    Parameters
    ----------
    content : str
        The table's text, without a byte-order mark.
    name : str
        The file's name, for sentences.
    columns : tuple of Column
        All must be there, in any order; no others.
    row_type : callable
        Makes a row from the fields.

    Returns
    -------
    dict
        Rows by id, in the file's order.
    """
    rows: dict[str, Row] = {}
    order: list[Column] | None = None
    for number, line in filled_lines(content):
        found = split_line(line, name, number)
        if order is None:
            order = _order(found, name, number, columns)
            continue
        row = _row(found, name, number, order)
        row_id = str(row["id"])
        if row_id in rows:
            raise BadInput(name, f"line {number}", f'has the id "{row_id}" a second time', "give each row its own id")
        rows[row_id] = row_type(**row)
    if order is None:
        raise BadInput(name, "", "has no title line", f"write {','.join(column.title for column in columns)}")
    return rows


def _order(titles: list[str], name: str, number: int, columns: tuple[Column, ...]) -> list[Column]:
    known = {column.title: column for column in columns}
    for title in titles:
        if title not in known:
            raise BadInput(name, f"line {number}", f'has an unknown column "{title}"', nearest(title, known))
        if titles.count(title) > 1:
            raise BadInput(name, f"line {number}", f'has the column "{title}" twice', "leave one")
    for title in known:
        if title not in titles:
            raise BadInput(name, f"line {number}", f'has no column "{title}"', "add it")
    return [known[title] for title in titles]


def _row(found: list[str], name: str, number: int, order: list[Column]) -> dict[str, object]:
    if len(found) != len(order):
        raise BadInput(name, f"line {number}", f"has {len(found)} cells", f"write {len(order)}")
    row: dict[str, object] = {}
    for column, cell in zip(order, found, strict=True):
        row[column.field] = _cell(cell, column.read, name, number, column.title)
    if "kind" in row and "value" in row:
        # What a limit's value is only its kind can say.
        row["value"] = _cell(str(row["value"]), _LIMIT_KINDS[str(row["kind"])], name, number, "value")
    return row


def _cell(cell: str, read: Reader, name: str, number: int, title: str) -> object:
    try:
        return read(cell)
    except BadInput as trouble:
        wrong = f"{trouble.where} {trouble.wrong}".strip()
        raise BadInput(name, f'line {number}, column "{title}"', wrong, trouble.right) from None
