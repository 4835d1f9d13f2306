"""Story sticks as pages: each stick drawn to scale with its running marks, how it is held, and which windows it serves."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from elevation.planning.story_stick import Mark, Stick, Sticks
from elevation.sheet.annotation.figures import figure
from elevation.sheet.paths import rectangle
from elevation.sheet.records import Fill, Ink, Line, Pen, Picture, Polyline, Record, Text
from elevation.sheet.work.page import Part, Sheet, together
from elevation.sheet.work.parts import BODY, SMALL, TableColumn, gap, heading, paragraph, table
from elevation.words import Message, Style, msg, msg_plural, say

_HIGH = 8.0
_LEFT = 4.0
_EDGE = Pen(Ink.OUTLINE, 0.5)
_MARK = Pen(Ink.OUTLINE, 0.35)


def stick_sheet(found: Sticks, withheld: Sequence[str], sheet: Sheet) -> tuple[Picture, ...]:
    """The pages of story sticks.

    Parameters
    ----------
    found : Sticks
    withheld : sequence of str
        Treatments that must not be drilled for.
    sheet : Sheet
    """
    style, width = sheet.style, sheet.width
    parts: list[Part] = [paragraph(say(_ABOUT, style), width, SMALL)]
    for number, stick in enumerate(found.sticks, start=1):
        parts.append(gap(1.5))
        parts.extend(together(_stick(number, stick, width, style), sheet.page))
    parts.extend(_others(found, withheld, width, style))
    notice = msg("Check the first window with the tape, from both sides, before the stick goes on to the next.")
    return sheet.lay(msg("Story sticks"), parts, notice)


_ABOUT = msg(
    "Take a straight batten a little longer than the stick, cut one end square: that is zero. Hook the tape there and make "
    "every mark without moving it; write on each what it is. The level governs at every window, not the stick."
)


def _stick(number: int, stick: Stick, width: float, style: Style) -> list[Part]:
    count = msg_plural("{count} window", "{count} windows", count=len(stick.windows))
    if stick.way == "along":
        title = msg("Stick {number}, along the wall: {windows}", number=number, windows=count)
    elif stick.way == "up":
        title = msg("Stick {number}, upright: {windows}", number=number, windows=count)
    else:
        title = msg("Stick {number}, standing on the floor: {windows}", number=number, windows=count)
    held = next(mark for mark in stick.marks if mark.is_held)
    if stick.way == "along":
        text = msg("Hold the thick mark to the {edge}, zero end left, the stick on the level line.", edge=held.name)
    elif stick.way == "up":
        text = msg("Stand the zero end on the {edge}, plumb, beside each bracket's middle.", edge=held.name)
    else:
        text = msg(
            "Stand the zero end on the floor under each window's middle, plumb: what is not alike shows before a hole is "
            "drilled, and later where the hems go. Where the floor falls, the level governs."
        )
    parts = [
        heading(say(title, style), width),
        paragraph(say(text, style), width, sticks=True),
        _drawn(stick, width),
        *_table(stick, width, style),
    ]
    served = "; ".join(say(window, style) for window in stick.windows)
    parts.append(paragraph(say(msg("For {windows}.", windows=served), style), width, SMALL))
    return parts


def _drawn(stick: Stick, width: float) -> Part:
    """The stick from its zero end, marks across it with letters, their figures under it on two levels."""
    length = stick.marks[-1].at_mm
    scale = (width - 2 * _LEFT) / max(length, 1.0)
    low = -2.0 - _HIGH
    records: list[Record] = [
        Fill(rectangle(_LEFT, low, _LEFT + length * scale, -2.0), "#f3ead9"),
        Polyline(((_LEFT, low), (_LEFT + length * scale, low), (_LEFT + length * scale, -2.0), (_LEFT, -2.0)), _EDGE, True),
    ]
    free = [-1e9, -1e9]
    for letter, mark in zip(_letters(stick.marks), stick.marks, strict=True):
        x = _LEFT + mark.at_mm * scale
        if mark.is_held:
            records.append(Fill(rectangle(x - 0.7, low, x + 0.7, -2.0), Ink.OUTLINE))
        else:
            records.append(Line((x, low), (x, -2.0), _MARK))
        # Marks closer than a letter is wide stand on two levels.
        level = 0 if x - free[0] > 4.0 else 1
        free[level] = x
        records.append(Line((x, low), (x, low - 1.4 - level * 4.4), _MARK))
        records.append(Text((x, low - 4.6 - level * 4.4), letter, SMALL, align="middle", weight="semibold"))
    return Part(_HIGH + 2.0 + 11.5, tuple(records))


def _letters(marks: Sequence[Mark]) -> list[str]:
    return [chr(ord("a") + at % 26) * (1 + at // 26) for at in range(len(marks))]


def _table(stick: Stick, width: float, style: Style) -> tuple[Part, ...]:
    unit = " in" if stick.unit == "in" else " mm"
    # Its own tape's unit and marks, in the words of the sheet.
    own = replace(style, unit=stick.unit, graduation_mm=stick.graduation_mm)
    columns = (
        TableColumn(say(msg("Mark"), style), 1.2),
        TableColumn(say(msg("What it is"), style), 4.6),
        TableColumn(say(msg("From zero"), style), 2.2, "right"),
        TableColumn(say(msg("From the held mark"), style), 2.6, "right"),
    )
    held = next(mark.at_mm for mark in stick.marks if mark.is_held)
    rows = []
    for letter, mark in zip(_letters(stick.marks), stick.marks, strict=True):
        name = msg("{mark} (hold here)", mark=mark.name) if mark.is_held else mark.name
        rows.append(
            (letter, say(name, style), figure(mark.at_mm, own) + unit, _apart(mark.at_mm - held, stick.way, unit, own))
        )
    return table(columns, rows, width, BODY)


def _apart(away: float, way: str, unit: str, style: Style) -> str:
    """How far from the held mark, and to which side: the second figure that finds a wrong first one."""
    if abs(away) < 1e-6:
        return "–"
    distance = figure(abs(away), style) + unit
    sides: tuple[Message, Message] = (
        (msg("{distance} left", distance=distance), msg("{distance} right", distance=distance))
        if way == "along"
        else (msg("{distance} down", distance=distance), msg("{distance} up", distance=distance))
    )
    return say(sides[away > 0], style)


def _others(found: Sticks, withheld: Sequence[str], width: float, style: Style) -> list[Part]:
    parts: list[Part] = []
    for way, text in (
        ("along", msg("Along the wall these are like no other, so each has its own figures: {windows}.")),
        ("up", msg("Upright these are like no other, so each has its own figures: {windows}.")),
        ("floor", msg("Over the floor these are like no other: {windows}.")),
    ):
        names = "; ".join(say(window, style) for one, window in found.alone if one == way)
        if names:
            parts.append(paragraph(say(Message(text.template, {"windows": names}), style), width, SMALL, Ink.QUIET))
    if withheld:
        names = ", ".join(withheld)
        text = msg("Withheld, since they cannot be built as drawn: {names}.", names=names)
        parts.append(paragraph(say(text, style), width, SMALL))
    return [gap(2.0), *parts] if parts else []
