"""The buying list as pages to take to the shop: boxes to tick, how many, what is at hand, what is left over, prices."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.planning.buying.model import BuyingList, Line
from elevation.planning.buying.said import (
    GROUP_NAMES,
    compared,
    how_many,
    money,
    offer_said,
    price_note,
    sum_said,
    sums,
    to_buy,
    total_said,
    unpriced_said,
    unpriced_short,
)
from elevation.sheet.records import Ink, Pen, Picture, Record, Text
from elevation.sheet.records import Line as Stroke
from elevation.sheet.type_metrics import shorten, text_width, wrap
from elevation.sheet.work.page import Part, Sheet, box, together
from elevation.sheet.work.parts import BODY, HEADING, SMALL, TableColumn, gap, heading, paragraph, table
from elevation.words import Message, Style, msg, say

_BLANK = Pen(Ink.THIN, 0.25)
_SHARES = (7.0, 1.6, 1.6, 2.5, 1.6, 1.9)
"""What, needed, at hand, to buy, left over, price."""
_INDENT = 6.5
_PAD = 1.4
_SHORT = ("tools", "consumables")
"""Groups that are ticked off, one of each."""


def buying_sheet(bought: BuyingList, sheet: Sheet) -> tuple[Picture, ...]:
    """The pages of the buying list.

    Parameters
    ----------
    bought : BuyingList
    sheet : Sheet
    """
    style, width = sheet.style, sheet.width
    parts: list[Part] = [
        paragraph(
            say(
                msg(
                    "Panels that were measured count as at hand; packs are rounded up. A blank is for the price you see: "
                    "what has no price is in no sum."
                ),
                style,
            ),
            width,
            SMALL,
        )
    ]
    if not bought.lines:
        parts.append(paragraph(say(msg("Nothing has to be bought."), style), width))
    lefts = _lefts(width)
    group, titles = "", None
    for line in bought.lines:
        if line.group in _SHORT:
            continue
        if line.group != group:
            titles = _titles(line.group, lefts, width, style)
            parts.append(titles)
            group = line.group
        parts.append(replace(_row(line, lefts, width, style), head=titles))
    for short in _SHORT:
        parts.extend(together(_ticked([line for line in bought.lines if line.group == short], width, style), sheet.page))
    if bought.lines:
        parts.extend(together(_sums(bought, width, style), sheet.page))
    notice = msg("Buy what cannot go back once it is cut only after the tape trial.")
    return sheet.lay(msg("Buying list"), parts, notice)


def _lefts(width: float) -> list[float]:
    whole = sum(_SHARES)
    return [width * sum(_SHARES[:at]) / whole for at in range(len(_SHARES) + 1)]


def _titles(group: str, lefts: Sequence[float], width: float, style: Style) -> Part:
    """A group's name and, on the same line, what stands in its columns."""
    names = (msg("Needed"), msg("At hand"), msg("To buy"), msg("Left over"), msg("Price"))
    name = shorten(say(GROUP_NAMES[group], style), HEADING, lefts[1] - _PAD, "semibold")
    base = -HEADING * 1.7
    records: list[Record] = [Text((0.0, base), name, HEADING, weight="semibold")]
    for at, title in enumerate(names, start=1):
        text = shorten(say(title, style), SMALL, lefts[at + 1] - lefts[at] - _PAD)
        records.append(Text((lefts[at + 1] - _PAD, base), text, SMALL, Ink.QUIET, "right"))
    records.append(Stroke((0.0, base - 1.9), (width, base - 1.9), Pen(Ink.OUTLINE, 0.35)))
    return Part(-base + 2.4, tuple(records), True)


