"""The bench sheet: bars drawn to one scale with running tape marks, the pieces by their marks, and the order of work."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec.structs import replace

from elevation.planning.cut_list import SectionCut
from elevation.planning.cutting.carrying import shop_cuts, too_long_to_carry
from elevation.planning.cutting.model import Bar, CutPlan
from elevation.planning.rod_pieces import RodPiece
from elevation.sheet.paths import rectangle
from elevation.sheet.records import Fill, Ink, Line, Page, Pen, Picture, Polyline, Record, Text
from elevation.sheet.type_metrics import shorten, text_width
from elevation.sheet.work.page import Part, Sheet
from elevation.sheet.work.parts import BODY, SMALL, TableColumn, gap, heading, paragraph, step, table
from elevation.trade.model import SawRow
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, Mm, Ratio, Style, msg, msg_plural, say, term

_FINE = {"in": 25.4 / 64, "mm": 0.1}
"""A kerf is less than a tape's graduation."""
_BAR_HIGH = 9.0
_OUTLINE = Pen(Ink.OUTLINE, 0.5)
_CUT = Pen(Ink.OUTLINE, 0.35)


def bench_sheet(
    cuts: Sequence[SectionCut],
    saw: SawRow,
    sheet: Sheet,
    brackets: Callable[[Page], Sequence[Part]] = lambda _: (),
) -> tuple[Picture, ...]:
    """The pages for the bench.

    Parameters
    ----------
    cuts : sequence of SectionCut
    saw : SawRow
        What was reckoned with.
    sheet : Sheet
    brackets : callable
        From the page to its parts about brackets that are made.

    Returns
    -------
    tuple of Picture
    """
    style, width = sheet.style, sheet.width
    parts: list[Part] = [
        paragraph(
            say(
                msg(
                    "Reckoned with a {saw}: each cut takes {kerf}. Hook the tape on the bar's zero end and leave it there: "
                    "all marks of a bar run from that end, and the saw cuts beyond the mark.",
                    saw=term(saw.name),
                    kerf=Mm(saw.kerf_mm),
                ),
                replace(style, graduation_mm=_FINE[style.unit]),
            ),
            width,
            SMALL,
        )
    ]
    if not cuts:
        parts.append(paragraph(say(msg("Nothing has to be cut."), style), width))
    for one in cuts:
        parts.extend(_section(one, width, style))
    if cuts:
        parts.extend(_work(cuts, width, style))
    parts.extend(brackets(sheet.page))
    return sheet.lay(msg("Bench sheet"), parts, msg("Cut after the tape trial: what is cut cannot go back."))


def _section(one: SectionCut, width: float, style: Style) -> list[Part]:
    longest = max((bar.stock.length_mm for bar in one.plan.bars), default=0.0)
    title = f"{say(term(one.section.name), style)} · {say(_summary(one.plan), style)}"
    parts = [heading(title, width)]
    room = width - 12.0
    numbered = list(enumerate(one.plan.bars, start=1))
    for number, bar in numbered:
        parts.append(_bar(number, bar, longest, room, width, style))
        parts.extend(_whence(number, bar, one.carry_mm, width, style))
    if one.plan.bars:
        parts.extend(_pieces(one, width, style))
    parts.extend(
        paragraph(
            say(
                msg(
                    "{mark} is {length} long and no bar of it is: a longer bar, or a joint over a bracket.",
                    mark=piece.key,
                    length=Mm(piece.length_mm),
                ),
                style,
            ),
            width,
        )
        for piece in one.plan.too_long
    )
    parts.extend(
        paragraph(
            say(
                msg(
                    "{mark} is {length} long and you carry at most {carry}: have its bar delivered, "
                    "or give the rod a joint over a bracket.",
                    mark=piece.key,
                    length=Mm(piece.length_mm),
                    carry=Mm(one.carry_mm or 0.0),
                ),
                style,
            ),
            width,
        )
        for piece in too_long_to_carry(one.plan, one.carry_mm)
    )
    return parts


