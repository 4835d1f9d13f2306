"""The buying list as a table for other programs: a cell that is a number holds nothing else."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.planning.buying.model import BuyingList, Line, Sum
from elevation.planning.buying.said import GROUP_NAMES, place_name, price_note, sums, unpriced_said
from elevation.planning.cloth_words import METRE_MM, YARD_MM
from elevation.words import Style, msg, say

HEADS = (
    msg("Group"),
    msg("Part"),
    msg("What"),
    msg("Unit"),
    msg("Needed"),
    msg("At hand"),
    msg("To buy"),
    msg("Packs"),
    msg("In a pack"),
    msg("Left over"),
    msg("Price"),
    msg("Shop's price"),
    msg("Currency"),
    msg("For"),
    msg("Notes"),
)
"""Columns of the table."""
_DIGITS = 3


def table_rows(bought: BuyingList, unit: str, style: Style) -> Iterator[tuple[str, ...]]:
    """The list as a table, its head first: a row a line, then what each window and everything costs.

    Numbers stand alone in their cells, with a point and never a sign; what is not known is an empty cell.

    Parameters
    ----------
    bought : BuyingList
    unit : str
        ``in``: lengths in yards; ``mm``: in metres.
    style : Style
    """
    yield tuple(say(head, style) for head in HEADS)
    for line in bought.lines:
        yield _line(bought, line, unit, style)
    for name, whole, offered in sums(bought, style):
        yield from _sums(name, whole, offered or {}, style)


def _line(bought: BuyingList, line: Line, unit: str, style: Style) -> tuple[str, ...]:
    is_length = line.measure == "length"
    per = (YARD_MM if unit == "in" else METRE_MM) if is_length else 1.0
    measure = (msg("yd") if unit == "in" else msg("m")) if is_length else msg("piece")
    note = price_note(line, unit)
    return (
        say(GROUP_NAMES[line.group], style),
        line.part,
        say(line.name, style),
        say(measure, style),
        *(_number(value / per) for value in (line.needed, line.shelf, line.bought)),
        str(line.packs),
        _number(line.pack / per),
        _number(line.left / per),
        "" if line.cents is None else f"{line.cents / 100:.2f}",
        "",
        "" if line.price is None else line.price.currency,
        "; ".join(place_name(bought, index, style) for index in line.windows),
        "; ".join(say(one, style) for one in (line.notes if note is None else (*line.notes, note))),
    )


def _sums(name: str, whole: Sum, offered: dict[str, int], style: Style) -> Iterator[tuple[str, ...]]:
    """A row a currency, so that a number is one of one currency; one with blanks where nothing is known."""
    has_total = not whole.unpriced and not whole.shared
    for currency in dict.fromkeys((*whole.cents, *offered)) or ("",):
        own, shop = whole.cents.get(currency), offered.get(currency)
        yield (
            say(msg("Sum"), style),
            "",
            name,
            *("",) * 7,
            f"{own / 100:.2f}" if has_total and own is not None else "",
            "" if shop is None else f"{shop / 100:.2f}",
            currency,
            "",
            "" if has_total else say(unpriced_said(whole), style),
        )


def _number(value: float) -> str:
    """So many, without zeros at its end."""
    return f"{value:.{_DIGITS}f}".rstrip("0").rstrip(".")
