"""The part of the bench sheet about brackets that are made: parts and their lengths, bars, assembly, coats, drying."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.planning.shop_made import FlatCut, MadeBrackets
from elevation.sheet.records import Page
from elevation.sheet.work.page import Part, together, width_of
from elevation.sheet.work.parts import SMALL, TableColumn, gap, heading, paragraph, step, table
from elevation.trade.model import FinishRow, Trade
from elevation.trade.tables import row_of
from elevation.words import Message, Mm, Style, msg, msg_plural, say, term

_FINISH = "metal-paint"
_EIGHTH_MM = 25.4 / 8
"""Bent parts are cut to no finer mark: bending takes up more than that."""


def made_parts(
    made: Sequence[MadeBrackets], flats: Sequence[FlatCut], trade: Trade, page: Page, style: Style
) -> list[Part]:
    """Everything about brackets that are made; nothing where none is.

    Parameters
    ----------
    made : sequence of MadeBrackets
    flats : sequence of FlatCut
        The bars they are cut from.
    trade : Trade
    page : Page
    style : Style
    """
    if not made:
        return []
    width = width_of(page)
    parts: list[Part] = [gap(2.0), heading(say(msg("Brackets to make"), style), width)]
    coarse = replace(style, graduation_mm=_EIGHTH_MM if style.unit == "in" else 1.0)
    for brackets in made:
        parts.extend(together(_kind(brackets, trade, width, style, coarse), page))
    bars = "; ".join(say(_bars(one), style) for one in flats)
    if bars:
        parts.append(paragraph(bars, width, SMALL))
    parts.append(gap(1.0))
    parts.extend(
        step(str(number), say(text, style), width, cautions=[say(caution, style) for caution in cautions])
        for number, (text, cautions) in enumerate(_steps(row_of(trade.finishes, _FINISH, "finish")), start=1)
    )
    return parts


def _bars(one: FlatCut) -> Message:
    bars = msg_plural("{count} bar", "{count} bars", count=len(one.plan.bars))
    text = msg("{flat}: {bars} of {length}", flat=term(one.flat.name), bars=bars, length=Mm(one.flat.stock_mm, about=True))
    return msg("{text}; some parts are longer than it", text=text) if one.plan.too_long else text


def _kind(brackets: MadeBrackets, trade: Trade, width: float, style: Style, coarse: Style) -> list[Part]:
    title = msg(
        "{count} × {kit}: plate to axis {arm}, for a rod of {diameter}",
        count=brackets.count,
        kit=term(brackets.kit.name),
        arm=Mm(brackets.arm_mm),
        diameter=Mm(brackets.diameter_mm, about=True),
    )
    uses = "; ".join(say(use, style) for use in brackets.uses)
    columns = (
        TableColumn(say(msg("Part"), style), 4.4),
        TableColumn(say(msg("Cut from"), style), 3.4),
        TableColumn(say(msg("Length"), style), 1.8, "right"),
        TableColumn(say(msg("How many"), style), 1.6, "right"),
    )
    rows = []
    for part in brackets.parts:
        flat = trade.flats.get(part.row.flat)
        length = "" if flat is None else say(msg("{length}", length=Mm(part.length_mm, about=True)), coarse)
        of = "" if flat is None else say(term(flat.name), style)
        rows.append((say(term(part.row.name), style), of, length, str(part.count)))
    return [
        paragraph(say(title, style), width, sticks=True),
        paragraph(uses, width, SMALL, sticks=True),
        *table(columns, rows, width),
    ]


def _steps(finish: FinishRow) -> Sequence[tuple[Message, tuple[Message, ...]]]:
    """Parts, assembly, coats, drying, in order."""
    return (
        (
            msg(
                "Cut one bracket's parts, mark the holes of the plate with the drilling plate, "
                "drill them before anything is bent."
            ),
            (msg("Eye protection; clamp the work, never hold it under the drill; gloves off at the drill."),),
        ),
        (
            msg(
                "Bend the arm's tab square in a vice; bend seat and strap round a piece of the rod "
                "wrapped in two turns of card."
            ),
            (),
        ),
        (
            msg(
                "Screw arm to plate and seat to arm, square to each other; try it on the rod, lock the nuts; "
                "then make the others."
            ),
            (msg("The rod's axis must stand as far from the plate as the table says: all brackets the same."),),
        ),
        (
            msg("File every edge that cloth or a hand meets; wipe clean of oil; scuff; keep paint out of the threads."),
            (),
        ),
        (
            msg_plural(
                "Hang them on wire and give {count} coat on each side, {between} hours between two; turn after each.",
                "Hang them on wire and give {count} coats on each side, {between} hours between two; turn after each.",
                count=finish.coats,
                between=f"{finish.between_hours:g}",
            ),
            (msg("Open air or a window open, no flame, no sparks; mask for fumes if the tin asks for it."),),
        ),
        (
            msg(
                "Let them harden {hard} hours before a rod lies in them: soft paint sticks and tears. The tin governs.",
                hard=f"{finish.hard_hours:g}",
            ),
            (),
        ),
    )