def _whence(number: int, bar: Bar, carry_mm: float | None, width: float, style: Style) -> list[Part]:
    """What is to be known of a bar before it lies on the bench: it is on the shelf, or the shop cuts it."""
    if bar.stock.count is not None:
        text = msg("Bar {number} lies on your shelf: {length} long.", number=number, length=Mm(bar.stock.length_mm))
        return [paragraph(say(text, style), width, SMALL)]
    cuts = shop_cuts(bar, carry_mm)
    if not cuts:
        return []
    marks = ", ".join(say(msg("{length}", length=Mm(mark)), style) for mark in cuts)
    text = msg(
        "Bar {number} is longer than you carry: let the shop cut it at {marks}, beyond the mark.",
        number=number,
        marks=marks,
    )
    return [paragraph(say(text, style), width, SMALL)]


def _summary(plan: CutPlan) -> Message:
    bars = msg_plural("{count} bar", "{count} bars", count=len(plan.bars))
    if plan.is_proven:
        return msg("{bars}, proven the fewest", bars=bars)
    over = plan.cost - plan.bound
    return msg_plural(
        "{bars}, at most {count} more than the fewest",
        "{bars}, at most {count} more than the fewest",
        count=over,
        bars=bars,
    )


def _bar(number: int, bar: Bar, longest: float, room: float, width: float, style: Style) -> Part:
    """A bar to scale: pieces with mark and length inside, running marks under it, what is left over hatched."""
    scale = room / longest
    left, top = 12.0, -1.5
    low = top - _BAR_HIGH
    whole = bar.stock.length_mm * scale
    records: list[Record] = [
        Text((0.0, low + 2.8), f"{number}", BODY, weight="semibold"),
        Polyline(((left, low), (left + whole, low), (left + whole, top), (left, top)), _OUTLINE, True),
        Text((left, low - 4.4), "0", SMALL, Ink.QUIET, "middle"),
    ]
    start = 0.0
    last_text = left + text_width("0", SMALL)
    down, is_double = 0, False
    for piece, mark in zip(bar.pieces, bar.marks_mm, strict=True):
        x1, x2 = left + start * scale, left + mark * scale
        label = f"{piece.key}  {say(msg('{length}', length=Mm(piece.length_mm)), style)}"
        if text_width(label, BODY) > x2 - x1 - 1.5:
            label = piece.key
        records.append(
            Text(((x1 + x2) / 2, low + 3.1), shorten(label, BODY, x2 - x1), BODY, align="middle", weight="semibold")
        )
        figure = say(msg("{length}", length=Mm(mark)), style)
        half = text_width(figure, SMALL) / 2
        # Marks closer than their figures are wide stand on two levels.
        down = 1 - down if x2 - half < last_text + 1.5 else 0
        is_double = is_double or down == 1
        base = low - 4.4 - down * 4.2
        records.append(Line((x2, top), (x2, base + SMALL * 0.8), _CUT))
        records.append(Text((min(x2, left + width - 12.0 - half), base), figure, SMALL, align="middle"))
        last_text = x2 + half
        start = bar.stock.length_mm - bar.offcut_mm if piece is bar.pieces[-1] else mark
    end = left + (bar.marks_mm[-1] if bar.marks_mm else 0.0) * scale
    if bar.offcut_mm > TOUCH_MM:
        records.extend(_left_over(end, left + whole, low, top, bar.offcut_mm, style))
    return Part(_BAR_HIGH + (12.5 if is_double else 9.0), tuple(records))


def _left_over(x1: float, x2: float, low: float, top: float, length_mm: float, style: Style) -> list[Record]:
    text = say(msg("{length} left over", length=Mm(length_mm, about=True)), style)
    if text_width(text, SMALL) > x2 - x1 - 2.0:
        text = say(msg("{length}", length=Mm(length_mm, about=True)), style)
    records: list[Record] = [Fill(rectangle(x1, low, x2, top), "#e3e6e8")]
    if text_width(text, SMALL) <= x2 - x1 - 1.0:
        records.append(Text(((x1 + x2) / 2, low + 3.4), text, SMALL, Ink.QUIET, "middle", weight="italic"))
    return records