def _ticked(lines: Sequence[Line], width: float, style: Style) -> list[Part]:
    """What has no figures: a box and a name each, in two columns."""
    if not lines:
        return []
    parts = [heading(say(GROUP_NAMES[lines[0].group], style), width)]
    half = width / 2
    for at in range(0, len(lines), 2):
        records: list[Record] = []
        low = 6.6
        for left, line in zip((0.0, half + 2.0), lines[at : at + 2], strict=False):
            records.append(box(left, -5.0))
            aside = "" if line.price is None or line.cents is None else say(money(line.cents, line.price.currency), style)
            if line.packs == 0:
                aside = say(msg("at hand"), style)
            room = half - _INDENT - 4.0 - (text_width(aside, BODY) + 2.0 if aside else 0.0)
            down = 0.9
            for text in wrap(say(line.name, style), BODY, room):
                records.append(Text((left + _INDENT, -down - BODY), text, BODY))
                down += BODY * 1.3
            if aside:
                records.append(Text((left + half - 2.0, -0.9 - BODY), aside, BODY, Ink.QUIET, "right"))
            low = max(low, down + 1.2)
        parts.append(Part(low, tuple(records)))
    return parts


def _row(line: Line, lefts: Sequence[float], width: float, style: Style) -> Part:
    unit = style.unit
    is_free = line.packs == 0
    records: list[Record] = [box(0.0, -5.2)]
    down = 1.0
    wide = lefts[1] - _INDENT - _PAD
    for text in wrap(say(line.name, style), BODY, wide):
        records.append(Text((_INDENT, -down - BODY), text, BODY))
        down += BODY * 1.3
    note = price_note(line, unit)
    for one in line.notes if note is None else (*line.notes, note):
        for text in wrap(say(one, style), SMALL, wide):
            records.append(Text((_INDENT, -down - SMALL), text, SMALL, Ink.QUIET))
            down += SMALL * 1.25
    low = down
    cells: tuple[Message | None, ...] = (
        how_many(line, line.needed, unit),
        how_many(line, line.shelf, unit) if line.shelf else None,
        to_buy(line, unit) if line.packs else msg("none"),
        how_many(line, line.left, unit) if line.left else None,
        None if line.price is None or line.cents is None else money(line.cents, line.price.currency),
    )
    for at, cell in enumerate(cells, start=1):
        right, room = lefts[at + 1] - _PAD, lefts[at + 1] - lefts[at] - 2 * _PAD
        if cell is None:
            if at == len(cells) and not is_free:
                records.append(Stroke((right - room, -1.0 - BODY - 0.6), (right, -1.0 - BODY - 0.6), _BLANK))
            continue
        down = 1.0
        for text in wrap(say(cell, style), BODY, room):
            weight = "semibold" if at == 3 and not is_free else "regular"
            records.append(
                Text(
                    (right, -down - BODY),
                    text,
                    BODY,
                    align="right",
                    weight="semibold" if weight == "semibold" else "regular",
                )
            )
            down += BODY * 1.3
        low = max(low, down)
    records.append(Stroke((0.0, -low - 1.4), (width, -low - 1.4), Pen(Ink.THIN, 0.18)))
    return Part(max(low, 6.0) + 2.0, tuple(records))


def _sums(bought: BuyingList, width: float, style: Style) -> list[Part]:
    columns: tuple[TableColumn, ...] = (
        TableColumn(say(msg("For"), style), 4.6),
        TableColumn(say(msg("Known so far"), style), 1.9, "right"),
        TableColumn(say(msg("Without a price"), style), 1.9, "right"),
        TableColumn(say(msg("In all"), style), 1.9, "right"),
    )
    rows: list[tuple[str, ...]] = []
    found = sums(bought, style)
    has_offer = any(window.offer is not None for window in bought.windows)
    if has_offer:
        columns += (
            TableColumn(say(msg("A shop asks"), style), 1.9, "right"),
            TableColumn(say(msg("Than the shop"), style), 1.9, "right"),
        )
    for name, whole, offered in found:
        cells = [sum_said(whole), unpriced_short(whole), total_said(whole)]
        if has_offer:
            cells += [offer_said(offered), compared(whole, offered)]
        rows.append((name, *("" if cell is None else say(cell, style) for cell in cells)))
    parts = [gap(2.0), heading(say(msg("What it costs"), style), width), *table(columns, rows, width)]
    if bought.total().unpriced:
        text = say(
            msg("Sums stay blank while prices are missing: {count}.", count=unpriced_said(bought.total())),
            style,
        )
        parts.append(paragraph(text, width, SMALL, Ink.QUIET))
    return parts
