"""Her shelf and her prices as they are typed: read from her own tables, and made into their rows again."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from msgspec import Struct

from elevation.errors import BadInput, said
from elevation.planning.buying.model import BuyingList, Measure
from elevation.planning.buying.said import how_many
from elevation.planning.buying.shelf import CARRY, OWN_SAW, USUAL_SAW
from elevation.trade import cells
from elevation.trade.own import BAR, Cells, own_cells, shipped_cells, table_named
from elevation.units import parse_length
from elevation.units.money import read_money
from elevation.words import Message, msg

FIELDS = ("there", "price", "currency", "pack", "place", "date")
"""What she types for a part, in the order of the columns."""


class HerPart(Struct, frozen=True):
    """A part with what she typed for it; an empty text is nothing.

    Attributes
    ----------
    part : str
    name, needed : Message
    measure : str
        ``piece``, or ``length``: what is there is then a length.
    there : str
        How many, or what length of it, lies on the shelf.
    price, currency, pack, place, date : str
    """

    part: str
    name: Message
    needed: Message
    measure: Measure
    there: str = ""
    price: str = ""
    currency: str = ""
    pack: str = ""
    place: str = ""
    date: str = ""


class HerBar(Struct, frozen=True):
    """Bars of one length that lie on the shelf, as typed."""

    section: str
    length: str
    count: str


class Hers(Struct, frozen=True):
    """Everything that is hers: parts, bars, how long a piece she carries (empty: any length), saw and what it takes."""

    parts: tuple[HerPart, ...]
    bars: tuple[HerBar, ...]
    carry: str = ""
    saw: str = USUAL_SAW
    kerf: str = ""


def read_hers(bought: BuyingList, folder: Path, unit: str) -> Hers:
    """What she typed before, beside the lines of a buying list; parts that the list has not come last.

    Parameters
    ----------
    bought : BuyingList
    folder : Path
        Where her own tables are.
    unit : str
        Of the room.

    Raises
    ------
    BadInput, Missing
        A table of hers cannot be read.
    """
    shelf, prices, allowances = (own_cells(table_named(name), folder) for name in ("shelf", "prices", "allowances"))
    bars = tuple(HerBar(row[1].partition(":")[2], row[2], row[3]) for row in shelf if _is_bar(row[1]))
    there = _there(row for row in shelf if not _is_bar(row[1]))
    priced = {row[0]: row for row in prices}
    found: dict[str, HerPart] = {}
    for line in bought.lines:
        found[line.part] = HerPart(line.part, line.name, how_many(line, line.needed, unit), line.measure)
    for part in (*there, *priced):
        measure: Measure = "piece" if _is_whole(there.get(part, "")) else "length"
        found.setdefault(part, HerPart(part, msg("{name}", name=part), msg("{name}", name=""), measure))
    carry = next((row[2] for row in allowances if row[0] == CARRY), "")
    saw, kerf = _saw(own_cells(table_named("saws"), folder))
    return Hers(tuple(_typed(one, there, priced) for one in found.values()), bars, carry, saw, kerf)


def saws() -> tuple[Cells, ...]:
    """The program's saws: id, name, what a cut takes, and who says so."""
    return shipped_cells(table_named("saws"))


def _saw(rows: Sequence[Cells]) -> tuple[str, str]:
    """The saw she chose by its name, and what it takes; the usual one where she chose none."""
    own = next((row for row in rows if row[0] == OWN_SAW), None)
    usual = next(row for row in saws() if row[0] == USUAL_SAW)
    if own is None:
        return USUAL_SAW, usual[2]
    return next((row[0] for row in saws() if row[1] == own[1]), USUAL_SAW), own[2]


def _is_bar(part: str) -> bool:
    return part.startswith(f"{BAR}:")


def _is_whole(text: str) -> bool:
    return not text or text.isdecimal()


def _there(rows: Iterable[Cells]) -> dict[str, str]:
    """By part, what is there: a count, or a length; several rows of one part are added up."""
    found: dict[str, str] = {}
    for _, part, length, count in rows:
        if length == "none":
            before = found.get(part, "0")
            found[part] = str(cells.whole(count) + (int(before) if before.isdecimal() else 0))
        else:
            whole = cells.length(length) * cells.whole(count)
            before = found.get(part, "")
            alone = length if count == "1" else f"{whole:g} mm"
            found[part] = f"{whole + cells.length(before):g} mm" if before and not before.isdecimal() else alone
    return found


def _typed(one: HerPart, there: Mapping[str, str], prices: Mapping[str, Cells]) -> HerPart:
    price = prices.get(one.part, ("",) * 6)
    return HerPart(
        one.part, one.name, one.needed, one.measure, there.get(one.part, ""), price[1], price[2], price[3], price[5],
        price[4],
    )  # fmt: skip


def check_typed(one: HerPart, field: str, unit: str) -> BadInput | None:
    """What is wrong with one text of a part; None where nothing is.

    Parameters
    ----------
    one : HerPart
    field : str
        One of ``FIELDS``.
    unit : str
        Lengths may be bare in it.
    """
    text = getattr(one, field)
    try:
        if field == "there" and text:
            _amount(text, one.measure, unit)
        elif field == "price" and text:
            read_money(text)
        elif field == "pack" and text:
            if one.measure == "length":
                parse_length(text, unit)
            else:
                cells.pack(text)
        elif field == "date" and text:
            cells.day(text)
        elif field not in ("there", "price") and not text and one.price:
            raise BadInput("", "", said("is empty"), said("a price needs it"))
    except BadInput as trouble:
        return trouble
    return None


def _amount(text: str, measure: Measure, unit: str) -> tuple[str, str]:
    """The cells ``length`` and ``count`` of what is there."""
    if measure == "piece":
        return "none", str(cells.whole(text))
    return parse_length(text, unit).text, "1"


def shelf_rows(hers: Hers, unit: str) -> list[Cells]:
    """The rows of her shelf; nothing is left out that is right, so check the texts before."""
    rows: list[Cells] = []
    for number, bar in enumerate(hers.bars, start=1):
        rows.append((f"bar-{number}", f"{BAR}:{bar.section}", parse_length(bar.length, unit).text, bar.count))
    rows.extend(
        (one.part, one.part, *_amount(one.there, one.measure, unit)) for one in hers.parts if one.there and one.there != "0"
    )
    return rows


def price_rows(hers: Hers, unit: str) -> list[Cells]:
    """The rows of her prices: of parts that have one."""
    return [
        (
            one.part,
            f"{read_money(one.price):.2f}",
            one.currency,
            parse_length(one.pack, unit).text if one.measure == "length" else one.pack,
            one.date,
            one.place,
        )
        for one in hers.parts
        if one.price
    ]


def saw_rows(before: Sequence[Cells], saw: str, kerf: str, unit: str) -> list[Cells]:
    """Her saws with the one that she cuts with; without it where that is the usual one as the program has it."""
    rows = [row for row in before if row[0] != OWN_SAW]
    chosen = next(row for row in saws() if row[0] == saw)
    text = parse_length(kerf, unit).text
    if saw != USUAL_SAW or text != chosen[2]:
        rows.append((OWN_SAW, chosen[1], text, "measured by me", "one source"))
    return rows


def allowance_rows(before: Sequence[Cells], carry: str, unit: str) -> list[Cells]:
    """Her allowances with the longest piece that she carries; without it where ``carry`` is empty."""
    rows = [row for row in before if row[0] != CARRY]
    if carry:
        own = next(row for row in shipped_cells(table_named("allowances")) if row[0] == CARRY)
        rows.append((own[0], own[1], parse_length(carry, unit).text, *own[3:]))
    return rows