def _pieces(one: SectionCut, width: float, style: Style) -> tuple[Part, ...]:
    columns = (
        TableColumn(say(msg("Mark"), style), 1.0),
        TableColumn(say(msg("Length"), style), 2.0, "right"),
        TableColumn(say(msg("For"), style), 5.6),
        TableColumn(say(msg("Of bar"), style), 0.8, "right"),
    )
    rows = [
        (
            piece.key,
            say(msg("{length}", length=Mm(piece.length_mm)), style),
            say(_for(one.pieces[piece.key]), style),
            str(number),
        )
        for number, bar in enumerate(one.plan.bars, start=1)
        for piece in bar.pieces
    ]
    rows.sort(key=lambda row: (len(row[0]), row[0]))
    return table(columns, rows, width)


def _for(piece: RodPiece) -> Message:
    place = msg("{wall}, {window}", wall=piece.wall_name, window=piece.window)
    if piece.room_name:
        place = msg("{room}, {place}", room=piece.room_name, place=place)
    if piece.count > 1:
        place = msg("{place}, piece {number} of {count} from the left", place=place, number=piece.number, count=piece.count)
    if any(piece.bends):
        place = msg("{place}; bend before you cut the other end", place=place)
    for corner in piece.corners:
        place = msg(
            "{place}; bent {degrees}° from {start} to {end} along its axis, radius {radius}",
            place=place,
            degrees=Ratio(corner.degrees, 0),
            start=Mm(corner.at_mm),
            end=Mm(corner.at_mm + corner.arc_mm),
            radius=Mm(corner.radius_mm),
        )
    return place


def _work(cuts: Sequence[SectionCut], width: float, style: Style) -> list[Part]:
    """The order of work at the bench; what is different for metal, wood and track."""
    metals = {one.section.material for one in cuts} - {"wood"}
    has_wood = any(one.section.material == "wood" for one in cuts)
    has_steel = "steel" in metals
    steps: list[tuple[Message, tuple[Message, ...]]] = [
        (
            msg("Measure every bar before the first cut: stock may be a little longer or shorter than its name."),
            (),
        )
    ]
    if has_steel or metals:
        steps.append(
            (
                msg("Wipe the bars clean of oil with a rag and a little spirit."),
                (msg("Air the room; no flame, no heater near."),),
            )
        )
    steps.append(
        (
            msg("Mark with a fine line all round, clamp, cut beyond the mark; write the piece's letter on it at once."),
            (msg("Eye protection; clamp both sides of a short piece; hands behind the blade."),),
        )
    )
    if metals:
        steps.append(
            (
                msg("Ream the inside and file the outside of every cut until a finger feels no edge: a burr cuts cloth."),
                (msg("Gloves while you handle fresh cuts; sweep chips up, never blow."),),
            )
        )
        steps.append(
            (
                msg("Scuff what will be painted with fine paper; wipe; thin coats; let each dry as its tin says."),
                (
                    msg(
                        "Do not cut, sand or heat zinc-coated tube without a dust mask and open air; "
                        "sanding old paint may raise lead dust."
                    ),
                ),
            )
        )
    if has_wood:
        steps.append((msg("Sand wood along the grain, ease the edges, seal the ends; oil or paint and let it dry."), ()))
    steps.append((msg("Rub a little wax or dry silicone on the rod's top: rings run quietly."), ()))
    parts = [gap(2.0), heading(say(msg("Order of work"), style), width)]
    parts.extend(
        step(str(number), say(text, style), width, cautions=[say(caution, style) for caution in cautions])
        for number, (text, cautions) in enumerate(steps, start=1)
    )
    return parts
