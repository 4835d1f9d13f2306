"""The buying list in words: amounts as they are asked for at the counter, money, what a shop would ask."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

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
    return None if whole.unpriced or whole.shared else sum_said(whole)


def unpriced_said(whole: Sum) -> Message:
    """How many lines have no price."""
    own = msg_plural("{count} line without a price", "{count} lines without a price", count=whole.unpriced)
    if not whole.shared:
        return own
    return msg("{lines}, {count} more shared with other windows", lines=own, count=whole.shared)


def unpriced_short(whole: Sum) -> Message | None:
    """The same in a narrow column; None where every line has a price."""
    if whole.shared:
        return msg("{count} + {shared} shared", count=whole.unpriced, shared=whole.shared)
    return msg("{count}", count=whole.unpriced) if whole.unpriced else None


def offer_said(offered: Mapping[str, int] | None) -> Message | None:
    """What a shop asks; None where it was not asked."""
    return None if offered is None else sum_said(Sum(offered, 0))


def compared(whole: Sum, offered: Mapping[str, int] | None) -> Message | None:
    """How much less (or more) all of it costs than the shop asks.

    None while a price is missing, and where the two are not in one currency.
    """
    if total_said(whole) is None or offered is None or len(whole.cents) != 1 or whole.cents.keys() != offered.keys():
        return None
    ((currency, own),) = whole.cents.items()
    over = offered[currency] - own
    if over == 0:
        return msg("the same")
    amount = money(abs(over), currency)
    return msg("{amount} less", amount=amount) if over > 0 else msg("{amount} more", amount=amount)


def price_note(line: Line, unit: str) -> Message | None:
    """Where a price comes from: where and when it was seen, and what it buys."""
    price = line.price
    if price is None:
        return None
    pack = amount(price.pack, unit) if price.is_length else msg("{count}", count=price.pack)
    each = money(round(price.price * 100), price.currency)
    return msg("{price} for {pack}: {place}, {date}", price=each, pack=pack, place=price.place, date=price.date)


def place_name(bought: BuyingList, index: int, style: Style) -> str:
    """What a line is for."""
    return say(msg("the house") if index == HOUSE else bought.windows[index].name, style)


def sums(bought: BuyingList, style: Style) -> Sequence[tuple[str, Sum, dict[str, int] | None]]:
    """What each window, the rest of the house, and everything costs, and what shops ask for it."""
    rows: list[tuple[str, Sum, dict[str, int] | None]] = [
        (say(window.name, style), bought.of_window(index), window.offered) for index, window in enumerate(bought.windows)
    ]
    if any(HOUSE in line.windows for line in bought.lines):
        rows.append((say(msg("the house"), style), bought.of_window(HOUSE), None))
    rows.append((say(msg("Everything"), style), bought.total(), bought.offered()))
    return rows
