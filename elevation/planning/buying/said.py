"""The buying list in words: amounts as they are asked for at the counter, money, rows for tables."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from elevation.planning.buying.model import HOUSE, BuyingList, Line, Sum
from elevation.planning.cloth_words import amount
from elevation.words import Message, Ratio, Style, msg, msg_plural, say

GROUP_NAMES = {
    "rods": msg("Rods and tracks"),
    "brackets": msg("Brackets"),
    "ends": msg("Ends and joints"),
    "rings": msg("Rings, glides, hooks"),
    "panels": msg("Ready-made panels"),
    "cloth": msg("Cloth to sew"),
    "fixings": msg("Fixings"),
    "boards": msg("Boards"),
    "dress": msg("Tie-backs, valances, blinds"),
    "tools": msg("Tools, once for the house"),
    "consumables": msg("Used up"),
}


def how_many(line: Line, value: float, unit: str) -> Message:
    """So many of a line: pieces, pairs of panels, yards or metres."""
    if line.measure == "length":
        return amount(value, unit)
    count = round(value)
    if line.group == "panels" and count > 1:
        pairs = msg_plural("{count} pair", "{count} pairs", count=count // 2)
        return pairs if count % 2 == 0 else msg("{pairs} and 1 single", pairs=pairs)
    return msg("{count}", count=count)


def to_buy(line: Line, unit: str) -> Message:
    """What to ask for: so many, or so many packs."""
    if line.measure == "piece" and line.pack != 1 and line.packs:
        return msg_plural("{count} pack of {size}", "{count} packs of {size}", count=line.packs, size=line.pack)
    return how_many(line, line.bought, unit)


def money(cents: int, currency: str) -> Message:
    """An amount of money; no sign of a currency where none was typed."""
    if not currency:
        return msg("{amount}", amount=Ratio(cents / 100, 2))
    return msg("{amount} {currency}", amount=Ratio(cents / 100, 2), currency=currency)


def sum_said(whole: Sum) -> Message | None:
    """What is priced, in each currency; None where nothing is."""
    found: Message | None = None
    for currency, cents in whole.cents.items():
        part = money(cents, currency)
        found = part if found is None else msg("{first} + {second}", first=found, second=part)
    return found


def total_said(whole: Sum) -> Message | None:
    """What everything costs: None, a blank, while a single line has no price, however many others have one."""
    return None if whole.unpriced else sum_said(whole)


def unpriced_said(whole: Sum) -> Message:
    """How many lines have no price."""
    return msg_plural("{count} line without a price", "{count} lines without a price", count=whole.unpriced)


def price_note(line: Line, unit: str) -> Message | None:
    """Where a price comes from: where and when it was seen, and what it buys."""
    price = line.price
    if price is None:
        return None
    pack = amount(price.pack, unit) if price.is_length else msg("{count}", count=price.pack)
    each = money(round(price.price * 100), price.currency)
    return msg("{price} for {pack}: {place}, {date}", price=each, pack=pack, place=price.place, date=price.date)


HEADS = (
    msg("Group"),
    msg("Part"),
    msg("What"),
    msg("Needed"),
    msg("At hand"),
    msg("To buy"),
    msg("Left over"),
    msg("Price"),
    msg("Currency"),
    msg("For"),
    msg("Notes"),
)
"""Columns of the list as a table for other programs."""


def table_rows(bought: BuyingList, unit: str, style: Style) -> Iterator[tuple[str, ...]]:
    """The list as a table, its head first: a row a line, then what each window and everything costs.

    Parameters
    ----------
    bought : BuyingList
    unit : str
        ``in``: yards; ``mm``: metres.
    style : Style
    """
    yield tuple(say(head, style) for head in HEADS)
    for line in bought.lines:
        note = price_note(line, unit)
        notes = line.notes if note is None else (*line.notes, note)
        yield (
            say(GROUP_NAMES[line.group], style),
            line.part,
            say(line.name, style),
            say(how_many(line, line.needed, unit), style),
            say(how_many(line, line.shelf, unit), style),
            say(to_buy(line, unit), style),
            say(how_many(line, line.left, unit), style),
            "" if line.cents is None else say(money(line.cents, ""), style),
            "" if line.price is None else line.price.currency,
            "; ".join(place_name(bought, index, style) for index in line.windows),
            "; ".join(say(one, style) for one in notes),
        )
    for name, whole in sums(bought, style):
        total = total_said(whole)
        yield (
            say(msg("Sum"), style),
            "",
            name,
            *("",) * 4,
            "" if total is None else say(total, style),
            "",
            "",
            say(unpriced_said(whole), style) if whole.unpriced else "",
        )


def place_name(bought: BuyingList, index: int, style: Style) -> str:
    """What a line is for."""
    return say(msg("the house") if index == HOUSE else bought.windows[index].name, style)


def sums(bought: BuyingList, style: Style) -> Sequence[tuple[str, Sum]]:
    """What each window, the rest of the house, and everything costs."""
    rows = [(say(window.name, style), bought.of_window(index)) for index, window in enumerate(bought.windows)]
    if any(HOUSE in line.windows for line in bought.lines):
        rows.append((say(msg("the house"), style), bought.of_window(HOUSE)))
    rows.append((say(msg("Everything"), style), bought.total()))
    return rows
